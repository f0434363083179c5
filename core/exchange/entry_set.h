// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a set of entries has to hold together, whatever file it came in.

#include "model/body.h"
#include "model/entry.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace morrow {

struct SetProblem
{
    enum class Code {
        TwoContentsForOneId, ///< the entry and an earlier one
        ReplacesLoop,
        ReplacesAnotherKind,
        UnknownComplaint, ///< named, and not in the set
        UnknownItem,
        UnknownStage, ///< a change to a stage that the item does not have
    };

    Code code;
    std::size_t entry; ///< its place
    std::string name; ///< what it names: an id, a key, the number of a stage
    std::string other{}; ///< of a stage: how many the item has
};

/// Corrections among \a entries that lead to another kind, or round in a circle (each told
/// once). What `replaces` names and is not here may come later.
[[nodiscard]] std::vector<SetProblem> correctionProblemsOf(std::span<const Entry *const> entries);

/// Every problem of \a entries, whose bodies are \a bodies: those of corrections, one id with
/// two contents, and a complaint, item or stage that is not among them.
[[nodiscard]] std::vector<SetProblem> problemsOf(std::span<const Entry> entries, std::span<const Body> bodies);

} // namespace morrow
