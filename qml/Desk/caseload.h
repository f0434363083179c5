// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The line of one person in the caseload, and why somebody should look, most pressing first.

#include "actions/whose.h"
#include "base/civil_day.h"
#include "base/clock.h"
#include "model/entry.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// Days without an entry of the person after which they count as silent (our choice: screens
/// speak of a week of silence).
inline constexpr int kSilentDays = 7;

enum class LookReason {
    SignOpen, ///< a stop-and-ask sign that the clinic has not answered for
    RuleContact, ///< the clinician's rule says contact, for another reason
    UnsettledTwice, ///< it says a step down: the last two loading days were unsettled
    Unsettled, ///< a loading day of the last week was unsettled
    Silent, ///< no entry for kSilentDays or more, while a plan runs
    RuleMet, ///< it says the next stage
};

struct Look
{
    LookReason reason;
    int number = 0; ///< of Silent the days, of RuleMet the stage

    friend bool operator==(const Look &, const Look &) = default;
};

struct CaseCard
{
    std::string person; ///< by the ref of the store
    KnownAs known; ///< empty label: no name was typed
    std::vector<Look> looks; ///< by reason, each once; empty: nothing presses
    std::optional<CivilDay> lastEntry; ///< the latest day that the person or a helper entered something about
};

/// The card of \a person, of \a entries as of \a now.
[[nodiscard]] CaseCard cardOf(const std::string &person, std::vector<Entry> entries, const Moment &now);

/// Whether \a one stands before \a other: the more pressing reason, then the name, then the ref.
[[nodiscard]] bool standsBefore(const CaseCard &one, const CaseCard &other);

} // namespace morrow
