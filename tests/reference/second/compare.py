#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Holds `morrow-batch measure` against this implementation on invented diaries.

compare.py MORROW_BATCH [--diaries N] [--first-seed N] [--keep DIR] [--folder FOLDER --as-of DAY [--from DAY]]

Every field has to be there on both sides and to agree, numbers within 1e-9, and there is none that only one side has.
A folder that differs stays in DIR/SEED. Status 1: something differs, or the run did not cover what it should.
"""

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from invented.coverage import Coverage
from invented.diary import write_diary
from measure import measure
from tables import day_text, read_day

TOLERANCE = 1e-9
NO_FIELD = '(no such field)'
ENOUGH = 300                # diaries, so that each state and feature is met often
SHOWN = 6                   # differences printed of one folder


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def differences(path, ours, theirs):
    """Yields (path, ours, theirs) wherever the program's object differs."""
    if isinstance(ours, dict) and isinstance(theirs, dict):
        for key in sorted(ours.keys() | theirs.keys()):
            if key in ours and key in theirs:
                yield from differences(f'{path}.{key}', ours[key], theirs[key])
            else:
                yield f'{path}.{key}', ours.get(key, NO_FIELD), theirs.get(key, NO_FIELD)
    elif isinstance(ours, list) and isinstance(theirs, list):
        if len(ours) != len(theirs):
            yield f'{path} (length)', len(ours), len(theirs)
        for place, (one, other) in enumerate(zip(ours, theirs)):
            yield from differences(f'{path}[{place}]', one, other)
    elif is_number(ours) and is_number(theirs):
        if not abs(ours - theirs) <= TOLERANCE:  # not: NaN agrees with nothing
            yield path, ours, theirs
    elif type(ours) is not type(theirs) or ours != theirs:
        yield path, ours, theirs


def run_program(program, folder, to, asked):
    command = [program, 'measure', str(folder), '--as-of', day_text(to)]
    return subprocess.run(command + (['--from', day_text(asked)] if asked else []), capture_output=True, text=True,
                          check=False)


def compare(program, folder, to, asked, watch=None):
    """The object of this implementation and the list of differences."""
    ours = measure(folder, to, asked, watch)
    run = run_program(program, folder, to, asked)
    if run.returncode != 0:
        return ours, [('(refused)', 'measured', (run.stdout + run.stderr).strip())]
    return ours, list(differences('', ours, json.loads(run.stdout)))


def show(folder, to, asked, found):
    print(f'{folder} --as-of {day_text(to)}' + (f' --from {day_text(asked)}' if asked else ''))
    for path, ours, theirs in found[:SHOWN]:
        print(f'    {path}: here {ours!r}, program {theirs!r}')
    if len(found) > SHOWN:
        print(f'    ... and {len(found) - SHOWN} more')


def one_folder(asked):
    _, found = compare(asked.program, asked.folder, asked.as_of, asked.from_day)
    show(asked.folder, asked.as_of, asked.from_day, found)
    print(f'{len(found)} differences')
    return 1 if found else 0


def many(asked):
    coverage, failed = Coverage(), 0
    asked.keep.mkdir(parents=True, exist_ok=True)
    for seed in range(asked.first_seed, asked.first_seed + asked.diaries):
        folder = asked.keep / str(seed)
        shutil.rmtree(folder, ignore_errors=True)
        diary = write_diary(seed, folder)
        ours, found = compare(asked.program, folder, diary.to, diary.asked, coverage.watch)
        coverage.add(diary.features, ours)
        if found:
            failed += 1
            show(folder, diary.to, diary.asked, found)
        else:
            shutil.rmtree(folder)
    print(coverage.report())
    thin = coverage.thin() if asked.diaries >= ENOUGH else []
    for name, count in thin:
        print(f'covered only {count} times: {name}')
    print(f'{asked.diaries - failed} passed, {failed} failed')
    return 1 if failed or thin else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument('program')
    parser.add_argument('--diaries', type=int, default=ENOUGH)
    parser.add_argument('--first-seed', type=int, default=1)
    parser.add_argument('--keep', type=Path, default=Path(tempfile.gettempdir()) / 'second-kept')
    parser.add_argument('--folder')
    parser.add_argument('--as-of', type=read_day)
    parser.add_argument('--from', dest='from_day', type=read_day)
    asked = parser.parse_args()
    if asked.folder and asked.as_of is None:
        parser.error('--folder needs --as-of')
    return one_folder(asked) if asked.folder else many(asked)


if __name__ == '__main__':
    sys.exit(main())
