// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Which codes may be written. UCUM is parsed; LOINC, which cannot be listed here, is an
// allow-list; every other system has to be known whole.

import { createRequire } from 'node:module';
import { codesOf } from './definitions.mjs';

const require = createRequire(import.meta.url);
const ucum = require('@lhncbc/ucum-lhc').UcumLhcUtils.getInstance();

export const UCUM = 'http://unitsofmeasure.org';
export const LOINC = 'http://loinc.org';
const LOINC_ALLOWED = new Map([['72514-3', 'Pain severity - 0-10 verbal numeric rating [Score] - Reported']]);

const units = new Map();

function isUnit(code) {
    if (!units.has(code))
        units.set(code, ucum.validateUnitString(code).status === 'valid');
    return units.get(code);
}

/** What is wrong with a Coding; undefined if nothing is. */
export function codingProblem({ system, code, display }) {
    if (system === undefined || code === undefined)
        return 'a coding without system and code';
    if (system === UCUM)
        return isUnit(code) ? undefined : `${code} is no unit of UCUM`;
    const known = system === LOINC ? LOINC_ALLOWED : codesOf(system);
    if (!known)
        return `${system} is no code system known here`;
    if (!known.has(code))
        return `${system} has no code ${code} that is allowed here`;
    if (system === LOINC && display === undefined)
        return `${code} stands without its display`;
    if (display !== undefined && display !== known.get(code))
        return `${JSON.stringify(display)} is not the display of ${code}`;
    return undefined;
}

/** What is wrong with the unit of a Quantity; undefined if nothing is. */
export function unitProblem({ system, code }) {
    return system === UCUM && code !== undefined && !isUnit(code) ? `${code} is no unit of UCUM` : undefined;
}
