// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Sentences whose numbers open, as pages draw them, and what they open.

#include "Entries/word_rows.h"
#include "report/sentence.h"

#include <QString>

#include <vector>

namespace morrow {

/// Words of \a sentence as they are set: what stands before a value without a space, the value, what follows it.
[[nodiscard]] std::vector<WordRow> tokensOf(const Sentence &sentence);
/// The same of \a text, in which every number is a value.
[[nodiscard]] std::vector<WordRow> tokensOf(const QString &text);

/// A number that was opened: \a how it came about, how many \a entries there are, and below it each of them, by day.
[[nodiscard]] WordRow openedRow(const Diary &diary, const QString &number, const QString &how, std::vector<EntryIndex> entries);

} // namespace morrow
