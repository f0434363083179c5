// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Addresses that more than one file here writes.

/** The root of everything of ours: a domain that nobody can own. */
const ROOT = 'https://morrow.invalid/fhir/';
export const profile = (name) => `${ROOT}StructureDefinition/${name}`;
export const codeSystem = (name) => `${ROOT}CodeSystem/${name}`;
export const valueSet = (name) => `${ROOT}ValueSet/${name}`;
export const identifierSystem = (name) => `${ROOT}${name}`;

/** The extension of every entry, and the one of a stage inside a plan, which may not
 * share an address with the profile of an entry of kind stage. */
export const ENTRY = profile('entry');
export const PLAN_STAGE = profile('plan-stage');

export const PAIN = {
    system: 'http://loinc.org',
    code: '72514-3',
    display: 'Pain severity - 0-10 verbal numeric rating [Score] - Reported',
};
export const UCUM = 'http://unitsofmeasure.org';
export const ABSENT = 'http://terminology.hl7.org/CodeSystem/data-absent-reason';
export const VERIFICATION = 'http://terminology.hl7.org/CodeSystem/condition-ver-status';
