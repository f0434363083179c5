// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/diary_generator.h"

#include "support/entry_layouts.h"
#include "support/typed_cells.h"

#include <algorithm>
#include <cstdio>
#include <set>
#include <string_view>

namespace morrow::test {

namespace {

/// The cells of a row by their columns, those that are not empty.
using Cells = std::map<std::string, std::string, std::less<>>;

/// Takes out of \a cells what its other cells do not go with, and fits the rest to them.
void fit(std::string_view file, Cells &cells)
{
    const auto at = [&cells](const char *column) { return cells.contains(column) ? std::string_view(cells.find(column)->second) : ""; };
    if (file == "mornings.csv" && at("declined").starts_with('1'))
        cells.erase("pain");
    if (file == "notes.csv" && at("kind") == "unsure" && chance(50))
        cells.erase("text");
    if (file != "outcomes.csv" || at("kind").empty())
        return;
    const std::string_view kind = at("kind");
    cells["value"] = kind == "activity" ? wholeBetween(0, 10)
        : kind == "overall"             ? wholeBetween(0, 100)
        : kind == "change"              ? wholeBetween(-5, 5)
        : kind == "test"                ? typedNumber(pick(-5000, 400'000))
                                        : wholeBetween(0, 1);
    if (kind != "test" && kind != "activity" && chance(50))
        cells.erase("name");
    if (kind != "test" && chance(50))
        cells.erase("unit");
}

} // namespace

/// Writes one folder, table after table; what later tables name is remembered.
class Scribe
{
public:
    TypedFolder compose()
    {
        writeComplaints();
        writePlan();
        writeSettings();
        for (const Layout &layout : layouts())
            writeEntries(layout);
        return std::move(m_folder);
    }

private:
    struct Item
    {
        std::string key;
        std::size_t complaint;
        int stages;
        bool rests;
    };

    void addTable(
        const std::string &file, std::string_view header, const std::vector<std::string> &optional, const std::vector<Cells> &rows)
    {
        TypedTable table;
        for (std::string_view rest = header; !rest.empty();) {
            const std::size_t comma = std::min(rest.find(','), rest.size());
            table.columns.emplace_back(rest.substr(0, comma));
            rest.remove_prefix(std::min(comma + 1, rest.size()));
        }
        for (const std::string &column : optional) {
            const bool isNeeded = std::any_of(rows.begin(), rows.end(), [&column](const Cells &cells) { return cells.contains(column); });
            if ((isNeeded || chance(10)) && std::find(table.columns.begin(), table.columns.end(), column) == table.columns.end())
                table.columns.push_back(column);
        }
        shuffle(table.columns);
        for (const Cells &cells : rows) {
            table.rows.emplace_back();
            for (const std::string &column : table.columns)
                table.rows.back().push_back(cells.contains(column) ? cells.find(column)->second : std::string());
        }
        table.hasByteOrderMark = chance(20);
        table.breaksLinesWithLf = chance(30);
        table.quotesEveryCell = chance(20);
        table.endsWithoutBreak = chance(20);
        m_folder.emplace(file, std::move(table));
    }

    /// A name that no other thing has.
    std::string newKey()
    {
        static constexpr const char *begins[]{"heel", "-squat", "=a,b", "'lunge", "'-x", "dépôt 😀", "\"q\"", "two\nlines", "@"};
        return oneOf(begins) + std::to_string(++m_keys);
    }

    std::string newId()
    {
        const std::string number = std::to_string(++m_ids);
        char uuid[40];
        std::snprintf(uuid, sizeof uuid, "019d43e1-0000-7000-8000-%012d", m_ids);
        const std::string shapes[]{"q" + number, "-" + number, "." + number, uuid, number + std::string(64 - number.size(), 'Z')};
        return oneOf(shapes);
    }

    /// An id of a row of \a file, or one that stands in no table here.
    std::string knownId(const std::string &file)
    {
        const std::vector<std::string> &ids = m_idsOf[file];
        return ids.empty() || chance(20) ? "elsewhere-" + std::to_string(pick(1, 9)) : oneOf(ids);
    }

    void writeComplaints()
    {
        if (chance(20)) {
            m_complaints = {"main"};
            return;
        }
        m_hasComplaintsFile = true;
        std::vector<Cells> rows;
        for (int i = chance(5) ? 0 : pick(1, 3); i > 0; --i) {
            m_complaints.push_back(chance(20) && m_complaints.empty() ? "main" : newKey());
            Cells cells{{"complaint", typed(m_complaints.back())}};
            maybe(cells, "region", anyText);
            maybe(cells, "side", [] { return std::string(oneOf(std::vector<const char *>{"left", "right", "both"})); });
            maybe(cells, "question", anyText);
            maybe(cells, "check", anyRule);
            maybe(cells, "first_assessment_pain", [] { return numberUpTo(10); });
            maybe(cells, "started", [] { return dayText(anyDay()); });
            if (chance(50)) {
                cells["ended"] = dayText(anyDay());
                maybe(cells, "end_reason", anyText);
            }
            rows.push_back(std::move(cells));
        }
        addTable("complaints.csv", "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason", {}, rows);
    }

    template<class Make>
    static void maybe(Cells &cells, const char *column, Make make)
    {
        if (chance(50))
            cells[column] = make();
    }

    void writePlan()
    {
        std::vector<Cells> rows;
        for (std::size_t complaint = 0; complaint < m_complaints.size(); ++complaint) {
            for (int i = pick(0, 3); i > 0; --i)
                addItem(complaint, rows);
        }
        shuffle(rows);
        addTable("plan.csv",
            "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,"
            "min_days,min_sessions,rests_after_visit",
            {"complaint", "loads", "continues", "spare_reps", "load_step_kg", "range", "key_point", "easier_sets", "easier_reps",
                "easier_hold_s", "easier_load_kg"},
            rows);
    }

    void addItem(std::size_t complaint, std::vector<Cells> &rows)
    {
        const Item item{newKey(), complaint, pick(1, 3), chance(30)};
        const int start = anyDay();
        Cells shared{{"item", typed(item.key)}, {"exercise", anyText()}, {"start", dayText(start)}};
        if (complaint > 0 || chance(30))
            shared["complaint"] = typed(m_complaints[complaint]);
        maybe(shared, "side", [] { return std::string(oneOf(std::vector<const char *>{"left", "right", "both"})); });
        maybe(shared, "end", [start] { return dayFrom(start); });
        maybe(shared, "loads", [] { return wholeBetween(0, 1); });
        if (item.rests || chance(50))
            shared["rests_after_visit"] = item.rests ? "1" : "0";
        if (!m_items.empty() && chance(40))
            shared["continues"] = typed(oneOf(m_items).key);
        for (int stage = 1; stage <= item.stages; ++stage) {
            Cells cells = shared;
            cells["stage"] = std::to_string(stage);
            cells["sets"] = wholeBetween(1, 6);
            maybe(cells, "hold_s", [] { return wholeBetween(1, 60); });
            if (!cells.contains("hold_s") || chance(50))
                cells["reps"] = wholeBetween(1, 30);
            if (chance(60)) {
                cells["rrule"] = anyRule();
                cells["slots"] = anySlots();
            } else {
                cells["per_week"] = wholeBetween(1, 7);
                maybe(cells, "slots", [] { return std::string("day"); });
            }
            for (const char *const column : {"up_s", "pause_s", "down_s", "rest_s", "min_days", "min_sessions", "spare_reps", "easier_sets",
                     "easier_reps", "easier_hold_s"})
                maybe(cells, column, [] { return wholeBetween(0, 60); });
            for (const char *const column : {"load_kg", "load_step_kg", "easier_load_kg"})
                maybe(cells, column, [] { return numberUpTo(100); });
            maybe(cells, "body_share", [] { return numberUpTo(1); });
            maybe(cells, "range", anyText);
            maybe(cells, "key_point", anyText);
            rows.push_back(std::move(cells));
        }
        m_items.push_back(item);
    }

    [[nodiscard]] bool hasItem(std::size_t complaint) const
    {
        return std::any_of(m_items.begin(), m_items.end(), [complaint](const Item &item) { return item.complaint == complaint; });
    }

    void writeSettings()
    {
        std::vector<Cells> rows;
        const auto put = [&rows](const char *key, const std::string &value, const std::string &complaint = {}) {
            Cells cells{{"key", key}};
            if (!value.empty() && !chance(5))
                cells["value"] = value;
            if (!complaint.empty())
                cells["complaint"] = typed(complaint);
            rows.push_back(std::move(cells));
        };
        if (chance(80))
            put("patient_ref", newId());
        if (chance(50))
            put("day_starts", anyTimeOfDay());
        if (chance(50))
            put("time_zone", typed(oneOf(std::vector<std::string>{"Europe/Berlin", "UTC", "-x", "=y"})));
        if (chance(50))
            put("body_mass_kg", typedNumber(pick(1000, 150'000)));
        if (!m_hasComplaintsFile && chance(85))
            put("first_assessment_pain", numberUpTo(10), chance(30) ? m_complaints.front() : "");
        writePlanSettings(put);
        shuffle(rows);
        for (std::size_t complaint = 0; complaint < m_complaints.size(); ++complaint) {
            const bool rests
                = std::any_of(m_items.begin(), m_items.end(), [&](const Item &i) { return i.rests && i.complaint == complaint; });
            if (rests)
                rows.push_back(
                    {{"key", "rest_days_after_visit"}, {"value", wholeBetween(1, 5)}, {"complaint", typed(m_complaints[complaint])}});
        }
        if (!rows.empty() || chance(30))
            addTable("settings.csv", "key,value", {"complaint"}, rows);
    }

    template<class Put>
    void writePlanSettings(Put put)
    {
        std::vector<std::size_t> planned;
        for (std::size_t complaint = 0; complaint < m_complaints.size(); ++complaint) {
            if (hasItem(complaint))
                planned.push_back(complaint);
        }
        const auto putForSome = [&](const char *key, auto make, bool mayBeForAll = true) {
            if (!planned.empty() && mayBeForAll && chance(25))
                put(key, make(), {});
            for (const std::size_t complaint : planned) {
                if (chance(20))
                    put(key, make(), m_complaints[complaint]);
            }
        };
        for (const char *const key : {"after_limit", "check_limit", "contact_level", "contact_rise", "during_limit", "level_rise_allowed",
                 "rise_allowed", "weekly_rise_allowed", "weekly_stiffness_allowed"})
            putForSome(key, [] { return numberUpTo(10); });
        for (const char *const key :
            {"soreness_days", "step_sessions", "step_spacing_days", "step_window_days", "visits_planned", "plan_number"})
            putForSome(key, [] { return wholeBetween(1, 9); });
        putForSome("step_adherence", [] { return numberUpTo(1); });
        putForSome("birth_year", [] { return wholeBetween(1900, 2010); });
        putForSome("asks", anyAsks);
        putForSome("authority", [] { return std::string(oneOf(std::vector<const char *>{"off", "clinic", "patient"})); });
        putForSome("review_text", anyText);
        putForSome("plan_by", anyText);
        for (const char *const key : {"review_day", "plan_from"})
            putForSome(key, [] { return dayText(anyDay()); });
        // Two plans of one id and number cannot both be right.
        putForSome(
            "plan_id", [this] { return newId(); }, planned.size() == 1);
        // Items that rest need days to rest on, which they get further down.
        if (std::none_of(m_items.begin(), m_items.end(), [](const Item &item) { return item.rests; }))
            putForSome("rest_days_after_visit", [] { return wholeBetween(0, 5); });
    }

    void writeEntries(const Layout &layout)
    {
        const bool hasItems = !m_items.empty();
        const bool needsItem = std::any_of(
            layout.parts.begin(), layout.parts.end(), [](const Part &p) { return p.is == Is::Item && p.need == Need::Names; });
        std::vector<Cells> rows;
        if ((hasItems || !needsItem) && (!m_complaints.empty() || !layout.hasComplaint)) {
            for (int i = pick(0, 5); i > 0; --i)
                rows.push_back(entry(layout));
        }
        if (rows.empty() && !chance(20))
            return;
        std::vector<std::string> optional{"id", "recorded_at", "author", "replaces", "withdrawn"};
        for (const Part &part : layout.parts)
            optional.emplace_back(part.column);
        if (layout.hasComplaint)
            optional.emplace_back("complaint");
        addTable(layout.file, layout.header, optional, rows);
    }

    Cells entry(const Layout &layout)
    {
        const int day = anyDay();
        const std::string file = layout.file;
        const bool withdraws = chance(10);
        Cells cells{{file == "pauses.csv" ? "from" : "day", dayText(day)}};
        std::string thing = file + dayText(day);
        if (layout.hasComplaint) {
            const auto complaint = static_cast<std::size_t>(pick(0, static_cast<int>(m_complaints.size()) - 1));
            thing += '\x1f' + m_complaints[complaint];
            if (complaint > 0 || chance(30))
                cells["complaint"] = typed(m_complaints[complaint]);
        }
        for (const Part &part : layout.parts) {
            const bool isKept = part.need == Need::Names || part.need == Need::Aside || !withdraws;
            const bool isNeeded = part.need == Need::Names || part.need == Need::Needed;
            if (!isKept || (!isNeeded && !chance(60)) || (part.is == Is::Item && m_items.empty()))
                continue;
            const std::string value = cell(part, day);
            cells[part.column] = part.is == Is::Text ? value : typed(value);
            if (part.need == Need::Names)
                thing += '\x1f' + value;
        }
        if (withdraws)
            cells["withdrawn"] = "1";
        else
            fit(file, cells);
        if (chance(30))
            cells["author"] = oneOf(layout.isAnyonesToSay ? std::vector<const char *>{"patient", "helper", "clinic"}
                                                          : std::vector<const char *>{"patient", "helper"});
        addOrigin(file, thing, cells);
        return cells;
    }

    /// Where a row came from. Rows that have neither id nor instant are about different things.
    void addOrigin(const std::string &file, std::string thing, Cells &cells)
    {
        if (chance(20)) {
            const std::string replaced = knownId(file);
            cells["replaces"] = typed(replaced);
            thing += '\x1f' + replaced;
        }
        std::string instant = chance(50) ? anyInstant() : std::string();
        if (!instant.empty() && m_instants.insert(instant.substr(0, 10) + instant.substr(11, 8)).second)
            cells["recorded_at"] = instant;
        if (chance(50) || (!cells.contains("recorded_at") && !m_things.insert(thing).second)) {
            const std::string id = newId();
            cells["id"] = typed(id);
            m_idsOf[file].push_back(id);
        }
    }

    /// What a cell of \a part means, in a row about \a day; of a text, as it is typed.
    std::string cell(const Part &part, int day)
    {
        switch (part.is) {
        case Is::Text:
            return anyText();
        case Is::Word:
            return anyWord();
        case Is::Whole:
            return part.need == Need::Names ? std::to_string(pick(part.least, part.most)) : wholeBetween(part.least, part.most);
        case Is::Number:
            return numberUpTo(part.most);
        case Is::Choice:
            return oneOf(part.choices);
        case Is::Item:
            m_item = oneOf(m_items);
            return m_item.key;
        case Is::ItemStage:
            return wholeBetween(1, m_item.stages);
        case Is::Flag:
            return knownId("flags.csv");
        case Is::Note:
            return knownId("notes.csv");
        case Is::Day:
            return dayText(anyDay());
        case Is::Later:
            return dayFrom(day);
        }
        return {};
    }

    TypedFolder m_folder;
    std::vector<std::string> m_complaints; ///< their keys
    bool m_hasComplaintsFile = false;
    std::vector<Item> m_items;
    Item m_item{}; ///< the one that the row is about
    int m_keys = 0;
    int m_ids = 0;
    std::map<std::string, std::vector<std::string>> m_idsOf; ///< by file
    std::set<std::string> m_instants;
    std::set<std::string> m_things;
};

rc::Gen<TypedFolder> typedFolders()
{
    // At full size from the first one on, for RapidCheck begins with narrow ranges.
    return rc::gen::resize(rc::kNominalSize, rc::gen::exec([] { return Scribe().compose(); }));
}

} // namespace morrow::test
