// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Folders of tables compared by what they say, however it was typed.
///
/// Rows become maps from column to cell; empty cells, the order of what has none, zeros
/// that say nothing, apostrophes before formulas and ways to write a rule or an instant are
/// gone, and what an empty cell stands for (complaint, author, a plan's settings) is filled in.

#include "support/typed_table.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace morrow::test {

using Row = std::map<std::string, std::string>;

struct OneForm
{
    std::vector<Row> complaints; ///< in their order
    std::vector<Row> plan; ///< by complaint, item as first named, stage
    std::map<std::string, std::string> settings; ///< by key; for those of a plan by key, '@' and complaint
    std::map<std::string, std::multiset<Row>> entries; ///< by file
};

/// The one form of a folder that is good.
[[nodiscard]] OneForm oneForm(const Files &files);

/// Where two folders say something else, as text; empty where they say the same.
[[nodiscard]] std::string difference(const OneForm &a, const OneForm &b);

} // namespace morrow::test
