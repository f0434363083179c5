# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented complaints, items, stages and settings."""

from dataclasses import dataclass

from .folder import day_text, shortest

SLOTS = ['morning', 'noon', 'evening', 'night']
TEMPERS = ['steady', 'steady', 'steady', 'flaring', 'flaring', 'flaring', 'alarming', 'alarming', 'messy', 'messy', 'sparse']
RHYTHMS = {
    'daily': ('FREQ=DAILY', 1), 'twice daily': ('FREQ=DAILY', 2), 'three times daily': ('FREQ=DAILY', 3),
    'every other day': ('FREQ=DAILY;INTERVAL=2', 1), 'every third day': ('FREQ=DAILY;INTERVAL=3', 2),
    'daily on weekdays': ('FREQ=DAILY;BYDAY=MO,TU,WE,TH,FR', 1), 'every other day on some': ('FREQ=DAILY;INTERVAL=2;BYDAY=MO,WE,SA', 1),
    'weekly on days': ('FREQ=WEEKLY;BYDAY=MO,TH,SU', 1), 'weekly on the start day': ('FREQ=WEEKLY', 2),
    'every other week': ('FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,SA', 1), 'every third week': ('FREQ=WEEKLY;INTERVAL=3', 1),
}


@dataclass
class InventedItem:
    name: str
    start: int
    end: int | None
    loads: bool
    stages: list         # rows of plan.csv
    held: list           # per stage


@dataclass
class InventedComplaint:
    name: str
    named: bool          # whether rows must name it
    side: str
    temper: str
    ready: bool          # so diligent, and the plan asks so little, that a next stage or one back may be offered
    items: list


OFTEN = ['daily', 'twice daily', 'every other day', 'daily on weekdays']


def rhythm(rng, features, ready):
    if rng.random() < 0.28:
        k = rng.randrange(3, 8) if ready else rng.choice([1, 1, 2, 2, 3, 4, 5, 6, 7])
        features.add(f'per week {k}')
        return {'per_week': k}
    name = rng.choice(OFTEN if ready else list(RHYTHMS))
    features.add(f'rhythm {name}')
    rule, slots = RHYTHMS[name]
    return {'rrule': rule, 'slots': ' '.join(sorted(rng.sample(SLOTS, slots), key=SLOTS.index))}


def dose(rng, held, unloaded):
    cells = {'sets': rng.randrange(1, 5), 'reps': rng.choice([1, 6, 8, 10, 12, 15])}
    if held:
        cells['hold_s'] = rng.choice([5, 20, 45])
        cells['reps'] = rng.choice(['', 1, 5])
    if not unloaded:
        cells['load_kg'] = shortest(rng.choice([2, 2.5, 7.125, 20, 0]))
    if rng.random() < 0.3:
        cells['body_share'] = rng.choice(['0', '0.5', '0.85', '1'])
    if rng.random() < 0.7:
        cells |= {column: rng.choice(['', '0', '2', '3']) for column in ('up_s', 'pause_s', 'down_s')}
    return cells


def item(rng, folder, name, complaint, first, length, ready, rest):
    start = first + (rng.choice([0, 0, 0, 1, 3, 9, length + 2]) if not ready else 0)
    last = first + length - 1
    end = None
    if rng.random() < (0.05 if ready else 0.35):
        end = start + rng.randrange(0, length + 10)
        folder.features.add('ends before the as-of day' if end < last else 'ends later')
    if start > last:
        folder.features.add('item that has not started')
    loads = rng.random() < (0.97 if ready else 0.8)
    same = rhythm(rng, folder.features, ready) if rng.random() < 0.6 else None
    held, unloaded = rng.random() < 0.3, rng.random() < 0.3
    rows, holds = [], []
    for stage in range(1, rng.choice([3, 4] if ready and rng.random() < 0.7 else [1, 1, 2, 3]) + 1):
        if rng.random() < 0.15:
            held, unloaded = not held, rng.random() < 0.3
            folder.features.add('stages of different units')
        row = {'item': name, 'exercise': f'exercise {name}', 'side': rng.choice(['left', 'right', 'both']), 'stage': stage,
               'start': day_text(start), 'end': '' if end is None else day_text(end),
               'min_days': rng.choice([0, 1, 3, 7] if ready else [0, 7, 14, 30]),
               'min_sessions': rng.choice([0, 1, 2] if ready else [0, 3, 10]),
               'rests_after_visit': int(rest), 'complaint': complaint} | dose(rng, held, unloaded)
        row |= same or rhythm(rng, folder.features, ready)
        if not loads:
            row['loads'] = 0
        if rows:
            row['side'] = rows[0]['side']
        rows.append(row)
        holds.append(held)
    if not same and len({'per_week' in row for row in rows}) == 2:
        folder.features.add('rule and per week in one item')
    folder.rows['plan'] += rows
    return InventedItem(name, start, end, loads, rows, holds)


def settings(rng, folder, complaint, ready, rest):
    """Rows for one complaint (None: for all)."""
    chosen = {}
    if rest:
        chosen['rest_days_after_visit'] = rng.choice([1, 2, 4])
    if rng.random() < (0.25 if ready else 0.5):
        chosen |= {
            'soreness_days': rng.choice([0, 1, 2, 5]), 'during_limit': rng.choice([2, 3, 5]), 'after_limit': rng.choice([2, 4]),
            'rise_allowed': rng.choice([0, 1, 1.5, 2]), 'weekly_rise_allowed': shortest(rng.choice([0, 0.333, 0.5, 1])),
            'weekly_stiffness_allowed': rng.choice([0, 5, 15]), 'level_rise_allowed': rng.choice([0, 1, 2]),
            'contact_level': rng.choice([7, 8, 9]), 'contact_rise': rng.choice([1, 3, 4]), 'step_sessions': rng.choice([1, 2, 4]),
            'step_window_days': rng.choice([7, 14, 21]), 'step_spacing_days': rng.choice([0, 3, 10]),
            'step_adherence': rng.choice(['0.5', '0.8', '0.9', '1'])}
    if rng.random() < (0.2 if ready else 0.75):
        chosen['check_limit'] = rng.choice([2, 3, 4, 5])
    if rng.random() < 0.3:
        chosen['asks'] = rng.choice(['none', 'during', 'during after', 'stiffness', 'stiffness during after spare', 'after spare'])
        folder.features.add('not everything asked')
    if rng.random() < 0.3:
        chosen['authority'] = rng.choice(['clinic', 'patient'] if ready else ['off', 'off', 'off', 'clinic', 'patient'])
        folder.features.add(f'authority {chosen["authority"]}')
    if rng.random() < 0.2:
        chosen[rng.choice(['during_limit', 'rise_allowed', 'check_limit'])] = ''
    for key, value in chosen.items():
        if rng.random() < 0.9 or key == 'rest_days_after_visit':
            row = {'key': key, 'value': value}
            if complaint is not None:
                row['complaint'] = complaint
            folder.rows['settings'].append(row)


def complaints(rng, folder, first, length, ripe):
    """`ripe`: every complaint is ready, see InventedComplaint."""
    count = rng.choice([1, 2, 2] if ripe else [1, 1, 2, 2, 3])
    folder.features.add(f'complaints {count}')
    table = count > 1 or rng.random() < 0.5
    found = []
    folder.complaints = [f'c{place + 1}' for place in range(count)] if table else ['main']
    if not table:
        folder.features.add('no table of complaints')
        if rng.random() < 0.5:
            folder.rows['settings'].append({'key': 'first_assessment_pain', 'value': rng.randrange(0, 9)})
    for place, name in enumerate(folder.complaints):
        temper = rng.choice(['steady', 'steady', 'steady', 'flaring', 'flaring'] if ripe else TEMPERS)
        ready = ripe or (temper in ('steady', 'flaring') and rng.random() < 0.3)
        folder.features.add(f'temper {temper}')
        rest = rng.random() < 0.5
        side = rng.choice(['left', 'right', 'both', ''])
        if table:
            folder.rows['complaints'].append({
                'complaint': name, 'region': f'region {place}', 'side': side, 'question': 'Worst pain last night',
                'check': rng.choice(['', '', '', 'FREQ=DAILY', 'FREQ=DAILY;INTERVAL=2', 'FREQ=WEEKLY;BYDAY=MO,WE,FR', 'FREQ=WEEKLY']),
                'first_assessment_pain': rng.choice(['', '', 5, 7] if ready else ['', '', 0, 3, 5, 7]), 'started': day_text(first)})
        named = place > 0 or (table and rng.random() < 0.5)
        if table and rng.random() < 0.1:
            folder.rows['complaints'][-1] |= {'ended': day_text(first + length // 2), 'end_reason': 'finished'}
            folder.features.add('episode closed')
        if place > 0 and rng.random() < 0.15:
            folder.features.add('complaint without a plan')
            found.append(InventedComplaint(name, named, side, temper, False, []))
            continue
        settings(rng, folder, name if table and count > 1 else None, ready, rest)
        begins = first + (rng.choice([0, 0, 0, 5, length + 3]) if place else 0)
        items = [item(rng, folder, f'{name}-{letter}', name if named else '', begins, max(1, length - (begins - first)),
                      ready, rest and rng.random() < 0.7)
                 for letter in 'abc'[:3 if ready else rng.choice([1, 2, 2, 3])]]
        found.append(InventedComplaint(name, named, side if table else '', temper, ready, items))
    return found
