// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Writes assets/fhir from kinds.mjs and codes.mjs.
//     node make_profiles.mjs FOLDER           writes
//     node make_profiles.mjs --check FOLDER   ends with 1 if FOLDER holds anything else

import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { bound, codeSystems } from './codes.mjs';
import { kinds, dashed } from './kinds.mjs';
import { codeSystem, valueSet } from './names.mjs';
import { kindProfile } from './profile_kinds.mjs';
import { entryExtension, planStageExtension } from './profile_extensions.mjs';
import { bundleProfile, compositionProfile, correctionProfile, patientProfile } from './profile_files.mjs';

const about = { status: 'active', experimental: false, publisher: 'The project authors', copyright: 'The project authors, GPL-3.0-only' };
const pascal = (name) => name.split('-').map((part) => part[0].toUpperCase() + part.slice(1)).join('');

function codeSystemOf(name, [title, description, ...concepts]) {
    return {
        resourceType: 'CodeSystem', id: name, url: codeSystem(name), name: pascal(name), title, ...about, description,
        caseSensitive: true, content: 'complete', count: concepts.length,
        concept: concepts.map(([code, display, definition]) => ({ code, display, definition })),
    };
}

function valueSetOf(name) {
    const [title, description] = codeSystems[name];
    return {
        resourceType: 'ValueSet', id: name, url: valueSet(name), name: pascal(name), title, ...about, description,
        compose: { include: [{ system: codeSystem(name) }] },
    };
}

const structures = [
    ...Object.keys(kinds).map((kind) => kindProfile(dashed(kind), kinds[kind])),
    entryExtension(), planStageExtension(), patientProfile(), compositionProfile(), correctionProfile(),
    ...['summary', 'plan-file', 'visit-file', 'record-file'].map(bundleProfile),
].map(({ name, title, description, rest }) => ({
    resourceType: 'StructureDefinition', id: name, url: `${rest.address}`, name: pascal(name), title, ...about, description,
    fhirVersion: '4.0.1', kind: rest.kind, abstract: false, ...(rest.context ? { context: rest.context } : {}), type: rest.type,
    baseDefinition: `http://hl7.org/fhir/StructureDefinition/${rest.type}`, derivation: 'constraint',
    differential: { element: rest.elements },
}));

const files = new Map();
for (const resource of [
    ...structures,
    ...Object.entries(codeSystems).map(([name, said]) => codeSystemOf(name, said)),
    ...bound.map(valueSetOf),
])
    files.set(`${resource.resourceType}-${resource.id}.json`, `${JSON.stringify(resource, null, 2)}\n`);

const check = process.argv[2] === '--check';
const folder = process.argv[check ? 3 : 2];
if (!folder) {
    console.error('usage: make_profiles.mjs [--check] FOLDER');
    process.exit(2);
}
if (!check) {
    mkdirSync(folder, { recursive: true });
    for (const [name, text] of files)
        writeFileSync(`${folder}/${name}`, text);
} else {
    const there = readdirSync(folder).filter((name) => name.endsWith('.json'));
    const wrong = [
        ...there.filter((name) => !files.has(name)).map((name) => `${name} is not made from kinds.mjs`),
        ...[...files.keys()].filter((name) => !there.includes(name)).map((name) => `${name} is missing`),
        ...there.filter((name) => files.has(name) && files.get(name) !== readFileSync(`${folder}/${name}`, 'utf8'))
            .map((name) => `${name} differs from what kinds.mjs makes`),
    ];
    wrong.forEach((line) => console.log(line));
    process.exit(wrong.length ? 1 : 0);
}
