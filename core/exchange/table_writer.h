// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One table while it is written: rows of cells under the columns it may have, of
/// which the optional ones that no row needs are left out.

#include "model/body.h"
#include "model/rules.h"

#include <string>
#include <string_view>
#include <vector>

class QJsonObject;

namespace morrow {

class TableWriter
{
public:
    /// Adds a column; \a rule gives its form.
    void addColumn(std::string_view name, const FieldRule &rule, bool required);

    /// Begins a row, all of whose cells are empty.
    void addRow();
    /// Fills the cell of the column \a name in the present row.
    void setValue(std::string_view name, const Body::Value &value);
    void setText(std::string_view name, std::string_view text);

    /// Orders the rows as their cells stand in \a keys, one for each row.
    void sortBy(const std::vector<std::string> &keys);

    [[nodiscard]] bool isEmpty() const noexcept { return m_rows.empty(); }
    /// The file's bytes: UTF-8, CRLF, a header.
    [[nodiscard]] std::string toCsv() const;
    /// Its description, by W3C Metadata Vocabulary for Tabular Data.
    [[nodiscard]] QJsonObject describe(std::string_view file) const;

private:
    struct Column
    {
        std::string name;
        FieldRule rule;
        bool isWritten; ///< required, or needed by a row
    };

    std::vector<Column> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

} // namespace morrow
