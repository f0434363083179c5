// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Finding things in a resource that somebody else wrote: nothing is taken to be there.

#include "exchange/issue.h"
#include "exchange/json_tree.h"

#include <optional>
#include <string_view>
#include <vector>

namespace morrow::fhir {

/// The text that \a path, with `/` between keys, leads to in \a value: keys of objects, the
/// first element of arrays. nullopt where there is none.
[[nodiscard]] std::optional<std::string_view> textAt(JsonValue value, std::string_view path);

/// The value of \a resource's first identifier in our \a system; nullopt if it has none.
[[nodiscard]] std::optional<std::string_view> identifierOf(JsonValue resource, std::string_view system);

/// Whether \a resource says that it follows our profile \a name.
[[nodiscard]] bool claimsProfile(JsonValue resource, std::string_view name);

/// Adds a ModifierRefused for each element in \a value that could change the meaning of the
/// others, and gives how many extensions in it are not ours.
int checkExtensions(JsonValue value, std::string_view pointer, std::vector<Issue> &issues);

/// The code of \a codeable (a CodeableConcept) in \a system; nullopt if it has none there.
[[nodiscard]] std::optional<std::string_view> codeIn(JsonValue codeable, std::string_view system);

} // namespace morrow::fhir
