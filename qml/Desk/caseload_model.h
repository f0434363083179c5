// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The caseload as a list: who needs a look stands first. A person's card is put in when it has
/// been read, at its place; searching looks at cards only.

#include <QAbstractListModel> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include "Desk/caseload.h"

#include <vector>

namespace morrow {

class CaseloadModel : public QAbstractListModel
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A session makes it.")

    Q_PROPERTY(QString search READ search WRITE setSearch NOTIFY searchChanged)
    Q_PROPERTY(int persons READ persons NOTIFY personsChanged)
    Q_PROPERTY(int shown READ shown NOTIFY personsChanged)
    Q_PROPERTY(int toRead READ toRead NOTIFY personsChanged)

public:
    explicit CaseloadModel(QObject *parent = nullptr);

    void clear();
    /// Puts the card in, in the place of the one that this person had.
    void put(CaseCard card);
    void remove(const std::string &person);
    /// How many persons are still to be read.
    void setToRead(int count);

    [[nodiscard]] QString search() const { return m_search; }
    void setSearch(const QString &search);
    [[nodiscard]] int persons() const { return static_cast<int>(m_cards.size()); }
    [[nodiscard]] int shown() const { return static_cast<int>(m_shown.size()); }
    [[nodiscard]] int toRead() const { return m_toRead; }

    /// The card of \a person; null if there is none.
    [[nodiscard]] const CaseCard *find(const std::string &person) const;
    /// The cards that \a search finds, at most \a most.
    [[nodiscard]] std::vector<const CaseCard *> found(const QString &search, std::size_t most) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

Q_SIGNALS:
    void searchChanged();
    void personsChanged();

private:
    enum Role {
        Person = Qt::UserRole,
        Label,
        BirthYear,
        FileNumber,
        Reason
    };

    [[nodiscard]] static bool matches(const CaseCard &card, const QString &search);

    std::vector<CaseCard> m_cards; ///< in the order of the list
    std::vector<std::size_t> m_shown; ///< places in m_cards, ascending
    QString m_search;
    int m_toRead = 0;
};

} // namespace morrow
