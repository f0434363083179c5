// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/restore.h"

#include "base/file.h"
#include "store/backup.h"
#include "store/diary_store.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>
#include <vector>

namespace morrow {

namespace {

namespace fs = std::filesystem;

/// What all copies together hold of one person.
struct Union
{
    std::map<std::string, Entry> entries;
    std::set<Digest> erased;
    std::optional<std::int64_t> counted; ///< by the store itself
};

struct Sources
{
    std::map<std::string, Union> persons;
    std::vector<PersonReading> nameless; ///< whose ref has a wrong digest or is lost
    std::optional<std::int64_t> lostBefore = 0; ///< by an earlier restore, as the store notes it
    std::string newestBackup;
    int files = 0;
};

void take(PersonReading &&reading, Union &all)
{
    all.erased.insert(reading.erased.begin(), reading.erased.end());
    for (Entry &entry : reading.entries)
        all.entries.emplace(entry.id, std::move(entry));
}

/// Adds what the file at \a path holds; false if not all of it could be read. Newer if it is
/// of a newer program, which alone knows all that it holds.
Result<bool, StoreError> takeFrom(const fs::path &path, bool isStore, Sources &sources)
{
    auto database = Database::openToRead(path, {.checksSchema = false});
    if (!database)
        return false;
    if (database->isNewer())
        return failure(StoreError::Newer);
    Sha256 hash;
    bool gave = false;
    bool isWhole = true;
    for (const std::int64_t person : personNumbers(database->connection(), isWhole)) {
        try {
            PersonReading reading = readPerson(database->connection(), person, hash);
            isWhole = isWhole && reading.isWhole();
            gave = gave || !reading.entries.empty();
            if (reading.personDamaged) {
                sources.nameless.push_back(std::move(reading));
                continue;
            }
            Union &all = sources.persons[reading.ref];
            if (isStore)
                all.counted = reading.counted;
            take(std::move(reading), all);
        } catch (const SQLite::Exception &) {
            isWhole = false;
        }
    }
    sources.files += gave ? 1 : 0;
    try {
        if (isStore)
            sources.lostBefore = lostIn(database->connection(), hash);
    } catch (const SQLite::Exception &) {
        sources.lostBefore = std::nullopt;
    }
    return isWhole;
}

/// Every copy there is. Entries whose person's name is lost are given to the only person that
/// any copy names; among several that would be a guess, and a wrong one would be worse than none.
Result<Sources, StoreError> gather(const fs::path &folder)
{
    Sources sources;
    std::error_code error;
    for (const fs::path &file : {storeFile(folder), restoredFile(folder)}) {
        if (!fs::exists(file, error))
            continue;
        if (auto taken = takeFrom(file, file == storeFile(folder), sources); !taken)
            return failure(taken.error());
    }
    for (const fs::path &backup : backupsIn(folder)) {
        const auto taken = takeFrom(backup, false, sources);
        if (taken && *taken && sources.newestBackup.empty())
            sources.newestBackup = backup.stem().string();
    }
    for (fs::directory_iterator at(keptFolder(folder), error); !error && at != fs::directory_iterator(); at.increment(error)) {
        if (at->path().extension() == ".db")
            (void)takeFrom(at->path(), false, sources);
    }
    if (sources.persons.size() == 1) {
        for (PersonReading &reading : std::exchange(sources.nameless, {}))
            take(std::move(reading), sources.persons.begin()->second);
    }
    return sources;
}

/// How many entries the store counted, now or before an earlier restore, and no copy holds;
/// nullopt if it could not count those of every person.
std::optional<std::int64_t> missingIn(const Sources &sources)
{
    if (!sources.nameless.empty() || !sources.lostBefore)
        return std::nullopt;
    Sha256 hash;
    std::int64_t missing = 0;
    std::int64_t found = 0; // more than was counted: what was lost before
    for (const auto &person : sources.persons) {
        const Union &all = person.second; // a lambda cannot take a structured binding with clang 14
        if (!all.counted)
            return std::nullopt;
        const auto held = std::count_if(
            all.entries.begin(), all.entries.end(), [&](const auto &entry) { return !all.erased.contains(hash.of(entry.first)); });
        missing += std::max<std::int64_t>(0, *all.counted - held);
        found += std::max<std::int64_t>(0, held - *all.counted);
    }
    return missing + std::max<std::int64_t>(0, *sources.lostBefore - found);
}

/// Writes the union into a new store at \a path and reads it back.
Result<int, StoreError> write(const fs::path &path, const Sources &sources)
{
    Sha256 hash;
    int back = 0;
    try {
        auto database = Database::openToWrite(path, {});
        if (!database)
            return failure(database.error());
        SQLite::Database &connection = database->connection();
        SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
        SQLite::Statement insert(connection, kInsertEntry);
        SQLite::Statement total(connection, "UPDATE person SET entries = ?, sum = ? WHERE person = ?");
        for (const auto &[ref, all] : sources.persons) {
            const std::int64_t person = addPerson(connection, ref, hash);
            for (const Digest &erased : all.erased)
                insertErased(connection, person, erased, hash);
            Sum sum;
            int count = 0;
            for (const auto &[id, entry] : all.entries) {
                if (all.erased.contains(hash.of(id)))
                    continue;
                const Digest digest = digestOf(entry, hash);
                insertEntry(insert, person, entry, digest);
                sum.add(digest);
                ++count;
            }
            total.reset();
            total.bind(1, count);
            bindDigest(total, 2, sum.value());
            total.bind(3, person);
            total.exec();
            back += count;
        }
        setLost(connection, missingIn(sources), hash);
        transaction.commit();
        if (auto done = database->checkpoint(); !done)
            return failure(done.error());
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
    if (!canBeReadWhole(path))
        return failure(StoreError::Io);
    return back;
}

fs::path logOf(const fs::path &path)
{
    return path.string() + "-wal";
}

fs::path journalOf(const fs::path &path)
{
    return path.string() + "-journal";
}

/// I3: copies the old store and its log aside, synced, before anything is put in its place.
Result<void, StoreError> keepAside(const fs::path &folder, const Moment &now)
{
    std::error_code error;
    if (!fs::exists(storeFile(folder), error))
        return {};
    if (::mkdir(keptFolder(folder).c_str(), 0700) != 0 && errno != EEXIST)
        return failure(errorOf(errno));
    std::string name = rfc3339({now.utcMs, 0});
    std::erase(name, ':');
    // One that is there already, of a restore in the same second, is not written over.
    fs::path kept = keptFolder(folder) / (name + ".db");
    for (int more = 2; fs::exists(kept, error) || fs::exists(logOf(kept), error); ++more)
        kept = keptFolder(folder) / (name + "-" + std::to_string(more) + ".db");
    const auto give = [&](StoreError reason) -> Result<void, StoreError> {
        (void)removeStoreFile(kept);
        ::rmdir(keptFolder(folder).c_str()); // which fails where something else is kept
        return failure(reason);
    };
    for (const fs::path &from : {storeFile(folder), logOf(storeFile(folder))}) {
        if (!fs::exists(from, error))
            continue;
        const fs::path to = from == storeFile(folder) ? kept : logOf(kept);
        fs::copy_file(from, to, fs::copy_options::overwrite_existing, error);
        if (error || !syncFile(to) || ::chmod(to.c_str(), 0600) != 0)
            return give(error == std::errc::no_space_on_device ? StoreError::Full : StoreError::Io);
    }
    if (!syncFile(keptFolder(folder)) || !syncFile(folder))
        return give(StoreError::Io);
    return {};
}

/// Whether another program writes to the store.
bool isBusy(const fs::path &folder)
{
    auto database = Database::openToRead(storeFile(folder), {});
    return !database && database.error() == StoreError::Busy;
}

} // namespace

Result<RestoreReport, StoreError> restore(const fs::path &folder, const Moment &now)
{
    if (isBusy(folder))
        return failure(StoreError::Busy);
    const auto sources = gather(folder);
    if (!sources)
        return failure(sources.error());
    if (sources->persons.empty())
        return failure(StoreError::Missing);

    const fs::path unfinished = unfinishedFile(folder);
    (void)removeStoreFile(unfinished); // if that failed, makePrivate does
    const auto give = [&](StoreError error) {
        (void)removeStoreFile(unfinished);
        return failure(error);
    };
    if (!makePrivate(unfinished))
        return give(errorOf(errno));
    auto back = write(unfinished, *sources);
    if (!back)
        return give(back.error());
    if (auto kept = keepAside(folder, now); !kept)
        return give(kept.error());
    // From here on the store is not opened by anybody: it either is already, which shows now,
    // or whoever opens it finds the file of this name.
    if (!syncFile(unfinished) || !renameDurably(unfinished, restoredFile(folder)))
        return give(StoreError::Io);
    if (isBusy(folder)) {
        // Else the store, which is in use and whole, would be called damaged the next time.
        return failure(removeStoreFile(restoredFile(folder)) ? StoreError::Busy : StoreError::Io);
    }
    // The old log or journal must never be replayed over the new file, so it goes first; what
    // the log held is in the copy kept aside.
    std::error_code error;
    for (const fs::path &file : {logOf(storeFile(folder)), journalOf(storeFile(folder))}) {
        if (!error)
            fs::remove(file, error);
    }
    if (error || !syncFile(folder) || !renameDurably(restoredFile(folder), storeFile(folder)))
        return failure(StoreError::Io);
    std::optional<int> missing;
    if (const auto count = missingIn(*sources))
        missing = static_cast<int>(*count);
    return RestoreReport{.back = *back, .missing = missing, .sinceBackup = sources->newestBackup, .sources = sources->files};
}

} // namespace morrow
