# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 4: load by week."""

from tables import day_text

from .adherence import counts
from .volume import common_unit, plain, recorded_load, recorded_volume, tension, unit


def strongest(sets):
    """The greatest load of one repetition over (load, repetitions with those in reserve): Epley 1985; None without sets."""
    return max((load * (1 + repetitions / 30) for load, repetitions in sets), default=None)


def strength(due, item, sets):
    mass = due.diary.settings.exact('body_mass_kg')
    usable = []
    for one in sets:
        stage = due.stage(item, one.day)
        load = recorded_load(stage, one, mass)
        if one.number('spare') is None or stage.held or load is None or load <= 0:
            continue
        repetitions = one.number('reps') + one.number('spare')
        if 2 <= repetitions <= 10:
            usable.append((float(load), repetitions))
    return strongest(usable)


def change(this, before):
    if before is None or not (this['whole'] and before['whole']) or this['volumeUnit'] != before['volumeUnit']:
        return None
    if not this['volume'] or not before['volume']:
        return None
    return plain(this['volume'] / before['volume'] - 1)


def weeks(due, item, first, last):
    diary = due.diary
    mass = diary.settings.exact('body_mass_kg')
    found = []
    for week in range((first - diary.first_day) // 7, (last - diary.first_day) // 7 + 1):
        start = diary.first_day + 7 * week
        days = range(max(start, first), min(start + 6, last) + 1)
        if item.end is not None and days[0] > item.end:
            continue
        sets = [one for day in days for one in diary.done_sets[item.name].get(day, [])]
        known, name = common_unit([unit(due.stage(item, one.day), mass) for one in sets])
        tensions = [tension(due.stage(item, one.day), one) for one in sets]
        total, _ = counts(due, item, days[0], days[-1])
        found.append({
            'week': week, 'start': day_text(start), 'setsDue': total['setsDue'], 'setsDone': total['setsDone'],
            'sets': len(sets), 'reps': sum(int(one.number('reps')) for one in sets),
            'volume': sum(recorded_volume(due.stage(item, one.day), one, mass) for one in sets) if known else None,
            'volumeUnit': name, 'tensionSeconds': None if None in tensions else sum(tensions),
            'strength': strength(due, item, sets), 'whole': len(days) == 7})
        found[-1]['volumeChange'] = change(found[-1], found[-2] if len(found) > 1 else None)
    for week in found:
        del week['whole']
        week['volume'] = plain(week['volume'])
    return found
