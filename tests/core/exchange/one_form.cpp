// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/one_form.h"

#include "support/typed_cells.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <sstream>

namespace morrow::test {

namespace {

using Strings = std::set<std::string>;

const Strings kNumbers{"after_limit", "area_cm2", "bar", "birth_year", "body_mass_kg", "body_share", "check_limit", "consent",
    "contact_level", "contact_rise", "declined", "down_s", "during_limit", "easier_hold_s", "easier_load_kg", "easier_reps", "easier_sets",
    "first_assessment_pain", "hold_s", "hz", "impulses", "level_rise_allowed", "load_kg", "load_step_kg", "loads", "min_days",
    "min_sessions", "pain", "pain_after", "pain_during", "pause_s", "per_week", "plan_number", "reps", "rest_days_after_visit", "rest_s",
    "rests_after_visit", "rise_allowed", "set", "sets", "soreness_days", "spare", "spare_reps", "stage", "step_adherence", "step_sessions",
    "step_spacing_days", "step_window_days", "stiffness_min", "up_s", "visits_planned", "warmup_bar", "warmup_hz", "warmup_impulses",
    "weekly_rise_allowed", "weekly_stiffness_allowed", "withdrawn"};
const Strings kOfPerson{"patient_ref", "day_starts", "time_zone", "body_mass_kg"};
const Strings kAboutAComplaint{
    "visits.csv", "mornings.csv", "sessions.csv", "put_aside.csv", "skips.csv", "easier.csv", "notes.csv", "outcomes.csv"};
constexpr std::array kWeekdays{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};

std::string number(std::string cell)
{
    if (cell.find('.') != std::string::npos) {
        cell.erase(cell.find_last_not_of('0') + 1);
        if (cell.back() == '.')
            cell.pop_back();
    }
    return cell == "-0" ? "0" : cell;
}

std::string instant(std::string cell)
{
    cell[10] = 'T';
    if (cell.back() == 'Z' || cell.back() == 'z')
        cell.replace(cell.size() - 1, 1, "+00:00");
    std::string offset = cell.substr(cell.size() - 6);
    if (offset == "-00:00")
        offset = "+00:00";
    std::string milliseconds = cell.substr(19, cell.size() - 25); // with its point
    milliseconds = number("0" + milliseconds).substr(1);
    while (!milliseconds.empty() && milliseconds.size() < 4)
        milliseconds += '0';
    return cell.substr(0, 19) + milliseconds + offset;
}

/// \a cell with its parts in order, and the weekday of \a start (empty: none is known) where it needs one.
std::string rule(std::string cell, const std::string &start)
{
    std::transform(cell.begin(), cell.end(), cell.begin(), [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
    std::map<std::string, std::string> parts;
    std::istringstream in(cell);
    for (std::string part; std::getline(in, part, ';');)
        parts[part.substr(0, part.find('='))] = part.substr(part.find('=') + 1);
    std::string form = "FREQ=" + parts["FREQ"];
    if (!parts["INTERVAL"].empty() && parts["INTERVAL"] != "1")
        form += ";INTERVAL=" + parts["INTERVAL"];
    if (parts["FREQ"] == "WEEKLY" && parts["BYDAY"].empty() && !start.empty()) {
        const std::chrono::year_month_day day{std::chrono::year{std::stoi(start.substr(0, 4))},
            std::chrono::month{static_cast<unsigned>(std::stoi(start.substr(5, 2)))},
            std::chrono::day{static_cast<unsigned>(std::stoi(start.substr(8)))}};
        parts["BYDAY"] = kWeekdays[std::chrono::weekday{std::chrono::sys_days{day}}.iso_encoding() - 1];
    }
    std::string days;
    for (const char *const day : kWeekdays) {
        if (parts["BYDAY"].find(day) != std::string::npos)
            days += (days.empty() ? ";BYDAY=" : ",") + std::string(day);
    }
    return form + days;
}

std::string asks(const std::string &cell)
{
    std::string form;
    for (const std::string ask : {"none", "stiffness", "during", "after", "spare"}) {
        if (cell.find(ask) != std::string::npos)
            form += (form.empty() ? "" : " ") + ask;
    }
    return form;
}

std::string cellForm(const std::string &column, const std::string &cell)
{
    return kNumbers.contains(column) ? number(cell) : column == "recorded_at" ? instant(cell) : meaningOf(cell);
}

/// What the value of the setting \a key, whose apostrophe is gone, says.
std::string settingForm(const std::string &key, const std::string &value)
{
    return kNumbers.contains(key) ? number(value) : key == "asks" ? asks(value) : value;
}

/// The rows of a table with their cells in one form; rules stay as they are.
std::vector<Row> readRows(const Files &files, const std::string &name)
{
    const auto file = files.find(name);
    if (file == files.end())
        return {};
    const auto cells = rowsOf(file->second);
    std::vector<Row> rows;
    for (std::size_t i = 1; i < cells.size(); ++i) {
        Row &row = rows.emplace_back();
        for (std::size_t column = 0; column < cells[0].size(); ++column) {
            if (!cells[i][column].empty())
                row[cells[0][column]] = cellForm(cells[0][column], cells[i][column]);
        }
    }
    return rows;
}

class Form
{
public:
    explicit Form(const Files &files)
        : m_files(files)
    {
    }

    OneForm make()
    {
        m_form.complaints = readRows(m_files, "complaints.csv");
        m_hasComplaints = m_files.contains("complaints.csv");
        if (!m_hasComplaints)
            m_form.complaints = {{{"complaint", "main"}}};
        readPlan();
        readSettings();
        for (Row &complaint : m_form.complaints) {
            if (complaint.contains("check"))
                complaint["check"] = rule(complaint["check"], m_firstStart[complaint["complaint"]]);
        }
        for (const auto &[name, bytes] : m_files) {
            if (name.ends_with(".csv") && name != "complaints.csv" && name != "plan.csv" && name != "settings.csv")
                readEntries(name);
        }
        return m_form;
    }

private:
    [[nodiscard]] std::string firstComplaint() const
    {
        return m_form.complaints.empty() ? std::string() : m_form.complaints[0].at("complaint");
    }

    void readPlan()
    {
        std::vector<std::string> items;
        std::vector<std::pair<std::vector<std::size_t>, Row>> placed;
        for (Row row : readRows(m_files, "plan.csv")) {
            row.try_emplace("complaint", firstComplaint());
            if (row.contains("rrule"))
                row["rrule"] = rule(row["rrule"], row["start"]);
            std::string &first = m_firstStart[row["complaint"]];
            first = first.empty() ? row["start"] : std::min(first, row["start"]);
            if (std::find(items.begin(), items.end(), row["item"]) == items.end())
                items.push_back(row["item"]);
            std::size_t complaint = 0;
            while (m_form.complaints[complaint]["complaint"] != row["complaint"])
                ++complaint;
            const auto item = static_cast<std::size_t>(std::find(items.begin(), items.end(), row["item"]) - items.begin());
            placed.push_back({{complaint, item, std::stoul(row["stage"])}, std::move(row)});
        }
        std::stable_sort(placed.begin(), placed.end(), [](const auto &a, const auto &b) { return a.first < b.first; });
        for (auto &[place, row] : placed)
            m_form.plan.push_back(std::move(row));
    }

    void readSettings()
    {
        std::map<std::string, std::map<std::string, std::string>> given; // by key, complaint
        for (Row &row : readRows(m_files, "settings.csv")) {
            if (row.contains("value"))
                given[row["key"]][row["complaint"]] = settingForm(row["key"], row["value"]);
        }
        for (auto &[key, values] : given) {
            if (key == "first_assessment_pain") {
                m_form.complaints[0][key] = values.begin()->second;
            } else if (kOfPerson.contains(key)) {
                m_form.settings[key] = values[""];
            } else {
                for (const auto &[complaint, start] : m_firstStart) {
                    const auto own = values.contains(complaint) ? values.find(complaint) : values.find("");
                    const std::string taken = own == values.end() ? "" : own->second;
                    const std::string otherwise = key == "plan_number" ? "1" : key == "plan_from" ? start : "";
                    if (!taken.empty() && taken != otherwise)
                        m_form.settings[key + "@" + complaint] = taken;
                }
            }
        }
    }

    void readEntries(const std::string &name)
    {
        for (Row &row : readRows(m_files, name)) {
            const bool isTheClinics = name == "visits.csv" || name == "stages.csv" || (name == "notes.csv" && row["kind"] == "reply")
                || (name == "outcomes.csv" && row["kind"] == "test");
            row.try_emplace("author", isTheClinics ? "clinic" : "patient");
            if (kAboutAComplaint.contains(name))
                row.try_emplace("complaint", firstComplaint());
            if (name == "outcomes.csv")
                row["value"] = number(row["value"]);
            std::erase_if(row, [](const auto &cell) { return cell.second.empty(); });
            m_form.entries[name].insert(row);
        }
    }

    const Files &m_files;
    OneForm m_form;
    bool m_hasComplaints = false;
    std::map<std::string, std::string> m_firstStart; ///< by complaint, of those that have an item
};

std::string shown(const Row &row)
{
    std::string text;
    for (const auto &[column, cell] : row)
        text += " " + column + "=<" + cell + ">";
    return text;
}

std::string differenceOf(const std::string &file, const std::vector<Row> &a, const std::vector<Row> &b)
{
    if (a.size() != b.size())
        return file + ": " + std::to_string(a.size()) + " rows, " + std::to_string(b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (a[i] != b[i])
            return file + ":" + shown(a[i]) + "\nis not" + shown(b[i]);
    }
    return {};
}

} // namespace

OneForm oneForm(const Files &files)
{
    return Form(files).make();
}

std::string difference(const OneForm &a, const OneForm &b)
{
    const auto list = [](const std::multiset<Row> &rows) { return std::vector<Row>(rows.begin(), rows.end()); };
    std::string all = differenceOf("complaints.csv", a.complaints, b.complaints) + differenceOf("plan.csv", a.plan, b.plan);
    if (a.settings != b.settings)
        all += "settings.csv:" + shown(a.settings) + "\nis not" + shown(b.settings);
    Strings names;
    for (const OneForm *const form : {&a, &b}) {
        for (const auto &[name, rows] : form->entries)
            names.insert(name);
    }
    for (const std::string &name : names) {
        const auto rowsIn
            = [&](const OneForm &form) { return form.entries.contains(name) ? list(form.entries.at(name)) : std::vector<Row>(); };
        all += differenceOf(name, rowsIn(a), rowsIn(b));
    }
    return all;
}

} // namespace morrow::test
