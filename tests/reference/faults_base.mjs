// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// One way each to break a good file against base R4: what is broken -> [how, what has to be said].

import { entryOf, resourceOf, rawEntry } from './faults_places.mjs';

const repeatOf = (bundle, i = 0) => resourceOf(bundle, 'plan').activity[i].detail.scheduledTiming.repeat;
const textOf = (bundle) => bundle.entry[0].resource.text;

export const baseFaults = {
    'a resource type that is none': [(b) => { resourceOf(b, 'check').resourceType = 'Observed'; }, /Observed is no resource/],
    'an element that R4 does not have': [(b) => { resourceOf(b, 'check').mood = 'good'; }, /no element of this name/],
    'an element of another resource': [(b) => { resourceOf(b, 'skip').issued = '2026-03-04T07:14:05+01:00'; }, /Basic has no element/],
    'a required element is missing': [(b) => { delete resourceOf(b, 'check').code; }, /code is missing/],
    'a list where one belongs': [(b) => { resourceOf(b, 'check').status = ['final']; }, /is a list/],
    'one where a list belongs': [(b) => { resourceOf(b, 'check').category = resourceOf(b, 'check').category[0]; }, /is no list/],
    'an empty list': [(b) => { resourceOf(b, 'check').note = []; }, /empty list/],
    'an empty object': [(b) => { resourceOf(b, 'check').method = {}; }, /ele-1/],
    'an object with nothing but an id': [(b) => { resourceOf(b, 'check').method = { id: 'a' }; }, /ele-1/],
    'an empty text': [(b) => { resourceOf(b, 'flag').valueString = ''; }, /is empty/],
    'a null': [(b) => { resourceOf(b, 'flag').valueString = null; }, /JSON null/],
    'a number written as text': [(b) => { resourceOf(b, 'check').valueQuantity.value = '4'; }, /decimal asks for a number/],
    'a text written as number': [(b) => { resourceOf(b, 'flag').valueString = 4; }, /string asks for a string/],
    'a status outside its binding': [(b) => { resourceOf(b, 'check').status = 'done'; }, /done is no code of .*observation-status/],
    'a unit of time outside its binding': [(b) => { repeatOf(b).periodUnit = 'fortnight'; }, /fortnight is no code/],
    'a weekday outside its binding': [(b) => { repeatOf(b, 1).dayOfWeek = ['monday']; }, /monday is no code/],
    'a role outside its binding': [(b) => { b.entry.at(-1).resource.entity[0].role = 'older'; }, /older is no code/],
    'a day in no calendar': [(b) => { resourceOf(b, 'check').effectiveDateTime = '2026-02-30'; }, /in no calendar/],
    'the leap day of a common year': [(b) => { resourceOf(b, 'plan').period.start = '2026-02-29'; }, /in no calendar/],
    'a day written another way': [(b) => { resourceOf(b, 'check').effectiveDateTime = '4.3.2026'; }, /is no dateTime/],
    'an instant without an offset': [(b) => { resourceOf(b, 'check').issued = '2026-03-04T07:14:05'; }, /is no instant/],
    'an instant without seconds': [(b) => { resourceOf(b, 'check').issued = '2026-03-04T07:14+01:00'; }, /is no instant/],
    'an offset beyond 14 hours': [(b) => { resourceOf(b, 'check').issued = '2026-03-04T07:14:05+14:05'; }, /is no instant/],
    'an id with a character that none has': [(b) => { resourceOf(b, 'check').id = 'a_b'; }, /a_b is no id/],
    'a control character': [(b) => { resourceOf(b, 'flag').valueString = 'a\u0001b'; }, /control character/],
    'half of a character': [(b) => { resourceOf(b, 'flag').valueString = '\ud83d'; }, /half of a character/],
    'a text of over a mebibyte': [(b) => { resourceOf(b, 'flag').valueString = 'x'.repeat(1024 * 1024 + 1); }, /longer than/],
    'a fraction where a whole number belongs': [(b) => { repeatOf(b).frequency = 1.5; }, /not a whole number/],
    'a frequency of none': [(b) => { repeatOf(b).frequency = 0; }, /not positive/],
    'a code of a unit without its system': [(b) => { delete resourceOf(b, 'check').valueQuantity.system; }, /qty-3/],
    'a value and a reason for having none': [(b) => { resourceOf(b, 'check').dataAbsentReason = { text: 'declined' }; }, /obs-6/],
    'a value beside a component of the same code': [(b) => { const set = resourceOf(b, 'set'); set.component[0].code = set.code; }, /obs-7/],
    'two values': [(b) => { resourceOf(b, 'check').valueString = '4'; }, /value\[x\] stands 2 times/],
    'an extension with a value and parts': [(b) => { rawEntry(b, 'check').valueString = 'x'; }, /ext-1/],
    'an extension with neither value nor parts': [(b) => { delete rawEntry(b, 'check').extension; }, /ext-1/],
    'an extension without an address': [(b) => { delete rawEntry(b, 'check').url; }, /url is missing/],
    'a period that ends before it starts': [(b) => { repeatOf(b).boundsPeriod.end = '2026-03-01'; }, /per-1/],
    'a period without its unit': [(b) => { delete repeatOf(b).periodUnit; }, /tim-2/],
    'a negative period': [(b) => { repeatOf(b).period = -1; }, /tim-5/],
    'an activity told twice': [(b) => { resourceOf(b, 'plan').activity[0].reference = { display: 'x' }; }, /cpl-3/],
    'a reference to something contained that is not': [(b) => { resourceOf(b, 'check').subject = { reference: '#p' }; }, /ref-1/],
    'a contained resource that nothing refers to': [(b) => { resourceOf(b, 'check').contained = [{ resourceType: 'Patient', id: 'p' }]; }, /dom-3/],
    'a resource without a subject': [(b) => { delete resourceOf(b, 'complaint').subject; }, /subject is missing/],
    'a provenance of nothing': [(b) => { delete b.entry.at(-1).resource.target; }, /target is missing/],
    'a section that holds nothing': [(b) => { delete b.entry[0].resource.section[0].entry; }, /cmp-1/],
    'a clinical status of a complaint entered in error': [
        (b) => {
            Object.assign(resourceOf(b, 'complaint'), {
                clinicalStatus: { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }] },
                verificationStatus: { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-ver-status', code: 'entered-in-error' }] },
            });
        }, /con-5/,
    ],
    'a document without an identifier': [(b) => { delete b.identifier; }, /bdl-9/],
    'a document without a time': [(b) => { delete b.timestamp; }, /bdl-10/],
    'a document that opens with the person': [(b) => { b.entry.unshift(...b.entry.splice(1, 1)); }, /bdl-11/],
    'a total of what was not searched': [(b) => { b.total = 3; }, /bdl-1:/],
    'an address that stands twice': [(b) => { b.entry[3].fullUrl = b.entry[2].fullUrl; }, /bdl-7/],
    'a script in the narrative': [(b) => { textOf(b).div = textOf(b).div.replace('<p>', '<script>a()</script><p>'); }, /txt-1/],
    'an event in the narrative': [(b) => { textOf(b).div = textOf(b).div.replace('<p>', '<p onclick="a()">'); }, /txt-1/],
    'a narrative that is not well formed': [(b) => { textOf(b).div = textOf(b).div.replace('</p>', ''); }, /txt-1/],
    'a narrative without a word': [(b) => { textOf(b).div = '<div xmlns="http://www.w3.org/1999/xhtml"> </div>'; }, /txt-2/],
    'a unit that UCUM does not know': [
        (b) => { Object.assign(entryOf(b, 'visit', 'bar').valueQuantity, { unit: 'barr', code: 'barr' }); }, /barr is no unit of UCUM/,
    ],
};
