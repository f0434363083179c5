// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A whole diary as text, to compare two that hold their entries in another order.

#include "model/diary.h"

#include <string>

namespace morrow::test {

/// Everything that measures can read in \a diary, entries by their ids.
[[nodiscard]] std::string textOf(const Diary &diary);

} // namespace morrow::test
