// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "store/erase.h"

#include <filesystem>
#include <string_view>

namespace morrow {

/// Erases one entry, with all that it corrects and that corrects it, from the store in
/// \a folder, its backups and what was kept aside. Gives how many entries went. A store of
/// several persons is searched for it. See store/erase.h.
[[nodiscard]] Result<int, StoreError> eraseFrom(const std::filesystem::path &folder, std::string_view id, const Moment &now);

} // namespace morrow
