// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/folder.h"

#include "base/file.h"
#include "store/backup.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace morrow {

namespace fs = std::filesystem;

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

void removeStoreFile(const fs::path &path)
{
    std::error_code ignored;
    for (const char *ending : {"", "-wal", "-shm", "-journal"})
        fs::remove(path.string() + ending, ignored);
}

Result<void, StoreError> prepareFolder(const fs::path &folder)
{
    std::error_code error;
    if (fs::exists(restoredFile(folder), error))
        return failure(StoreError::Damaged);
    // A store that is gone or empty, while its backups or its ballast are there, is a loss, not
    // a first start.
    const bool isLoss = !backupsIn(folder).empty() || fs::exists(ballastFile(folder), error);
    if (fs::exists(storeFile(folder), error))
        return isLoss && fs::file_size(storeFile(folder), error) == 0 ? failure(StoreError::Damaged) : Result<void, StoreError>();
    if (!fs::exists(folder, error)) {
        const fs::path parent = folder.has_parent_path() ? folder.parent_path() : fs::path(".");
        fs::create_directories(parent, error);
        if (::mkdir(folder.c_str(), 0700) != 0)
            return failure(errorOf(errno));
        // Else a power cut could take the new folder with all that was saved in it since.
        if (!syncFile(parent))
            return failure(StoreError::Io);
    }
    if (!fs::is_directory(folder, error))
        return failure(StoreError::NotADiary);
    if (isLoss)
        return failure(StoreError::Damaged);
    if (fs::directory_iterator(folder, error) != fs::directory_iterator() || error)
        return failure(error ? StoreError::ReadOnly : StoreError::NotADiary);
    if (!makePrivate(storeFile(folder)))
        return failure(errorOf(errno));
    if (!syncFile(folder))
        return failure(StoreError::Io);
    return {};
}

} // namespace morrow
