// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Every check of one resource, layered: a general validator first, then what it passes over.

import { indexStructureDefinitionBundle, validateResource } from '@medplum/core';
import { checkBundle } from './bundle.mjs';
import { coreBundles } from './definitions.mjs';
import { checkNarratives } from './narrative.mjs';
import { checkProfile, loadDefinitions } from './profiles.mjs';
import { checkResource } from './walk.mjs';

coreBundles.forEach(indexStructureDefinitionBundle);
export const definitions = loadDefinitions(new URL('../../assets/fhir', import.meta.url).pathname);

/** That a text is not of blanks alone is advice in R4 ("should", from memory); a diary is not refused for it. */
function isAdvice(issue) {
    return issue.details?.text === 'String must contain non-whitespace content';
}

function checkGenerally(resource, said) {
    try {
        validateResource(resource);
    } catch (error) {
        const issues = error.outcome?.issue ?? [{ details: { text: String(error) } }];
        for (const issue of issues.filter((one) => one.severity !== 'warning' && !isAdvice(one)))
            said('', `${issue.details?.text ?? issue.diagnostics}${issue.expression ? ` (${issue.expression.join(', ')})` : ''}`);
    }
}

/** The problems of \a resource as [JSON pointer, message]; \a ofOurs: it has to name a profile of ours. */
export function problemsOf(resource, ofOurs = true) {
    const problems = [];
    const said = (at, message) => problems.push([at, message]);
    checkResource(resource, said);
    const inside = resource.resourceType === 'Bundle' ? (resource.entry ?? []).map((entry, i) => [`/entry/${i}/resource`, entry?.resource]) : [];
    for (const [at, one] of [['', resource], ...inside]) {
        if (!one || typeof one !== 'object')
            continue;
        const here = (pointer, message) => said(at + pointer, message);
        if (one.resourceType !== 'Bundle')
            checkGenerally(one, here);
        checkNarratives(one, here);
        if (ofOurs)
            checkProfile(one, here);
    }
    if (resource.resourceType === 'Bundle')
        checkBundle(resource, ofOurs, said);
    return problems;
}
