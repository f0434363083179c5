// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The next revision of a plan.
///
///  I1  A revision never changes a day that has passed: it is in force from the day after it was
///      issued at the earliest (the first one: from its own start), and on every day before that
///      the same sets are due as by the last one.
///  I2  What was begun is not altered but ended: a changed dose or rhythm is an item of its own,
///      which names the one that it continues. A stage that was not in force yet may change.

#include "base/clock.h"
#include "base/result.h"
#include "model/diary.h"
#include "model/draft.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// Why a plan is not the next revision.
struct PlanProblem
{
    enum class Code {
        Unreadable, ///< it lacks what a plan needs
        Withdraws, ///< a plan is replaced or its items ended, never taken back
        ComplaintUnknown,
        AnotherPlan, ///< it has another id than the complaint's plan
        NumberRefused, ///< it is not the last one's number and one
        FromTooEarly, ///< before the day after it is issued; the first one: not on its first start; `day` is the earliest
        PastChanges, ///< on `day`, before it is in force, another set of `item` would be due
        BegunItemChanges, ///< `item` was begun, and is missing, moved or altered
        NewItemTooEarly, ///< `item` is new and starts before the revision is in force
        ContinuesUnknown, ///< `item` continues one that the plan does not hold
        ContinuesOverlaps, ///< `item` starts before the one that it continues has ended
        ItemTwice,
        ItemOfAnotherPlan, ///< `item` is the key of one in another plan of this person
    };

    Code code;
    std::string item{};
    std::optional<CivilDay> day{};
};

/// \a draft, of kind plan and by the clinic, as the next revision of the complaint's plan in
/// \a diary: filled in with the plan's id (a new one: \a newPlan), number, day and what it
/// replaces, where it does not say them. Issued at \a now.
[[nodiscard]] Result<Draft, std::vector<PlanProblem>> nextRevision(
    const Diary &diary, Draft draft, const Moment &now, const std::string &newPlan);

} // namespace morrow
