// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/rhythm.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace morrow {

namespace {

constexpr std::array<std::string_view, 7> kWeekdays{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};
constexpr int kMaxInterval = 9999;

std::uint8_t bit(int weekday) noexcept
{
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(weekday));
}

/// Cuts the text before the next \a separator off \a rest.
std::string_view cut(std::string_view &rest, char separator) noexcept
{
    const std::size_t at = rest.find(separator);
    const std::string_view part = rest.substr(0, at);
    rest = at == std::string_view::npos ? std::string_view() : rest.substr(at + 1);
    return part;
}

std::string upperCase(std::string_view text)
{
    std::string upper(text);
    for (char &c : upper) {
        if (c >= 'a' && c <= 'z')
            c = static_cast<char>(c - 'a' + 'A');
    }
    return upper;
}

std::optional<int> parseInterval(std::string_view text) noexcept
{
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || value < 1 || value > kMaxInterval)
        return std::nullopt;
    return value;
}

std::optional<std::uint8_t> parseWeekdays(std::string_view text) noexcept
{
    std::uint8_t days = 0;
    // "MO," ends in an empty day, which is none.
    for (bool more = true; more;) {
        more = text.find(',') != std::string_view::npos;
        const auto *const found = std::find(kWeekdays.begin(), kWeekdays.end(), cut(text, ','));
        if (found == kWeekdays.end() || (days & bit(static_cast<int>(found - kWeekdays.begin()))) != 0)
            return std::nullopt;
        days = static_cast<std::uint8_t>(days | bit(static_cast<int>(found - kWeekdays.begin())));
    }
    return days;
}

} // namespace

std::optional<RecurrenceRule> RecurrenceRule::parse(std::string_view text)
{
    const std::string upper = upperCase(text);
    RecurrenceRule rule;
    bool hasFrequency = false;
    bool hasInterval = false;
    std::string_view rest = upper;
    for (bool more = true; more;) {
        more = rest.find(';') != std::string_view::npos;
        std::string_view value = cut(rest, ';');
        const std::string_view key = cut(value, '=');
        if (key == "FREQ" && !hasFrequency && (value == "DAILY" || value == "WEEKLY")) {
            hasFrequency = true;
            rule.m_frequency = value == "DAILY" ? Frequency::Daily : Frequency::Weekly;
        } else if (const auto interval = parseInterval(value); key == "INTERVAL" && !hasInterval && interval) {
            hasInterval = true;
            rule.m_interval = *interval;
        } else if (const auto days = parseWeekdays(value); key == "BYDAY" && rule.m_weekdays == 0 && days) {
            rule.m_weekdays = *days;
        } else {
            return std::nullopt;
        }
    }
    if (!hasFrequency)
        return std::nullopt;
    return rule;
}

std::optional<RecurrenceRule> RecurrenceRule::from(Frequency frequency, int interval, std::uint8_t weekdays) noexcept
{
    if (interval < 1 || interval > kMaxInterval || weekdays > 0x7f)
        return std::nullopt;
    RecurrenceRule rule;
    rule.m_frequency = frequency;
    rule.m_interval = interval;
    rule.m_weekdays = weekdays;
    return rule;
}

bool RecurrenceRule::falls(CivilDay day, CivilDay start) const noexcept
{
    if (day < start)
        return false;
    const std::uint8_t weekdays = m_weekdays != 0 || m_frequency == Frequency::Daily ? m_weekdays : bit(start.weekday());
    if (weekdays != 0 && (weekdays & bit(day.weekday())) == 0)
        return false;
    if (m_frequency == Frequency::Daily)
        return (day - start) % m_interval == 0;
    const int weeks = ((day - day.weekday()) - (start - start.weekday())) / 7;
    return weeks % m_interval == 0;
}

RecurrenceRule RecurrenceRule::startingOn(CivilDay start) const noexcept
{
    RecurrenceRule rule = *this;
    if (rule.m_frequency == Frequency::Weekly && rule.m_weekdays == 0)
        rule.m_weekdays = bit(start.weekday());
    return rule;
}

std::string RecurrenceRule::toString() const
{
    std::string text = m_frequency == Frequency::Daily ? "FREQ=DAILY" : "FREQ=WEEKLY";
    if (m_interval > 1)
        text += ";INTERVAL=" + std::to_string(m_interval);
    std::string_view separator = ";BYDAY=";
    for (int day = 0; day < 7; ++day) {
        if ((m_weekdays & bit(day)) != 0) {
            text += separator;
            text += kWeekdays[static_cast<std::size_t>(day)];
            separator = ",";
        }
    }
    return text;
}

} // namespace morrow
