// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A spare megabyte beside the store, given up when the disk is full, so that the last
/// entries still fit, and made again when there is room.

#include <filesystem>

namespace morrow {

/// Makes the ballast of \a folder if it is missing and there is room for it.
void keepBallast(const std::filesystem::path &folder);

/// Gives it up; false if there was none.
bool releaseBallast(const std::filesystem::path &folder);

} // namespace morrow
