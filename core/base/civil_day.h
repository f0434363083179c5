// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A day on the calendar, as a person would name it.
///
/// It is not an instant: no zone, no clock, no hour. A set done at 00:30 may
/// belong to the day before; which day that is gets decided once, when the
/// entry is made, and is never computed again.

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace morrow {

/// One day of the proleptic Gregorian calendar from 1900-01-01 to 2200-12-31.
class CivilDay
{
public:
    /// The day \a year-\a month-\a day, or nullopt if the calendar has no such day
    /// (30 February) or it lies outside 1900..2200.
    [[nodiscard]] static std::optional<CivilDay> from(int year, unsigned month, unsigned day) noexcept;

    /// The day that is \a days after 1970-01-01 (before it if negative), or nullopt outside 1900..2200.
    [[nodiscard]] static std::optional<CivilDay> fromNumber(int days) noexcept;

    /// Reads exactly `YYYY-MM-DD`; nullopt for anything else.
    [[nodiscard]] static std::optional<CivilDay> parse(std::string_view text) noexcept;

    /// Days since 1970-01-01.
    [[nodiscard]] constexpr int number() const noexcept { return m_number; }

    /// 0 Monday .. 6 Sunday, the order of RFC 5545 with WKST=MO.
    [[nodiscard]] constexpr int weekday() const noexcept { return ((m_number + 3) % 7 + 7) % 7; }

    /// `YYYY-MM-DD`.
    [[nodiscard]] std::string toString() const;

    /// Day arithmetic may leave 1900..2200 on the way (a window that begins before
    /// the first day a file may hold); such a day is still compared and counted rightly.
    friend constexpr CivilDay operator+(CivilDay day, int days) noexcept { return CivilDay(day.m_number + days); }
    friend constexpr CivilDay operator-(CivilDay day, int days) noexcept { return CivilDay(day.m_number - days); }
    friend constexpr int operator-(CivilDay later, CivilDay earlier) noexcept { return later.m_number - earlier.m_number; }
    friend constexpr auto operator<=>(CivilDay, CivilDay) noexcept = default;

private:
    explicit constexpr CivilDay(int number) noexcept
        : m_number(number)
    {
    }

    int m_number;
};

} // namespace morrow
