# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""One whole invented diary from one seed."""

import random
from dataclasses import dataclass
from datetime import date

from .calls import calls
from .corrections import corrections
from .days import live, pauses, signs
from .folder import InventedFolder
from .plan import complaints
from .turns import turns


@dataclass
class InventedDiary:
    to: int
    asked: int | None
    features: set


def write_diary(seed, path):
    rng = random.Random(seed)
    day_starts = rng.choice(['', '04:00', '00:00', '03:00', '05:30'])
    hours, minutes = (day_starts or '04:00').split(':')
    folder = InventedFolder(rng, int(hours) * 60 + int(minutes), rng.choice([0, 0.1, 0.5, 1]))
    folder.rows['settings'].append({'key': 'patient_ref', 'value': f'person-{seed}'})
    if day_starts:
        folder.rows['settings'].append({'key': 'day_starts', 'value': day_starts})
    if rng.random() < 0.6:
        folder.rows['settings'].append({'key': 'body_mass_kg', 'value': rng.choice(['64.5', '80', '71.125'])})
    first = date(2026, 1, 1).toordinal() + rng.randrange(0, 60)
    ripe = rng.random() < 0.5
    length = rng.randrange(15, 60) if ripe else rng.choice([1, 1, rng.randrange(2, 12), rng.randrange(11, 17), rng.randrange(12, 40), rng.randrange(20, 60), rng.randrange(42, 110), rng.randrange(14, 90)])
    last = first + length - 1
    shape = rng.random()
    if shape < 0.09:
        folder.features.add('empty diary without a plan')
    else:
        found = complaints(rng, folder, first, length, ripe)
        if shape < 0.18:
            folder.features.add('empty diary with a plan')
        else:
            folder.features.add('single day' if length == 1 else 'many days')
            for complaint in found:
                live(rng, folder, complaint, first, last)
            pauses(rng, folder, first, last)
            signs(rng, folder, last, any(complaint.temper == 'alarming' for complaint in found))
            corrections(rng, folder, rng.choice([0, 0.01, 0.02, 0.1]))
    asked = None
    if rng.random() < 0.35:
        asked = rng.randrange(first - 4, last + 1)
        folder.features.add('asked from a later day' if asked > first else 'asked from an earlier day')
    if folder.rows['sets'] and folder.rows['complaints'] and length > 1:
        for name in ('turn-1', 'turn-2'):
            turns(rng, folder, name, last)
        for name in ('call-1', 'call-2'):
            calls(rng, folder, name, last)
    folder.write(path)
    return InventedDiary(last, asked, folder.features)
