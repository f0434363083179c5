// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/disk_vfs.h"

#include <algorithm>
#include <cstring>
#include <new>

namespace morrow::test {

namespace {

struct OpenFile
{
    std::shared_ptr<Disk::File> file;
    DiskVfs *vfs;
    std::string name; ///< to remove on closing; empty: stays
    bool syncsFolder; ///< with its next sync
    int lock = SQLITE_LOCK_NONE;
};

/// What SQLite makes room for: its own part first.
struct Handle
{
    sqlite3_file base;
    OpenFile *open;
};

OpenFile &openFile(sqlite3_file *file)
{
    return *reinterpret_cast<Handle *>(file)->open;
}

DiskVfs &vfsOf(sqlite3_vfs *vfs)
{
    return *static_cast<DiskVfs *>(vfs->pAppData);
}

int close(sqlite3_file *handle)
{
    OpenFile *const open = &openFile(handle);
    if (!open->name.empty())
        open->vfs->disk().remove(open->name);
    delete open;
    return SQLITE_OK;
}

int read(sqlite3_file *handle, void *to, int count, sqlite3_int64 offset)
{
    OpenFile &open = openFile(handle);
    if (const int failed = open.vfs->ask(Call::Read))
        return failed;
    const std::string &bytes = open.file->bytes;
    const std::size_t from = std::min(bytes.size(), static_cast<std::size_t>(offset));
    const std::size_t got = std::min(bytes.size() - from, static_cast<std::size_t>(count));
    std::memcpy(to, bytes.data() + from, got);
    std::memset(static_cast<char *>(to) + got, 0, static_cast<std::size_t>(count) - got);
    return got == static_cast<std::size_t>(count) ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

int write(sqlite3_file *handle, const void *from, int count, sqlite3_int64 offset)
{
    OpenFile &open = openFile(handle);
    const int failed = open.vfs->ask(Call::Write);
    const std::string bytes(static_cast<const char *>(from), static_cast<std::size_t>(failed ? count / 2 : count));
    open.vfs->disk().write(*open.file, static_cast<std::size_t>(offset), bytes);
    return failed;
}

int truncate(sqlite3_file *handle, sqlite3_int64 size)
{
    OpenFile &open = openFile(handle);
    if (const int failed = open.vfs->ask(Call::Truncate))
        return failed;
    open.vfs->disk().resize(*open.file, static_cast<std::size_t>(size));
    return SQLITE_OK;
}

int sync(sqlite3_file *handle, int)
{
    OpenFile &open = openFile(handle);
    if (const int failed = open.vfs->ask(Call::Sync)) {
        if (open.vfs->forgets())
            open.vfs->disk().forget(*open.file);
        return failed;
    }
    open.vfs->disk().sync(*open.file);
    if (open.syncsFolder)
        open.vfs->disk().syncFolder();
    open.syncsFolder = false;
    return SQLITE_OK;
}

int fileSize(sqlite3_file *handle, sqlite3_int64 *size)
{
    OpenFile &open = openFile(handle);
    if (const int failed = open.vfs->ask(Call::FileSize))
        return failed;
    *size = static_cast<sqlite3_int64>(open.file->bytes.size());
    return SQLITE_OK;
}

int lock(sqlite3_file *handle, int level)
{
    OpenFile &open = openFile(handle);
    if (const int failed = open.vfs->ask(Call::Lock))
        return failed;
    open.lock = std::max(open.lock, level);
    return SQLITE_OK;
}

int unlock(sqlite3_file *handle, int level)
{
    openFile(handle).lock = level;
    return SQLITE_OK;
}

int checkReservedLock(sqlite3_file *, int *isReserved)
{
    *isReserved = 0;
    return SQLITE_OK;
}

int fileControl(sqlite3_file *handle, int operation, void *argument)
{
    if (operation != SQLITE_FCNTL_PRAGMA || !openFile(handle).vfs->isLogless())
        return SQLITE_NOTFOUND;
    // Answers "PRAGMA journal_mode=WAL" itself: it stays as it was.
    char **const words = static_cast<char **>(argument);
    if (!words[2] || sqlite3_stricmp(words[1], "journal_mode") != 0 || sqlite3_stricmp(words[2], "WAL") != 0)
        return SQLITE_NOTFOUND;
    words[0] = sqlite3_mprintf("delete");
    return SQLITE_OK;
}

int sectorSize(sqlite3_file *)
{
    return 4096;
}

int deviceCharacteristics(sqlite3_file *)
{
    return SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

constexpr sqlite3_io_methods kMethods{1, close, read, write, truncate, sync, fileSize, lock, unlock, checkReservedLock, fileControl,
    sectorSize, deviceCharacteristics, nullptr, nullptr, nullptr, nullptr, nullptr, nullptr};

int open(sqlite3_vfs *self, const char *name, sqlite3_file *handle, int flags, int *outFlags)
{
    DiskVfs &vfs = vfsOf(self);
    handle->pMethods = nullptr;
    if (const int failed = vfs.ask(Call::Open))
        return failed;
    auto open = std::make_unique<OpenFile>(OpenFile{nullptr, &vfs, {}, false});
    if (name) {
        open->file = vfs.disk().find(name);
        if (!open->file && (flags & SQLITE_OPEN_CREATE) == 0)
            return SQLITE_CANTOPEN;
        if (!open->file)
            open->file = vfs.disk().create(name);
        // Also where it is there already: who made it may not have come to a sync.
        open->syncsFolder
            = (flags & SQLITE_OPEN_CREATE) != 0 && (flags & (SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_SUPER_JOURNAL)) != 0;
        if ((flags & SQLITE_OPEN_DELETEONCLOSE) != 0)
            open->name = name;
    } else {
        open->file = std::make_shared<Disk::File>(Disk::File{-1, {}}); // in no folder: not on the disk after a cut
    }
    reinterpret_cast<Handle *>(handle)->open = open.release();
    handle->pMethods = &kMethods;
    if (outFlags)
        *outFlags = flags;
    return SQLITE_OK;
}

int remove(sqlite3_vfs *self, const char *name, int syncsFolder)
{
    DiskVfs &vfs = vfsOf(self);
    if (const int failed = vfs.ask(Call::Delete))
        return failed;
    if (!vfs.disk().find(name))
        return SQLITE_IOERR_DELETE_NOENT;
    vfs.disk().remove(name);
    if (syncsFolder)
        vfs.disk().syncFolder();
    return SQLITE_OK;
}

int access(sqlite3_vfs *self, const char *name, int, int *isThere)
{
    DiskVfs &vfs = vfsOf(self);
    if (const int failed = vfs.ask(Call::Access))
        return failed;
    const auto file = vfs.disk().find(name);
    *isThere = file != nullptr;
    return SQLITE_OK;
}

int fullPathname(sqlite3_vfs *, const char *name, int size, char *out)
{
    sqlite3_snprintf(size, out, "%s", name);
    return SQLITE_OK;
}

} // namespace

DiskVfs::DiskVfs(const char *name)
    // Time, sleep and randomness are the machine's.
    : m_vfs(*sqlite3_vfs_find(nullptr))
{
    m_vfs.iVersion = 1;
    m_vfs.szOsFile = sizeof(Handle);
    m_vfs.mxPathname = 512;
    m_vfs.pNext = nullptr;
    m_vfs.zName = name;
    m_vfs.pAppData = this;
    m_vfs.xOpen = open;
    m_vfs.xDelete = remove;
    m_vfs.xAccess = access;
    m_vfs.xFullPathname = fullPathname;
    sqlite3_vfs_register(&m_vfs, 0);
}

DiskVfs::~DiskVfs()
{
    sqlite3_vfs_unregister(&m_vfs);
}

} // namespace morrow::test
