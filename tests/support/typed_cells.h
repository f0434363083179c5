// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Cells of a table as somebody might type them. Only inside a property: each draws from RapidCheck.

#include <rapidcheck.h>

#include <iterator>
#include <string>
#include <vector>

namespace morrow::test {

[[nodiscard]] int pick(int least, int most);
/// True in \a percent of cases; a counterexample shrinks towards false.
[[nodiscard]] bool chance(int percent);

template<class List>
[[nodiscard]] auto oneOf(const List &list)
{
    return *(std::begin(list) + pick(0, static_cast<int>(std::size(list)) - 1));
}

/// Puts the elements of \a list in a random order.
template<class T>
void shuffle(std::vector<T> &list)
{
    for (int i = static_cast<int>(list.size()) - 1; i > 0; --i)
        std::swap(list[static_cast<std::size_t>(i)], list[static_cast<std::size_t>(pick(0, i))]);
}

/// What a text cell means: one apostrophe less where apostrophes stand before the start of a formula.
[[nodiscard]] std::string meaningOf(const std::string &cell);
/// A cell that means \a text. A formula may be typed with an apostrophe or without.
[[nodiscard]] std::string typed(const std::string &text);

[[nodiscard]] std::string anyText();
[[nodiscard]] std::string anyWord();
/// \a thousandths / 1000, at times with zeros that say nothing.
[[nodiscard]] std::string typedNumber(int thousandths);
[[nodiscard]] std::string wholeBetween(int least, int most);
[[nodiscard]] std::string numberUpTo(int most);

/// Days since 1970-01-01, mostly of the year 2026; now and then the first or last day that there is.
[[nodiscard]] int anyDay();
[[nodiscard]] std::string dayText(int day);
/// \a day or one soon after it.
[[nodiscard]] std::string dayFrom(int day);
[[nodiscard]] std::string anyInstant();
[[nodiscard]] std::string anyTimeOfDay();

[[nodiscard]] std::string anyRule();
[[nodiscard]] std::string anySlots();
[[nodiscard]] std::string anyAsks();

} // namespace morrow::test
