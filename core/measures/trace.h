// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a number was made of, found when somebody opens it: measures themselves carry nothing.
///
/// A trace names the entries whose values were put in, and those that decided which days and
/// values count (stage changes, pauses, visits, done sets that make a loading day). Nothing else
/// among the person's entries bears on the number: take away any other fact (an entry with all
/// that it corrects and that is about the same thing) and it stays what it is. Behind every
/// number stand also the complaint, its plan and the person's settings, which are not listed.
///
/// The days and limits are those of the rule as it was computed, so that words can put them in.

#include "measures/days.h"
#include "measures/progression.h"
#include "measures/response.h"
#include "measures/week_rules.h"
#include "model/diary.h"

#include <optional>
#include <vector>

namespace morrow {

/// An entry with the value of it that was put in.
struct Behind
{
    EntryIndex entry;
    CivilDay day;
    std::optional<double> value; ///< nullopt: that it is there is what counts

    friend bool operator==(const Behind &, const Behind &) = default;
};

struct Trace
{
    CivilDay first; ///< the days that were looked at
    CivilDay last;
    std::vector<Behind> values; ///< by day, each entry once
    std::vector<EntryIndex> shapedBy; ///< by place, each once, none of `values`
    std::optional<double> limit;

    /// All of its entries, those of the values first.
    [[nodiscard]] std::vector<EntryIndex> entries() const;
};

enum class AdherenceFigure {
    Due, ///< sets, sessions, volume: what shaped the days
    Done, ///< sets, extra ones, sessions, volume, and the ratios; the value is the reps
    Skips,
    Easier,
    Away
};

/// Section 3; over one week of the window also the numbers of section 4 and of section 3 in it, but
/// for volumeChange, which is made of that week and the one before.
[[nodiscard]] Trace behindAdherence(
    const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window, AdherenceFigure figure);

enum class CheckFigure {
    Recorded,
    SameDay,
    Late,
    Paper,
    Declined,
    FirstWeek,
    Reference, ///< no entry where the first assessment gave it
    Current,
    Change, ///< also changeRatio and clearChange
    Trend,
    Limits, ///< centre, range and the limits: the first days only
    Beyond, ///< the later days that lie outside of them
    StiffnessRecorded,
    StiffnessCurrent,
    StiffnessTrend
};

/// Section 5.
[[nodiscard]] Trace behindCheck(const Diary &diary, const ComplaintDiary &complaint, const Window &window, CheckFigure figure);

/// Section 6: the response to the loading on \a day; its value is the check of the day after.
[[nodiscard]] Trace behindResponse(const ComplaintDiary &complaint, CivilDay to, CivilDay day);
/// How many loading days of \a first .. \a last are \a state: their checks of the day after, and all that bears on any of them.
[[nodiscard]] Trace behindResponses(const ComplaintDiary &complaint, CivilDay first, CivilDay last, ResponseState state);
[[nodiscard]] Trace behindRule(const ComplaintDiary &complaint, CivilDay to, WeekRuleName rule);

/// Section 7: \a reason of the rule for \a item as of \a window.to, with its limit; the window begins on P.
[[nodiscard]] Trace behindCondition(
    const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window, const Reason &reason);

enum class VisitFigure {
    Before,
    After, ///< all weeks up to the next visit
    Change,
    Given ///< seconds, impulses, impulses per cm2
};

/// Section 8: the visits on \a day; two or more of one day are one.
[[nodiscard]] Trace behindVisit(const ComplaintDiary &complaint, CivilDay to, CivilDay day, VisitFigure figure);

/// Section 9: the series that \a like belongs to; with \a ratio only what that is made of.
[[nodiscard]] Trace behindOutcome(const ComplaintDiary &complaint, CivilDay to, const Outcome &like, bool ratio = false);

/// today.h: the sets done of those that \a day asks for.
[[nodiscard]] Trace behindToday(const Diary &diary, CivilDay day);
/// today.h: on how many days of the week of \a day, before it, \a item was done, of those that are asked; its plan has begun.
[[nodiscard]] Trace behindWeekBefore(const ComplaintDiary &complaint, const ItemDiary &item, CivilDay day);

/// The checks of the days \a first .. \a last that have a pain value, as they are put in.
[[nodiscard]] std::vector<Behind> behindPains(const ComplaintDiary &complaint, CivilDay first, CivilDay last);

} // namespace morrow
