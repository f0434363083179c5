// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the clinician's own rule says about the next stage of an item (measures, section 7).
/// Nobody is ever stepped up by the program, and a clinician's instruction always wins.
///
/// "Such days" are the days d with a done set of the item, since its stage began, on which it
/// was due, with d + 1 <= to and to - d < step_window_days; E = the last step_sessions of them.
/// Checked in this order; the first that applies decides:
///
///     contact    a stop-and-ask sign about any day up to today (to + 1) that the clinic has not
///                answered for by today; or, on the days to - 2 .. today, pain in or after a
///                session >= contact_level, or a check >= contact_level that is at least
///                contact_rise above the usual of the day before, or whose usual is unknown
///     step-down  the last 2 such days are both unsettled; to stage - 1, in stage 1 to none
///     step-up    no condition is unmet; to stage + 1
///     hold
///
/// Every row up to `to` counts, whatever the window; in contact also those of today.

#include "measures/check.h"
#include "measures/days.h"
#include "measures/response.h"
#include "measures/week_rules.h"
#include "model/diary.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace morrow {

enum class Decision {
    Contact,
    StepDown,
    StepUp,
    Hold
};

/// What has to hold for a step up, in the order in which it is told; and, last, what makes
/// for contact or a step down.
enum class Condition {
    DaysInStage, ///< days since it began, both ends counted, without those of a pause >= min_days
    SessionsInStage, ///< sessions attended since it began >= min_sessions
    Adherence, ///< set ratio since it began >= step_adherence
    SetsComplete, ///< on each of the step_sessions days of E what was due was done at the dose
    PainDuring, ///< each day of E has a session, every session a value within the limit
    PainAfter,
    Settled, ///< E is not empty, and each of its days is
    WeeklyRise, ///< the rule `weekly` is ok
    Level, ///< current <= reference + level_rise_allowed
    NextStage, ///< there is one
    Sign, ///< one that nobody answered for
    SessionPain, ///< at contact_level or above
    CheckPain, ///< the same, well above usual
    LastTwoUnsettled,
};

/// A condition with the values put in. Unknown does not hold.
struct Reason
{
    Condition condition;
    bool isMet = false;
    std::optional<double> value;
    std::optional<double> limit;

    friend bool operator==(const Reason &, const Reason &) = default;
};

/// Why another item goes first.
enum class GoesFirst {
    LongerInStage, ///< both would step up
    EarlierInPlan, ///< the same, as long in their stages
    SteppedUp ///< less than step_spacing_days ago
};

/// An item that another one waits for.
struct WaitsFor
{
    std::string item; ///< key
    GoesFirst because;
    std::optional<EntryIndex> change; ///< the stage change that it is so by; none if it is in stage 1 from the start

    friend bool operator==(const WaitsFor &, const WaitsFor &) = default;
};

struct Progression
{
    Decision decision = Decision::Hold;
    std::optional<int> toStage;
    std::vector<WaitsFor> waitsFor; ///< plan order; only of what would step up
    std::vector<Condition> unmet; ///< in order, whatever the decision
    std::vector<Reason> reasons; ///< every condition that was looked at, in order

    friend bool operator==(const Progression &, const Progression &) = default;
};

/// The sets of \a item on \a day.
[[nodiscard]] std::span<const SetDone> setsOf(const ItemDiary &item, CivilDay day);

/// "Such days" of \a item in \a window, which ends on `to` and begins no earlier than its stage and the last
/// step_window_days; \a days are those of the window.
[[nodiscard]] std::vector<CivilDay> judgedDays(const ItemDiary &item, const Window &window, std::span<const ItemDay> days);

/// What progression reads beside the complaint itself.
struct ProgressionBasis
{
    const Diary &diary;
    const ComplaintDiary &complaint;
    const Responses &responses;
    std::span<const WeekRule> rules;
    const CheckMeasures &check; ///< reference and current do not depend on the window
    CivilDay planStart; ///< P
    CivilDay to;
};

/// One for each item, in plan order; nullopt for one that has not started, is over, is put
/// aside or does not load, and for all where the plan's authority is off.
[[nodiscard]] std::vector<std::optional<Progression>> progressions(const ProgressionBasis &basis);

} // namespace morrow
