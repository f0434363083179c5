// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One plain sentence for everything that can be wrong with a file.
///
/// What stood in the file is shown in it, between quotes, shortened and without what would steer
/// a screen: it was written by somebody else.

#include "exchange/issue.h"
#include "exchange/tables.h"

#include <string>
#include <string_view>

namespace morrow::batch {

/// \a text between quotes, at most 40 characters of it, on one line.
[[nodiscard]] std::string shown(std::string_view text);

/// What is wrong in \a issue and where, as one sentence. \a input is what was read; it is named
/// where the issue is about the whole of it.
[[nodiscard]] std::string sentence(const Issue &issue, std::string_view input);

/// Why a value has not the form that \a rule asks for: "is not a whole number from 0 to 10".
[[nodiscard]] std::string refusal(const FieldRule &rule);

/// Why \a path was not written, as one sentence.
[[nodiscard]] std::string sentence(FileError error, std::string_view path);

/// What tables have no place for, in a few words.
[[nodiscard]] std::string_view words(LeftOut what) noexcept;

/// A name for programs, which never changes: `value-refused`.
[[nodiscard]] std::string_view codeName(IssueCode code) noexcept;
[[nodiscard]] std::string_view codeName(LeftOut what) noexcept;

} // namespace morrow::batch
