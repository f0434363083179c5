// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Tables between a keyboard and a file, put down without the writer that is tested.

#include <functional>
#include <iosfwd>
#include <map>
#include <string>
#include <vector>

namespace morrow::test {

/// A table before it is bytes: cells as they are typed, and how its file is put down.
struct TypedTable
{
    std::vector<std::string> columns;
    std::vector<std::vector<std::string>> rows; ///< as many cells in each as there are columns
    bool hasByteOrderMark = false;
    bool breaksLinesWithLf = false; ///< else with CRLF
    bool quotesEveryCell = false;
    bool endsWithoutBreak = false;
};

/// By file name.
using TypedFolder = std::map<std::string, TypedTable, std::less<>>;
using Files = std::map<std::string, std::string, std::less<>>;

/// \a folder as bytes.
[[nodiscard]] Files filesOf(const TypedFolder &folder);

/// The rows of \a bytes, the header first; what is not CSV is read as if it were.
[[nodiscard]] std::vector<std::vector<std::string>> rowsOf(const std::string &bytes);

/// How a counterexample is shown.
std::ostream &operator<<(std::ostream &out, const TypedTable &table);

} // namespace morrow::test
