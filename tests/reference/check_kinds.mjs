// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// Whether kinds.mjs says of every kind, of an item and of a stage what core/model/rules.cpp
// says: the same fields, their forms, what is needed, what names, the same choices; and
// whether our code systems list those choices and the authors of core/model/kind.cpp.

import { readFileSync } from 'node:fs';
import { choicesOf, codeSystems } from './codes.mjs';
import { kinds, neverInAFile, itemFields, stageFields } from './kinds.mjs';

const room = new URL('../../core/model/', import.meta.url);
const source = readFileSync(new URL('rules.cpp', room), 'utf8');
const snake = (pascal) => pascal.replace(/(?!^)([A-Z]|\d+)/g, (part) => `_${part.toLowerCase()}`).toLowerCase().replace(/_(\d)/g, '$1');
const choiceLists = new Map([...source.matchAll(/constexpr std::array (k\w+)\{((?:"[^"]*"sv,?\s*)+)\};/g)]
    .map(([, name, words]) => [name, [...words.matchAll(/"([^"]*)"/g)].map(([, word]) => word)]));

/** One `needed(naming(text(Field::X)))` as [name, what it says]. */
function ruleOf(text) {
    const name = snake(/Field::(\w+)/.exec(text)[1]);
    const form = /Form::(\w+)/.exec(text)?.[1] ?? { whole: 'Whole', pain: 'Whole', number: 'Number', choice: 'Choice', text: 'Text' }[/(\w+)\(Field/.exec(text)[1]];
    return [name, { form, needed: text.includes('needed('), naming: text.includes('naming('), choices: choiceLists.get(/, (k\w+)\)/.exec(text)?.[1])?.join(' ') }];
}

const single = new Map([...source.matchAll(/constexpr FieldRule (k\w+) = (.*Field::.*);/g)].map(([, name, text]) => [name, text]));

/** The fields of the array \a name, whose entries are rules or names of rules. */
function fieldsOf(name) {
    const [, body] = new RegExp(`constexpr std::array ${name}\\{([^;]*)\\};`).exec(source);
    const parts = body.match(/k[A-Z]\w*(?=\s*[,}]|\s*$)|(?:\w+\()+Field::\w+(?:, [-\w:']+)*\)+/g);
    return Object.fromEntries(parts.map((part) => ruleOf(single.get(part) ?? part)));
}

function asSaid(fields, withdrawable) {
    const said = Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, {
        form: field.form ?? 'Text', needed: Boolean(field.needed), naming: Boolean(field.naming), choices: field.choices?.join(' '),
    }]));
    return withdrawable ? { ...said, withdrawn: { form: 'Whole', needed: false, naming: false, choices: undefined } } : said;
}

const wrong = [];
function compare(where, ours, theirs) {
    for (const name of new Set([...Object.keys(ours), ...Object.keys(theirs)])) {
        const [a, b] = [JSON.stringify(ours[name]), JSON.stringify(theirs[name])];
        if (a !== b)
            wrong.push(`${where}.${name}: kinds.mjs says ${a}, rules.cpp ${b}`);
    }
}

const arrays = new Map([...source.matchAll(/kind\(Kind::(\w+), (k\w+),/g)].map(([, kind, array]) => [snake(kind), array]));
for (const [kind, array] of arrays) {
    if (kind in neverInAFile)
        continue;
    const theirs = kind === 'plan' ? { ...fieldsOf('kPlanOwn'), ...fieldsOf('kPlanSettings') } : fieldsOf(array);
    compare(kind, asSaid(kinds[kind]?.fields ?? {}, true), theirs);
}
for (const kind of Object.keys(kinds).filter((name) => !arrays.has(name)))
    wrong.push(`${kind} is no kind`);
// Inside a plan nothing is withdrawn, so nothing names.
const within = (fields) => Object.fromEntries(Object.entries(asSaid(fields, false)).map(([name, said]) => [name, { ...said, naming: false }]));
compare('item', within(itemFields), fieldsOf('kItem'));
compare('stage of a plan', within(stageFields), fieldsOf('kStageFields'));

/** Where a choice is listed that several kinds of entry understand differently; a unit is one of UCUM. */
const systemOf = (kind, name) => ({ 'note.kind': 'note-kind', 'outcome.kind': 'outcome' })[`${kind}.${name}`] ?? choicesOf[name];
const listed = (system) => codeSystems[system]?.slice(2).map(([code]) => code).join(' ');

function compareCodes(where, system, choices) {
    if (listed(system) !== choices.join(' '))
        wrong.push(`${where}: code system ${system} lists ${listed(system)}, the rules ${choices.join(' ')}`);
}

for (const [kind, { fields }] of [...Object.entries(kinds), ['item', { fields: itemFields }]]) {
    for (const [name, field] of Object.entries(fields).filter(([one, { choices }]) => choices && one !== 'unit'))
        compareCodes(`${kind}.${name}`, systemOf(kind, name), field.choices);
}
const authors = /kAuthors\{([^}]*)\}/.exec(readFileSync(new URL('kind.cpp', room), 'utf8'))[1];
compareCodes('author', 'author', [...authors.matchAll(/"([^"]*)"/g)].map(([, word]) => word));

wrong.forEach((line) => console.log(line));
const differing = new Set(wrong.map((line) => line.split('.')[0])).size;
console.log(`kinds: ${arrays.size + 3 - differing} passed, ${differing} failed`);
process.exit(differing || arrays.size < 24 ? 1 : 0);
