// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A disk of its own for a test that fills one or makes one read-only: a real mount (tmpfs),
/// seen by this process and its children only. It needs root; where that is not to be had, a
/// test says so and is skipped.

#include <filesystem>

namespace morrow::test {

class SmallDisk
{
public:
    explicit SmallDisk(std::uintmax_t bytes);
    ~SmallDisk();
    SmallDisk(const SmallDisk &) = delete;
    SmallDisk &operator=(const SmallDisk &) = delete;

    [[nodiscard]] bool isMounted() const noexcept { return m_isMounted; }
    [[nodiscard]] const std::filesystem::path &path() const noexcept { return m_path; }

    [[nodiscard]] bool setReadOnly(bool isReadOnly);
    /// Fills it to the last byte with a file named "filler".
    void fill();
    /// Fills it but for \a bytes.
    void fillBut(std::uintmax_t bytes);
    void emptyFiller();

private:
    std::filesystem::path m_path;
    std::uintmax_t m_bytes;
    bool m_isMounted = false;
};

} // namespace morrow::test
