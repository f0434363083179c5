// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/restore.h"

namespace morrow {

Result<RestoreReport, StoreError> restoreDiary(const std::filesystem::path &folder, const Moment &now)
{
    return restore(folder, now);
}

} // namespace morrow
