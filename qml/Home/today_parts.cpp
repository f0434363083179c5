// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/today_parts.h"

namespace morrow {

void TodayRating::set(const State &state)
{
    if (m_state == state)
        return;
    m_state = state;
    Q_EMIT changed();
}

void TodayRating::setFailure(const QString &failure)
{
    if (m_failure == failure)
        return;
    m_failure = failure;
    Q_EMIT changed();
}

void TodaySet::setDone(bool done)
{
    if (m_done == done)
        return;
    m_done = done;
    Q_EMIT changed();
}

void TodayCard::set(const QString &week, const QString &said)
{
    if (m_week == week && m_said == said)
        return;
    m_week = week;
    m_said = said;
    Q_EMIT changed();
}

void TodayCard::setFailure(const QString &failure)
{
    if (m_failure == failure)
        return;
    m_failure = failure;
    Q_EMIT changed();
}

TodayRow::TodayRow(std::string item, TodayCard &card)
    : QObject(&card)
    , m_item(std::move(item))
    , m_card(card)
{
}

TodayCard::TodayCard(TodaySession &session)
    : QObject(&session)
    , m_session(session)
{
}

TodaySession::TodaySession(std::string slot, TodayComplaint &complaint)
    : QObject(&complaint)
    , m_complaint(complaint)
    , m_slot(std::move(slot))
{
}

QString TodaySession::sentence() const
{
    //: What a session holds: "5 exercises, 15 sets". The first number is in the plural form before.
    return tr("%1, %2").arg(tr("%n exercise(s)", nullptr, m_state.exercises), tr("%n set(s)", nullptr, m_state.setsDue));
}

void TodaySession::set(const State &state)
{
    if (m_state == state)
        return;
    m_state = state;
    Q_EMIT changed();
}

void TodaySession::setFailure(const QString &failure)
{
    if (m_failure == failure)
        return;
    m_failure = failure;
    Q_EMIT changed();
}

void TodayComplaint::set(const State &state)
{
    if (m_state == state)
        return;
    m_state = state;
    Q_EMIT changed();
}

} // namespace morrow
