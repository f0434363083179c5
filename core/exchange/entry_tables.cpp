// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/entry_tables.h"

#include "base/clock.h"
#include "base/ids.h"
#include "exchange/entry_set.h"
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
    Asides asides;
    Entry entry{{}, table.kind, *CivilDay::fromNumber(0), {}, Author::Patient, {}, {}};
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const TableColumn &column = table.columns[i];
        if (column.role == ColumnRole::Own) {
            // Whether a value is needed depends on the others; problemsOf tells.
            if (auto value = reader.valueIfAny(i, *column.rule))
                body.set(column.rule->field, *std::move(value));
            continue;
        }
        const auto text = reader.text(i, *column.rule);
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
        case ColumnRole::Aside:
            asides.emplace_back(column.name, *text);
            break;
        case ColumnRole::Own:
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
    const auto columnOf = [&](ColumnRole role) { return reader.issueAt({}, 0, table.columns[placeOf(table, role)].name).column; };
    Origin origin{.table = &table,
        .line = reader.line(),
        .idColumn = columnOf(ColumnRole::Id),
        .replacesColumn = columnOf(ColumnRole::Replaces),
        .hasId = !entry.id.empty(),
        .aside = {}};
    const bool isOpen = !origin.hasId && !entry.recorded && !entry.replaces && !ruleOf(table.kind).about.isOwnThing();
    if (!origin.hasId)
        entry.id = derivedId(entry, m_hash);
    m_earliest = std::min(m_earliest.value_or(entry.day), entry.day);
    if (!asides.empty())
        origin.aside = addAside(origin, asides, entry);
    m_things.push_back(isOpen ? thingOf(entry, body) : std::string());
    add(std::move(entry), std::move(origin));
}

void EntryTables::add(Entry entry, Origin origin)
{
    m_things.resize(m_entries.size() + 1);
    m_entries.push_back(std::move(entry));
    m_origins.push_back(std::move(origin));
}

void EntryTables::checkBody(const EntryTable &table, TableReader &reader, const Entry &entry, const Body &body)
{
    const KindRule &rule = ruleOf(table.kind);
    if (entry.author == Author::Clinic ? !rule.clinic : !rule.patient)
        reader.refuse(IssueCode::AuthorRefused, placeOf(table, ColumnRole::Author)).value = name(entry.author);
    for (const BodyProblem &problem : problemsOf(table.kind, body, entry.day)) {
        // A complaint that is filled in has no cell of its own.
        if (problem.field == Field::Complaint && problem.code == BodyProblem::Code::Missing) {
            if (m_plan.isKnown())
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

/// A visit's note makes a memo of the clinic, a sign's cleared_on the entry that clears it. Gives its id.
std::string EntryTables::addAside(const Origin &origin, const Asides &asides, const Entry &row)
{
    Body body;
    Entry entry{{}, Kind::Memo, row.day, {}, Author::Clinic, {}, {}};
    if (row.kind == Kind::Flag) {
        entry.kind = Kind::Cleared;
        entry.day = *CivilDay::parse(asides.front().second);
        body.set(Field::Flag, row.id);
        m_earliest = std::min(*m_earliest, entry.day);
    } else {
        for (const auto &[column, text] : asides)
            body.set(*fieldNamed(column), text);
        body.set(Field::Visit, row.id);
    }
    entry.body = body.toJson();
    entry.id = derivedId(entry, m_hash);
    std::string id = entry.id;
    add(std::move(entry), {.table = origin.table, .line = origin.line, .idColumn = 0, .replacesColumn = 0, .hasId = true, .aside = {}});
    return id;
}

void EntryTables::checkTogether(std::span<const Entry> others)
{
    checkIds(others);
    checkThings();
    checkReplaces(others);
}

Issue EntryTables::issueAt(IssueCode code, std::size_t index, ColumnRole role) const
{
    const Origin &origin = m_origins[index];
    Issue issue{.code = code, .file = std::string(origin.table->file), .line = origin.line};
    if (role == ColumnRole::Id || role == ColumnRole::Replaces) {
        issue.column = role == ColumnRole::Id ? origin.idColumn : origin.replacesColumn;
        issue.columnName = origin.table->columns[placeOf(*origin.table, role)].name;
    }
    return issue;
}

/// Two rows of one id say the same, and then count once; two equal rows without an id are a slip.
void EntryTables::checkIds(std::span<const Entry> others)
{
    std::unordered_set<std::string_view> taken;
    for (const Entry &other : others)
        taken.insert(other.id);
    std::unordered_map<std::string_view, std::size_t> first;
    first.reserve(m_entries.size());
    std::vector<bool> doubled(m_entries.size());
    bool anyDoubled = false;
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        const Origin &origin = m_origins[i];
        const auto [known, isNew] = first.emplace(m_entries[i].id, i);
        if (isNew && !taken.contains(m_entries[i].id))
            continue;
        Origin &earlier = m_origins[known->second];
        const bool isEqual = !isNew && m_entries[known->second] == m_entries[i]
            && (origin.aside == earlier.aside || origin.aside.empty() || earlier.aside.empty());
        const bool isSlip = isEqual && !origin.hasId && !earlier.hasId && !m_entries[i].recorded;
        if (isEqual && !isSlip) {
            if (earlier.aside.empty())
                earlier.aside = origin.aside;
            doubled[i] = true;
            anyDoubled = true;
            continue;
        }
        Issue issue
            = isSlip ? issueAt(IssueCode::SameThingTwice, i, ColumnRole::Own) : issueAt(IssueCode::TwoContentsForOneId, i, ColumnRole::Id);
        issue.value = isSlip ? std::string() : m_entries[i].id;
        issue.other = isNew ? std::string(kPlanFile) : std::to_string(earlier.line);
        if (earlier.table != origin.table)
            issue.other = std::string(earlier.table->file) + ':' + issue.other;
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
            m_origins[kept] = std::move(m_origins[i]);
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
        Issue issue = issueAt(IssueCode::SameThingTwice, i, ColumnRole::Own);
        issue.other = std::to_string(m_origins[known->second].line);
        m_issues.push_back(std::move(issue));
    }
}

void EntryTables::checkReplaces(std::span<const Entry> others)
{
    std::vector<const Entry *> all;
    all.reserve(m_entries.size() + others.size());
    for (const Entry &entry : m_entries)
        all.push_back(&entry);
    for (const Entry &other : others)
        all.push_back(&other);
    for (const SetProblem &problem : correctionProblemsOf(all)) {
        const bool isLoop = problem.code == SetProblem::Code::ReplacesLoop;
        Issue issue = issueAt(isLoop ? IssueCode::ReplacesLoop : IssueCode::ReplacesAnotherKind, problem.entry, ColumnRole::Replaces);
        issue.value = problem.name;
        m_issues.push_back(std::move(issue));
    }
}

} // namespace morrow
