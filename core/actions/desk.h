// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A desk while a program has it open: the record folder, which is what the clinic knows, and
/// a store, which is a cache of it. Several desks may share one record folder.
///
///  I1  What is in the store is in the record; it is written there first.
///  I2  The store made again from the record has the same entries and sums, at every desk
///      that has taken in what is new there.
///  I3  Nothing of a person who was marked as erased is kept, at any desk.
///  I4  A file of the record that cannot be read takes nothing away that the store has; it is named.

#include "actions/diary_union.h"
#include "actions/record_index.h"
#include "base/ids.h"
#include "base/result.h"
#include "store/diary_store.h"
#include "store/record_folder.h"

#include <filesystem>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace morrow {

/// What failed: the store, or the record folder.
using DeskError = std::variant<StoreError, FileError>;

/// What was new in the record folder.
struct TookNew
{
    int files = 0; ///< that other desks put there, or that were not finished here
    int persons = 0; ///< whose entries changed
    int erasedPersons = 0;
    std::vector<std::string> unread; ///< files that cannot be read, or not yet; they are tried again
    std::vector<std::string> missing; ///< files that are known here and lie there no more
    std::vector<std::string> clashing; ///< files that contradict another one, and are left out
};

struct Rebuilt
{
    int persons = 0;
    int entries = 0;
    TookNew record;
    bool keepsOld = false; ///< not all of the record could be read, so the old store is kept beside the new one
};

class OpenDesk
{
public:
    /// Opens the desk in \a folder, where its store lies in `store` and its record in `record`,
    /// which may be a link to a folder on a shared drive, and takes in what is new there. A folder
    /// that is missing or empty becomes a desk; one that holds other things is NotADiary.
    [[nodiscard]] static Result<OpenDesk, DeskError> open(const std::filesystem::path &folder);

    /// The store of the desk in \a folder made again from its record. Missing if no record is there.
    static Result<Rebuilt, DeskError> rebuild(const std::filesystem::path &folder);

    /// Takes in what other desks put into the record since.
    Result<TookNew, DeskError> takeInNew();
    /// What opening found new.
    [[nodiscard]] const TookNew &news() const noexcept { return m_news; }

    [[nodiscard]] const RecordIndex &index() const noexcept { return m_index; }
    [[nodiscard]] const RecordFolder &record() const noexcept { return m_record; }
    [[nodiscard]] DiaryStore &store() noexcept { return m_store; }

    /// The entries of \a person, by the ref of the store; Damaged if not all of them can be read.
    [[nodiscard]] Result<std::vector<Entry>, StoreError> entriesOf(const std::string &person);

    /// Puts \a bytes, which hold \a diary, into the record, then what is new in them into the
    /// store. They do not clash with what is there.
    Result<void, DeskError> keep(const std::string &bytes, const FhirDiary &diary);
    /// The same with \a decisions about \a person, which come first, in one step of the store; \a bytes may be empty.
    Result<void, DeskError> keepWithDecisions(
        const std::string &person, std::span<const Entry> decisions, const std::string &bytes, const FhirDiary &diary);
    /// Whether every file of \a person can be read, so that the person can be made again.
    [[nodiscard]] bool canBeMadeAgain(const std::string &person) const;

    /// Erases the person who is also \a ref, here and, by a mark in the record, at every desk.
    Result<void, DeskError> erasePerson(const std::string &ref);

    /// An id for something recorded at \a utcMs, later than every one that was made since opening.
    [[nodiscard]] std::string nextId(std::int64_t utcMs) { return m_ids.next(utcMs); }

private:
    OpenDesk(std::filesystem::path folder, RecordFolder record, DiaryStore store, RecordIndex index) noexcept;

    [[nodiscard]] std::optional<FhirDiary> recorded(const std::string &name) const;
    [[nodiscard]] Result<std::vector<Entry>, StoreError> madeAgain(const RecordIndex &index, const std::string &person, TookNew &report);
    Result<void, DeskError> change(RecordIndex after, Notes notes, std::set<std::string> touched, TookNew &report);
    Result<void, DeskError> obeyErasures(TookNew &report);

    std::filesystem::path m_folder;
    RecordFolder m_record;
    DiaryStore m_store;
    RecordIndex m_index;
    TookNew m_news;
    IdSource m_ids;
};

} // namespace morrow
