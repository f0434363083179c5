// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// The two extensions: what an entry says that R4 has no element for, and a stage of a plan.

import { choicesOf } from './codes.mjs';
import { binding, element, invariant, never, once, optional, quantity, slicing } from './differential.mjs';
import { dashed, itemFields, kinds, stageFields } from './kinds.mjs';
import { ENTRY, PLAN_STAGE } from './names.mjs';

const FARTHEST = 14 * 60;

/** What every entry may say of itself beside its fields. */
export const ofEveryEntry = {
    author: { type: 'code', choices: 'author' },
    day: { type: 'date' },
    recorded: { type: 'instant' },
    offset: {
        type: 'integer',
        constraint: [invariant('offset', 'Minutes from UTC, only where R4 cannot write them', `value > ${FARTHEST} or value < -${FARTHEST}`)],
    },
    replaces: { type: 'string' },
    withdrawn: { type: 'integer', only: 1 },
};

/** Whether the extension may carry a field, all of it or the one value that has no core element. */
export const isSaid = (field) => !field.at || field.also !== undefined;
export const saidField = (name, field) => ({ ...field, choices: field.choices && choicesOf[name], only: field.also });

/** Field name with dashes -> the fields of that name in any kind that stand in the extension. */
function fieldsByName(sets) {
    const byName = new Map();
    for (const fields of sets) {
        for (const [name, field] of Object.entries(fields)) {
            if (isSaid(field))
                byName.set(dashed(name), [...(byName.get(dashed(name)) ?? []), saidField(name, field)]);
        }
    }
    return new Map([...byName].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The value of the nested extension at \a id as \a field, or as any of \a fields, has it. */
export function valueElements(id, fields) {
    const types = [...new Set(fields.map((field) => field.type))];
    const [field] = fields;
    if (types.length > 1)
        return [element(`${id}.value[x]`, { ...once, type: types.map((code) => ({ code })) })];
    if (field.type === 'Quantity')
        return quantity(`${id}.value[x]`, field.unit, once);
    return [element(`${id}.value[x]`, {
        ...once, type: [{ code: field.type }], ...(field.choices ? binding(field.choices) : {}),
        ...(field.only !== undefined ? { fixedInteger: field.only } : {}),
    })];
}

function nested(name, fields, rules) {
    const id = `Extension.extension:${name}`;
    const { constraint } = fields[0];
    return [
        element(id, { ...rules, ...(constraint ? { constraint } : {}) }),
        element(`${id}.extension`, never),
        element(`${id}.url`, { ...once, fixedUri: name }),
        ...valueElements(id, fields),
    ];
}

function extension(name, title, description, address, contexts, parts) {
    return {
        name, title, description,
        rest: {
            kind: 'complex-type', type: 'Extension', address, context: contexts.map((expression) => ({ type: 'element', expression })),
            elements: [
                element('Extension', { short: title, definition: description }),
                element('Extension.extension', { ...slicing('value', 'url'), min: 1 }),
                ...parts,
                element('Extension.url', { fixedUri: address }),
                element('Extension.value[x]', never),
            ],
        },
    };
}

export function entryExtension() {
    const contexts = [...new Set(Object.values(kinds).map((kind) => kind.resource))];
    return extension('entry', 'Entry', 'Who stated an entry of a diary, and what it says that R4 has no element for.', ENTRY, contexts, [
        ...Object.entries(ofEveryEntry).flatMap(([name, field]) => nested(name, [field], name === 'author' ? once : optional)),
        ...[...fieldsByName(Object.values(kinds).map((kind) => kind.fields))].flatMap(([name, fields]) => nested(name, fields, optional)),
    ]);
}

/** What an activity says of its exercise stands with the first stage only, its item with each. */
export function planStageExtension() {
    const always = ['item', 'stage', 'sets'];
    return extension('plan-stage', 'Stage of a plan', 'The exercise, or one stage of it, that an activity of a plan is.', PLAN_STAGE,
        ['CarePlan.activity.detail'],
        [...fieldsByName([itemFields, stageFields])].flatMap(([name, fields]) => nested(name, fields, always.includes(name) ? once : optional)));
}
