// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The clinician's limits over the last 7 closed days (measures, section 6). Screens say
/// "above the limit your clinic set", never "damage".
///
///     during, after   greatest pain in a session, after it > during_limit, after_limit
///     check           greatest check > check_limit; unknown while none is set
///     settled         unsettled loading days d with d + 1 <= to > 0; unknown if none is known
///     weekly          mean of the last 7 days - mean of the 7 before > weekly_rise_allowed,
///                     at least 4 values each, soreness days included
///     stiffness       the same on minutes > weekly_stiffness_allowed
///
/// Every row up to `to` counts, whatever the window. What is not asked has no rule.

#include "measures/response.h"
#include "model/diary.h"

#include <optional>
#include <vector>

namespace morrow {

enum class WeekRuleName {
    During,
    After,
    Check,
    Settled,
    Weekly,
    Stiffness
};

enum class RuleState {
    Ok,
    Exceeded,
    Unknown ///< nothing is known
};

struct WeekRule
{
    WeekRuleName rule;
    RuleState state = RuleState::Unknown;
    std::optional<double> value;
    std::optional<double> limit; ///< nullopt: none is set

    friend bool operator==(const WeekRule &, const WeekRule &) = default;
};

/// The rules of \a complaint as of \a to, in the order above; those that are not asked are left out.
[[nodiscard]] std::vector<WeekRule> weekRules(const ComplaintDiary &complaint, const Responses &responses, CivilDay to);

} // namespace morrow
