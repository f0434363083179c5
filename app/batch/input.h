// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Reading what a verb was given.

#include "base/result.h"
#include "batch/output.h"
#include "exchange/tables.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow::batch {

/// MachineFailed if one of \a issues is the machine's doing, else Refused.
[[nodiscard]] Status statusOf(const std::vector<Issue> &issues) noexcept;

/// A diary as it was read, and whether all of it could be.
struct InputDiary
{
    TablesDiary diary;
    Status status = Status::Done; ///< MachineFailed: entries that are damaged were left out, and named on standard error
};

/// The diary in \a input, a folder of tables or a FHIR file, with every reason where there is none.
[[nodiscard]] Result<TablesDiary, std::vector<Issue>> readOutside(const std::string &input);

/// The diary in \a input: a folder of tables, a FHIR file, or a store, which is opened read-only and
/// whose person is \a person where it holds several. Where there is none every reason is
/// said on standard error.
[[nodiscard]] Result<InputDiary, Status> readDiary(const std::string &input, const std::optional<std::string> &person);

} // namespace morrow::batch
