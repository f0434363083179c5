// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A diary as if another plan had been in force, for the rule to be rehearsed on (measures/rehearse.h).
///
///  I1  Nothing is recorded: what comes out is looked at and forgotten.
///  I2  Only plans differ, never what the person entered.
///
/// A proposed plan takes the place of every revision of that complaint's plan; an item that the
/// person has begun under the same key began when it did. What the person did of an item counts
/// for the item of that key only: a changed dose under a new key has nothing done of it yet.

#include "base/result.h"
#include "model/entry.h"

#include <string>
#include <utility>
#include <vector>

namespace morrow {

struct Proposal
{
    std::vector<Entry> plans; ///< entries of a file; those of kind plan count
    /// Of plans, key and value as tables have them; after the plans. An empty value takes the default.
    std::vector<std::pair<std::string, std::string>> settings;
};

/// Why nothing can be rehearsed.
struct ProposalProblem
{
    enum class Code {
        NoPlan, ///< the diary has none
        PlanOfNothing, ///< no plan of the file is about a complaint of the diary, or none shares an item with it
        SettingUnknown, ///< `key`
        ValueRefused, ///< `key` cannot be `value`
        Contradiction ///< the plan that comes of it has `key`, or has it not, against what it says in `value`, another key
    };

    Code code;
    std::string key{};
    std::string value{};
};

/// \a entries with \a proposal in the place of what it changes.
[[nodiscard]] Result<std::vector<Entry>, ProposalProblem> propose(std::vector<Entry> entries, const Proposal &proposal);

} // namespace morrow
