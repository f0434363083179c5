// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_resource_reader.h"

#include "base/ids.h"
#include "exchange/fhir_paths.h"
#include "exchange/fhir_plan_reader.h"
#include "exchange/fhir_terms.h"

#include <algorithm>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

/// The code in our code system \a name among the categories, or the one category, of \a resource.
std::optional<std::string_view> categoryIn(JsonValue resource, std::string_view name)
{
    const auto category = resource.find("category");
    if (!category)
        return std::nullopt;
    const std::string system = codeSystem(name);
    if (category->isObject())
        return codeIn(*category, system);
    for (auto one = category->firstChild(); one; one = one->next()) {
        if (const auto code = codeIn(*one, system))
            return code;
    }
    return std::nullopt;
}

std::optional<Kind> kindOf(JsonValue resource)
{
    const auto type = textAt(resource, "resourceType");
    const auto codeable = type == "Basic"sv ? resource.find("code") : std::nullopt;
    const auto code = codeable ? codeIn(*codeable, codeSystem("kind")) : categoryIn(resource, "kind");
    const auto kind = code ? kindOfCode(*code) : std::nullopt;
    return kind && type == resourceOf(*kind) ? kind : std::nullopt;
}

class ResourceReader
{
public:
    ResourceReader(JsonValue resource, std::string_view pointer, std::vector<Issue> &issues, Kind kind)
        : m_resource(resource)
        , m_fields(ruleOf(kind).fields, pointer, issues, m_found.body)
        , m_issues(issues)
        , m_kind(kind)
    {
    }

    std::optional<FoundEntry> read()
    {
        const std::size_t before = m_issues.size();
        m_found.entry.kind = m_kind;
        m_found.entry.id = identifierOf(m_resource, "entry").value_or(std::string_view());
        if (!isEntryId(m_found.entry.id))
            m_fields.refuse(IssueCode::ElementRefused, "/identifier", "identifier", m_found.entry.id);
        m_found.subject = need("subject/reference");
        switch (m_kind) {
        case Kind::Visit:
            readProcedure();
            break;
        case Kind::Plan:
            readCarePlan();
            break;
        case Kind::Complaint:
            readCondition();
            break;
        case Kind::Note:
            readCommunication();
            break;
        default:
            if (const ObservationShape *const shape = observationShape(m_kind))
                readObservation(*shape);
        }
        readExtension();
        checkStatus();
        if (m_issues.size() == before)
            checkWhole();
        if (m_issues.size() != before)
            return std::nullopt;
        m_found.entry.body = m_found.body.toJson();
        return std::move(m_found);
    }

private:
    std::string_view need(std::string_view path)
    {
        const auto text = textAt(m_resource, path);
        if (!text) {
            const std::string_view element = path.substr(0, path.find('/'));
            m_fields.refuse(
                m_resource.find(element) ? IssueCode::ElementRefused : IssueCode::ElementMissing, "/" + std::string(element), element);
        }
        return text.value_or(std::string_view());
    }

    void readDay(std::string_view element)
    {
        const std::string_view text = need(element);
        if (text.empty())
            return;
        if (const auto day = CivilDay::parse(text))
            setDay(*day, "/" + std::string(element));
        else
            m_fields.refuse(IssueCode::ElementRefused, "/" + std::string(element), element, text);
    }

    void setDay(CivilDay day, std::string_view path)
    {
        if (m_day)
            m_fields.refuse(IssueCode::KeyTwice, path, "day");
        m_day = day;
    }

    void readRecorded(std::string_view element)
    {
        if (m_resource.find(element))
            setRecorded(need(element), "/" + std::string(element));
    }

    void setRecorded(std::string_view text, std::string_view path)
    {
        const auto moment = parseMoment(text);
        if (!moment)
            m_fields.refuse(IssueCode::ElementRefused, path, "recorded", text);
        else if (m_found.entry.recorded)
            m_fields.refuse(IssueCode::KeyTwice, path, "recorded");
        else
            m_found.entry.recorded = moment;
    }

    /// A text where the resource has one; what is there must be one.
    void take(Field field, std::string_view element, std::string_view rest = {})
    {
        if (m_resource.find(element))
            m_fields.text(field, need(std::string(element) + std::string(rest)), "/" + std::string(element));
    }

    /// The value of a logical reference \a reference in our \a system, if it is one.
    static std::optional<std::string_view> named(JsonValue reference, std::string_view system)
    {
        return textAt(reference, "identifier/system") == identifierSystem(system) ? textAt(reference, "identifier/value") : std::nullopt;
    }

    void readComplaint(std::string_view element)
    {
        const auto list = m_resource.find(element);
        for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next()) {
            if (const auto key = named(*one, "complaint"))
                m_fields.text(Field::Complaint, *key, "/" + std::string(element));
        }
    }

    void readObservation(const ObservationShape &shape)
    {
        m_status = need("status");
        readDay("effectiveDateTime");
        readRecorded("issued");
        readComplaint("focus");
        const auto code = m_resource.find("code");
        if (m_kind == Kind::Outcome && code) {
            if (const auto outcome = codeIn(*code, codeSystem("outcome")))
                m_fields.text(Field::Kind, *outcome, "/code");
            if (const auto text = textAt(*code, "text"))
                m_fields.text(Field::Name, *text, "/code/text");
        } else {
            const bool isPain = m_kind == Kind::Check;
            const auto found = code ? codeIn(*code, isPain ? std::string(kLoinc) : codeSystem("measurement")) : std::nullopt;
            if (found != (isPain ? kPainCode : shape.code))
                m_fields.refuse(code ? IssueCode::ElementRefused : IssueCode::ElementMissing, "/code", "code", found.value_or(""));
        }
        if (const auto quantity = m_resource.find("valueQuantity")) {
            if (shape.value && m_kind == Kind::Outcome)
                readOutcomeValue(*quantity);
            else if (shape.value && m_kind != Kind::Flag)
                m_fields.quantity(*shape.value, *quantity, "/valueQuantity");
            else
                m_fields.refuse(IssueCode::ElementRefused, "/valueQuantity", "valueQuantity");
        }
        if (m_kind == Kind::Flag)
            take(Field::Sign, "valueString");
        if (const auto reason = m_resource.find("dataAbsentReason"); reason && m_kind == Kind::Check) {
            const auto why = codeIn(*reason, kAbsentSystem);
            if (why == kAskedDeclined)
                m_fields.text(Field::Declined, "1", "/dataAbsentReason");
            else
                m_fields.refuse(IssueCode::ElementRefused, "/dataAbsentReason", "dataAbsentReason", why.value_or(""));
        }
        if (m_kind == Kind::Flag)
            take(Field::Note, "note", "/text");
        if (m_kind == Kind::Outcome)
            take(Field::By, "performer", "/display");
        readComponents(shape);
    }

    void readOutcomeValue(JsonValue quantity)
    {
        m_fields.number(Field::Value, quantity.find("value"), "/valueQuantity/value");
        const auto code = textAt(quantity, "code");
        if (!code)
            return;
        const std::string_view unit = textAt(quantity, "system") == kUcum ? outcomeOfUcum(*code) : std::string_view();
        if (unit.empty())
            m_fields.refuse(IssueCode::ElementRefused, "/valueQuantity/code", "code", *code);
        else
            m_fields.text(Field::Unit, unit, "/valueQuantity/code");
    }

    void readComponents(const ObservationShape &shape)
    {
        const auto list = m_resource.find("component");
        std::size_t place = 0;
        for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next(), ++place) {
            const std::string path = "/component/" + std::to_string(place);
            const auto code = one->find("code");
            const auto ours = code ? codeIn(*code, codeSystem("measurement")) : std::nullopt;
            const bool isPain = code && codeIn(*code, kLoinc) == kPainCode;
            const auto found = std::find_if(shape.components.begin(), shape.components.end(),
                [&](const Component &known) { return known.code.empty() ? !ours && isPain : ours == known.code; });
            if (found == shape.components.end())
                m_fields.refuse(IssueCode::ElementRefused, path + "/code", "code", ours.value_or(""));
            else if (const auto quantity = one->find("valueQuantity"))
                m_fields.quantity(found->field, *quantity, path + "/valueQuantity");
            else
                m_fields.refuse(IssueCode::ElementMissing, path, "valueQuantity");
        }
    }

    void readProcedure()
    {
        m_status = need("status");
        readDay("performedDateTime");
        readComplaint("reasonReference");
        take(Field::By, "performer", "/actor/display");
        take(Field::Region, "bodySite", "/text");
    }

    void readCondition()
    {
        const auto verified = m_resource.find("verificationStatus");
        m_status = verified && codeIn(*verified, kVerificationSystem) == kInError ? kInError : "completed"sv;
        readRecorded("recordedDate");
        if (const auto key = identifierOf(m_resource, "complaint"))
            m_fields.text(Field::Complaint, *key, "/identifier");
        take(Field::Region, "code", "/text");
    }

    void readCommunication()
    {
        m_status = need("status");
        readRecorded("sent");
        readComplaint("about");
        const auto about = m_resource.find("about");
        for (auto one = about ? about->firstChild() : std::nullopt; one; one = one->next()) {
            if (const auto id = named(*one, "entry"))
                m_fields.text(Field::About, *id, "/about");
        }
        if (const auto kind = categoryIn(m_resource, "note-kind"))
            m_fields.text(Field::Kind, *kind, "/category");
        take(Field::Text, "payload", "/contentString");
    }

    void readCarePlan()
    {
        m_status = need("status");
        if (need("intent") != "plan"sv)
            m_fields.refuse(IssueCode::ElementRefused, "/intent", "intent");
        const auto start = textAt(m_resource, "period/start");
        const auto day = start ? CivilDay::parse(*start) : std::nullopt;
        if (day)
            setDay(*day, "/period/start");
        else
            m_fields.refuse(start ? IssueCode::ElementRefused : IssueCode::ElementMissing, "/period", "period");
        readRecorded("created");
        readComplaint("addresses");
        if (const auto plan = identifierOf(m_resource, "plan"))
            m_fields.text(Field::Plan, *plan, "/identifier");
        take(Field::By, "author", "/display");
        if (const auto replaces = m_resource.find("replaces"); replaces && replaces->firstChild()) {
            if (const auto url = textAt(*replaces, "reference"))
                m_found.replacesUrl = *url;
            else if (const auto id = named(*replaces->firstChild(), "entry"))
                setReplaces(*id, "/replaces");
            else
                m_fields.refuse(IssueCode::ElementRefused, "/replaces", "replaces");
        }
        auto items = readActivities(m_resource.find("activity"), m_fields);
        if (!items.empty() || m_status != kInError)
            m_found.body.set(Field::Items, std::move(items));
    }

    void setReplaces(std::string_view id, std::string_view path)
    {
        if (!isEntryId(id) || id == m_found.entry.id)
            m_fields.refuse(IssueCode::ElementRefused, path, "replaces", id);
        else if (m_found.entry.replaces)
            m_fields.refuse(IssueCode::KeyTwice, path, "replaces");
        else
            m_found.entry.replaces = id;
    }

    void readExtension()
    {
        const auto extension = soleExtension(m_resource, "entry");
        if (!extension) {
            m_fields.refuse(IssueCode::ElementMissing, "/extension", "extension");
            return;
        }
        std::optional<Author> author;
        std::optional<int> offset;
        m_fields.eachExtension(*extension, [&](std::string_view url, JsonValue one, std::string_view path) {
            if (url == "author"sv)
                author = authorNamed(textAt(one, "valueCode").value_or(""));
            else if (url == "day"sv)
                setNestedDay(one, path);
            else if (url == "recorded"sv)
                setRecorded(textAt(one, "valueInstant").value_or(""), path);
            else if (url == "replaces"sv)
                setReplaces(textAt(one, "valueString").value_or(""), path);
            else if (url == "offset"sv)
                offset = m_fields.whole(one.find("valueInteger"), -1439, 1439, path);
            else
                return false;
            return true;
        });
        if (!author)
            m_fields.refuse(IssueCode::ElementMissing, "/extension", "author");
        m_found.entry.author = author.value_or(Author::Patient);
        if (offset && m_found.entry.recorded)
            m_found.entry.recorded->offsetMinutes = *offset;
        if (m_day)
            m_found.entry.day = *m_day;
        else
            m_fields.refuse(IssueCode::ElementMissing, "/extension", "day");
    }

    void setNestedDay(JsonValue one, std::string_view path)
    {
        const auto text = textAt(one, "valueDate");
        if (const auto day = text ? CivilDay::parse(*text) : std::nullopt)
            setDay(*day, path);
        else
            m_fields.refuse(IssueCode::ElementRefused, path, "day", text.value_or(""));
    }

    /// A resource that another program marked as wrong, or not final yet, is no fact.
    void checkStatus()
    {
        const std::string_view resource = resourceOf(m_kind);
        if (resource == "Basic"sv)
            return;
        const bool isSaid = resource == "Observation"sv ? m_status == "final"sv || m_status == "amended"sv
            : resource == "CarePlan"sv                  ? m_status == "active"sv || m_status == "revoked"sv
                                                        : m_status == "completed"sv;
        if (m_found.body.has(Field::Withdrawn) ? m_status != kInError : !isSaid)
            m_fields.refuse(IssueCode::StatusRefused, "/status", "status", m_status);
    }

    void checkWhole()
    {
        const KindRule &rule = ruleOf(m_kind);
        if (m_found.entry.author == Author::Clinic ? !rule.clinic : !rule.patient)
            m_fields.refuse(IssueCode::AuthorRefused, "/extension", "author", name(m_found.entry.author));
        for (const BodyProblem &problem : problemsOf(m_kind, m_found.body, m_found.entry.day))
            m_fields.refuse(problem);
    }

    JsonValue m_resource;
    FoundEntry m_found{.entry = {.id = {}, .kind = Kind::Check, .day = *CivilDay::fromNumber(0)}};
    FieldReader m_fields;
    std::vector<Issue> &m_issues;
    Kind m_kind;
    std::optional<CivilDay> m_day;
    std::string_view m_status;
};

} // namespace

std::optional<FoundEntry> readResource(JsonValue resource, std::string_view pointer, std::vector<Issue> &issues)
{
    const auto kind = kindOf(resource);
    if (!kind) {
        issues.push_back({.code = IssueCode::OfNewerProgram, .pointer = std::string(pointer)});
        return std::nullopt;
    }
    return ResourceReader(resource, pointer, issues, *kind).read();
}

} // namespace morrow::fhir
