// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How one complaint went, day by day and week by week: what the chart draws and its table says.
///
/// A day without an answer has no point; nothing is put in its place.

#include "base/civil_day.h"
#include "measures/volume.h"
#include "model/diary.h"
#include "model/remarks.h"

#include <optional>
#include <vector>

namespace morrow {

/// How an answer came into the diary.
enum class Entered {
    SameDay,
    Late, ///< on another day than the one that it is about
    Paper, ///< typed in
};

struct PainOnDay
{
    CivilDay day;
    int pain; ///< 0..10
    Entered entered;
    bool isCorrected; ///< the answer stands in the place of an earlier one
    EntryIndex entry;

    friend bool operator==(const PainOnDay &, const PainOnDay &) = default;
};

/// One week, counted from the plan's start and cut to the days that are shown.
struct WorkInWeek
{
    CivilDay first;
    CivilDay last;
    std::optional<double> done; ///< all that was recorded, extra work too
    std::optional<double> due;

    friend bool operator==(const WorkInWeek &, const WorkInWeek &) = default;
};

struct VisitOnDay
{
    CivilDay day;
    int number; ///< from 1, of all visits of the complaint
    std::vector<EntryIndex> entries; ///< of the day

    friend bool operator==(const VisitOnDay &, const VisitOnDay &) = default;
};

struct Course
{
    CivilDay from;
    CivilDay to;
    std::vector<PainOnDay> pain; ///< by day
    std::vector<WorkInWeek> weeks; ///< empty without a plan
    std::optional<VolumeUnit> unit; ///< of the work; nullopt: it is counted in sets
    std::vector<VisitOnDay> visits; ///< by day, one a day
    std::vector<UnusualDay> unusual; ///< by day
};

/// The course of \a complaint of \a diary on the days \a from .. \a to, which are at least one.
///
/// The work is that of the items that load, or of all if none does: their volume (measures,
/// section 3) where every one of them has a known one in the same unit, else the number of sets.
[[nodiscard]] Course courseOf(const Diary &diary, const ComplaintDiary &complaint, CivilDay from, CivilDay to);

/// The entries behind the work of a week.
struct BehindWork
{
    std::vector<EntryIndex> done;
    std::vector<EntryIndex> due; ///< empty where the plan alone says it
};

/// What stands behind \a week of the course of \a complaint.
[[nodiscard]] BehindWork behindWork(const Diary &diary, const ComplaintDiary &complaint, const WorkInWeek &week);

} // namespace morrow
