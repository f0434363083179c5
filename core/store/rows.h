// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The rows of a store, written with their digests and read by checking them.

#include "base/sha256.h"
#include "model/entry.h"
#include "store/database.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// A row whose digest is wrong: it reaches no measure.
struct DamagedRow
{
    std::string id; ///< as it reads now
    std::optional<CivilDay> day; ///< as it reads now; nullopt if it is no day
};

/// A person's entries and what is wrong with them.
struct PersonReading
{
    std::string ref;
    std::vector<Entry> entries; ///< those with a right digest, by id
    std::vector<DamagedRow> damaged;
    std::vector<Digest> erased; ///< SHA-256 of the ids that were erased
    int unknownKinds = 0; ///< right digest, but of a kind that only a newer program knows
    std::int64_t counted = 0; ///< entries that the store says it holds
    bool countDiffers = false; ///< some are missing, or there are too many
    bool sumDiffers = false; ///< those that are there are not those that were added
    bool personDamaged = false; ///< the row that names the person has a wrong digest
    bool erasedDamaged = false; ///< so has one that says what was erased, or one of those is missing
    bool cutShort = false; ///< pages of the file cannot be read; what lies there is missing

    [[nodiscard]] bool isWhole() const noexcept
    {
        return damaged.empty() && !countDiffers && !sumDiffers && !personDamaged && !erasedDamaged && !cutShort;
    }
};

/// The number of the person \a ref, or nullopt.
[[nodiscard]] std::optional<std::int64_t> personNumbered(SQLite::Database &connection, const std::string &ref);
/// Adds the person \a ref, with no entry, and gives the number.
std::int64_t addPerson(SQLite::Database &connection, const std::string &ref, Sha256 &hash);

/// Inserts \a entry; throws SQLite::Exception if the id is there.
void insertEntry(SQLite::Statement &insert, std::int64_t person, const Entry &entry, const Digest &digest);
inline constexpr const char *kInsertEntry
    = "INSERT INTO entry(person, id, kind, day, recorded, utc_offset, author, replaces, body, digest) VALUES (?,?,?,?,?,?,?,?,?,?)";

/// Reads one person whole: every entry in key order, each digest recomputed in the same
/// pass, count and sum compared at the end. Where a page cannot be read, goes on from the
/// other end. The ref is empty if the person's row is lost. Throws SQLite::Exception only if
/// the person cannot be read at all.
[[nodiscard]] PersonReading readPerson(SQLite::Database &connection, std::int64_t person, Sha256 &hash);

/// Every person in the store by number and ref as it reads.
[[nodiscard]] std::vector<std::pair<std::int64_t, std::string>> persons(SQLite::Database &connection);

/// The numbers of those persons and of whoever else has entries, as far as they can be read;
/// \a isWhole becomes false where not all can.
[[nodiscard]] std::vector<std::int64_t> personNumbers(SQLite::Database &connection, bool &isWhole);

/// Whether there are entries whose person is not in the store: their row is lost.
[[nodiscard]] bool holdsEntriesOfNobody(SQLite::Database &connection);

/// Notes that \a idDigest of \a person was erased, unless that is known.
void insertErased(SQLite::Database &connection, std::int64_t person, const Digest &idDigest, Sha256 &hash);

/// Notes in the store how many of its entries a restore could not bring back, so that their
/// loss stays named whoever saw the report; nullopt: nobody can say.
void setLost(SQLite::Database &connection, std::optional<std::int64_t> lost, Sha256 &hash);
/// What was noted; 0 if nothing was, nullopt if nobody can say or the note is damaged.
[[nodiscard]] std::optional<std::int64_t> lostIn(SQLite::Database &connection, Sha256 &hash);

/// Forgets what was erased of \a person, for whom the guards are open.
void removeErased(SQLite::Database &connection, std::int64_t person);

/// Binds a digest as a blob that SQLite copies.
void bindDigest(SQLite::Statement &statement, int index, const Digest &digest);

} // namespace morrow
