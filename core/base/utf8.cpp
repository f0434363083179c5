// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/utf8.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr bool continues(unsigned char byte) noexcept
{
    return (byte & 0xc0) == 0x80;
}

/// The length of the well-formed sequence at the start of \a bytes, 0 if there is none.
std::size_t sequenceLength(std::string_view bytes) noexcept
{
    const auto at = [bytes](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
    const unsigned char first = at(0);
    if (first < 0x80)
        return 1;
    const std::size_t length = first >= 0xc2 && first < 0xe0 ? 2
        : first >= 0xe0 && first < 0xf0                      ? 3
        : first >= 0xf0 && first < 0xf5                      ? 4
                                                             : 0;
    if (length == 0 || bytes.size() < length)
        return 0;
    for (std::size_t i = 1; i < length; ++i) {
        if (!continues(at(i)))
            return 0;
    }
    const unsigned char second = at(1);
    const bool outOfRange = (first == 0xe0 && second < 0xa0) || (first == 0xed && second >= 0xa0) || (first == 0xf0 && second < 0x90)
        || (first == 0xf4 && second >= 0x90);
    return outOfRange ? 0 : length;
}

} // namespace

std::optional<std::size_t> firstInvalidUtf8(std::string_view bytes) noexcept
{
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = sequenceLength(bytes.substr(at));
        if (length == 0)
            return at;
        at += length;
    }
    return std::nullopt;
}

bool hasControlCharacter(std::string_view text) noexcept
{
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte < 0x20 && byte != '\t' && byte != '\r' && byte != '\n') || byte == 0x7f)
            return true;
        if (byte == 0xc2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xa0)
            return true;
    }
    return false;
}

std::size_t codePoints(std::string_view text) noexcept
{
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return !continues(static_cast<unsigned char>(c)); }));
}

} // namespace morrow
