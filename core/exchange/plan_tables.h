// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// complaints.csv, plan.csv and settings.csv: the tables that say what the others are about.

#include "base/sha256.h"
#include "exchange/issue.h"
#include "model/entry.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

class TableReader;
struct SettingKey;

class PlanTables
{
public:
    /// Reads the three tables from \a files (name to bytes), adding what is wrong to \a issues.
    PlanTables(std::map<std::string, std::string, std::less<>> &files, std::vector<Issue> &issues);

    /// Whether the three tables are good, so that other tables can be held against them.
    [[nodiscard]] bool isKnown() const noexcept { return m_isKnown; }
    [[nodiscard]] const std::optional<std::string> &person() const noexcept { return m_person; }
    /// The key of the first complaint; empty if there is none.
    [[nodiscard]] std::string_view firstComplaint() const noexcept;
    [[nodiscard]] bool hasComplaint(std::string_view key) const noexcept;
    /// How many stages the item \a key has; 0: there is no such item.
    [[nodiscard]] int stagesOf(std::string_view key) const noexcept;

    /// The earliest day that these tables name themselves, and the first start of an item.
    [[nodiscard]] std::optional<CivilDay> earliestDay() const noexcept;
    [[nodiscard]] std::optional<CivilDay> firstStart() const noexcept;

    /// Complaints, closings, plans and settings as entries. What has neither a day nor a
    /// start is about \a earliest, the earliest day in the folder.
    [[nodiscard]] std::vector<Entry> entries(CivilDay earliest, Sha256 &hash) const;

private:
    struct ComplaintRow
    {
        std::string key;
        Body body;
        std::optional<CivilDay> started;
        std::optional<CivilDay> ended;
        std::string endReason;
    };
    struct ItemRows
    {
        std::string key;
        std::string complaint;
        int line; ///< of its first row
        CivilDay start;
        Body body; ///< without its stages
        std::map<int, Body> stages;
        Issue restIssue; ///< in case that it rests and no rest is set
    };
    struct SettingCell
    {
        Body::Value value;
        Issue place; ///< in case that it is refused later
    };

    void readComplaints(std::string *bytes);
    void readPlan(std::string *bytes);
    void readSettings(std::string *bytes);
    void readSettingRows(std::string &bytes);
    void checkSettingPlace(TableReader &table, const SettingKey &key, std::string_view complaint, bool hasValue);
    void checkItems(const TableReader &table);
    void checkPlanIds();
    void completeChecks();
    [[nodiscard]] bool rests(std::string_view complaint) const;
    /// What a complaint's own row says, or the row for all; nullptr if neither stands there.
    [[nodiscard]] const SettingCell *settingCell(std::string_view complaint, std::string_view key) const;
    [[nodiscard]] const Body::Value *setting(std::string_view complaint, std::string_view key) const;
    [[nodiscard]] std::optional<CivilDay> firstStart(std::string_view complaint) const noexcept;
    [[nodiscard]] Body planBody(const ComplaintRow &complaint) const;

    std::vector<Issue> &m_issues;
    std::optional<std::string> m_person;
    bool m_hasComplaintsFile = false;
    bool m_isKnown = false; ///< nothing was wrong so far, so that what is not there does not exist
    std::vector<ComplaintRow> m_complaints;
    std::vector<ItemRows> m_items; ///< in the order of their first rows
    std::map<std::string, std::map<std::string, SettingCell, std::less<>>, std::less<>> m_settings; ///< by complaint (empty: all), key
};

/// The id of a plan that was not given one: UUID version 8 of the SHA-256 of "plan",
/// \a person and \a complaint with U+001F between them.
[[nodiscard]] std::string defaultPlanId(std::string_view person, std::string_view complaint);

} // namespace morrow
