// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Answers a person gives on a scale, as types that cannot be mixed up.
///
/// Zero is an answer ("no pain"); "not answered" is std::nullopt. No sentinel
/// value exists, so none can be averaged, charted or sent by accident.

#include <compare>
#include <optional>
#include <string_view>

namespace morrow {

/// Pain from 0 (none) to 10 (worst imaginable), exactly as the person gave it.
class PainScore
{
public:
    static constexpr int kMin = 0;
    static constexpr int kMax = 10;

    /// The score for \a raw, or nullopt outside kMin..kMax.
    /// Never clamps: a clamped 11 would look like an answer somebody gave.
    [[nodiscard]] static constexpr std::optional<PainScore> from(int raw) noexcept
    {
        if (raw < kMin || raw > kMax)
            return std::nullopt;
        return PainScore(raw);
    }

    [[nodiscard]] constexpr int value() const noexcept { return m_value; }

    friend constexpr auto operator<=>(PainScore, PainScore) noexcept = default;

private:
    explicit constexpr PainScore(int value) noexcept
        : m_value(value)
    {
    }

    int m_value;
};

/// The side of the body that something is about.
enum class Side {
    Left,
    Right,
    Both, ///< of an exercise: one movement with both limbs together
};

/// The side called \a text (left, right, both); nullopt for anything else.
[[nodiscard]] std::optional<Side> sideNamed(std::string_view text) noexcept;
[[nodiscard]] std::string_view name(Side side) noexcept;
/// The side across the body; nullopt where there is none.
[[nodiscard]] std::optional<Side> otherSide(const std::optional<Side> &side) noexcept;

} // namespace morrow
