#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""The comparison names whatever a program prints wrong, field by field: test_compare.py"""

import contextlib
import copy
import json
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True

from compare import compare, differences, is_number  # noqa: E402
from measure import measure  # noqa: E402
from tables import read_day  # noqa: E402

PAPER = Path(__file__).resolve().parents[3] / 'demo-data' / 'paper'
TO, FROM = read_day('2026-04-27'), read_day('2026-04-13')


def places(value, path=''):
    """(path, what holds it, key) of every member and element."""
    for key in value if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ():
        inner = f'{path}.{key}' if isinstance(value, dict) else f'{path}[{key}]'
        yield inner, value, key
        yield from places(value[key], inner)


class BrokenFields(unittest.TestCase):
    """A test on what is printed of the diary typed from paper."""

    def setUp(self):
        self.ours = measure(PAPER, TO, FROM)
        self.theirs = copy.deepcopy(self.ours)

    def found(self):
        return [path for path, _, _ in differences('', self.ours, self.theirs)]

    @contextlib.contextmanager
    def broken(self, holder, key, value):
        whole, holder[key] = holder[key], value
        yield
        holder[key] = whole

    def each(self, kind):
        for path, holder, key in list(places(self.theirs)):
            if type(holder[key]) in kind:
                yield path, holder, key, holder[key]

    def test_the_same_object_has_no_difference(self):
        self.assertEqual(self.found(), [])

    def test_a_member_that_is_not_printed_is_a_difference(self):
        for path, holder, key in list(places(self.theirs)):
            if isinstance(holder, dict):
                value = holder.pop(key)
                self.assertEqual(self.found(), [path])
                holder[key] = value

    def test_a_member_that_only_the_program_prints_is_a_difference(self):
        for path, _, _, value in self.each({dict}):
            value['more'] = None
            self.assertEqual(self.found(), [f'{path}.more'])
            del value['more']

    def test_another_type_is_a_difference(self):
        for path, holder, key, value in self.each({int, float, bool, str, type(None)}):
            for other in [None, '', True, str(value), [value], {}] + ([] if is_number(value) else [0]):
                if type(other) is not type(value):
                    with self.broken(holder, key, other):
                        self.assertEqual(self.found(), [path], other)

    def test_a_number_may_be_off_by_1e_9_and_no_more(self):
        for path, holder, key, value in self.each({int, float}):
            with self.broken(holder, key, value + 0.5e-9):
                self.assertEqual(self.found(), [])
            with self.broken(holder, key, value - 1.5e-9):
                self.assertEqual(self.found(), [path])

    def test_a_list_that_is_longer_or_shorter_is_a_difference(self):
        for path, holder, key, value in self.each({list}):
            with self.broken(holder, key, value + [None]):
                self.assertEqual(self.found(), [f'{path} (length)'])
            if value:
                with self.broken(holder, key, value[:-1]):
                    self.assertEqual(self.found(), [f'{path} (length)'])


class BrokenPrograms(unittest.TestCase):
    """A test on a program that prints what it is told to."""

    def found(self, text, status=0):
        with tempfile.TemporaryDirectory(prefix='second-') as folder:
            program = Path(folder) / 'program'
            (Path(folder) / 'printed').write_text(text, encoding='utf-8')
            program.write_text(f'#!/bin/sh\ncat "{folder}/printed"\nexit {status}\n', encoding='utf-8')
            program.chmod(0o755)
            return [path for path, _, _ in compare(program, PAPER, TO, FROM)[1]]

    def test_the_whole_object_has_no_difference(self):
        self.assertEqual(self.found(json.dumps(measure(PAPER, TO, FROM))), [])

    def test_a_number_that_is_none_is_a_difference(self):
        for number in (float('nan'), float('inf')):
            printed = measure(PAPER, TO, FROM)
            printed['complaints'][0]['check']['current'] = number
            self.assertEqual(self.found(json.dumps(printed)), ['.complaints[0].check.current'])

    def test_a_diary_that_is_refused_is_a_difference(self):
        self.assertEqual(self.found('no', 1), ['(refused)'])


if __name__ == '__main__':
    unittest.main()
