# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented complaints that ask whose turn it is: items that would all step up, and changes of stage about a spacing ago."""

from .corrections import correct
from .folder import day_text

STAGES = 4
LOOSE = {'authority': 'patient', 'asks': 'none', 'step_sessions': 1, 'step_window_days': 21, 'step_adherence': 0, 'check_limit': 10,
         'rise_allowed': 9, 'weekly_rise_allowed': 9, 'level_rise_allowed': 9, 'contact_level': 10, 'contact_rise': 9}


def item(folder, complaint, name, start, end=None, loads=1):
    for stage in range(1, STAGES + 1):
        folder.rows['plan'].append({
            'item': name, 'exercise': f'exercise {name}', 'side': 'both', 'stage': stage, 'sets': 1, 'reps': 10,
            'rrule': 'FREQ=DAILY', 'slots': 'evening', 'start': day_text(start), 'end': '' if end is None else day_text(end),
            'min_days': 0, 'min_sessions': 0, 'rests_after_visit': 0, 'complaint': complaint, 'loads': loads})
    return name


def change(folder, day, name, stage):
    return folder.add('stages', day, id=folder.new_id(), item=name, stage=stage)


def eager_items(rng, folder, complaint, first, recent):
    """One to three that would step up, their stages begun before day `recent`: on one day, on several, or a pause apart."""
    items = [item(folder, complaint, f'{complaint}-{place}', first) for place in range(rng.choice([1, 1, 2, 2, 3]))]
    begun = rng.choice(['on one day', 'on several', 'a pause apart'])
    early, late = recent - 4 - rng.randrange(2), recent - 1 - rng.randrange(2)
    for name in items:
        if begun == 'a pause apart':
            change(folder, early if name == items[-1] else late, name, 2)
        elif begun == 'on one day':
            change(folder, early, name, 2)
        elif rng.random() < 0.8:
            change(folder, rng.choice([early, late]), name, 2)
    if begun == 'a pause apart':
        folder.rows['pauses'].append({'from': day_text(early), 'to': day_text(late - 1), 'id': folder.new_id()})
    return items


def item_beside(rng, folder, complaint, first, last):
    """One without a set, which may have stepped up of late, or before its start, though it is over or does not load."""
    start = rng.choice([first, first, last - 2, last + 1])
    end = last - 1 if start < last and rng.random() < 0.5 else None
    return item(folder, complaint, f'{complaint}-beside', start, end, rng.randrange(2))


def late_changes(rng, folder, name, last, spacing, to):
    """A change of stage at the edge of the spacing, with what makes it a step up or none."""
    day = last - spacing + rng.choice([0, 0, 1, 1, 1, 2])
    way = rng.choice(['up', 'up', 'up', 'by one', 'up and back', 'up and back', 'the same', 'down'])
    if way in ('by one', 'the same', 'down'):
        change(folder, day - 12, name, {'by one': to - 1, 'the same': to, 'down': STAGES}[way])
    latest = change(folder, day, name, 1 if way == 'down' else to)
    if way == 'up and back' and day < last:
        change(folder, rng.randrange(day + 1, last + 1), name, 1)
    if rng.random() < 0.1:
        correct(rng, folder, 'stages', latest, rng.choice(['withdraw', 'replace', 'withdraw without a name']))


def turns(rng, folder, complaint, last):
    """A complaint in which nothing but the turn is in the way of a step up."""
    spacing = rng.choice([0, 3, 3, 7, 7, 7, 7, 7])
    first = last - 22
    folder.rows['settings'] += [{'complaint': complaint, 'key': key, 'value': value}
                                for key, value in (LOOSE | {'step_spacing_days': spacing}).items()]
    folder.rows['complaints'].append({'complaint': complaint, 'region': f'region {complaint}', 'side': 'left',
                                      'question': 'Worst pain last night', 'first_assessment_pain': 4, 'started': day_text(first)})
    eager = eager_items(rng, folder, complaint, first, last - max(spacing, 3))
    beside = item_beside(rng, folder, complaint, first, last)
    alone = len(eager) == 1
    if rng.random() < (0.4 if alone else 0.9):
        late_changes(rng, folder, beside, last, spacing, rng.choice([2, 2, STAGES]))
    if rng.random() < (0.9 if alone else 0.15):
        late_changes(rng, folder, rng.choice(eager), last, spacing, STAGES - 1)
    for day in range(last - 13, last + 1):
        folder.add('mornings', day, complaint=complaint, pain=rng.choice([3, 3, 4]))
        for name in eager:
            folder.add('sets', day, slot='evening', item=name, set=1, reps=10)
    folder.features.add('complaint that asks whose turn it is')
