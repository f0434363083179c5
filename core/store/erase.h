// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The only ways in which anything of a diary goes.
///
///  I1  Of an erased note no byte stays in the store, its log, the backups, the files
///      kept aside or a temporary file; only the SHA-256 of its id does.
///  I2  Erasing that was cut can be asked for again and then finishes.

#include "base/clock.h"
#include "base/result.h"
#include "store/diary_store.h"

#include <filesystem>
#include <string_view>

namespace morrow {

/// Erases the entry \a id of \a ref, with all that it corrects and that corrects it, and
/// makes the backups anew. Gives how many entries went (0: none of that id).
[[nodiscard]] Result<int, StoreError> eraseNote(DiaryStore &store, std::string_view ref, std::string_view id, const Moment &now);

/// Erases the store in \a folder with its backups and everything kept aside. The folder
/// itself stays, empty but for what is not ours.
Result<void, StoreError> eraseStore(const std::filesystem::path &folder);

} // namespace morrow
