// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One entry as one FHIR resource. What R4 has an element for stands there, the rest in
/// our extension, nothing in both.

#include "exchange/json_writer.h"
#include "model/body.h"
#include "model/entry.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace morrow::fhir {

/// What a resource has to know of the bundle that it stands in.
struct Surroundings
{
    std::string patient; ///< its fullUrl
    /// Whether the entry of that id stands in the bundle.
    std::function<bool(std::string_view)> holds;
    /// Whether a newer revision of that plan does.
    std::function<bool(const Body &)> isOldRevision;
};

/// Writes \a entry, whose body is \a body, as the value that \a json expects next.
void writeResource(JsonWriter &json, const Entry &entry, const Body &body, const Surroundings &around);

/// Whether the bundle says in a Provenance what \a entry replaces, where it holds that one.
[[nodiscard]] bool correctsByProvenance(Kind kind) noexcept;

} // namespace morrow::fhir
