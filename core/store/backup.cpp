// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/backup.h"

#include "base/file.h"
#include "store/rows.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <set>

namespace morrow {

namespace {

namespace fs = std::filesystem;

constexpr int kDaily = 7;
constexpr int kWeekly = 4;
constexpr std::string_view kBeforeStep = "before-step-";

StoreError ofFile(FileError error) noexcept
{
    switch (error) {
    case FileError::Full:
        return StoreError::Full;
    case FileError::ReadOnly:
    case FileError::NoPermission:
        return StoreError::ReadOnly;
    default:
        return StoreError::Io;
    }
}

/// `2026-11-25T180351Z`: sorts as time does, and no file system minds it.
std::string nameOf(const Moment &now)
{
    std::string text = rfc3339({now.utcMs - now.utcMs % 1000, 0}).substr(0, 19);
    std::erase(text, ':');
    return text + "Z";
}

/// The state of every person, to compare a copy with what it was made of. Damaged if one is not whole.
Result<std::vector<std::string>, StoreError> stateOf(SQLite::Database &connection)
{
    if (holdsEntriesOfNobody(connection))
        return failure(StoreError::Damaged);
    std::vector<std::string> states;
    Sha256 hash;
    for (const auto &[person, ref] : persons(connection)) {
        const PersonReading reading = readPerson(connection, person, hash);
        if (!reading.isWhole())
            return failure(StoreError::Damaged);
        Sum sum;
        for (const Entry &entry : reading.entries)
            sum.add(digestOf(entry, hash));
        std::string state = reading.ref + ' ' + std::to_string(reading.counted) + ' ' + toHex(sum.value());
        for (const Digest &erased : reading.erased)
            state += ' ' + toHex(erased);
        states.push_back(std::move(state));
    }
    return states;
}

Result<std::vector<std::string>, StoreError> stateOfFile(const fs::path &path)
{
    auto database = Database::openToRead(path, {});
    if (!database)
        return failure(database.error());
    try {
        SQLite::Statement check(database->connection(), "PRAGMA integrity_check(1)");
        if (!check.executeStep() || check.getColumn(0).getString() != "ok")
            return failure(StoreError::Damaged);
        return stateOf(database->connection());
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

/// I1: VACUUM INTO does not sync, so the copy is synced, read back and only then named.
Result<fs::path, StoreError> backUpAs(SQLite::Database &connection, const fs::path &folder, const std::string &name)
{
    const fs::path backups = backupFolder(folder);
    if (::mkdir(backups.c_str(), 0700) != 0 && errno != EEXIST)
        return failure(errorOf(errno));
    const fs::path part = backups / ("." + name + ".part");
    const fs::path target = backups / (name + ".db");
    (void)removeStoreFile(part); // if that failed, makePrivate does
    const auto give = [&](StoreError error) -> Result<fs::path, StoreError> {
        (void)removeStoreFile(part);
        ::rmdir(backups.c_str()); // which fails where a backup is
        return failure(error);
    };
    if (!makePrivate(part))
        return give(errorOf(errno));
    try {
        SQLite::Statement vacuum(connection, "VACUUM INTO ?");
        vacuum.bind(1, part.string());
        vacuum.exec();
        if (auto synced = syncFile(part); !synced)
            return give(ofFile(synced.error()));
        const auto copied = stateOfFile(part);
        if (!copied)
            return give(copied.error());
        const auto original = stateOf(connection);
        if (!original || *copied != *original)
            return give(original ? StoreError::Io : original.error());
    } catch (const SQLite::Exception &exception) {
        return give(storeError(exception));
    }
    if (auto moved = renameDurably(part, target); !moved)
        return give(ofFile(moved.error()));
    return target;
}

bool isDated(const fs::path &backup)
{
    return CivilDay::parse(backup.filename().string().substr(0, 10)).has_value();
}

} // namespace

Result<fs::path, StoreError> makeBackup(SQLite::Database &connection, const fs::path &folder, const Moment &now)
{
    return backUpAs(connection, folder, nameOf(now));
}

Result<fs::path, StoreError> makeBackupBeforeStep(SQLite::Database &connection, const fs::path &folder, int version)
{
    return backUpAs(connection, folder, std::string(kBeforeStep) + std::to_string(version));
}

bool canBeReadWhole(const fs::path &path)
{
    return stateOfFile(path).has_value();
}

void rotateBackups(const fs::path &folder)
{
    std::set<int> days;
    std::set<int> weeks;
    for (const fs::path &backup : backupsIn(folder)) {
        if (!isDated(backup) || !canBeReadWhole(backup))
            continue;
        const CivilDay day = *CivilDay::parse(backup.filename().string().substr(0, 10));
        const int week = day.number() - day.weekday();
        const bool isDaily = static_cast<int>(days.size()) < kDaily && days.insert(day.number()).second;
        const bool isWeekly = static_cast<int>(weeks.size()) < kWeekly && weeks.insert(week).second;
        std::error_code ignored;
        if (!isDaily && !isWeekly)
            fs::remove(backup, ignored);
    }
}

std::vector<fs::path> backupsIn(const fs::path &folder)
{
    std::vector<fs::path> backups;
    std::error_code error;
    for (fs::directory_iterator at(backupFolder(folder), error); !error && at != fs::directory_iterator(); at.increment(error)) {
        const std::string name = at->path().filename().string();
        if (name.ends_with(".db") && (isDated(at->path()) || name.starts_with(kBeforeStep)))
            backups.push_back(at->path());
    }
    // Dated ones first, the newest before the others; those of a step last.
    std::sort(backups.begin(), backups.end(), [](const fs::path &a, const fs::path &b) {
        if (isDated(a) != isDated(b))
            return isDated(a);
        return a.filename() > b.filename();
    });
    return backups;
}

} // namespace morrow
