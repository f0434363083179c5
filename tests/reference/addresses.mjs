// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Addresses inside a file: the same entry has the same one in every file.

import { createHash } from 'node:crypto';

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** UUID version 8 of the first 16 bytes of the SHA-256 of \a text (RFC 9562, 5.8). */
function uuid8(text) {
    const bytes = createHash('sha256').update(text).digest().subarray(0, 16);
    bytes[6] = (bytes[6] & 0x0f) | 0x80;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    return bytes.toString('hex').replace(/(.{8})(.{4})(.{4})(.{4})(.{12})/, '$1-$2-$3-$4-$5');
}

/** The address of an entry by its id. */
export const addressOf = (id) => `urn:uuid:${UUID.test(id) ? id : uuid8(id)}`;
/** The address of what is no entry: a patient, composition or provenance \a of a value. */
export const addressFor = (what, of) => `urn:uuid:${uuid8(`${what}\u001f${of}`)}`;
