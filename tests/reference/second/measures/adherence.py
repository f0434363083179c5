# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 3: what was done of what was due."""

from .statistics import wilson
from .volume import common_unit, plain, prescribed_volume, recorded_volume, unit

COUNTS = ['setsDue', 'setsDone', 'setsExtra', 'sessionsDue', 'sessionsAttended', 'sessionsComplete']


def ratio(part, whole):
    return part / whole if whole else None


def largest(values, count):
    return sum(sorted(values, reverse=True)[:count])


def slot_counts(sets):
    counts = {}
    for one in sets:
        counts[one.body['slot']] = counts.get(one.body['slot'], 0) + 1
    return counts.values()


def counts(due, item, first, last):
    """The six counts of the days first .. last, and (due volume, done volume, unit); volumes None if unknown."""
    diary = due.diary
    done = diary.done_sets[item.name]
    mass = diary.settings.exact('body_mass_kg')
    total = dict.fromkeys(COUNTS, 0)
    loads = []  # for each stretch with sets due: unit, how to find its due and done volume

    def volume(stage, day):
        return sum(recorded_volume(stage, one, mass) for one in done.get(day, []))

    def add(sets_due, sets_done, sessions_due, attended, complete):
        for name, value in zip(COUNTS, (sets_due, sets_done, 0, sessions_due, attended, complete)):
            total[name] += value

    for stage, days in due.parts(item, first, last):
        if stage.per_week is not None:
            expected, open_days = due.sessions_expected(item, stage, days)
            by_day = [len(done.get(day, [])) for day in open_days]
            add(expected * stage.sets, largest([min(n, stage.sets) for n in by_day], expected), expected,
                min(sum(n > 0 for n in by_day), expected), min(sum(n >= stage.sets for n in by_day), expected))
            if expected:
                loads.append((unit(stage, mass), stage, expected, open_days))
            continue
        for day in days:
            slots = len(due.due_slots(item, day))
            by_slot = slot_counts(done.get(day, []))
            add(slots * stage.sets, min(len(done.get(day, [])), slots * stage.sets), slots,
                min(len(by_slot), slots), min(sum(n >= stage.sets for n in by_slot), slots))
            if slots:
                loads.append((unit(stage, mass), stage, slots, [day]))

    total['setsExtra'] = sum(len(sets) for day, sets in done.items() if first <= day <= last) - total['setsDone']

    known, name = common_unit([load[0] for load in loads])
    if not known:
        return total, (None, None, None)
    volume_due = volume_done = 0
    for _, stage, sessions, days in loads:
        session = stage.sets * prescribed_volume(stage, mass)
        volume_due += sessions * session
        if stage.per_week is not None:
            volume_done += largest([min(volume(stage, day), session) for day in days], sessions)
        else:
            volume_done += min(volume(stage, days[0]), sessions * session)
    return total, (volume_due, volume_done, name)


def adherence(due, item, first, last):
    diary = due.diary
    total, (volume_due, volume_done, name) = counts(due, item, first, last)
    slots = [(day, slot) for day in range(first, last + 1) for slot in due.due_slots(item, day)]
    return total | {
        'volumeDue': plain(volume_due), 'volumeDone': plain(volume_done), 'volumeUnit': name,
        'setRatio': ratio(total['setsDone'], total['setsDue']),
        'sessionRatio': ratio(total['sessionsAttended'], total['sessionsDue']),
        'volumeRatio': plain(ratio(volume_done, volume_due)),
        'sessionInterval': wilson(total['sessionsAttended'], total['sessionsDue']),
        'skips': sum(slot in diary.skips for slot in slots),
        'easier': sum(slot in diary.easier for slot in slots),
        'away': sum(due.is_away(item, day) for day in range(first, last + 1)),
    }


def all_items(adherences):
    total = {name: sum(one[name] for one in adherences) for name in COUNTS}
    return total | {'setRatio': ratio(total['setsDone'], total['setsDue']),
                    'sessionRatio': ratio(total['sessionsAttended'], total['sessionsDue'])}
