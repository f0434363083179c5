// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A file that a clinic gave, or that this program wrote elsewhere, becomes part of the diary.
///
///  I1  A file is taken whole or not at all; a refused one changes nothing, and begins no diary.
///  I2  What is known already is left alone: the same file twice changes nothing the second time.

#include "actions/diary_union.h"
#include "actions/open.h"
#include "base/file.h"
#include "exchange/issue.h"

#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace morrow {

enum class AdoptRefusal {
    OtherPerson, ///< the file is somebody else's
    NotToBeHandedOver, ///< it holds what a desk or a home says of itself only
};

/// Why a file was not opened.
using AdoptProblem = std::variant<FileError, std::vector<Issue>, AdoptRefusal, std::vector<Clash>, StoreError>;

/// What a file says.
struct Offered
{
    std::string person;
    std::vector<Entry> entries; ///< one id each
};

/// The plan or summary at \a path.
[[nodiscard]] Result<Offered, AdoptProblem> readOffered(const std::filesystem::path &path);
/// A diary as tables, name to bytes, such as the demo that comes with the program.
[[nodiscard]] Result<Offered, AdoptProblem> readOffered(std::map<std::string, std::string, std::less<>> tables);

/// What was new of it.
struct Adopted
{
    std::map<Kind, int> counts;
    int known = 0;

    [[nodiscard]] bool hasNew() const noexcept { return !counts.empty(); }
};

/// Adds \a offered to \a diary, which is of the same person.
[[nodiscard]] Result<Adopted, AdoptProblem> adopt(OpenDiary &diary, Offered offered);

/// Begins a diary in \a folder, where there is none, with what is \a offered.
[[nodiscard]] Result<OpenDiary, AdoptProblem> beginWith(const std::filesystem::path &folder, Offered offered);

} // namespace morrow
