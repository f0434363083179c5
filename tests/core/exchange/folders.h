// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Reading and writing folders of tables in tests, where failing to read is news.

#include "exchange/tables.h"
#include "support/typed_table.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow::test {

/// The diary in \a files; nullopt, and \a why filled, if it is refused.
[[nodiscard]] std::optional<TablesDiary> diaryIn(const Files &files, std::string *why = nullptr);
/// What is wrong with \a files; empty if nothing is.
[[nodiscard]] std::vector<Issue> issuesOf(const Files &files);
/// An issue as text: code number, file, line, column.
[[nodiscard]] std::string shown(const Issue &issue);

/// The files that \a diary is written as.
[[nodiscard]] Files written(const TablesDiary &diary);

/// A small plan: complaint `heel`, item `raise` of two stages that is due daily from
/// 2026-03-02 on, as complaints.csv and plan.csv.
[[nodiscard]] Files smallFolder();
/// The same with \a files added, or put in the place of those of their names.
[[nodiscard]] Files smallFolder(const Files &files);

/// The files of the folder at \a path.
[[nodiscard]] Files loaded(const std::string &path);

} // namespace morrow::test
