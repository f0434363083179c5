// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Entries/number_words.h"

#include "Entries/sentence_rows.h"

namespace morrow {

void NumberWords::setText(const QString &text)
{
    if (m_text == text)
        return;
    m_text = text;
    m_tokens.set(tokensOf(text));
    Q_EMIT textChanged();
}

} // namespace morrow
