// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_resource.h"

#include "exchange/fhir_elements.h"
#include "exchange/fhir_plan.h"
#include "exchange/fhir_terms.h"

#include <algorithm>
#include <initializer_list>
#include <vector>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

/// Writes one resource, element by element, and remembers which fields it has placed.
class ResourceWriter
{
public:
    ResourceWriter(JsonWriter &json, const Entry &entry, const Body &body, const Surroundings &around)
        : m_json(json)
        , m_entry(entry)
        , m_body(body)
        , m_around(around)
    {
    }

    void write()
    {
        m_json.beginObject();
        m_json.member("resourceType", resourceOf(m_entry.kind));
        writeProfile(m_json, dashed(name(m_entry.kind)));
        writeIdentifiers();
        switch (m_entry.kind) {
        case Kind::Visit:
            writeProcedure();
            break;
        case Kind::Plan:
            writeCarePlan();
            break;
        case Kind::Complaint:
            writeCondition();
            break;
        case Kind::Note:
            writeCommunication();
            break;
        default:
            if (const ObservationShape *const shape = observationShape(m_entry.kind))
                writeObservation(*shape);
            else
                writeBasic();
        }
        writeExtension();
        m_json.endObject();
    }

private:
    [[nodiscard]] bool isWithdrawn() const { return m_body.has(Field::Withdrawn); }

    /// The text of \a field, which then has its place; nullptr if there is none.
    const std::string *place(Field field)
    {
        const std::string *const text = m_body.text(field);
        if (text)
            m_placed.push_back(field);
        return text;
    }
    const Decimal *placeNumber(Field field)
    {
        const Decimal *const number = m_body.number(field);
        if (number)
            m_placed.push_back(field);
        return number;
    }
    [[nodiscard]] bool isPlaced(Field field) const { return std::find(m_placed.begin(), m_placed.end(), field) != m_placed.end(); }

    void writeIdentifiers()
    {
        m_json.key("identifier");
        m_json.beginArray();
        writeIdentifier(m_json, "entry", m_entry.id);
        if (m_entry.kind == Kind::Plan) {
            if (const std::string *const plan = place(Field::Plan))
                writeIdentifier(m_json, "plan", *plan);
        } else if (m_entry.kind == Kind::Complaint) {
            if (const std::string *const key = place(Field::Complaint))
                writeIdentifier(m_json, "complaint", *key);
        }
        m_json.endArray();
    }

    void writeSubject()
    {
        m_json.key("subject");
        writeReference(m_json, m_around.patient);
    }

    /// \a key: an array with the complaint.
    void writeComplaint(std::string_view key)
    {
        if (const std::string *const complaint = place(Field::Complaint)) {
            m_json.key(key);
            m_json.beginArray();
            writeLogicalReference(m_json, "Condition", "complaint", *complaint);
            m_json.endArray();
        }
    }

    void writeDay(std::string_view key)
    {
        m_json.member(key, m_entry.day.toString());
        m_hasDay = true;
    }

    void writeRecorded(std::string_view key)
    {
        if (m_entry.recorded)
            m_json.member(key, instantOf(*m_entry.recorded));
        m_hasRecorded = true;
    }

    void writeObservation(const ObservationShape &shape)
    {
        m_json.member("status", isWithdrawn() ? kInError : m_entry.replaces ? "amended"sv : "final"sv);
        m_json.key("category");
        m_json.beginArray();
        writeConcept(m_json, {ourCoding("kind", name(m_entry.kind))});
        m_json.endArray();
        m_json.key("code");
        if (m_entry.kind == Kind::Check)
            writeConcept(m_json, {painCoding()});
        else if (m_entry.kind == Kind::Outcome)
            writeOutcomeCode();
        else
            writeConcept(m_json, {ourCoding("measurement", shape.code)});
        writeSubject();
        writeComplaint("focus");
        writeDay("effectiveDateTime");
        writeRecorded("issued");
        if (shape.value)
            writeValue(*shape.value);
        if (m_entry.kind == Kind::Check && m_body.intOr(Field::Declined, 0) == 1) {
            m_placed.push_back(Field::Declined);
            m_json.key("dataAbsentReason");
            writeConcept(m_json, {{std::string(kAbsentSystem), kAskedDeclined}});
        }
        if (m_entry.kind == Kind::Flag) {
            if (const std::string *const note = place(Field::Note))
                writeSole(m_json, "note", "text", *note);
        }
        if (m_entry.kind == Kind::Outcome) {
            if (const std::string *const by = place(Field::By))
                writeSole(m_json, "performer", "display", *by);
        }
        writeComponents(shape);
    }

    /// A name without a kind (of an outcome taken back: neither) stays in the extension.
    void writeOutcomeCode()
    {
        const std::string *const kind = place(Field::Kind);
        if (!kind) {
            writeConcept(m_json, {ourCoding("kind", name(Kind::Outcome))});
            return;
        }
        const std::string *const called = place(Field::Name);
        writeConcept(m_json, {ourCoding("outcome", *kind)}, called ? std::string_view(*called) : std::string_view());
    }

    void writeValue(Field field)
    {
        if (m_entry.kind == Kind::Flag) {
            if (const std::string *const sign = place(field))
                m_json.member("valueString", *sign);
            return;
        }
        const Decimal *const value = placeNumber(field);
        if (!value)
            return;
        if (m_entry.kind != Kind::Outcome) {
            writeQuantity(m_json, "valueQuantity", *value, unitOf(field));
            return;
        }
        const std::string *const unit = place(Field::Unit);
        writeQuantity(m_json, "valueQuantity", *value, unit ? ucumOfOutcome(*unit) : std::string_view());
    }

    void writeComponents(const ObservationShape &shape)
    {
        bool isOpen = false;
        for (const Component &component : shape.components) {
            const Decimal *const value = placeNumber(component.field);
            if (!value)
                continue;
            if (!isOpen) {
                m_json.key("component");
                m_json.beginArray();
                isOpen = true;
            }
            m_json.beginObject();
            m_json.key("code");
            if (component.code.empty())
                writeConcept(m_json, {painCoding()});
            else if (component.isPain)
                writeConcept(m_json, {ourCoding("measurement", component.code), painCoding()});
            else
                writeConcept(m_json, {ourCoding("measurement", component.code)});
            writeQuantity(m_json, "valueQuantity", *value, unitOf(component.field));
            m_json.endObject();
        }
        if (isOpen)
            m_json.endArray();
    }

    void writeProcedure()
    {
        m_json.member("status", isWithdrawn() ? kInError : "completed"sv);
        m_json.key("category");
        writeConcept(m_json, {ourCoding("kind", name(m_entry.kind))});
        writeSubject();
        writeDay("performedDateTime");
        if (const std::string *const by = place(Field::By)) {
            m_json.key("performer");
            m_json.beginArray();
            m_json.beginObject();
            m_json.key("actor");
            m_json.beginObject();
            m_json.member("display", *by);
            m_json.endObject();
            m_json.endObject();
            m_json.endArray();
        }
        writeComplaint("reasonReference");
        if (const std::string *const region = place(Field::Region))
            writeSole(m_json, "bodySite", "text", *region);
    }

    void writeCondition()
    {
        if (isWithdrawn()) {
            m_json.key("verificationStatus");
            writeConcept(m_json, {{std::string(kVerificationSystem), kInError}});
        }
        m_json.key("category");
        m_json.beginArray();
        writeConcept(m_json, {ourCoding("kind", name(m_entry.kind))});
        m_json.endArray();
        if (const std::string *const region = place(Field::Region)) {
            m_json.key("code");
            writeConcept(m_json, {}, *region);
        }
        writeSubject();
        writeRecorded("recordedDate");
    }

    void writeCommunication()
    {
        m_json.member("status", isWithdrawn() ? kInError : "completed"sv);
        m_json.key("category");
        m_json.beginArray();
        writeConcept(m_json, {ourCoding("kind", name(m_entry.kind))});
        if (const std::string *const kind = place(Field::Kind))
            writeConcept(m_json, {ourCoding("note-kind", *kind)});
        m_json.endArray();
        writeSubject();
        const std::string *const complaint = place(Field::Complaint);
        const std::string *const about = place(Field::About);
        if (complaint || about) {
            m_json.key("about");
            m_json.beginArray();
            if (complaint)
                writeLogicalReference(m_json, "Condition", "complaint", *complaint);
            if (about)
                writeLogicalReference(m_json, "Communication", "entry", *about);
            m_json.endArray();
        }
        writeRecorded("sent");
        if (const std::string *const text = place(Field::Text))
            writeSole(m_json, "payload", "contentString", *text);
    }

    void writeBasic()
    {
        m_json.key("code");
        writeConcept(m_json, {ourCoding("kind", dashed(name(m_entry.kind)))});
        writeSubject();
    }

    void writeCarePlan()
    {
        if (m_entry.replaces) {
            m_json.key("replaces");
            m_json.beginArray();
            if (m_around.holds(*m_entry.replaces))
                writeReference(m_json, fullUrlOf(*m_entry.replaces));
            else
                writeLogicalReference(m_json, "CarePlan", "entry", *m_entry.replaces);
            m_json.endArray();
        }
        m_json.member("status", isWithdrawn() ? kInError : m_around.isOldRevision(m_body) ? "revoked"sv : "active"sv);
        m_json.member("intent", "plan");
        m_json.key("category");
        m_json.beginArray();
        writeConcept(m_json, {ourCoding("kind", name(m_entry.kind))});
        m_json.endArray();
        writeSubject();
        m_json.key("period");
        m_json.beginObject();
        writeDay("start");
        m_json.endObject();
        writeRecorded("created");
        if (const std::string *const by = place(Field::By)) {
            m_json.key("author");
            m_json.beginObject();
            m_json.member("display", *by);
            m_json.endObject();
        }
        writeComplaint("addresses");
        if (const std::vector<Body> *const items = m_body.list(Field::Items)) {
            m_placed.push_back(Field::Items);
            writeActivities(m_json, *items);
        }
    }

    void writeExtension()
    {
        m_json.key("extension");
        m_json.beginArray();
        m_json.beginObject();
        m_json.member("url", profile("entry"));
        m_json.key("extension");
        m_json.beginArray();
        writeNested(m_json, "author", "valueCode", name(m_entry.author));
        if (!m_hasDay)
            writeNested(m_json, "day", "valueDate", m_entry.day.toString());
        if (!m_hasRecorded && m_entry.recorded)
            writeNested(m_json, "recorded", "valueInstant", instantOf(*m_entry.recorded));
        if (m_entry.recorded && !isFhirOffset(m_entry.recorded->offsetMinutes)) {
            m_json.beginObject();
            m_json.member("url", "offset");
            m_json.member("valueInteger", Decimal::whole(m_entry.recorded->offsetMinutes));
            m_json.endObject();
        }
        const bool isReplacingElsewhere = m_entry.kind == Kind::Plan || (m_entry.replaces && m_around.holds(*m_entry.replaces));
        if (m_entry.replaces && !isReplacingElsewhere)
            writeNested(m_json, "replaces", "valueString", *m_entry.replaces);
        for (const auto &[field, value] : m_body.fields()) {
            if (!isPlaced(field))
                writeNestedField(m_json, ruleOf(m_entry.kind).fields, field, value);
        }
        m_json.endArray();
        m_json.endObject();
        m_json.endArray();
    }

    JsonWriter &m_json;
    const Entry &m_entry;
    const Body &m_body;
    const Surroundings &m_around;
    std::vector<Field> m_placed;
    bool m_hasDay = false;
    bool m_hasRecorded = false;
};

} // namespace

void writeResource(JsonWriter &json, const Entry &entry, const Body &body, const Surroundings &around)
{
    ResourceWriter(json, entry, body, around).write();
}

bool correctsByProvenance(Kind kind) noexcept
{
    return kind != Kind::Plan;
}

} // namespace morrow::fhir
