// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include <string>
#include <string_view>

namespace morrow {

/// Appends \a text, which is UTF-8, to \a out as a JSON string with the fewest escapes (RFC 8785).
void appendJsonString(std::string &out, std::string_view text);

} // namespace morrow
