// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

//     node tests/reference/validate.mjs [--base] [--count] FILE...
// Prints `FILE POINTER MESSAGE` for each breach of FHIR R4 or of our profiles, and ends with 1
// if there is one; 2: wrong usage. --base: R4 alone, for what has no profile of ours.
// --count: a last line `files: N passed, N failed`.

import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { problemsOf } from './check.mjs';

function read() {
    try {
        const { values, positionals } = parseArgs({ options: { base: { type: 'boolean' }, count: { type: 'boolean' } }, allowPositionals: true });
        if (positionals.length > 0)
            return { ...values, files: positionals };
    } catch {
        // said below
    }
    console.error('usage: validate.mjs [--base] [--count] FILE...');
    process.exit(2);
}

function problemsIn(file, ofOurs) {
    try {
        const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(file));
        return problemsOf(JSON.parse(text), ofOurs);
    } catch (error) {
        return [['', `could not be checked: ${error.message}`]];
    }
}

const { base, count, files } = read();
let failed = 0;
for (const file of files) {
    const problems = problemsIn(file, !base);
    failed += problems.length ? 1 : 0;
    for (const [at, message] of problems)
        console.log(`${file} ${at || '/'} ${message.replaceAll('\n', ' ')}`);
}
if (count)
    console.log(`files: ${files.length - failed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
