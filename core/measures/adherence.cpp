// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/adherence.h"

#include <algorithm>

namespace morrow {

namespace {

/// Whether \a slot is one that a dose of \a rhythm is prescribed in.
bool isSlotOf(const Rhythm &rhythm, std::string_view slot)
{
    if (const auto *onDays = std::get_if<OnDays>(&rhythm))
        return std::find(onDays->slots.begin(), onDays->slots.end(), slot) != onDays->slots.end();
    return slot == kPerWeekSlot;
}

/// How many of \a marks stand in a slot in which \a item was due.
int marksWhereDue(std::span<const SlotMark> marks, const Item &item, const Window &window, std::span<const ItemDay> days)
{
    return static_cast<int>(
        std::count_if(marks.begin(), marks.end(), [&](const SlotMark &mark) { return isMarkWhereDue(mark, item, window, days); }));
}

/// The ratios that an item and the sum of items share.
template<class Sums>
void addRatios(Sums &sums)
{
    sums.setRatio = ratio(static_cast<double>(sums.setsDone), static_cast<double>(sums.setsDue));
    sums.sessionRatio = ratio(static_cast<double>(sums.sessionsAttended), static_cast<double>(sums.sessionsDue));
}

} // namespace

bool isMarkWhereDue(const SlotMark &mark, const Item &item, const Window &window, std::span<const ItemDay> days)
{
    if (!window.holds(mark.day))
        return false;
    const ItemDay &day = days[window.place(mark.day)];
    return day.due && isSlotOf(item.stages[static_cast<std::size_t>(day.stage - 1)].rhythm, mark.slot);
}

Adherence adherenceOf(const ComplaintDiary &complaint, const ItemDiary &item, const Window &window, std::span<const ItemDay> days,
    std::span<const WeekTally> tallies)
{
    Adherence result;
    VolumeSum due;
    VolumeSum done;
    std::int64_t sets = 0;
    for (const WeekTally &tally : tallies) {
        result.setsDue += tally.setsDue;
        result.setsDone += tally.setsDone;
        result.sessionsDue += tally.sessionsDue;
        result.sessionsAttended += tally.sessionsAttended;
        result.sessionsComplete += tally.sessionsComplete;
        due.add(tally.volumeDue);
        done.add(tally.volumeDone);
        sets += tally.sets;
    }
    result.setsExtra = sets - result.setsDone;
    result.volumeDue = due.value();
    result.volumeDone = done.value();
    result.volumeUnit = due.unit();
    if (result.volumeDue && result.volumeDone)
        result.volumeRatio = ratio(*result.volumeDone, *result.volumeDue);
    addRatios(result);
    result.sessionInterval = wilson(result.sessionsAttended, result.sessionsDue);
    result.skips = marksWhereDue(complaint.skips, item.item, window, days);
    result.easier = marksWhereDue(complaint.easier, item.item, window, days);
    result.away = static_cast<int>(std::count_if(days.begin(), days.end(), [](const ItemDay &day) { return day.away; }));
    return result;
}

AdherenceOfAll adherenceOfAll(std::span<const Adherence> items)
{
    AdherenceOfAll all;
    for (const Adherence &item : items) {
        all.setsDue += item.setsDue;
        all.setsDone += item.setsDone;
        all.setsExtra += item.setsExtra;
        all.sessionsDue += item.sessionsDue;
        all.sessionsAttended += item.sessionsAttended;
        all.sessionsComplete += item.sessionsComplete;
    }
    addRatios(all);
    return all;
}

} // namespace morrow
