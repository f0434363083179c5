// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Whose a file is.
///
/// A ref that is known here says it. Of an unknown one a person has to say it, who is shown
/// what the file says of itself: nothing in it, not even a birth year, is a key.

#include "actions/desk.h"
#include "exchange/fhir.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

struct Whose
{
    std::optional<std::string> person; ///< by the ref of the store; nullopt: the file waits
    std::string ref; ///< as it stands in the file
    std::vector<std::string> plans; ///< ids of the plans in it, each once
    std::optional<int> birthYear; ///< of the plan's newest revision that has one
};

[[nodiscard]] Whose whose(const OpenDesk &desk, const FhirDiary &diary);

/// How the desk knows a person, as it was typed last.
struct KnownAs
{
    std::string label;
    std::string fileNumber;
    std::optional<int> birthYear;

    friend bool operator==(const KnownAs &, const KnownAs &) = default;
};

/// What the newest `known_as` among \a entries says; nullopt if there is none, or it was withdrawn.
[[nodiscard]] std::optional<KnownAs> knownAs(const std::vector<Entry> &entries);

} // namespace morrow
