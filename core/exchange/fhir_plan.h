// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "exchange/json_writer.h"
#include "model/body.h"

#include <span>

namespace morrow::fhir {

/// The member activity of a CarePlan, one activity for each stage of \a items; nothing if
/// there is none. What is said of the whole item stands in its first one.
void writeActivities(JsonWriter &json, std::span<const Body> items);

} // namespace morrow::fhir
