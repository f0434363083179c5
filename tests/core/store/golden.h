// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the golden stores in tests/data/stores hold. They were written once, by the program of
/// their time (`store_program golden FOLDER`), and are never written again: if a test with one
/// fails, the program forgot how to read what somebody kept.

#include "core/store/kept_diary.h"

namespace morrow::test {

/// Of kRef in schema-1.db: facts of four kinds with a correction, a withdrawal and a note over
/// several pages; one more was erased.
[[nodiscard]] std::vector<Entry> goldenEntries();
/// Of kOtherRef.
[[nodiscard]] std::vector<Entry> otherGoldenEntries();

/// Writes them into the store in \a folder.
void writeGolden(const std::filesystem::path &folder);

} // namespace morrow::test
