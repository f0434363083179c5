// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What only the store of a desk does, which is a cache of its record folder: it notes what it
/// took out of that folder, and a person's entries can be replaced by what the folder says.
///
/// Both run inside a transaction of the caller and throw SQLite::Exception.

#include "base/sha256.h"
#include "model/entry.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// Lines by their key; where they are written, an empty one takes a line away.
using Notes = std::map<std::string, std::string>;

void writeNotes(SQLite::Database &connection, const Notes &notes, Sha256 &hash);
/// Every note; nullopt if the digest of one is wrong.
[[nodiscard]] std::optional<Notes> readNotes(SQLite::Database &connection, Sha256 &hash);

/// Makes \a entries, one id each, those of the person \a ref, less what was erased. Where only
/// some are missing they are added; else all are written anew, which also mends damage. A
/// person who is to have none goes.
void replacePerson(SQLite::Database &connection, const std::string &ref, std::vector<Entry> entries, Sha256 &hash);

} // namespace morrow
