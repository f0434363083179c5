# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""A folder of tables as rows of entries, a plan, complaints and settings.

It reads what was accepted: nothing is refused here, the program under comparison does that.
Days are whole numbers (date.toordinal), so that a span of days is a range. An empty cell is None, never 0.
"""

import csv
import hashlib
import json
import re
import uuid
from dataclasses import dataclass, field
from datetime import date, datetime, timezone
from decimal import Decimal
from pathlib import Path

# table: (kind of its entries, the column that gives the day)
ENTRY_TABLES = {
    'stages': ('stage', 'day'), 'visits': ('visit', 'day'), 'pauses': ('pause', 'from'), 'mornings': ('check', 'day'),
    'sets': ('set', 'day'), 'sessions': ('session', 'day'), 'flags': ('flag', 'day'), 'put_aside': ('put_aside', 'day'),
    'skips': ('skip', 'day'), 'easier': ('easier', 'day'), 'outcomes': ('outcome', 'day'),
}
OF_A_COMPLAINT = {'visit', 'check', 'session', 'skip', 'easier', 'outcome', 'put_aside'}
NUMBERS = {'stage', 'warmup_impulses', 'warmup_bar', 'warmup_hz', 'impulses', 'bar', 'hz', 'area_cm2', 'pain_during',
           'consent', 'pain', 'stiffness_min', 'declined', 'set', 'reps', 'hold_s', 'load_kg', 'spare', 'pain_after',
           'value', 'withdrawn'}
APART = {'id', 'recorded_at', 'author', 'replaces'}
NOT_OF_THE_ROW = {'visit': {'note', 'next_time'}, 'flag': {'cleared_on'}}
ESCAPED = re.compile(r"'+[=+\-@\t\r]")


@dataclass
class Entry:
    kind: str
    id: str
    day: int
    recorded: int | None  # UTC milliseconds; None: typed in from paper
    offset: int | None    # minutes
    author: str
    replaces: str | None
    body: dict

    @property
    def withdrawn(self):
        return self.body.get('withdrawn') == '1'

    def number(self, column):
        text = self.body.get(column)
        return None if text is None else float(text)

    def exact(self, column):
        text = self.body.get(column)
        return None if text is None else Decimal(text)


@dataclass
class Stage:
    sets: int
    reps: int
    hold: int
    load: Decimal         # volumes are summed exactly
    body_share: Decimal
    tempo: list           # up, pause, down; None where empty
    rrule: str | None
    slots: list
    per_week: int | None
    min_days: int
    min_sessions: int

    @property
    def held(self):
        return self.hold > 0


@dataclass
class Item:
    name: str
    exercise: str | None
    side: str | None
    complaint: str
    start: int
    end: int | None
    rests: bool
    loads: bool
    stages: dict = field(default_factory=dict)


@dataclass
class Complaint:
    name: str
    region: str | None
    side: str | None
    check: str | None
    first_assessment_pain: float | None


@dataclass
class Folder:
    settings: dict        # (complaint or None, key) -> text
    complaints: list
    items: list
    entries: dict         # kind -> all entries, also those that do not count


def read_day(text):
    return date.fromisoformat(text).toordinal()


def day_text(day):
    return date.fromordinal(day).isoformat()


def read_instant(text):
    """UTC milliseconds and the offset in minutes."""
    moment = datetime.fromisoformat(text.replace('Z', '+00:00'))
    since = moment.astimezone(timezone.utc) - datetime(1970, 1, 1, tzinfo=timezone.utc)
    return (since.days * 86_400_000 + since.seconds * 1000 + since.microseconds // 1000,
            int(moment.utcoffset().total_seconds() // 60))


def rows(folder, table):
    path = Path(folder) / f'{table}.csv'
    if not path.exists():
        return []
    with path.open(encoding='utf-8', newline='') as file:
        return [{column: cell[1:] if ESCAPED.match(cell) else cell or None for column, cell in row.items()}
                for row in csv.DictReader(file)]


def canonical(body):
    """RFC 8785 for the flat bodies of a table."""
    def member(column):
        text = body[column]
        if column in NUMBERS:
            number = format(Decimal(text), 'f')
            return number.rstrip('0').rstrip('.') if '.' in number else number
        return json.dumps(text, ensure_ascii=False)
    return '{' + ','.join(f'{json.dumps(column)}:{member(column)}' for column in sorted(body)) + '}'


def derived_id(entry):
    """UUID version 8 of the digest that the entry has with an empty id."""
    parts = ['entry 1', '', entry.kind, entry.day - date(1970, 1, 1).toordinal(), entry.recorded, entry.offset,
             entry.author, entry.replaces, canonical(entry.body)]
    whole = b''
    for part in parts:
        text = '' if part is None else str(part)
        whole += len(text.encode()).to_bytes(4, 'big') + text.encode()
    raw = bytearray(hashlib.sha256(whole).digest()[:16])
    raw[6] = raw[6] & 0x0F | 0x80
    raw[8] = raw[8] & 0x3F | 0x80
    return str(uuid.UUID(bytes=bytes(raw)))


def default_author(kind, row):
    if kind in ('visit', 'stage') or (kind == 'outcome' and row.get('kind') == 'test'):
        return 'clinic'
    return 'patient'


def read_entry(kind, day_column, row, first_complaint):
    body = {column: cell for column, cell in row.items()
            if cell is not None and column not in APART | {day_column} | NOT_OF_THE_ROW.get(kind, set())}
    if kind in OF_A_COMPLAINT:
        body.setdefault('complaint', first_complaint)
    recorded, offset = read_instant(row['recorded_at']) if row.get('recorded_at') else (None, None)
    entry = Entry(kind, row.get('id') or '', read_day(row[day_column]), recorded, offset,
                  row.get('author') or default_author(kind, row), row.get('replaces'), body)
    entry.id = entry.id or derived_id(entry)
    if row.get('cleared_on'):
        entry.body['cleared_on'] = row['cleared_on']
    return entry


def read_stage(row):
    def number(column, absent=None):
        return absent if row.get(column) is None else float(row[column])
    return Stage(int(number('sets', 1)), int(number('reps', 1)), int(number('hold_s', 0)), Decimal(row.get('load_kg') or 0),
                 Decimal(row.get('body_share') or 0), [number('up_s'), number('pause_s'), number('down_s')], row.get('rrule'),
                 (row.get('slots') or '').split(), None if row.get('per_week') is None else int(row['per_week']),
                 int(number('min_days', 0)), int(number('min_sessions', 0)))


def read_items(folder, first_complaint):
    items = {}
    for row in rows(folder, 'plan'):
        item = items.setdefault(row['item'], Item(
            row['item'], row.get('exercise'), row.get('side'), row.get('complaint') or first_complaint,
            read_day(row['start']), read_day(row['end']) if row.get('end') else None,
            row.get('rests_after_visit') == '1', (row.get('loads') or '1') == '1'))
        item.stages[int(row['stage'])] = read_stage(row)
    return list(items.values())


def read_folder(folder):
    settings = {(row.get('complaint'), row['key']): row['value'] for row in rows(folder, 'settings')
                if row.get('value') is not None}
    complaints = [Complaint(row['complaint'], row.get('region'), row.get('side'), row.get('check'),
                            None if row.get('first_assessment_pain') is None else float(row['first_assessment_pain']))
                  for row in rows(folder, 'complaints')]
    if not complaints:
        pain = settings.get((None, 'first_assessment_pain'))
        complaints = [Complaint('main', None, None, None, None if pain is None else float(pain))]
    first = complaints[0].name
    entries = {kind: [read_entry(kind, column, row, first) for row in rows(folder, table)]
               for table, (kind, column) in ENTRY_TABLES.items()}
    return Folder(settings, complaints, read_items(folder, first), entries)
