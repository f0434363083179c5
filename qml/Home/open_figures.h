// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A number that somebody opened: what it is about, and the entries behind it. They are words, made when
/// it is opened, so it closes when the diary changes.

#include <QObject> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include "Entries/word_rows.h"

#include <vector>

namespace morrow {

class OpenFigures : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("HomeSession makes it.")

    Q_PROPERTY(bool shown READ isShown NOTIFY changed)
    Q_PROPERTY(QString subject READ subject NOTIFY changed)
    Q_PROPERTY(morrow::WordRows *rows READ rows CONSTANT)

public:
    using QObject::QObject;

    [[nodiscard]] bool isShown() const { return m_isShown; }
    [[nodiscard]] QString subject() const { return m_subject; }
    /// A row a number: see openedRow().
    [[nodiscard]] WordRows *rows() { return &m_rows; }

    void show(const QString &subject, std::vector<WordRow> rows);
    Q_INVOKABLE void close();

Q_SIGNALS:
    void changed();

private:
    bool m_isShown = false;
    QString m_subject;
    WordRows m_rows;
};

} // namespace morrow
