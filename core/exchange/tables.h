// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A diary as a folder of CSV tables (RFC 4180, described by csv-metadata.json): how a
/// paper diary is typed in, and how a researcher reads one.
///
///  I1  A folder is read whole or not at all; every reason against it is told.
///  I2  tables -> entries -> tables gives the same rows, the second time the same bytes.
///  I3  The order of files and columns never matters, that of rows only in
///      complaints.csv and plan.csv.
///  I4  A cell that a spreadsheet would run as a formula is written so that it is text.

#include "base/result.h"
#include "exchange/issue.h"
#include "model/entry.h"

#include <cstddef>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// The entries of one diary and whose it is.
struct TablesDiary
{
    std::vector<Entry> entries; ///< one id each, by (day, kind, id)
    std::optional<std::string> person; ///< `patient_ref`
};

inline constexpr std::size_t kMaxTableBytes = std::size_t{128} * 1024 * 1024;

/// Reads the folder at \a folder.
[[nodiscard]] Result<TablesDiary, std::vector<Issue>> readTables(const std::filesystem::path &folder);

/// Reads the folder whose files are \a files, name to bytes. What readTables refuses for its size is
/// for the caller to refuse: the bytes are here already.
[[nodiscard]] Result<TablesDiary, std::vector<Issue>> readTableFiles(std::map<std::string, std::string, std::less<>> files);

/// What tables have no place for.
enum class LeftOut {
    EarlierPlanRevisions,
    EarlierComplaints,
    EarlierSettings,
    EarlierMemos,
    LaterClears, ///< all but the earliest `cleared` of a flag
    EarlierClosings,
    Handed,
    DeskOnly, ///< known_as, alias, set_aside
    OriginOfDerived, ///< id, instant and author of cleared, closed, complaint, plan, setting and memo
};

struct TablesFolder
{
    std::map<std::string, std::string> files; ///< name to bytes
    std::map<LeftOut, int> leftOut; ///< how many entries each
};

/// \a diary as tables, csv-metadata.json included.
[[nodiscard]] TablesFolder writeTables(const TablesDiary &diary);

} // namespace morrow
