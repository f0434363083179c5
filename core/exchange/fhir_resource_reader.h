// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One FHIR resource as the entry that it is, every reason against it told.

#include "exchange/issue.h"
#include "exchange/json_tree.h"
#include "model/body.h"
#include "model/entry.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow::fhir {

/// An entry as its resource tells it. What it replaces may stand elsewhere in the bundle.
struct FoundEntry
{
    Entry entry;
    Body body;
    std::string subject; ///< the reference to whom it is about
    std::string replacesUrl; ///< the fullUrl of what it replaces, where the resource names that
};

/// Reads \a resource, which lies at \a pointer and has an identifier of ours; nullopt if
/// anything is wrong with it, which is added to \a issues.
[[nodiscard]] std::optional<FoundEntry> readResource(JsonValue resource, std::string_view pointer, std::vector<Issue> &issues);

} // namespace morrow::fhir
