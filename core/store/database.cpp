// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/database.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <sys/stat.h>
#include <unistd.h>
#include <utility>

namespace morrow {

namespace {

namespace fs = std::filesystem;

/// "Mrrw": tells a store of ours from any other SQLite file.
constexpr int kApplicationId = 0x4d727277;

struct Pragma
{
    const char *name;
    const char *set;
    const char *reads; ///< what reading it back gives
};

// locking_mode comes first, so that the log needs no shared memory; see SQLite's
// "WAL without shared memory". FULL is what makes a commit survive a power cut.
constexpr std::array kRecipe{
    Pragma{"locking_mode", "EXCLUSIVE", "exclusive"},
    Pragma{"journal_mode", "WAL", "wal"},
    Pragma{"synchronous", "FULL", "2"},
    Pragma{"foreign_keys", "ON", "1"},
    Pragma{"recursive_triggers", "ON", "1"},
    Pragma{"secure_delete", "ON", "1"},
    Pragma{"trusted_schema", "OFF", "0"},
    Pragma{"cell_size_check", "ON", "1"},
    Pragma{"mmap_size", "0", "0"},
};

std::string readPragma(SQLite::Database &connection, const std::string &name)
{
    SQLite::Statement statement(connection, "PRAGMA " + name);
    // A pragma that the build or the file system does not have answers nothing.
    return statement.executeStep() ? statement.getColumn(0).getString() : std::string();
}

/// I1. WAL needs a file system that can lock and sync; where it cannot be had, a
/// rollback journal that is truncated and synced along with its folder loses nothing either.
bool applyRecipe(SQLite::Database &connection)
{
    for (const Pragma &pragma : kRecipe) {
        const std::string name(pragma.name);
        {
            SQLite::Statement statement(connection, "PRAGMA " + name + "=" + pragma.set);
            while (statement.executeStep()) { }
        }
        if (name == "journal_mode" && readPragma(connection, name) != pragma.reads) {
            SQLite::Statement(connection, "PRAGMA journal_mode=TRUNCATE").executeStep();
            if (readPragma(connection, name) != "truncate")
                return false;
            continue;
        }
        const bool isRollback = name == "synchronous" && readPragma(connection, "journal_mode") == "truncate";
        if (isRollback)
            connection.exec("PRAGMA synchronous=EXTRA");
        // An in-memory or missing mmap answers nothing, which is as good as 0.
        const std::string reads = readPragma(connection, name);
        if (reads != (isRollback ? "3" : pragma.reads) && !(name == "mmap_size" && reads.empty()))
            return false;
    }
    return true;
}

int pragmaNumber(SQLite::Database &connection, const char *name)
{
    return std::atoi(readPragma(connection, name).c_str());
}

bool isEmpty(SQLite::Database &connection)
{
    return pragmaNumber(connection, "schema_version") == 0;
}

int newestVersion(const Database::Recipe &recipe)
{
    return recipe.steps.empty() ? 0 : recipe.steps.back().version;
}

Result<void, StoreError> runSteps(SQLite::Database &connection, const Database::Recipe &recipe)
{
    const int version = pragmaNumber(connection, "user_version");
    for (const SchemaStep &step : recipe.steps) {
        if (step.version <= version)
            continue;
        if (version > 0 && recipe.beforeStep) {
            if (auto done = recipe.beforeStep(connection, step.version); !done)
                return done;
        }
        SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
        connection.exec(std::string(step.sql));
        connection.exec("PRAGMA application_id=" + std::to_string(kApplicationId));
        connection.exec("PRAGMA user_version=" + std::to_string(step.version));
        transaction.commit();
    }
    return {};
}

std::unique_ptr<SQLite::Database> connect(const fs::path &path, int flags, const std::string &vfs)
{
    return std::make_unique<SQLite::Database>(path.string(), flags, 0, vfs);
}

/// A new folder that only this user can look into; empty if none can be made.
fs::path privateFolder()
{
    for (const char *variable : {"XDG_RUNTIME_DIR", "TMPDIR"}) {
        if (const char *const base = std::getenv(variable); base && *base) {
            std::string name = std::string(base) + "/morrow-XXXXXX";
            if (::mkdtemp(name.data()))
                return name;
        }
    }
    std::string name = "/tmp/morrow-XXXXXX";
    return ::mkdtemp(name.data()) ? fs::path(name) : fs::path();
}

fs::path logOf(const fs::path &path)
{
    return path.string() + "-wal";
}

fs::path indexOf(const fs::path &path)
{
    return path.string() + "-shm";
}

bool isMissing(const fs::path &path)
{
    std::error_code error;
    return !fs::exists(path, error);
}

/// \a path with the links on the way to it followed: SQLITE_OPEN_NOFOLLOW, meant for the file
/// itself, refuses a home that lies behind a link, too.
fs::path withoutLinks(const fs::path &path, const std::string &vfs)
{
    std::error_code error;
    const fs::path folder = vfs.empty() ? fs::canonical(path.has_parent_path() ? path.parent_path() : fs::path("."), error) : fs::path();
    return error || folder.empty() ? path : folder / path.filename();
}

/// Whether the file at \a path is too short for a page, which SQLite would take for an empty one.
bool isTooShort(const fs::path &path)
{
    std::error_code error;
    const auto size = fs::file_size(path, error);
    return !error && size > 0 && size < 512;
}

/// Every table, index and trigger as it was told.
std::string schemaOf(SQLite::Database &connection)
{
    std::string all;
    SQLite::Statement rows(connection, "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name");
    while (rows.executeStep()) {
        for (int column = 0; column < 4; ++column)
            all += rows.getColumn(column).getString() + '\n';
    }
    return all;
}

/// What schemaOf says of a store that \a steps made, up to \a version.
std::string schemaMadeBy(std::span<const SchemaStep> steps, int version)
{
    SQLite::Database memory(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    for (const SchemaStep &step : steps) {
        if (step.version <= version)
            memory.exec(std::string(step.sql));
    }
    return schemaOf(memory);
}

/// I4. A flipped bit in the text of a guard would let through what it forbids, and no
/// digest covers that text.
bool hasItsSchema(SQLite::Database &connection, const Database::Recipe &recipe)
{
    const int version = pragmaNumber(connection, "user_version");
    if (recipe.steps.data() != schemaSteps().data() || version != newestVersion(recipe))
        return schemaOf(connection) == schemaMadeBy(recipe.steps, version);
    // Making it anew costs as much as opening the store.
    static const std::string newest = schemaMadeBy(recipe.steps, version);
    return schemaOf(connection) == newest;
}

/// Makes safe what lies in the log. It may be in the machine's memory only: who wrote it was
/// killed before the sync, or the sync failed, after which Linux takes the pages for written. From
/// here on it is shown and counts as known, so it is written once more, where it lies, and synced.
int settleLog(SQLite::Database &connection)
{
    sqlite3_file *log = nullptr;
    sqlite3_file_control(connection.getHandle(), "main", SQLITE_FCNTL_JOURNAL_POINTER, &log);
    sqlite3_int64 size = 0;
    if (!log || !log->pMethods)
        return SQLITE_OK;
    int code = log->pMethods->xFileSize(log, &size);
    if (code != SQLITE_OK || size == 0)
        return code;
    std::vector<char> block(1 << 16);
    for (sqlite3_int64 at = 0; at < size && code == SQLITE_OK;) {
        const int count = static_cast<int>(std::min<sqlite3_int64>(size - at, static_cast<sqlite3_int64>(block.size())));
        code = log->pMethods->xRead(log, block.data(), count, at);
        if (code == SQLITE_OK)
            code = log->pMethods->xWrite(log, block.data(), count, at);
        at += count;
    }
    return code == SQLITE_OK ? log->pMethods->xSync(log, SQLITE_SYNC_NORMAL) : code;
}

/// Takes the lock of a reader again, which SQLite gave up when reading failed: a log that was made
/// is only ours as long as no writer can come.
bool keepsWritersOut(SQLite::Database &connection)
{
    sqlite3_file *file = nullptr;
    sqlite3_file_control(connection.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file);
    return file && file->pMethods && file->pMethods->xLock(file, SQLITE_LOCK_SHARED) == SQLITE_OK;
}

/// Whether closing \a connection moves the log into the file, as it does by itself.
void checkpointOnClosing(SQLite::Database &connection, bool does)
{
    sqlite3_db_config(connection.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, does ? 0 : 1, nullptr);
}

} // namespace

StoreError storeError(const SQLite::Exception &exception) noexcept
{
    return storeError(exception.getErrorCode());
}

StoreError storeError(int code) noexcept
{
    switch (code & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return StoreError::Busy;
    case SQLITE_FULL:
        return StoreError::Full;
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return StoreError::ReadOnly;
    case SQLITE_CORRUPT:
        return StoreError::Damaged;
    case SQLITE_NOTADB:
        return StoreError::NotADiary;
    case SQLITE_CONSTRAINT:
        return StoreError::Refused;
    default:
        return StoreError::Io;
    }
}

Database::Database(Database &&) noexcept = default;

Database &Database::operator=(Database &&other) noexcept
{
    if (this != &other) {
        close();
        m_connection = std::move(other.m_connection);
        m_copy = std::exchange(other.m_copy, {});
        m_made = std::exchange(other.m_made, {});
        m_isReadOnly = other.m_isReadOnly;
        m_isNewer = other.m_isNewer;
    }
    return *this;
}

Database::~Database()
{
    close();
}

void Database::close() noexcept
{
    std::error_code ignored;
    if (m_connection) {
        // Before the connection goes: it keeps every writer out, so a log that was made is still only ours.
        for (const fs::path &file : std::exchange(m_made, {})) {
            const bool isLog = file.native().ends_with("-wal");
            if (!isLog || (fs::file_size(file, ignored) == 0 && !ignored))
                fs::remove(file, ignored);
        }
    }
    m_connection.reset();
    if (!m_copy.empty())
        fs::remove_all(std::exchange(m_copy, {}), ignored);
}

Result<Database, StoreError> Database::openToWrite(const fs::path &path, const Recipe &recipe)
{
    try {
        const fs::path file = withoutLinks(path, recipe.vfs);
        if (recipe.vfs.empty() && isTooShort(file))
            return failure(StoreError::NotADiary);
        const bool makesLog = recipe.vfs.empty() && isMissing(logOf(file));
        Database database;
        database.m_connection = connect(file, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE | SQLITE_OPEN_NOFOLLOW, recipe.vfs);
        SQLite::Database &connection = *database.m_connection;
        if (sqlite3_db_readonly(connection.getHandle(), "main") == 1)
            return failure(StoreError::ReadOnly);
        // I2 and I5, before anything could be written.
        checkpointOnClosing(connection, false);
        connection.exec("PRAGMA locking_mode=EXCLUSIVE");
        if (!isEmpty(connection)) {
            if (makesLog)
                database.m_made.push_back(logOf(file));
            if (pragmaNumber(connection, "application_id") != kApplicationId)
                return failure(StoreError::NotADiary);
            if (pragmaNumber(connection, "user_version") > newestVersion(recipe))
                return failure(StoreError::Newer);
            if (recipe.checksSchema && !hasItsSchema(connection, recipe))
                return failure(StoreError::Damaged);
            database.m_made.clear();
        }
        if (const int code = settleLog(connection); code != SQLITE_OK)
            return failure(storeError(code));
        checkpointOnClosing(connection, true);
        if (!applyRecipe(connection))
            return failure(StoreError::Io);
        if (auto stepped = runSteps(connection, recipe); !stepped)
            return failure(stepped.error());
        return database;
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

Result<Database, StoreError> Database::openToRead(const fs::path &path, const Recipe &recipe)
{
    const auto open = [&recipe](const fs::path &file) {
        const bool makesLog = recipe.vfs.empty() && isMissing(logOf(file));
        Database database;
        database.m_isReadOnly = true;
        // Only those who read use it, and it does not matter whether they share one.
        if (recipe.vfs.empty() && isMissing(indexOf(file)))
            database.m_made.push_back(indexOf(file));
        // Without EXCLUSIVE: with it a file in WAL mode answers "disk I/O error".
        database.m_connection = connect(file, SQLite::OPEN_READONLY, recipe.vfs);
        SQLite::Database &connection = *database.m_connection;
        connection.exec("PRAGMA trusted_schema=OFF");
        connection.exec("PRAGMA cell_size_check=ON");
        connection.exec("PRAGMA mmap_size=0");
        try {
            (void)isEmpty(connection); // reads the first page, through the log
        } catch (const SQLite::Exception &) {
            // On a full disk the log could be made and its index not.
            if (makesLog && keepsWritersOut(connection))
                database.m_made.push_back(logOf(file));
            throw;
        }
        // In WAL mode, the only one that makes files, the lock is kept from here on.
        if (makesLog && readPragma(connection, "journal_mode") == "wal")
            database.m_made.push_back(logOf(file));
        return database;
    };
    try {
        Database database;
        try {
            database = open(path);
        } catch (const SQLite::Exception &exception) {
            const StoreError error = storeError(exception);
            if ((error != StoreError::Io && error != StoreError::ReadOnly) || !recipe.vfs.empty())
                throw;
            // Nothing can be made beside it, so there is no writer either: read a copy.
            std::error_code failed;
            const fs::path folder = privateFolder();
            if (folder.empty())
                return failure(StoreError::Io);
            database.m_copy = folder;
            const fs::path copy = folder / path.filename();
            fs::copy_file(path, copy, failed);
            if (!failed && fs::exists(logOf(path), failed))
                fs::copy_file(logOf(path), logOf(copy), failed);
            if (failed)
                return failure(StoreError::Io);
            auto opened = open(copy);
            database.m_connection = std::move(opened.m_connection);
            database.m_isReadOnly = true;
        }
        SQLite::Database &connection = *database.m_connection;
        if (isEmpty(connection) || pragmaNumber(connection, "application_id") != kApplicationId)
            return failure(StoreError::NotADiary);
        database.m_isNewer = pragmaNumber(connection, "user_version") > newestVersion(recipe);
        if (recipe.checksSchema && !database.m_isNewer && !hasItsSchema(connection, recipe))
            return failure(StoreError::Damaged);
        return database;
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

Result<void, StoreError> Database::checkpoint()
{
    try {
        SQLite::Statement checkpoint(*m_connection, "PRAGMA wal_checkpoint(TRUNCATE)");
        // The first column says whether somebody was in the way.
        if (checkpoint.executeStep() && checkpoint.getColumn(0).getInt() != 0)
            return failure(StoreError::Busy);
        return {};
    } catch (const SQLite::Exception &exception) {
        return failure(storeError(exception));
    }
}

} // namespace morrow
