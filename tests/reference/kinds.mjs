// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

// What each kind of entry says, and where in R4 each of its fields stands. The fields,
// their forms and choices are those of core/model/rules.cpp; check_kinds.mjs compares.

const text = { type: 'string' };
const id = { type: 'string', form: 'Id' };
const word = { type: 'string', form: 'Word' };
const rule = { type: 'string', form: 'Rule' };
const day = { type: 'date', form: 'Day' };
const whole = { type: 'integer', form: 'Whole' };
const number = { type: 'decimal', form: 'Number' };
const choice = (...choices) => ({ type: 'code', form: 'Choice', choices });
/** A field that is written as a Quantity. */
const wholeOf = (unit) => ({ type: 'Quantity', form: 'Whole', unit });
const numberOf = (unit) => ({ type: 'Quantity', form: 'Number', unit });

/** The field has to be there, but in an entry that withdraws. */
const needed = (field) => ({ ...field, needed: true });
/** It says what the entry is about, so an entry that withdraws keeps it. */
const naming = (field) => ({ ...field, needed: true, naming: true });
/** It has a core element of its own at \a at; the extension does not carry it. */
const at = (place, field) => ({ ...field, at: place });

const side = choice('left', 'right', 'both');
const score = wholeOf('{score}');
const component = (code, unit, form = wholeOf) => at(`component:${code}`, form(unit));
const complaintIn = (place) => at(place, naming(text));
const complaint = naming(text);
const slot = naming(word);
const item = naming(text);

const observation = { resource: 'Observation', day: 'effectiveDateTime', recorded: 'issued' };
const basic = { resource: 'Basic' };

/** The settings of a plan. */
const settings = {
    after_limit: number, asks: { type: 'string', form: 'Asks' }, authority: choice('off', 'clinic', 'patient'), birth_year: whole,
    check_limit: number, contact_level: number, contact_rise: number, during_limit: number, level_rise_allowed: number,
    rest_days_after_visit: whole, review_day: day, review_text: text, rise_allowed: number, soreness_days: whole,
    step_adherence: number, step_sessions: whole, step_spacing_days: whole, step_window_days: whole, visits_planned: whole,
    weekly_rise_allowed: number, weekly_stiffness_allowed: number,
};

/** Kind -> where it is written and its fields, `withdrawn` apart, which every kind has. */
export const kinds = {
    check: {
        ...observation,
        says: 'The daily answer to the question that a complaint asks, most often pain on the first steps of the morning.',
        fields: {
            complaint: complaintIn('focus'), pain: at('value', score), stiffness_min: component('stiffness', 'min'),
            declined: { ...at('dataAbsentReason', whole), also: 0 }, // "did not decline" has no place in R4
        },
    },
    set: {
        ...observation,
        says: 'One set of one exercise, as it was done.',
        fields: {
            slot, item, set: naming(whole), reps: at('value', needed(wholeOf('{repetitions}'))), hold_s: component('hold', 's'),
            load_kg: component('load', 'kg', numberOf), spare: component('spare', '{repetitions}'), how: choice('tick', 'all', 'timer'),
        },
    },
    session: {
        ...observation,
        says: 'Pain during and after one session of exercise.',
        fields: {
            complaint: complaintIn('focus'), slot, pain_during: component('pain-during', '{score}'),
            pain_after: component('pain-after', '{score}'),
        },
    },
    skip: { ...basic, says: 'A session that was left out on purpose.', fields: { complaint, slot, reason: text } },
    easier: { ...basic, says: 'A session for which the easier dose was chosen.', fields: { complaint, slot } },
    stage: { ...basic, says: 'An exercise goes to another stage from this day on.', fields: { item, stage: needed(whole), reason: text } },
    setting: {
        ...basic,
        says: 'A setting of the person: when the day starts, body mass, time zone.',
        fields: { key: naming(choice('day_starts', 'body_mass_kg', 'time_zone')), value: needed(text) },
    },
    unusual: { ...basic, says: 'Something made this day unlike others.', fields: { text: needed(text) } },
    note: {
        resource: 'Communication', recorded: 'sent',
        says: 'A question, an answer, a remark or a reply in words.',
        fields: {
            complaint: complaintIn('about'), kind: at('category', needed(choice('question', 'answer', 'note', 'unsure', 'reply'))),
            item: text, text: at('payload', text), about: at('about', id),
        },
    },
    flag: {
        ...observation,
        says: 'A warning sign that the person reported.',
        fields: { sign: at('value', needed(text)), note: at('note', text), told: choice('yes', 'no') },
    },
    outcome: {
        ...observation,
        says: 'A result measured now and then: an activity, an overall rating, a test.',
        fields: {
            complaint: complaintIn('focus'), kind: at('code', needed(choice('activity', 'overall', 'change', 'acceptable', 'test'))),
            name: at('code', text), side, value: at('value', needed(number)), unit: at('value', choice('count', 's', 'cm', 'kg')),
            pain: component('pain', '{score}'), by: at('performer', text),
        },
    },
    pause: { ...basic, says: 'Exercise rests from this day to another.', fields: { to: needed(day), reason: text } },
    visit: {
        resource: 'Procedure', day: 'performedDateTime',
        says: 'One shockwave treatment and its parameters.',
        fields: {
            complaint: complaintIn('reasonReference'), region: at('bodySite', text), side, warmup_impulses: wholeOf('{impulses}'),
            warmup_bar: numberOf('bar'), warmup_hz: numberOf('Hz'), impulses: wholeOf('{impulses}'), bar: numberOf('bar'),
            hz: numberOf('Hz'), area_cm2: numberOf('cm2'), pain_during: score, by: at('performer', text), applicator: text,
            point: text, reaction: text, told: text, consent: whole, next_visit: day,
        },
    },
    heard: {
        ...basic,
        says: 'What the clinic answered to a warning sign, as the person heard it.',
        fields: { flag: naming(id), answer: needed(choice('go-on', 'lighter', 'wait')) },
    },
    put_aside: { ...basic, says: 'The plan of a complaint is no longer followed from this day on.', fields: { complaint } },
    complaint: {
        resource: 'Condition', recorded: 'recordedDate',
        says: 'What a plan is for: a region of the body and the question asked about it.',
        fields: {
            complaint: complaintIn('identifier'), region: at('code', text), side, question: text, check: rule,
            first_assessment_pain: numberOf('{score}'), started: day, place: needed(whole),
        },
    },
    plan: {
        resource: 'CarePlan', day: 'period', recorded: 'created',
        says: 'One whole revision of a programme of exercise.',
        fields: {
            complaint: complaintIn('addresses'), plan: at('identifier', naming(id)), number: needed(whole), by: at('author', text),
            items: at('activity', needed({ form: 'List' })), ...settings,
        },
    },
    cleared: { ...basic, says: 'The clinic holds a warning sign for settled.', fields: { flag: naming(id) } },
    closed: { ...basic, says: 'The episode of a complaint has ended.', fields: { complaint, end_reason: text } },
    memo: {
        ...basic,
        says: 'What the clinic wrote down for itself about a visit; it stays at the desk.',
        fields: { visit: naming(id), note: text, next_time: text },
    },
    known_as: {
        ...basic,
        says: 'By what name the clinic knows a person; it stays at the desk.',
        fields: { label: text, file_number: text, birth_year: whole },
    },
    alias: { ...basic, says: 'Another reference that is the same person; it stays at the desk.', fields: { ref: naming(id) } },
    set_aside: { ...basic, says: 'A file whose entries no longer count; it stays at the desk.', fields: { file: naming(text) } },
};

/** What is a kind and in no file: a file was handed over. */
export const neverInAFile = { handed: 'A file was handed over; this stays with the person and is in no file.' };

/** The fields of an exercise and of one stage of it, inside a plan. */
export const itemFields = {
    item, exercise: at('code', needed(text)), side, start: at('repeat', needed(day)), end: at('repeat', day), loads: whole,
    rests_after_visit: whole, continues: text, stages: at('activity', needed({ form: 'List' })),
};
export const stageFields = {
    stage: needed(whole), sets: needed(wholeOf('{sets}')), reps: wholeOf('{repetitions}'), hold_s: wholeOf('s'), load_kg: numberOf('kg'),
    body_share: number, up_s: wholeOf('s'), pause_s: wholeOf('s'), down_s: wholeOf('s'), rest_s: wholeOf('s'), rrule: rule,
    slots: { type: 'string', form: 'Words' }, per_week: whole, min_days: whole, min_sessions: whole, spare_reps: wholeOf('{repetitions}'),
    load_step_kg: numberOf('kg'), range: text, key_point: at('description', text), easier_sets: wholeOf('{sets}'),
    easier_reps: wholeOf('{repetitions}'), easier_hold_s: wholeOf('s'), easier_load_kg: numberOf('kg'),
};

export const dashed = (name) => name.replaceAll('_', '-');
