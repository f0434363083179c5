# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Which cases of a decision a complaint met: each tells one reading of the page from its opposite."""

from measures.entries import at_least

KINDS = {
    'of several stages': lambda due, item, day, to: due.stage_number(item, day) - due.stage_number(item, day - 1) > 1,
    'before the start': lambda due, item, day, to: day < item.start,
    'of what does not load': lambda due, item, day, to: not item.loads,
    'of what is over': lambda due, item, day, to: item.end is not None and item.end < to,
    'since taken back': lambda due, item, day, to: due.stage_number(item, to) <= due.stage_number(item, day - 1),
}
TURNS = (['begun on different days', 'begun on one day', 'begun a pause apart',
          'held back by a step', 'held back by a step on the last day that does', 'not held back by a step on the day before',
          'not held back by a change that is no step up', 'not held back by a step of its own']
         + [f'held back by a step {kind}' for kind in KINDS])


def turns_met(progression, decisions):
    """Names of TURNS, about the items that would step up and the one of them whose turn it is."""
    due, to = progression.due, progression.to
    items = progression.diary.items
    ready = [item for item, one in zip(items, decisions) if one and one['decision'] == 'step-up']
    if not ready:
        return
    began = [due.began(item, to) for item in ready]
    turn = ready[began.index(min(began))]
    if len(ready) > 1:
        yield 'begun on one day' if began.count(min(began)) > 1 else 'begun on different days'
        open_days = [sum(not due.excluded_by_pause(day) for day in range(first, to + 1)) for first in began]
        if ready[open_days.index(max(open_days))] is not turn:
            yield 'begun a pause apart'

    edge = to - progression.settings.whole('step_spacing_days') + 1  # the first day that holds back
    steps = [(item, day) for item in items for day in range(edge - 1, to + 1)
             if due.stage_number(item, day) > due.stage_number(item, day - 1)]
    late = [(item, day) for item, day in steps if item is not turn and day >= edge]
    if late:
        yield 'held back by a step'
        if all(day == edge for _, day in late):
            yield 'held back by a step on the last day that does'
        for kind, is_one in KINDS.items():
            if all(is_one(due, item, day, to) for item, day in late):
                yield f'held back by a step {kind}'
        return
    if any(item is not turn for item, _ in steps):
        yield 'not held back by a step on the day before'
    if any(item is turn and day >= edge for item, day in steps):
        yield 'not held back by a step of its own'
    if any(edge <= change.day <= to for item in items if item is not turn for change in progression.diary.stage_changes[item.name]):
        yield 'not held back by a change that is no step up'


CALLS = ([f'greatest {what} {where}' for what in ('check', 'session pain')
          for where in ('not the latest', 'not the first', 'of today', 'less than one of the day before the last ones')]
         + ['greatest check less than one that does not call', 'greatest session pain in a session',
            'greatest session pain after a session'])


def calls_met(progression, decisions):
    """Names of CALLS, about the pains behind a contact."""
    diary, level, to = progression.diary, progression.settings.number('contact_level'), progression.to
    days = range(to - 2, to + 2)
    if not any(one and one['decision'] == 'contact' for one in decisions):
        return
    sessions = [(session.day, session.number(f'pain_{when}') or 0, when) for session in diary.sessions for when in ('during', 'after')]
    checks = [(day, diary.pain(day) or 0, 'check') for day in range(to - 3, to + 2)]
    for what, every, calling in (
            ('check', checks, [one for one in checks if one[0] in days and progression.alarming(one[0])]),
            ('session pain', sessions, sorted(one for one in sessions if one[0] in days and at_least(one[1], level)))):
        if not calling:
            continue
        greatest = max(pain for _, pain, _ in calling)
        its_days = [day for day, pain, _ in calling if pain == greatest]
        if its_days[-1] < calling[-1][0]:
            yield f'greatest {what} not the latest'
        if its_days[0] > calling[0][0]:
            yield f'greatest {what} not the first'
        if its_days == [to + 1]:
            yield f'greatest {what} of today'
        if any(day == to - 3 and pain > greatest for day, pain, _ in every):
            yield f'greatest {what} less than one of the day before the last ones'
        if what == 'check' and any(day in days and pain > greatest for day, pain, _ in every):
            yield 'greatest check less than one that does not call'
        if what == 'session pain' and len({when for _, pain, when in calling if pain == greatest}) == 1:
            yield 'greatest session pain ' + ('in' if (greatest, 'during') in {one[1:] for one in calling} else 'after') + ' a session'
