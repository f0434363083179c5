// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// What makes a second export byte-identical: addresses, order and times come from the
// entries alone, never from when or where a file is written.

import { addressFor, addressOf } from './addresses.mjs';
import { ENTRY, identifierSystem } from './names.mjs';

const nested = (resource, name) => resource.extension?.find((one) => one.url === ENTRY)?.extension?.find((one) => one.url === name);
export const isEntry = (resource) => Array.isArray(resource?.identifier) && resource.identifier[0]?.system === identifierSystem('entry');
const idOf = (resource) => resource.identifier[0].value;
const dayOf = (resource) => resource.effectiveDateTime ?? resource.performedDateTime ?? resource.period?.start ?? nested(resource, 'day')?.valueDate ?? '';
const kindOf = (resource) => resource.meta?.profile?.[0]?.split('/').at(-1).replaceAll('-', '_') ?? '';
const recordedOf = (resource) => resource.issued ?? resource.sent ?? resource.created ?? resource.recordedDate ?? nested(resource, 'recorded')?.valueInstant;

/** Less than 0 where \a a comes before \a b: by day, then kind, then id, as bytes. */
export function inOrder(a, b) {
    for (const key of [dayOf, kindOf, idOf]) {
        const [left, right] = [key(a), key(b)];
        if (left !== right)
            return left < right ? -1 : 1;
    }
    return 0;
}

function checkAddress(bundle, { fullUrl, resource }, idAt, said) {
    const wanted = isEntry(resource) ? addressOf(idOf(resource)) : {
        Patient: () => addressFor('patient', resource.identifier?.[0]?.value),
        Composition: () => addressFor('composition', bundle.identifier?.value),
        Provenance: () => addressFor('provenance', idAt.get(resource.target?.[0]?.reference)),
    }[resource?.resourceType]?.();
    if (wanted && fullUrl !== wanted)
        said(`the address of this is ${wanted}`);
}

/** When \a bundle says it was made, and what its entries make of it. */
function checkTime(bundle, entries, said) {
    const instants = entries.map(recordedOf).filter(Boolean).map(Date.parse);
    const days = entries.map(dayOf).sort();
    const wanted = instants.length ? instants.reduce((a, b) => Math.max(a, b)) : Date.parse(`${days.at(-1)}T00:00:00Z`);
    if (entries.length && Date.parse(bundle.timestamp) !== wanted)
        said('/timestamp', 'is neither the latest recording nor, without any, the last day');
    const composition = bundle.entry?.[0]?.resource;
    if (composition?.resourceType === 'Composition' && composition.date !== bundle.timestamp)
        said('/entry/0/resource/date', 'is not the timestamp of the file');
}

/** Calls \a said(pointer, message) for what would differ in another export of the same entries. */
export function checkOrder(bundle, said) {
    const all = bundle.entry ?? [];
    const idAt = new Map(all.filter(({ resource }) => isEntry(resource)).map(({ fullUrl, resource }) => [fullUrl, idOf(resource)]));
    const place = new Map(all.map(({ fullUrl }, i) => [fullUrl, i]));
    let last;
    let lastTarget = -1;
    all.forEach((one, i) => {
        checkAddress(bundle, one, idAt, (message) => said(`/entry/${i}/fullUrl`, message));
        if (isEntry(one.resource)) {
            if (last && inOrder(last, one.resource) > 0)
                said(`/entry/${i}`, 'stands before an entry that comes first by day, kind and id');
            if (lastTarget >= 0)
                said(`/entry/${i}`, 'an entry after a correction');
            last = one.resource;
        } else if (one.resource?.resourceType === 'Provenance') {
            const target = place.get(one.resource.target?.[0]?.reference) ?? -1;
            if (target < lastTarget)
                said(`/entry/${i}`, 'corrections do not stand in the order of what they are about');
            lastTarget = Math.max(target, lastTarget, 0);
        }
    });
    checkTime(bundle, all.map((one) => one.resource).filter(isEntry), said);
}
