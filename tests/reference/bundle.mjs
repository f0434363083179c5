// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// What holds between the resources of one file: addresses, references, the rules of a
// document, corrections.

import { isPrimitive, shapeOf } from './definitions.mjs';
import { checkOrder, isEntry } from './order.mjs';

const URN = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** Every Reference inside \a node with its pointer and the types that R4 lets it lead to. */
function* referencesOf(type, node, at = '') {
    for (const [name, value] of Object.entries(node ?? {})) {
        const part = shapeOf(type)?.get(name);
        if (!part || isPrimitive(part.type) || part.type === 'Resource')
            continue;
        const values = Array.isArray(value) ? value : [value];
        for (const [i, one] of values.entries()) {
            const here = `${at}/${name}${Array.isArray(value) ? `/${i}` : ''}`;
            if (part.type === 'Reference') {
                const targets = part.element.type.find((each) => each.code === 'Reference').targetProfile ?? [];
                yield { value: one, at: here, targets: targets.map((url) => url.split('/').at(-1)) };
            }
            if (one && typeof one === 'object')
                yield* referencesOf(part.type, one, here);
        }
    }
}

function checkReference({ value, targets }, known, said) {
    const leadsTo = value.reference === undefined ? value.type : known.get(value.reference)?.resourceType;
    if (value.reference === undefined && value.identifier === undefined && value.display === undefined)
        said('a reference that says nothing');
    if (value.reference !== undefined && !leadsTo)
        said(`${value.reference} is not in the file`);
    if (value.identifier && !(value.identifier.system && value.identifier.value && value.type))
        said('a logical reference without type, system or value');
    if (leadsTo && value.type !== undefined && value.type !== leadsTo)
        said(`says ${value.type} and leads to ${leadsTo}`);
    if (leadsTo && targets.length && !targets.includes('Resource') && !targets.includes(leadsTo))
        said(`leads to a ${leadsTo}, which R4 does not allow here`);
}

function checkDocument(entries, links, said) {
    const [first] = entries;
    if (first?.resource?.resourceType !== 'Composition')
        return said('/entry/0', 'a document opens with its Composition');
    const reached = new Set();
    const walk = (address) => {
        if (reached.has(address))
            return;
        reached.add(address);
        (links.get(address) ?? []).forEach(walk);
    };
    walk(first.fullUrl);
    entries.forEach(({ fullUrl, resource }, i) => {
        const isOfOne = resource?.resourceType === 'Provenance' && resource.target?.some((target) => reached.has(target.reference));
        if (!reached.has(fullUrl) && !isOfOne)
            said(`/entry/${i}`, 'nothing in the document leads here');
    });
    return undefined;
}

const isWithdrawn = (resource) => resource.status === 'entered-in-error';
const saysReplaces = (resource) => resource.extension?.some((one) => one.extension?.some((two) => two.url === 'replaces'));

/** An Observation is amended exactly where something says that it replaces another. */
function checkAmended(entries, said) {
    const corrected = new Set(entries.flatMap(({ resource }) => (resource?.resourceType === 'Provenance' ? (resource.target ?? []).map((one) => one.reference) : [])));
    entries.forEach(({ fullUrl, resource }, i) => {
        if (resource?.resourceType !== 'Observation' || isWithdrawn(resource))
            return;
        if ((resource.status === 'amended') !== Boolean(corrected.has(fullUrl) || saysReplaces(resource)))
            said(`/entry/${i}/resource/status`, `${resource.status} contradicts what the file says about replacing`);
    });
}

/** The number in the identifier is that of the entries; their sum is for the program to check. */
function checkCount(bundle, entries, said) {
    const own = entries.filter(({ resource }) => isEntry(resource)).length;
    if (bundle.identifier?.value && Number(bundle.identifier.value.split('-')[0]) !== own)
        said('/identifier/value', `the file holds ${own} entries`);
}

/** Calls \a said(pointer, message) for each breach between the resources of \a bundle;
 * \a ofOurs: also of what we promise beyond R4. */
export function checkBundle(bundle, ofOurs, said) {
    const entries = bundle.entry ?? [];
    const known = new Map();
    const links = new Map();
    const identifiers = new Set();
    entries.forEach(({ fullUrl, resource }, i) => {
        if (ofOurs && !URN.test(fullUrl ?? ''))
            said(`/entry/${i}/fullUrl`, `${fullUrl} is no urn:uuid of a lower-case UUID`);
        if (known.has(fullUrl))
            said(`/entry/${i}/fullUrl`, `${fullUrl} stands twice`);
        known.set(fullUrl, resource);
        const id = Array.isArray(resource?.identifier) ? `${resource.identifier[0]?.system} ${resource.identifier[0]?.value}` : undefined;
        if (id && identifiers.has(id))
            said(`/entry/${i}/resource/identifier/0`, 'the identifier of another resource of the file');
        identifiers.add(id);
    });
    entries.forEach(({ fullUrl, resource }, i) => {
        const out = [];
        for (const reference of referencesOf(resource?.resourceType, resource)) {
            checkReference(reference, known, (message) => said(`/entry/${i}/resource${reference.at}`, message));
            if (reference.value?.reference)
                out.push(reference.value.reference);
        }
        links.set(fullUrl, out);
    });
    if (bundle.type === 'document')
        checkDocument(entries, links, said);
    if (!ofOurs)
        return;
    checkAmended(entries, said);
    checkCount(bundle, entries, said);
    checkOrder(bundle, said);
}
