# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented days: sets, checks, sessions, visits, pauses, signs, outcomes and stage changes."""

from .folder import day_text, shortest
from .plan import SLOTS

SIGNS = ['numbness', 'night pain that wakes', 'a swollen calf']


def of_complaint(complaint):
    return {'complaint': complaint.name} if complaint.named else {}


def stage_changes(rng, folder, item, ready, first, last):
    """The stage in force by day, and the rows that say so."""
    changes = {}
    if len(item.stages) > 1 or rng.random() < 0.2:
        for _ in range(rng.choice([0, 1, 1, 2, 4])):
            day = rng.randrange(first - 3, last + 4)
            stage = rng.randrange(1, len(item.stages) + 1)
            if ready and rng.random() < 0.85:
                stage = rng.randrange(1, max(2, len(item.stages)))
                if day > last - 8:
                    continue
            if day in changes:
                continue
            changes[day] = stage
            folder.add('stages', day, item=item.name, stage=stage, reason=rng.choice(['', 'as agreed']))
            folder.features.add('stage change before the start' if day < item.start else 'stage change')
    if ready and item.name[-1] != 'a' and len(item.stages) > 1 and rng.random() < 0.4:
        day = last - rng.randrange(0, 11)
        if day not in changes:
            changes[day] = len(item.stages)
            folder.add('stages', day, item=item.name, stage=changes[day])
            folder.features.add('stage change of late')
    return lambda day: changes[max(d for d in changes if d <= day)] if any(d <= day for d in changes) else 1


def exercise_day(rng, folder, complaint, item, row, day, zeal, light_weeks):
    """Sets of one item on one day; the slots used."""
    slots = (row.get('slots') or 'day').split()
    if rng.random() < 0.04:
        slots = slots + [rng.choice([slot for slot in SLOTS if slot not in slots])]
        folder.features.add('set in another slot')
    used = set()
    for slot in slots:
        if rng.random() > zeal:
            continue
        used.add(slot)
        count = row['sets'] + (1 if rng.random() < 0.05 else 0)
        for number in range(1, count + 1):
            if rng.random() > zeal:
                continue
            reps = row['reps'] or 1
            if rng.random() > zeal:
                reps = rng.choice([0, max(1, reps - 2), reps + 1])
                folder.features.add('set taken back' if reps == 0 else 'other repetitions')
            cells = {'slot': slot, 'item': item.name, 'set': number, 'reps': reps}
            if rng.random() < (0.01 if complaint.ready else 0.15):
                cells['load_kg'] = shortest(rng.choice([0, 1.5, 5, 20, 25]))
                folder.features.add('load recorded')
            if light_weeks and day // 7 % 3 == 0:
                cells['load_kg'] = '0'
                folder.features.add('weeks without load')
            if rng.random() < (0.005 if complaint.ready else 0.1):
                cells['hold_s'] = rng.choice([0, 5, 30, 60])
                folder.features.add('hold recorded')
            if rng.random() < 0.3:
                cells['spare'] = rng.choice([0, 1, 3])
            folder.add('sets', day, **cells)
    return used


def pain_level(rng, complaint, day, last, base):
    temper = complaint.temper
    if temper == 'flaring' and day > last - 4:
        return min(10, base + rng.choice([2, 3, 4]))
    if temper == 'alarming' and day > last - 3:
        return rng.choice([7, 8, 9, 10])
    if temper in ('messy', 'sparse'):
        return rng.randrange(0, 10)
    return max(0, min(10, base + rng.choice([-1] + [0] * 8 + [1])))


def checks(rng, folder, complaint, first, last, falling):
    diligence = {'steady': 0.97, 'flaring': 0.95, 'alarming': 0.8, 'messy': 0.7, 'sparse': 0.2}[complaint.temper]
    start_pain = rng.choice({'flaring': [1, 2, 3], 'alarming': [3, 7]}.get(complaint.temper, [2, 3, 4, 5]))
    constant = rng.random() < 0.2
    for day in range(first - 9, last + 4):
        if rng.random() > diligence:
            continue
        base = max(0, start_pain - (day - first) // 14) if falling else start_pain
        pain = start_pain if constant else pain_level(rng, complaint, day, last, base)
        if day == last + 1 and rng.random() < 0.08:
            pain = rng.choice([8, 9])
            folder.features.add('high check today')
        stiffness = '' if rng.random() < 0.3 else max(0, rng.randrange(5, 40) + (20 if rng.random() < 0.3 and day > last - 7 else 0))
        cells = {'pain': pain, 'stiffness_min': stiffness}
        if rng.random() < 0.06:
            cells = {'pain': '', 'declined': 1, 'stiffness_min': rng.choice(['', 10])}
            folder.features.add("can't say")
        elif rng.random() < 0.04 and stiffness != '':
            cells['pain'] = ''
            folder.features.add('stiffness without pain')
        folder.add('mornings', day, **cells, **of_complaint(complaint))


def session(rng, folder, complaint, day, slot, last):
    high = day > last - 3 and rng.random() < (0.3 if complaint.temper == 'alarming' else 0.008)
    messy = complaint.temper in ('messy', 'sparse')
    during, after = (rng.randrange(0, 9 if messy else 4) for _ in range(2))
    cells = {'pain_during': 9 if high else during, 'pain_after': after}
    if rng.random() < (0.3 if messy else 0.01):
        cells[rng.choice(list(cells))] = ''
        folder.features.add('session with a value missing')
    folder.add('sessions', day, slot=slot, **cells, **of_complaint(complaint))


def visits(rng, folder, complaint, first, last):
    for _ in range(rng.choice([0, 0, 1, 2, 4])):
        day = rng.randrange(first - 5, last + 3)
        for again in range(2 if rng.random() < 0.2 else 1):
            given = {}
            if rng.random() < 0.85:
                given = {column: value for column, value in (
                    ('warmup_impulses', rng.choice([0, 250, 300])), ('warmup_hz', rng.choice([8, 12.5])),
                    ('impulses', rng.choice([1500, 2000, 2500])), ('hz', rng.choice([8, 12, 21])),
                    ('area_cm2', rng.choice([18.5, 27, 55]))) if rng.random() < 0.85}
            folder.features.add('visit with treatment' if given else 'visit that is a day only')
            if again:
                folder.features.add('two visits on a day')
            if first <= day <= last and any(row['rests_after_visit'] for item in complaint.items for row in item.stages):
                folder.features.add('rest after a visit')
            folder.add('visits', day, **given, **of_complaint(complaint))


def pauses(rng, folder, first, last):
    for _ in range(rng.choice([0, 0, 1, 1, 2])):
        begins = rng.randrange(first - 3, last + 2)
        ends = begins + rng.randrange(0, 12)
        row = folder.add('pauses', begins, to=day_text(ends), reason=rng.choice(['', 'away']))
        if 'recorded_at' in row:
            recorded = begins + rng.choice([-4, 0, 2, 5, 14])
            row['recorded_at'] = folder.instant(recorded)
            folder.features.add('pause recorded ' + ('before' if recorded <= begins else 'during' if recorded <= ends else 'after'))
        else:
            folder.features.add('pause from paper')


def signs(rng, folder, last, alarming):
    count = rng.choice([1, 1, 2]) if alarming else rng.choice([0] * 7 + [1])
    for sign in rng.sample(SIGNS, count):
        day = last + rng.choice([-40, -10, -1, 0, 1, 1, 2])
        cleared = rng.choice([None, None, None, 0, 1, 2, 4])
        cells = {} if cleared is None else {'cleared_on': day_text(max(day, last + cleared))}
        folder.features.add('sign' if cleared is None else 'sign with a clearing')
        folder.add('flags', day, sign=sign, note='', **cells)


def outcomes(rng, folder, complaint, first, last):
    kinds = [('activity', 'stairs', ''), ('activity', 'running', ''), ('overall', '', ''), ('change', '', ''),
             ('acceptable', '', ''), ('test', 'heel raises', 'left'), ('test', 'heel raises', 'right'),
             ('test', 'reach', 'left'), ('test', 'reach', 'right'), ('test', 'balance', '')]
    days = [rng.randrange(first - 5, last + 3) for _ in range(rng.choice([0, 1, 2, 4]))]
    for day in days:
        for kind, name, side in rng.sample(kinds, rng.randrange(1, len(kinds))):
            value = {'activity': rng.randrange(11), 'overall': rng.randrange(101), 'change': rng.randrange(-5, 6),
                     'acceptable': rng.randrange(2), 'test': shortest(rng.choice([0, 5, 14.5, 20]))}[kind]
            folder.add('outcomes', day, kind=kind, name=name, side=side, value=value,
                       unit='s' if kind == 'test' else '', **of_complaint(complaint))
            folder.features.add(f'outcome {kind}')


def put_aside(rng, folder, complaint, first, last):
    if rng.random() < (0.04 if complaint.ready else 0.25):
        day = rng.randrange(first, last + 3)
        folder.add('put_aside', day, complaint=complaint.name)
        folder.features.add('put aside')


def live(rng, folder, complaint, first, last):
    """Everything that one complaint's rows tell of the days first .. last."""
    zeal = {'steady': 0.997, 'flaring': 0.99, 'alarming': 0.85, 'messy': 0.75, 'sparse': 0.3}[complaint.temper]
    slots_of = {}
    for item in complaint.items:
        stage_on = stage_changes(rng, folder, item, complaint.ready, first, last)
        light_weeks = not complaint.ready and rng.random() < 0.2
        for day in range(first - 2, last + 3):
            outside = day < item.start or (item.end is not None and day > item.end)
            row = item.stages[stage_on(day) - 1]
            often = row['per_week'] / 7 if 'per_week' in row else 1
            if rng.random() < (0.05 if outside else often):
                slots_of.setdefault(day, set()).update(exercise_day(rng, folder, complaint, item, row, day, zeal, light_weeks))
                if outside:
                    folder.features.add('set outside start .. end')
    for day, used in slots_of.items():
        for slot in sorted(used):
            if rng.random() < zeal:
                session(rng, folder, complaint, day, slot, last)
        for table, share in (('skips', 0.05), ('easier', 0.05)):
            if rng.random() < share:
                reason = {'reason': 'no time'} if table == 'skips' else {}
                folder.add(table, day, slot=rng.choice(SLOTS + ['day', 'day']), **reason, **of_complaint(complaint))
                folder.features.add(table)
    checks(rng, folder, complaint, first, last, rng.random() < 0.5)
    visits(rng, folder, complaint, first, last)
    outcomes(rng, folder, complaint, first, last)
    put_aside(rng, folder, complaint, first, last)
