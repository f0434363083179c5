// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Measures as the one object that `morrow-batch measure` prints.

#include "batch/json.h"
#include "measures/measures.h"

namespace morrow::batch {

/// Days as text, a side as left, right or both, whatever is absent as null. A measure that is not
/// built has no key.
[[nodiscard]] Json toJson(const std::vector<ComplaintMeasures> &measures, CivilDay to);

/// The conditions of a rule: names, text keys and the values put in.
[[nodiscard]] Json reasonsJson(const std::vector<Reason> &reasons);

/// What the rule says, with its reasons.
[[nodiscard]] Json progressionJson(const Progression &progression);

} // namespace morrow::batch
