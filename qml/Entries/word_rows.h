// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Rows of words for a page: what stands first, the words, a line below, and rows under it.

#include <QAbstractListModel> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include <memory>
#include <vector>

namespace morrow {

class WordRows;

struct WordRow
{
    QString lead; ///< before the words: a day, a mark
    QString text;
    QString below;
    bool marked = false; ///< a condition that holds, a part of a sentence that opens
    QString key; ///< what it is about, for whoever presses it
    std::shared_ptr<WordRows> rows{}; ///< below it; null: none
};

class WordRows : public QAbstractListModel
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A session makes it.")

    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    explicit WordRows(std::vector<WordRow> rows = {});

    void set(std::vector<WordRow> rows);

    [[nodiscard]] int count() const { return static_cast<int>(m_rows.size()); }
    [[nodiscard]] const std::vector<WordRow> &all() const { return m_rows; }

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

Q_SIGNALS:
    void countChanged();

private:
    enum Role {
        Lead = Qt::UserRole,
        Text,
        Below,
        Marked,
        Key,
        Rows
    };

    std::vector<WordRow> m_rows;
};

} // namespace morrow
