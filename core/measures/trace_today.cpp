// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/trace.h"

#include "measures/today.h"
#include "measures/trace_parts.h"

#include <algorithm>
#include <iterator>

namespace morrow {

namespace {

/// The prescribed sets of \a item that are done.
void addCounted(Trace &trace, const AskedItem &item, CivilDay day)
{
    const std::size_t prescribed = std::min(item.sets.size(), static_cast<std::size_t>(item.dose().sets));
    for (std::size_t place = 0; place < prescribed; ++place) {
        const SetDone *const set = item.sets[place];
        if (set && set->reps >= 1)
            trace.values.push_back({set->entry, day, set->reps});
    }
}

/// What was done before on days of the week, and so decides whether an item is asked for any k of them.
void addShapeOfWeek(Trace &trace, const ComplaintDiary &complaint, const ItemDiary &item, CivilDay day)
{
    const Stage &stage = item.item.stages[static_cast<std::size_t>(stageOn(item, day).number) - 1];
    if (!std::holds_alternative<PerWeek>(stage.rhythm))
        return;
    const Trace week = behindWeekBefore(complaint, item, day);
    std::transform(
        week.values.begin(), week.values.end(), std::back_inserter(trace.shapedBy), [](const Behind &behind) { return behind.entry; });
}

} // namespace

Trace behindToday(const Diary &diary, CivilDay day)
{
    Trace trace{day, day, {}, {}, std::nullopt};
    for (const AskedComplaint &asked : today(diary, day).complaints) {
        const ComplaintDiary &complaint = *asked.complaint;
        for (const AskedSession &session : asked.sessions) {
            for (const AskedItem &item : session.items) {
                if (item.isDue)
                    addCounted(trace, item, day);
            }
        }
        for (const ItemDiary &item : complaint.items) {
            if (day < item.item.start || (item.item.end && *item.item.end < day))
                continue;
            addShape(trace, diary, complaint, item, {*complaint.firstStart(), day, day});
            addShapeOfWeek(trace, complaint, item, day);
        }
    }
    finish(trace);
    return trace;
}

Trace behindWeekBefore(const ComplaintDiary &complaint, const ItemDiary &item, CivilDay day)
{
    const Window week = weekBefore(*complaint.firstStart(), day);
    Trace trace{week.from, week.to, {}, {}, std::nullopt};
    addDoneSets(trace, item, week.from, week.to);
    addStageChanges(trace, item, day, day);
    return trace;
}

} // namespace morrow
