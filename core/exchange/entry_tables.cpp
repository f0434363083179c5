// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/entry_tables.h"

#include "base/clock.h"
#include "base/ids.h"
#include "exchange/table_reader.h"

#include <algorithm>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace morrow {

namespace {

/// The column of \a table that holds \a field, or of \a role; its size if there is none.
std::size_t placeOf(const EntryTable &table, Field field)
{
    const auto found = std::find_if(table.columns.begin(), table.columns.end(),
        [field](const TableColumn &c) { return c.role == ColumnRole::Own && c.rule->field == field; });
    return static_cast<std::size_t>(found - table.columns.begin());
}

std::size_t placeOf(const EntryTable &table, ColumnRole role)
{
    const auto found = std::find_if(table.columns.begin(), table.columns.end(), [role](const TableColumn &c) { return c.role == role; });
    return static_cast<std::size_t>(found - table.columns.begin());
}

/// A text that is the same for two entries of a kind exactly when they are about the same thing.
std::string thingOf(const Entry &entry, const Body &body)
{
    std::string thing(name(entry.kind));
    thing += '\x1f';
    thing += std::to_string(entry.day.number());
    for (const Field field : ruleOf(entry.kind).about.fields) {
        thing += '\x1f';
        if (const Decimal *const number = body.number(field))
            thing += number->toString();
        else
            thing += body.textOr(field);
    }
    return thing;
}

} // namespace

EntryTables::EntryTables(
    std::map<std::string, std::string, std::less<>> &files, const PlanTables &plan, Sha256 &hash, std::vector<Issue> &issues)
    : m_plan(plan)
    , m_hash(hash)
    , m_issues(issues)
{
    for (const EntryTable &table : entryTables()) {
        const auto found = files.find(table.file);
        if (found != files.end())
            readTable(table, found->second);
    }
}

std::vector<Entry> EntryTables::take()
{
    return std::move(m_entries);
}

void EntryTables::readTable(const EntryTable &table, std::string &bytes)
{
    std::vector<TableReader::Column> columns;
    for (const TableColumn &column : table.columns)
        columns.push_back({column.name, column.required});
    TableReader reader(table.file, bytes, m_issues);
    if (!reader.open(std::move(columns)))
        return;
    while (reader.next())
        readRow(table, reader);
}

void EntryTables::readRow(const EntryTable &table, TableReader &reader)
{
    Body body;
    std::optional<CivilDay> day;
    std::optional<Author> author;
    Entry entry{{}, table.kind, *CivilDay::fromNumber(0), {}, Author::Patient, {}, {}};
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const TableColumn &column = table.columns[i];
        if (column.role == ColumnRole::Own) {
            // Whether a value is needed depends on the others; problemsOf tells.
            FieldRule rule = *column.rule;
            rule.required = false;
            if (auto value = reader.value(i, rule))
                body.set(rule.field, *std::move(value));
            continue;
        }
        const auto text = column.role == ColumnRole::Aside ? std::nullopt : reader.text(i, *column.rule);
        if (!text)
            continue;
        switch (column.role) {
        case ColumnRole::Id:
            entry.id = *text;
            break;
        case ColumnRole::Day:
            day = CivilDay::parse(*text);
            break;
        case ColumnRole::RecordedAt:
            entry.recorded = parseMoment(*text);
            break;
        case ColumnRole::Author:
            author = authorNamed(*text);
            break;
        case ColumnRole::Replaces:
            entry.replaces = *text;
            break;
        case ColumnRole::Own:
        case ColumnRole::Aside:
            break;
        }
    }
    if (ruleOf(table.kind, Field::Complaint) && !body.has(Field::Complaint) && !m_plan.firstComplaint().empty())
        body.set(Field::Complaint, std::string(m_plan.firstComplaint()));
    if (!reader.rowIsGood())
        return;
    entry.day = *day;
    entry.author = author.value_or(defaultAuthor(table.kind, body));
    checkBody(table, reader, entry, body);
    if (!reader.rowIsGood())
        return;

    entry.body = body.toJson();
    const std::size_t idColumn = placeOf(table, ColumnRole::Id);
    const Origin origin{
        &table, reader.line(), reader.issueAt(IssueCode::TwoContentsForOneId, 0, table.columns[idColumn].name).column, !entry.id.empty()};
    const bool isOpen = !origin.hasId && !entry.recorded && !entry.replaces && !ruleOf(table.kind).about.isOwnThing();
    if (!origin.hasId)
        entry.id = derivedId(entry, m_hash);
    m_earliest = std::min(m_earliest.value_or(entry.day), entry.day);
    addAsides(table, reader, entry);
    m_things.push_back(isOpen ? thingOf(entry, body) : std::string());
    add(std::move(entry), origin);
}

void EntryTables::add(Entry entry, const Origin &origin)
{
    m_things.resize(m_entries.size() + 1);
    m_entries.push_back(std::move(entry));
    m_origins.push_back(origin);
}

void EntryTables::checkBody(const EntryTable &table, TableReader &reader, const Entry &entry, const Body &body)
{
    const KindRule &rule = ruleOf(table.kind);
    if (entry.author == Author::Clinic ? !rule.clinic : !rule.patient)
        reader.refuse(IssueCode::AuthorRefused, placeOf(table, ColumnRole::Author)).value = name(entry.author);
    for (const BodyProblem &problem : problemsOf(table.kind, body, entry.day)) {
        // A complaint that is filled in has no cell of its own.
        if (problem.field == Field::Complaint && problem.code == BodyProblem::Code::Missing) {
            reader.refuse(IssueCode::UnknownComplaint, placeOf(table, Field::Complaint));
            continue;
        }
        const std::size_t column = placeOf(table, problem.field);
        if (problem.code == BodyProblem::Code::Missing) {
            reader.refuse(IssueCode::ValueMissing, column).rule = ruleOf(table.kind, problem.field);
        } else if (problem.code == BodyProblem::Code::NotAllowed) {
            reader.refuse(IssueCode::NotAllowedHere, column).other = name(problem.other);
        } else if (table.kind == Kind::Pause) {
            reader.refuse(IssueCode::PauseEndsBeforeStart, column).other = entry.day.toString();
        } else {
            Issue &issue = reader.refuse(IssueCode::ValueRefused, column);
            issue.rule = problem.rule;
            issue.value = body.number(problem.field) ? body.number(problem.field)->toString() : std::string(body.textOr(problem.field));
        }
    }
    if (reader.rowIsGood() && m_plan.isKnown())
        checkNames(table, reader, body);
}

/// Whether the complaint, item and stage that a row names exist.
void EntryTables::checkNames(const EntryTable &table, TableReader &reader, const Body &body)
{
    const std::string *const complaint = body.text(Field::Complaint);
    if (complaint && !m_plan.hasComplaint(*complaint))
        reader.refuse(IssueCode::UnknownComplaint, placeOf(table, Field::Complaint)).value = *complaint;
    const std::string *const item = body.text(Field::Item);
    if (!item)
        return;
    const int stages = m_plan.stagesOf(*item);
    if (stages == 0) {
        reader.refuse(IssueCode::UnknownItem, placeOf(table, Field::Item)).value = *item;
    } else if (table.kind == Kind::Stage && body.intOr(Field::Stage, 1) > stages) {
        Issue &issue = reader.refuse(IssueCode::UnknownStage, placeOf(table, Field::Stage));
        issue.value = std::to_string(body.intOr(Field::Stage, 1));
        issue.other = std::to_string(stages);
    }
}

/// A visit's note makes a memo of the clinic, a sign's cleared_on the entry that clears it.
void EntryTables::addAsides(const EntryTable &table, TableReader &reader, const Entry &row)
{
    Body aside;
    Entry entry{{}, Kind::Memo, row.day, {}, Author::Clinic, {}, {}};
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const TableColumn &column = table.columns[i];
        const auto text = column.role == ColumnRole::Aside ? reader.text(i, *column.rule) : std::nullopt;
        if (!text)
            continue;
        if (table.kind == Kind::Flag) {
            entry.kind = Kind::Cleared;
            entry.day = *CivilDay::parse(*text);
            aside.set(Field::Flag, row.id);
            m_earliest = std::min(*m_earliest, entry.day);
        } else {
            aside.set(*fieldNamed(column.name), *text);
            aside.set(Field::Visit, row.id);
        }
    }
    if (aside.fields().empty())
        return;
    entry.body = aside.toJson();
    entry.id = derivedId(entry, m_hash);
    add(std::move(entry), {&table, reader.line(), 0, true});
}

void EntryTables::checkTogether()
{
    checkIds();
    checkThings();
    checkReplaces();
}

Issue EntryTables::issueAt(IssueCode code, std::size_t index, std::string_view columnName) const
{
    Issue issue{.code = code, .file = std::string(m_origins[index].table->file), .line = m_origins[index].line};
    issue.columnName = columnName;
    if (columnName == "id")
        issue.column = m_origins[index].idColumn;
    return issue;
}

/// Two rows of one id say the same, and then count once; two equal rows without an id are a slip.
void EntryTables::checkIds()
{
    std::unordered_map<std::string_view, std::size_t> first;
    first.reserve(m_entries.size());
    std::vector<bool> doubled(m_entries.size());
    bool anyDoubled = false;
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        const auto [known, isNew] = first.emplace(m_entries[i].id, i);
        if (isNew)
            continue;
        const Entry &earlier = m_entries[known->second];
        const bool isEqual = earlier == m_entries[i];
        const bool isSlip = isEqual && !m_origins[i].hasId && !m_origins[known->second].hasId && !m_entries[i].recorded;
        if (isEqual && !isSlip) {
            doubled[i] = true;
            anyDoubled = true;
            continue;
        }
        Issue issue = issueAt(isSlip ? IssueCode::SameThingTwice : IssueCode::TwoContentsForOneId, i, isSlip ? "" : "id");
        issue.value = isSlip ? std::string() : m_entries[i].id;
        issue.other = std::to_string(m_origins[known->second].line);
        m_issues.push_back(std::move(issue));
        m_things[i].clear(); // said once
    }
    if (!anyDoubled)
        return;
    std::size_t kept = 0;
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        if (doubled[i])
            continue;
        if (kept != i) {
            m_entries[kept] = std::move(m_entries[i]);
            m_origins[kept] = m_origins[i];
            m_things[kept] = std::move(m_things[i]);
        }
        ++kept;
    }
    m_entries.erase(m_entries.begin() + static_cast<std::ptrdiff_t>(kept), m_entries.end());
    m_origins.resize(kept);
    m_things.resize(kept);
}

void EntryTables::checkThings()
{
    std::unordered_map<std::string_view, std::size_t> first;
    first.reserve(m_entries.size());
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        if (m_things[i].empty())
            continue;
        const auto [known, isNew] = first.emplace(m_things[i], i);
        if (isNew)
            continue;
        Issue issue = issueAt(IssueCode::SameThingTwice, i, {});
        issue.other = std::to_string(m_origins[known->second].line);
        m_issues.push_back(std::move(issue));
    }
}

void EntryTables::checkReplaces()
{
    std::unordered_map<std::string_view, std::size_t> byId;
    byId.reserve(m_entries.size());
    for (std::size_t i = 0; i < m_entries.size(); ++i)
        byId.emplace(m_entries[i].id, i);
    // What an entry replaces; a name that is not known waits for the file that has it.
    const auto replacedBy = [&](std::size_t i) -> std::optional<std::size_t> {
        if (!m_entries[i].replaces)
            return std::nullopt;
        const auto found = byId.find(*m_entries[i].replaces);
        return found == byId.end() ? std::nullopt : std::optional(found->second);
    };
    std::vector<bool> isDone(m_entries.size());
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        if (const auto replaced = replacedBy(i); replaced && m_entries[*replaced].kind != m_entries[i].kind) {
            Issue issue = issueAt(IssueCode::ReplacesAnotherKind, i, "replaces");
            issue.value = *m_entries[i].replaces;
            m_issues.push_back(std::move(issue));
        }
        std::vector<std::size_t> path;
        std::optional<std::size_t> at = i;
        for (; at && !isDone[*at]; at = replacedBy(*at)) {
            isDone[*at] = true;
            path.push_back(*at);
        }
        if (at && std::find(path.begin(), path.end(), *at) != path.end()) {
            Issue issue = issueAt(IssueCode::ReplacesLoop, *at, "replaces");
            issue.value = m_entries[*at].id;
            m_issues.push_back(std::move(issue));
        }
    }
}

} // namespace morrow
