// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Good files, written here by hand from what the profiles are meant to say and by no
// program of ours: what the seeded faults break. They hold every kind of entry, every field,
// a correction, withdrawals and an entry from paper.

import { addressFor, addressOf } from './addresses.mjs';
import { ABSENT, codeSystem, ENTRY, identifierSystem, PAIN, PLAN_STAGE, profile, UCUM, VERIFICATION } from './names.mjs';
import { inOrder } from './order.mjs';

const concept = (system, code) => ({ coding: [{ system: codeSystem(system), code }] });
const quantity = (value, unit) => ({ value, unit, system: UCUM, code: unit });
const component = (code, value, unit) => ({ code, valueQuantity: quantity(value, unit) });
const measured = (code) => concept('measurement', code);
const logical = (type, name, value) => ({ type, identifier: { system: identifierSystem(name), value } });
const complaintOf = (key) => logical('Condition', 'complaint', key);
const nested = (url, type, value) => ({ url, [`value${type}`]: value });

const REF = 'P-0417';
const PATIENT = addressFor('patient', REF);
const subject = { reference: PATIENT };

/** One entry: its id, day, kind and author, then what stands in core elements and in the extension. */
function entry(id, kind, resourceType, author, core, says = [], more = []) {
    const { status, ...rest } = core;
    return {
        id, kind,
        resource: {
            resourceType, meta: { profile: [profile(kind)] },
            extension: [{ url: ENTRY, extension: [nested('author', 'Code', author), ...says] }],
            identifier: [{ system: identifierSystem('entry'), value: id }, ...more],
            ...(status ? { status } : {}), subject, ...rest,
        },
    };
}

const basic = (id, kind, author, day, says) => entry(id, kind, 'Basic', author, { code: concept('kind', kind) },
    [nested('day', 'Date', day), nested('recorded', 'Instant', `${day}T19:20:00.125+01:00`), ...says]);

const observation = (id, kind, day, code, rest, says = []) => entry(id, kind, 'Observation', 'patient', {
    status: 'final', category: [concept('kind', kind)], code, effectiveDateTime: day, issued: `${day}T07:14:05+01:00`, ...rest,
}, says);

const pain = { coding: [PAIN] };
const painOf = (when) => ({ coding: [{ system: codeSystem('measurement'), code: when }, PAIN] });
const heel = [complaintOf('main')];

function stage(repeat, says, code, description) {
    return {
        detail: {
            extension: [{ url: PLAN_STAGE, extension: says }],
            ...(code ? { code: { text: code } } : {}), status: 'scheduled',
            scheduledTiming: { repeat: { boundsPeriod: { start: '2026-03-02', end: '2026-05-24' }, ...repeat } },
            ...(description ? { description } : {}),
        },
    };
}

const activity = [
    stage({ frequency: 2, period: 1, periodUnit: 'd' }, [
        nested('item', 'String', 'calf'), nested('loads', 'Integer', 1), nested('rests-after-visit', 'Integer', 1), nested('side', 'Code', 'left'),
        nested('sets', 'Quantity', quantity(3, '{sets}')), nested('reps', 'Quantity', quantity(15, '{repetitions}')), nested('body-share', 'Decimal', 0.5),
        nested('slots', 'String', 'morning evening'), nested('stage', 'Integer', 1), nested('up-s', 'Quantity', quantity(3, 's')),
    ], 'Calf raise, knee straight', 'Heel down slowly'),
    stage({ frequency: 3, period: 1, periodUnit: 'wk', dayOfWeek: ['mon', 'wed', 'fri'] }, [
        nested('item', 'String', 'calf'), nested('load-kg', 'Quantity', quantity(7.5, 'kg')), nested('reps', 'Quantity', quantity(12, '{repetitions}')),
        nested('sets', 'Quantity', quantity(3, '{sets}')), nested('slots', 'String', 'evening'), nested('stage', 'Integer', 2),
        nested('min-days', 'Integer', 14), nested('easier-sets', 'Quantity', quantity(2, '{sets}')),
    ]),
];

const plan = (id, day, number, status, replaces) => entry(id, 'plan', 'CarePlan', 'clinic', {
    status, intent: 'plan', category: [concept('kind', 'plan')], period: { start: day }, created: `${day}T09:00:00+01:00`,
    author: { display: 'A clinician' }, addresses: [complaintOf('main')], ...(replaces ? { replaces: [replaces] } : {}), activity,
}, [
    nested('number', 'Integer', number), nested('after-limit', 'Decimal', 5), nested('asks', 'String', 'stiffness during'),
    nested('authority', 'Code', 'clinic'), nested('birth-year', 'Integer', 1961), nested('review-day', 'Date', '2026-06-01'),
    nested('step-adherence', 'Decimal', 0.8),
], [{ system: identifierSystem('plan'), value: 'plan-1' }]);

const note = (id, day, kind, author, text, rest = {}) => entry(id, 'note', 'Communication', author, {
    status: 'completed', category: [concept('kind', 'note'), concept('note-kind', kind)], about: [complaintOf('main')],
    sent: `${day}T18:00:00+01:00`, ...(text ? { payload: [{ contentString: text }] } : {}), ...rest,
}, [nested('day', 'Date', day), nested('item', 'String', 'calf')]);

const clinical = [
    entry('complaint-1', 'complaint', 'Condition', 'clinic', {
        category: [concept('kind', 'complaint')], code: { text: 'Heel, under' }, recordedDate: '2026-03-01T09:00:00+01:00',
    }, [
        nested('day', 'Date', '2026-03-01'), nested('check', 'String', 'FREQ=DAILY'), nested('first-assessment-pain', 'Quantity', quantity(6.5, '{score}')),
        nested('place', 'Integer', 1), nested('question', 'String', 'Pain on the first steps'), nested('side', 'Code', 'left'), nested('started', 'Date', '2026-03-01'),
    ], [{ system: identifierSystem('complaint'), value: 'main' }]),
    plan('0195f1c0-0000-7000-8000-000000000001', '2026-03-02', 1, 'revoked'),
    plan('0195f1c0-0000-7000-8000-000000000002', '2026-03-20', 2, 'active', { reference: addressOf('0195f1c0-0000-7000-8000-000000000001') }),
    entry('visit-1', 'visit', 'Procedure', 'clinic', {
        status: 'completed', category: concept('kind', 'visit'), performedDateTime: '2026-03-03', bodySite: [{ text: 'Heel' }],
        performer: [{ actor: { display: 'A clinician' } }], reasonReference: heel,
    }, [
        nested('recorded', 'Instant', '2026-03-03T10:00:00+01:00'), nested('applicator', 'String', 'R15'), nested('area-cm2', 'Quantity', quantity(1.8, 'cm2')),
        nested('bar', 'Quantity', quantity(2.5, 'bar')), nested('consent', 'Integer', 1), nested('hz', 'Quantity', quantity(10, 'Hz')),
        nested('impulses', 'Quantity', quantity(2000, '{impulses}')), nested('next-visit', 'Date', '2026-03-10'),
        nested('pain-during', 'Quantity', quantity(4, '{score}')), nested('told', 'String', 'Rest for two days'),
        nested('warmup-impulses', 'Quantity', quantity(500, '{impulses}')),
    ]),
    note('note-2', '2026-03-06', 'reply', 'clinic', 'Yes, both knees.', { about: [complaintOf('main'), logical('Communication', 'entry', 'note-1')] }),
    basic('stage-1', 'stage', 'clinic', '2026-03-21', [nested('item', 'String', 'calf'), nested('reason', 'String', 'Went well'), nested('stage', 'Integer', 2)]),
    basic('cleared-1', 'cleared', 'clinic', '2026-03-08', [nested('flag', 'String', 'flag-1')]),
    basic('closed-1', 'closed', 'clinic', '2026-05-25', [nested('complaint', 'String', 'main'), nested('end-reason', 'String', 'As agreed')]),
];

/** A withdrawal of \a id, which is not in the file: what it is about, and no more. */
const withdrawing = (id) => [nested('replaces', 'String', id), nested('withdrawn', 'Integer', 1)];
const inError = { status: 'entered-in-error' };

const withdrawnByClinic = [
    entry('complaint-2', 'complaint', 'Condition', 'clinic', {
        verificationStatus: { coding: [{ system: VERIFICATION, code: 'entered-in-error' }] }, category: [concept('kind', 'complaint')],
        recordedDate: '2026-03-01T09:30:00+01:00',
    }, [nested('day', 'Date', '2026-03-01'), ...withdrawing('complaint-0')], [{ system: identifierSystem('complaint'), value: 'other' }]),
    entry('plan-3', 'plan', 'CarePlan', 'clinic', {
        ...inError, intent: 'plan', category: [concept('kind', 'plan')], period: { start: '2026-03-02' }, created: '2026-03-01T09:31:00+01:00',
        addresses: [complaintOf('other')], replaces: [logical('CarePlan', 'entry', 'plan-0')],
    }, [nested('withdrawn', 'Integer', 1)], [{ system: identifierSystem('plan'), value: 'plan-2' }]),
    entry('visit-2', 'visit', 'Procedure', 'clinic', {
        ...inError, category: concept('kind', 'visit'), performedDateTime: '2026-03-05', reasonReference: heel,
    }, [nested('recorded', 'Instant', '2026-03-05T10:00:00+01:00'), ...withdrawing('visit-0')]),
    basic('closed-2', 'closed', 'clinic', '2026-05-24', [nested('complaint', 'String', 'other'), ...withdrawing('closed-0')]),
];
const withdrawnByPatient = [
    observation('check-5', 'check', '2026-03-08', pain, { ...inError, focus: heel }, withdrawing('check-0')),
    observation('set-3', 'set', '2026-03-08', measured('repetitions'), inError,
        [nested('item', 'String', 'calf'), ...withdrawing('set-0'), nested('set', 'Integer', 1), nested('slot', 'String', 'evening')]),
    observation('flag-3', 'flag', '2026-03-08', measured('sign'), inError, withdrawing('flag-0')),
    basic('unusual-2', 'unusual', 'patient', '2026-03-08', withdrawing('unusual-0')),
    basic('setting-2', 'setting', 'patient', '2026-03-08', [nested('key', 'Code', 'time_zone'), ...withdrawing('setting-0')]),
];

const amended = observation('0195f1c0-0000-7000-8000-000000000011', 'check', '2026-03-04', pain, { focus: heel, valueQuantity: quantity(3, '{score}') });
amended.resource.status = 'amended';
const fromPaper = observation('paper-1', 'set', '2026-03-05', measured('repetitions'), { valueQuantity: quantity(0, '{repetitions}') },
    [nested('item', 'String', 'calf'), nested('set', 'Integer', 1), nested('slot', 'String', 'evening')]);
delete fromPaper.resource.issued;
const farAway = observation('far-1', 'flag', '2026-03-07', measured('sign'), { valueString: 'numbness', note: [{ text: 'Two toes' }] },
    [nested('offset', 'Integer', 845), nested('told', 'Code', 'yes')]);
farAway.resource.issued = '2026-03-07T05:10:00Z';
const withdrawnOutcome = observation('outcome-4', 'outcome', '2026-04-01', concept('kind', 'outcome'), { ...inError, focus: heel }, withdrawing('outcome-0'));
const withdrawnNote = entry('note-4', 'note', 'Communication', 'patient', {
    ...inError, category: [concept('kind', 'note')], about: [complaintOf('main')], sent: '2026-03-09T18:00:00+01:00',
}, [nested('day', 'Date', '2026-03-09'), ...withdrawing('note-3')]);
const notDeclined = observation('check-4', 'check', '2026-03-06', pain, { focus: heel, component: [component(measured('stiffness'), 0, 'min')] },
    [nested('declined', 'Integer', 0)]);

const stated = [
    observation('0195f1c0-0000-7000-8000-000000000010', 'check', '2026-03-04', pain,
        { focus: heel, valueQuantity: quantity(4, '{score}'), component: [component(measured('stiffness'), 10, 'min')] }),
    amended,
    observation('check-3', 'check', '2026-03-05', pain, { focus: heel, dataAbsentReason: { coding: [{ system: ABSENT, code: 'asked-declined' }] } }),
    observation('set-1', 'set', '2026-03-04', measured('repetitions'), {
        valueQuantity: quantity(15, '{repetitions}'),
        component: [component(measured('hold'), 5, 's'), component(measured('load'), 7.5, 'kg'), component(measured('spare'), 1, '{repetitions}')],
    }, [nested('how', 'Code', 'tick'), nested('item', 'String', 'calf'), nested('set', 'Integer', 1), nested('slot', 'String', 'morning')]),
    notDeclined, fromPaper,
    observation('session-1', 'session', '2026-03-04', measured('session-pain'), {
        focus: heel, component: [component(painOf('pain-during'), 3, '{score}'), component(painOf('pain-after'), 2, '{score}')],
    }, [nested('slot', 'String', 'morning')]),
    observation('flag-1', 'flag', '2026-03-06', measured('sign'), { valueString: 'numbness' }),
    farAway,
    observation('outcome-1', 'outcome', '2026-03-10', { ...concept('outcome', 'test'), text: 'Heel raises' }, {
        focus: heel, performer: [{ display: 'A clinician' }], valueQuantity: quantity(12, '{count}'), component: [component(pain, 2, '{score}')],
    }, [nested('side', 'Code', 'left')]),
    observation('outcome-2', 'outcome', '2026-03-10', concept('outcome', 'change'), { focus: heel, valueQuantity: { value: -2 } }),
    withdrawnOutcome,
    note('note-1', '2026-03-05', 'question', 'patient', 'Both knees?'), withdrawnNote,
    basic('skip-1', 'skip', 'patient', '2026-03-05', [nested('complaint', 'String', 'main'), nested('reason', 'String', 'ill'), nested('slot', 'String', 'morning')]),
    basic('easier-1', 'easier', 'helper', '2026-03-06', [nested('complaint', 'String', 'main'), nested('slot', 'String', 'morning')]),
    basic('setting-1', 'setting', 'patient', '2026-03-02', [nested('key', 'Code', 'body_mass_kg'), nested('value', 'String', '72.5')]),
    basic('unusual-1', 'unusual', 'patient', '2026-03-08', [nested('text', 'String', 'Walked 20 km')]),
    basic('pause-1', 'pause', 'patient', '2026-04-02', [nested('reason', 'String', 'Away'), nested('to', 'Date', '2026-04-05')]),
    basic('heard-1', 'heard', 'patient', '2026-03-07', [nested('answer', 'Code', 'lighter'), nested('flag', 'String', 'flag-1')]),
    basic('put-aside-1', 'put-aside', 'patient', '2026-05-01', [nested('complaint', 'String', 'main')]),
];

const kept = [
    basic('memo-1', 'memo', 'clinic', '2026-03-03', [nested('next-time', 'String', 'Ask about shoes'), nested('note', 'String', 'Tense'), nested('visit', 'String', 'visit-1')]),
    basic('known-as-1', 'known-as', 'clinic', '2026-03-01', [nested('birth-year', 'Integer', 1961), nested('file-number', 'String', '17'), nested('label', 'String', 'A.')]),
    basic('alias-1', 'alias', 'clinic', '2026-03-02', [nested('ref', 'String', 'P-0418')]),
    basic('set-aside-1', 'set-aside', 'clinic', '2026-03-02', [nested('file', 'String', 'ab12')]),
];

const patient = {
    fullUrl: PATIENT,
    resource: {
        resourceType: 'Patient', meta: { profile: [profile('patient')] }, identifier: [{ system: identifierSystem('person'), value: REF }],
        name: [{ text: 'A. Example' }], birthDate: '1961',
    },
};

function correction(target, old, who, recorded) {
    return {
        fullUrl: addressFor('provenance', target),
        resource: {
            resourceType: 'Provenance', meta: { profile: [profile('correction')] }, target: [{ reference: addressOf(target) }], recorded,
            agent: [{ who }], entity: [{ role: 'revision', what: { reference: addressOf(old) } }],
        },
    };
}

const correctionOfCheck = correction('0195f1c0-0000-7000-8000-000000000011', '0195f1c0-0000-7000-8000-000000000010', subject, '2026-03-04T07:14:05+01:00');

function frontPage(entries, value, timestamp) {
    const byKind = new Map();
    entries.forEach((one) => byKind.set(one.kind, [...(byKind.get(one.kind) ?? []), { reference: addressOf(one.id) }]));
    return {
        fullUrl: addressFor('composition', value),
        resource: {
            resourceType: 'Composition', meta: { profile: [profile('composition')] },
            text: {
                status: 'generated',
                div: `<div xmlns="http://www.w3.org/1999/xhtml"><p>2026-03-01 to 2026-05-25</p><table><tr><th>Entries</th><td>${entries.length}</td></tr></table></div>`,
            },
            status: 'final', type: concept('composition', 'summary'), subject, date: timestamp, author: [subject], title: 'Diary summary',
            section: [...byKind].map(([kind, entry]) => ({ title: kind, entry })),
        },
    };
}

/** A file named \a name of \a entries, with \a corrections. */
function file(name, unordered, corrections) {
    const entries = [...unordered].sort((a, b) => inOrder(a.resource, b.resource));
    const timestamp = '2026-05-25T18:20:00.125Z';
    const value = `${entries.length}-${'0'.repeat(60)}beef`;
    const isDocument = name === 'summary';
    const bundle = {
        resourceType: 'Bundle', meta: { profile: [profile(name)] }, identifier: { system: identifierSystem('bundle'), value },
        type: isDocument ? 'document' : 'collection', timestamp,
        entry: [
            ...(isDocument ? [frontPage(entries, value, timestamp)] : []), patient,
            ...entries.map(({ id, resource }) => ({ fullUrl: addressOf(id), resource })), ...corrections,
        ],
    };
    return structuredClone(bundle);
}

/** Name of a good file -> a fresh copy of it. */
export const goodFiles = {
    summary: () => file('summary', [...clinical, ...withdrawnByClinic, ...stated, ...withdrawnByPatient], [correctionOfCheck]),
    plan: () => file('plan-file', [...clinical, ...withdrawnByClinic], []),
    visit: () => file('visit-file', clinical, []),
    record: () => file('record-file', [...clinical, ...kept], []),
};
