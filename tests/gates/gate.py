#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Holds the house rules that no compiler holds.

    tests/gates/gate.py [--root DIR] [--list]

Prints `path:line: what is wrong; do this instead [rule]` for each breach and ends with 1, or
with 0 where there is none. 2: the checkout could not be read.
"""

import argparse
import dataclasses
import subprocess
import sys
from pathlib import Path

sys.dont_write_bytecode = True  # a test run leaves the checkout as it was
sys.path.insert(0, str(Path(__file__).resolve().parent))

import rooms  # noqa: E402
import rules  # noqa: E402
import text_rules  # noqa: E402
import tree_rules  # noqa: E402
from source import Tree  # noqa: E402

# (rule, what finds its breaches in a tree)
RULES = (
    ("room", rooms.arrows),
    ("room", rooms.no_room),
    ("library", rooms.libraries),
    ("qt-in-core", rooms.qt_in_core),
    *((row.rule, row.findings) for row in rules.ROWS),
    ("words", text_rules.sentences),
    ("sql", text_rules.sql),
    ("colour", text_rules.colours),
    ("size", text_rules.sizes),
    ("plain-text", text_rules.plain_text),
    ("spdx", tree_rules.spdx),
    ("top-level", tree_rules.top_level),
    ("file-name", tree_rules.file_names),
    ("name", tree_rules.vague_names),
    ("length", tree_rules.lengths),
    ("schema", tree_rules.schema),
    ("named-path", tree_rules.named_paths),
    ("outside-path", tree_rules.outside_paths),
)


def findings(root):
    tree = Tree(root)
    said = {}  # one rule speaks once about one line
    for rule, find in RULES:
        for finding in find(tree):
            said.setdefault((finding.path, finding.line, rule), []).append(dataclasses.replace(finding, rule=rule))
    return [said[key] for key in sorted(said)]


def main(arguments):
    parser = argparse.ArgumentParser(description="Holds the house rules that no compiler holds.")
    parser.add_argument("--root", type=Path, default=Path(__file__).resolve().parents[2], help="the checkout")
    parser.add_argument("--list", action="store_true", help="print the names of the rules")
    options = parser.parse_args(arguments)
    if options.list:
        print("\n".join(sorted({rule for rule, _ in RULES})))
        return 0
    if not options.root.is_dir():
        print(f"gate: {options.root} is not a folder", file=sys.stderr)
        return 2
    if not (options.root / ".git").exists():
        print("gate: no git checkout, so landed schema steps were not compared", file=sys.stderr)
    try:
        found = findings(options.root)
    except (OSError, subprocess.CalledProcessError) as error:
        reason = error.stderr.decode(errors="replace") if isinstance(error, subprocess.CalledProcessError) else error
        print(f"gate: the checkout could not be read: {reason}", file=sys.stderr)
        return 2
    for same_line in found:
        print(same_line[0])
    print(f"gate: {len(found)} found" if found else "gate: clean")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
