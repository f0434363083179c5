// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Reading what a verb was given.

#include "base/result.h"
#include "batch/output.h"
#include "exchange/tables.h"

#include <string>
#include <vector>

namespace morrow::batch {

/// MachineFailed if one of \a issues is the machine's doing, else Refused.
[[nodiscard]] Status statusOf(const std::vector<Issue> &issues) noexcept;

/// The diary in the tables folder \a input. Where there is none every reason is said on
/// standard error.
[[nodiscard]] Result<TablesDiary, Status> readDiary(const std::string &input);

} // namespace morrow::batch
