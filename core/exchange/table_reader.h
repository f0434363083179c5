// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One table while it is read: its header matched against the columns it may have,
/// then its rows, each cell checked against a rule. What is wrong is added to the
/// issues, and reading goes on, so that a person learns of everything at once.

#include "exchange/csv.h"
#include "exchange/issue.h"
#include "model/rules.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

class TableReader
{
public:
    struct Column
    {
        std::string_view name;
        bool required;
    };

    /// Reads the table \a file, named in issues, from \a bytes.
    TableReader(std::string_view file, std::string &bytes, std::vector<Issue> &issues);

    /// Reads the header; false if it is refused. Below, a column is its place in \a columns.
    [[nodiscard]] bool open(std::vector<Column> columns);

    /// Goes to the next row; false at the end, or where the file cannot be taken apart any further.
    [[nodiscard]] bool next();

    /// The line that the row begins on, from 1.
    [[nodiscard]] int line() const noexcept { return m_line; }

    /// Whether nothing was wrong with the present row so far.
    [[nodiscard]] bool rowIsGood() const noexcept { return m_issues.size() == m_issuesBeforeRow; }

    /// The value of a cell by \a rule; nullopt if it is empty or refused. The rule outlives the issues.
    [[nodiscard]] std::optional<Body::Value> value(std::size_t column, const FieldRule &rule);
    /// The same, where an empty cell is no fault whatever the rule says.
    [[nodiscard]] std::optional<Body::Value> valueIfAny(std::size_t column, const FieldRule &rule);
    /// The same, as text.
    [[nodiscard]] std::optional<std::string> text(std::size_t column, const FieldRule &rule);

    /// Adds an issue about a cell of the present row, or about the whole row.
    Issue &refuse(IssueCode code, std::size_t column);
    Issue &refuseRow(IssueCode code);

    /// Where a cell is, for an issue that is found later; the row is \a line.
    [[nodiscard]] Issue issueAt(IssueCode code, int line, std::string_view columnName) const;

private:
    void refuseCsv();
    [[nodiscard]] const CsvCell *cell(std::size_t column) const noexcept;

    std::string_view m_file;
    CsvReader m_csv;
    std::vector<Issue> &m_issues;
    std::vector<Column> m_columns;
    std::vector<int> m_places; ///< of each column in the file, from 0; -1: not there
    std::size_t m_width = 0;
    const std::vector<CsvCell> *m_cells = nullptr;
    int m_line = 0;
    std::size_t m_issuesBeforeRow = 0;
};

} // namespace morrow
