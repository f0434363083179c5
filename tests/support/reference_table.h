// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Published cases that numbers are checked against: tests/data/reference.

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace morrow::test {

/// One row, by the names of the header.
using ReferenceRow = std::map<std::string, std::string, std::less<>>;

/// The rows of the file called \a name. Lines that begin with # name the source; no cell is
/// quoted. Ends the program if the file is not there or a row has another number of cells.
[[nodiscard]] std::vector<ReferenceRow> referenceRows(std::string_view name);

/// The number in the cell \a column, which is not empty.
[[nodiscard]] double realCell(const ReferenceRow &row, std::string_view column);
/// The whole number in it, 0 if it is empty.
[[nodiscard]] int wholeCell(const ReferenceRow &row, std::string_view column);

} // namespace morrow::test
