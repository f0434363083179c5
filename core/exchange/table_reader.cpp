// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/table_reader.h"

#include "base/utf8.h"

#include <algorithm>

namespace morrow {

TableReader::TableReader(std::string_view file, std::string &bytes, std::vector<Issue> &issues)
    : m_file(file)
    , m_csv(bytes)
    , m_issues(issues)
{
}

bool TableReader::open(std::vector<Column> columns)
{
    m_columns = std::move(columns);
    m_places.assign(m_columns.size(), -1);
    const std::size_t before = m_issues.size();
    m_cells = m_csv.next();
    if (!m_cells) {
        if (m_csv.error())
            refuseCsv();
        else
            m_issues.push_back({.code = IssueCode::NoHeader, .file = std::string(m_file)});
        return false;
    }
    m_width = m_cells->size();
    m_line = 1;
    for (std::size_t place = 0; place < m_width; ++place) {
        const std::string_view name = (*m_cells)[place].text;
        const auto found = std::find_if(m_columns.begin(), m_columns.end(), [name](const Column &c) { return c.name == name; });
        Issue issue{.code = IssueCode::UnknownColumn, .file = std::string(m_file), .line = 1, .column = static_cast<int>(place) + 1};
        if (firstInvalidUtf8(name)) {
            issue.code = IssueCode::NotUtf8;
        } else if (found == m_columns.end()) {
            issue.value = name;
        } else if (int &known = m_places[static_cast<std::size_t>(found - m_columns.begin())]; known >= 0) {
            issue.code = IssueCode::ColumnTwice;
            issue.columnName = name;
        } else {
            known = static_cast<int>(place);
            continue;
        }
        m_issues.push_back(std::move(issue));
    }
    if (std::all_of(m_places.begin(), m_places.end(), [](int place) { return place < 0; })) {
        // Not one name that is known: the first row of a table typed without its header.
        m_issues.resize(before);
        m_issues.push_back({.code = IssueCode::NoHeader, .file = std::string(m_file), .line = 1, .column = 1});
    }
    // A misspelt name is said once, as what it is, and not again as what is missing.
    const bool isReadable = m_issues.size() == before;
    for (std::size_t i = 0; i < m_columns.size() && isReadable; ++i) {
        if (m_columns[i].required && m_places[i] < 0)
            m_issues.push_back(
                {.code = IssueCode::ColumnMissing, .file = std::string(m_file), .line = 1, .columnName = std::string(m_columns[i].name)});
    }
    return m_issues.size() == before;
}

bool TableReader::next()
{
    for (;;) {
        m_cells = m_csv.next();
        if (!m_cells) {
            if (m_csv.error())
                refuseCsv();
            return false;
        }
        m_line = m_cells->front().line;
        if (m_cells->size() == m_width) {
            m_issuesBeforeRow = m_issues.size();
            return true;
        }
        Issue &issue = refuseRow(IssueCode::CellCount);
        issue.value = std::to_string(m_cells->size());
        issue.other = std::to_string(m_width);
    }
}

std::optional<Body::Value> TableReader::value(std::size_t column, const FieldRule &rule)
{
    const CsvCell *const found = cell(column);
    if (rule.required && (!found || found->text.empty())) {
        refuse(IssueCode::ValueMissing, column).rule = &rule;
        return std::nullopt;
    }
    return valueIfAny(column, rule);
}

std::optional<Body::Value> TableReader::valueIfAny(std::size_t column, const FieldRule &rule)
{
    const CsvCell *const found = cell(column);
    if (!found || found->text.empty())
        return std::nullopt;
    const bool isNumber = rule.form == Form::Number || rule.form == Form::Whole;
    const std::string_view text = isNumber ? found->text : unescapeFormula(found->text);
    auto value = readValue(rule, text);
    if (!value) {
        const IssueCode code = firstInvalidUtf8(text) ? IssueCode::NotUtf8
            : hasControlCharacter(text)               ? IssueCode::ControlCharacter
                                                      : IssueCode::ValueRefused;
        Issue &issue = refuse(code, column);
        issue.rule = &rule;
        if (code == IssueCode::ValueRefused)
            issue.value = text;
    }
    return value;
}

std::optional<std::string> TableReader::text(std::size_t column, const FieldRule &rule)
{
    auto found = value(column, rule);
    if (!found)
        return std::nullopt;
    return std::get<std::string>(*std::move(found));
}

Issue &TableReader::refuse(IssueCode code, std::size_t column)
{
    const CsvCell *const found = cell(column);
    m_issues.push_back(issueAt(code, found ? found->line : m_line, m_columns[column].name));
    return m_issues.back();
}

Issue &TableReader::refuseRow(IssueCode code)
{
    m_issues.push_back({.code = code, .file = std::string(m_file), .line = m_line});
    return m_issues.back();
}

Issue TableReader::issueAt(IssueCode code, int line, std::string_view columnName) const
{
    Issue issue{.code = code, .file = std::string(m_file), .line = line, .columnName = std::string(columnName)};
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        if (m_columns[i].name == columnName)
            issue.column = m_places[i] + 1;
    }
    return issue;
}

void TableReader::refuseCsv()
{
    const CsvError error = *m_csv.error();
    m_issues.push_back({
        .code = error == CsvError::OpenQuote ? IssueCode::OpenQuote
            : error == CsvError::StrayQuote  ? IssueCode::StrayQuote
                                             : IssueCode::ControlCharacter,
        .file = std::string(m_file),
        .line = m_csv.errorLine(),
        .column = m_csv.errorColumn(),
    });
}

const CsvCell *TableReader::cell(std::size_t column) const noexcept
{
    const int place = m_places[column];
    return place < 0 ? nullptr : &(*m_cells)[static_cast<std::size_t>(place)];
}

} // namespace morrow
