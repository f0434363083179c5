// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Which bytes are text. Nothing is repaired: a guess would be somebody else's words.

#include <cstddef>
#include <optional>
#include <string_view>

namespace morrow {

/// The offset of the first byte of \a bytes that is not well-formed UTF-8 (RFC 3629:
/// no overlong form, no surrogate, nothing above U+10FFFF); nullopt if all of it is.
[[nodiscard]] std::optional<std::size_t> firstInvalidUtf8(std::string_view bytes) noexcept;

/// Whether well-formed \a text holds a control character (Unicode Cc) other than tab,
/// CR and LF.
[[nodiscard]] bool hasControlCharacter(std::string_view text) noexcept;

/// How many characters (code points) well-formed \a text has.
[[nodiscard]] std::size_t codePoints(std::string_view text) noexcept;

} // namespace morrow
