#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Prints every measure of a folder of tables: measure.py FOLDER --as-of DAY [--from DAY]"""

import argparse
import json
import sys

from measures.adherence import adherence, all_items
from measures.check import check, stiffness
from measures.due import Due
from measures.entries import Diary
from measures.load import weeks
from measures.outcomes import outcomes
from measures.progression import Progression
from measures.response import Response
from measures.visits import visits
from tables import day_text, read_day, read_folder


def measure_complaint(diary, to, asked, watch=None):
    first = max(diary.first_day, asked) if asked else diary.first_day
    due, response = Due(diary), Response(diary, to)
    progression = Progression(due, response, to)
    decisions = progression.decisions()
    if watch:
        watch(progression, decisions)
    items = [{'item': item.name, 'exercise': item.exercise, 'side': item.side, 'stage': due.stage_number(item, to),
              'stageBegan': day_text(due.began(item, to)), 'adherence': adherence(due, item, first, to),
              'weeks': weeks(due, item, first, to), 'progression': decision}
             for item, decision in zip(diary.items, decisions)]
    return {'complaint': diary.complaint.name, 'region': diary.complaint.region, 'side': diary.complaint.side,
            'from': day_text(first), 'items': items, 'all': all_items([item['adherence'] for item in items]),
            'check': check(diary, first, to), 'stiffness': stiffness(diary, first, to),
            'response': response.listed(first), 'rules': response.rules(), 'visits': visits(diary, to),
            'outcomes': outcomes(diary, to)}


def measure(folder, to, asked=None, watch=None):
    """The whole object; `to` and `asked` are days as whole numbers, `watch` is told each complaint's progression and decisions."""
    read = read_folder(folder)
    diaries = [Diary(read, complaint) for complaint in read.complaints]
    return {'asOf': day_text(to), 'to': day_text(to),
            'complaints': [measure_complaint(diary, to, asked, watch) for diary in diaries
                           if diary.first_day is not None and diary.first_day <= to]}


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument('folder')
    parser.add_argument('--as-of', required=True, type=read_day)
    parser.add_argument('--from', dest='asked', type=read_day)
    asked = parser.parse_args()
    json.dump(measure(asked.folder, asked.as_of, asked.asked), sys.stdout, indent=2, ensure_ascii=False)
    print()


if __name__ == '__main__':
    main()
