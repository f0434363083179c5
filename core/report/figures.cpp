// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/figures.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>

namespace morrow {

namespace {

enum class Part {
    Day,
    Month,
    Year
};

constexpr std::array kMonths{
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"};

std::chrono::year_month_day civil(CivilDay day)
{
    return std::chrono::sys_days(std::chrono::days(day.number()));
}

/// The parts of \a day up to \a most.
std::string upTo(std::chrono::year_month_day day, Part most)
{
    std::string text = std::to_string(static_cast<unsigned>(day.day()));
    if (most >= Part::Month)
        text.append(" ").append(kMonths[static_cast<unsigned>(day.month()) - 1]);
    if (most >= Part::Year)
        text.append(" ").append(std::to_string(static_cast<int>(day.year())));
    return text;
}

} // namespace

std::string figure(double value)
{
    // The largest volume that a file can hold has fewer than 40 digits.
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, 1);
    std::string text(buffer.data(), end.ptr);
    if (text.ends_with(".0"))
        text.resize(text.size() - 2);
    return text == "-0" ? "0" : text;
}

std::string signedFigure(double value)
{
    const std::string text = figure(value);
    return text == "0" || text.starts_with('-') ? text : "+" + text;
}

std::string share(double ratio)
{
    double percent = std::round(ratio * 100);
    if (ratio > 0 && ratio < 1)
        percent = std::clamp(percent, 1.0, 99.0);
    return figure(percent) + " %";
}

std::string signedShare(double ratio)
{
    return signedFigure(std::round(ratio * 100)) + " %";
}

std::string part(std::int64_t done, std::int64_t due)
{
    const std::string counts = std::to_string(done) + " of " + std::to_string(due);
    return due > 0 ? counts + " (" + share(static_cast<double>(done) / static_cast<double>(due)) + ")" : counts;
}

std::string counted(int count, const char *one)
{
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

std::string volume(double value, std::optional<VolumeUnit> unit)
{
    std::string number = figure(value);
    if (!unit)
        return number;
    switch (*unit) {
    case VolumeUnit::Reps:
        return number + " reps";
    case VolumeUnit::Seconds:
        return number + " s";
    case VolumeUnit::KgReps:
        return number + " kg x reps";
    case VolumeUnit::KgSeconds:
        return number + " kg x s";
    }
    return number;
}

std::string dated(CivilDay day)
{
    return upTo(civil(day), Part::Year);
}

std::string datedSpan(CivilDay first, CivilDay last)
{
    if (first >= last)
        return dated(first);
    const auto from = civil(first);
    const auto to = civil(last);
    // What both have in common is said once.
    const Part most = from.year() != to.year() ? Part::Year : from.month() != to.month() ? Part::Month : Part::Day;
    return upTo(from, most) + " to " + dated(last);
}

} // namespace morrow
