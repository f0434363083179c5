# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented corrections of rows that are there: each way in which one entry can take the place of another."""

from datetime import date

from .folder import day_text

# table: columns that say what a row is about (a withdrawal holds these and nothing else)
ABOUT = {'mornings': ('day', 'complaint'), 'sets': ('day', 'slot', 'item', 'set'), 'sessions': ('day', 'slot', 'complaint'),
         'stages': ('day', 'item'), 'skips': ('day', 'slot', 'complaint'), 'easier': ('day', 'slot', 'complaint'),
         'pauses': ('from',), 'visits': ('day', 'complaint'), 'flags': ('day',),
         'outcomes': ('day', 'complaint'), 'put_aside': ('day', 'complaint')}
OWN_THING = {'pauses', 'visits', 'flags', 'outcomes', 'put_aside'}
RARE = {'pauses', 'put_aside', 'flags', 'skips', 'easier', 'visits', 'stages'}  # corrected oftener, so that it happens at all
WAYS = ['replace', 'replace', 'replace with an earlier clock', 'replace from paper', 'rival', 'rival at the same instant',
        'withdraw', 'withdraw without a name', 'move', 'move', 'twice', 'withdraw and write again']


def day_column(table):
    return 'from' if table == 'pauses' else 'day'


def day_of(table, row):
    return date.fromisoformat(row[day_column(table)]).toordinal()


def changed(rng, table, row):
    new = {column: value for column, value in row.items() if column not in ('id', 'recorded_at', 'replaces', 'withdrawn')}
    if table == 'mornings':
        new.pop('declined', None)
        new['pain'] = rng.randrange(0, 6)
    elif table == 'sets':
        new['reps'] = rng.choice([0, 5, 12])
    elif table == 'sessions':
        new['pain_during'] = rng.randrange(0, 6)
    elif table == 'stages':
        new['stage'] = 1
    elif table == 'pauses':
        begins = day_of(table, row)
        ends = date.fromisoformat(row['to']).toordinal() + rng.choice([-5, -2, 3, 6])
        new['to'] = day_text(max(begins, ends))
    elif table == 'visits':
        new['impulses'] = rng.choice([1000, 1800])
    elif table == 'flags':
        new['note'] = 'gone'
        new.pop('cleared_on', None)
    elif table == 'outcomes':
        new['value'] = 1
    elif table == 'put_aside':
        new[day_column(table)] = day_text(day_of(table, row) + 1)
    return new


def withdrawal(table, row):
    return {column: row[column] for column in ABOUT[table] if column in row} | {'withdrawn': 1}


def correct(rng, folder, table, row, way):
    day = day_of(table, row)
    row.setdefault('id', folder.new_id())
    later = folder.instant(day + rng.choice([0, 1, 4, 9]))
    if way in ('rival', 'rival at the same instant', 'withdraw without a name') and table in OWN_THING:
        way = 'replace'
    if way == 'withdraw' or way == 'withdraw without a name':
        new = withdrawal(table, row)
    elif way == 'move' and table == 'mornings':
        new = changed(rng, table, row)
        if len(folder.complaints) > 1 and rng.random() < 0.8:
            new['complaint'] = rng.choice(folder.complaints)
            folder.features.add('correction: move to another complaint')
        else:
            new['day'] = day_text(day + 1)
    else:
        new = changed(rng, table, row)
    new['id'] = folder.new_id()
    if way == 'replace with an earlier clock':
        new['recorded_at'] = folder.instant(day - 3)
    elif way == 'rival at the same instant' and 'recorded_at' in row:
        new['recorded_at'] = row['recorded_at']
    elif way != 'replace from paper':
        new['recorded_at'] = later
    if way not in ('rival', 'rival at the same instant', 'withdraw without a name'):
        new['replaces'] = row['id']
    folder.rows[table].append(new)
    folder.features.add(f'correction: {way}')
    folder.features.add(f'corrected in {table}')
    return new


def corrections(rng, folder, share):
    for table in ABOUT:
        for row in list(folder.rows[table]):
            if rng.random() >= (max(share, 0.6) if table in RARE and share else share):
                continue
            way = rng.choice(WAYS)
            if way == 'twice':
                row = correct(rng, folder, table, row, 'replace')
                correct(rng, folder, table, row, rng.choice(['replace', 'withdraw', 'replace from paper']))
                folder.features.add('correction: twice')
            elif way == 'withdraw and write again':
                gone = correct(rng, folder, table, row, 'withdraw')
                again = changed(rng, table, row)
                again |= {'id': folder.new_id(), 'recorded_at': folder.instant(day_of(table, row) + rng.choice([1, 5, 9])),
                          'replaces': gone['id']}
                folder.rows[table].append(again)
                folder.features.add(f'correction: {way}')
            else:
                correct(rng, folder, table, row, way)
