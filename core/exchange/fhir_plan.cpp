// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_plan.h"

#include "exchange/fhir_elements.h"
#include "exchange/fhir_terms.h"
#include "exchange/fhir_timing.h"

namespace morrow::fhir {

namespace {

void writeTiming(JsonWriter &json, const Body &item, const Body &stage)
{
    json.key("scheduledTiming");
    json.beginObject();
    json.key("repeat");
    json.beginObject();
    json.key("boundsPeriod");
    json.beginObject();
    if (const std::string *const start = item.text(Field::Start))
        json.member("start", *start);
    if (const std::string *const end = item.text(Field::End))
        json.member("end", *end);
    json.endObject();
    if (const auto repeat = repeatOf(stage)) {
        json.member("frequency", Decimal::whole(repeat->frequency));
        json.member("period", Decimal::whole(repeat->period));
        json.member("periodUnit", repeat->unit);
        if (!repeat->days.empty()) {
            json.key("dayOfWeek");
            json.beginArray();
            for (const std::string &day : repeat->days)
                json.text(day);
            json.endArray();
        }
    }
    json.endObject();
    json.endObject();
}

void writeActivity(JsonWriter &json, const Body &item, const Body &stage, bool isFirst)
{
    json.beginObject();
    json.key("detail");
    json.beginObject();
    if (isFirst && item.has(Field::Exercise)) {
        json.key("code");
        writeConcept(json, {}, item.textOr(Field::Exercise));
    }
    json.member("status", "scheduled");
    writeTiming(json, item, stage);
    if (const std::string *const point = stage.text(Field::KeyPoint))
        json.member("description", *point);
    json.key("extension");
    json.beginArray();
    json.beginObject();
    json.member("url", profile("plan-stage"));
    json.key("extension");
    json.beginArray();
    for (const auto &[field, value] : item.fields()) {
        const bool hasPlace
            = field == Field::Exercise || field == Field::Start || field == Field::End || std::holds_alternative<std::vector<Body>>(value);
        if (!hasPlace && (isFirst || field == Field::Item))
            writeNestedField(json, itemRules(), field, value);
    }
    const bool isTold = isToldByRepeat(stage);
    for (const auto &[field, value] : stage.fields()) {
        const bool hasPlace = field == Field::KeyPoint || (isTold && (field == Field::Rrule || field == Field::PerWeek));
        if (!hasPlace)
            writeNestedField(json, stageRules(), field, value);
    }
    json.endArray();
    json.endObject();
    json.endArray();
    json.endObject();
    json.endObject();
}

} // namespace

void writeActivities(JsonWriter &json, std::span<const Body> items)
{
    bool isOpen = false;
    for (const Body &item : items) {
        const std::vector<Body> *const stages = item.list(Field::Stages);
        for (std::size_t i = 0; stages && i < stages->size(); ++i) {
            if (!isOpen) {
                json.key("activity");
                json.beginArray();
                isOpen = true;
            }
            writeActivity(json, item, (*stages)[i], i == 0);
        }
    }
    if (isOpen)
        json.endArray();
}

} // namespace morrow::fhir
