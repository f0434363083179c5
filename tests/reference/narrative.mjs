// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// A narrative of ours holds counts and a period: text in a few elements, and nothing that
// leads anywhere or looks like anything. What R4 allows beyond that is checked by txt-1.

const ELEMENTS = new Set(['div', 'p', 'h1', 'h2', 'h3', 'b', 'i', 'ul', 'ol', 'li', 'table', 'caption', 'thead', 'tbody', 'tr', 'th', 'td', 'br', 'span']);
const OPENING = /^<div xmlns="http:\/\/www\.w3\.org\/1999\/xhtml"( (lang|xml:lang|dir)="[A-Za-z-]+")*>/;
const TAG = /<\/?([a-zA-Z0-9]+)([^>]*)>/g;

/** Calls \a said(pointer, message) for what a narrative of \a resource may not hold. */
export function checkNarratives(resource, said) {
    const div = resource.text?.div;
    if (div === undefined)
        return;
    if (!OPENING.test(div))
        said('/text/div', 'does not open with a div in the namespace of XHTML');
    for (const [tag, name, attributes] of div.replace(OPENING, '').matchAll(TAG)) {
        if (!ELEMENTS.has(name))
            said('/text/div', `${tag} has no place in a narrative`);
        else if (attributes.replace(/\/$/, '').trim())
            said('/text/div', `${tag} has an attribute`);
    }
    if (/<[!?]/.test(div))
        said('/text/div', 'holds a declaration, comment or instruction');
}
