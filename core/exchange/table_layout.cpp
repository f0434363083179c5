// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/table_layout.h"

#include <algorithm>
#include <array>

namespace morrow {

namespace {

using namespace std::string_view_literals;

constexpr FieldRule kIdRule{.field = Field::Ref, .form = Form::Id};
constexpr FieldRule kDayRule{.field = Field::From, .form = Form::Day, .required = true};
constexpr FieldRule kOptionalDayRule{.field = Field::From, .form = Form::Day};
constexpr FieldRule kRecordedAtRule{.field = Field::From, .form = Form::Moment};
constexpr FieldRule kTextRule{.field = Field::Text};
constexpr std::array kAuthors{"patient"sv, "helper"sv, "clinic"sv};
constexpr FieldRule kAuthorRule{.field = Field::By, .form = Form::Choice, .choices = kAuthors};

struct Written
{
    std::string_view file;
    Kind kind;
    std::string_view dayColumn;
    std::string_view required;
    std::string_view optional; ///< before those that every table may have
};

// The columns as they are written, required ones first.
constexpr std::array kWritten{
    Written{"stages.csv", Kind::Stage, "day", "day,item,stage,reason", ""},
    Written{"visits.csv", Kind::Visit, "day",
        "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note",
        "complaint,by,applicator,point,reaction,told,consent,next_time,next_visit"},
    Written{"pauses.csv", Kind::Pause, "from", "from,to,reason", ""},
    Written{"mornings.csv", Kind::Check, "day", "id,day,pain,stiffness_min,recorded_at", "complaint,declined"},
    Written{"sets.csv", Kind::Set, "day", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at", "spare,how"},
    Written{"sessions.csv", Kind::Session, "day", "id,day,slot,pain_during,pain_after,recorded_at", "complaint"},
    Written{"flags.csv", Kind::Flag, "day", "id,day,sign,note,recorded_at", "told,cleared_on"},
    Written{"heard.csv", Kind::Heard, "day", "id,day,flag,answer,recorded_at", ""},
    Written{"put_aside.csv", Kind::PutAside, "day", "id,day,complaint,recorded_at", ""},
    Written{"skips.csv", Kind::Skip, "day", "id,day,slot,reason,recorded_at", "complaint"},
    Written{"easier.csv", Kind::Easier, "day", "id,day,slot,recorded_at", "complaint"},
    Written{"unusual.csv", Kind::Unusual, "day", "id,day,text,recorded_at", ""},
    Written{"notes.csv", Kind::Note, "day", "id,day,kind,item,text,recorded_at", "complaint,about"},
    Written{"outcomes.csv", Kind::Outcome, "day", "id,day,kind,name,side,value,unit,pain,by,recorded_at", "complaint"},
};
constexpr std::string_view kEveryTable = "id,recorded_at,author,replaces,withdrawn";

std::vector<std::string_view> split(std::string_view list)
{
    std::vector<std::string_view> names;
    while (!list.empty()) {
        const std::size_t comma = std::min(list.find(','), list.size());
        names.push_back(list.substr(0, comma));
        list.remove_prefix(std::min(comma + 1, list.size()));
    }
    return names;
}

TableColumn column(const Written &table, std::string_view name, bool required)
{
    if (name == table.dayColumn)
        return {name, ColumnRole::Day, &kDayRule, required};
    if (name == "id"sv)
        return {name, ColumnRole::Id, &kIdRule, required};
    if (name == "replaces"sv)
        return {name, ColumnRole::Replaces, &kIdRule, required};
    if (name == "recorded_at"sv)
        return {name, ColumnRole::RecordedAt, &kRecordedAtRule, required};
    if (name == "author"sv)
        return {name, ColumnRole::Author, &kAuthorRule, required};
    if (table.kind == Kind::Visit && (name == "note"sv || name == "next_time"sv))
        return {name, ColumnRole::Aside, &kTextRule, required};
    if (name == "cleared_on"sv)
        return {name, ColumnRole::Aside, &kOptionalDayRule, required};
    return {name, ColumnRole::Own, ruleOf(table.kind, *fieldNamed(name)), required};
}

EntryTable layOut(const Written &written)
{
    EntryTable table{written.file, written.kind, {}};
    const auto add = [&](std::string_view names, bool required) {
        for (const std::string_view name : split(names)) {
            const bool known
                = std::any_of(table.columns.begin(), table.columns.end(), [name](const TableColumn &c) { return c.name == name; });
            if (!known)
                table.columns.push_back(column(written, name, required));
        }
    };
    add(written.required, true);
    add(written.optional, false);
    add(kEveryTable, false);
    return table;
}

const FieldRule *among(std::span<const FieldRule> rules, Field field)
{
    for (const FieldRule &rule : rules) {
        if (rule.field == field)
            return &rule;
    }
    return nullptr;
}

/// Columns named in \a required and \a optional, with rules from wherever one stands.
std::vector<PlainColumn> plainColumns(
    std::string_view required, std::string_view optional, std::initializer_list<std::span<const FieldRule>> rules)
{
    std::vector<PlainColumn> columns;
    const auto add = [&](std::string_view names, bool isRequired) {
        for (const std::string_view name : split(names)) {
            // Not a field: the day on which another entry closes the complaint.
            const FieldRule *rule = name == "ended"sv ? &kOptionalDayRule : nullptr;
            for (const auto &group : rules)
                rule = rule ? rule : among(group, *fieldNamed(name));
            columns.push_back({name, rule, isRequired});
        }
    };
    add(required, true);
    add(optional, false);
    return columns;
}

} // namespace

const std::vector<EntryTable> &entryTables()
{
    static const std::vector<EntryTable> tables = [] {
        std::vector<EntryTable> all;
        all.reserve(kWritten.size());
        for (const Written &written : kWritten)
            all.push_back(layOut(written));
        return all;
    }();
    return tables;
}

std::span<const PlainColumn> complaintColumns()
{
    static const std::vector<PlainColumn> columns
        = plainColumns("complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason", "",
            {ruleOf(Kind::Complaint).fields, ruleOf(Kind::Closed).fields});
    return columns;
}

std::span<const PlainColumn> planColumns()
{
    static constexpr std::array own{FieldRule{.field = Field::Complaint}};
    static const std::vector<PlainColumn> columns = plainColumns(
        "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,"
        "min_days,min_sessions,rests_after_visit",
        "complaint,loads,continues,spare_reps,load_step_kg,range,key_point,easier_sets,easier_reps,easier_hold_s,easier_load_kg",
        {itemRules(), stageRules(), own});
    return columns;
}

std::span<const PlainColumn> settingsColumns()
{
    static constexpr std::array own{
        FieldRule{.field = Field::Key, .required = true}, FieldRule{.field = Field::Value}, FieldRule{.field = Field::Complaint}};
    static const std::vector<PlainColumn> columns = plainColumns("key,value", "complaint", {own});
    return columns;
}

bool isOfWholeItem(Field field) noexcept
{
    return field == Field::Complaint || among(itemRules(), field) != nullptr;
}

const std::vector<SettingKey> &settingKeys()
{
    static constexpr FieldRule planNumber{
        .field = Field::Number, .form = Form::Whole, .least = Decimal::whole(1), .most = Decimal::whole(1'000'000)};
    static const std::vector<SettingKey> keys = [] {
        using enum SettingKey::Belongs;
        std::vector<SettingKey> all{
            {"patient_ref", &kIdRule, ToPerson},
            {"day_starts", settingRule("day_starts"), ToDiary},
            {"time_zone", settingRule("time_zone"), ToDiary},
            {"body_mass_kg", settingRule("body_mass_kg"), ToDiary},
            {"first_assessment_pain", ruleOf(Kind::Complaint, Field::FirstAssessmentPain), ToComplaint},
            {"plan_id", &kIdRule, ToPlan},
            {"plan_number", &planNumber, ToPlan},
            {"plan_from", &kOptionalDayRule, ToPlan},
            {"plan_by", &kTextRule, ToPlan},
        };
        for (const FieldRule &rule : planSettingRules())
            all.push_back({morrow::name(rule.field), &rule, ToPlan});
        return all;
    }();
    return keys;
}

const SettingKey *settingKey(std::string_view name)
{
    for (const SettingKey &key : settingKeys()) {
        if (key.name == name)
            return &key;
    }
    return nullptr;
}

Author defaultAuthor(Kind kind, const Body &body) noexcept
{
    const KindRule &rule = ruleOf(kind);
    const bool byClinic = !rule.patient || kind == Kind::Visit || kind == Kind::Stage
        || (kind == Kind::Note && body.textOr(Field::Kind) == "reply"sv) || (kind == Kind::Outcome && body.textOr(Field::Kind) == "test"sv);
    return byClinic ? Author::Clinic : Author::Patient;
}

} // namespace morrow
