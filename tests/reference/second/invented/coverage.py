# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""What a run has met: features of the diaries, and states in what was measured from them."""

from collections import Counter

from .decisions_met import CALLS, TURNS, calls_met, turns_met
from .plan import RHYTHMS

ENOUGH = 20
DECISIONS = ['contact', 'step-down', 'step-up', 'hold']
CONDITIONS = ['days-in-stage', 'sessions-in-stage', 'adherence', 'sets-complete', 'pain-during', 'pain-after', 'settled',
              'weekly-rise', 'level', 'next-stage']
DECIDING = ['sign', 'session-pain', 'check-pain', 'last-two-unsettled']  # said where they decided
RULES = ['during', 'after', 'check', 'settled', 'weekly', 'stiffness']
WANTED = ([f'decision {name}' for name in DECISIONS] + ['no decision', 'step-up that waits', 'step-up that does not wait',
                                                        'step-down in stage 1']
          + [f'condition {name} {state}' for name in CONDITIONS for state in ('holds', 'does not hold')]
          + [f'condition {name} holds' for name in DECIDING] + [f'rule {name} {state}' for name in RULES for state in ('ok', 'exceeded', 'unknown')]
          + ['response settled', 'response unsettled', 'response unknown, missing', 'response unknown, after-visit',
             'unsettled by the limit alone', 'no complaint', 'trend', 'no trend', 'trend of stiffness', 'limits', 'limits without a spread',
             'no limits', 'beyond the limits', 'clear change True', 'clear change False', 'clear change None',
             'volume unknown', 'volume known', 'strength', 'away', 'skipped', 'easier', 'visit with a change', 'ratio of sides']
          + [f'turn {name}' for name in TURNS] + [f'call, {name}' for name in CALLS])
# What diaries must have, so that it is missed even if none has it; others are counted as they come.
FEATURES = ([f'rhythm {name}' for name in RHYTHMS] + [f'per week {k}' for k in range(1, 8)]
            + ['stage change', 'stage change before the start', 'pause from paper', 'pause recorded before', 'pause recorded during',
               'pause recorded after', 'rest after a visit', 'visit with treatment', 'visit that is a day only', 'two visits on a day',
               'from paper', "can't say", 'session with a value missing', 'stiffness without pain', 'complaints 2', 'complaints 3',
               'single day', 'empty diary with a plan', 'empty diary without a plan', 'put aside', 'sign', 'sign with a clearing']
            + [f'corrected in {table}' for table in ('mornings', 'sets', 'sessions', 'outcomes', 'stages', 'visits', 'pauses', 'skips',
                                                     'easier', 'flags', 'put_aside')])


class Coverage:
    def __init__(self):
        self.features = Counter(dict.fromkeys(FEATURES, 0))
        self.states = Counter(dict.fromkeys(WANTED, 0))

    def add(self, features, measured):
        self.features.update(features)
        self.states['no complaint'] += not measured['complaints']
        for complaint in measured['complaints']:
            self.add_complaint(complaint)

    def watch(self, progression, decisions):
        self.states.update(f'turn {name}' for name in turns_met(progression, decisions))
        self.states.update(f'call, {name}' for name in calls_met(progression, decisions))

    def add_complaint(self, complaint):
        met = self.states
        for item in complaint['items']:
            self.add_item(item)
        for rule in complaint['rules']:
            met[f'rule {rule["rule"]} {rule["state"]}'] += 1
        for day in complaint['response']['days']:
            met[f'response {day["state"]}' + (f', {day["reason"]}' if day['reason'] else '')] += 1
            met['unsettled by the limit alone'] += day['state'] == 'unsettled' and day['rise'] is None
        check = complaint['check']
        met['trend' if check['trend'] else 'no trend'] += 1
        met['trend of stiffness'] += complaint['stiffness']['trend'] is not None
        limits = check['limits']
        met['no limits' if limits is None else 'limits' if limits['lower'] is not None else 'limits without a spread'] += 1
        met['beyond the limits'] += bool(limits and limits['beyond'])
        met[f'clear change {check["clearChange"]}'] += 1
        met['visit with a change'] += sum(visit['change'] is not None for visit in complaint['visits'])
        met['ratio of sides'] += sum(outcome['ratio'] is not None for outcome in complaint['outcomes'])

    def add_item(self, item):
        met = self.states
        done = item['adherence']
        met['volume unknown' if done['volumeDue'] is None else 'volume known'] += 1
        met['strength'] += any(week['strength'] is not None for week in item['weeks'])
        for name, field in (('away', 'away'), ('skipped', 'skips'), ('easier', 'easier')):
            met[name] += bool(done[field])
        decided = item['progression']
        if decided is None:
            met['no decision'] += 1
            return
        met[f'decision {decided["decision"]}'] += 1
        if decided['decision'] == 'step-up':
            met['step-up that waits' if decided['waits'] else 'step-up that does not wait'] += 1
        met['step-down in stage 1'] += decided['decision'] == 'step-down' and decided['toStage'] is None
        for condition in decided['reasons']:
            met[f'condition {condition["condition"]} {"holds" if condition["met"] else "does not hold"}'] += 1

    def report(self):
        lines = [f'{count:6} {name}' for name, count in (self.states + Counter()).items()]
        return '\n'.join(['met in what was measured:'] + lines + ['diaries with:']
                         + [f'{count:6} {name}' for name, count in sorted(self.features.items())])

    def thin(self):
        """What this run met too seldom to say anything about it."""
        return [(name, count) for name, count in (*self.states.items(), *self.features.items()) if count < ENOUGH]
