// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The clinic says something about a person: one entry, checked, then durable in the record.
///
///  I1  What is written can be read back; else it is refused.
///  I2  Only the clinic speaks here; what a patient says comes in a file.

#include "actions/desk.h"
#include "actions/prescribe.h"
#include "actions/record.h"

#include <string>
#include <variant>
#include <vector>

namespace morrow {

/// Why the desk did not record.
enum class DeskProblem {
    RefRefused, ///< the person's ref is none
    ErasedPerson,
    UnknownFile, ///< to be set aside
    NotReadBack, ///< the reader of files refuses it
};

using DeskRecordError = std::variant<StoreError, FileError, DeskProblem, std::vector<DraftProblem>, std::vector<PlanProblem>>;

/// Records \a draft about the person who is also \a ref; an unknown ref is somebody new. A plan
/// is the next revision, see nextRevision. Its bundle holds what it names, so that it can be read alone.
[[nodiscard]] Result<Entry, DeskRecordError> recordAtDesk(OpenDesk &desk, const std::string &ref, Draft draft, const Moment &now);

/// A file for the person who is also \a ref, of kind Plan or Visit: all that the clinic said, but
/// what stays at the desk. Missing if nobody is.
[[nodiscard]] Result<FhirBundle, StoreError> fileForPatient(OpenDesk &desk, const std::string &ref, FhirFile file);

} // namespace morrow
