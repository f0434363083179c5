// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/caseload_model.h"

#include "Desk/desk_words.h"

#include <algorithm>

namespace morrow {

CaseloadModel::CaseloadModel(QObject *parent)
    : QAbstractListModel(parent)
{
}

void CaseloadModel::clear()
{
    beginResetModel();
    m_cards.clear();
    m_shown.clear();
    endResetModel();
    Q_EMIT personsChanged();
}

void CaseloadModel::put(CaseCard card)
{
    remove(card.person);
    const auto at = std::upper_bound(m_cards.begin(), m_cards.end(), card, standsBefore);
    const auto place = static_cast<std::size_t>(at - m_cards.begin());
    const bool isShown = matches(card, m_search);
    m_cards.insert(at, std::move(card));
    const auto row = std::lower_bound(m_shown.begin(), m_shown.end(), place);
    const auto number = static_cast<int>(row - m_shown.begin());
    for (auto each = row; each != m_shown.end(); ++each)
        ++*each;
    if (isShown) {
        beginInsertRows({}, number, number);
        m_shown.insert(m_shown.begin() + number, place);
        endInsertRows();
    }
    Q_EMIT personsChanged();
}

void CaseloadModel::remove(const std::string &person)
{
    const auto at = std::find_if(m_cards.begin(), m_cards.end(), [&person](const CaseCard &card) { return card.person == person; });
    if (at == m_cards.end())
        return;
    const auto place = static_cast<std::size_t>(at - m_cards.begin());
    const auto row = std::lower_bound(m_shown.begin(), m_shown.end(), place);
    const auto number = static_cast<int>(row - m_shown.begin());
    const bool isShown = row != m_shown.end() && *row == place;
    if (isShown)
        beginRemoveRows({}, number, number);
    m_cards.erase(at);
    if (isShown)
        m_shown.erase(m_shown.begin() + number);
    for (auto each = m_shown.begin() + number; each != m_shown.end(); ++each)
        --*each;
    if (isShown)
        endRemoveRows();
    Q_EMIT personsChanged();
}

void CaseloadModel::setToRead(int count)
{
    m_toRead = count;
    Q_EMIT personsChanged();
}

void CaseloadModel::setSearch(const QString &search)
{
    if (search == m_search)
        return;
    beginResetModel();
    m_search = search;
    m_shown.clear();
    for (std::size_t place = 0; place < m_cards.size(); ++place) {
        if (matches(m_cards[place], m_search))
            m_shown.push_back(place);
    }
    endResetModel();
    Q_EMIT searchChanged();
    Q_EMIT personsChanged();
}

const CaseCard *CaseloadModel::find(const std::string &person) const
{
    const auto at = std::find_if(m_cards.begin(), m_cards.end(), [&person](const CaseCard &card) { return card.person == person; });
    return at == m_cards.end() ? nullptr : &*at;
}

std::vector<const CaseCard *> CaseloadModel::found(const QString &search, std::size_t most) const
{
    std::vector<const CaseCard *> cards;
    for (const CaseCard &card : m_cards) {
        if (cards.size() < most && matches(card, search))
            cards.push_back(&card);
    }
    return cards;
}

bool CaseloadModel::matches(const CaseCard &card, const QString &search)
{
    const QString wanted = search.simplified();
    if (wanted.isEmpty())
        return true;
    const QString all = DeskWords::nameOf(card.known) + QLatin1Char(' ') + DeskWords::besideName(card.known);
    // Each word anywhere: "ek 2207" finds Tomas Ek, file 2207.
    const QStringList words = wanted.split(QLatin1Char(' '));
    return std::all_of(words.begin(), words.end(), [&all](const QString &word) { return all.contains(word, Qt::CaseInsensitive); });
}

int CaseloadModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : shown();
}

QVariant CaseloadModel::data(const QModelIndex &index, int role) const
{
    const CaseCard &card = m_cards[m_shown[static_cast<std::size_t>(index.row())]];
    switch (role) {
    case Person:
        return QString::fromStdString(card.person);
    case Label:
        return DeskWords::nameOf(card.known);
    case BirthYear:
        return DeskWords::besideName({.birthYear = card.known.birthYear});
    case FileNumber:
        return DeskWords::besideName({.fileNumber = card.known.fileNumber});
    case Reason:
        return DeskWords::reasonsOf(card);
    default:
        return {};
    }
}

QHash<int, QByteArray> CaseloadModel::roleNames() const
{
    return {{Person, "person"}, {Label, "label"}, {BirthYear, "birthYear"}, {FileNumber, "fileNumber"}, {Reason, "reason"}};
}

} // namespace morrow
