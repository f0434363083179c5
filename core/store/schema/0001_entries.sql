-- SPDX-FileCopyrightText: The project authors
-- SPDX-License-Identifier: GPL-3.0-only
--
-- Run whole, once, in one transaction; never edited after it landed.

CREATE TABLE meta (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL,
    digest BLOB NOT NULL CHECK (length(digest) = 32)
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
    person INTEGER PRIMARY KEY,
    ref TEXT NOT NULL UNIQUE CHECK (length(ref) BETWEEN 1 AND 64),
    digest BLOB NOT NULL CHECK (length(digest) = 32),
    entries INTEGER NOT NULL DEFAULT 0 CHECK (entries >= 0),
    sum BLOB NOT NULL DEFAULT (zeroblob(32)) CHECK (length(sum) = 32)
) STRICT;

-- No secondary index: a person's entries are read in one way only, all of them in the
-- order of this key, so that reading is checking.
CREATE TABLE entry (
    person INTEGER NOT NULL REFERENCES person,
    id TEXT NOT NULL CHECK (length(id) BETWEEN 1 AND 64),
    kind TEXT NOT NULL,
    day INTEGER NOT NULL,
    recorded INTEGER,
    utc_offset INTEGER CHECK ((utc_offset IS NULL) = (recorded IS NULL)),
    author TEXT NOT NULL CHECK (author IN ('patient', 'helper', 'clinic')),
    replaces TEXT,
    body TEXT NOT NULL,
    digest BLOB NOT NULL CHECK (length(digest) = 32),
    PRIMARY KEY (person, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE erased (
    person INTEGER NOT NULL REFERENCES person,
    id_digest BLOB NOT NULL CHECK (length(id_digest) = 32),
    digest BLOB NOT NULL CHECK (length(digest) = 32),
    PRIMARY KEY (person, id_digest)
) STRICT, WITHOUT ROWID;

-- At the desk: the person's line in the caseload, a cache.
CREATE TABLE card (
    person INTEGER PRIMARY KEY REFERENCES person,
    body TEXT NOT NULL,
    digest BLOB NOT NULL CHECK (length(digest) = 32)
) STRICT;

-- nobody never has a row, so a row of erasing cannot be committed: it opens the guards
-- below inside one transaction and has to be gone at its end.
CREATE TABLE nobody (person INTEGER PRIMARY KEY CHECK (0)) STRICT;
CREATE TABLE erasing (person INTEGER PRIMARY KEY REFERENCES nobody DEFERRABLE INITIALLY DEFERRED) STRICT;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;

CREATE TRIGGER entry_is_only_erased BEFORE DELETE ON entry
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE person = OLD.person)
BEGIN SELECT RAISE(ABORT, 'an entry is deleted by erase only'); END;

CREATE TRIGGER erased_is_never_changed BEFORE UPDATE ON erased
BEGIN SELECT RAISE(ABORT, 'what was erased is never changed'); END;

CREATE TRIGGER erased_is_only_erased BEFORE DELETE ON erased
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE person = OLD.person)
BEGIN SELECT RAISE(ABORT, 'what was erased is kept'); END;

CREATE TRIGGER person_is_never_renamed BEFORE UPDATE OF person, ref, digest ON person
BEGIN SELECT RAISE(ABORT, 'a person is never renamed'); END;

CREATE TRIGGER person_never_shrinks BEFORE UPDATE OF entries ON person
WHEN NEW.entries < OLD.entries AND NOT EXISTS (SELECT 1 FROM erasing WHERE person = OLD.person)
BEGIN SELECT RAISE(ABORT, 'a diary only grows'); END;

CREATE TRIGGER person_is_only_erased BEFORE DELETE ON person
WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE person = OLD.person)
BEGIN SELECT RAISE(ABORT, 'a person is deleted by erase only'); END;
