// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Whether the checks see what they are for: every good file passes, and one that
// is broken in one way is told off for that, not for something else.

import { problemsOf } from './check.mjs';
import { baseFaults } from './faults_base.mjs';
import { fileFaults, otherFaults, profileFaults, terminologyFaults } from './faults_ours.mjs';
import { goodFiles } from './instances.mjs';

let passed = 0;
let failed = 0;
function judge(good, ...words) {
    if (good)
        passed += 1;
    else {
        failed += 1;
        console.log('FAILED ', ...words);
    }
}

for (const [name, make] of Object.entries(goodFiles)) {
    const problems = problemsOf(make());
    judge(problems.length === 0, `the good ${name}:`, problems.map((one) => one.join(' ')).join('; '));
}
const seeded = { summary: { ...baseFaults, ...terminologyFaults, ...profileFaults, ...fileFaults }, ...otherFaults };
for (const [file, faults] of Object.entries(seeded)) {
    for (const [name, [breakIt, wanted]] of Object.entries(faults)) {
        const bundle = goodFiles[file]();
        breakIt(bundle);
        const said = problemsOf(bundle).map((one) => one.join(' '));
        judge(said.some((line) => wanted.test(line)), `${name}: nobody said ${wanted};`, said.length ? `only ${said.slice(0, 3).join('; ')}` : 'nothing was said');
    }
}
console.log(`seeded faults: ${passed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
