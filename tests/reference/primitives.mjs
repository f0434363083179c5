// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Whether a JSON value is one that a primitive type of R4 can have.

import { patternOf } from './definitions.mjs';

const JSON_TYPES = { boolean: 'boolean', integer: 'number', unsignedInt: 'number', positiveInt: 'number', decimal: 'number' };
const MOST_CHARACTERS = 1024 * 1024;

/** A day that the patterns let through and no calendar has: 30 February. */
function isInCalendar(text) {
    const [year, month, day] = text.slice(0, 10).split('-').map(Number);
    return !day || day <= new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** What is wrong with \a value as a \a type; undefined if nothing is. */
export function primitiveProblem(type, value) {
    const wanted = JSON_TYPES[type] ?? 'string';
    if (typeof value !== wanted)
        return `is a JSON ${value === null ? 'null' : typeof value}, ${type} asks for a ${wanted}`;
    if (wanted === 'number' && type !== 'decimal' && (!Number.isInteger(value) || Math.abs(value) > 2147483647))
        return `${value} is not a whole number of 32 bits`;
    if (type === 'positiveInt' && value < 1)
        return `${value} is not positive`;
    if (type === 'unsignedInt' && value < 0)
        return `${value} is negative`;
    if (wanted !== 'string')
        return undefined;
    if (value === '')
        return 'is empty';
    if (value.length > MOST_CHARACTERS)
        return 'is longer than a string may be';
    if (/[\0-\x08\x0b\x0c\x0e-\x1f]/u.test(value))
        return 'holds a control character';
    if (/[\ud800-\udfff]/u.test(value))
        return 'holds half of a character';
    if (patternOf(type)?.test(value) === false)
        return `${JSON.stringify(value)} is no ${type}`;
    if (['date', 'dateTime', 'instant'].includes(type) && !isInCalendar(value))
        return `${value} is in no calendar`;
    return undefined;
}
