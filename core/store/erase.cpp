// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/erase.h"

#include "base/file.h"
#include "store/backup.h"

#include <algorithm>

namespace morrow {

namespace {

namespace fs = std::filesystem;

/// Removes everything in \a folder but \a spared.
bool clear(const fs::path &folder, const fs::path &spared)
{
    std::error_code error;
    if (!fs::exists(folder, error))
        return !error;
    std::vector<fs::path> doomed;
    for (fs::directory_iterator at(folder, error); !error && at != fs::directory_iterator(); at.increment(error)) {
        if (at->path() != spared)
            doomed.push_back(at->path());
    }
    for (const fs::path &path : doomed) {
        if (!error)
            fs::remove_all(path, error);
    }
    return !error && syncFile(folder).has_value();
}

} // namespace

Result<int, StoreError> eraseNote(DiaryStore &store, std::string_view ref, std::string_view id, const Moment &now)
{
    auto erased = store.eraseChain(ref, id);
    if (!erased)
        return erased;
    if (*erased == 0) {
        // Erased before, but cut, or never there: then the backups are left alone.
        const auto reading = store.read(ref);
        if (!reading)
            return failure(reading.error());
        if (std::find(reading->erased.begin(), reading->erased.end(), sha256(id)) == reading->erased.end())
            return 0;
    }
    const fs::path folder = store.folder();
    std::error_code error;
    // Also what a backup or a restore that was cut left there.
    fs::path spared;
    if (fs::exists(backupFolder(folder), error)) {
        const auto backup = makeBackup(store.database()->connection(), folder, now);
        if (!backup)
            return failure(backup.error());
        spared = *backup;
    }
    removeStoreFile(unfinishedFile(folder));
    if (!clear(backupFolder(folder), spared) || !clear(keptFolder(folder), {}) || !syncFile(folder))
        return failure(StoreError::Io);
    return erased;
}

Result<void, StoreError> eraseStore(const fs::path &folder)
{
    std::error_code error;
    removeStoreFile(unfinishedFile(folder));
    for (const fs::path &path :
        {backupFolder(folder), keptFolder(folder), ballastFile(folder), restoredFile(folder), fs::path(storeFile(folder).string() + "-wal"),
            fs::path(storeFile(folder).string() + "-shm"), fs::path(storeFile(folder).string() + "-journal"), storeFile(folder)}) {
        fs::remove_all(path, error);
        if (error)
            return failure(error == std::errc::read_only_file_system ? StoreError::ReadOnly : StoreError::Io);
    }
    if (!syncFile(folder))
        return failure(StoreError::Io);
    return {};
}

} // namespace morrow
