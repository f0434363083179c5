// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/plan_tables.h"
#include "exchange/table_layout.h"
#include "exchange/table_writer.h"
#include "exchange/tables.h"

#include "base/ids.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <cstdio>
#include <set>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

namespace morrow {

namespace {

struct Row
{
    const Entry *entry;
    Body body;
};

/// A number as text that sorts as the number does.
std::string sortable(std::int64_t number)
{
    char text[24];
    std::snprintf(text, sizeof text, "%020lld", static_cast<long long>(number) + (1LL << 60));
    return text;
}

class TablesWriting
{
public:
    explicit TablesWriting(const TablesDiary &diary)
        : m_person(diary.person)
    {
        BodyReader reader;
        for (const Entry &entry : diary.entries) {
            if (auto body = reader.read(entry.body))
                m_rows[entry.kind].push_back({&entry, *std::move(body)});
        }
    }

    TablesFolder run()
    {
        m_complaints = standing(Kind::Complaint, Field::Complaint);
        std::sort(m_complaints.begin(), m_complaints.end(), [](const Row *a, const Row *b) {
            const auto rank = [](const Row &row) {
                return std::tuple(row.body.intOr(Field::Place, 1), row.body.textOr(Field::Started), row.body.textOr(Field::Complaint));
            };
            return rank(*a) < rank(*b);
        });
        m_plans = standingPlans();
        for (const EntryTable &table : entryTables())
            writeEntries(table);
        writePlan();
        writeComplaintsAndSettings();
        noteLeftOut();
        m_folder.files.emplace(kMetadataFile, metadata());
        return std::move(m_folder);
    }

private:
    /// The entries of a kind that no other one replaces.
    std::vector<const Row *> unreplaced(Kind kind)
    {
        std::unordered_set<std::string_view> replaced;
        for (const Row &row : m_rows[kind]) {
            if (row.entry->replaces && *row.entry->replaces != row.entry->id)
                replaced.insert(*row.entry->replaces);
        }
        std::vector<const Row *> rows;
        for (const Row &row : m_rows[kind]) {
            if (!replaced.contains(row.entry->id))
                rows.push_back(&row);
        }
        return rows;
    }

    /// For each value of \a key the one entry that \a before puts first, unless it withdraws.
    template<class Before>
    std::vector<const Row *> standing(Kind kind, Field key, Before before)
    {
        std::map<std::string_view, const Row *> newest;
        for (const Row *row : unreplaced(kind)) {
            const Row *&best = newest[row->body.textOr(key)];
            if (!best || before(*row, *best))
                best = row;
        }
        std::vector<const Row *> rows;
        for (const auto &[value, row] : newest) {
            if (!row->body.has(Field::Withdrawn))
                rows.push_back(row);
        }
        return rows;
    }

    std::vector<const Row *> standing(Kind kind, Field key)
    {
        return standing(kind, key, [](const Row &a, const Row &b) { return countsBefore(*a.entry, *b.entry); });
    }

    /// The newest revision for each complaint, in the order of the complaints.
    std::vector<const Row *> standingPlans()
    {
        const auto newest = standing(Kind::Plan, Field::Complaint, [](const Row &a, const Row &b) {
            const int first = a.body.intOr(Field::Number, 1);
            const int second = b.body.intOr(Field::Number, 1);
            return first != second ? first > second : countsBefore(*a.entry, *b.entry);
        });
        std::vector<const Row *> ordered;
        for (const Row *complaint : m_complaints) {
            for (const Row *plan : newest) {
                if (plan->body.textOr(Field::Complaint) == complaint->body.textOr(Field::Complaint))
                    ordered.push_back(plan);
            }
        }
        return ordered;
    }

    [[nodiscard]] std::string_view firstComplaint() const
    {
        return m_complaints.empty() ? std::string_view() : m_complaints.front()->body.textOr(Field::Complaint);
    }

    void writeEntries(const EntryTable &table)
    {
        const std::vector<Row> &rows = m_rows[table.kind];
        if (rows.empty())
            return;
        TableWriter writer;
        for (const TableColumn &column : table.columns)
            writer.addColumn(column.name, *column.rule, column.required);

        // A complaint is written out where a row is about another one than the first.
        const bool namesComplaint = std::any_of(rows.begin(), rows.end(),
            [this](const Row &row) { return row.body.has(Field::Complaint) && row.body.textOr(Field::Complaint) != firstComplaint(); });
        const auto asides = table.kind == Kind::Visit ? byText(standing(Kind::Memo, Field::Visit), Field::Visit)
            : table.kind == Kind::Flag                ? byText(earliestClears(), Field::Flag)
                                                      : std::unordered_map<std::string_view, const Row *>();
        const auto unclear = thingsWithoutOrigin(rows);
        std::vector<std::string> keys;
        for (const Row &row : rows) {
            writer.addRow();
            const auto aside = asides.find(row.entry->id);
            for (const TableColumn &column : table.columns) {
                if (column.role == ColumnRole::Own) {
                    const Body::Value *const value = row.body.find(column.rule->field);
                    const bool isImplied = column.rule->field == Field::Complaint && !column.required && !namesComplaint;
                    if (value && !isImplied)
                        writer.setValue(column.name, *value);
                } else if (column.role == ColumnRole::Aside) {
                    if (aside != asides.end())
                        writer.setText(column.name,
                            table.kind == Kind::Flag ? aside->second->entry->day.toString()
                                                     : std::string(aside->second->body.textOr(*fieldNamed(column.name))));
                } else {
                    writer.setText(column.name, ownCell(column.role, row, unclear));
                }
            }
            keys.push_back(sortKey(row));
        }
        writer.sortBy(keys);
        add(table.file, writer);
    }

    [[nodiscard]] std::string ownCell(ColumnRole role, const Row &row, const std::set<std::string> &unclear)
    {
        const Entry &entry = *row.entry;
        switch (role) {
        case ColumnRole::Day:
            return entry.day.toString();
        case ColumnRole::RecordedAt:
            return entry.recorded ? rfc3339(*entry.recorded) : std::string();
        case ColumnRole::Author:
            return entry.author == defaultAuthor(entry.kind, row.body) ? std::string() : std::string(name(entry.author));
        case ColumnRole::Replaces:
            return entry.replaces.value_or(std::string());
        default: {
            // An id that reading derives again is left empty, unless the row would then be refused.
            const bool isDerived = derivedId(entry, m_hash) == entry.id;
            return isDerived && (entry.recorded || entry.replaces || !unclear.contains(thingKey(row))) ? std::string() : entry.id;
        }
        }
    }

    static std::string thingKey(const Row &row)
    {
        const AboutRule &about = ruleOf(row.entry->kind).about;
        std::string key = row.entry->day.toString();
        for (const Field field : about.fields) {
            key += '\x1f';
            if (const Decimal *const number = row.body.number(field))
                key += sortable(number->thousandths());
            else
                key += row.body.textOr(field);
        }
        return key;
    }

    /// What more than one row is about of those that have neither instant nor `replaces`, and an
    /// id that reading derives again.
    std::set<std::string> thingsWithoutOrigin(const std::vector<Row> &rows)
    {
        std::map<std::string, std::vector<const Entry *>> open;
        for (const Row &row : rows) {
            if (!row.entry->recorded && !row.entry->replaces && !ruleOf(row.entry->kind).about.isOwnThing())
                open[thingKey(row)].push_back(row.entry);
        }
        std::set<std::string> twice;
        for (const auto &[thing, entries] : open) {
            const auto isDerived = [this](const Entry *entry) { return derivedId(*entry, m_hash) == entry->id; };
            if (entries.size() > 1 && std::count_if(entries.begin(), entries.end(), isDerived) > 1)
                twice.insert(thing);
        }
        return twice;
    }

    static std::string sortKey(const Row &row)
    {
        return thingKey(row) + '\x1f' + (row.entry->recorded ? sortable(row.entry->recorded->utcMs) : std::string()) + '\x1f'
            + row.entry->id;
    }

    static std::unordered_map<std::string_view, const Row *> byText(const std::vector<const Row *> &rows, Field key)
    {
        std::unordered_map<std::string_view, const Row *> found;
        for (const Row *row : rows)
            found.emplace(row->body.textOr(key), row);
        return found;
    }

    std::vector<const Row *> earliestClears()
    {
        return standing(Kind::Cleared, Field::Flag,
            [](const Row &a, const Row &b) { return std::tie(a.entry->day, a.entry->id) < std::tie(b.entry->day, b.entry->id); });
    }

    void writePlan()
    {
        TableWriter writer;
        for (const PlainColumn &column : planColumns())
            writer.addColumn(column.name, *column.rule, column.required);
        const bool namesComplaint = std::any_of(
            m_plans.begin(), m_plans.end(), [this](const Row *plan) { return plan->body.textOr(Field::Complaint) != firstComplaint(); });
        for (const Row *plan : m_plans) {
            for (const Body &item : *plan->body.list(Field::Items)) {
                for (const Body &stage : *item.list(Field::Stages)) {
                    writer.addRow();
                    for (const Body *part : {&item, &stage}) {
                        for (const auto &[field, value] : part->fields()) {
                            if (field != Field::Stages)
                                writer.setValue(name(field), value);
                        }
                    }
                    if (namesComplaint)
                        writer.setText(name(Field::Complaint), plan->body.textOr(Field::Complaint));
                }
            }
        }
        add(kPlanFile, writer);
    }

    void writeComplaintsAndSettings()
    {
        TableWriter complaints;
        for (const PlainColumn &column : complaintColumns())
            complaints.addColumn(column.name, *column.rule, column.required);
        const auto closings = byText(standing(Kind::Closed, Field::Complaint), Field::Complaint);
        for (const Row *complaint : m_complaints) {
            complaints.addRow();
            for (const auto &[field, value] : complaint->body.fields()) {
                if (field != Field::Place)
                    complaints.setValue(name(field), value);
            }
            const auto closing = closings.find(complaint->body.textOr(Field::Complaint));
            if (closing == closings.end())
                continue;
            complaints.setText("ended", closing->second->entry->day.toString());
            complaints.setText("end_reason", closing->second->body.textOr(Field::EndReason));
        }
        const bool isMainAlone = m_complaints.size() == 1 && firstComplaint() == "main" && closings.empty()
            && std::all_of(m_complaints[0]->body.fields().begin(), m_complaints[0]->body.fields().end(), [](const auto &field) {
                   return field.first == Field::Complaint || field.first == Field::Place || field.first == Field::FirstAssessmentPain;
               });
        if (!isMainAlone)
            add(kComplaintsFile, complaints);
        writeSettings(isMainAlone ? m_complaints[0]->body.find(Field::FirstAssessmentPain) : nullptr);
    }

    void writeSettings(const Body::Value *firstAssessmentPain)
    {
        static constexpr FieldRule anyText{.field = Field::Value};
        TableWriter writer;
        for (const std::string_view column : {"key", "value", "complaint"})
            writer.addColumn(column, anyText, column != "complaint");
        const auto put = [&writer](std::string_view key, const Body::Value &value, std::string_view complaint) {
            writer.addRow();
            writer.setText("key", key);
            writer.setValue("value", value);
            writer.setText("complaint", complaint);
        };
        const auto settings = byText(standing(Kind::Setting, Field::Key), Field::Key);
        for (const SettingKey &key : settingKeys()) {
            using enum SettingKey::Belongs;
            if (key.belongs == ToPerson && m_person)
                put(key.name, *m_person, {});
            if (key.belongs == ToComplaint && firstAssessmentPain)
                put(key.name, *firstAssessmentPain, {});
            if (const auto setting = settings.find(key.name); key.belongs == ToDiary && setting != settings.end())
                put(key.name, *setting->second->body.find(Field::Value), {});
            if (key.belongs == ToPlan)
                putOfPlans(key, put);
        }
        if (!writer.isEmpty())
            add(kSettingsFile, writer);
    }

    /// One row for all plans where they agree, else one for each that says something.
    template<class Put>
    void putOfPlans(const SettingKey &key, Put put)
    {
        std::vector<std::optional<Body::Value>> values;
        for (const Row *plan : m_plans)
            values.push_back(settingOf(*plan, key));
        const bool agree = std::all_of(values.begin(), values.end(), [&values](const auto &value) { return value == values.front(); });
        for (std::size_t i = 0; i < values.size() && (i == 0 || !agree); ++i) {
            if (values[i])
                put(key.name, *values[i], agree ? std::string_view() : m_plans[i]->body.textOr(Field::Complaint));
        }
    }

    /// What a plan says about \a key; nullopt where reading would fill in the same.
    [[nodiscard]] std::optional<Body::Value> settingOf(const Row &plan, const SettingKey &key) const
    {
        const std::string complaint(plan.body.textOr(Field::Complaint));
        Field field = key.rule->field;
        if (key.name == "plan_from") {
            std::string_view first;
            for (const Body &item : *plan.body.list(Field::Items)) {
                if (const std::string_view start = item.textOr(Field::Start); first.empty() || start < first)
                    first = start;
            }
            const std::string from = plan.entry->day.toString();
            return from == first ? std::nullopt : std::optional<Body::Value>(from);
        }
        if (key.name == "plan_id")
            field = Field::Plan;
        else if (key.name == "plan_by")
            field = Field::By;
        const Body::Value *const value = plan.body.find(field);
        const bool isDefault = value
            && ((key.name == "plan_id" && *value == Body::Value(defaultPlanId(m_person.value_or(std::string()), complaint)))
                || (key.name == "plan_number" && *value == Body::Value(Decimal::whole(1))));
        return value && !isDefault ? std::optional(*value) : std::nullopt;
    }

    void add(std::string_view file, const TableWriter &writer)
    {
        m_folder.files.emplace(file, writer.toCsv());
        m_described.append(writer.describe(file));
    }

    [[nodiscard]] std::string metadata() const
    {
        const QJsonObject group{
            {QStringLiteral("@context"), QStringLiteral("http://www.w3.org/ns/csvw")}, {QStringLiteral("tables"), m_described}};
        return QJsonDocument(group).toJson(QJsonDocument::Indented).toStdString();
    }

    void noteLeftOut()
    {
        const auto note = [this](LeftOut what, std::size_t count) {
            if (count > 0)
                m_folder.leftOut[what] += static_cast<int>(count);
        };
        note(LeftOut::EarlierPlanRevisions, m_rows[Kind::Plan].size() - m_plans.size());
        note(LeftOut::EarlierComplaints, m_rows[Kind::Complaint].size() - m_complaints.size());
        note(LeftOut::EarlierSettings, m_rows[Kind::Setting].size() - standing(Kind::Setting, Field::Key).size());
        note(LeftOut::EarlierMemos, m_rows[Kind::Memo].size() - standing(Kind::Memo, Field::Visit).size());
        note(LeftOut::LaterClears, m_rows[Kind::Cleared].size() - earliestClears().size());
        note(LeftOut::EarlierClosings, m_rows[Kind::Closed].size() - standing(Kind::Closed, Field::Complaint).size());
        note(LeftOut::Handed, m_rows[Kind::Handed].size());
        note(LeftOut::DeskOnly, m_rows[Kind::KnownAs].size() + m_rows[Kind::Alias].size() + m_rows[Kind::SetAside].size());
        for (const Kind kind : {Kind::Cleared, Kind::Closed, Kind::Complaint, Kind::Plan, Kind::Memo, Kind::Setting}) {
            for (const Row &row : m_rows[kind]) {
                const Entry &entry = *row.entry;
                const bool isPlain
                    = !entry.recorded && entry.author == defaultAuthor(kind, row.body) && derivedId(entry, m_hash) == entry.id;
                note(LeftOut::OriginOfDerived, isPlain ? 0 : 1);
            }
        }
    }

    std::optional<std::string> m_person;
    Sha256 m_hash;
    std::map<Kind, std::vector<Row>> m_rows;
    std::vector<const Row *> m_complaints; ///< those that stand, in order
    std::vector<const Row *> m_plans; ///< the same, of plans
    TablesFolder m_folder;
    QJsonArray m_described;
};

} // namespace

TablesFolder writeTables(const TablesDiary &diary)
{
    return TablesWriting(diary).run();
}

} // namespace morrow
