// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// The profile of one kind of entry.

import { binding, coded, element, identifier, invariant, logical, never, once, optional, ours, pain, quantity, slicing, wholeOf } from './differential.mjs';
import { isSaid, ofEveryEntry, saidField, valueElements } from './profile_extensions.mjs';
import { dashed } from './kinds.mjs';
import { ABSENT, ENTRY, identifierSystem, PAIN, PLAN_STAGE, profile, VERIFICATION, codeSystem } from './names.mjs';

const SAID = `extension.where(url = '${ENTRY}').extension`;
const WITHDRAWN = `${SAID}.where(url = 'withdrawn').exists()`;
const COMPLAINT = identifierSystem('complaint');

const either = (words) => words.map((word) => `'${word}'`).join(' | ');

/** The entry extension of \a type, of which only what the kind says may be there. */
function entryElements(type, kind) {
    const own = Object.entries(ofEveryEntry).filter(([one]) => !kind[one]) // a core element has it
        .map(([one, field]) => [one, field, one === 'author' || one === 'day' ? once : optional]);
    const fields = Object.entries(kind.fields).filter(([, field]) => isSaid(field))
        .map(([one, field]) => [dashed(one), saidField(one, field), field.naming ? once : optional]);
    const entry = `${type}.extension:entry`;
    return [
        element(`${type}.extension`, slicing('value', 'url')),
        element(entry, { ...once, type: [{ code: 'Extension', profile: [ENTRY] }] }),
        element(`${entry}.extension`, slicing('value', 'url')),
        ...[...own, ...fields].flatMap(([one, field, rules]) => [
            element(`${entry}.extension:${one}`, rules),
            element(`${entry}.extension:${one}.url`, { ...once, fixedUri: one }),
            ...valueElements(`${entry}.extension:${one}`, [field]),
        ]),
        element(`${entry}.url`, { ...once, fixedUri: ENTRY }),
    ];
}

function componentElements(kind) {
    const fields = Object.values(kind.fields).filter((field) => field.at?.startsWith('component:'));
    return !fields.length ? [] : [
        element('Observation.component', slicing('pattern', 'code')),
        ...fields.flatMap((field) => {
            const name = field.at.split(':')[1];
            const id = `Observation.component:${name}`;
            const code = name === 'pain' ? pain
                : name.startsWith('pain-') ? { patternCodeableConcept: { coding: [{ system: codeSystem('measurement'), code: name }, PAIN] } }
                    : ours('measurement', name);
            return [
                element(id, optional), element(`${id}.extension`, never), element(`${id}.modifierExtension`, never),
                element(`${id}.code`, { ...once, ...code }), ...quantity(`${id}.value[x]`, field.unit, once),
                element(`${id}.dataAbsentReason`, never), element(`${id}.interpretation`, never), element(`${id}.referenceRange`, never),
            ];
        }),
    ];
}

const observed = {
    check: [
        element('Observation.code', { ...once, ...pain }),
        ...logical('Observation.focus', 'Condition', COMPLAINT, once),
        ...quantity('Observation.value[x]', '{score}'),
        element('Observation.dataAbsentReason', coded(ABSENT, 'asked-declined')),
    ],
    set: [element('Observation.code', { ...once, ...ours('measurement', 'repetitions') }), ...quantity('Observation.value[x]', '{repetitions}')],
    session: [
        element('Observation.code', { ...once, ...ours('measurement', 'session-pain') }),
        ...logical('Observation.focus', 'Condition', COMPLAINT, once),
    ],
    flag: [
        element('Observation.code', { ...once, ...ours('measurement', 'sign') }),
        element('Observation.value[x]', { type: [{ code: 'string' }] }),
        element('Observation.note', optional), element('Observation.note.author[x]', never), element('Observation.note.time', never),
    ],
    outcome: [
        element('Observation.code', once),
        element('Observation.code.coding', once),
        ...logical('Observation.focus', 'Condition', COMPLAINT, once),
        element('Observation.value[x]', { type: [{ code: 'Quantity' }] }),
        element('Observation.value[x].value', once), element('Observation.value[x].comparator', never),
        element('Observation.performer', optional), element('Observation.performer.reference', never), element('Observation.performer.display', once),
    ],
};

const outcomeRules = [
    invariant('outcome-code', 'The code is a kind of outcome; of an outcome that was withdrawn, which has none, the kind of entry',
        `code.coding.system = iif(${WITHDRAWN}, '${codeSystem('kind')}', '${codeSystem('outcome')}')`),
    invariant('outcome-unit', 'A unit is one of four, and named by code, system and unit alike',
        "value.unit.exists() implies (value.unit = value.code and value.system = 'http://unitsofmeasure.org' and (value.code in ('{count}' | 's' | 'cm' | 'kg')))"),
    invariant('outcome-code-unit', 'A code or system without a unit', '(value.code.exists() or value.system.exists()) implies value.unit.exists()'),
    invariant('outcome-name', 'An activity and a test have a name', "code.coding.where(code in ('activity' | 'test')).exists() implies code.text.exists()"),
];

const bodies = {
    Observation: (name, kind) => [
        ...identifierElements('Observation', []), element('Observation.status', once),
        element('Observation.category', { ...once, ...ours('kind', name) }),
        ...observed[name], element('Observation.effective[x]', { ...once, type: [{ code: 'dateTime' }] }),
        element('Observation.issued', optional), ...componentElements(kind),
    ],
    Procedure: (name) => [
        ...identifierElements('Procedure', []), element('Procedure.status', once), element('Procedure.category', { ...once, ...ours('kind', name) }),
        element('Procedure.performed[x]', { ...once, type: [{ code: 'dateTime' }] }),
        element('Procedure.bodySite', optional), element('Procedure.bodySite.coding', never), element('Procedure.bodySite.text', once),
        element('Procedure.performer', optional), element('Procedure.performer.function', never),
        element('Procedure.performer.actor.reference', never), element('Procedure.performer.actor.display', once),
        ...logical('Procedure.reasonReference', 'Condition', COMPLAINT, once),
    ],
    CarePlan: (name) => [
        ...identifierElements('CarePlan', [['plan', identifierSystem('plan')]]), element('CarePlan.status', once),
        element('CarePlan.intent', { ...once, fixedCode: 'plan' }), element('CarePlan.category', { ...once, ...ours('kind', name) }),
        element('CarePlan.period', once), element('CarePlan.period.start', once), element('CarePlan.period.end', never),
        element('CarePlan.created', optional), element('CarePlan.author', optional), element('CarePlan.author.reference', never),
        element('CarePlan.author.display', once), ...logical('CarePlan.addresses', 'Condition', COMPLAINT, once),
        element('CarePlan.replaces', optional), ...activityElements(),
    ],
    Condition: (name) => [
        ...identifierElements('Condition', [['complaint', COMPLAINT]]),
        element('Condition.verificationStatus', coded(VERIFICATION, 'entered-in-error')),
        element('Condition.category', { ...once, ...ours('kind', name) }),
        element('Condition.code', optional), element('Condition.code.coding', never), element('Condition.code.text', once),
        element('Condition.recordedDate', optional),
    ],
    Communication: (name) => [
        ...identifierElements('Communication', []), element('Communication.status', once),
        element('Communication.category', { ...slicing('value', 'coding.system'), min: 1, max: '2' }),
        element('Communication.category:kind', { ...once, ...ours('kind', name) }),
        element('Communication.category:kind.coding', once),
        element('Communication.category:kind.coding.system', { ...once, fixedUri: codeSystem('kind') }),
        element('Communication.category:note-kind', { ...optional, ...binding('note-kind') }),
        element('Communication.category:note-kind.coding', once),
        element('Communication.category:note-kind.coding.system', { ...once, fixedUri: codeSystem('note-kind') }),
        element('Communication.about', { ...slicing('value', 'type'), min: 1, max: '2' }),
        ...logical('Communication.about:complaint', 'Condition', COMPLAINT, once),
        ...logical('Communication.about:note', 'Communication', identifierSystem('entry'), optional),
        element('Communication.sent', optional), element('Communication.payload', optional),
        element('Communication.payload.content[x]', { ...once, type: [{ code: 'string' }] }),
    ],
    Basic: (name) => [...identifierElements('Basic', []), element('Basic.code', { ...once, ...ours('kind', name) })],
};

function identifierElements(type, more) {
    return [
        element(`${type}.identifier`, { ...slicing('value', 'system'), min: 1 + more.length, max: String(1 + more.length) }),
        ...identifier(type, 'entry', identifierSystem('entry')), ...more.flatMap(([name, system]) => identifier(type, name, system)),
        element(`${type}.subject`, once), element(`${type}.subject.reference`, once),
    ];
}

function activityElements() {
    const detail = 'CarePlan.activity.detail';
    const repeat = `${detail}.scheduled[x].repeat`;
    return [
        element('CarePlan.activity', {}), element('CarePlan.activity.reference', never), element(detail, once),
        element(`${detail}.extension`, slicing('value', 'url')),
        element(`${detail}.extension:stage`, { ...once, type: [{ code: 'Extension', profile: [PLAN_STAGE] }] }),
        element(`${detail}.extension:stage.url`, { ...once, fixedUri: PLAN_STAGE }),
        element(`${detail}.code`, optional), element(`${detail}.code.coding`, never), element(`${detail}.code.text`, once),
        element(`${detail}.status`, { ...once, fixedCode: 'scheduled' }), element(`${detail}.scheduled[x]`, { ...once, type: [{ code: 'Timing' }] }),
        element(repeat, once), element(`${repeat}.bounds[x]`, { ...once, type: [{ code: 'Period' }] }), element(`${repeat}.bounds[x].start`, once),
        element(`${repeat}.count`, never), element(`${repeat}.frequency`, once), element(`${repeat}.period`, once),
        element(`${repeat}.periodUnit`, once), element(`${repeat}.timeOfDay`, never), element(`${repeat}.when`, never),
        element(`${detail}.description`, optional),
    ];
}

const PART = `extension.where(url = '${PLAN_STAGE}').extension`;

const activityRules = [
    invariant('first-stage', 'The first stage of an exercise names it, and no other does',
        `activity.detail.all(${PART}.where(url = 'stage' and value = 1).exists() = code.exists())`),
    invariant('exercise-once', 'What holds of a whole exercise stands with its first stage',
        `activity.detail.where(code.empty()).all(${PART}.where(url in ('side' | 'loads' | 'rests-after-visit' | 'continues')).empty())`),
    invariant('period-unit', 'A rhythm is of days or weeks', "activity.detail.scheduled.repeat.all(periodUnit = 'd' or periodUnit = 'wk')"),
];

/** Where the field stands, as a FHIRPath. */
function placeOf(resource, name, field) {
    if (!field.at)
        return `${SAID}.where(url = '${dashed(name)}')`;
    if (resource === 'Communication' && field.at === 'category')
        return `category.coding.where(system = '${codeSystem('note-kind')}')`;
    if (resource === 'Communication' && field.at === 'about')
        return "about.where(type = 'Communication')";
    return field.at.split(':')[0];
}

const statuses = {
    Observation: ['final', 'amended', 'entered-in-error'],
    Procedure: ['completed', 'entered-in-error'],
    CarePlan: ['active', 'revoked', 'entered-in-error'],
    Communication: ['completed', 'entered-in-error'],
};

function rulesOf(name, kind) {
    const { resource, fields } = kind;
    const kept = [...Object.keys(ofEveryEntry), ...Object.keys(fields).filter((one) => fields[one].naming).map(dashed)];
    const elsewhere = Object.entries(fields).filter(([, field]) => field.at && !field.naming)
        .map(([one, field]) => placeOf(resource, one, field)).filter((place) => place !== 'code' || resource !== 'Observation');
    const rules = [
        invariant('author-first', 'The author is named first', `${SAID}.first().url = 'author'`),
        invariant('withdrawn-only', 'An entry that withdraws says what it is about and nothing else',
            `${WITHDRAWN} implies (${SAID}.where((url in (${either(kept)})).not()).empty()${[...new Set(elsewhere)].map((place) => ` and ${place}.empty()`).join('')})`),
    ];
    for (const [one, field] of Object.entries(fields)) {
        if (field.needed && !field.naming)
            rules.push(invariant(`needs-${dashed(one)}`, `${one} is needed unless the entry withdraws`, `${WITHDRAWN} or ${placeOf(resource, one, field)}.exists()`));
    }
    if (statuses[resource]) {
        rules.push(invariant('status', 'A status that this kind has', `status in (${either(statuses[resource])})`),
            invariant('withdrawn-status', 'entered-in-error and withdrawn go together', `(status = 'entered-in-error') = ${WITHDRAWN}`));
    }
    if (resource === 'Condition')
        rules.push(invariant('withdrawn-status', 'entered-in-error and withdrawn go together', `verificationStatus.exists() = ${WITHDRAWN}`));
    const recorded = kind.recorded ?? `${SAID}.where(url = 'recorded').value`;
    rules.push(invariant('offset-utc', 'An offset stands beside an instant in UTC',
        `${SAID}.where(url = 'offset').exists() implies ${recorded}.toString().endsWith('Z')`));
    return [...rules, ...(name === 'outcome' ? outcomeRules : name === 'plan' ? activityRules : [])];
}

export function kindProfile(name, kind) {
    const title = name[0].toUpperCase() + name.slice(1).replaceAll('-', ' ');
    return {
        name, title, description: kind.says,
        rest: {
            kind: 'resource', type: kind.resource, address: profile(name),
            elements: wholeOf(kind.resource, name, { short: title, definition: kind.says, constraint: rulesOf(name, kind) },
                [...entryElements(kind.resource, kind), ...bodies[kind.resource](name, kind)]),
        },
    };
}
