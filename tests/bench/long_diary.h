// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "base/civil_day.h"

#include <map>
#include <string>

namespace morrow::bench {

/// The first day of a long diary.
[[nodiscard]] CivilDay longDiaryStart();

/// The tables of a diary of \a years from 2015 on: two items of 10 sets a day, a check every
/// morning, a session's pain every evening.
[[nodiscard]] std::map<std::string, std::string> longDiary(int years);

/// The same up to \a last.
[[nodiscard]] std::map<std::string, std::string> longDiaryTo(CivilDay last);

} // namespace morrow::bench
