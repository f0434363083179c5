// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Desks, and the files that come to them.

#include "actions/desk.h"
#include "actions/record_at_desk.h"
#include "actions/take_in.h"
#include "core/store/kept_diary.h"
#include "support/diary_builder.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace morrow::test {

/// A file of somebody, as it comes to the desk.
struct Foreign
{
    FhirDiary diary;
    std::string bytes;
};

/// The summary of \a entries of \a ref.
[[nodiscard]] Foreign summary(const std::vector<Entry> &entries, const std::string &ref = kRef);
[[nodiscard]] Foreign foreign(const std::vector<Entry> &entries, const std::string &ref, FhirFile file);

/// A patient's diary: an item from the start of March on, and the checks and sets of the days
/// \a first to \a last of it, counted from 0.
[[nodiscard]] std::vector<Entry> diaryOf(int first, int last);

/// The desk in \a folder; ends the program if it cannot be opened, since that is a slip of the test.
[[nodiscard]] OpenDesk openedDesk(const std::filesystem::path &folder);
/// Makes the desk in \a folder with its record a link to \a record.
void makeDesk(const std::filesystem::path &folder, const std::filesystem::path &record);

inline const WhoseAnswer kSomebodyNew{.isNew = true, .as = {}};
[[nodiscard]] WhoseAnswer somebodyKnown(const std::string &ref);

/// How a taking in ended: "added 3 known 2", or the problems.
[[nodiscard]] std::string takingIn(OpenDesk &desk, const Foreign &file, const WhoseAnswer &answer = {}, Moment now = kNow);

/// What the clinic says about \a ref at \a now, or why it could not be said.
[[nodiscard]] std::string saying(OpenDesk &desk, const std::string &ref, Draft draft, Moment now = kNow);
[[nodiscard]] Draft visitOn(Day day);
[[nodiscard]] Draft named(const std::string &label);

/// Every person of the desk with count and sum of the entries, damage named.
using Sums = std::map<std::string, std::string>;
[[nodiscard]] Sums sumsOf(OpenDesk &desk);

} // namespace morrow::test
