// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The words of a text for a page that draws its numbers as what opens.

#include <QObject> // Qt first, for moc
#include <QString>
#include <QtQml/qqmlregistration.h>

#include "Entries/word_rows.h"

namespace morrow {

class NumberWords : public QObject
{
    Q_OBJECT
    QML_ELEMENT

    Q_PROPERTY(QString text READ text WRITE setText NOTIFY textChanged)
    Q_PROPERTY(morrow::WordRows *tokens READ tokens CONSTANT)

public:
    using QObject::QObject;

    [[nodiscard]] QString text() const { return m_text; }
    void setText(const QString &text);
    [[nodiscard]] WordRows *tokens() { return &m_tokens; }

Q_SIGNALS:
    void textChanged();

private:
    QString m_text;
    WordRows m_tokens;
};

} // namespace morrow
