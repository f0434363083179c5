// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Copies of the store that count only because they were read back whole.
///
///  I1  A file under its backup name was read back, every digest, count and sum, after
///      it was synced; a copy that could not be is no backup and displaces none.
///  I2  Of those that can be read, the newest one is never deleted.
///  I3  What was backed up is a state between two transactions.

#include "base/civil_day.h"
#include "base/clock.h"
#include "base/result.h"
#include "store/database.h"
#include "store/folder.h"
#include "store/store_error.h"

#include <filesystem>
#include <string>
#include <vector>

namespace morrow {

/// Backs up what \a connection shows into \a folder's backups, named for the instant
/// \a now. Gives the file; if it could not be made or read back, nothing is left of it.
Result<std::filesystem::path, StoreError> makeBackup(SQLite::Database &connection, const std::filesystem::path &folder, const Moment &now);

/// The same before the step to \a version of the schema; it is never rotated away.
Result<std::filesystem::path, StoreError> makeBackupBeforeStep(
    SQLite::Database &connection, const std::filesystem::path &folder, int version);

/// Whether the file at \a path is a store that can be read whole.
[[nodiscard]] bool canBeReadWhole(const std::filesystem::path &path);

/// Keeps the newest readable backup of each of the last 7 days and of each of the last
/// 4 weeks that have one, and deletes the other readable ones. One that cannot be read
/// counts for nothing and is left for restore.
void rotateBackups(const std::filesystem::path &folder);

/// The files under a backup's name in \a folder, newest first, whether readable or not.
[[nodiscard]] std::vector<std::filesystem::path> backupsIn(const std::filesystem::path &folder);

} // namespace morrow
