// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Folders in each of which one thing is wrong, with what has to be said about it.

#include "exchange/issue.h"
#include "support/typed_table.h"

#include <string>
#include <vector>

namespace morrow::test {

struct BadFolder
{
    const char *name;
    Files files; ///< beside or in the place of those of the small folder
    IssueCode code;
    std::string file{};
    int line = 0;
    int column = 0;
    std::string columnName{};
    std::string value{};
    std::string other{};
};

[[nodiscard]] std::vector<BadFolder> badFolders();

} // namespace morrow::test
