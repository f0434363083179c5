# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 5: the daily check (pain 0-10) and stiffness (minutes)."""

from tables import day_text

from .due import falls_on
from .entries import above, at_least
from .statistics import chart, median, trend

BASE = 14      # recorded days that make the chart
LEAST_BASE = 8
LEAST_WEEKS = 6


def values(of, days):
    return [value for value in map(of, days) if value is not None]


def first_week(diary, to):
    return median(values(diary.pain, range(diary.first_day, min(diary.first_day + 6, to) + 1)), at_least=3)


def reference(diary, to):
    pain = diary.complaint.first_assessment_pain
    return first_week(diary, to) if pain is None else pain


def current(of, to):
    return median(values(of, range(to - 6, to + 1)), at_least=3)


def weekly_trend(diary, of, first, last):
    """Over the medians of weeks, cut to the window; None with fewer than six of them."""
    medians = {}
    for day in range(first, last + 1):
        if of(day) is not None:
            medians.setdefault((day - diary.first_day) // 7, []).append(of(day))
    medians = {week: median(found, at_least=3) for week, found in sorted(medians.items()) if len(found) >= 3}
    return trend(list(medians), list(medians.values())) if len(medians) >= LEAST_WEEKS else None


def limits(diary, to):
    recorded = [(day, diary.pain(day)) for day in range(diary.first_day, to + 1) if diary.pain(day) is not None]
    base, later = recorded[:BASE], recorded[BASE:]
    if len(base) < LEAST_BASE:
        return None
    centre, spread, lower, upper = chart(base)
    if not spread:
        lower = upper = None
    else:
        lower, upper = max(lower, 0.0), min(upper, 10.0)
    beyond = [] if lower is None else [day_text(day) for day, pain in later if above(pain, upper) or above(lower, pain)]
    return {'n': len(base), 'centre': centre, 'meanRange': spread, 'lower': lower, 'upper': upper, 'beyond': beyond}


def check(diary, first, to):
    window = [diary.checks[day] for day in range(first, to + 1) if day in diary.checks]
    recorded = [entry for entry in window if entry.number('pain') is not None]
    same_day = sum(diary.recording_day(entry) == entry.day for entry in recorded)
    paper = sum(entry.recorded is None for entry in recorded)
    rule = diary.complaint.check or 'FREQ=DAILY'
    before, now = reference(diary, to), current(diary.pain, to)
    change = None if now is None or before is None or to < diary.first_day + 13 else now - before
    change_ratio = None if change is None or before == 0 else change / before
    clear = None if change is None else (before != 0 and at_least(-2, change) and at_least(-0.30, change_ratio))
    return {
        'expected': sum(falls_on(rule, diary.first_day, day) for day in range(first, to + 1)),
        'recorded': len(recorded), 'sameDay': same_day, 'late': len(recorded) - same_day - paper, 'paper': paper,
        'declined': sum(entry.number('declined') == 1 for entry in window),
        'firstWeek': first_week(diary, to), 'reference': before, 'current': now, 'change': change,
        'changeRatio': change_ratio, 'clearChange': clear,
        'trend': weekly_trend(diary, diary.pain, first, to), 'limits': limits(diary, to)}


def stiffness(diary, first, to):
    return {'recorded': len(values(diary.stiffness, range(first, to + 1))), 'current': current(diary.stiffness, to),
            'trend': weekly_trend(diary, diary.stiffness, first, to)}
