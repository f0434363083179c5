// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Style/english_plurals.h"

#include <QRegularExpression>

namespace morrow {

QString EnglishPlurals::translate(const char *, const char *text, const char *, int count) const
{
    if (count < 0)
        return {};
    static const QRegularExpression brackets(QStringLiteral("\\((?:([a-z]*)/)?([a-z]+)\\)"));
    QString result = QString::fromUtf8(text);
    for (auto found = brackets.match(result); found.hasMatch(); found = brackets.match(result, found.capturedStart()))
        result.replace(found.capturedStart(), found.capturedLength(), found.captured(count == 1 ? 1 : 2));
    return result;
}

} // namespace morrow
