// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/safety_model.h"

#include "Entries/said.h"
#include "Home/home_session.h"
#include "Home/home_words.h"
#include "model/heard.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>

namespace morrow {

namespace {

QString groupTitle(const QString &when)
{
    if (when == QLatin1String("emergency"))
        return SafetyModel::tr("Call the emergency number now");
    if (when == QLatin1String("today"))
        return SafetyModel::tr("Call your clinic today");
    return SafetyModel::tr("Ask your clinic before the next session");
}

QString stateOf(const Diary &diary, const ReportedSign &sign)
{
    QStringList all{SafetyModel::tr("Written down on %1.").arg(fullDate(sign.day))};
    if (sign.clearedOn)
        all << SafetyModel::tr("Your clinic answered for it on %1.").arg(fullDate(*sign.clearedOn));
    else
        all << (sign.told.value_or(false) ? SafetyModel::tr("You have called.") : SafetyModel::tr("You have not called yet."));
    if (const auto heard = heardAbout(diary, sign)) {
        switch (heard->said) {
        case ClinicSaid::GoOn:
            all << SafetyModel::tr("You heard: go on.");
            break;
        case ClinicSaid::Lighter:
            all << SafetyModel::tr("You heard: go on, lighter.");
            break;
        case ClinicSaid::Wait:
            all << SafetyModel::tr("You heard: wait.");
            break;
        }
    }
    return all.join(QLatin1Char(' '));
}

} // namespace

void SignReport::set(const State &state)
{
    if (m_state == state)
        return;
    m_state = state;
    Q_EMIT changed();
}

SafetyModel::SafetyModel(HomeSession &session)
    : m_session(session)
{
    readSigns();
    connect(&session, &HomeSession::changed, this, &SafetyModel::read);
}

void SafetyModel::readSigns()
{
    QFile file(QStringLiteral(":/morrow/texts/signs_en.json"));
    if (!file.open(QIODevice::ReadOnly))
        return;
    const QJsonArray groups = QJsonDocument::fromJson(file.readAll()).object().value(QLatin1String("groups")).toArray();
    for (const QJsonValue &value : groups) {
        auto *const group = new SignGroup(this);
        group->title = groupTitle(value[QLatin1String("when")].toString());
        const QJsonArray signs = value[QLatin1String("signs")].toArray();
        for (const QJsonValue &sign : signs)
            group->all << sign.toString();
        m_groups << group;
    }
}

void SafetyModel::read()
{
    if (!m_session.diary())
        return;
    const Diary &diary = m_session.diary()->recent(m_session.now());
    std::vector<SignReport::State> states;
    m_open = 0;
    m_waits = false;
    for (auto sign = diary.signs().rbegin(); sign != diary.signs().rend(); ++sign) {
        states.push_back({.words = plainText(sign->sign),
            .state = stateOf(diary, *sign),
            .open = !sign->clearedOn,
            .told = sign->told.value_or(false),
            .entry = diary.entries()[sign->entry].id});
        m_open += sign->clearedOn ? 0 : 1;
        m_waits = m_waits || asksToWait(diary, *sign);
    }
    // Reports change in place, so that the keyboard stays where it was.
    const bool isAnother = static_cast<std::size_t>(m_reports.size()) != states.size();
    while (static_cast<std::size_t>(m_reports.size()) < states.size())
        m_reports << new SignReport(this);
    while (static_cast<std::size_t>(m_reports.size()) > states.size())
        m_reports.takeLast()->deleteLater(); // the page may be inside a call about it
    for (std::size_t i = 0; i < states.size(); ++i)
        m_reports[static_cast<qsizetype>(i)]->set(states[i]);
    if (isAnother)
        Q_EMIT reportsChanged();
    m_whom.clear();
    for (const ComplaintDiary &complaint : diary.complaints()) {
        if (complaint.plan && m_whom.isEmpty())
            m_whom = plainText(complaint.plan->by);
    }
    Q_EMIT changed();
}

QString SafetyModel::progress() const
{
    return m_open == 0 ? tr("Nothing is written down that waits for your clinic.")
                       : tr("%n sign(s) wait(s/) for your clinic.", nullptr, m_open);
}

QString SafetyModel::waitingWords() const
{
    return tr("You wrote down a sign. Wait with the exercises until your clinic has answered.");
}

void SafetyModel::settle(const QString &failure)
{
    m_failure = failure;
    Q_EMIT changed();
}

void SafetyModel::report(const QString &sign)
{
    Draft draft{.kind = Kind::Flag, .author = Author::Patient};
    draft.body.set(Field::Sign, sign.toStdString());
    const Kept kept = m_session.record({std::move(draft)});
    // Whether or not it could be kept, the call has to be made.
    m_stop = sign;
    settle(kept.failure);
}

void SafetyModel::called(bool yes)
{
    const std::string words = m_stop.toStdString();
    m_stop.clear();
    if (!m_session.diary())
        return;
    const Diary &diary = m_session.diary()->recent(m_session.now());
    const auto &signs = diary.signs();
    const auto last = std::find_if(signs.rbegin(), signs.rend(), [&words](const ReportedSign &sign) { return sign.sign == words; });
    if (last != signs.rend() && last->told != yes)
        tell(diary, *last, yes);
    else
        Q_EMIT changed();
}

void SafetyModel::tell(const Diary &diary, const ReportedSign &sign, bool told)
{
    Draft draft{.kind = Kind::Flag, .day = sign.day, .author = Author::Patient};
    draft.replaces = diary.entries()[sign.entry].id;
    draft.body.set(Field::Sign, sign.sign);
    draft.body.set(Field::Told, std::string(told ? "yes" : "no"));
    settle(m_session.record({std::move(draft)}).failure);
}

const ReportedSign *SafetyModel::find(const Diary &diary, const SignReport &report) const
{
    const auto found
        = std::ranges::find(diary.signs(), report.entry(), [&diary](const ReportedSign &sign) { return diary.entries()[sign.entry].id; });
    return found == diary.signs().end() ? nullptr : &*found;
}

void SafetyModel::calledAbout(SignReport *report)
{
    const Diary &diary = m_session.diary()->recent(m_session.now());
    if (const ReportedSign *const sign = find(diary, *report))
        tell(diary, *sign, true);
}

void SafetyModel::heard(SignReport *report, Answer answer)
{
    Draft draft{.kind = Kind::Heard, .author = Author::Patient};
    draft.body.set(Field::Flag, report->entry());
    draft.body.set(Field::Answer, std::string(answer == GoOn ? "go-on" : answer == Lighter ? "lighter" : "wait"));
    settle(m_session.record({std::move(draft)}).failure);
}

void SafetyModel::takeBack(SignReport *report)
{
    const Diary &diary = m_session.diary()->recent(m_session.now());
    if (const ReportedSign *const sign = find(diary, *report))
        settle(m_session.takeBack({diary.entries()[sign->entry]}).failure);
}

} // namespace morrow
