// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the batch tool gives back: text on standard output, sentences on standard
/// error, and a status.

#include <string_view>

namespace morrow::batch {

enum class Status {
    Done = 0,
    Refused = 1, ///< the input was refused, every reason said
    WrongUsage = 2,
    MachineFailed = 3, ///< disk full, no permission, an output that takes no more
};

/// Writes \a text to standard output, and says so if not all of it was taken: half an
/// answer must not look like one.
[[nodiscard]] Status print(std::string_view text);

/// Writes \a sentence as a line on standard error.
void complain(std::string_view sentence);

/// Complains, and gives WrongUsage.
[[nodiscard]] Status wrongUsage(std::string_view sentence);

} // namespace morrow::batch
