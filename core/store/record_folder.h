// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The record of a desk: a folder of files from which its store can be made again.
///
///  I1  A file is named by the SHA-256 of its bytes before they were deflated (zlib, RFC 1950),
///      is whole and durable before it has that name, and is never changed.
///  I2  What is read has the bytes that its name says, or is refused; it is never inflated
///      beyond 128 MiB or 100 times its size.
///  I3  What was marked as erased stays marked, and no file of that person is added.
///  I4  Several desks may write into it at once, also over a shared drive: none of them
///      writes a file that another one writes with other bytes.

#include "base/file.h"
#include "base/result.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

/// Why a file of the record cannot be had.
enum class RecordFault {
    Missing,
    Damaged, ///< cut, changed, or not what its name says
    TooLarge, ///< it would be inflated beyond what is allowed
    Unreadable, ///< the machine did not give it
};

class RecordFolder
{
public:
    static constexpr std::size_t kMaxBytes = std::size_t{128} * 1024 * 1024;
    static constexpr std::size_t kMaxTimes = 100; ///< a file's size once inflated, in sizes of the file

    /// The record at \a path, which is made if it is missing. A link that leads nowhere is Missing.
    [[nodiscard]] static Result<RecordFolder, FileError> open(const std::filesystem::path &path);

    /// The name under which \a bytes lie, or would lie.
    [[nodiscard]] static std::string nameOf(std::string_view bytes);

    /// Adds \a bytes, at most kMaxBytes, and gives their name; when it returns they are durable.
    /// A file that is there already is left as it is, unless it is damaged.
    Result<std::string, FileError> add(std::string_view bytes);

    /// The bytes of the file \a name.
    [[nodiscard]] Result<std::string, RecordFault> read(const std::string &name) const;

    /// The names of all files, in order. What has not the form of one is passed over.
    [[nodiscard]] Result<std::vector<std::string>, FileError> names() const;

    /// Marks the person \a ref as erased, for every desk.
    Result<void, FileError> markErased(std::string_view ref);
    [[nodiscard]] bool isErased(std::string_view ref) const;
    /// Removes the file \a name, of a person who is marked.
    Result<void, FileError> remove(const std::string &name);

private:
    explicit RecordFolder(std::filesystem::path path);

    std::filesystem::path m_path;
};

} // namespace morrow
