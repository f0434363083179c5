// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Entries/sentence_rows.h"

#include "Entries/entry_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace morrow {

std::vector<WordRow> tokensOf(const Sentence &sentence)
{
    std::vector<WordRow> tokens;
    bool isOpen = false; // the last token goes on
    for (const Piece &piece : sentence.pieces) {
        const QString text = QString::fromStdString(piece.text);
        const QStringList words = text.split(QLatin1Char(' '));
        for (qsizetype number = 0; number < words.size(); ++number) {
            if (number > 0)
                isOpen = false;
            if (words[number].isEmpty())
                continue;
            const bool goesOn = isOpen && (!piece.opens || !tokens.back().marked);
            if (!goesOn)
                tokens.emplace_back();
            WordRow &token = tokens.back();
            if (piece.opens) {
                token.text = words[number];
                token.marked = true;
            } else if (token.marked) {
                token.below += words[number];
            } else {
                token.lead += words[number];
            }
            isOpen = true;
        }
    }
    return tokens;
}

std::vector<WordRow> tokensOf(const QString &text)
{
    static const QRegularExpression number(QStringLiteral("\\p{Nd}+([.,]\\p{Nd}+)*"));
    Sentence sentence;
    qsizetype end = 0;
    for (auto found = number.globalMatch(text); found.hasNext();) {
        const QRegularExpressionMatch match = found.next();
        sentence.pieces.push_back({text.mid(end, match.capturedStart() - end).toStdString(), std::nullopt});
        sentence.pieces.push_back({match.captured().toStdString(), Opening{}});
        end = match.capturedEnd();
    }
    sentence.pieces.push_back({text.mid(end).toStdString(), std::nullopt});
    return tokensOf(sentence);
}

WordRow openedRow(const Diary &diary, const QString &number, const QString &how, std::vector<EntryIndex> entries)
{
    std::ranges::stable_sort(entries, {}, [&diary](EntryIndex entry) { return diary.entries()[entry].day; });
    std::vector<WordRow> rows;
    for (const EntryIndex entry : entries) {
        const EntryWords words = entryWords(diary, entry);
        rows.push_back({.lead = words.day, .text = words.what, .below = words.how});
    }
    const QString count = rows.empty()
        //: Under a number that was opened.
        ? QCoreApplication::translate("Opened", "No entry stands behind it.")
        //: Under a number that was opened: how many entries it was made of.
        : QCoreApplication::translate("Opened", "%n entr(y/ies)", nullptr, static_cast<int>(rows.size()));
    return {.lead = number, .text = how, .below = count, .rows = std::make_shared<WordRows>(std::move(rows))};
}

} // namespace morrow
