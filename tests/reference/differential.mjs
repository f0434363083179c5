// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// How the elements of a profile are written down, in the order that R4 lists them.

import { codeSystem, PAIN, profile, UCUM, valueSet } from './names.mjs';
import { elementsOf } from './definitions.mjs';

/** One element; \a id names slices, as in Observation.component:hold.code. */
export function element(id, rules = {}) {
    const slice = id.split('.').at(-1).split(':')[1];
    return { id, path: id.replace(/:[^.]+/g, ''), ...(slice ? { sliceName: slice } : {}), ...rules };
}

export const slicing = (type, path) => ({ slicing: { discriminator: [{ type, path }], rules: 'closed' } });
export const coded = (system, code) => ({ patternCodeableConcept: { coding: [{ system, code }] } });
export const ours = (system, code) => coded(codeSystem(system), code);
export const pain = { patternCodeableConcept: { coding: [PAIN] } };
export const binding = (name) => ({ binding: { strength: 'required', valueSet: valueSet(name) } });
export const once = { min: 1, max: '1' };
export const optional = { min: 0, max: '1' };
export const never = { max: '0' };

export function invariant(key, human, expression) {
    return { key, severity: 'error', human, expression };
}

/** A Quantity in \a unit at \a id, and the elements that say so. */
export function quantity(id, unit, rules = {}) {
    const inRange = unit === '{score}' ? { constraint: [invariant('score', 'A score is from 0 to 10', 'value >= 0 and value <= 10')] } : {};
    return [
        element(id, { ...rules, type: [{ code: 'Quantity' }], ...inRange }),
        element(`${id}.value`, once),
        element(`${id}.comparator`, never),
        element(`${id}.unit`, { ...once, fixedString: unit }),
        element(`${id}.system`, { ...once, fixedUri: UCUM }),
        element(`${id}.code`, { ...once, fixedCode: unit }),
    ];
}

/** An identifier of ours as a slice \a name of the identifiers of \a type. */
export function identifier(type, name, system) {
    return [
        element(`${type}.identifier:${name}`, once),
        element(`${type}.identifier:${name}.system`, { ...once, fixedUri: system }),
        element(`${type}.identifier:${name}.value`, once),
    ];
}

/** A logical reference at \a id to a \a type named in \a system. */
export function logical(id, type, system, rules) {
    return [
        element(id, rules),
        element(`${id}.type`, { ...once, fixedUri: type }),
        element(`${id}.identifier`, once),
        element(`${id}.identifier.system`, { ...once, fixedUri: system }),
        element(`${id}.identifier.value`, once),
    ];
}

/** \a said in the order of R4, with every element of \a type that it does not name closed:
 * a second place for a fact, or a place nobody reads, is a mistake of the writer. */
export function wholeOf(type, name, root, said) {
    const order = elementsOf(type).map((one) => one.path);
    const all = [
        element(`${type}.meta`, once),
        element(`${type}.meta.profile`, { ...once, fixedCanonical: profile(name) }),
        ...said,
    ];
    const topOf = (one) => one.path.split('.').slice(0, 2).join('.');
    const named = new Set(all.map(topOf));
    const closed = order.filter((path) => !named.has(path)).map((path) => element(path, never));
    return [element(type, root), ...[...all, ...closed].sort((a, b) => order.indexOf(topOf(a)) - order.indexOf(topOf(b)))];
}
