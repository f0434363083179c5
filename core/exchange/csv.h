// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Comma-separated values by RFC 4180, strictly: LF alone also ends a line, because
/// that is what a text editor writes, and a byte order mark is passed over, because
/// that is what a spreadsheet writes. Nothing else is forgiven.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

struct CsvCell
{
    std::string_view text; ///< without its quotes
    int line; ///< from 1: where it begins
};

enum class CsvError {
    OpenQuote, ///< a quoted cell that does not end
    StrayQuote, ///< a quote inside an unquoted cell, or text behind a closing quote
    LoneReturn, ///< a CR outside quotes that no LF follows
};

/// Takes the rows of a table apart, one after another.
class CsvReader
{
public:
    /// Reads \a bytes, whose quoted cells it rewrites in place; they must outlive the reader and its cells.
    explicit CsvReader(std::string &bytes);

    /// The cells of the next row; nullopt at the end, or where error() says why not.
    /// The vector is the reader's own and is filled anew by the next call.
    [[nodiscard]] const std::vector<CsvCell> *next();

    [[nodiscard]] std::optional<CsvError> error() const noexcept { return m_error; }
    /// After an error: where it is, and in which cell of the row, from 1.
    [[nodiscard]] int errorLine() const noexcept { return m_errorLine; }
    [[nodiscard]] int errorColumn() const noexcept { return static_cast<int>(m_cells.size()) + 1; }

private:
    bool readCell();
    bool readQuoted();
    bool fail(CsvError error, int line);

    std::string &m_bytes;
    std::size_t m_at = 0;
    int m_line = 1;
    std::vector<CsvCell> m_cells;
    std::optional<CsvError> m_error;
    int m_errorLine = 0;
};

/// Appends \a text as a cell, quoted only where it must be.
void appendCsvCell(std::string &out, std::string_view text);

/// \a text as a text cell that no spreadsheet runs as a formula: text that matches
/// `'*[=+\-@\t\r]` at its start gets one `'` in front.
[[nodiscard]] std::string escapeFormula(std::string_view text);

/// Takes back what escapeFormula did.
[[nodiscard]] std::string_view unescapeFormula(std::string_view cell) noexcept;

} // namespace morrow
