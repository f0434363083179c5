# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 6: how the complaint answered to loading, and the rules over the last seven closed days."""

from tables import day_text

from .check import values
from .entries import above
from .statistics import mean, median


class Response:
    def __init__(self, diary, to):
        self.diary = diary
        self.to = to
        self.sore = diary.soreness_days()
        self.loading_days = {day for item in diary.items if item.loads for day in diary.done_sets[item.name]}

    def usual(self, day):
        found = values(self.diary.pain, [d for d in range(day - 6, day + 1) if d not in self.sore])
        middle = median(found, at_least=3)
        return self.diary.complaint.first_assessment_pain if middle is None else middle

    def of(self, day):
        """(rise, state, reason) of a loading day whose next day is closed."""
        pain, usual, sore = self.diary.pain(day + 1), self.usual(day), day + 1 in self.sore
        rise = None if pain is None or usual is None or sore else pain - usual
        limit = self.diary.settings.number('check_limit')
        over = pain is not None and limit is not None and above(pain, limit)
        if over or (rise is not None and above(rise, self.diary.settings.number('rise_allowed'))):
            return rise, 'unsettled', None
        if rise is None:
            return None, 'unknown', 'after-visit' if sore else 'missing'
        return rise, 'settled', None

    def state(self, day):
        return self.of(day)[1]

    def listed(self, first):
        days = []
        for day in sorted(self.loading_days):
            if first <= day < self.to:
                rise, state, reason = self.of(day)
                days.append({'day': day_text(day), 'rise': rise, 'state': state, 'reason': reason})
        count = {state: sum(day['state'] == state for day in days) for state in ('settled', 'unsettled', 'unknown')}
        return {'days': days} | count

    # rules

    def session_peak(self, column):
        found = [entry.number(column) for entry in self.diary.sessions if self.to - 6 <= entry.day <= self.to]
        return max((value for value in found if value is not None), default=None)

    def weekly(self, of):
        this = values(of, range(self.to - 6, self.to + 1))
        before = values(of, range(self.to - 13, self.to - 6))
        return mean(this) - mean(before) if len(this) >= 4 and len(before) >= 4 else None

    def unsettled(self):
        states = [self.state(day) for day in range(self.to - 6, self.to) if day in self.loading_days]
        known = [state for state in states if state != 'unknown']
        return known.count('unsettled') if known else None

    def rules(self):
        settings = self.diary.settings
        found = [
            ('during', settings.asks('during'), self.session_peak('pain_during'), settings.number('during_limit')),
            ('after', settings.asks('after'), self.session_peak('pain_after'), settings.number('after_limit')),
            ('check', True, max(values(self.diary.pain, range(self.to - 6, self.to + 1)), default=None),
             settings.number('check_limit')),
            ('settled', True, self.unsettled(), 0.0),
            ('weekly', True, self.weekly(self.diary.pain), settings.number('weekly_rise_allowed')),
            ('stiffness', settings.asks('stiffness'), self.weekly(self.diary.stiffness),
             settings.number('weekly_stiffness_allowed')),
        ]

        def state(value, limit):
            if value is None or limit is None:
                return 'unknown'
            return 'exceeded' if above(value, limit) else 'ok'

        return [{'rule': name, 'state': state(value, limit), 'value': value, 'limit': limit}
                for name, asked, value, limit in found if asked]
