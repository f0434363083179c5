// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Our code systems: what no code of LOINC says, and the words that fields choose from.
// Name -> [title, what it holds, [code, display, definition]...].

import { dashed, kinds, neverInAFile } from './kinds.mjs';

const spoken = (name) => name[0].toUpperCase() + name.slice(1).replaceAll('_', ' ');

export const codeSystems = {
    kind: [
        'Kind of entry', 'What an entry of the diary is about.',
        ...Object.entries(kinds).map(([name, kind]) => [dashed(name), spoken(name), kind.says]),
        ...Object.entries(neverInAFile).map(([name, says]) => [name, spoken(name), says]),
    ],
    measurement: [
        'Measurement', 'What a number or a word of an entry measures.',
        ['repetitions', 'Repetitions', 'Repetitions done in one set; 0 takes the set back.'],
        ['hold', 'Hold', 'How long one repetition was held, in seconds.'],
        ['load', 'Load', 'The outside load that was moved, without the body, in kilograms.'],
        ['spare', 'Spare repetitions', 'How many more repetitions the person felt able to do after the set.'],
        ['stiffness', 'Stiffness', 'How long stiffness lasted after getting up, in minutes.'],
        ['session-pain', 'Pain of a session', 'Pain around one session of exercise; its components tell when.'],
        ['pain-during', 'Pain during', 'The worst pain while exercising, 0 to 10.'],
        ['pain-after', 'Pain after', 'The pain after the session, 0 to 10.'],
        ['sign', 'Warning sign', 'A sign that the person was told to watch for, in the words of the list it was chosen from.'],
    ],
    outcome: [
        'Outcome', 'What kind of result an outcome is.',
        ['activity', 'Activity', 'How well one named activity goes, from 0 (not at all) to 10 (as before).'],
        ['overall', 'Overall', 'How the complaint is overall, from 0 to 100 percent of normal.'],
        ['change', 'Change', 'How much has changed since the start, from -5 (far worse) to 5 (far better).'],
        ['acceptable', 'Acceptable', 'Whether the present state would be acceptable if it stayed: 1 yes, 0 no.'],
        ['test', 'Test', 'A named test with a number and a unit.'],
    ],
    'note-kind': [
        'Kind of note', 'What a note is for.',
        ['question', 'Question', 'The person asks the clinic something.'],
        ['answer', 'Answer', 'The answer of the person to a question about the time since the last visit.'],
        ['note', 'Note', 'A remark of the person.'],
        ['unsure', 'Unsure', 'The person is not sure how an exercise is done.'],
        ['reply', 'Reply', 'The clinic answers.'],
    ],
    composition: ['Composition', 'What a document is.', ['summary', 'Summary', 'The entries of one diary, as they were stated.']],
    author: [
        'Author', 'Who stated an entry.',
        ['patient', 'Patient', 'The person whose diary it is.'],
        ['helper', 'Helper', 'Somebody who writes for the person.'],
        ['clinic', 'Clinic', 'Somebody at the clinic.'],
    ],
    side: [
        'Side', 'Which side of the body.',
        ['left', 'Left', 'The left side.'],
        ['right', 'Right', 'The right side.'],
        ['both', 'Both', 'Both sides.'],
    ],
    how: [
        'How a set was recorded', 'By what act a set came into the diary.',
        ['tick', 'Tick', 'The set was ticked by itself.'],
        ['all', 'All at once', 'All sets of the exercise were ticked at once.'],
        ['timer', 'Timer', 'A timer counted the set.'],
    ],
    told: [
        'Told', 'Whether the clinic was told of a warning sign.',
        ['yes', 'Yes', 'The clinic was told.'],
        ['no', 'No', 'The clinic was not told.'],
    ],
    answer: [
        'Answer to a sign', 'What the clinic said about a warning sign.',
        ['go-on', 'Go on', 'Exercise goes on as before.'],
        ['lighter', 'Lighter', 'Exercise goes on with less.'],
        ['wait', 'Wait', 'Exercise waits.'],
    ],
    authority: [
        'Authority', 'Who may take the next stage when the conditions for it hold.',
        ['off', 'Off', 'No stage is offered.'],
        ['clinic', 'Clinic', 'The clinic decides.'],
        ['patient', 'Patient', 'The person may take it.'],
    ],
    'setting-key': [
        'Setting', 'Which setting of the person.',
        ['day_starts', 'Day starts', 'The time at which a new day of the diary starts, as hh:mm.'],
        ['body_mass_kg', 'Body mass', 'Body mass in kilograms.'],
        ['time_zone', 'Time zone', 'The name of the time zone the person lives in.'],
    ],
};

/** Field with choices -> the value set that lists them. */
export const choicesOf = { side: 'side', how: 'how', told: 'told', answer: 'answer', authority: 'authority', key: 'setting-key' };
/** Every value set of ours: one a code system that is bound somewhere. */
export const bound = [...new Set(['author', 'outcome', 'note-kind', ...Object.values(choicesOf)])];
