// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The diaries that are kept on this machine. These hold whenever no call is running:
///
///  I1  An entry, once acknowledged, is there after a power cut, or its loss is named.
///  I2  An entry is never changed and never deleted but by erase, or where a desk reads its
///      record anew; the database itself refuses.
///  I3  What is read was checked: each digest, each person's count and sum.
///  I4  A store of a newer program is read, never written.
///  I5  After a failed write nothing is acknowledged until the store was closed, opened
///      and read again.
///  I6  One program at a time: a second one is told that the store is busy.
///
/// It is used from one thread.

#include "base/result.h"
#include "model/entry.h"
#include "store/database.h"
#include "store/desk_rows.h"
#include "store/folder.h"
#include "store/rows.h"
#include "store/store_error.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

class DiaryStore
{
public:
    struct Options
    {
        std::string vfs{}; ///< a named sqlite3_vfs; empty: the machine's
        std::span<const SchemaStep> steps = schemaSteps();
        bool backsUp = true; ///< before each step of the schema
    };

    /// Opens the store in \a folder to write, making folder and store if there is none.
    [[nodiscard]] static Result<DiaryStore, StoreError> open(const std::filesystem::path &folder, const Options &options);
    /// Opens it to read: nothing in the folder is changed.
    [[nodiscard]] static Result<DiaryStore, StoreError> openToRead(const std::filesystem::path &folder, const Options &options);

    DiaryStore(DiaryStore &&) noexcept;
    DiaryStore &operator=(DiaryStore &&) noexcept;
    ~DiaryStore();

    struct Added
    {
        int added = 0;
        int known = 0; ///< there with the same digest
        int erased = 0; ///< skipped, because the id was erased here
    };

    /// Adds \a entries to the person \a ref, who is made if unknown, all or none; when it
    /// returns they are durable, and with them \a notes. Refused if an id is there with another content.
    Result<Added, StoreError> add(std::string_view ref, std::span<const Entry> entries, const Notes &notes = {});

    /// Gives the entries of the person \a ref, one id each, or says why they cannot be had.
    using EntriesOf = std::function<Result<std::vector<Entry>, StoreError>(const std::string &ref)>;
    /// At a desk: makes the entries of each of \a refs those that \a entriesOf gives, less what
    /// was erased; a person without any goes. All of it, and \a notes, or nothing. It is asked
    /// for one person after another, and may read the store.
    Result<void, StoreError> replace(std::span<const std::string> refs, const EntriesOf &entriesOf, const Notes &notes);

    /// At a desk: the notes that were kept. Damaged if one of them has a wrong digest.
    [[nodiscard]] Result<Notes, StoreError> notes();

    /// Writes the store anew, so that no byte of what was deleted stays in it.
    Result<void, StoreError> scrub();

    /// The refs of the persons in the store, in order of arrival. Damaged if there are
    /// entries of nobody.
    [[nodiscard]] Result<std::vector<std::string>, StoreError> persons();

    /// A person's entries, checked. An unknown ref reads as one without entries; Damaged if
    /// there are entries of nobody, which may be theirs.
    [[nodiscard]] Result<PersonReading, StoreError> read(std::string_view ref);

    /// How many entries a restore could not bring back; nullopt if nobody can say.
    [[nodiscard]] Result<std::optional<std::int64_t>, StoreError> lost();

    /// Deletes the entry \a id with everything that it corrects and that corrects it, and
    /// remembers their ids as digests only. Gives how many went.
    Result<int, StoreError> eraseChain(std::string_view ref, std::string_view id);

    /// Moves the write-ahead log into the file, for quiet times.
    Result<void, StoreError> checkpoint();

    [[nodiscard]] bool isReadOnly() const noexcept;
    [[nodiscard]] bool isNewer() const noexcept;
    [[nodiscard]] const std::filesystem::path &folder() const noexcept;
    /// For backup; nullptr where a write failed and the store could not be opened again since.
    [[nodiscard]] Database *database() noexcept;

private:
    struct State;
    explicit DiaryStore(std::unique_ptr<State> state) noexcept;

    std::unique_ptr<State> m_state;
};

} // namespace morrow
