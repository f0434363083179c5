// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a diary adds up to, as a page of plain text.
///
/// It says what the entries show and how many they are, never what that means for
/// anybody: no verdict, no advice. What is not known is said to be not known.

#include "measures/measures.h"

#include <cstddef>
#include <string>
#include <vector>

namespace morrow {

inline constexpr std::size_t kPageWidth = 80; ///< characters (code points)

/// \a measures, made from \a diary up to \a to, in English: for each complaint its review
/// (review.h), what was due and done, load by week, the check by week, visits and outcomes. Lines of at most
/// kPageWidth characters; too long ones are wrapped, none is cut. Words from the diary
/// are shown as plain text (see visible()).
[[nodiscard]] std::string overview(const Diary &diary, const std::vector<ComplaintMeasures> &measures, CivilDay to);

} // namespace morrow
