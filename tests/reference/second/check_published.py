#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Holds this implementation against the published values in tests/data/reference: check_published.py"""

import csv
import sys
import tempfile
from pathlib import Path

from invented.folder import COLUMNS, day_text
from measure import measure
from measures.load import strongest
from measures.statistics import chart, kendall, trend, wilson
from tables import read_day

REFERENCE = Path(__file__).resolve().parents[2] / 'data' / 'reference'
START = read_day('2026-03-02')


def read(name):
    with (REFERENCE / name).open(encoding='utf-8') as file:
        return list(csv.DictReader(line for line in file if not line.startswith('#')))


def chart_of_flow_rates():
    centre, spread, lower, upper = chart([(int(row['batch']), float(row['flowrate'])) for row in read('individuals_chart.csv')])
    yield 'mean', centre, 50.81, 0.005
    yield 'mean range', spread, 1.8778, 0.00005
    yield 'lower', lower, 45.8159, 0.0005  # the handbook computes with rounded values
    yield 'upper', upper, 55.8041, 0.0005


def wilson_intervals():
    for row in read('wilson.csv'):
        for end, value in zip(('lower', 'upper'), wilson(int(row['r']), int(row['n']))):
            yield f'{row["r"]} of {row["n"]}, {end}', value, float(row[end]), 0.00005


def kendall_statistics():
    for row in read('kendall.csv'):
        if len(set(row['times'].split())) < len(row['times'].split()):
            continue  # weeks never repeat, so this implementation knows no ties in time
        s, variance = kendall([float(value) for value in row['values'].split()])
        yield f'{row["case"]} S', s, float(row['s']), 0
        yield f'{row["case"]} var(S)', variance, float(row['var_s']), 0.00005


def sen_slope():
    rows = read('sen.csv')
    line = trend([float(row['x']) for row in rows], [float(row['y']) for row in rows], confidence=0.93)
    yield 'slope', line['slopePerWeek'], 4, 0
    yield 'lower', line['lower'], 3.71, 0.005
    yield 'upper', line['upper'], 4.38, 0.005


def epley():
    yield '100 kg x 10', strongest([(100, 10)]), 133.33, 0.005


def programme_rows(programme):
    """Tables of a plan of the stages one after the other, every prescribed set done; and its last day."""
    plan, stages, sets, day = [], [], [], START
    items = range(int(programme[0]['exercises']))
    for row in programme:
        slots = ['a', 'b', 'c'][:int(row['slots_per_day'])] if row['rrule'] else ['day']
        cells = {'stage': row['stage'], 'sets': row['sets'], 'reps': row['reps'], 'up_s': row['up_s'],
                 'pause_s': row['pause_s'], 'down_s': row['down_s'], 'rrule': row['rrule'],
                 'slots': ' '.join(slots) if row['rrule'] else '', 'per_week': row['per_week'],
                 'start': day_text(START), 'side': 'left', 'rests_after_visit': 0}
        plan += [{'item': f'i{item}', 'exercise': 'x'} | cells for item in items]
        stages += [{'day': day_text(day), 'item': f'i{item}', 'stage': row['stage']} for item in items]
        last = day + 7 * int(row['weeks'])
        step = 2 if 'INTERVAL=2' in row['rrule'] else 1
        sets += [{'day': day_text(d), 'slot': slot, 'item': f'i{item}', 'set': number + 1, 'reps': row['reps']}
                 for d in range(day, last) if row['per_week'] or (d - START) % step == 0
                 for slot in slots for item in items for number in range(int(row['sets']))]
        day = last
    return {'plan': sorted(plan, key=lambda row: row['item']), 'stages': stages, 'sets': sets}, day - 1


def programmes():
    found = {}
    for row in read('programmes.csv'):
        found.setdefault(row['programme'], []).append(row)
    for name, rows in found.items():
        tables, last = programme_rows(rows)
        with tempfile.TemporaryDirectory() as folder:
            for table, lines in tables.items():
                with (Path(folder) / f'{table}.csv').open('w', encoding='utf-8', newline='') as file:
                    writer = csv.DictWriter(file, COLUMNS[table].split(','), restval='', lineterminator='\r\n')
                    writer.writeheader()
                    writer.writerows(lines)
            items = measure(folder, last)['complaints'][0]['items']
        yield f'{name} sets', sum(item['adherence']['setsDone'] for item in items), sum(int(r['sets_total']) for r in rows), 0
        yield f'{name} repetitions', sum(item['adherence']['volumeDone'] for item in items), sum(int(r['reps_total']) for r in rows), 0


CHECKS = {
    'NIST/SEMATECH 6.3.2.2': chart_of_flow_rates, 'Newcombe 1998, Table I': wilson_intervals,
    'Gilbert 1987; Van Belle & Hughes 1984': kendall_statistics, 'Sen 1968': sen_slope, 'Epley 1985': epley,
    'published programmes': programmes,
}


def main():
    passed = failed = 0
    for source, check in CHECKS.items():
        for name, value, published, within in check():
            if abs(value - published) <= within + 1e-9:
                passed += 1
            else:
                failed += 1
                print(f'{source}, {name}: here {value}, published {published}')
    print(f'{passed} passed, {failed} failed')
    return 1 if failed or not passed else 0


if __name__ == '__main__':
    sys.exit(main())
