// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "base/file.h"
#include "batch/output.h"

#include <string>

namespace morrow::batch {

/// Says why \a path was not written. WrongUsage where the path itself is the reason (something
/// is there already, or no folder to write into), which was named by whoever asked; else MachineFailed.
[[nodiscard]] Status refuseToWrite(FileError error, const std::string &path);

} // namespace morrow::batch
