# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 2: what is due on a day, and what excludes it."""

from datetime import date

WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']


def weekday(day):
    return date.fromordinal(day).weekday()


def falls_on(rule, start, day):
    """Whether the rule, begun at `start`, names `day`."""
    parts = dict(part.split('=') for part in rule.removeprefix('RRULE:').split(';'))
    every = int(parts.get('INTERVAL', 1))
    named = [WEEKDAYS.index(name) for name in parts['BYDAY'].split(',')] if 'BYDAY' in parts else None
    if day < start:
        return False
    if parts['FREQ'] == 'DAILY':
        return (day - start) % every == 0 and (named is None or weekday(day) in named)
    weeks = ((day - weekday(day)) - (start - weekday(start))) // 7
    return weeks % every == 0 and weekday(day) in (named or [weekday(start)])


class Due:
    def __init__(self, diary):
        self.diary = diary
        rest = diary.settings.whole('rest_days_after_visit')
        self.rest_days = {visit.day + n for visit in diary.visits for n in range(rest)}
        self.put_aside_from = min((max(entry.day, diary.recording_day(entry) or entry.day)
                                   for entry in diary.put_asides), default=None)
        self.pause_days = {}  # day -> whether it is excluded; False: only covered, declared too late

        for newest in diary.newest_pauses:
            versions = self.versions(newest)
            for day in {day for version in versions for day in self.days(version)}:
                if self.stood(versions, day):
                    self.pause_days[day] = True
                elif day in self.days(newest):
                    self.pause_days.setdefault(day, False)

    @staticmethod
    def days(pause):
        return () if pause.withdrawn else range(pause.day, date.fromisoformat(pause.body['to']).toordinal() + 1)

    def versions(self, pause):
        """The pause and what it corrects, newest first: a correction is newer than what it corrects."""
        chain = [pause]
        while chain[-1].replaces in self.diary.every_pause:
            chain.append(self.diary.every_pause[chain[-1].replaces])
        return chain

    def stood(self, versions, day):
        """Whether the version that stood on `day` covered it."""
        for version in versions:
            recorded = self.diary.recording_day(version)
            if recorded is None or recorded <= day:
                return day in self.days(version)
        return False

    # stages

    def latest_change(self, item, day):
        before = [change for change in self.diary.stage_changes[item.name] if change.day <= day]
        return before[-1] if before else None

    def stage_number(self, item, day):
        change = self.latest_change(item, day)
        return int(change.body['stage']) if change else 1

    def stage(self, item, day):
        return item.stages[self.stage_number(item, day)]

    def began(self, item, day):
        change = self.latest_change(item, day)
        return max(item.start, change.day) if change else item.start

    # days

    def is_put_aside(self, day):
        return self.put_aside_from is not None and day >= self.put_aside_from

    def excluded_by_pause(self, day):
        return self.pause_days.get(day, False)

    def excluded(self, item, day):
        return (day < item.start or (item.end is not None and day > item.end) or self.excluded_by_pause(day)
                or self.is_put_aside(day) or (item.rests and day in self.rest_days))

    def due_slots(self, item, day):
        """The slots in which the item is due; of a `per_week` stage: `day` on each day that is not excluded."""
        if self.excluded(item, day):
            return []
        stage = self.stage(item, day)
        if stage.per_week is not None:
            return ['day']
        return stage.slots if falls_on(stage.rrule, item.start, day) else []

    def is_away(self, item, day):
        return day in self.pause_days and bool(self.due_slots(item, day))

    def parts(self, item, first, last):
        """The weeks of the complaint within first .. last, cut where the stage number changes: (stage, its days)."""
        found = []
        before = None
        for day in range(first, last + 1):
            key = ((day - self.diary.first_day) // 7, self.stage_number(item, day))
            if key != before:
                found.append((self.stage(item, day), []))
            found[-1][1].append(day)
            before = key
        return found

    def sessions_expected(self, item, stage, days):
        """Of a `per_week` part: its sessions to the nearest whole number (never halfway: 7 is odd), and its a days."""
        open_days = [day for day in days if not self.excluded(item, day)]
        return round(stage.per_week * len(open_days) / 7), open_days
