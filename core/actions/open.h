// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One person's diary while a program has it open: the store below, and what it holds
/// in memory, folded.

#include "base/ids.h"
#include "base/result.h"
#include "model/diary.h"
#include "store/diary_store.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

/// Whether \a folder is one of a store, even if its file is lost: what is left of it is never
/// taken for a folder of another sort, nor for a first start.
[[nodiscard]] bool storeIsAt(const std::filesystem::path &folder);

/// Far enough back for the usual value of a day, the week before and the week that it is in.
inline constexpr int kRecentDays = 35;

class OpenDiary
{
public:
    /// Opens the store in \a folder to write, of its only person or of \a ref; a new folder
    /// becomes a store. Refused if it holds several persons and no \a ref says whose.
    [[nodiscard]] static Result<OpenDiary, StoreError> open(
        const std::filesystem::path &folder, std::optional<std::string> ref = std::nullopt);
    /// The same to read only.
    [[nodiscard]] static Result<OpenDiary, StoreError> openToRead(
        const std::filesystem::path &folder, std::optional<std::string> ref = std::nullopt);

    /// Whose diary it is; of a new store a new random name.
    [[nodiscard]] const std::string &person() const noexcept { return m_reading.ref; }
    /// What reading the store found, damage included.
    [[nodiscard]] const PersonReading &reading() const noexcept { return m_reading; }
    [[nodiscard]] const std::vector<Entry> &entries() const noexcept { return m_reading.entries; }
    /// The entries, taken out of a diary that is done with.
    [[nodiscard]] std::vector<Entry> takeEntries() && { return std::move(m_reading.entries); }
    /// The entries folded, made anew after each change when it is asked for.
    [[nodiscard]] const Diary &diary();

    /// The same without checks, sets, sessions, skips and bad-day doses about days more than
    /// kRecentDays before \a now: all that a page about today needs, folded in a moment however
    /// long the diary is.
    [[nodiscard]] const Diary &recent(const Moment &now);

    /// Makes \a entries durable, all or none, and takes them into the diary.
    Result<DiaryStore::Added, StoreError> add(std::vector<Entry> entries);
    /// Backs up what was added since the last time, and rotates the backups.
    Result<void, StoreError> backUp(const Moment &now);
    /// Reads the store again, after something other than add changed it.
    Result<void, StoreError> reload();

    /// An id for something recorded at \a utcMs, later than every one of this device.
    [[nodiscard]] std::string nextId(std::int64_t utcMs) { return m_ids.next(utcMs); }

    [[nodiscard]] DiaryStore &store() noexcept { return m_store; }

private:
    explicit OpenDiary(DiaryStore store) noexcept
        : m_store(std::move(store))
    {
    }
    static Result<OpenDiary, StoreError> read(DiaryStore store, std::optional<std::string> ref);

    DiaryStore m_store;
    PersonReading m_reading;
    std::optional<Diary> m_diary;
    std::optional<Diary> m_recent;
    CivilDay m_recentSince = *CivilDay::fromNumber(0);
    bool m_hasChanged = false; ///< since the last backup
    IdSource m_ids;
};

} // namespace morrow
