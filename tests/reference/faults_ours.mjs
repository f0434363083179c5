// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// One way each to break what base R4 leaves open and our profiles, or a file as a whole, ask for.

import { entryOf, inBundle, rawEntry, resourceOf, withdrawnOf, withoutPart } from './faults_places.mjs';
import { codeSystem, ENTRY, profile } from './names.mjs';

const stageOf = (bundle, i) => resourceOf(bundle, 'plan').activity[i].detail;

export const terminologyFaults = {
    'a code of LOINC that was borrowed': [(b) => { resourceOf(b, 'check').code.coding[0].code = '38208-5'; }, /no code 38208-5/],
    'a display that LOINC does not have': [(b) => { resourceOf(b, 'check').code.coding[0].display = 'Pain'; }, /not the display/],
    'a code of LOINC without its display': [(b) => { delete resourceOf(b, 'check').code.coding[0].display; }, /without its display/],
    'a code that our system does not have': [(b) => { resourceOf(b, 'skip').code.coding[0].code = 'skipped'; }, /has no code skipped/],
    'a code system that nobody knows': [(b) => { resourceOf(b, 'skip').code.coding[0].system = codeSystem('kinds'); }, /no code system known/],
    'a coding without a system': [(b) => { delete resourceOf(b, 'skip').code.coding[0].system; }, /without system/],
};

export const profileFaults = {
    'no profile': [(b) => { delete resourceOf(b, 'check').meta; }, /names no profile/],
    'a profile that does not exist': [(b) => { resourceOf(b, 'check').meta.profile[0] = profile('checks'); }, /no profile of a Observation/],
    'a profile of another resource': [(b) => { resourceOf(b, 'check').meta.profile[0] = profile('visit'); }, /no profile of a Observation/],
    'the profile of another kind': [(b) => { resourceOf(b, 'check').meta.profile[0] = profile('set'); }, /is not .*repetitions/],
    'an extension nobody defined': [
        (b) => { resourceOf(b, 'check').extension.push({ url: profile('mood'), valueString: 'good' }); }, /extension\/1 is none of those/,
    ],
    'a part of the entry nobody defined': [(b) => { rawEntry(b, 'check').extension.push({ url: 'mood', valueString: 'x' }); }, /none of those/],
    'a part that belongs to another kind': [(b) => { rawEntry(b, 'check').extension.push({ url: 'slot', valueString: 'day' }); }, /none of those/],
    'a part of another type': [(b) => { rawEntry(b, 'set').extension.find((one) => one.url === 'set').valueString = '1'; delete entryOf(b, 'set', 'set').valueInteger; }, /asks for integer/],
    'a part that stands twice': [(b) => { rawEntry(b, 'set').extension.push(entryOf(b, 'set', 'item')); }, /at most 1 of item/],
    'a part that is missing': [(b) => withoutPart(b, 'set', 'slot'), /asks for slot/],
    'a field that the kind needs is missing': [(b) => withoutPart(b, 'stage', 'stage'), /needs-stage/],
    'a set without repetitions': [(b) => { delete resourceOf(b, 'set').valueQuantity; }, /needs-reps/],
    'no author': [(b) => withoutPart(b, 'set', 'author'), /asks for author/],
    'an author of no kind': [(b) => { entryOf(b, 'check', 'author').valueCode = 'doctor'; }, /no code of .*author/],
    'an author that is not named first': [(b) => { rawEntry(b, 'set').extension.reverse(); }, /author-first/],
    'a choice that the field does not have': [(b) => { entryOf(b, 'set', 'how').valueCode = 'guess'; }, /no code of .*how/],
    'no day where nothing else tells it': [(b) => withoutPart(b, 'skip', 'day'), /asks for day/],
    'a modifier': [(b) => { resourceOf(b, 'check').modifierExtension = [{ url: profile('not'), valueInteger: 1 }]; }, /has no modifierExtension/],
    'rules that nobody may ignore': [(b) => { resourceOf(b, 'check').implicitRules = profile('rules'); }, /has no implicitRules/],
    'an id of a resource': [(b) => { resourceOf(b, 'check').id = 'check-1'; }, /has no id/],
    'an element that no profile of ours uses': [(b) => { resourceOf(b, 'check').bodySite = { text: 'Heel' }; }, /has no bodySite/],
    'a score of 11': [(b) => { resourceOf(b, 'check').valueQuantity.value = 11; }, /score/],
    'a unit and a code that differ': [(b) => { resourceOf(b, 'check').valueQuantity.unit = 'points'; }, /is not "\{score\}"/],
    'the unit of another field': [(b) => { Object.assign(entryOf(b, 'visit', 'bar').valueQuantity, { unit: 'kg', code: 'kg' }); }, /is not "bar"/],
    'a component of another kind': [(b) => { resourceOf(b, 'check').component[0].code = resourceOf(b, 'set').component[0].code; }, /none of those/],
    'a component twice': [(b) => { resourceOf(b, 'set').component.push(resourceOf(b, 'set').component[0]); }, /at most 1 of hold/],
    'another status than the kind has': [(b) => { resourceOf(b, 'check').status = 'preliminary'; }, /status: A status/],
    'another reason for no value': [(b) => { resourceOf(b, 'check', 2).dataAbsentReason.coding[0].code = 'unknown'; }, /is not .*asked-declined/],
    'entered in error without a withdrawal': [(b) => { resourceOf(b, 'check').status = 'entered-in-error'; }, /withdrawn-status/],
    'a withdrawal that is final': [(b) => { withdrawnOf(b, 'outcome').status = 'final'; }, /withdrawn-status/],
    'a withdrawal with a value': [(b) => { withdrawnOf(b, 'outcome').valueQuantity = { value: 1 }; }, /withdrawn-only/],
    'a withdrawn note with a text': [(b) => { withdrawnOf(b, 'note').payload = [{ contentString: 'x' }]; }, /withdrawn-only/],
    'a complaint in error without a withdrawal': [
        (b) => { resourceOf(b, 'complaint').verificationStatus = { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-ver-status', code: 'entered-in-error' }] }; },
        /withdrawn-status/,
    ],
    'an activity without a name': [(b) => { delete resourceOf(b, 'outcome').code.text; }, /outcome-name/],
    'a unit without a code': [(b) => { delete resourceOf(b, 'outcome').valueQuantity.code; }, /outcome-unit/],
    'an offset that R4 can write': [(b) => { entryOf(b, 'flag', 'offset', 1).valueInteger = 60; }, /offset: Minutes/],
    'an offset beside an instant that has one': [(b) => { resourceOf(b, 'flag', 1).issued = '2026-03-07T05:10:00+01:00'; }, /offset-utc/],
    'a first stage that does not name its exercise': [(b) => { delete stageOf(b, 0).code; }, /first-stage/],
    'a second stage that names its exercise': [(b) => { stageOf(b, 1).code = { text: 'Calf raise' }; }, /first-stage/],
    'the side of an exercise told twice': [(b) => { stageOf(b, 1).extension[0].extension.push({ url: 'side', valueCode: 'left' }); }, /exercise-once/],
    'a stage without a number': [(b) => { const [one] = stageOf(b, 1).extension; one.extension = one.extension.filter((part) => part.url !== 'stage'); }, /asks for stage/],
    'a rhythm of months': [(b) => { stageOf(b, 0).scheduledTiming.repeat.periodUnit = 'mo'; }, /period-unit/],
    'a plan without an exercise': [(b) => { delete resourceOf(b, 'plan').activity; }, /needs-items/],
    'a plan without its identifier': [(b) => { resourceOf(b, 'plan').identifier.pop(); }, /asks for plan/],
    'an identifier of another system': [(b) => { resourceOf(b, 'check').identifier[0].system = profile('entry'); }, /none of those/],
    'a birthday': [(b) => { b.entry[1].resource.birthDate = '1961-05-04'; }, /birth-year/],
    'a family name': [(b) => { b.entry[1].resource.name[0].family = 'Example'; }, /has no family/],
    'another title': [(b) => { b.entry[0].resource.title = 'Report'; }, /is not "Diary summary"/],
    'a correction by nobody': [(b) => { b.entry.at(-1).resource.agent[0].who = { display: 'somebody' }; }, /who: The person/],
    'a link in the narrative': [(b) => { b.entry[0].resource.text.div = b.entry[0].resource.text.div.replace('<p>', '<p><a href="x">x</a>'); }, /has no place in a narrative/],
    'a narrative without a namespace': [(b) => { b.entry[0].resource.text.div = b.entry[0].resource.text.div.replace(/ xmlns="[^"]*"/, ''); }, /namespace/],
    'a comment in the narrative': [(b) => { b.entry[0].resource.text.div = b.entry[0].resource.text.div.replace('<p>', '<!-- x --><p>'); }, /declaration, comment/],
    'two entry extensions': [(b) => { resourceOf(b, 'check').extension.push(structuredClone(rawEntry(b, 'check'))); }, /at most 1 of entry/],
    'an entry without what it says': [(b) => { resourceOf(b, 'check').extension = [{ url: ENTRY, extension: [{ url: 'mood', valueString: 'x' }] }]; }, /asks for author/],
};

/** Breaks in other files than a summary: file -> faults. */
export const otherFaults = {
    plan: {
        'a plan file with a word of the person': [(b) => { entryOf(b, 'stage', 'author').valueCode = 'patient'; }, /clinic-only/],
        'a plan file with what stays at the desk': [(b) => { resourceOf(b, 'closed').meta.profile[0] = profile('memo'); }, /desk-only/],
        'a plan file that does not open with the person': [(b) => { b.entry.push(b.entry.shift()); }, /opens-with/],
    },
    visit: { 'a visit file called a plan file of another type': [(b) => { b.type = 'batch'; }, /is not "collection"/] },
    record: { 'a record file with a word of the person': [(b) => { entryOf(b, 'memo', 'author').valueCode = 'helper'; }, /clinic-only/] },
};

export const fileFaults = {
    'an address that is no UUID': [(b) => { inBundle(b, 'closed').fullUrl = 'urn:uuid:closed-1'; }, /no urn:uuid/],
    'an address in capitals': [(b) => { inBundle(b, 'closed').fullUrl = inBundle(b, 'closed').fullUrl.replace(/[0-9a-f-]+$/, (uuid) => uuid.toUpperCase()); }, /no urn:uuid/],
    'a web address': [(b) => { inBundle(b, 'closed').fullUrl = profile('x'); }, /no urn:uuid/],
    'a reference that leads nowhere': [(b) => { resourceOf(b, 'check').subject.reference = b.entry[1].fullUrl.replace(/.$/, 'g'); }, /is not in the file/],
    'a reference that leads to another type': [(b) => { resourceOf(b, 'check').subject.reference = inBundle(b, 'closed').fullUrl; }, /leads to a Basic, which R4 does not allow/],
    'a logical reference to a type that R4 does not allow': [(b) => { resourceOf(b, 'plan').addresses[0].type = 'Basic'; }, /leads to a Basic/],
    'a logical reference without a system': [(b) => { delete resourceOf(b, 'check').focus[0].identifier.system; }, /without type, system or value/],
    'a reference that says nothing': [(b) => { resourceOf(b, 'check').performer = [{ type: 'Patient' }]; }, /says nothing/],
    'a resource that nothing leads to': [(b) => { b.entry[0].resource.section.pop(); }, /nothing in the document leads here/],
    'one identifier for two entries': [(b) => { resourceOf(b, 'check', 1).identifier[0].value = resourceOf(b, 'check').identifier[0].value; }, /identifier of another resource/],
    'amended without a word of what was replaced': [(b) => { b.entry.pop(); }, /amended contradicts/],
    'replaced and yet final': [(b) => { resourceOf(b, 'check', 1).status = 'final'; }, /final contradicts/],
    'an entry that the count does not know': [(b) => { b.identifier.value = b.identifier.value.replace(/^\d+/, '3'); }, /the file holds/],
    'a sum that is none': [(b) => { b.identifier.value = b.identifier.value.slice(0, -1); }, /count-and-sum/],
    'a time with an offset': [(b) => { b.timestamp = '2026-05-25T20:20:00+02:00'; }, /in-utc/],
    'a document that is called a collection': [(b) => { b.type = 'collection'; }, /is not "document"/],
    'a document without the person': [(b) => { b.entry.splice(1, 1); }, /opens-with/],
    'an entry without a resource': [(b) => { delete inBundle(b, 'closed').resource; }, /the profile asks for resource/],
    'entries in another order': [(b) => { b.entry.splice(2, 0, ...b.entry.splice(5, 1)); }, /comes first by day/],
    'a correction among the entries': [(b) => { b.entry.splice(-2, 0, b.entry.pop()); }, /an entry after a correction/],
    'an address that is not that of the entry': [
        (b) => { inBundle(b, 'closed').fullUrl = inBundle(b, 'closed').fullUrl.replace(/.$/, (last) => (last === '0' ? '1' : '0')); },
        /the address of this is/,
    ],
    'an address of the person drawn by lot': [
        (b) => {
            const [old, drawn] = [b.entry[1].fullUrl, 'urn:uuid:0195f1c0-0000-4000-8000-000000000001'];
            Object.assign(b, JSON.parse(JSON.stringify(b).replaceAll(old, drawn)));
        }, /entry\/1\/fullUrl the address of this/,
    ],
    'the time of writing as timestamp': [(b) => { b.timestamp = '2026-05-26T08:00:00Z'; }, /latest recording/],
    'another date on the front page': [(b) => { b.entry[0].resource.date = '2026-05-26T08:00:00Z'; }, /not the timestamp/],
    'no entries': [(b) => { delete b.entry; }, /asks for entry/],
};
