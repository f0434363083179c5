// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A set of entries as an HL7 FHIR R4 Bundle, and back.
///
///  I1  entries -> bundle -> entries gives the same set, less what the kind of file leaves out.
///  I2  The bytes depend on the entries (and the name that the person chose) only: never on
///      the order they came in, nor on when or where they are written.
///  I3  A file is read whole or not at all; every reason against it is told, with a JSON pointer.
///  I4  What stays at the desk is in no file but those of the record folder.

#include "base/result.h"
#include "exchange/issue.h"
#include "model/entry.h"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

enum class FhirFile {
    Summary, ///< patient to clinic: the diary
    Plan, ///< clinic to patient: all that the clinic said
    Visit, ///< the same, written after a visit
    Record, ///< of the desk's record folder: what is given, desk's own entries included
};

inline constexpr std::size_t kMaxFhirBytes = std::size_t{128} * 1024 * 1024;

struct FhirBundle
{
    std::string json;
    int entries = 0; ///< in the file
    int notesLeftOut = 0; ///< replaced or withdrawn (summary)
    int handedLeftOut = 0;
    int deskOnlyLeftOut = 0; ///< memo, known_as, alias, set_aside
    int othersLeftOut = 0; ///< not the clinic's, in a file to the patient
};

/// What belongs into a \a file of that kind of \a entries (one id each) of \a person.
/// \a name is the person's own choice, empty if none; it is no entry.
[[nodiscard]] FhirBundle writeFhir(std::span<const Entry> entries, std::string_view person, FhirFile file, std::string_view name = {});

struct FhirDiary
{
    FhirFile file = FhirFile::Summary;
    std::string person;
    std::string name; ///< empty: none was given
    std::vector<Entry> entries; ///< one id each, by (day, kind, id)
    int unknownResources = 0; ///< passed over
    int unknownExtensions = 0; ///< passed over
};

/// Reads the bundle in \a json, which is at most kMaxFhirBytes.
[[nodiscard]] Result<FhirDiary, std::vector<Issue>> readFhir(std::string_view json);

} // namespace morrow
