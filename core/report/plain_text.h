// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Text for a page of plain characters, such as a terminal shows.
///
/// Words of other people stand on it beside numbers. None of them may move the
/// numbers about, so what would steer a screen is shown instead of obeyed; and no
/// line of a page is cut short, because the part that is missing may be a number.
/// Widths are counted in characters (code points).

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

/// \a text on one line: control characters, ends of lines and direction marks are
/// written as `<U+202E>`, bytes that are not UTF-8 as `<xFF>`.
[[nodiscard]] std::string visible(std::string_view text);

/// At most \a most characters of \a text, which is UTF-8: where it has more, its first and `...`.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t most);

/// \a text, which is UTF-8, broken into lines of at most \a width characters: at spaces, and
/// inside a word only where the word is wider than a line. Never empty.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// Rows under a header, in columns as wide as their widest cell and two spaces apart.
/// Where that is too wide for the page each row becomes `header cell, header cell, ...`, wrapped.
class PlainTable
{
public:
    enum class Align {
        Left,
        Right
    };

    struct Column
    {
        std::string header;
        Align align;
    };

    explicit PlainTable(std::vector<Column> columns);

    /// As many cells as columns.
    void add(std::vector<std::string> cells);

    /// The lines, each at most \a width characters.
    [[nodiscard]] std::vector<std::string> lines(std::size_t width) const;

private:
    std::vector<Column> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

} // namespace morrow
