// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Statistics that know nothing of diaries.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace morrow {

/// How far a computed value may lie beyond a limit and still be taken to be on it:
/// 0.1 + 0.2 is not above 0.3.
inline constexpr double kTolerance = 1e-9;

/// Whether \a value <= \a limit, differences below kTolerance ignored.
[[nodiscard]] constexpr bool isAtMost(double value, double limit) noexcept
{
    return value < limit + kTolerance;
}

/// The middle value, or the mean of the middle two; nullopt if there are fewer than
/// \a atLeast values, or none.
[[nodiscard]] std::optional<double> median(std::vector<double> values, std::size_t atLeast = 1);

struct Interval
{
    double lower;
    double upper;

    friend bool operator==(const Interval &, const Interval &) = default;
};

/// The 97.5 % point of the standard normal distribution.
inline constexpr double kNormal975 = 1.959963984540054;

/// The 95 % interval of the proportion \a successes / \a trials by Wilson's score
/// method without continuity correction (Newcombe RG, Stat Med 1998;17:857-872),
///
///     (2 r + z^2 -+ z sqrt(z^2 + 4 r (n - r) / n)) / (2 (n + z^2)),
///
/// cut to 0..1, which only rounding can leave. Nullopt without a trial.
/// \a successes is 0..\a trials.
[[nodiscard]] std::optional<Interval> wilson(std::int64_t successes, std::int64_t trials);

/// \a part / \a whole; nullopt if \a whole is 0.
[[nodiscard]] std::optional<double> ratio(double part, double whole) noexcept;

} // namespace morrow
