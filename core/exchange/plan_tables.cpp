// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/plan_tables.h"

#include "base/ids.h"
#include "exchange/table_layout.h"
#include "exchange/table_reader.h"
#include "model/rhythm.h"

#include <algorithm>

namespace morrow {

namespace {

std::vector<TableReader::Column> columnNames(std::span<const PlainColumn> columns)
{
    std::vector<TableReader::Column> names;
    for (const PlainColumn &column : columns)
        names.push_back({column.name, column.required});
    return names;
}

std::size_t placeOf(std::span<const PlainColumn> columns, std::string_view name)
{
    return static_cast<std::size_t>(
        std::find_if(columns.begin(), columns.end(), [name](const PlainColumn &c) { return c.name == name; }) - columns.begin());
}

std::string shown(const Body::Value &value)
{
    if (const auto *number = std::get_if<Decimal>(&value))
        return number->toString();
    return std::get<std::string>(value);
}

std::optional<CivilDay> day(const Body &body, Field field)
{
    return CivilDay::parse(body.textOr(field));
}

} // namespace

PlanTables::PlanTables(std::map<std::string, std::string, std::less<>> &files, std::vector<Issue> &issues)
    : m_issues(issues)
{
    const auto bytes = [&files](std::string_view name) {
        const auto found = files.find(name);
        return found == files.end() ? nullptr : &found->second;
    };
    const std::size_t before = issues.size();
    readComplaints(bytes(kComplaintsFile));
    m_isKnown = issues.size() == before;
    readPlan(bytes(kPlanFile));
    m_isKnown = issues.size() == before;
    readSettings(bytes(kSettingsFile));
    m_isKnown = issues.size() == before;
    if (m_isKnown)
        completeChecks();
}

void PlanTables::readComplaints(std::string *bytes)
{
    m_hasComplaintsFile = bytes != nullptr;
    if (!bytes) {
        Body body;
        body.set(Field::Complaint, std::string("main"));
        body.set(Field::Place, Decimal::whole(1));
        m_complaints.push_back({"main", std::move(body), {}, {}, {}});
        return;
    }
    const auto columns = complaintColumns();
    TableReader table(kComplaintsFile, *bytes, m_issues);
    if (!table.open(columnNames(columns)))
        return;
    std::map<std::string, int, std::less<>> lines;
    while (table.next()) {
        Body body;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (auto value = table.value(i, *columns[i].rule))
                body.set(columns[i].rule->field, *std::move(value));
        }
        ComplaintRow row{std::string(body.textOr(Field::Complaint)), {}, day(body, Field::Started), day(body, Field::From),
            std::string(body.textOr(Field::EndReason))};
        if (!row.ended && !row.endReason.empty() && table.rowIsGood())
            table.refuse(IssueCode::NotAllowedHere, placeOf(columns, "end_reason")).other = "ended";
        if (const auto [first, isNew] = lines.emplace(row.key, table.line()); !isNew && !row.key.empty())
            table.refuse(IssueCode::SameThingTwice, 0).other = std::to_string(first->second);
        body.remove(Field::From);
        body.remove(Field::EndReason);
        body.set(Field::Place, Decimal::whole(static_cast<int>(m_complaints.size()) + 1));
        row.body = std::move(body);
        m_complaints.push_back(std::move(row));
    }
}

void PlanTables::readPlan(std::string *bytes)
{
    if (!bytes)
        return;
    const auto columns = planColumns();
    const std::size_t before = m_issues.size();
    TableReader table(kPlanFile, *bytes, m_issues);
    if (!table.open(columnNames(columns)))
        return;
    const std::size_t complaintColumn = placeOf(columns, "complaint");
    while (table.next()) {
        Body ofItem;
        Body ofStage;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (auto value = table.value(i, *columns[i].rule))
                (isOfWholeItem(columns[i].rule->field) ? ofItem : ofStage).set(columns[i].rule->field, *std::move(value));
        }
        if (!ofItem.has(Field::Complaint) && !m_complaints.empty())
            ofItem.set(Field::Complaint, m_complaints.front().key);
        if (const std::string_view complaint = ofItem.textOr(Field::Complaint); m_isKnown && table.rowIsGood() && !hasComplaint(complaint))
            table.refuse(IssueCode::UnknownComplaint, complaintColumn).value = complaint;
        if (!table.rowIsGood())
            continue;

        const CivilDay start = *day(ofItem, Field::Start);
        if (const auto end = day(ofItem, Field::End); end && *end < start)
            table.refuse(IssueCode::ItemEndsBeforeStart, placeOf(columns, "end")).other = start.toString();
        const bool onDays = ofStage.has(Field::Rrule) && ofStage.has(Field::Slots);
        const bool anyDays = ofStage.has(Field::PerWeek) && !ofStage.has(Field::Rrule) && ofStage.textOr(Field::Slots, "day") == "day";
        if (onDays == anyDays || (onDays && ofStage.has(Field::PerWeek)))
            table.refuse(IssueCode::RhythmUnclear, placeOf(columns, "rrule"));
        if (const std::string *const rule = ofStage.text(Field::Rrule))
            ofStage.set(Field::Rrule, RecurrenceRule::parse(*rule)->startingOn(start).toString());
        if (!ofStage.has(Field::Reps) && ofStage.intOr(Field::HoldS, 0) == 0)
            table.refuse(IssueCode::RepsMissing, placeOf(columns, "reps"));

        const std::string key(ofItem.textOr(Field::Item));
        auto item = std::find_if(m_items.begin(), m_items.end(), [&key](const ItemRows &known) { return known.key == key; });
        if (item == m_items.end()) {
            m_items.push_back({key, std::string(ofItem.textOr(Field::Complaint)), table.line(), start, std::move(ofItem), {}, {}});
            m_items.back().restIssue = table.issueAt(IssueCode::RestWithoutDays, table.line(), name(Field::RestsAfterVisit));
            item = std::prev(m_items.end());
        } else if (item->body != ofItem) {
            for (std::size_t i = 0; i < columns.size(); ++i) {
                const Field field = columns[i].rule->field;
                const Body::Value *const first = item->body.find(field);
                const Body::Value *const here = ofItem.find(field);
                if (!isOfWholeItem(field) || (first && here ? *first == *here : first == here))
                    continue;
                Issue &issue = table.refuse(IssueCode::ItemRowsDisagree, i);
                issue.value = here ? shown(*here) : std::string();
                issue.other = first ? shown(*first) : std::string();
                break;
            }
        }
        const int stage = ofStage.intOr(Field::Stage, 0);
        if (!item->stages.emplace(stage, std::move(ofStage)).second)
            table.refuse(IssueCode::SameThingTwice, placeOf(columns, "stage")).value = std::to_string(stage);
    }
    if (m_issues.size() == before)
        checkItems(table);
}

/// What can be said about an item only when all of its rows are known.
void PlanTables::checkItems(const TableReader &table)
{
    for (const ItemRows &item : m_items) {
        if (item.stages.rbegin()->first != static_cast<int>(item.stages.size())) {
            Issue issue = table.issueAt(IssueCode::StageOrder, item.line, "stage");
            issue.value = item.key;
            m_issues.push_back(std::move(issue));
        }
        const std::string_view continued = item.body.textOr(Field::Continues);
        if (!continued.empty() && stagesOf(continued) == 0) {
            Issue issue = table.issueAt(IssueCode::UnknownItem, item.line, "continues");
            issue.value = continued;
            m_issues.push_back(std::move(issue));
        }
    }
}

void PlanTables::readSettings(std::string *bytes)
{
    const std::size_t before = m_issues.size();
    if (bytes)
        readSettingRows(*bytes);
    if (m_issues.size() != before || !m_isKnown)
        return;
    for (const ItemRows &item : m_items) {
        if (item.body.intOr(Field::RestsAfterVisit, 0) == 1 && !rests(item.complaint))
            m_issues.push_back(item.restIssue);
    }
    if (const Body::Value *const person = setting({}, "patient_ref"))
        m_person = std::get<std::string>(*person);
    checkPlanIds();
    if (m_complaints.empty())
        return;
    ComplaintRow &first = m_complaints.front();
    if (const Body::Value *const pain = setting(first.key, "first_assessment_pain"))
        first.body.set(Field::FirstAssessmentPain, *pain);
}

/// Two complaints have two plans, and of one id and number there is one only.
void PlanTables::checkPlanIds()
{
    std::map<std::pair<std::string, std::string>, const SettingCell *> known;
    for (const ComplaintRow &complaint : m_complaints) {
        if (!firstStart(complaint.key))
            continue;
        const SettingCell *const id = settingCell(complaint.key, "plan_id");
        const Body::Value *const number = setting(complaint.key, "plan_number");
        const std::string text = id ? shown(id->value) : defaultPlanId(m_person.value_or(std::string()), complaint.key);
        const auto [first, isNew] = known.emplace(std::pair(text, number ? shown(*number) : "1"), id);
        const SettingCell *const named = id ? id : first->second;
        if (isNew || !named)
            continue;
        Issue issue = named->place;
        issue.value = text;
        issue.other = std::to_string((first->second ? first->second : named)->place.line);
        m_issues.push_back(std::move(issue));
    }
}

void PlanTables::readSettingRows(std::string &bytes)
{
    const auto columns = settingsColumns();
    TableReader table(kSettingsFile, bytes, m_issues);
    if (!table.open(columnNames(columns)))
        return;
    while (table.next()) {
        const auto name = table.text(0, *columns[0].rule);
        const auto complaint = table.text(2, *columns[2].rule).value_or(std::string());
        const SettingKey *const key = name ? settingKey(*name) : nullptr;
        if (name && !key)
            table.refuse(IssueCode::UnknownSetting, 0).value = *name;
        if (!key)
            continue;
        auto value = table.value(1, *key->rule);
        if (table.rowIsGood())
            checkSettingPlace(table, *key, complaint, value.has_value());
        if (!value || !table.rowIsGood())
            continue;
        const auto [first, isNew] = m_settings[complaint].emplace(
            *name, SettingCell{*std::move(value), table.issueAt(IssueCode::TwoContentsForOneId, table.line(), "value")});
        if (!isNew)
            table.refuse(IssueCode::SameThingTwice, 0).other = std::to_string(first->second.place.line);
    }
}

/// Whether a key may stand in a row of \a complaint. An empty value is as if the row were absent.
void PlanTables::checkSettingPlace(TableReader &table, const SettingKey &key, std::string_view complaint, bool hasValue)
{
    using enum SettingKey::Belongs;
    if (!complaint.empty() && (key.belongs == ToPerson || key.belongs == ToDiary)) {
        table.refuse(IssueCode::NotAllowedHere, 2).other = key.name;
    } else if (hasValue && key.belongs == ToComplaint && m_hasComplaintsFile) {
        table.refuse(IssueCode::NotAllowedHere, 0).other = kComplaintsFile;
    } else if (m_isKnown && !complaint.empty() && !hasComplaint(complaint)) {
        table.refuse(IssueCode::UnknownComplaint, 2).value = complaint;
    } else if (m_isKnown && hasValue && key.belongs == ToPlan) {
        const bool hasItem = std::any_of(
            m_items.begin(), m_items.end(), [complaint](const ItemRows &item) { return complaint.empty() || item.complaint == complaint; });
        if (!hasItem)
            table.refuse(IssueCode::PlanKeyWithoutItem, 0).value = key.name;
    }
}

/// The rule of a complaint's check starts with the complaint, which its items tell.
void PlanTables::completeChecks()
{
    for (ComplaintRow &complaint : m_complaints) {
        const auto start = firstStart(complaint.key);
        const std::string *const rule = complaint.body.text(Field::Check);
        if (start && rule)
            complaint.body.set(Field::Check, RecurrenceRule::parse(*rule)->startingOn(*start).toString());
    }
}

bool PlanTables::rests(std::string_view complaint) const
{
    const Body::Value *const days = setting(complaint, name(Field::RestDaysAfterVisit));
    return days && std::get<Decimal>(*days) > Decimal();
}

const PlanTables::SettingCell *PlanTables::settingCell(std::string_view complaint, std::string_view key) const
{
    for (const std::string_view of : {complaint, std::string_view()}) {
        const auto group = m_settings.find(of);
        if (group == m_settings.end())
            continue;
        const auto found = group->second.find(key);
        if (found != group->second.end())
            return &found->second;
    }
    return nullptr;
}

const Body::Value *PlanTables::setting(std::string_view complaint, std::string_view key) const
{
    const SettingCell *const cell = settingCell(complaint, key);
    return cell ? &cell->value : nullptr;
}

std::string_view PlanTables::firstComplaint() const noexcept
{
    return m_complaints.empty() ? std::string_view() : std::string_view(m_complaints.front().key);
}

bool PlanTables::hasComplaint(std::string_view key) const noexcept
{
    return std::any_of(m_complaints.begin(), m_complaints.end(), [key](const ComplaintRow &row) { return row.key == key; });
}

int PlanTables::stagesOf(std::string_view key) const noexcept
{
    for (const ItemRows &item : m_items) {
        if (item.key == key)
            return static_cast<int>(item.stages.size());
    }
    return 0;
}

std::optional<CivilDay> PlanTables::earliestDay() const noexcept
{
    std::optional<CivilDay> earliest = firstStart();
    for (const ComplaintRow &row : m_complaints) {
        for (const auto &day : {row.started, row.ended}) {
            if (day)
                earliest = std::min(earliest.value_or(*day), *day);
        }
    }
    return earliest;
}

std::optional<CivilDay> PlanTables::firstStart() const noexcept
{
    std::optional<CivilDay> first;
    for (const ItemRows &item : m_items)
        first = std::min(first.value_or(item.start), item.start);
    return first;
}

std::optional<CivilDay> PlanTables::firstStart(std::string_view complaint) const noexcept
{
    std::optional<CivilDay> first;
    for (const ItemRows &item : m_items) {
        if (item.complaint == complaint)
            first = std::min(first.value_or(item.start), item.start);
    }
    return first;
}

Body PlanTables::planBody(const ComplaintRow &complaint) const
{
    Body body;
    body.set(Field::Complaint, complaint.key);
    body.set(Field::Plan, defaultPlanId(m_person.value_or(std::string()), complaint.key));
    body.set(Field::Number, Decimal::whole(1));
    for (const SettingKey &key : settingKeys()) {
        const Body::Value *const value = key.belongs == SettingKey::Belongs::ToPlan ? setting(complaint.key, key.name) : nullptr;
        if (!value || key.name == "plan_from")
            continue;
        const Field field = key.name == "plan_id" ? Field::Plan : key.name == "plan_by" ? Field::By : key.rule->field;
        body.set(field, *value);
    }
    std::vector<Body> items;
    for (const ItemRows &item : m_items) {
        if (item.complaint != complaint.key)
            continue;
        Body itemBody = item.body;
        itemBody.remove(Field::Complaint);
        std::vector<Body> stages;
        for (const auto &[number, stage] : item.stages)
            stages.push_back(stage);
        itemBody.set(Field::Stages, std::move(stages));
        items.push_back(std::move(itemBody));
    }
    body.set(Field::Items, std::move(items));
    return body;
}

std::vector<Entry> PlanTables::entries(CivilDay earliest, Sha256 &hash) const
{
    std::vector<Entry> all;
    const auto add = [&](Kind kind, CivilDay day, const Body &body) {
        Entry entry{{}, kind, day, {}, defaultAuthor(kind, body), {}, body.toJson()};
        entry.id = derivedId(entry, hash);
        all.push_back(std::move(entry));
    };
    for (const ComplaintRow &complaint : m_complaints) {
        const auto start = firstStart(complaint.key);
        add(Kind::Complaint, complaint.started.value_or(start.value_or(earliest)), complaint.body);
        if (start) {
            const Body::Value *const from = setting(complaint.key, "plan_from");
            const CivilDay day = from ? *CivilDay::parse(std::get<std::string>(*from)) : *start;
            add(Kind::Plan, day, planBody(complaint));
        }
        if (complaint.ended) {
            Body body;
            body.set(Field::Complaint, complaint.key);
            if (!complaint.endReason.empty())
                body.set(Field::EndReason, complaint.endReason);
            add(Kind::Closed, *complaint.ended, body);
        }
    }
    for (const SettingKey &key : settingKeys()) {
        const Body::Value *const value = key.belongs == SettingKey::Belongs::ToDiary ? setting({}, key.name) : nullptr;
        if (!value)
            continue;
        Body body;
        body.set(Field::Key, std::string(key.name));
        body.set(Field::Value, shown(*value));
        add(Kind::Setting, firstStart().value_or(earliest), body);
    }
    return all;
}

std::string defaultPlanId(std::string_view person, std::string_view complaint)
{
    std::string message = "plan\x1f";
    message += person;
    message += '\x1f';
    message += complaint;
    return uuidFromDigest(sha256(message));
}

} // namespace morrow
