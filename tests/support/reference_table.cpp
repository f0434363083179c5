// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/reference_table.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace morrow::test {

namespace {

std::vector<std::string> cells(const std::string &line)
{
    std::vector<std::string> result;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, ',');)
        result.push_back(cell);
    if (line.ends_with(','))
        result.emplace_back();
    return result;
}

[[noreturn]] void end(std::string_view name, std::string_view what)
{
    std::fprintf(stderr, "%.*s: %.*s\n", static_cast<int>(name.size()), name.data(), static_cast<int>(what.size()), what.data());
    std::abort();
}

} // namespace

std::vector<ReferenceRow> referenceRows(std::string_view name)
{
    std::ifstream file(std::string(MORROW_TEST_DATA "/reference/") + std::string(name));
    std::vector<std::string> header;
    std::vector<ReferenceRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.starts_with('#'))
            continue;
        const std::vector<std::string> row = cells(line);
        if (header.empty()) {
            header = row;
            continue;
        }
        if (row.size() != header.size())
            end(name, line);
        ReferenceRow &named = rows.emplace_back();
        for (std::size_t i = 0; i < row.size(); ++i)
            named[header[i]] = row[i];
    }
    if (rows.empty())
        end(name, "no rows");
    return rows;
}

double realCell(const ReferenceRow &row, std::string_view column)
{
    const std::string &text = row.find(column)->second;
    char *rest = nullptr;
    const double value = std::strtod(text.c_str(), &rest);
    if (text.empty() || *rest != '\0')
        end(column, text);
    return value;
}

int wholeCell(const ReferenceRow &row, std::string_view column)
{
    return row.find(column)->second.empty() ? 0 : static_cast<int>(realCell(row, column));
}

} // namespace morrow::test
