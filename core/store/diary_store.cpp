// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/diary_store.h"

#include "store/ballast.h"
#include "store/diary_store_state.h"

namespace morrow {

namespace fs = std::filesystem;

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

Result<DiaryStore::Added, StoreError> DiaryStore::add(std::string_view ref, std::span<const Entry> entries, const Notes &notes)
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return failure(ready.error());
    auto added = m_state->addOnce(std::string(ref), entries, notes);
    if (added || added.error() != StoreError::Full || !m_state->options.vfs.empty() || !releaseBallast(m_state->folder))
        return added;
    if (auto reopened = m_state->reopen(); !reopened)
        return failure(reopened.error());
    return m_state->addOnce(std::string(ref), entries, notes);
}

Result<void, StoreError> DiaryStore::replace(std::span<const std::string> refs, const EntriesOf &entriesOf, const Notes &notes)
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return ready;
    return m_state->replaceOnce(refs, entriesOf, notes);
}

Result<Notes, StoreError> DiaryStore::notes()
{
    if (auto ready = m_state->readyToRead(); !ready)
        return failure(ready.error());
    try {
        auto notes = readNotes(m_state->database->connection(), m_state->hash);
        if (!notes)
            return failure(StoreError::Damaged);
        return *std::move(notes);
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

Result<void, StoreError> DiaryStore::scrub()
{
    if (auto ready = m_state->readyToWrite(); !ready)
        return ready;
    try {
        m_state->scrub();
    } catch (const SQLite::Exception &exception) {
        return failure(m_state->failed(exception));
    }
    return checkpoint();
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
