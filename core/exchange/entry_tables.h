// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The tables whose rows are entries.

#include "base/sha256.h"
#include "exchange/issue.h"
#include "exchange/plan_tables.h"
#include "exchange/table_layout.h"
#include "model/entry.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

class TableReader;

class EntryTables
{
public:
    /// Reads every table of entries in \a files against \a plan, adding what is wrong to \a issues.
    EntryTables(std::map<std::string, std::string, std::less<>> &files, const PlanTables &plan, Sha256 &hash, std::vector<Issue> &issues);

    /// Holds the rows against each other: one id one content, one thing one row, and
    /// corrections that name their own kind and do not go round in a circle.
    void checkTogether();

    [[nodiscard]] std::optional<CivilDay> earliestDay() const noexcept { return m_earliest; }
    [[nodiscard]] std::vector<Entry> take();

private:
    /// Where an entry came from.
    struct Origin
    {
        const EntryTable *table;
        int line;
        int idColumn; ///< from 1; 0: the table has none
        bool hasId;
    };

    void readTable(const EntryTable &table, std::string &bytes);
    void readRow(const EntryTable &table, TableReader &reader);
    void checkBody(const EntryTable &table, TableReader &reader, const Entry &entry, const Body &body);
    void checkNames(const EntryTable &table, TableReader &reader, const Body &body);
    void addAsides(const EntryTable &table, TableReader &reader, const Entry &row);
    void add(Entry entry, const Origin &origin);
    [[nodiscard]] Issue issueAt(IssueCode code, std::size_t index, std::string_view columnName) const;
    void checkIds();
    void checkThings();
    void checkReplaces();

    const PlanTables &m_plan;
    Sha256 &m_hash;
    std::vector<Issue> &m_issues;
    std::optional<CivilDay> m_earliest;
    std::vector<Entry> m_entries;
    std::vector<Origin> m_origins; ///< one an entry
    std::vector<std::string> m_things; ///< what a row without instant, id and replaces is about; else empty
    std::map<std::string_view, std::vector<std::string>> m_headers; ///< by file, for issues found later
};

} // namespace morrow
