// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The tables of entries as the format describes them, told a second time for the tests.

#include <vector>

namespace morrow::test {

enum class Is {
    Text,
    Word,
    Whole,
    Number,
    Choice,
    Item,
    ItemStage,
    Flag,
    Note,
    Day,
    Later
};

/// Whether a column says what a row is about, is needed unless the row withdraws, or may be
/// empty. What stands aside belongs to an entry of its own: a withdrawing row may have it.
enum class Need {
    Names,
    Needed,
    Free,
    Aside
};

struct Part
{
    const char *column;
    Is is;
    Need need = Need::Free;
    int least = 0;
    int most = 0;
    std::vector<const char *> choices{};
};

/// A table whose rows are entries.
struct Layout
{
    const char *file;
    const char *header; ///< the columns that every header has
    bool hasComplaint;
    bool isAnyonesToSay; ///< else a patient's or a helper's
    std::vector<Part> parts;
};

/// In an order in which a table stands behind those that it names rows of.
[[nodiscard]] const std::vector<Layout> &layouts();

} // namespace morrow::test
