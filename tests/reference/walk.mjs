// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Walks one resource node by node and holds each against base R4: names, numbers and
// types of elements, primitives, invariants, required bindings, codes.

import { elementAt, elementsOf, expansionOf, fhirpath, isPrimitive, isResource, patternOf, r4, shapeOf } from './definitions.mjs';
import { primitiveProblem } from './primitives.mjs';
import { codingProblem, unitProblem } from './terminology.mjs';

const compiled = new Map();

/** Invariants of R4 that answer nothing where they do not apply. */
const MAY_BE_SILENT = new Set(['ref-1']);

/** Whether the answer is yes; no answer is none, so that `a implies b` without a b is broken. */
function holds({ key: name, expression }, type, node, resource) {
    const key = `${type} ${expression}`;
    if (!compiled.has(key)) {
        const what = isResource(type) ? expression : { base: type, expression };
        compiled.set(key, fhirpath.compile(what, r4, { traceFn: () => {} }));
    }
    const answer = compiled.get(key)(node, { resource, rootResource: resource });
    return answer.length === 0 ? MAY_BE_SILENT.has(name) : answer.every((one) => one === true);
}

/** Invariants whose regular expressions JavaScript does not read: the same ones, written for it. */
const REWRITTEN = {
    'eld-16': ({ sliceName }) => sliceName === undefined || /^[a-zA-Z0-9/\-_[\]@]+$/.test(sliceName),
    'eld-19': ({ path }) => /^[^\s.,:;'"/|?!@#$%&*()[\]{}]{1,64}(\.[^\s.,:;'"/|?!@#$%&*()[\]{}]{1,64}(\[x\])?(:[^\s.]+)?)*$/.test(path),
    // The same sentence without a walk through all children: an object of at least one part.
    'ele-1': (node) => typeof node !== 'object' || Object.keys(node).some((name) => name !== 'id'),
};

/** How \a node, a \a type inside \a resource, breaks an invariant; undefined if it does not.
 * One that cannot be evaluated, because a value has the wrong type, is broken. */
export function invariantProblem(constraint, type, node, resource) {
    const { key, human } = constraint;
    try {
        const good = REWRITTEN[key] ? REWRITTEN[key](node) : holds(constraint, type, node, resource);
        return good ? undefined : `${key}: ${human}`;
    } catch (error) {
        return `${key} could not be evaluated: ${error.message}`;
    }
}

/** Of an element these look beyond it, so their answer is not the node's alone. */
const LOOKS_AROUND = /%resource|%rootResource|%context|resolve\(/;

const constraintsOf = (element, type) => {
    const all = new Map();
    for (const one of [...(elementAt(type)?.constraint ?? []), ...(element.constraint ?? [])]) {
        if (one.severity === 'error' && one.expression)
            all.set(one.key, one);
    }
    return [...all.values()];
};
const constraintLists = new Map();

function checkInvariants(element, type, node, resource, said) {
    const key = `${element.path} ${type}`;
    if (!constraintLists.has(key))
        constraintLists.set(key, constraintsOf(element, type));
    for (const one of constraintLists.get(key)) {
        const problem = invariantProblem(one, isPrimitive(type) ? element.path : type, node, resource);
        if (problem)
            said('', problem);
    }
}

function bindingProblem(element, type, node) {
    if (element.binding?.strength !== 'required' || !element.binding.valueSet)
        return undefined;
    const allowed = expansionOf(element.binding.valueSet);
    if (!allowed)
        return undefined;
    const name = element.binding.valueSet.split('|')[0];
    if (isPrimitive(type))
        return [...allowed].some((one) => one.endsWith(`|${node}`)) ? undefined : `${node} is no code of ${name}`;
    const codings = type === 'CodeableConcept' ? (node.coding ?? []) : [node];
    return codings.some((one) => allowed.has(`${one.system}|${one.code}`)) ? undefined : `no coding is in ${name}`;
}

/** Problems of a data type, which depend on nothing around it, are kept: a diary repeats itself. */
const remembered = new Map();
const MOST_REMEMBERED = 100_000;

function checkKept(element, type, node, resource, said) {
    const key = `${element.path} ${type} ${JSON.stringify(node)}`;
    let problems = remembered.get(key);
    if (!problems) {
        problems = [];
        checkNode(element, type, node, resource, (at, message) => problems.push([at, message]));
        if (remembered.size >= MOST_REMEMBERED)
            remembered.clear();
        remembered.set(key, problems);
    }
    for (const [at, message] of problems)
        said(at, message);
}

const keepable = new Map();

/** Whether nothing in a \a type asks about what is around it. */
function isKeepable(type) {
    if (!keepable.has(type)) {
        keepable.set(type, true); // a type that holds itself
        const own = (elementAt(type)?.constraint ?? []).every((one) => !LOOKS_AROUND.test(one.expression ?? ''));
        const parts = [...(shapeOf(type)?.values() ?? [])].every((part) => !isResource(part.type) && part.type !== 'Resource'
            && (part.element.constraint ?? []).every((one) => !LOOKS_AROUND.test(one.expression ?? '')));
        keepable.set(type, own && parts && !type.includes('.') && !isResource(type));
    }
    return keepable.get(type);
}

function checkValue(element, type, value, resource, said) {
    if (isPrimitive(type)) {
        const problem = type === 'xhtml' ? undefined : primitiveProblem(type, value);
        if (problem)
            return said('', problem);
        const unbound = bindingProblem(element, type, value);
        if (unbound)
            said('', unbound);
        return checkInvariants(element, type, value, resource, said);
    }
    if (value === null || typeof value !== 'object' || Array.isArray(value))
        return said('', `is no ${type}`);
    if (type === 'Resource' || isResource(type))
        return checkResource(value, said);
    return isKeepable(type) ? checkKept(element, type, value, resource, said) : checkNode(element, type, value, resource, said);
}

function checkNode(element, type, node, resource, said) {
    checkParts(type, node, resource, said);
    checkInvariants(element, type, node, resource, said);
    const problem = bindingProblem(element, type, node)
        ?? (type === 'Coding' ? codingProblem(node) : ['Quantity', 'Age', 'Duration'].includes(type) ? unitProblem(node) : undefined);
    if (problem)
        said('', problem);
}

const maximum = (element) => (element.max === '*' ? Infinity : Number(element.max));

function checkParts(type, node, resource, said) {
    const shape = shapeOf(type);
    const counts = new Map();
    for (const [name, value] of Object.entries(node)) {
        if (name === 'resourceType' && isResource(type))
            continue;
        const part = shape.get(name.replace(/^_/, ''));
        if (!part || (name.startsWith('_') && !isPrimitive(part.type))) {
            said(`/${name}`, `${type} has no element of this name`);
            continue;
        }
        const isList = (part.element.base?.max ?? part.element.max) !== '1';
        if (isList !== Array.isArray(value)) {
            said(`/${name}`, isList ? 'is no list' : 'is a list');
            continue;
        }
        const values = isList ? value : [value];
        if (values.length === 0)
            said(`/${name}`, 'is an empty list');
        counts.set(part.element.path, (counts.get(part.element.path) ?? 0) + (name.startsWith('_') ? 0 : values.length));
        values.forEach((one, i) => checkValue(name.startsWith('_') ? elementAt('Element') : part.element,
            name.startsWith('_') ? 'Element' : part.type, one, resource,
            (at, message) => said(`/${name}${isList ? `/${i}` : ''}${at}`, message)));
    }
    for (const element of elementsOf(type)) {
        const count = counts.get(element.path) ?? 0;
        const name = element.path.slice(element.path.lastIndexOf('.') + 1);
        if (count < element.min)
            said('', `${name} is missing`);
        if (count > maximum(element))
            said('', `${name} stands ${count} times, at most ${element.max} allowed`);
    }
}

/** Calls \a said(pointer, message) for each breach of base R4 in \a resource, resources inside it included. */
export function checkResource(resource, said) {
    const type = resource?.resourceType;
    if (!isResource(type))
        return said('/resourceType', `${type} is no resource of R4`);
    if (resource.id !== undefined && !patternOf('id').test(resource.id))
        said('/id', `${resource.id} is no id`);
    checkParts(type, resource, resource, said);
    checkInvariants(elementAt(type), type, resource, resource, said);
    return undefined;
}
