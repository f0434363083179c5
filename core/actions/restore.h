// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "store/restore.h"

namespace morrow {

/// Puts the store in \a folder together again from everything that can be read; what a
/// person does when a program says that the diary is damaged. See store/restore.h.
[[nodiscard]] Result<RestoreReport, StoreError> restoreDiary(const std::filesystem::path &folder, const Moment &now);

} // namespace morrow
