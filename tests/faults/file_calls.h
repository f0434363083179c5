// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Every call by which this process changes files below a folder, as operations of a Disk: those of
/// the store's own code, of the standard library and of SQLite alike.
///
/// The calls are defined in this program (file_calls.cpp), which the linker prefers to libc's, and
/// handed on to the kernel. What is written through a memory map is not seen; of a store that is
/// only the index of the log, which a cut leaves worthless anyway.

#include "faults/disk.h"

#include <filesystem>
#include <string>
#include <vector>

namespace morrow::test {

/// What lies below \a folder.
[[nodiscard]] Image imageOf(const std::filesystem::path &folder);
/// Makes \a folder hold exactly \a image.
void lay(const Image &image, const std::filesystem::path &folder);

/// Writes down what is done below a folder as long as it lives; one at a time.
class FileCalls
{
public:
    /// \a folder: an absolute path without links.
    explicit FileCalls(std::filesystem::path folder);
    ~FileCalls();
    FileCalls(const FileCalls &) = delete;
    FileCalls &operator=(const FileCalls &) = delete;

    [[nodiscard]] const Image &start() const noexcept { return m_start; }
    [[nodiscard]] const std::vector<Operation> &log() const noexcept { return m_log; }

    // What the calls tell.
    [[nodiscard]] bool covers(const std::filesystem::path &path) const;
    void made(const std::filesystem::path &path, bool isFolder);
    void removed(const std::filesystem::path &path, int file);
    void renamed(const std::filesystem::path &from, const std::filesystem::path &to);
    void wrote(int descriptor, std::size_t offset, std::string bytes);
    void resized(int descriptor, std::size_t size);
    void synced(int descriptor);
    /// The number of what lies at \a path; -1 if it is none of ours.
    [[nodiscard]] int numberAt(const std::filesystem::path &path) const;

private:
    [[nodiscard]] int numberOf(int descriptor) const;
    [[nodiscard]] int folderOf(const std::filesystem::path &path) const;

    std::filesystem::path m_folder;
    Image m_start;
    std::vector<Operation> m_log;
    std::map<std::uint64_t, int> m_numbers; ///< by the kernel's number
    int m_last = 0;
};

} // namespace morrow::test
