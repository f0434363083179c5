// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What lies where in the folder of a store.

#include "base/result.h"
#include "store/store_error.h"

#include <filesystem>

namespace morrow {

/// The store's file in \a folder, and its spare megabyte.
[[nodiscard]] std::filesystem::path storeFile(const std::filesystem::path &folder);
[[nodiscard]] std::filesystem::path ballastFile(const std::filesystem::path &folder);

[[nodiscard]] std::filesystem::path backupFolder(const std::filesystem::path &folder);
/// The folder of damaged files that were kept aside.
[[nodiscard]] std::filesystem::path keptFolder(const std::filesystem::path &folder);

/// A store being restored, not read back yet.
[[nodiscard]] std::filesystem::path unfinishedFile(const std::filesystem::path &folder);
/// A restored store that was read back and is about to take the store's place. As long as it
/// lies there the store itself may lack what its log held, and is not opened.
[[nodiscard]] std::filesystem::path restoredFile(const std::filesystem::path &folder);

/// Whether something in \a folder tells that a store is or was there, whatever became of its
/// file: a backup, the ballast, a file kept aside, a restored one.
[[nodiscard]] bool tellsOfAStore(const std::filesystem::path &folder);
/// Whether a store was in \a folder and its file is gone or empty: a loss, not a first start.
[[nodiscard]] bool isLost(const std::filesystem::path &folder);

/// Makes sure that a store can be opened or begun in \a folder, making it, and what is missing
/// on the way to it, for this user only if need be. NotADiary if it holds other things, Damaged
/// if a store was there.
Result<void, StoreError> prepareFolder(const std::filesystem::path &folder);

/// Makes the file at \a path, empty and for this user only, where SQLite would make it
/// readable for others. False if that cannot be, or something is there.
[[nodiscard]] bool makePrivate(const std::filesystem::path &path) noexcept;

/// Removes the SQLite file at \a path with everything that belongs to it; false if any of it is
/// still there. Not durable before the folder is synced.
[[nodiscard]] bool removeStoreFile(const std::filesystem::path &path);

/// What errno's \a error means for a store.
[[nodiscard]] StoreError errorOf(int error) noexcept;

} // namespace morrow
