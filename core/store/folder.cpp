// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/folder.h"

#include "base/file.h"
#include "store/backup.h"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace morrow {

namespace fs = std::filesystem;

namespace {

/// Makes \a folder and what is missing on the way to it. Each name is made safe where it lies,
/// else a power cut could take a new folder with all that was saved in it since.
Result<void, StoreError> makeFolder(const fs::path &folder)
{
    std::error_code error;
    if (fs::exists(folder, error))
        return {};
    const fs::path parent = folder.has_parent_path() ? folder.parent_path() : fs::path(".");
    if (auto made = makeFolder(parent); !made)
        return made;
    if (::mkdir(folder.c_str(), 0700) != 0)
        return failure(errorOf(errno));
    if (!syncFile(parent))
        return failure(StoreError::Io);
    return {};
}

} // namespace

fs::path storeFile(const fs::path &folder)
{
    return folder / "diary.db";
}

fs::path ballastFile(const fs::path &folder)
{
    return folder / "ballast";
}

fs::path backupFolder(const fs::path &folder)
{
    return folder / "backups";
}

fs::path keptFolder(const fs::path &folder)
{
    return folder / "kept";
}

fs::path unfinishedFile(const fs::path &folder)
{
    return folder / "restored.part";
}

fs::path restoredFile(const fs::path &folder)
{
    return folder / "restored.db";
}

StoreError errorOf(int error) noexcept
{
    switch (error) {
    case ENOSPC:
    case EDQUOT:
        return StoreError::Full;
    case EROFS:
    case EACCES:
    case EPERM:
        return StoreError::ReadOnly;
    default:
        return StoreError::Io;
    }
}

bool makePrivate(const fs::path &path) noexcept
{
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
    return file >= 0 && ::close(file) == 0;
}

bool removeStoreFile(const fs::path &path)
{
    bool isGone = true;
    for (const char *ending : {"", "-wal", "-shm", "-journal"}) {
        std::error_code error;
        fs::remove(path.string() + ending, error);
        isGone = isGone && !error;
    }
    return isGone;
}

bool tellsOfAStore(const fs::path &folder)
{
    std::error_code error;
    if (fs::exists(restoredFile(folder), error) || fs::is_regular_file(ballastFile(folder), error) || !backupsIn(folder).empty())
        return true;
    const fs::directory_iterator kept(keptFolder(folder), error);
    return std::any_of(begin(kept), end(kept), [](const fs::directory_entry &file) { return file.path().extension() == ".db"; });
}

bool isLost(const fs::path &folder)
{
    std::error_code error;
    const auto size = fs::file_size(storeFile(folder), error);
    return (error ? error == std::errc::no_such_file_or_directory : size == 0) && tellsOfAStore(folder);
}

Result<void, StoreError> prepareFolder(const fs::path &folder)
{
    std::error_code error;
    if (fs::exists(restoredFile(folder), error) || isLost(folder))
        return failure(StoreError::Damaged);
    if (fs::exists(storeFile(folder), error))
        return {};
    if (auto made = makeFolder(folder.has_filename() ? folder : folder.parent_path()); !made)
        return made;
    if (!fs::is_directory(folder, error))
        return failure(StoreError::NotADiary);
    if (fs::directory_iterator(folder, error) != fs::directory_iterator() || error)
        return failure(error ? StoreError::ReadOnly : StoreError::NotADiary);
    if (!makePrivate(storeFile(folder)))
        return failure(errorOf(errno));
    if (!syncFile(folder))
        return failure(StoreError::Io);
    return {};
}

} // namespace morrow
