// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// SQLite's way to a Disk, registered under a name as any sqlite3_vfs, with a place to make
/// calls fail.
///
/// It promises what SQLite's own for Linux promises: the first sync of a log or journal syncs the
/// folder, too; a write leaves the bytes beside it alone. It has no shared memory, so a
/// write-ahead log works only for a connection that is alone.

#include "faults/disk.h"

#include <sqlite3.h>

#include <functional>

namespace morrow::test {

/// What SQLite asks of the machine.
enum class Call {
    Open,
    Delete,
    Access,
    Read,
    Write,
    Truncate,
    Sync,
    FileSize,
    Lock,
};

class DiskVfs
{
public:
    /// What a call is to answer: SQLITE_OK to be done. A write that is not to be done is done by half.
    using Fault = std::function<int(Call)>;

    explicit DiskVfs(const char *name);
    ~DiskVfs();
    DiskVfs(const DiskVfs &) = delete;
    DiskVfs &operator=(const DiskVfs &) = delete;

    /// What the name stands for from now on; nothing of the last one may be open.
    void mount(Disk *disk) noexcept { m_disk = disk; }
    void setFault(Fault fault) { m_fault = std::move(fault); }
    /// Whether what a failed sync was to make safe is lost for good, as on Linux.
    void setForgetful(bool forgets) noexcept { m_forgets = forgets; }

    /// Whether it has no write-ahead log, as an SQLite that was built without it.
    void setLogless(bool isLogless) noexcept { m_isLogless = isLogless; }

    [[nodiscard]] Disk &disk() noexcept { return *m_disk; }
    [[nodiscard]] int ask(Call call) { return m_fault ? m_fault(call) : SQLITE_OK; }
    [[nodiscard]] bool forgets() const noexcept { return m_forgets; }
    [[nodiscard]] bool isLogless() const noexcept { return m_isLogless; }

private:
    sqlite3_vfs m_vfs;
    Disk *m_disk = nullptr;
    Fault m_fault;
    bool m_forgets = false;
    bool m_isLogless = false;
};

} // namespace morrow::test
