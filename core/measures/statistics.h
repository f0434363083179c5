// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Statistics that know nothing of diaries.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
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

/// A value at a time that is counted in whole steps.
struct TimedValue
{
    int time;
    double value;
};

/// How values go with time, whatever their distribution.
///
///     slope = median of (y_j - y_i) / (t_j - t_i), i < j (Sen PK, JASA 1968;63:1379-1389)
///     S = sum of the signs of y_j - y_i (Kendall)
///     var(S) = (n (n - 1) (2 n + 5) - T(5) - U(5)) / 18 + T(-2) U(-2) / (9 n (n - 1) (n - 2))
///         + T U / (2 n (n - 1)), where T sums t (t - 1) (2 t + 5), t (t - 1) (t - 2) and
///         t (t - 1) over groups of t equal values, U the same over equal times, of which no
///         pair counts (Gilbert RO 1987, section 17; Van Belle & Hughes 1984)
///     z = (S -+ 1) / sqrt(var(S)), towards 0; 0 if S or var(S) is 0
///     p = erfc(|z| / sqrt 2), two-sided
///     interval of the slope: with N slopes in order and c = quantile sqrt(var(S)), those at
///         max(rint((N - c) / 2) - 1, 0) and min(rint((N + c) / 2), N - 1), from 0,
///         rint half to even
struct Trend
{
    int n; ///< values
    double slope; ///< a step of time
    double lower;
    double upper;
    std::int64_t s;
    double varS;
    double z;
    double p;

    friend bool operator==(const Trend &, const Trend &) = default;
};

/// The trend of \a values, whose times do not fall; nullopt if there are fewer than \a atLeast,
/// or fewer than 2 different times. \a quantile of the normal distribution sets the interval, 95 % by default.
[[nodiscard]] std::optional<Trend> trend(std::span<const TimedValue> values, std::size_t atLeast, double quantile = kNormal975);

/// An individuals chart (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2):
///
///     centre = mean; meanRange = mean of |y_i+1 - y_i| over values one step of time apart
///     lower, upper = centre -+ 3 meanRange / 1.128 (d2 of two values)
struct IndividualsChart
{
    double centre;
    std::optional<double> meanRange; ///< nullopt: no two values are one step apart
    std::optional<Interval> limits; ///< nullopt as well if meanRange is 0

    friend bool operator==(const IndividualsChart &, const IndividualsChart &) = default;
};

/// The chart of \a values, whose times rise; nullopt if there are fewer than \a atLeast, or none.
[[nodiscard]] std::optional<IndividualsChart> individualsChart(std::span<const TimedValue> values, std::size_t atLeast);

/// \a part / \a whole; nullopt if \a whole is 0.
[[nodiscard]] std::optional<double> ratio(double part, double whole) noexcept;

} // namespace morrow
