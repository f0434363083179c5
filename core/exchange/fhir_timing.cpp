// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_timing.h"

#include "model/rhythm.h"

#include <algorithm>
#include <array>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

constexpr std::array kWeekdays{"mon"sv, "tue"sv, "wed"sv, "thu"sv, "fri"sv, "sat"sv, "sun"sv};

/// Never none: what has no slots counts once.
int slotsOf(const Body &stage)
{
    const std::string_view slots = stage.textOr(Field::Slots);
    return static_cast<int>(std::count(slots.begin(), slots.end(), ' ')) + 1;
}

int daysOf(const Repeat &repeat)
{
    return repeat.unit == "wk"sv && !repeat.days.empty() ? static_cast<int>(repeat.days.size()) : 1;
}

} // namespace

std::optional<Repeat> repeatOf(const Body &stage)
{
    if (const Decimal *const perWeek = stage.number(Field::PerWeek))
        return Repeat{.frequency = perWeek->toInt(), .period = 1, .unit = "wk", .days = {}};
    const auto parsed = RecurrenceRule::parse(stage.textOr(Field::Rrule));
    if (!parsed)
        return std::nullopt;
    const bool isWeekly = parsed->frequency() == RecurrenceRule::Frequency::Weekly;
    Repeat repeat{.frequency = 1, .period = parsed->interval(), .unit = isWeekly ? "wk" : "d", .days = {}};
    for (std::size_t i = 0; i < kWeekdays.size(); ++i) {
        if ((parsed->weekdays() >> i & 1U) != 0)
            repeat.days.emplace_back(kWeekdays[i]);
    }
    repeat.frequency = slotsOf(stage) * daysOf(repeat);
    return repeat;
}

bool readRepeat(const Repeat &repeat, Body &stage)
{
    const bool isWeekly = repeat.unit == "wk"sv;
    if ((!isWeekly && repeat.unit != "d"sv) || repeat.period < 1)
        return false;
    if (isWeekly && repeat.days.empty() && !stage.has(Field::Slots)) {
        if (repeat.period != 1)
            return false;
        stage.set(Field::PerWeek, Decimal::whole(repeat.frequency));
        return true;
    }
    if (repeat.frequency != slotsOf(stage) * daysOf(repeat))
        return false;
    unsigned weekdays = 0;
    for (const std::string &day : repeat.days) {
        const auto *const found = std::find(kWeekdays.begin(), kWeekdays.end(), day);
        if (found == kWeekdays.end())
            return false;
        weekdays |= 1U << static_cast<unsigned>(found - kWeekdays.begin());
    }
    const auto parsed = RecurrenceRule::from(isWeekly ? RecurrenceRule::Frequency::Weekly : RecurrenceRule::Frequency::Daily, repeat.period,
        static_cast<std::uint8_t>(weekdays));
    if (!parsed)
        return false;
    stage.set(Field::Rrule, parsed->toString());
    return true;
}

bool isToldByRepeat(const Body &stage)
{
    Body again;
    if (const Body::Value *const slots = stage.find(Field::Slots))
        again.set(Field::Slots, *slots);
    const auto repeat = repeatOf(stage);
    const bool isRead = repeat && readRepeat(*repeat, again);
    const auto same = [&](Field field) {
        const Body::Value *const one = stage.find(field);
        const Body::Value *const other = again.find(field);
        return one && other ? *one == *other : one == other;
    };
    return (isRead || !repeat) && same(Field::Rrule) && same(Field::PerWeek);
}

} // namespace morrow::fhir
