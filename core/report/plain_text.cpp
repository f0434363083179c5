// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/plain_text.h"

#include "base/utf8.h"

#include <algorithm>
#include <cstdint>
#include <numeric>

namespace morrow {

namespace {

constexpr std::size_t kGap = 2;
constexpr std::string_view kHex = "0123456789ABCDEF";

/// The bytes of the character that begins with \a lead, in well-formed UTF-8.
std::size_t lengthOf(char lead) noexcept
{
    const auto byte = static_cast<unsigned char>(lead);
    return byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
}

std::uint32_t codePointOf(std::string_view character) noexcept
{
    const auto lead = static_cast<unsigned char>(character[0]);
    std::uint32_t code = character.size() == 1 ? lead : lead & (0xFFU >> (character.size() + 1));
    for (const char next : character.substr(1))
        code = (code << 6U) | (static_cast<unsigned char>(next) & 0x3FU);
    return code;
}

/// Whether a screen may act on \a code instead of drawing it: Unicode Cc, the line and
/// paragraph separators, and the direction marks of UAX 9.
bool steers(std::uint32_t code) noexcept
{
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x061C || code == 0x200E || code == 0x200F
        || (code >= 0x2028 && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

std::string hex(std::uint32_t value, int digits)
{
    std::string text;
    for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
        text += kHex[(value >> static_cast<unsigned>(shift)) & 0xFU];
    return text;
}

/// The first \a count characters of \a text, which has more.
std::string_view firstCharacters(std::string_view text, std::size_t count) noexcept
{
    std::size_t at = 0;
    for (; count > 0; --count)
        at += lengthOf(text[at]);
    return text.substr(0, at);
}

std::string padded(std::string_view text, std::size_t width, PlainTable::Align align)
{
    const std::string room(width - std::min(width, codePoints(text)), ' ');
    return align == PlainTable::Align::Left ? std::string(text) + room : room + std::string(text);
}

void trimRight(std::string &line)
{
    line.erase(line.find_last_not_of(' ') + 1);
}

} // namespace

std::string visible(std::string_view text)
{
    std::string out;
    while (!text.empty()) {
        const auto invalid = firstInvalidUtf8(text);
        const std::string_view good = text.substr(0, invalid.value_or(text.size()));
        for (std::size_t at = 0; at < good.size();) {
            const std::string_view character = good.substr(at, lengthOf(good[at]));
            const std::uint32_t code = codePointOf(character);
            if (steers(code))
                out += "<U+" + hex(code, 4) + ">";
            else
                out += character;
            at += character.size();
        }
        text.remove_prefix(good.size());
        if (!text.empty()) {
            out += "<x" + hex(static_cast<unsigned char>(text[0]), 2) + ">";
            text.remove_prefix(1);
        }
    }
    return out;
}

std::string shortened(std::string_view text, std::size_t most)
{
    static constexpr std::string_view rest = "...";
    if (codePoints(text) <= most)
        return std::string(text);
    return std::string(firstCharacters(text, most - rest.size())).append(rest);
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width)
{
    std::vector<std::string> lines(1);
    std::size_t used = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        std::string_view word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty())
            continue;
        const std::size_t needed = codePoints(word) + (used > 0 ? 1 : 0);
        if (used + needed <= width) {
            lines.back() += used > 0 ? " " : "";
            lines.back() += word;
            used += needed;
            continue;
        }
        if (used > 0)
            lines.emplace_back();
        for (; codePoints(word) > width; word.remove_prefix(lines[lines.size() - 2].size())) {
            lines.back() = firstCharacters(word, width);
            lines.emplace_back();
        }
        lines.back() = word;
        used = codePoints(word);
    }
    return lines;
}

PlainTable::PlainTable(std::vector<Column> columns)
    : m_columns(std::move(columns))
{
}

void PlainTable::add(std::vector<std::string> cells)
{
    m_rows.push_back(std::move(cells));
}

std::vector<std::string> PlainTable::lines(std::size_t width) const
{
    std::vector<std::size_t> widths;
    for (std::size_t column = 0; column < m_columns.size(); ++column) {
        std::size_t widest = codePoints(m_columns[column].header);
        for (const auto &row : m_rows)
            widest = std::max(widest, codePoints(row[column]));
        widths.push_back(widest);
    }

    std::vector<std::string> out;
    if (std::accumulate(widths.begin(), widths.end(), kGap * (widths.size() - 1)) > width) {
        for (const auto &row : m_rows) {
            std::string text;
            for (std::size_t column = 0; column < m_columns.size(); ++column)
                text += (column > 0 ? ", " : "") + m_columns[column].header + " " + row[column];
            const auto parts = wrapped(text, width);
            out.insert(out.end(), parts.begin(), parts.end());
        }
        return out;
    }
    const auto add = [&](const auto &cellOf) {
        std::string line;
        for (std::size_t column = 0; column < m_columns.size(); ++column)
            line += std::string(column > 0 ? kGap : 0, ' ') + padded(cellOf(column), widths[column], m_columns[column].align);
        trimRight(line);
        out.push_back(std::move(line));
    };
    add([&](std::size_t column) { return m_columns[column].header; });
    for (const auto &row : m_rows)
        add([&](std::size_t column) { return row[column]; });
    return out;
}

} // namespace morrow
