// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Holds a resource against the profile that it names: the differentials of assets/fhir.
// Understands what those use: cardinality, fixed and pattern values, types, required
// bindings, invariants, and closed slices told apart by a value or a pattern.

import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { expansionOf, learn, shapeOf } from './definitions.mjs';
import { invariantProblem } from './walk.mjs';

/** Address -> {definition, root of its tree}. */
const profiles = new Map();

/** Makes what a folder defines known; gives the resources. */
export function loadDefinitions(folder) {
    const all = readdirSync(folder).filter((name) => name.endsWith('.json')).map((name) => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')));
    for (const resource of all) {
        if (resource.resourceType !== 'StructureDefinition')
            learn(resource);
        else if (profiles.has(resource.url))
            throw new Error(`two definitions of ${resource.url}`);
        else
            profiles.set(resource.url, { definition: resource, root: treeOf(resource) });
    }
    return all;
}

const leaf = () => ({ rules: {}, parts: new Map(), slices: new Map() });

function treeOf(definition) {
    const root = leaf();
    for (const element of definition.differential.element) {
        let node = root;
        for (const segment of element.id.split('.').slice(1)) {
            const [name, slice] = segment.split(':');
            if (!node.parts.has(name))
                node.parts.set(name, leaf());
            node = node.parts.get(name);
            if (slice && !node.slices.has(slice))
                node.slices.set(slice, leaf());
            node = slice ? node.slices.get(slice) : node;
        }
        node.rules = element;
    }
    for (const { rules } of walkTree(root)) {
        const fixed = Object.keys(rules).find((key) => /^(fixed|pattern)[A-Z]/.test(key));
        if (fixed)
            rules.wanted = { value: rules[fixed], whole: fixed.startsWith('fixed') };
    }
    return root;
}

function* walkTree(node) {
    yield node;
    for (const child of [...node.parts.values(), ...node.slices.values()])
        yield* walkTree(child);
}

/** Whether \a value holds everything that \a pattern does. */
function matches(value, pattern) {
    if (Array.isArray(pattern))
        return Array.isArray(value) && pattern.every((wanted) => value.some((one) => matches(one, wanted)));
    if (pattern && typeof pattern === 'object')
        return value && typeof value === 'object' && Object.entries(pattern).every(([name, wanted]) => matches(value[name], wanted));
    return value === pattern;
}

const asWanted = (value, { value: wanted, whole }) => (whole ? isDeepStrictEqual(value, wanted) : matches(value, wanted));

/** [property, type suffix or "", values] of what \a value says at \a name; a choice may stand in any of its types. */
function valuesAt(value, name) {
    const property = name.endsWith('[x]')
        ? Object.keys(value).find((key) => key.startsWith(name.slice(0, -3)) && /[A-Z]/.test(key[name.length - 3] ?? ''))
        : name;
    const found = property === undefined ? undefined : value[property];
    return { property: property ?? name, isList: Array.isArray(found), values: found === undefined ? [] : Array.isArray(found) ? found : [found] };
}

function checkCount(rules, count, at, said) {
    const name = rules.sliceName ?? rules.path?.split('.').at(-1);
    if (rules.min > count)
        said(at, `the profile asks for ${name}`);
    if (rules.max !== undefined && rules.max !== '*' && count > Number(rules.max))
        said(at, rules.max === '0' ? `the profile has no ${name}` : `the profile has at most ${rules.max} of ${name}`);
}

function isOfSlice(value, slicing, slice) {
    return slicing.discriminator.every(({ path }) => {
        const steps = path.split('.');
        const { rules } = steps.reduce((node, step) => node.parts.get(step), slice);
        const told = steps.reduce((values, step) => values.flatMap((one) => one?.[step] ?? []), [value]);
        return told.some((one) => asWanted(one, rules.wanted));
    });
}

function checkNode(node, type, value, resource, at, said) {
    const { rules } = node;
    if (rules.wanted && !asWanted(value, rules.wanted))
        said(at, `is not ${JSON.stringify(rules.wanted.value)}, which the profile asks for`);
    if (rules.binding?.strength === 'required') {
        const allowed = expansionOf(rules.binding.valueSet);
        const codings = value?.coding ?? [value];
        const has = (one) => (typeof one === 'string' ? [...allowed].some((code) => code.endsWith(`|${one}`)) : allowed.has(`${one.system}|${one.code}`));
        if (!allowed || !codings.some(has))
            said(at, `no code of ${rules.binding.valueSet}`);
    }
    for (const one of rules.constraint ?? []) {
        const problem = invariantProblem(one, type, value, resource);
        if (problem)
            said(at, problem);
    }
    for (const url of rules.type?.[0]?.profile ?? [])
        checkNode(profiles.get(url).root, 'Extension', value, resource, at, said);
    for (const [name, part] of node.parts)
        checkPart(name, part, type, value, resource, at, said);
}

function checkPart(name, part, type, parent, resource, at, said) {
    const { property, isList, values } = valuesAt(parent, name);
    checkCount(part.rules, values.length, `${at}/${property}`, said);
    if (values.length === 0)
        return;
    const inside = shapeOf(type)?.get(property)?.type;
    if (name.endsWith('[x]') && part.rules.type && !part.rules.type.some((one) => property === name.slice(0, -3) + one.code[0].toUpperCase() + one.code.slice(1)))
        said(`${at}/${property}`, `the profile asks for ${part.rules.type.map((one) => one.code).join(' or ')}`);
    const counts = new Map([...part.slices.keys()].map((slice) => [slice, 0]));
    values.forEach((value, i) => {
        const here = `${at}/${property}${isList ? `/${i}` : ''}`;
        checkNode(part, inside, value, resource, here, said);
        if (!part.rules.slicing)
            return;
        const slice = [...part.slices.keys()].find((one) => isOfSlice(value, part.rules.slicing, part.slices.get(one)));
        if (slice === undefined)
            return said(here, 'is none of those that the profile has here');
        counts.set(slice, counts.get(slice) + 1);
        return checkNode(part.slices.get(slice), inside, value, resource, here, said);
    });
    for (const [slice, count] of counts)
        checkCount(part.slices.get(slice).rules, count, `${at}/${property}`, said);
}

/** Calls \a said(pointer, message) for each breach of the profiles that \a resource names;
 * one without a profile of ours is a breach itself. */
export function checkProfile(resource, said) {
    const named = resource.meta?.profile ?? [];
    if (named.length === 0)
        said('/meta', 'names no profile');
    named.forEach((url, i) => {
        const found = profiles.get(url);
        if (!found || found.definition.type !== resource.resourceType)
            said(`/meta/profile/${i}`, `${url} is no profile of a ${resource.resourceType} known here`);
        else
            checkNode(found.root, resource.resourceType, resource, resource, '', said);
    });
}
