// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How sentences are put together: clauses that are kept whole.

#include "measures/trace.h"
#include "report/sentence.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

using Clause = std::vector<Piece>;

[[nodiscard]] Piece words(std::string text);

/// \a entries by day.
[[nodiscard]] std::vector<EntryIndex> byDay(const Diary &diary, std::vector<EntryIndex> entries);

/// A value that opens \a trace; \a how says how it was made.
[[nodiscard]] Piece made(const Diary &diary, std::string text, const Trace &trace, std::string how);

/// A value that stands in \a entries as it is, or is their number.
[[nodiscard]] Piece stated(std::string text, std::vector<EntryIndex> entries);

/// `2 to 8 March 2026: 4, 5, 4`: the days of \a trace and the first of its values.
[[nodiscard]] std::string listed(const Trace &trace);

/// At most \a most words of \a text, made visible (plain_text.h).
[[nodiscard]] std::string clipped(std::string_view text, std::size_t most);

/// The same between quotes; it opens \a entry, and where a part is missing the whole.
[[nodiscard]] Piece quoted(std::string_view text, std::size_t most, EntryIndex entry);

[[nodiscard]] std::size_t wordsIn(std::string_view text) noexcept;

/// Clauses as they come, in as few sentences of at most kMostWords words as hold them.
class Saying
{
public:
    /// Goes on after \a joint, or begins a sentence where there is none or the clause does not fit.
    void add(Clause clause, std::string_view joint = ", ");
    /// Whether the sentence that was begun, if one was, has room for \a clause.
    [[nodiscard]] bool fits(const Clause &clause) const;
    /// What follows begins a sentence.
    void stop();
    /// Whether what comes next needs no joint: "settings: " was said.
    [[nodiscard]] bool isAfterColon() const;
    /// What was said, with its full stops.
    [[nodiscard]] std::vector<Sentence> take();

private:
    std::vector<Sentence> m_sentences;
    Sentence m_current;
    std::size_t m_words = 0;
};

} // namespace morrow
