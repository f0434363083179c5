// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// JSON inside C++ that can be read, and that moc can: it loses its way in some raw strings.

#include <algorithm>
#include <string>

namespace morrow::test {

/// \a text with its apostrophes as quotes.
[[nodiscard]] inline std::string json(std::string text)
{
    std::replace(text.begin(), text.end(), '\'', '"');
    return text;
}

} // namespace morrow::test
