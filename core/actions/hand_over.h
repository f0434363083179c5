// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The summary that a person hands over.
///
///  I1  What the preview says is what the file holds: it is read out of its bytes.
///  I2  That a file was handed over is recorded once the file is written, and stays at home.

#include "actions/open.h"
#include "base/file.h"
#include "exchange/fhir.h"

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace morrow {

struct HandOver
{
    std::string bytes; ///< of the file
    std::string sha256; ///< of the bytes, in lower-case hexadecimal
    std::string person;
    std::string name; ///< empty: none is in it
    std::vector<Entry> entries; ///< in it
    std::map<Kind, int> counts; ///< of them
    std::optional<CivilDay> from; ///< the days that they are about; nullopt: there is none
    std::optional<CivilDay> to;
    int notesLeftOut = 0; ///< that were replaced or withdrawn
    int handedLeftOut = 0; ///< records of earlier files
};

/// The summary of \a diary, nothing written yet. \a name is what the person chose to add, if
/// anything. nullopt if it could not be read back.
[[nodiscard]] std::optional<HandOver> previewHandOver(const OpenDiary &diary, std::string_view name = {});

using HandOverError = std::variant<StoreError, FileError>;

/// Writes \a file to \a path and records that it was handed to \a addressee, which may be
/// empty. With a StoreError the file is there and only the record of it is not.
[[nodiscard]] Result<Entry, HandOverError> handOver(
    OpenDiary &diary, const HandOver &file, const std::filesystem::path &path, const std::string &addressee, const Moment &now);

} // namespace morrow
