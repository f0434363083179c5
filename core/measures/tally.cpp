// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/tally.h"

#include <algorithm>
#include <array>
#include <functional>
#include <numeric>

namespace morrow {

namespace {

/// What was done of an item on one day.
struct DayDone
{
    std::int64_t sets = 0;
    std::int64_t slots = 0; ///< with a done set
    std::int64_t complete = 0; ///< slots with all sets of a session
    double volume = 0; ///< in millionths
};

/// A dose and how it is counted.
struct CountedDose
{
    const Dose &dose;
    const StageVolume &volume;
};

/// The done sets of one day, given by slot; adds them to what \a tally holds of every done set.
DayDone addRecorded(std::span<const SetDone> sets, const CountedDose &counted, WeekTally &tally)
{
    DayDone day;
    std::int64_t inSlot = 0;
    for (std::size_t i = 0; i < sets.size(); ++i) {
        const SetDone &set = sets[i];
        if (set.reps >= 1) {
            const double volume = counted.volume.of(set);
            const auto tension = counted.volume.tension(set);
            ++inSlot;
            ++day.sets;
            day.volume += volume;
            ++tally.sets;
            tally.reps += set.reps;
            tally.volume.add(counted.volume.unit(), volume);
            if (const auto strength = counted.volume.strength(set))
                tally.strength = std::max(tally.strength.value_or(*strength), *strength);
            if (!tension)
                tally.tensionSeconds = std::nullopt;
            else if (tally.tensionSeconds)
                *tally.tensionSeconds += *tension;
        }
        if (i + 1 == sets.size() || sets[i + 1].slot != set.slot) {
            day.slots += inSlot >= 1 ? 1 : 0;
            day.complete += inSlot >= counted.dose.sets ? 1 : 0;
            inSlot = 0;
        }
    }
    return day;
}

/// A day of a rule on which \a counted was due in each of \a slots.
void addDueDay(const DayDone &day, std::int64_t slots, const CountedDose &counted, WeekTally &tally)
{
    const std::int64_t due = slots * counted.dose.sets;
    tally.setsDue += due;
    tally.setsDone += std::min(day.sets, due);
    tally.sessionsDue += slots;
    tally.sessionsAttended += std::min(day.slots, slots);
    tally.sessionsComplete += std::min(day.complete, slots);
    const double volumeDue = static_cast<double>(slots) * counted.volume.session();
    tally.volumeDue.add(counted.volume.unit(), volumeDue);
    tally.volumeDone.add(counted.volume.unit(), std::min(day.volume, volumeDue));
}

/// k a / 7 to the nearest whole number; sevenths have no half.
constexpr std::size_t expectedSessions(int perWeek, std::size_t days) noexcept
{
    return (static_cast<std::size_t>(perWeek) * days + 3) / 7;
}

/// The sum of the \a count greatest of \a values.
template<class T>
T sumOfLargest(std::span<T> values, std::size_t count)
{
    std::sort(values.begin(), values.end(), std::greater<>());
    return std::accumulate(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(std::min(count, values.size())), T{});
}

/// The days of a part, none excluded, on \a perWeek of which (in a whole week) \a counted was due.
void addDuePart(std::span<const DayDone> days, int perWeek, const CountedDose &counted, WeekTally &tally)
{
    const std::size_t sessions = expectedSessions(perWeek, days.size());
    if (sessions == 0)
        return;
    std::array<std::int64_t, 7> sets{};
    std::array<double, 7> volumes{};
    std::int64_t attended = 0;
    std::int64_t complete = 0;
    const std::int64_t setsOfSession = counted.dose.sets;
    for (std::size_t i = 0; i < days.size(); ++i) {
        sets[i] = std::min(days[i].sets, setsOfSession);
        volumes[i] = std::min(days[i].volume, counted.volume.session());
        attended += days[i].sets >= 1 ? 1 : 0;
        complete += days[i].sets >= setsOfSession ? 1 : 0;
    }
    const auto due = static_cast<std::int64_t>(sessions);
    tally.setsDue += due * setsOfSession;
    tally.setsDone += sumOfLargest(std::span(sets).first(days.size()), sessions);
    tally.sessionsDue += due;
    tally.sessionsAttended += std::min(attended, due);
    tally.sessionsComplete += std::min(complete, due);
    tally.volumeDue.add(counted.volume.unit(), static_cast<double>(due) * counted.volume.session());
    tally.volumeDone.add(counted.volume.unit(), sumOfLargest(std::span(volumes).first(days.size()), sessions));
}

/// Walks through the sets of an item, day by day.
class SetsByDay
{
public:
    SetsByDay(std::span<const SetDone> sets, CivilDay from)
        : m_rest(
            sets.subspan(static_cast<std::size_t>(std::lower_bound(sets.begin(), sets.end(), from, [](const SetDone &set, CivilDay day) {
                return set.day < day;
            }) - sets.begin())))
    {
    }

    /// The sets of \a day, which is later than the one asked for before.
    std::span<const SetDone> next(CivilDay day)
    {
        std::size_t count = 0;
        while (count < m_rest.size() && m_rest[count].day == day)
            ++count;
        const auto sets = m_rest.first(count);
        m_rest = m_rest.subspan(count);
        return sets;
    }

private:
    std::span<const SetDone> m_rest;
};

} // namespace

std::vector<WeekTally> weekTallies(const ItemDiary &item, const Window &window, std::span<const Week> weeks, std::span<const ItemDay> days,
    const std::optional<Decimal> &bodyMassKg)
{
    const std::vector<StageVolume> volumes = stageVolumes(item.item, bodyMassKg);
    std::vector<WeekTally> tallies(weeks.size());
    SetsByDay sets(item.sets, window.from);
    std::array<DayDone, 7> part;
    for (std::size_t i = 0; i < weeks.size(); ++i) {
        std::size_t partLength = 0;
        for (CivilDay day = weeks[i].first; day <= weeks[i].last; day = day + 1) {
            const ItemDay &itemDay = days[window.place(day)];
            const auto stage = static_cast<std::size_t>(itemDay.stage - 1);
            const CountedDose counted{item.item.stages[stage].dose, volumes[stage]};
            const Rhythm &rhythm = item.item.stages[stage].rhythm;
            const auto *onDays = std::get_if<OnDays>(&rhythm);

            const DayDone done = addRecorded(sets.next(day), counted, tallies[i]);
            if (itemDay.due && onDays != nullptr)
                addDueDay(done, static_cast<std::int64_t>(onDays->slots.size()), counted, tallies[i]);
            else if (itemDay.due)
                part[partLength++] = done;

            const bool endsPart = day == weeks[i].last || days[window.place(day) + 1].stage != itemDay.stage;
            if (endsPart && onDays == nullptr)
                addDuePart(std::span(part).first(partLength), std::get<PerWeek>(rhythm).sessions, counted, tallies[i]);
            if (endsPart)
                partLength = 0;
        }
    }
    return tallies;
}

} // namespace morrow
