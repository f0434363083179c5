# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 7: contact, step-down, step-up or hold, and what is in the way."""

from tables import read_day

from .adherence import counts, ratio
from .check import current, reference
from .entries import above, at_least


class Progression:
    def __init__(self, due, response, to):
        self.due = due
        self.diary = due.diary
        self.settings = due.diary.settings
        self.response = response
        self.to = to
        self.weekly = next(rule for rule in response.rules() if rule['rule'] == 'weekly')

    def applies(self, item):
        return (item.loads and item.start <= self.to and (item.end is None or item.end >= self.to)
                and not self.due.is_put_aside(self.to) and self.settings.text('authority') != 'off')

    # contact

    def open_sign(self):
        today = self.to + 1
        return any(flag.day <= today and not (flag.body.get('cleared_on') and read_day(flag.body['cleared_on']) <= today)
                   for flag in self.diary.flags)

    def alarming(self, day):
        """Whether the check of `day` is reason enough to call."""
        pain, usual = self.diary.pain(day), self.response.usual(day - 1)
        if pain is None or not at_least(pain, self.settings.number('contact_level')):
            return False
        return usual is None or at_least(pain - usual, self.settings.number('contact_rise'))

    def contact(self):
        """(name, value, limit) of each reason to call, in the order of the page; no call without one."""
        level, days = self.settings.number('contact_level'), range(self.to - 2, self.to + 2)
        pains = [session.number(column) for session in self.diary.sessions if session.day in days
                 for column in ('pain_during', 'pain_after')]
        sessions = [pain for pain in pains if pain is not None and at_least(pain, level)]
        checks = [self.diary.pain(day) for day in days if self.alarming(day)]
        return ([('sign', None, None)] * self.open_sign()
                + [(name, max(found), level) for name, found in (('session-pain', sessions), ('check-pain', checks)) if found])

    # conditions

    def recent(self, item):
        """Days with a done set of it since its stage began, on which it was due, whose next day is closed."""
        first = max(self.due.began(item, self.to), self.to - self.settings.whole('step_window_days') + 1)
        return [day for day in range(first, self.to)
                if day in self.diary.done_sets[item.name] and self.due.due_slots(item, day)]

    def is_complete(self, item, day):
        stage = self.due.stage(item, day)

        def reaches(one):
            hold, load = one.number('hold_s'), one.number('load_kg')
            return (one.number('reps') >= stage.reps and (hold is None or at_least(hold, stage.hold))
                    and (load is None or at_least(load, float(stage.load))))

        needed = stage.sets * len(self.due.due_slots(item, day))
        return sum(map(reaches, self.diary.done_sets[item.name][day])) >= needed

    def pain_within(self, days, column, limit):
        """Whether every session of `days` is within the limit, and the greatest value that is known."""
        holds, known = bool(days), []
        for day in days:
            sessions = [session.number(column) for session in self.diary.sessions if session.day == day]
            if not sessions or any(value is None or above(value, limit) for value in sessions):
                holds = False
            known += [value for value in sessions if value is not None]
        return holds, max(known, default=None)

    def conditions(self, item):
        """(name, holds, value, limit) in the order of the page."""
        began = self.due.began(item, self.to)
        number = self.due.stage_number(item, self.to)
        stage = item.stages[number]
        total, _ = counts(self.due, item, began, self.to)
        sets = ratio(total['setsDone'], total['setsDue'])
        days = sum(not self.due.excluded_by_pause(day) for day in range(began, self.to + 1))
        needed = self.settings.whole('step_sessions')
        last = self.recent(item)[-needed:]
        complete = sum(self.is_complete(item, day) for day in last)
        now, before = current(self.diary.pain, self.to), reference(self.diary, self.to)
        level = None if before is None else before + self.settings.number('level_rise_allowed')
        wanted = self.settings.number('step_adherence')
        found = [('days-in-stage', days >= stage.min_days, days, stage.min_days),
                 ('sessions-in-stage', total['sessionsAttended'] >= stage.min_sessions, total['sessionsAttended'],
                  stage.min_sessions),
                 ('adherence', sets is not None and at_least(sets, wanted), sets, wanted),
                 ('sets-complete', len(last) == needed and complete == needed, complete, needed)]
        for name in ('during', 'after'):
            if self.settings.asks(name):
                limit = self.settings.number(f'{name}_limit')
                found.append((f'pain-{name}', *self.pain_within(last, f'pain_{name}', limit), limit))
        settled = sum(self.response.state(day) == 'settled' for day in last)
        return found + [('settled', bool(last) and settled == len(last), settled, len(last)),
                        ('weekly-rise', self.weekly['state'] == 'ok', self.weekly['value'], self.weekly['limit']),
                        ('level', now is not None and level is not None and not above(now, level), now, level),
                        ('next-stage', number + 1 in item.stages, number, max(item.stages))]

    # decision

    def decide(self, item):
        if not self.applies(item):
            return None
        conditions = self.conditions(item)
        unmet = [name for name, holds, _, _ in conditions if not holds]
        number = self.due.stage_number(item, self.to)
        unsettled = sum(self.response.state(day) == 'unsettled' for day in self.recent(item)[-2:])
        contact = self.contact()
        target, deciding = None, []  # what decided beside the conditions
        if contact:
            decision, deciding = 'contact', contact
        elif unsettled == 2:
            decision, target, deciding = 'step-down', number - 1 if number > 1 else None, [('last-two-unsettled', unsettled, 2)]
        elif not unmet:
            decision, target = 'step-up', number + 1
        else:
            decision = 'hold'
        reasons = conditions + [(name, True, value, limit) for name, value, limit in deciding]
        return {'decision': decision, 'toStage': target, 'waits': False, 'unmet': unmet,
                'reasons': [{'condition': name, 'text': f'condition.{name}', 'met': holds, 'value': value, 'limit': limit}
                            for name, holds, value, limit in reasons]}

    def stepped_up_lately(self, item):
        first = self.to - self.settings.whole('step_spacing_days') + 1
        return any(self.due.stage_number(item, day) > self.due.stage_number(item, day - 1)
                   for day in range(first, self.to + 1))

    def decisions(self):
        """In plan order; only now is it known who waits for whom."""
        items = self.diary.items
        found = [self.decide(item) for item in items]
        ready = [place for place, one in enumerate(found) if one and one['decision'] == 'step-up']
        # the one longest in its stage, ties by plan order, is the only one that waits for nobody's turn
        turn = min(ready, key=lambda place: (self.due.began(items[place], self.to), place), default=None)
        for place in ready:
            others = [item for other, item in enumerate(items) if other != place]
            found[place]['waits'] = place != turn or any(map(self.stepped_up_lately, others))
        return found
