// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What is behind a DiaryStore: the open file, its prepared statements, and whether a write
/// that failed left it in doubt. For diary_store.cpp only.

#include "store/backup.h"
#include "store/diary_store.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace morrow {

/// The statements of one tap, prepared once.
struct Statements
{
    explicit Statements(SQLite::Database &connection)
        : knownDigest(connection, "SELECT digest FROM entry WHERE person = ? AND id = ?")
        , isErased(connection, "SELECT 1 FROM erased WHERE person = ? AND id_digest = ?")
        , anyErased(connection, "SELECT 1 FROM erased WHERE person = ? LIMIT 1")
        , insert(connection, kInsertEntry)
        , readSum(connection, "SELECT sum FROM person WHERE person = ?")
        , writeSum(connection, "UPDATE person SET entries = entries + ?, sum = ? WHERE person = ?")
    {
    }

    SQLite::Statement knownDigest;
    SQLite::Statement isErased;
    SQLite::Statement anyErased;
    SQLite::Statement insert;
    SQLite::Statement readSum;
    SQLite::Statement writeSum;
};

inline Digest digestIn(const SQLite::Column &column)
{
    Digest digest{};
    if (column.getBytes() == static_cast<int>(digest.size()))
        std::memcpy(digest.data(), column.getBlob(), digest.size());
    return digest;
}

struct DiaryStore::State
{
    std::filesystem::path folder;
    Options options;
    std::optional<Database> database;
    std::optional<Statements> statements;
    Sha256 hash;
    bool isReadOnly = false;
    bool isNewer = false;
    bool isDoubtful = false; ///< a write failed; nothing is acknowledged before reopen()

    [[nodiscard]] Database::Recipe recipe() const
    {
        Database::Recipe recipe{.vfs = options.vfs, .steps = options.steps, .beforeStep = {}};
        if (options.backsUp) {
            recipe.beforeStep = [this](SQLite::Database &connection, int version) -> Result<void, StoreError> {
                if (auto made = makeBackupBeforeStep(connection, folder, version); !made)
                    return failure(made.error());
                return {};
            };
        }
        return recipe;
    }

    Result<void, StoreError> openToWrite()
    {
        close();
        auto opened = Database::openToWrite(storeFile(folder), recipe());
        if (!opened)
            return failure(opened.error());
        // Looked for again, now that no other program can have it: see restore.
        std::error_code error;
        if (options.vfs.empty() && std::filesystem::exists(restoredFile(folder), error))
            return failure(StoreError::Damaged);
        database.emplace(*std::move(opened));
        try {
            statements.emplace(database->connection());
        } catch (const SQLite::Exception &exception) {
            close();
            return failure(storeError(exception));
        }
        return {};
    }

    void close()
    {
        statements.reset();
        database.reset();
    }

    /// Refuses what cannot be written, and mends a store that a failed write left in doubt.
    Result<void, StoreError> readyToWrite()
    {
        if (isReadOnly)
            return failure(isNewer ? StoreError::Newer : StoreError::ReadOnly);
        return isDoubtful ? reopen() : Result<void, StoreError>();
    }

    /// What was open stays so for reading, also in doubt.
    Result<void, StoreError> readyToRead() { return database ? Result<void, StoreError>() : reopen(); }

    /// I5. Closing moves what the log holds into the file, synced; reading it all again
    /// says whether that is whole.
    Result<void, StoreError> reopen()
    {
        if (auto opened = openToWrite(); !opened)
            return opened;
        try {
            for (const auto &[person, ref] : morrow::persons(database->connection())) {
                if (readPerson(database->connection(), person, hash).cutShort)
                    return failure(StoreError::Damaged);
            }
        } catch (const SQLite::Exception &exception) {
            return failure(storeError(exception));
        }
        if (auto done = database->checkpoint(); !done)
            return done;
        isDoubtful = false;
        return {};
    }

    Result<Added, StoreError> addOnce(const std::string &ref, std::span<const Entry> entries, const Notes &notes)
    {
        try {
            SQLite::Database &connection = database->connection();
            SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
            const auto known = personNumbered(connection, ref);
            // A new person must not get the number, and so the entries, of one whose row is lost.
            if (!known && holdsEntriesOfNobody(connection))
                return failure(StoreError::Damaged);
            const std::int64_t person = known ? *known : addPerson(connection, ref, hash);
            Added added;
            auto sum = readSum(person);
            statements->anyErased.reset();
            statements->anyErased.bind(1, person);
            const bool anyErased = statements->anyErased.executeStep();
            statements->anyErased.reset();
            for (const Entry &entry : entries) {
                const Digest digest = digestOf(entry, hash);
                if (anyErased && wasErased(person, entry.id)) {
                    ++added.erased;
                } else if (const auto there = knownDigest(person, entry.id); !there) {
                    insertEntry(statements->insert, person, entry, digest);
                    statements->insert.reset();
                    sum.add(digest);
                    ++added.added;
                } else if (*there == digest) {
                    ++added.known;
                } else {
                    return failure(StoreError::Refused);
                }
            }
            if (added.added > 0)
                writeSum(person, added.added, sum);
            writeNotes(connection, notes, hash);
            transaction.commit();
            return added;
        } catch (const SQLite::Exception &exception) {
            return failure(failed(exception));
        }
    }

    /// What \a exception means, and whether what was written is in doubt since.
    StoreError failed(const SQLite::Exception &exception)
    {
        const StoreError error = storeError(exception);
        isDoubtful = error != StoreError::Refused && error != StoreError::Busy;
        return error;
    }

    Result<void, StoreError> replaceOnce(std::span<const std::string> refs, const EntriesOf &entriesOf, const Notes &notes)
    {
        try {
            SQLite::Database &connection = database->connection();
            SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
            if (holdsEntriesOfNobody(connection))
                return failure(StoreError::Damaged);
            for (const std::string &ref : refs) {
                auto entries = entriesOf(ref);
                if (!entries)
                    return failure(entries.error());
                replacePerson(connection, ref, *std::move(entries), hash);
            }
            writeNotes(connection, notes, hash);
            transaction.commit();
            return {};
        } catch (const SQLite::Exception &exception) {
            return failure(failed(exception));
        }
    }

    Sum readSum(std::int64_t person)
    {
        auto &statement = statements->readSum;
        statement.reset();
        statement.bind(1, person);
        Sum sum;
        if (statement.executeStep())
            sum.add(digestIn(statement.getColumn(0)));
        statement.reset();
        return sum;
    }

    void writeSum(std::int64_t person, int added, const Sum &sum)
    {
        auto &statement = statements->writeSum;
        statement.reset();
        statement.bind(1, added);
        bindDigest(statement, 2, sum.value());
        statement.bind(3, person);
        statement.exec();
        statement.reset();
    }

    std::optional<Digest> knownDigest(std::int64_t person, const std::string &id)
    {
        auto &statement = statements->knownDigest;
        statement.reset();
        statement.bind(1, person);
        statement.bindNoCopy(2, id);
        std::optional<Digest> found;
        if (statement.executeStep())
            found = digestIn(statement.getColumn(0));
        statement.reset();
        return found;
    }

    bool wasErased(std::int64_t person, const std::string &id)
    {
        auto &statement = statements->isErased;
        statement.reset();
        statement.bind(1, person);
        bindDigest(statement, 2, hash.of(id));
        const bool found = statement.executeStep();
        statement.reset();
        return found;
    }

    int eraseInOneTransaction(std::int64_t person, std::string_view id);
    void scrub();
};

} // namespace morrow
