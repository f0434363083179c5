# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 9: outcomes as series."""

from tables import day_text

from .entries import age

OTHER_SIDE = {'left': 'right', 'right': 'left'}


def outcomes(diary, to):
    series = {}
    for entry in sorted((entry for entry in diary.outcomes if entry.day <= to), key=lambda e: (e.day, age(e))):
        key = (entry.body['kind'], entry.body.get('name'), entry.body.get('side'))
        series.setdefault(key, []).append(entry)

    def ratio(kind, name, side, last):
        if kind != 'test' or side != diary.complaint.side or side not in OTHER_SIDE:
            return None
        other = [entry.number('value') for entry in series.get((kind, name, OTHER_SIDE[side]), [])
                 if entry.day == last.day]
        return last.number('value') / other[-1] if other and other[-1] else None

    return [{'kind': kind, 'name': name, 'side': side, 'n': len(entries),
             'firstDay': day_text(entries[0].day), 'first': entries[0].number('value'),
             'lastDay': day_text(entries[-1].day), 'last': entries[-1].number('value'),
             'change': entries[-1].number('value') - entries[0].number('value') if len(entries) > 1 else None,
             'ratio': ratio(kind, name, side, entries[-1])}
            for (kind, name, side), entries in series.items()]
