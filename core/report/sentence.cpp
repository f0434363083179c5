// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/sentence.h"

namespace morrow {

std::string Sentence::text() const
{
    std::string all;
    for (const Piece &piece : pieces)
        all += piece.text;
    return all;
}

Sentence joined(const std::vector<Sentence> &sentences)
{
    Sentence line;
    for (const Sentence &sentence : sentences) {
        if (!line.pieces.empty())
            line.pieces.push_back({" ", std::nullopt});
        line.pieces.insert(line.pieces.end(), sentence.pieces.begin(), sentence.pieces.end());
    }
    return line;
}

} // namespace morrow
