// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/clock.h"
#include "base/ids.h"
#include "base/utf8.h"
#include "model/rhythm.h"
#include "model/rules.h"

#include <algorithm>
#include <array>

namespace morrow {

namespace {

using namespace std::string_view_literals;

std::optional<std::string> readWords(std::string_view words)
{
    std::vector<std::string_view> seen;
    for (std::size_t at = 0; at <= words.size();) {
        const std::size_t space = std::min(words.find(' ', at), words.size());
        const std::string_view word = words.substr(at, space - at);
        if (word.empty() || std::find(seen.begin(), seen.end(), word) != seen.end())
            return std::nullopt;
        seen.push_back(word);
        at = space + 1;
    }
    return std::string(words);
}

std::optional<std::string> readAsks(std::string_view text)
{
    static constexpr std::array all{"stiffness"sv, "during"sv, "after"sv, "spare"sv};
    if (text == "none"sv)
        return std::string(text);
    if (!readWords(text))
        return std::nullopt;
    // One order for one meaning.
    std::string ordered;
    std::size_t known = 0;
    const std::string padded = ' ' + std::string(text) + ' ';
    for (const std::string_view ask : all) {
        if (padded.find(' ' + std::string(ask) + ' ') != std::string::npos) {
            ordered += (ordered.empty() ? "" : " ") + std::string(ask);
            ++known;
        }
    }
    if (known != static_cast<std::size_t>(std::count(text.begin(), text.end(), ' ')) + 1)
        return std::nullopt;
    return ordered;
}

bool isTimeOfDay(std::string_view text) noexcept
{
    const auto digit = [text](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
    return text.size() == 5 && text[2] == ':' && digit(0) && digit(1) && digit(3) && digit(4) && text.substr(0, 2) < "24"sv
        && text[3] < '6';
}

bool hasSpace(std::string_view text) noexcept
{
    return text.find_first_of(" \t\r\n"sv) != std::string_view::npos;
}

std::optional<Body::Value> readNumber(const FieldRule &rule, std::string_view text)
{
    const auto number = Decimal::parse(text);
    if (!number || *number < rule.least || *number > rule.most || (rule.form == Form::Whole && !number->isWhole()))
        return std::nullopt;
    return *number;
}

constexpr FieldRule bounded(int least, int most)
{
    return {.field = Field::Value, .form = Form::Whole, .least = Decimal::whole(least), .most = Decimal::whole(most)};
}

/// The bounds that the kind of an outcome sets for its value; nullptr for a test.
const FieldRule *outcomeBounds(std::string_view kind) noexcept
{
    static constexpr FieldRule activity = bounded(0, 10);
    static constexpr FieldRule overall = bounded(0, 100);
    static constexpr FieldRule change = bounded(-5, 5);
    static constexpr FieldRule acceptable = bounded(0, 1);
    return kind == "activity"sv  ? &activity
        : kind == "overall"sv    ? &overall
        : kind == "change"sv     ? &change
        : kind == "acceptable"sv ? &acceptable
                                 : nullptr;
}

using Problems = std::vector<BodyProblem>;

void findWithdrawnExtras(const KindRule &rule, const Body &body, Problems &problems)
{
    for (const auto &[field, value] : body.fields()) {
        const FieldRule *const fieldRule = ruleOf(rule.kind, field);
        if (field != Field::Withdrawn && !(fieldRule && fieldRule->names))
            problems.push_back({BodyProblem::Code::NotAllowed, field, Field::Withdrawn});
    }
}

/// What an item says of its stages and its days, which its fields one by one cannot tell.
void findItemContradictions(const Body &item, bool rests, Problems &problems)
{
    using Code = BodyProblem::Code;
    const auto start = CivilDay::parse(item.textOr(Field::Start));
    const auto end = CivilDay::parse(item.textOr(Field::End));
    if (start && end && *end < *start)
        problems.push_back({Code::OutOfBounds, Field::End, Field::Start});
    if (item.intOr(Field::RestsAfterVisit, 0) == 1 && !rests)
        problems.push_back({Code::Missing, Field::RestDaysAfterVisit, Field::RestsAfterVisit});
    const std::vector<Body> *const stages = item.list(Field::Stages);
    if (!stages || stages->empty())
        problems.push_back({Code::Missing, Field::Stages, Field::Stages});
    for (std::size_t i = 0; stages && i < stages->size(); ++i) {
        const Body &stage = (*stages)[i];
        if (stage.intOr(Field::Stage, 0) != static_cast<int>(i) + 1)
            problems.push_back({Code::OutOfBounds, Field::Stage, Field::Stages});
        if (!stage.has(Field::Reps) && stage.intOr(Field::HoldS, 0) == 0)
            problems.push_back({Code::Missing, Field::Reps, Field::HoldS});
        if (stage.has(Field::Rrule) == stage.has(Field::PerWeek))
            problems.push_back({stage.has(Field::Rrule) ? Code::NotAllowed : Code::Missing, Field::Rrule, Field::PerWeek});
        if (stage.has(Field::Rrule) && !stage.has(Field::Slots))
            problems.push_back({Code::Missing, Field::Slots, Field::Rrule});
    }
}

void findPlanContradictions(const Body &plan, Problems &problems)
{
    const std::vector<Body> *const items = plan.list(Field::Items);
    std::vector<std::string_view> keys;
    for (std::size_t i = 0; items && i < items->size(); ++i) {
        const std::string_view key = (*items)[i].textOr(Field::Item);
        if (std::find(keys.begin(), keys.end(), key) != keys.end())
            problems.push_back({BodyProblem::Code::NotAllowed, Field::Item, Field::Items});
        keys.push_back(key);
        findItemContradictions((*items)[i], plan.intOr(Field::RestDaysAfterVisit, 0) > 0, problems);
    }
}

void findContradictions(Kind kind, const Body &body, std::optional<CivilDay> day, Problems &problems)
{
    using Code = BodyProblem::Code;
    if (kind == Kind::Check && body.intOr(Field::Declined, 0) == 1 && body.has(Field::Pain))
        problems.push_back({Code::NotAllowed, Field::Pain, Field::Declined});
    if (kind == Kind::Pause && day && body.text(Field::To)) {
        const auto to = CivilDay::parse(*body.text(Field::To));
        if (to && *to < *day)
            problems.push_back({Code::OutOfBounds, Field::To, Field::From});
    }
    if (kind == Kind::Plan)
        findPlanContradictions(body, problems);
    if (kind == Kind::Note && !body.has(Field::Text) && body.textOr(Field::Kind) != "unsure"sv)
        problems.push_back({Code::Missing, Field::Text, Field::Kind});
    if (kind == Kind::Outcome) {
        const std::string_view outcome = body.textOr(Field::Kind);
        const FieldRule *const bounds = outcomeBounds(outcome);
        const Decimal *const value = body.number(Field::Value);
        if (bounds && value && !readNumber(*bounds, value->toString()))
            problems.push_back({Code::OutOfBounds, Field::Value, Field::Kind, bounds});
        if ((outcome == "activity"sv || outcome == "test"sv) && !body.has(Field::Name))
            problems.push_back({Code::Missing, Field::Name, Field::Kind});
        if (outcome == "test"sv && !body.has(Field::Unit))
            problems.push_back({Code::Missing, Field::Unit, Field::Kind});
    }
}

/// Whether \a value is what reading it as text by \a rule would give.
bool hasForm(const FieldRule &rule, const Body::Value &value)
{
    if (std::holds_alternative<std::vector<Body>>(value))
        return rule.form == Form::List;
    const auto *const number = std::get_if<Decimal>(&value);
    return readValue(rule, number ? number->toString() : std::get<std::string>(value)) == value;
}

void findForms(std::span<const FieldRule> rules, const Body &body, Problems &problems)
{
    for (const auto &[field, value] : body.fields()) {
        const auto rule = std::find_if(rules.begin(), rules.end(), [name = field](const FieldRule &one) { return one.field == name; });
        if (rule == rules.end())
            problems.push_back({BodyProblem::Code::Unknown, field, field});
        else if (!hasForm(*rule, value))
            problems.push_back({BodyProblem::Code::Form, field, field, &*rule});
    }
}

/// What an item or a stage inside a plan needs; the plan itself is like any other body.
void findInList(std::span<const FieldRule> rules, const std::vector<Body> &list, Problems &problems)
{
    for (const Body &body : list) {
        findForms(rules, body, problems);
        for (const FieldRule &rule : rules) {
            if (rule.required && !body.has(rule.field))
                problems.push_back({BodyProblem::Code::Missing, rule.field, rule.field});
        }
    }
}

} // namespace

std::optional<Body::Value> readValue(const FieldRule &rule, std::string_view text)
{
    if (text.empty() || firstInvalidUtf8(text) || hasControlCharacter(text))
        return std::nullopt;
    const auto textIf = [text](bool good) -> std::optional<Body::Value> {
        if (!good)
            return std::nullopt;
        return std::string(text);
    };
    switch (rule.form) {
    case Form::Text:
        return std::string(text);
    case Form::Id:
        return textIf(isEntryId(text));
    case Form::Word:
        return textIf(!hasSpace(text));
    case Form::Words:
        return textIf(readWords(text).has_value());
    case Form::Number:
    case Form::Whole:
        return readNumber(rule, text);
    case Form::Day:
        return textIf(CivilDay::parse(text).has_value());
    case Form::TimeOfDay:
        return textIf(isTimeOfDay(text));
    case Form::Moment:
        return textIf(parseMoment(text).has_value());
    case Form::Choice:
        return textIf(std::find(rule.choices.begin(), rule.choices.end(), text) != rule.choices.end());
    case Form::Rule:
        if (const auto parsed = RecurrenceRule::parse(text))
            return parsed->toString();
        return std::nullopt;
    case Form::Asks:
        if (auto asks = readAsks(text))
            return *std::move(asks);
        return std::nullopt;
    case Form::List:
        break;
    }
    return std::nullopt;
}

std::vector<BodyProblem> problemsOf(Kind kind, const Body &body, std::optional<CivilDay> day)
{
    const KindRule &rule = ruleOf(kind);
    const bool withdrawn = body.has(Field::Withdrawn);
    Problems problems;
    for (const FieldRule &field : rule.fields) {
        const bool isAbout = std::find(rule.about.fields.begin(), rule.about.fields.end(), field.field) != rule.about.fields.end();
        if (field.required && !body.has(field.field) && (!withdrawn || isAbout || field.field == Field::Complaint))
            problems.push_back({BodyProblem::Code::Missing, field.field, field.field});
    }
    if (withdrawn)
        findWithdrawnExtras(rule, body, problems);
    else
        findContradictions(kind, body, day, problems);
    return problems;
}

std::vector<BodyProblem> formProblemsOf(Kind kind, const Body &body)
{
    Problems problems;
    findForms(ruleOf(kind).fields, body, problems);
    const std::vector<Body> *const items = body.list(Field::Items);
    if (!items)
        return problems;
    findInList(itemRules(), *items, problems);
    for (const Body &item : *items) {
        if (const std::vector<Body> *const stages = item.list(Field::Stages))
            findInList(stageRules(), *stages, problems);
    }
    return problems;
}

} // namespace morrow
