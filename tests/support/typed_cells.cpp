// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/typed_cells.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>

namespace morrow::test {

namespace {

constexpr int kFirstDay = -25567; // 1900-01-01
constexpr int kLastDay = 84370; // 2200-12-31
constexpr int kNewYear2026 = 20454;

bool startsFormula(char c)
{
    return c == '=' || c == '+' || c == '-' || c == '@' || c == '\t' || c == '\r';
}

/// \a words in a random order, \a least to \a most of them.
std::string someOf(std::vector<std::string> words, int least, int most)
{
    shuffle(words);
    words.resize(static_cast<std::size_t>(pick(least, most)));
    std::string all;
    for (const std::string &word : words)
        all += (all.empty() ? "" : " ") + word;
    return all;
}

const std::vector<std::string> kWords{"morning", "noon", "evening", "-late", "=x", "'+y", "früh", "😀", "\"q\"", "a,b", "day"};

} // namespace

int pick(int least, int most)
{
    return *rc::gen::inRange(least, most + 1);
}

bool chance(int percent)
{
    return pick(0, 99) >= 100 - percent;
}

std::string meaningOf(const std::string &cell)
{
    const std::size_t at = cell.find_first_not_of('\'');
    return at != std::string::npos && at > 0 && startsFormula(cell[at]) ? cell.substr(1) : cell;
}

std::string typed(const std::string &text)
{
    return meaningOf(text) != text || (startsFormula(text[0]) && chance(50)) ? "'" + text : text;
}

std::string anyText()
{
    static constexpr std::array pieces{"calf", "a", " ", ",", "\"", "\"\"", "\n", "\r\n", "\r", "\t", "=1+1", "+", "-8", "@SUM(A1)", "'",
        "''", "é", "日本", "😀", "نعم", "\u202e", "1.50"};
    std::string all;
    for (int i = pick(1, 4); i > 0; --i)
        all += oneOf(pieces);
    return all;
}

std::string anyWord()
{
    return oneOf(kWords);
}

std::string typedNumber(int thousandths)
{
    const int size = std::abs(thousandths);
    std::string decimals = std::to_string(1000 + size % 1000).substr(1);
    const std::size_t kept = chance(20) ? 3 : 0;
    while (decimals.size() > kept && decimals.back() == '0')
        decimals.pop_back();
    return (thousandths < 0 ? "-" : "") + std::to_string(size / 1000) + (decimals.empty() ? "" : "." + decimals);
}

std::string wholeBetween(int least, int most)
{
    return typedNumber(1000 * pick(least, most));
}

std::string numberUpTo(int most)
{
    return typedNumber(pick(0, 1000 * most));
}

int anyDay()
{
    const int when = pick(0, 99);
    return when < 96 ? kNewYear2026 + pick(0, 364) : when < 98 ? kFirstDay : kLastDay;
}

std::string dayText(int day)
{
    const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
    char text[40];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
        static_cast<unsigned>(date.day()));
    return text;
}

std::string dayFrom(int day)
{
    return dayText(std::min(day + pick(0, 40), kLastDay));
}

std::string anyInstant()
{
    static constexpr std::array fractions{"", "", ".5", ".05", ".050", ".000", ".123"};
    static constexpr std::array offsets{"+01:00", "+00:00", "Z", "z", "-00:00", "-09:30", "+14:00", "-23:59"};
    char time[20];
    std::snprintf(time, sizeof time, ":%02d:%02d", pick(0, 59), pick(0, 59));
    const int day = anyDay();
    std::string text = dayText(day) + (chance(10) ? "t" : "T") + anyTimeOfDay().substr(0, 2) + time;
    text += oneOf(fractions);
    text += day == kFirstDay || day == kLastDay ? "Z" : oneOf(offsets); // an instant has a day in UTC too
    return text;
}

std::string anyTimeOfDay()
{
    char time[20];
    std::snprintf(time, sizeof time, "%02d:%02d", pick(0, 23), pick(0, 59));
    return time;
}

std::string anyRule()
{
    std::vector<std::string> parts{chance(50) ? "FREQ=WEEKLY" : "FREQ=DAILY"};
    if (chance(40))
        parts.push_back("INTERVAL=" + std::to_string(pick(1, 4)));
    if (chance(50)) {
        std::string days = someOf({"MO", "TU", "WE", "TH", "FR", "SA", "SU"}, 1, 7);
        std::replace(days.begin(), days.end(), ' ', ',');
        parts.push_back("BYDAY=" + days);
    }
    shuffle(parts);
    std::string rule;
    for (const std::string &part : parts)
        rule += (rule.empty() ? "" : ";") + part;
    if (chance(20))
        std::transform(rule.begin(), rule.end(), rule.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return rule;
}

std::string anySlots()
{
    return typed(someOf(kWords, 1, 3));
}

std::string anyAsks()
{
    const std::string asks = someOf({"stiffness", "during", "after", "spare"}, 0, 4);
    return asks.empty() ? "none" : asks;
}

} // namespace morrow::test
