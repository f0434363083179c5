// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Charts/course.h"

#include "measures/days.h"
#include "measures/tally.h"
#include "measures/trace.h"

#include <algorithm>

namespace morrow {

namespace {

std::vector<PainOnDay> painOf(const Diary &diary, const ComplaintDiary &complaint, CivilDay from, CivilDay to)
{
    std::vector<PainOnDay> pain;
    for (const Check &check : complaint.checks) {
        if (!check.pain || check.day < from || check.day > to)
            continue;
        const auto recorded = diary.recordedOn(check.entry);
        const Entered entered = !recorded ? Entered::Paper : *recorded == check.day ? Entered::SameDay : Entered::Late;
        pain.push_back({check.day, check.pain->value(), entered, diary.entries()[check.entry].replaces.has_value(), check.entry});
    }
    return pain;
}

/// The items whose work is shown: those that load, or all if none does.
std::vector<const ItemDiary *> itemsShown(const ComplaintDiary &complaint)
{
    const bool anyLoads
        = std::any_of(complaint.items.begin(), complaint.items.end(), [](const ItemDiary &item) { return item.item.loads; });
    std::vector<const ItemDiary *> items;
    for (const ItemDiary &item : complaint.items) {
        if (item.item.loads || !anyLoads)
            items.push_back(&item);
    }
    return items;
}

/// What each item that is shown adds to each of \a weeks.
std::vector<std::vector<WeekTally>> talliesOf(
    const Diary &diary, const ComplaintDiary &complaint, const Window &window, const std::vector<Week> &weeks)
{
    const auto kept = interruptions(diary.pauses(), complaint, window);
    std::vector<std::vector<WeekTally>> all;
    for (const ItemDiary *const item : itemsShown(complaint))
        all.push_back(weekTallies(*item, window, weeks, itemDays(*item, kept, window), diary.bodyMassKg()));
    return all;
}

void addWork(Course &course, const std::vector<Week> &weeks, const std::vector<std::vector<WeekTally>> &items)
{
    VolumeSum whole;
    for (const auto &tallies : items) {
        for (const WeekTally &tally : tallies) {
            whole.add(tally.volume);
            whole.add(tally.volumeDue);
        }
    }
    course.unit = whole.value() ? whole.unit() : std::nullopt;
    for (std::size_t number = 0; number < weeks.size(); ++number) {
        VolumeSum done;
        VolumeSum due;
        std::int64_t sets = 0;
        std::int64_t setsDue = 0;
        for (const auto &tallies : items) {
            done.add(tallies[number].volume);
            due.add(tallies[number].volumeDue);
            sets += tallies[number].sets;
            setsDue += tallies[number].setsDue;
        }
        WorkInWeek week{weeks[number].first, weeks[number].last, static_cast<double>(sets), static_cast<double>(setsDue)};
        if (course.unit) {
            week.done = done.value();
            week.due = due.value();
        }
        course.weeks.push_back(week);
    }
}

std::vector<VisitOnDay> visitsOf(const ComplaintDiary &complaint, CivilDay from, CivilDay to)
{
    std::vector<VisitOnDay> visits;
    int number = 0;
    for (const CivilDay day : visitDays(complaint, to)) {
        ++number;
        if (day < from)
            continue;
        visits.push_back({day, number, {}});
        for (const Behind &behind : behindVisit(complaint, to, day, VisitFigure::Given).values)
            visits.back().entries.push_back(behind.entry);
    }
    return visits;
}

std::vector<UnusualDay> unusualDaysOf(const Diary &diary, CivilDay from, CivilDay to)
{
    std::vector<UnusualDay> days = Remarks::of(diary).unusual;
    std::erase_if(days, [from, to](const UnusualDay &unusual) { return unusual.day < from || unusual.day > to; });
    return days;
}

} // namespace

Course courseOf(const Diary &diary, const ComplaintDiary &complaint, CivilDay from, CivilDay to)
{
    Course course{.from = from, .to = to};
    course.pain = painOf(diary, complaint, from, to);
    course.visits = visitsOf(complaint, from, to);
    course.unusual = unusualDaysOf(diary, from, to);
    const auto planStart = complaint.firstStart();
    if (planStart && *planStart <= to) {
        const Window window{*planStart, std::max(*planStart, from), to};
        const std::vector<Week> weeks = weeksOf(window);
        addWork(course, weeks, talliesOf(diary, complaint, window, weeks));
    }
    return course;
}

BehindWork behindWork(const Diary &diary, const ComplaintDiary &complaint, const WorkInWeek &week)
{
    BehindWork behind;
    const auto planStart = complaint.firstStart();
    if (!planStart)
        return behind;
    const auto add = [](std::vector<EntryIndex> &to, const Trace &trace) {
        for (const EntryIndex entry : trace.entries()) {
            if (std::find(to.begin(), to.end(), entry) == to.end()) // a pause is behind several items
                to.push_back(entry);
        }
    };
    const Window window{*planStart, week.first, week.last};
    for (const ItemDiary *const item : itemsShown(complaint)) {
        add(behind.done, behindAdherence(diary, complaint, *item, window, AdherenceFigure::Done));
        add(behind.due, behindAdherence(diary, complaint, *item, window, AdherenceFigure::Due));
    }
    return behind;
}

} // namespace morrow
