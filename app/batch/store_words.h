// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One plain sentence for everything that can be wrong with a store, or with what was
/// to be recorded in one.

#include "actions/record.h"
#include "batch/output.h"
#include "exchange/entry_line.h"

#include <string>
#include <string_view>
#include <vector>

namespace morrow::batch {

/// Why the store at \a path could not be used.
[[nodiscard]] std::string sentence(StoreError error, std::string_view path);
/// Refused where the path or the input is the reason, else MachineFailed.
[[nodiscard]] Status statusOf(StoreError error) noexcept;

/// What reading found damaged, a sentence for each; none if the diary is whole.
[[nodiscard]] std::vector<std::string> sentences(const PersonReading &reading);

/// Why a line of JSON is no entry.
[[nodiscard]] std::string sentence(const LineProblem &problem);
/// Why a draft was not recorded.
[[nodiscard]] std::string sentence(const DraftProblem &problem);

} // namespace morrow::batch
