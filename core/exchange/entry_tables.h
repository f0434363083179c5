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
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace morrow {

class TableReader;

class EntryTables
{
public:
    /// Reads every table of entries in \a files against \a plan, adding what is wrong to \a issues.
    EntryTables(std::map<std::string, std::string, std::less<>> &files, const PlanTables &plan, Sha256 &hash, std::vector<Issue> &issues);

    /// Holds the rows against each other and against \a others, the entries of the plan:
    /// one id one content, one thing one row, and corrections that name their own kind and
    /// do not go round in a circle.
    void checkTogether(std::span<const Entry> others);

    [[nodiscard]] std::optional<CivilDay> earliestDay() const noexcept { return m_earliest; }
    [[nodiscard]] std::vector<Entry> take();

private:
    /// Where an entry came from.
    struct Origin
    {
        const EntryTable *table;
        int line;
        int idColumn; ///< from 1; 0: the table has none
        int replacesColumn; ///< the same
        bool hasId;
        std::string aside; ///< the id of the other entry that the row makes; empty: none
    };
    /// The cells that make the other entry, by their columns.
    using Asides = std::vector<std::pair<std::string_view, std::string>>;

    void readTable(const EntryTable &table, std::string &bytes);
    void readRow(const EntryTable &table, TableReader &reader);
    void checkBody(const EntryTable &table, TableReader &reader, const Entry &entry, const Body &body);
    void checkNames(const EntryTable &table, TableReader &reader, const Body &body);
    std::string addAside(const Origin &origin, const Asides &asides, const Entry &row);
    void add(Entry entry, Origin origin);
    [[nodiscard]] Issue issueAt(IssueCode code, std::size_t index, ColumnRole role) const;
    void checkIds(std::span<const Entry> others);
    void checkThings();
    void checkReplaces(std::span<const Entry> others);

    const PlanTables &m_plan;
    Sha256 &m_hash;
    std::vector<Issue> &m_issues;
    std::optional<CivilDay> m_earliest;
    std::vector<Entry> m_entries;
    std::vector<Origin> m_origins; ///< one an entry
    std::vector<std::string> m_things; ///< what a row without instant, id and replaces is about; else empty
};

} // namespace morrow
