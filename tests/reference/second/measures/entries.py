# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 1: which entries count, the diary of one complaint, and settings with their defaults (section 11)."""

from decimal import Decimal

DEFAULTS = {
    'day_starts': '04:00', 'rest_days_after_visit': '0', 'soreness_days': '2', 'during_limit': '5', 'after_limit': '5',
    'check_limit': None, 'rise_allowed': '1', 'weekly_rise_allowed': '0.5', 'weekly_stiffness_allowed': '10',
    'level_rise_allowed': '1', 'contact_level': '8', 'contact_rise': '3', 'step_sessions': '3', 'step_window_days': '14',
    'step_spacing_days': '7', 'step_adherence': '0.8', 'asks': 'stiffness during after spare', 'authority': 'clinic',
    'body_mass_kg': None,
}
ABOUT = {  # what makes two entries of a kind be about the same thing; any other kind: each is a thing of its own
    'check': ('complaint',), 'set': ('slot', 'item', 'set'), 'session': ('complaint', 'slot'),
    'skip': ('complaint', 'slot'), 'easier': ('complaint', 'slot'), 'stage': ('item',),
}
MINUTE = 60_000
DAY = 86_400_000
UNIX_EPOCH = 719_163  # date(1970, 1, 1).toordinal()
SLACK = 1e-9


def above(value, limit):
    return value > limit + SLACK


def at_least(value, limit):
    return value >= limit - SLACK


def age(entry):
    """Orders entries by recording: an absent instant first, ties by id."""
    return (entry.recorded is not None, entry.recorded or 0, entry.id)


def unreplaced(entries):
    replaced = {entry.replaces for entry in entries if entry.replaces}
    return [entry for entry in entries if entry.id not in replaced]


def counting(entries):
    rivals = {}
    for entry in unreplaced(entries):
        columns = ABOUT.get(entry.kind)
        thing = entry.id if columns is None else (entry.day, *(entry.body.get(column) for column in columns))
        rivals.setdefault(thing, []).append(entry)
    newest = (max(group, key=age) for group in rivals.values())
    return [entry for entry in newest if not entry.withdrawn]


class Settings:
    def __init__(self, folder, complaint):
        self.texts = folder.settings
        self.complaint = complaint

    def text(self, key):
        return self.texts.get((self.complaint, key), self.texts.get((None, key), DEFAULTS[key]))

    def number(self, key):
        text = self.text(key)
        return None if text is None else float(text)

    def exact(self, key):
        text = self.text(key)
        return None if text is None else Decimal(text)

    def whole(self, key):
        return int(self.number(key))

    def asks(self, what):
        return what in self.text('asks').split()


class Diary:
    """What the measures of one complaint may see: its own counting rows and what all complaints share."""

    def __init__(self, folder, complaint):
        self.complaint = complaint
        self.settings = Settings(folder, complaint.name)
        self.items = [item for item in folder.items if item.complaint == complaint.name]
        self.first_day = min((item.start for item in self.items), default=None)
        hours, minutes = self.settings.text('day_starts').split(':')
        self.day_starts = int(hours) * 60 + int(minutes)
        count = {kind: counting(entries) for kind, entries in folder.entries.items()}

        def own(kind):
            return [entry for entry in count[kind] if entry.body['complaint'] == complaint.name]

        self.checks = {entry.day: entry for entry in own('check')}
        self.sessions = own('session')
        self.visits = sorted(own('visit'), key=lambda visit: visit.day)
        self.outcomes = own('outcome')
        self.skips = {(entry.day, entry.body['slot']) for entry in own('skip')}
        self.easier = {(entry.day, entry.body['slot']) for entry in own('easier')}
        self.put_asides = own('put_aside')
        self.flags = count['flag']
        self.newest_pauses = unreplaced(folder.entries['pause'])  # withdrawn ones too: what they had stays
        self.every_pause = {entry.id: entry for entry in folder.entries['pause']}
        self.stage_changes = {item.name: [] for item in self.items}
        for change in sorted(count['stage'], key=lambda change: change.day):
            if change.body['item'] in self.stage_changes:
                self.stage_changes[change.body['item']].append(change)
        self.done_sets = {item.name: {} for item in self.items}  # item -> day -> sets with reps >= 1
        for one in count['set']:
            if one.body['item'] in self.done_sets and (one.number('reps') or 0) >= 1:
                self.done_sets[one.body['item']].setdefault(one.day, []).append(one)

    def recording_day(self, entry):
        """The diary day of the recording; None for what was typed in from paper."""
        if entry.recorded is None:
            return None
        return UNIX_EPOCH + (entry.recorded + (entry.offset - self.day_starts) * MINUTE) // DAY

    def pain(self, day):
        return self.checks[day].number('pain') if day in self.checks else None

    def stiffness(self, day):
        return self.checks[day].number('stiffness_min') if day in self.checks else None

    def soreness_days(self, before=None):
        """Days v+1 .. v+soreness_days of each visit v; of those earlier than `before` only, where it is given."""
        length = self.settings.whole('soreness_days')
        return {visit.day + n for visit in self.visits if before is None or visit.day < before
                for n in range(1, length + 1)}
