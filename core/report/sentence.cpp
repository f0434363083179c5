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

} // namespace morrow
