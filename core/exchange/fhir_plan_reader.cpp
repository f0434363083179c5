// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_plan_reader.h"

#include "exchange/fhir_paths.h"
#include "exchange/fhir_timing.h"

#include <algorithm>
#include <set>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

/// The rhythm of a stage, where its extension does not tell it; its slots are read already.
void readRhythm(const std::optional<JsonValue> &repeat, Body &stage, FieldReader &fields)
{
    if (stage.has(Field::Rrule) || stage.has(Field::PerWeek) || !repeat || !repeat->find("frequency"))
        return;
    Repeat told;
    const auto frequency = fields.whole(repeat->find("frequency"), 1, 1'000'000, "/scheduledTiming/repeat/frequency");
    const auto period = fields.whole(repeat->find("period"), 1, 1'000'000, "/scheduledTiming/repeat/period");
    if (!frequency || !period)
        return;
    told.frequency = *frequency;
    told.period = *period;
    told.unit = textAt(*repeat, "periodUnit").value_or("");
    const auto days = repeat->find("dayOfWeek");
    for (auto day = days ? days->firstChild() : std::nullopt; day; day = day->next())
        told.days.emplace_back(day->text());
    const std::size_t count = std::set<std::string>(told.days.begin(), told.days.end()).size();
    if (count != told.days.size() || !readRepeat(told, stage))
        fields.refuse(IssueCode::ElementRefused, "/scheduledTiming/repeat", "repeat");
}

/// Reads one activity into the stage that it is, and, where it is the first of an item, the item.
void readActivity(JsonValue detail, std::string_view path, const FieldReader &plan, std::vector<Body> &items)
{
    Body item;
    Body stage;
    FieldReader ofItem = plan.inside(itemRules(), path, item);
    FieldReader ofStage = plan.inside(stageRules(), path, stage);
    if (const auto status = textAt(detail, "status"); status != "scheduled"sv)
        ofStage.refuse(status ? IssueCode::StatusRefused : IssueCode::ElementMissing, "/status", "status", status.value_or(""));
    const auto extension = soleExtension(detail, "plan-stage");
    if (!extension) {
        ofStage.refuse(IssueCode::ElementMissing, "/extension", "extension");
        return;
    }
    ofStage.eachExtension(*extension, [&](std::string_view url, JsonValue one, std::string_view at) {
        const auto field = fieldOfUrl(url);
        const bool isOfItem = field == Field::Item || field == Field::Side || field == Field::Loads || field == Field::RestsAfterVisit
            || field == Field::Continues;
        if (!isOfItem)
            return false;
        ofItem.takeExtension(url, one, at);
        return true;
    });
    if (const auto point = detail.find("description"))
        ofStage.text(Field::KeyPoint, textAt(*point, "").value_or(""), "/description");
    if (const auto exercise = detail.find("code"))
        ofItem.text(Field::Exercise, textAt(*exercise, "text").value_or(""), "/code/text");
    const auto timing = detail.find("scheduledTiming");
    const auto repeat = timing ? timing->find("repeat") : std::nullopt;
    if (const auto bounds = repeat ? repeat->find("boundsPeriod") : std::nullopt) {
        if (const auto start = textAt(*bounds, "start"))
            ofItem.text(Field::Start, *start, "/scheduledTiming/repeat/boundsPeriod/start");
        if (const auto end = textAt(*bounds, "end"))
            ofItem.text(Field::End, *end, "/scheduledTiming/repeat/boundsPeriod/end");
    }
    readRhythm(repeat, stage, ofStage);

    const bool isNew = items.empty() || items.back().textOr(Field::Item) != item.textOr(Field::Item);
    if (isNew) {
        item.set(Field::Stages, std::vector<Body>{std::move(stage)});
        items.push_back(std::move(item));
        return;
    }
    // A later stage names its item and repeats its bounds, which its rhythm counts from.
    Body &first = items.back();
    for (const auto &[field, value] : item.fields()) {
        if (!first.find(field) || !(*first.find(field) == value))
            ofStage.refuse(IssueCode::ElementRefused, "", name(field));
    }
    if (first.has(Field::End) != item.has(Field::End))
        ofStage.refuse(IssueCode::ElementRefused, "", name(Field::End));
    std::vector<Body> stages = *first.list(Field::Stages);
    stages.push_back(std::move(stage));
    first.set(Field::Stages, std::move(stages));
}

} // namespace

const FieldRule *FieldReader::ruleOf(Field field) const noexcept
{
    const auto found = std::find_if(m_rules.begin(), m_rules.end(), [field](const FieldRule &rule) { return rule.field == field; });
    return found == m_rules.end() ? nullptr : &*found;
}

void FieldReader::refuse(IssueCode code, std::string_view path, std::string_view element, std::string_view value) const
{
    m_issues.push_back(
        {.code = code, .columnName = std::string(element), .pointer = m_pointer + std::string(path), .value = std::string(value)});
}

void FieldReader::refuse(const BodyProblem &problem) const
{
    using Code = BodyProblem::Code;
    const IssueCode code = problem.code == Code::Missing               ? IssueCode::ValueMissing
        : problem.code == Code::NotAllowed                             ? IssueCode::NotAllowedHere
        : problem.field == Field::To && problem.other == Field::From   ? IssueCode::PauseEndsBeforeStart
        : problem.field == Field::End && problem.other == Field::Start ? IssueCode::ItemEndsBeforeStart
                                                                       : IssueCode::ValueRefused;
    Issue issue{.code = code, .columnName = std::string(name(problem.field)), .pointer = m_pointer, .rule = problem.rule};
    if (code == IssueCode::NotAllowedHere)
        issue.other = name(problem.other);
    if (const Decimal *const number = m_body.number(problem.field))
        issue.value = number->toString();
    else
        issue.value = m_body.textOr(problem.field);
    m_issues.push_back(std::move(issue));
}

void FieldReader::text(Field field, std::string_view text, std::string_view path)
{
    const FieldRule *const rule = ruleOf(field);
    if (!rule) {
        refuse(IssueCode::OfNewerProgram, path, name(field));
        return;
    }
    auto value = readValue(*rule, text);
    if (!value) {
        refuse(IssueCode::ValueRefused, path, name(field), text);
        m_issues.back().rule = rule;
    } else if (m_body.has(field)) {
        refuse(IssueCode::KeyTwice, path, name(field));
    } else {
        m_body.set(field, *std::move(value));
    }
}

void FieldReader::number(Field field, const std::optional<JsonValue> &value, std::string_view path)
{
    if (!value || value->type() != JsonType::Number)
        refuse(value ? IssueCode::ElementRefused : IssueCode::ElementMissing, path, name(field));
    else
        text(field, value->text(), path);
}

void FieldReader::quantity(Field field, JsonValue quantity, std::string_view path)
{
    const auto code = textAt(quantity, "code");
    if (code != unitOf(field) || textAt(quantity, "system") != kUcum) {
        refuse(IssueCode::UnitRefused, path, name(field), code.value_or(""));
        m_issues.back().other = unitOf(field);
        return;
    }
    number(field, quantity.find("value"), std::string(path) + "/value");
}

std::optional<int> FieldReader::whole(const std::optional<JsonValue> &value, int least, int most, std::string_view path) const
{
    const auto number = value && value->type() == JsonType::Number ? Decimal::parse(value->text()) : std::nullopt;
    if (number && number->isWhole() && *number >= Decimal::whole(least) && *number <= Decimal::whole(most))
        return number->toInt();
    refuse(value ? IssueCode::ElementRefused : IssueCode::ElementMissing, path, path.substr(path.rfind('/') + 1),
        value ? value->text() : std::string_view());
    return std::nullopt;
}

void FieldReader::takeExtension(std::string_view url, JsonValue extension, std::string_view path)
{
    const auto field = fieldOfUrl(url);
    const FieldRule *const rule = field ? ruleOf(*field) : nullptr;
    if (!rule) {
        refuse(IssueCode::OfNewerProgram, path, url);
        return;
    }
    const std::string_view valueName = valueNameOf(*rule);
    const auto value = extension.find(valueName);
    if (!value) {
        refuse(IssueCode::ElementMissing, path, valueName);
        return;
    }
    if (valueName == "valueQuantity"sv)
        quantity(*field, *value, path);
    else if (valueName == "valueInteger"sv || valueName == "valueDecimal"sv)
        number(*field, value, path);
    else if (value->type() == JsonType::String)
        text(*field, value->text(), path);
    else
        refuse(IssueCode::ElementRefused, path, valueName);
}

void FieldReader::eachExtension(const ComplexExtension &complex, const Takes &takes)
{
    const auto list = complex.value.find("extension");
    std::set<std::string_view> urls;
    std::size_t place = 0;
    for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next(), ++place) {
        const std::string_view url = textAt(*one, "url").value_or("");
        const std::string path = complex.path + "/extension/" + std::to_string(place);
        if (!urls.insert(url).second)
            refuse(IssueCode::KeyTwice, path, url);
        else if (!takes(url, *one, path))
            takeExtension(url, *one, path);
    }
}

std::optional<ComplexExtension> soleExtension(JsonValue element, std::string_view name)
{
    const auto list = element.find("extension");
    const std::string wanted = profile(name);
    std::optional<ComplexExtension> found;
    std::size_t place = 0;
    for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next(), ++place) {
        if (textAt(*one, "url") != wanted)
            continue;
        if (found)
            return std::nullopt;
        found = ComplexExtension{*one, "/extension/" + std::to_string(place)};
    }
    return found;
}

std::vector<Body> readActivities(const std::optional<JsonValue> &activities, const FieldReader &plan)
{
    std::vector<Body> items;
    std::size_t place = 0;
    for (auto one = activities ? activities->firstChild() : std::nullopt; one; one = one->next(), ++place) {
        const std::string path = "/activity/" + std::to_string(place);
        if (const auto detail = one->find("detail"))
            readActivity(*detail, path + "/detail", plan, items);
        else
            plan.refuse(IssueCode::ElementMissing, path, "detail");
    }
    return items;
}

} // namespace morrow::fhir
