// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What both programs say alike: days, numbers, sides, and texts that somebody else wrote.

#include "base/civil_day.h"
#include "base/decimal.h"
#include "model/scales.h"

#include <QString>

#include <optional>
#include <string_view>

namespace morrow {

/// \a text of a diary or a file, with what would steer a screen shown instead of obeyed.
[[nodiscard]] QString plainText(std::string_view text);

/// "3 March 2026".
[[nodiscard]] QString fullDate(CivilDay day);

/// "2.5", with the decimal point of the language.
[[nodiscard]] QString numberWords(Decimal number);

/// "left", "both sides"; empty without a side.
[[nodiscard]] QString sideWords(const std::optional<Side> &side);

} // namespace morrow
