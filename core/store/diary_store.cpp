// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/diary_store.h"

#include "store/backup.h"
#include "store/ballast.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace morrow {

namespace {

namespace fs = std::filesystem;

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

Digest digestIn(const SQLite::Column &column)
{
    Digest digest{};
    if (column.getBytes() == static_cast<int>(digest.size()))
        std::memcpy(digest.data(), column.getBlob(), digest.size());
    return digest;
}

} // namespace

struct DiaryStore::State
{
    fs::path folder;
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
        if (options.vfs.empty() && fs::exists(restoredFile(folder), error))
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

    Result<Added, StoreError> addOnce(const std::string &ref, std::span<const Entry> entries)
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
            transaction.commit();
            return added;
        } catch (const SQLite::Exception &exception) {
            const StoreError error = storeError(exception);
            isDoubtful = error != StoreError::Refused && error != StoreError::Busy;
            return failure(error);
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

DiaryStore::DiaryStore(std::unique_ptr<State> state) noexcept
    : m_state(std::move(state))
{
}
DiaryStore::DiaryStore(DiaryStore &&) noexcept = default;
DiaryStore &DiaryStore::operator=(DiaryStore &&) noexcept = default;
DiaryStore::~DiaryStore() = default;

Result<DiaryStore, StoreError> DiaryStore::open(const fs::path &folder, const Options &options)
{
    if (options.vfs.empty()) {
        if (auto prepared = prepareFolder(folder); !prepared)
            return failure(prepared.error());
    }
    auto state = std::make_unique<State>();
    state->folder = folder;
    state->options = options;
    auto opened = state->openToWrite();
    if (!opened && opened.error() == StoreError::Full && options.vfs.empty() && releaseBallast(folder))
        opened = state->openToWrite();
    if (!opened)
        return failure(opened.error());
    if (options.vfs.empty())
        keepBallast(folder);
    return DiaryStore(std::move(state));
}

Result<DiaryStore, StoreError> DiaryStore::openToRead(const fs::path &folder, const Options &options)
{
    std::error_code error;
    if (options.vfs.empty() && (isLost(folder) || fs::exists(restoredFile(folder), error)))
        return failure(StoreError::Damaged);
    if (options.vfs.empty() && !fs::exists(storeFile(folder), error))
        return failure(StoreError::Missing);
    auto state = std::make_unique<State>();
    state->folder = folder;
    state->options = options;
    auto opened = Database::openToRead(storeFile(folder), state->recipe());
    if (!opened)
        return failure(opened.error());
    state->isReadOnly = true;
    state->isNewer = opened->isNewer();
    state->database.emplace(*std::move(opened));
    return DiaryStore(std::move(state));
}

Result<DiaryStore::Added, StoreError> DiaryStore::add(std::string_view ref, std::span<const Entry> entries)
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return failure(ready.error());
    auto added = m_state->addOnce(std::string(ref), entries);
    if (added || added.error() != StoreError::Full || !m_state->options.vfs.empty() || !releaseBallast(m_state->folder))
        return added;
    if (auto reopened = m_state->reopen(); !reopened)
        return failure(reopened.error());
    return m_state->addOnce(std::string(ref), entries);
}

Result<std::vector<std::string>, StoreError> DiaryStore::persons()
{
    if (auto ready = m_state->readyToRead(); !ready)
        return failure(ready.error());
    try {
        if (holdsEntriesOfNobody(m_state->database->connection()))
            return failure(StoreError::Damaged);
        std::vector<std::string> refs;
        for (auto &[person, ref] : morrow::persons(m_state->database->connection()))
            refs.push_back(std::move(ref));
        return refs;
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

Result<std::optional<std::int64_t>, StoreError> DiaryStore::lost()
{
    if (auto ready = m_state->readyToRead(); !ready)
        return failure(ready.error());
    try {
        return lostIn(m_state->database->connection(), m_state->hash);
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

Result<PersonReading, StoreError> DiaryStore::read(std::string_view ref)
{
    if (auto ready = m_state->readyToRead(); !ready)
        return failure(ready.error());
    try {
        const auto person = personNumbered(m_state->database->connection(), std::string(ref));
        if (!person) {
            if (holdsEntriesOfNobody(m_state->database->connection()))
                return failure(StoreError::Damaged);
            PersonReading nothing;
            nothing.ref = ref;
            return nothing;
        }
        return readPerson(m_state->database->connection(), *person, m_state->hash);
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

int DiaryStore::State::eraseInOneTransaction(std::int64_t person, std::string_view id)
{
    SQLite::Database &connection = database->connection();
    const PersonReading reading = readPerson(connection, person, hash);
    const auto chain = chainOf(reading.entries, id);
    if (chain.empty()) {
        // Erased before, perhaps in a call that was cut.
        if (std::find(reading.erased.begin(), reading.erased.end(), hash.of(id)) != reading.erased.end())
            scrub();
        return 0;
    }

    SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
    SQLite::Statement open(connection, "INSERT INTO erasing(person) VALUES (?)");
    open.bind(1, person);
    open.exec();
    Sum sum = readSum(person);
    SQLite::Statement remove(connection, "DELETE FROM entry WHERE person = ? AND id = ?");
    for (const Entry *entry : chain) {
        remove.reset();
        remove.bind(1, person);
        remove.bind(2, entry->id);
        remove.exec();
        insertErased(connection, person, hash.of(entry->id), hash);
        // Taken off, not added up anew: what is damaged elsewhere stays noticed.
        sum.subtract(digestOf(*entry, hash));
    }
    writeSum(person, -static_cast<int>(chain.size()), sum);
    SQLite::Statement close(connection, "DELETE FROM erasing WHERE person = ?");
    close.bind(1, person);
    close.exec();
    transaction.commit();
    scrub();
    return static_cast<int>(chain.size());
}

/// secure_delete overwrites what is deleted where it lies; where a page was split before,
/// its unused space still holds what was moved off it. Writing everything anew leaves none.
void DiaryStore::State::scrub()
{
    // Not through a temporary file, which would hold the whole diary.
    database->connection().exec("PRAGMA temp_store=MEMORY");
    database->connection().exec("VACUUM");
}

Result<int, StoreError> DiaryStore::eraseChain(std::string_view ref, std::string_view id)
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return failure(ready.error());
    try {
        const auto person = personNumbered(m_state->database->connection(), std::string(ref));
        const int erased = person ? m_state->eraseInOneTransaction(*person, id) : 0;
        // The log still holds pages from before.
        if (auto done = m_state->database->checkpoint(); !done)
            return failure(done.error());
        return erased;
    } catch (const SQLite::Exception &exception) {
        m_state->isDoubtful = true;
        return failure(storeError(exception));
    }
}

Result<void, StoreError> DiaryStore::checkpoint()
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return ready;
    auto done = m_state->database->checkpoint();
    m_state->isDoubtful = !done;
    return done;
}

bool DiaryStore::isReadOnly() const noexcept
{
    return m_state->isReadOnly;
}

bool DiaryStore::isNewer() const noexcept
{
    return m_state->isNewer;
}

const fs::path &DiaryStore::folder() const noexcept
{
    return m_state->folder;
}

Database *DiaryStore::database() noexcept
{
    return m_state->database ? &*m_state->database : nullptr;
}

} // namespace morrow
