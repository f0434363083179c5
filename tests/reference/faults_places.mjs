// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Where in a file a fault is put.

import { ENTRY, profile } from './names.mjs';

/** The entry of the bundle that holds the \a nth resource of a kind. */
export const inBundle = (bundle, kind, nth = 0) => bundle.entry.filter(({ resource }) => resource.meta?.profile?.[0] === profile(kind))[nth];
export const resourceOf = (bundle, kind, nth = 0) => inBundle(bundle, kind, nth).resource;
/** The entry extension of such a resource, and one part of it. */
export const rawEntry = (bundle, kind, nth = 0) => resourceOf(bundle, kind, nth).extension.find((one) => one.url === ENTRY);
export const entryOf = (bundle, kind, name, nth = 0) => rawEntry(bundle, kind, nth).extension.find((one) => one.url === name);
/** Takes that part away. */
export function withoutPart(bundle, kind, name, nth = 0) {
    const whole = rawEntry(bundle, kind, nth);
    whole.extension = whole.extension.filter((one) => one.url !== name);
}
/** The first resource of a kind that withdraws another. */
export const withdrawnOf = (bundle, kind) => bundle.entry.map((one) => one.resource)
    .find((resource) => resource.meta.profile[0] === profile(kind) && resource.status === 'entered-in-error');
