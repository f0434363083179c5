// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// The profiles of what is no entry: files, the person, the front page, a correction.

import { element, identifier, invariant, never, once, optional, ours, slicing, wholeOf } from './differential.mjs';
import { ENTRY, identifierSystem, profile } from './names.mjs';

function resource(type, name, title, description, elements, constraint) {
    const root = { short: title, definition: description, ...(constraint ? { constraint } : {}) };
    return { name, title, description, rest: { kind: 'resource', type, address: profile(name), elements: wholeOf(type, name, root, elements) } };
}

export function patientProfile() {
    return resource('Patient', 'patient', 'Person', 'The person whose diary it is, by a reference that is no name.', [
        element('Patient.identifier', { ...slicing('value', 'system'), min: 1, max: '1' }),
        ...identifier('Patient', 'person', identifierSystem('person')),
        element('Patient.name', optional), element('Patient.name.text', once), element('Patient.name.family', never), element('Patient.name.given', never),
        element('Patient.birthDate', optional),
    ], [invariant('birth-year', 'Of the birth date only the year', "birthDate.exists() implies birthDate.toString().matches('^[0-9]{4}$')")]);
}

export function compositionProfile() {
    return resource('Composition', 'composition', 'Front page', 'The front page of a summary: readable counts, and every entry by kind.', [
        element('Composition.text', once), element('Composition.status', { ...once, fixedCode: 'final' }),
        element('Composition.type', { ...once, ...ours('composition', 'summary') }), element('Composition.subject', once),
        element('Composition.subject.reference', once), element('Composition.date', once), element('Composition.author', once),
        element('Composition.author.reference', once), element('Composition.title', { ...once, fixedString: 'Diary summary' }),
        element('Composition.section', {}), element('Composition.section.title', once), element('Composition.section.entry', { min: 1 }),
        element('Composition.section.entry.reference', once), element('Composition.section.section', never),
    ]);
}

export function correctionProfile() {
    return resource('Provenance', 'correction', 'Correction', 'One entry replaces another that is in the file.', [
        element('Provenance.target', once), element('Provenance.target.reference', once), element('Provenance.recorded', once),
        element('Provenance.agent', once), element('Provenance.agent.who', once), element('Provenance.agent.onBehalfOf', never),
        element('Provenance.entity', once), element('Provenance.entity.role', { ...once, fixedCode: 'revision' }),
        element('Provenance.entity.what.reference', once), element('Provenance.entity.agent', never),
    ], [invariant('who', 'The person, or the clinic without an address', "agent.who.reference.exists() != agent.who.display.where($this = 'clinic').exists()")]);
}

const files = {
    summary: ['Summary', 'From a person to a clinic: a document with the entries of a diary.', 'document'],
    'plan-file': ['Plan file', 'From a clinic to a person: complaints, plans and what else the clinic states.', 'collection'],
    'visit-file': ['Visit file', 'From a clinic to a person after a visit.', 'collection'],
    'record-file': ['Record file', 'What a clinic keeps of its own entries.', 'collection'],
};

const DESK = ['memo', 'known-as', 'alias', 'set-aside'].map((kind) => `'${profile(kind)}'`).join(' | ');
const AUTHORS = `entry.resource.extension.where(url = '${ENTRY}').extension.where(url = 'author').value`;

/** What a file of this name may hold. */
function heldOf(name) {
    return [
        ...(name === 'record-file' ? [] : [invariant('desk-only', 'What stays at the desk is in no file', `entry.resource.meta.profile.where($this in (${DESK})).empty()`)]),
        ...(name === 'summary' ? [] : [invariant('clinic-only', 'The entries are those of the clinic', `${AUTHORS}.where($this != 'clinic').empty()`)]),
    ];
}

export function bundleProfile(name) {
    const [title, description, type] = files[name];
    return resource('Bundle', name, title, description, [
        element('Bundle.identifier', once), element('Bundle.identifier.system', { ...once, fixedUri: identifierSystem('bundle') }),
        element('Bundle.identifier.value', once), element('Bundle.type', { ...once, fixedCode: type }), element('Bundle.timestamp', once),
        element('Bundle.entry', { min: 1 }), element('Bundle.entry.link', never), element('Bundle.entry.fullUrl', once),
        element('Bundle.entry.resource', once), element('Bundle.entry.search', never), element('Bundle.entry.request', never), element('Bundle.entry.response', never),
    ], [
        ...heldOf(name),
        invariant('count-and-sum', 'The identifier is the number of entries and 64 hexadecimal digits', "identifier.value.matches('^(0|[1-9][0-9]*)-[0-9a-f]{64}$')"),
        invariant('in-utc', 'The timestamp is in UTC', "timestamp.toString().endsWith('Z')"),
        invariant('opens-with', 'A document opens with its front page and the person, any other file with the person', type === 'document'
            ? 'entry[0].resource is Composition and entry[1].resource is Patient' : 'entry[0].resource is Patient'),
    ]);
}
