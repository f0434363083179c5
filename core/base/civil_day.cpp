// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/civil_day.h"

#include <chrono>

namespace morrow {

namespace {

constexpr std::chrono::year kFirstYear{1900};
constexpr std::chrono::year kLastYear{2200};

/// The number in \a text, which holds digits only; -1 for anything else.
int digits(std::string_view text) noexcept
{
    int value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9')
            return -1;
        value = value * 10 + (c - '0');
    }
    return value;
}

} // namespace

std::optional<CivilDay> CivilDay::from(int year, unsigned month, unsigned day) noexcept
{
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}};
    if (!date.ok() || date.year() < kFirstYear || date.year() > kLastYear)
        return std::nullopt;
    return CivilDay(static_cast<int>(std::chrono::sys_days{date}.time_since_epoch().count()));
}

std::optional<CivilDay> CivilDay::fromNumber(int days) noexcept
{
    static constexpr int first = -25567; // 1900-01-01
    static constexpr int last = 84370; // 2200-12-31
    if (days < first || days > last)
        return std::nullopt;
    return CivilDay(days);
}

std::optional<CivilDay> CivilDay::parse(std::string_view text) noexcept
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return std::nullopt;
    const int year = digits(text.substr(0, 4));
    const int month = digits(text.substr(5, 2));
    const int day = digits(text.substr(8, 2));
    if (year < 0 || month < 0 || day < 0)
        return std::nullopt;
    return from(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
}

std::string CivilDay::toString() const
{
    const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{m_number}}};
    const auto year = static_cast<int>(date.year());
    const auto month = static_cast<unsigned>(date.month());
    const auto day = static_cast<unsigned>(date.day());
    std::string text = "0000-00-00";
    const auto put = [&text](std::size_t at, unsigned value) {
        text[at] = static_cast<char>('0' + value / 10 % 10);
        text[at + 1] = static_cast<char>('0' + value % 10);
    };
    put(0, static_cast<unsigned>(year) / 100);
    put(2, static_cast<unsigned>(year) % 100);
    put(5, month);
    put(8, day);
    return text;
}

} // namespace morrow
