// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/typed_table.h"

#include <ostream>

namespace morrow::test {

Files filesOf(const TypedFolder &folder)
{
    Files files;
    for (const auto &[name, table] : folder) {
        const std::string lineEnd = table.breaksLinesWithLf ? "\n" : "\r\n";
        std::string bytes = table.hasByteOrderMark ? "\xef\xbb\xbf" : "";
        const auto addRow = [&](const std::vector<std::string> &cells) {
            for (std::size_t i = 0; i < cells.size(); ++i) {
                bytes += i > 0 ? "," : "";
                const bool isQuoted = table.quotesEveryCell || cells[i].find_first_of("\",\r\n") != std::string::npos;
                std::string cell = cells[i];
                for (std::size_t at = cell.find('"'); isQuoted && at != std::string::npos; at = cell.find('"', at + 2))
                    cell.insert(at, 1, '"');
                bytes += isQuoted ? '"' + cell + '"' : cell;
            }
            bytes += lineEnd;
        };
        addRow(table.columns);
        for (const auto &row : table.rows)
            addRow(row);
        if (table.endsWithoutBreak)
            bytes.resize(bytes.size() - lineEnd.size());
        files.emplace(name, std::move(bytes));
    }
    return files;
}

std::ostream &operator<<(std::ostream &out, const TypedTable &table)
{
    return out << '\n' << filesOf({{"", table}}).begin()->second;
}

std::vector<std::vector<std::string>> rowsOf(const std::string &bytes)
{
    std::vector<std::vector<std::string>> rows;
    bool isQuoted = false;
    bool isNewRow = true;
    for (std::size_t i = bytes.starts_with("\xef\xbb\xbf") ? 3 : 0; i < bytes.size(); ++i) {
        if (isNewRow)
            rows.push_back({""});
        isNewRow = false;
        const char c = bytes[i];
        if (c == '"') {
            // The second of two quotes inside a quoted cell opens it again, and stands for itself.
            isQuoted = !isQuoted;
            if (isQuoted && i > 0 && bytes[i - 1] == '"')
                rows.back().back() += '"';
            continue;
        }
        if (!isQuoted && c == ',')
            rows.back().emplace_back();
        else if (!isQuoted && c == '\n')
            isNewRow = true;
        else if (isQuoted || c != '\r')
            rows.back().back() += c;
    }
    return rows;
}

} // namespace morrow::test
