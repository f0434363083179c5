#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
#
# The digests that tst_digests.cpp expects, made without any of the project's code: SHA-256
# over columns, each as UTF-8 after its length as 4 bytes big-endian; absent is empty.
# With the file of a store: count and sum of each person in it, worked out from its rows.

import sqlite3
import sys
from hashlib import sha256


def digest(*columns):
    told = [str(column).encode() for column in columns]
    return sha256(b"".join(len(column).to_bytes(4, "big") + column for column in told))


def total(digests):
    return "%064x" % (sum(int(one.hexdigest(), 16) for one in digests) % 2**256)


if len(sys.argv) > 1:
    store = sqlite3.connect(f"file:{sys.argv[1]}?mode=ro&immutable=1", uri=True)
    for person, ref in store.execute("SELECT person, ref FROM person ORDER BY person").fetchall():
        rows = store.execute(
            "SELECT id, kind, day, recorded, utc_offset, author, replaces, body FROM entry WHERE person = ?", [person]
        ).fetchall()
        digests = [digest("entry 1", *("" if column is None else column for column in row)) for row in rows]
        print(ref, len(rows), total(digests))
    sys.exit()

ref = "1f3c9a52-6d0e-4b7a-9f21-0c5d8e7b6a40"
entries = {
    "whole": digest("entry 1", "whole", "check", 20782, 1795629831000, -210, "patient", "bare", '{"complaint":"heel","pain":4}'),
    "bare": digest("entry 1", "bare", "note", -1, "", "", "clinic", "", '{"text":"Größe 42, dağ 🦶"}'),
    "long": digest("entry 1", "long", "unusual", 0, 0, 0, "helper", "", '{"text":"' + "x" * 70000 + '"}'),
}
for name, one in entries.items():
    print(name, one.hexdigest())
print("sum", total(entries.values()))
print("person", digest("person 1", 1, ref).hexdigest())
print("erased", digest("erased 1", 1, sha256(b"gone").hexdigest()).hexdigest())
