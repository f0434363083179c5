// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/today_figures.h"

#include "Entries/sentence_rows.h"
#include "measures/trace.h"

#include <algorithm>
#include <iterator>

namespace morrow {

namespace {

std::vector<EntryIndex> valuesOf(const Trace &trace)
{
    std::vector<EntryIndex> entries;
    std::ranges::transform(trace.values, std::back_inserter(entries), &Behind::entry);
    return entries;
}

/// \a number with its values, and below it what decided how many are asked, if entries did.
std::vector<WordRow> rowsOf(const Diary &diary, const Trace &trace, const QString &number, const QString &some, const QString &none)
{
    std::vector<WordRow> rows{openedRow(diary, number, trace.values.empty() ? none : some, valuesOf(trace))};
    if (!trace.shapedBy.empty())
        //: Over entries that decide how many sets or days are asked.
        rows.push_back(openedRow(diary, TodayFigures::tr("How many are asked"),
            //: Over entries that decide how many sets or days are asked.
            TodayFigures::tr("These entries decide it, together with your plan."), trace.shapedBy));
    return rows;
}

} // namespace

std::vector<WordRow> TodayFigures::sets(const Diary &diary, const Today &today)
{
    return rowsOf(diary, behindToday(diary, today.day), TodayWords::progress(today.setsDone, today.setsDue),
        //: How "2 of 6 sets" was counted.
        tr("The sets that this day asks for and that are done."),
        //: Why it is "0 of 6 sets".
        tr("No set that this day asks for is done yet."));
}

std::vector<WordRow> TodayFigures::week(const Diary &diary, const ComplaintDiary &complaint, const AskedItem &item, CivilDay day)
{
    return rowsOf(diary, behindWeekBefore(complaint, *item.item, day), TodayWords::week(item),
        //: How "1 of 3 days this week so far" was counted.
        tr("The days of this week, before this one, on which you did a set."),
        //: Why it is "0 of 3 days this week so far".
        tr("You did no set on the days of this week before this one."));
}

std::vector<WordRow> TodayFigures::last(const Diary &diary, const LastAnswers &last)
{
    //: Which answers "Your last answers: 2, 3, 2." are.
    return {openedRow(diary, last.words, tr("The newest answers before this day, at most %1.").arg(kLastAnswers), last.entries)};
}

} // namespace morrow
