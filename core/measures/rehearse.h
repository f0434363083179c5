// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the clinician's rule (progression.h) would have said on each day of a past diary.
///
/// On every day that has passed the rule is asked as it would be asked then: with the rows up to
/// that day, the stage in force on it, and the plan and limits that \a diary holds, whichever were
/// in force at the time. So a plan can be tried on a diary before it is issued (actions/rehearse.h).
/// Nobody is stepped up by it: an offer that was not taken is made again on the next day. Rows count
/// as they stand now; what was entered late or corrected later is known from the start.

#include "measures/progression.h"
#include "model/diary.h"

#include <string>
#include <vector>

namespace morrow {

/// Days in a row on which the rule said the same, for the same reasons.
struct RehearsedSpan
{
    CivilDay first; ///< the last closed day that the rule was asked as of
    CivilDay last;
    int stage; ///< in force
    Progression progression; ///< of the first day; on the others values may differ, what is met does not
    std::vector<std::vector<Reason>> reasons; ///< of each of the days
};

struct RehearsedItem
{
    std::string item; ///< key
    std::vector<RehearsedSpan> spans; ///< by day; days on which nobody asks the rule are in none
};

struct RehearsedComplaint
{
    std::string complaint; ///< key
    std::vector<RehearsedItem> items; ///< plan order
};

/// The rule on the days from P to \a to of each complaint that has started by then. With the
/// authority off it says nothing.
[[nodiscard]] std::vector<RehearsedComplaint> rehearse(const Diary &diary, CivilDay to);

} // namespace morrow
