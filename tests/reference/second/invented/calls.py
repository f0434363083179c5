# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Invented complaints with high pains of the last days, of which some call for contact and others do not."""

from .folder import day_text


def calls(rng, folder, complaint, last):
    first = last - 12
    folder.rows['complaints'].append({'complaint': complaint, 'region': 'region', 'side': '', 'question': 'Worst pain last night',
                                      'first_assessment_pain': rng.choice(['', 8, 8]), 'started': day_text(first)})
    folder.rows['settings'] += [{'complaint': complaint, 'key': key, 'value': value}
                                for key, value in (('contact_level', 8), ('contact_rise', 3), ('authority', 'clinic'))]
    folder.rows['plan'].append({'item': f'{complaint}-a', 'exercise': 'lift', 'side': 'left', 'stage': 1, 'sets': 1, 'reps': 5,
                                'rrule': 'FREQ=DAILY', 'slots': 'morning', 'start': day_text(first), 'rests_after_visit': 0,
                                'complaint': complaint})
    for day in range(last - 5, last + 2):
        high = day >= last - 3
        if rng.random() < (0.9 if high else 0.6):
            folder.add('mornings', day, complaint=complaint, pain=rng.choice([1, 8, 8, 9, 10] if high else [1, 2]))
        pains = [rng.choice([None, 3, 8, 9, 10]) for _ in range(2)]
        if high and rng.random() < 0.7 and pains != [None, None]:
            folder.add('sessions', day, complaint=complaint, slot='morning', pain_during=pains[0], pain_after=pains[1])
    folder.features.add('complaint with high pains of late')
