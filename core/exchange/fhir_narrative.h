// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The first page of a summary: what somebody reads who opens the file in another
/// program. English in fixed words, counts and days only; nothing that a person wrote
/// stands in it.

#include "exchange/json_writer.h"
#include "model/entry.h"

#include <span>
#include <string_view>

namespace morrow::fhir {

/// Writes the Composition over \a entries (in the order of the bundle) as the next value.
void writeComposition(JsonWriter &json, std::span<const Entry *const> entries, std::string_view patient, std::string_view timestamp);

} // namespace morrow::fhir
