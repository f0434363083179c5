// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A number as a person writes it: at most three decimals, below one thousand million.
///
/// Held as whole thousandths and read and written without passing through a
/// double, so that 2.5 kg is the same bytes, and has the same digest, everywhere.

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace morrow {

class Decimal
{
public:
    static constexpr std::int64_t kLimit = 1'000'000'000'000; ///< thousandths; the value stays below 1e9

    constexpr Decimal() noexcept = default;

    /// \a thousandths / 1000, or nullopt at or beyond 1e9 either way.
    [[nodiscard]] static constexpr std::optional<Decimal> fromThousandths(std::int64_t thousandths) noexcept
    {
        if (thousandths <= -kLimit || thousandths >= kLimit)
            return std::nullopt;
        return Decimal(thousandths);
    }

    [[nodiscard]] static constexpr Decimal whole(int value) noexcept { return Decimal(std::int64_t{1000} * value); }

    /// Reads `-?digits[.digits]` with at most 3 decimals and no needless leading
    /// zero; nullopt for anything else (no exponent, no plus sign, no comma, no NaN).
    [[nodiscard]] static std::optional<Decimal> parse(std::string_view text) noexcept;

    [[nodiscard]] constexpr std::int64_t thousandths() const noexcept { return m_thousandths; }
    [[nodiscard]] constexpr bool isWhole() const noexcept { return m_thousandths % 1000 == 0; }

    /// The whole part, towards zero.
    [[nodiscard]] constexpr int toInt() const noexcept { return static_cast<int>(m_thousandths / 1000); }
    [[nodiscard]] constexpr double toDouble() const noexcept { return static_cast<double>(m_thousandths) / 1000.0; }

    /// The shortest form: `3`, `2.5`, `-0.125`.
    [[nodiscard]] std::string toString() const;

    friend constexpr auto operator<=>(Decimal, Decimal) noexcept = default;

private:
    explicit constexpr Decimal(std::int64_t thousandths) noexcept
        : m_thousandths(thousandths)
    {
    }

    std::int64_t m_thousandths = 0;
};

} // namespace morrow
