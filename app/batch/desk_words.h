// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One plain sentence for everything that a desk can refuse, and for what it found in its record.

#include "actions/desk.h"
#include "actions/reader_child.h"
#include "actions/record_at_desk.h"
#include "actions/take_in.h"
#include "batch/json.h"
#include "batch/output.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow::batch {

/// What of \a error, one of several kinds, is the desk's own failing; nullopt: the input was refused.
template<class Error>
[[nodiscard]] std::optional<DeskError> deskErrorIn(const Error &error)
{
    if (const auto *const store = std::get_if<StoreError>(&error))
        return DeskError(*store);
    if (const auto *const file = std::get_if<FileError>(&error))
        return DeskError(*file);
    return std::nullopt;
}

/// Why the desk at \a path could not be used.
[[nodiscard]] std::string sentence(const DeskError &error, std::string_view path);
[[nodiscard]] Status statusOf(const DeskError &error) noexcept;

/// What in the record could not be read, a sentence for each kind of it; none if all could.
[[nodiscard]] std::vector<std::string> sentences(const TookNew &news);

/// Why \a file was not read.
[[nodiscard]] std::string sentence(ReaderFault fault, std::string_view file);
/// Why \a file was not taken in.
[[nodiscard]] std::string sentence(const TakeInProblem &problem, std::string_view file);
[[nodiscard]] std::string sentence(const Clash &clash);
/// Why the taking in of \a file was not undone.
[[nodiscard]] std::string sentence(UndoProblem problem, std::string_view file);
[[nodiscard]] std::string sentence(DeskProblem problem);
[[nodiscard]] std::string sentence(const PlanProblem &problem);

/// Names for programs, which never change: `waits`.
[[nodiscard]] std::string_view codeName(ReaderFault fault) noexcept;
[[nodiscard]] std::string_view codeName(const TakeInProblem &problem) noexcept;

} // namespace morrow::batch
