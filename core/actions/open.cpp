// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/open.h"

#include "store/backup.h"

#include <QUuid>

#include <algorithm>

namespace morrow {

bool storeIsAt(const std::filesystem::path &folder)
{
    std::error_code error;
    return std::filesystem::exists(storeFile(folder), error) || tellsOfAStore(folder);
}

namespace {

/// The kinds that come every day, of which a long diary is made.
bool isDaily(Kind kind) noexcept
{
    return kind == Kind::Check || kind == Kind::Set || kind == Kind::Session || kind == Kind::Skip || kind == Kind::Easier;
}

} // namespace

Result<OpenDiary, StoreError> OpenDiary::open(const std::filesystem::path &folder, std::optional<std::string> ref)
{
    auto store = DiaryStore::open(folder, {});
    if (!store)
        return failure(store.error());
    return read(*std::move(store), std::move(ref));
}

Result<OpenDiary, StoreError> OpenDiary::openToRead(const std::filesystem::path &folder, std::optional<std::string> ref)
{
    auto store = DiaryStore::openToRead(folder, {});
    if (!store)
        return failure(store.error());
    return read(*std::move(store), std::move(ref));
}

Result<OpenDiary, StoreError> OpenDiary::read(DiaryStore store, std::optional<std::string> ref)
{
    OpenDiary open(std::move(store));
    if (!ref) {
        const auto persons = open.m_store.persons();
        if (!persons)
            return failure(persons.error());
        if (persons->size() > 1)
            return failure(StoreError::Refused);
        ref = persons->empty() ? QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString() : persons->front();
    }
    open.m_reading.ref = *std::move(ref);
    if (auto read = open.reload(); !read)
        return failure(read.error());
    return open;
}

const Diary &OpenDiary::diary()
{
    if (!m_diary)
        m_diary = Diary::from(m_reading.entries);
    return *m_diary;
}

const Diary &OpenDiary::recent(const Moment &now)
{
    const CivilDay since = diaryDay(now, {}) - kRecentDays;
    if (m_recent && m_recentSince == since)
        return *m_recent;
    std::vector<Entry> kept;
    for (const Entry &entry : entries()) {
        // What an old entry corrects may be about a recent day, so corrections stay.
        if (!isDaily(entry.kind) || entry.day >= since || entry.replaces)
            kept.push_back(entry);
    }
    m_recent = Diary::from(std::move(kept));
    m_recentSince = since;
    return *m_recent;
}

Result<DiaryStore::Added, StoreError> OpenDiary::add(std::vector<Entry> entries)
{
    auto added = m_store.add(person(), entries);
    if (!added)
        return added;
    m_hasChanged |= added->added > 0;
    if (added->known > 0 || added->erased > 0) {
        if (auto read = reload(); !read)
            return failure(read.error());
        return added;
    }
    m_reading.counted += added->added;
    std::move(entries.begin(), entries.end(), std::back_inserter(m_reading.entries));
    m_diary.reset();
    m_recent.reset();
    return added;
}

Result<void, StoreError> OpenDiary::backUp(const Moment &now)
{
    if (!m_hasChanged)
        return {};
    if (!m_store.database())
        return failure(StoreError::Io);
    if (auto made = makeBackup(m_store.database()->connection(), m_store.folder(), now); !made)
        return failure(made.error());
    rotateBackups(m_store.folder());
    m_hasChanged = false;
    return {};
}

Result<void, StoreError> OpenDiary::reload()
{
    auto reading = m_store.read(person());
    if (!reading)
        return failure(reading.error());
    m_reading = *std::move(reading);
    m_diary.reset();
    m_recent.reset();
    for (const Entry &entry : m_reading.entries)
        m_ids.startAfter(entry.id);
    return {};
}

} // namespace morrow
