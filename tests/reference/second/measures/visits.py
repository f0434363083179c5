# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 8: visits, what was given, and what came after."""

from tables import day_text

from .check import values
from .statistics import median

GIVEN = ('warmup_impulses', 'warmup_hz', 'impulses', 'hz', 'area_cm2')


def divided(part, by):
    return None if part is None or not by else part / by


def total(parts):
    """The sum; None if there is no part or one is unknown."""
    parts = list(parts)
    return sum(parts) if parts and None not in parts else None


def seconds(visit):
    warm_up = 0 if visit.number('warmup_impulses') is None else divided(visit.number('warmup_impulses'),
                                                                        visit.number('warmup_hz'))
    return total([warm_up, divided(visit.number('impulses'), visit.number('hz'))])


def treatment(of_a_day):
    given = [visit for visit in of_a_day if any(visit.number(column) is not None for column in GIVEN)]
    impulses = total(visit.number('impulses') for visit in given)
    return {'seconds': total(map(seconds, given)),
            'perCm2': divided(impulses, total(visit.number('area_cm2') for visit in given)),
            'totalImpulses': total([impulses, sum(visit.number('warmup_impulses') or 0 for visit in given)])}


def visits(diary, to):
    soreness = diary.settings.whole('soreness_days')
    days = sorted({visit.day for visit in diary.visits if visit.day <= to})
    found = []
    for day, following in zip(days, days[1:] + [to + 1]):
        sore = diary.soreness_days(before=day)
        before = median(values(diary.pain, [d for d in range(day - 7, day) if d not in sore]), at_least=3)
        after = [median(values(diary.pain, range(start, min(start + 7, following))), at_least=3)
                 for start in range(day + 1 + soreness, following, 7)]
        known = [value for value in after if value is not None]
        found.append({'day': day_text(day), 'before': before, 'afterWeeks': after,
                      'change': known[-1] - before if known and before is not None else None}
                     | treatment([visit for visit in diary.visits if visit.day == day]))
    return found
