# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""The rows of one invented folder, with ids and instants, and their writing."""

import csv
from datetime import datetime, timedelta

COLUMNS = {
    'settings': 'key,value',
    'complaints': 'complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason',
    'plan': 'item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,'
            'start,end,min_days,min_sessions,rests_after_visit',
    'stages': 'day,item,stage,reason',
    'visits': 'day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note',
    'pauses': 'from,to,reason',
    'mornings': 'id,day,pain,stiffness_min,recorded_at',
    'sets': 'id,day,slot,item,set,reps,hold_s,load_kg,recorded_at',
    'sessions': 'id,day,slot,pain_during,pain_after,recorded_at',
    'flags': 'id,day,sign,note,recorded_at',
    'put_aside': 'id,day,complaint,recorded_at',
    'skips': 'id,day,slot,reason,recorded_at',
    'easier': 'id,day,slot,recorded_at',
    'outcomes': 'id,day,kind,name,side,value,unit,pain,by,recorded_at',
}
OFFSETS = [-300, 0, 60, 120, 330]


def shortest(number):
    return f'{number:.3f}'.rstrip('0').rstrip('.')


def day_text(day):
    return datetime.fromordinal(day).date().isoformat()


class InventedFolder:
    def __init__(self, rng, day_starts, paper_share):
        self.rng = rng
        self.day_starts = day_starts    # minutes
        self.paper_share = paper_share
        self.rows = {table: [] for table in COLUMNS}
        self.complaints = []
        self.features = set()
        self.made_ids = 0

    def new_id(self):
        self.made_ids += 1
        letter = self.rng.choice('abcXYZ')  # so that the order of ids is not the order of making
        return f'{letter}{self.rng.randrange(100)}-{self.made_ids}'

    def instant(self, day):
        """The text of an instant whose diary day is `day`."""
        local = datetime.fromordinal(day) + timedelta(minutes=self.day_starts + self.rng.randrange(24 * 60),
                                                      seconds=self.rng.randrange(60))
        offset = self.rng.choice(OFFSETS)
        fraction = f'.{self.rng.randrange(1, 1000):03}' if self.rng.random() < 0.3 else ''
        if local.date().toordinal() != day:
            self.features.add('recorded after midnight of its diary day')
        return f'{local:%Y-%m-%dT%H:%M:%S}{fraction}{"-" if offset < 0 else "+"}{abs(offset) // 60:02}:{abs(offset) % 60:02}'

    def stamp(self, row, day):
        """From paper, or recorded on the day, or some days later."""
        if self.rng.random() < self.paper_share:
            self.features.add('from paper')
            if self.rng.random() < 0.2:
                row['id'] = self.new_id()
            return row
        late = self.rng.choice([0, 0, 0, 0, 0, 0, 1, 3])
        if late:
            self.features.add('recorded late')
        row['id'] = self.new_id()
        row['recorded_at'] = self.instant(day + late)
        return row

    def add(self, table, day, **cells):
        column = 'from' if table == 'pauses' else 'day'
        row = {name: value for name, value in ({column: day_text(day)} | cells).items() if value not in (None, '')}
        self.stamp(row, day)
        if table in ('sets', 'mornings', 'sessions') and self.rng.random() < 0.05:
            row['author'] = 'helper'
            self.features.add('by a helper')
        if row in self.rows[table]:
            row['id'] = self.new_id()
        self.rows[table].append(row)
        return row

    def write(self, path):
        path.mkdir(parents=True)
        for table, rows in self.rows.items():
            if not rows and (table != 'plan'):
                continue
            columns = COLUMNS[table].split(',')
            columns += sorted({column for row in rows for column in row} - set(columns))
            with (path / f'{table}.csv').open('w', encoding='utf-8', newline='') as file:
                writer = csv.DictWriter(file, columns, restval='', lineterminator='\r\n')
                writer.writeheader()
                writer.writerows(rows)
