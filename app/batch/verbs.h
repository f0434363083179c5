// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the batch tool does: one function and one file for each verb.

#include "batch/output.h"

#include <span>
#include <string>

namespace morrow::batch {

/// The words behind the verb.
using Words = std::span<const std::string>;

[[nodiscard]] Status measureDiary(Words words);
[[nodiscard]] Status checkInputs(Words words);
[[nodiscard]] Status convertDiary(Words words);
[[nodiscard]] Status writeDemo(Words words);
[[nodiscard]] Status recordEntries(Words words);
[[nodiscard]] Status restoreStore(Words words);
[[nodiscard]] Status eraseEntry(Words words);
[[nodiscard]] Status takeInFiles(Words words);
[[nodiscard]] Status undoTakingIn(Words words);
[[nodiscard]] Status rebuildDesk(Words words);
[[nodiscard]] Status rehearseRule(Words words);
[[nodiscard]] Status mergeDiaries(Words words);

} // namespace morrow::batch
