// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/erase.h"

#include "base/file.h"
#include "store/backup.h"

#include <algorithm>
#include <cerrno>
#include <unistd.h>

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

/// Why nothing can be removed from \a folder.
StoreError ofMachine(const fs::path &folder)
{
    return ::access(folder.c_str(), W_OK) != 0 && errno == EROFS ? StoreError::ReadOnly : StoreError::Io;
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
    // SQLite cuts the log short and does not sync that: after a power cut the log could be there
    // again with all that it held. Nothing locks it, so that it may be opened and closed here.
    const fs::path log = storeFile(folder).string() + "-wal";
    if (fs::exists(log, error) && !syncFile(log))
        return failure(StoreError::Io);
    // Also what a backup or a restore that was cut left there.
    fs::path spared;
    if (fs::exists(backupFolder(folder), error)) {
        const auto backup = makeBackup(store.database()->connection(), folder, now);
        if (!backup)
            return failure(backup.error());
        spared = *backup;
    }
    // A store that is open is whole, so what a restore of it left is not needed.
    const bool isGone = removeStoreFile(unfinishedFile(folder)) && removeStoreFile(restoredFile(folder));
    if (!isGone || !clear(backupFolder(folder), spared) || !clear(keptFolder(folder), {}) || !syncFile(folder))
        return failure(StoreError::Io);
    return erased;
}

Result<void, StoreError> eraseStore(const fs::path &folder)
{
    // The store's own file goes first and for sure: without its log it would still open, and show a
    // part. The ballast goes last: as long as it lies there, what is left is called damaged, never a
    // first start.
    std::error_code error;
    fs::remove(storeFile(folder), error);
    if (error || !syncFile(folder))
        return failure(ofMachine(folder));
    for (const fs::path &path : {backupFolder(folder), keptFolder(folder)}) {
        if (!error)
            fs::remove_all(path, error);
    }
    bool isGone = !error;
    for (const fs::path &path : {storeFile(folder), unfinishedFile(folder), restoredFile(folder)})
        isGone = removeStoreFile(path) && isGone;
    if (!isGone || !syncFile(folder))
        return failure(ofMachine(folder));
    fs::remove(ballastFile(folder), error);
    if (error || !syncFile(folder))
        return failure(ofMachine(folder));
    return {};
}

} // namespace morrow
