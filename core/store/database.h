// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One connection to one SQLite file, opened by the only recipe that was measured to
/// lose nothing.
///
///  I1  A connection that writes has every pragma of the recipe, read back; where one
///      did not take, it is not opened.
///  I2  A file of a newer program, or one that is not ours, is never written.
///  I3  A step of the schema is whole or not there; before each one runs, the caller
///      has backed up what there was.
///  I4  Tables and guards stand as the steps make them, or the file is called damaged.
///  I5  Reading, and opening what must not be written, changes no file that was there and
///      leaves none behind. To read, SQLite makes the index of the log, and an empty log if
///      there is none, beside the file; on a disk that takes neither, a private copy is made in
///      a folder of its own elsewhere. Closing removes them; a program that is killed while it
///      reads leaves them, the copy with all that it holds.

#include "base/result.h"
#include "store/schema.h"
#include "store/store_error.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace morrow {

/// What SQLite's error \a code (extended) means for us.
[[nodiscard]] StoreError storeError(int code) noexcept;
[[nodiscard]] StoreError storeError(const SQLite::Exception &exception) noexcept;

class Database
{
public:
    struct Recipe
    {
        std::string vfs{}; ///< a named sqlite3_vfs; empty: the machine's
        std::span<const SchemaStep> steps = schemaSteps();
        /// Called with the open connection and a step's version before the step runs on a
        /// store that was there before; the step is not run if it fails.
        std::function<Result<void, StoreError>(SQLite::Database &, int)> beforeStep{};
        bool checksSchema = true; ///< I4; restore reads also where a guard fell
    };

    /// Opens the file at \a path to write, making it if there is none, and brings it to
    /// the newest version of the recipe's steps.
    [[nodiscard]] static Result<Database, StoreError> openToWrite(const std::filesystem::path &path, const Recipe &recipe);

    /// Opens the file at \a path to read only: also one of a newer program, one that was
    /// not closed, and one on a disk where nothing can be made beside it (a private copy
    /// is read then).
    [[nodiscard]] static Result<Database, StoreError> openToRead(const std::filesystem::path &path, const Recipe &recipe);

    Database(Database &&) noexcept;
    Database &operator=(Database &&) noexcept;
    ~Database();

    [[nodiscard]] SQLite::Database &connection() noexcept { return *m_connection; }
    [[nodiscard]] bool isReadOnly() const noexcept { return m_isReadOnly; }
    [[nodiscard]] bool isNewer() const noexcept { return m_isNewer; }

    /// Moves what lies in the write-ahead log into the file and empties the log.
    Result<void, StoreError> checkpoint();

private:
    Database() = default;
    void close() noexcept;

    std::unique_ptr<SQLite::Database> m_connection;
    std::filesystem::path m_copy; ///< a folder of ours to remove on closing; empty: none
    std::vector<std::filesystem::path> m_made; ///< what opening made beside the file, to remove on closing
    bool m_isReadOnly = false;
    bool m_isNewer = false;
};

} // namespace morrow
