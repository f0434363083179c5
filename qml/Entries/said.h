// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What both programs say alike: days, sides, and texts that somebody else wrote.

#include "base/civil_day.h"
#include "model/scales.h"

#include <QString>

#include <optional>
#include <string_view>

namespace morrow {

/// \a text of a diary or a file, with what would steer a screen shown instead of obeyed.
[[nodiscard]] QString plainText(std::string_view text);

/// "3 March 2026".
[[nodiscard]] QString fullDate(CivilDay day);

/// "left", "both sides"; empty without a side.
[[nodiscard]] QString sideWords(const std::optional<Side> &side);

} // namespace morrow
