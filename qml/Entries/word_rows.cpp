// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Entries/word_rows.h"

#include <QQmlEngine>

namespace morrow {

WordRows::WordRows(std::vector<WordRow> rows)
    : m_rows(std::move(rows))
{
    QQmlEngine::setObjectOwnership(this, QQmlEngine::CppOwnership); // a page may ask for rows that lie below others
}

void WordRows::set(std::vector<WordRow> rows)
{
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
    Q_EMIT countChanged();
}

int WordRows::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : count();
}

QVariant WordRows::data(const QModelIndex &index, int role) const
{
    const WordRow &row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Lead:
        return row.lead;
    case Text:
        return row.text;
    case Below:
        return row.below;
    case Marked:
        return row.marked;
    case Key:
        return row.key;
    case Rows:
        return QVariant::fromValue(row.rows.get());
    default:
        return {};
    }
}

QHash<int, QByteArray> WordRows::roleNames() const
{
    return {{Lead, "lead"}, {Text, "text"}, {Below, "below"}, {Marked, "marked"}, {Key, "key"}, {Rows, "rows"}};
}

} // namespace morrow
