// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Files that are whole or absent.
///
///  I1  After a power cut at any moment a written file is the old one or the new
///      one, never a third; a written folder is there whole or not at all.
///  I2  A write that could not be made durable is reported, never taken for done.
///  I3  Nothing but a regular file is read, and never more of it than was allowed.

#include "base/result.h"

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <string_view>

namespace morrow {

enum class FileError {
    Missing, ///< there is nothing at that path
    Exists, ///< there is something already
    NotRegular, ///< a FIFO, device, socket or folder
    TooLarge, ///< over the allowed size
    NoPermission,
    Full, ///< no space, or over the quota
    ReadOnly, ///< the file system cannot be written
    Io, ///< anything else that the machine could not do
};

/// The bytes of the regular file at \a path, which are at most \a limit. Never
/// waits for a writer: a FIFO is refused, not opened for good.
[[nodiscard]] Result<std::string, FileError> readFile(const std::filesystem::path &path, std::size_t limit);

/// Puts \a bytes at \a path, in the place of what was there: written beside it,
/// synced, renamed, the folder synced, read back.
Result<void, FileError> writeFile(const std::filesystem::path &path, std::string_view bytes);

/// Makes the folder \a path holding \a files (name to bytes) in one step. Refuses a
/// path that exists.
Result<void, FileError> writeFolder(const std::filesystem::path &path, const std::map<std::string, std::string> &files);

/// Makes what was written to the file at \a path durable.
Result<void, FileError> syncFile(const std::filesystem::path &path);

/// Gives the file \a from the name \a to in the same folder, in the place of what was there, durably.
Result<void, FileError> renameDurably(const std::filesystem::path &from, const std::filesystem::path &to);

} // namespace morrow
