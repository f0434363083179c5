// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/csv.h"

namespace morrow {

namespace {

/// Whether \a text is apostrophes and then a character that starts a formula.
bool startsLikeFormula(std::string_view text) noexcept
{
    const std::size_t at = text.find_first_not_of('\'');
    return at != std::string_view::npos && std::string_view("=+-@\t\r").find(text[at]) != std::string_view::npos;
}

} // namespace

CsvReader::CsvReader(std::string &bytes)
    : m_bytes(bytes)
{
    if (m_bytes.starts_with("\xef\xbb\xbf"))
        m_at = 3;
}

const std::vector<CsvCell> *CsvReader::next()
{
    m_cells.clear();
    if (m_error || m_at >= m_bytes.size())
        return nullptr;
    for (;;) {
        if (!readCell())
            return nullptr;
        if (m_at >= m_bytes.size())
            return &m_cells;
        const char end = m_bytes[m_at++];
        if (end == ',')
            continue;
        if (end == '\r')
            ++m_at; // readCell made sure that LF follows
        ++m_line;
        return &m_cells;
    }
}

/// Reads the cell at m_at and stops on the comma, line end or end of file behind it.
bool CsvReader::readCell()
{
    if (m_at < m_bytes.size() && m_bytes[m_at] == '"')
        return readQuoted();
    const std::size_t start = m_at;
    for (; m_at < m_bytes.size(); ++m_at) {
        const char c = m_bytes[m_at];
        if (c == ',' || c == '\n')
            break;
        if (c == '"')
            return fail(CsvError::StrayQuote, m_line);
        if (c == '\r') {
            if (m_at + 1 < m_bytes.size() && m_bytes[m_at + 1] == '\n')
                break;
            return fail(CsvError::LoneReturn, m_line);
        }
    }
    m_cells.push_back({std::string_view(m_bytes).substr(start, m_at - start), m_line});
    return true;
}

bool CsvReader::readQuoted()
{
    const int line = m_line;
    const std::size_t start = ++m_at;
    std::size_t end = start;
    for (;;) {
        if (m_at >= m_bytes.size())
            return fail(CsvError::OpenQuote, line);
        const char c = m_bytes[m_at++];
        if (c == '"') {
            if (m_at >= m_bytes.size() || m_bytes[m_at] != '"')
                break;
            ++m_at;
        }
        if (c == '\n')
            ++m_line;
        m_bytes[end++] = c;
    }
    const bool ends = m_at >= m_bytes.size() || m_bytes[m_at] == ',' || m_bytes[m_at] == '\n'
        || (m_bytes[m_at] == '\r' && m_at + 1 < m_bytes.size() && m_bytes[m_at + 1] == '\n');
    if (!ends)
        return fail(CsvError::StrayQuote, m_line);
    m_cells.push_back({std::string_view(m_bytes).substr(start, end - start), line});
    return true;
}

bool CsvReader::fail(CsvError error, int line)
{
    m_error = error;
    m_errorLine = line;
    return false;
}

void appendCsvCell(std::string &out, std::string_view text)
{
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        out += text;
        return;
    }
    out += '"';
    for (const char c : text) {
        if (c == '"')
            out += '"';
        out += c;
    }
    out += '"';
}

std::string escapeFormula(std::string_view text)
{
    std::string cell;
    if (startsLikeFormula(text))
        cell += '\'';
    cell += text;
    return cell;
}

std::string_view unescapeFormula(std::string_view cell) noexcept
{
    if (cell.starts_with('\'') && startsLikeFormula(cell))
        cell.remove_prefix(1);
    return cell;
}

} // namespace morrow
