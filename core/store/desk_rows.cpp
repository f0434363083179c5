// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/desk_rows.h"

#include "store/rows.h"

#include <algorithm>
#include <cstring>

namespace morrow {

namespace {

/// Tells a note from the other lines of `meta`.
constexpr const char *kPrefix = "note ";
constexpr std::size_t kPrefixSize = 5;

Digest digestOfLine(const std::string &key, const std::string &value, Sha256 &hash)
{
    return digestOfColumns({"meta 1", key, value}, hash);
}

void execute(SQLite::Database &connection, const char *sql, std::int64_t person)
{
    SQLite::Statement statement(connection, sql);
    statement.bind(1, person);
    statement.exec();
}

bool idLess(const Entry &a, const Entry &b) noexcept
{
    return a.id < b.id;
}

/// Removes the rows of \a person, for whom the guards are open.
void removeEntries(SQLite::Database &connection, std::int64_t person)
{
    execute(connection, "DELETE FROM card WHERE person = ?", person);
    execute(connection, "DELETE FROM entry WHERE person = ?", person);
}

void removePerson(SQLite::Database &connection, std::int64_t person)
{
    removeErased(connection, person);
    execute(connection, "DELETE FROM person WHERE person = ?", person);
}

void insertAll(
    SQLite::Database &connection, std::int64_t person, const std::vector<Entry> &entries, const std::vector<Entry> &there, Sha256 &hash)
{
    SQLite::Statement insert(connection, kInsertEntry);
    Sum sum;
    for (const Entry &entry : entries) {
        const Digest digest = digestOf(entry, hash);
        sum.add(digest);
        if (!std::binary_search(there.begin(), there.end(), entry, idLess))
            insertEntry(insert, person, entry, digest);
    }
    SQLite::Statement write(connection, "UPDATE person SET entries = ?, sum = ? WHERE person = ?");
    write.bind(1, static_cast<std::int64_t>(entries.size()));
    bindDigest(write, 2, sum.value());
    write.bind(3, person);
    write.exec();
}

} // namespace

void writeNotes(SQLite::Database &connection, const Notes &notes, Sha256 &hash)
{
    if (notes.empty())
        return;
    SQLite::Statement remove(connection, "DELETE FROM meta WHERE key = ?");
    SQLite::Statement insert(connection, "INSERT INTO meta(key, value, digest) VALUES (?, ?, ?)");
    for (const auto &[name, value] : notes) {
        const std::string key = kPrefix + name;
        remove.reset();
        remove.bind(1, key);
        remove.exec();
        if (value.empty())
            continue;
        insert.reset();
        insert.bind(1, key);
        insert.bind(2, value);
        bindDigest(insert, 3, digestOfLine(key, value, hash));
        insert.exec();
    }
}

std::optional<Notes> readNotes(SQLite::Database &connection, Sha256 &hash)
{
    Notes notes;
    SQLite::Statement rows(connection, "SELECT key, value, digest FROM meta WHERE key > ? AND key < ?");
    rows.bind(1, kPrefix);
    rows.bind(2, "note!"); // the character after the space
    while (rows.executeStep()) {
        const std::string key = rows.getColumn(0).getString();
        std::string value = rows.getColumn(1).getString();
        const SQLite::Column stored = rows.getColumn(2);
        const Digest digest = digestOfLine(key, value, hash);
        if (stored.getBytes() != static_cast<int>(digest.size()) || std::memcmp(stored.getBlob(), digest.data(), digest.size()) != 0)
            return std::nullopt;
        notes.emplace(key.substr(kPrefixSize), std::move(value));
    }
    return notes;
}

void replacePerson(SQLite::Database &connection, const std::string &ref, std::vector<Entry> entries, Sha256 &hash)
{
    auto person = personNumbered(connection, ref);
    if (!person && entries.empty())
        return;
    std::sort(entries.begin(), entries.end(), idLess);
    if (!person) {
        person = addPerson(connection, ref, hash);
        insertAll(connection, *person, entries, {}, hash);
        return;
    }
    const PersonReading there = readPerson(connection, *person, hash);
    std::erase_if(entries,
        [&](const Entry &entry) { return std::find(there.erased.begin(), there.erased.end(), hash.of(entry.id)) != there.erased.end(); });
    const auto stays = [&entries](const Entry &entry) {
        const auto found = std::lower_bound(entries.begin(), entries.end(), entry, idLess);
        return found != entries.end() && *found == entry;
    };
    const bool isGrowing
        = there.isWhole() && there.unknownKinds == 0 && !entries.empty() && std::all_of(there.entries.begin(), there.entries.end(), stays);
    if (isGrowing) {
        insertAll(connection, *person, entries, there.entries, hash);
        return;
    }
    execute(connection, "INSERT INTO erasing(person) VALUES (?)", *person);
    removeEntries(connection, *person);
    if (entries.empty())
        removePerson(connection, *person);
    else
        insertAll(connection, *person, entries, {}, hash);
    execute(connection, "DELETE FROM erasing WHERE person = ?", *person);
}

} // namespace morrow
