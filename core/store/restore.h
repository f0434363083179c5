// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A store again from every copy that can be read.
///
///  I1  Every entry that the damaged store, a backup or a file kept aside holds with a
///      right digest is back, but what was erased, which never comes back.
///  I2  What no copy holds is counted; nothing is made up for it. The count stays in the store.
///  I3  The old file is there until the new one was read back whole, and is kept aside.
///  I4  Cut at any moment, restoring again gives the same.

#include "base/clock.h"
#include "base/result.h"
#include "store/store_error.h"

#include <filesystem>
#include <optional>
#include <string>

namespace morrow {

struct RestoreReport
{
    int back = 0; ///< entries in the store now
    /// Entries that the store counted, also before an earlier restore, and no copy holds;
    /// nullopt if the store could not say how many there were.
    std::optional<int> missing;
    std::string sinceBackup; ///< the newest readable backup's name; empty if there is none
    int sources = 0; ///< files that gave entries
};

/// Makes the store in \a folder anew. Missing if there is nothing to restore from, Busy
/// if another program has it.
[[nodiscard]] Result<RestoreReport, StoreError> restore(const std::filesystem::path &folder, const Moment &now);

} // namespace morrow
