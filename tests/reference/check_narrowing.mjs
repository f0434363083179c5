// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Whether each differential narrows its base: its elements are elements of R4, in the order
// of R4, after their parent, as few or fewer, and of types that R4 allows there.

import { readdirSync, readFileSync } from 'node:fs';
import { elementsOf, shapeOf } from './definitions.mjs';

const folder = new URL('../../assets/fhir/', import.meta.url);
const capital = (text) => text[0].toUpperCase() + text.slice(1);
const lastOf = (path) => path.slice(path.lastIndexOf('.') + 1);
const most = (max) => (max === '*' ? Infinity : Number(max));

/** The type of what stands at \a id, or undefined where R4 has nothing there. */
function typeAt(id, byId) {
    const segments = id.split('.');
    return segments.slice(1).reduce((type, segment, i) => {
        const name = segment.split(':')[0];
        const chosen = byId.get(segments.slice(0, i + 2).join('.'))?.type?.[0].code;
        return shapeOf(type)?.get(name.endsWith('[x]') ? name.slice(0, -3) + capital(chosen ?? 'none') : name)?.type;
    }, segments[0]);
}

function* problemsOf(elements) {
    const byId = new Map(elements.map((one) => [one.id, one]));
    const reached = new Map();
    if (byId.size !== elements.length)
        yield 'an id stands twice';
    for (const one of elements.slice(1)) {
        const parent = one.id.slice(0, one.id.lastIndexOf('.'));
        const type = typeAt(parent, byId);
        const siblings = type ? elementsOf(type) : [];
        const at = siblings.findIndex((base) => lastOf(base.path) === lastOf(one.path));
        if (at < 0) {
            yield `${one.id} is no element of ${type ?? 'anything'}`;
            continue;
        }
        if ((reached.get(parent) ?? 0) > at)
            yield `${one.id} stands after what R4 has behind it`;
        reached.set(parent, at);
        const base = siblings[at];
        if (one.max !== undefined && most(one.max) > most(base.max))
            yield `${one.id} may stand ${one.max} times, in R4 ${base.max}`;
        if (!one.sliceName && one.min < base.min)
            yield `${one.id} is needed ${one.min} times, in R4 ${base.min}`;
        if (one.max === '0' && base.min > 0)
            yield `${one.id} is closed and R4 needs it`;
        for (const { code } of one.type ?? []) {
            if (!base.type.some((allowed) => allowed.code === code))
                yield `${one.id} is a ${code}, which R4 does not allow`;
        }
    }
}

const names = readdirSync(folder).filter((name) => name.startsWith('StructureDefinition-'));
let failed = 0;
for (const name of names) {
    const problems = [...problemsOf(JSON.parse(readFileSync(new URL(name, folder), 'utf8')).differential.element)];
    failed += problems.length ? 1 : 0;
    problems.forEach((problem) => console.log(`${name} ${problem}`));
}
console.log(`narrowing: ${names.length - failed} passed, ${failed} failed`);
process.exit(failed || names.length === 0 ? 1 : 0);
