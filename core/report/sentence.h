// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Sentences whose numbers can be opened: what a screen draws and a page prints.
///
/// A sentence has at most kMostWords words. Clauses are put into one as long as they fit, then
/// the next one begins; of a text that somebody wrote the first words are shown where all of
/// it is too long, and what it opens holds the rest.

#include "model/diary.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace morrow {

inline constexpr std::size_t kMostWords = 20; ///< a sentence; a number is a word

/// What a number, or a text of the diary, opens.
struct Opening
{
    std::string how; ///< how it was made, the values put in; empty where an entry says it as it stands
    std::vector<EntryIndex> entries; ///< it was made of, by day, each once; may be empty

    friend bool operator==(const Opening &, const Opening &) = default;
};

/// A part of a sentence: words of ours, or a value that opens.
struct Piece
{
    std::string text; ///< with the spaces and marks around it; words of the diary are visible() (plain_text.h)
    std::optional<Opening> opens; ///< nullopt: words of ours

    friend bool operator==(const Piece &, const Piece &) = default;
};

struct Sentence
{
    std::vector<Piece> pieces; ///< never empty; their texts one after another are the sentence

    [[nodiscard]] std::string text() const;

    friend bool operator==(const Sentence &, const Sentence &) = default;
};

/// \a sentences as they stand on one line, a space between them.
[[nodiscard]] Sentence joined(const std::vector<Sentence> &sentences);

} // namespace morrow
