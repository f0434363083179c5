// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the day asks and what was answered, for the page that is opened every day.
///
/// The parts stay while the day asks for the same things: a tap changes them in place, so that
/// the keyboard stays where it was and nothing is built again.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QQmlListProperty>
#include <QtQml/qqmlregistration.h>

#include "Home/today_parts.h"
#include "measures/today.h"
#include "model/draft.h"

#include <optional>
#include <string>

namespace morrow {

class HomeSession;

class TodayModel : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("HomeSession makes it.")

    Q_PROPERTY(QString line READ line NOTIFY changed)
    Q_PROPERTY(QString beside READ beside NOTIFY changed)
    Q_PROPERTY(QString progress READ progress NOTIFY changed)
    Q_PROPERTY(bool asksSets READ asksSets NOTIFY changed)
    Q_PROPERTY(qreal fraction READ fraction NOTIFY changed)
    Q_PROPERTY(bool yesterday READ yesterday WRITE setYesterday NOTIFY changed)
    Q_PROPERTY(QString replyHead READ replyHead NOTIFY changed)
    Q_PROPERTY(QString reply READ reply NOTIFY changed)
    Q_PROPERTY(QQmlListProperty<morrow::TodayComplaint> complaints READ complaints NOTIFY partsChanged)
    Q_PROPERTY(bool empty READ empty NOTIFY partsChanged)

public:
    explicit TodayModel(HomeSession &session);
    ~TodayModel() override;

    [[nodiscard]] QString line() const { return m_line; }
    [[nodiscard]] QString beside() const { return m_beside; }
    [[nodiscard]] QString progress() const;
    [[nodiscard]] bool asksSets() const { return m_setsDue > 0; }
    [[nodiscard]] qreal fraction() const { return m_setsDue == 0 ? 0.0 : static_cast<qreal>(m_setsDone) / m_setsDue; }
    [[nodiscard]] bool yesterday() const { return m_yesterday; }
    [[nodiscard]] QString replyHead() const { return m_replyHead; }
    [[nodiscard]] QString reply() const { return m_reply; }
    [[nodiscard]] bool empty() const { return m_complaints.isEmpty(); }
    [[nodiscard]] QQmlListProperty<TodayComplaint> complaints() { return {this, &m_complaints}; }
    void setYesterday(bool yesterday);

    /// The check: a score of 0 to 10, or that there is none.
    Q_INVOKABLE void check(morrow::TodayComplaint *complaint, int score);
    Q_INVOKABLE void checkDeclined(morrow::TodayComplaint *complaint);
    /// Minutes of stiffness in thousandths; -1 takes them back.
    Q_INVOKABLE void stiffness(morrow::TodayComplaint *complaint, int thousandths);
    Q_INVOKABLE void takeBackCheck(morrow::TodayComplaint *complaint);
    /// Ticks \a set of \a row, or takes it back where it is done.
    Q_INVOKABLE void tick(morrow::TodayRow *row, morrow::TodaySet *set);
    /// Ticks every set that is due and not done.
    Q_INVOKABLE void tickAll(morrow::TodaySession *session);
    /// Takes back those that were ticked so.
    Q_INVOKABLE void takeBackAll(morrow::TodaySession *session);
    Q_INVOKABLE void rateDuring(morrow::TodaySession *session, int score);
    Q_INVOKABLE void takeBackDuring(morrow::TodaySession *session);
    Q_INVOKABLE void rateAfter(morrow::TodaySession *session, int score);
    Q_INVOKABLE void takeBackAfter(morrow::TodaySession *session);
    /// \a reason stands in the diary as it is shown.
    Q_INVOKABLE void skip(morrow::TodaySession *session, const QString &reason);
    Q_INVOKABLE void takeBackSkip(morrow::TodaySession *session);

    /// Each opens a number of the page: the entries behind it are shown.
    Q_INVOKABLE void openSets();
    Q_INVOKABLE void openWeek(morrow::TodayCard *card);
    Q_INVOKABLE void openLastChecks(morrow::TodayComplaint *complaint);
    Q_INVOKABLE void openLastDuring(morrow::TodaySession *session);
    Q_INVOKABLE void openLastAfter(morrow::TodaySession *session);

Q_SIGNALS:
    void changed();
    void partsChanged();

private:
    struct Place;
    struct CheckAnswer
    {
        std::optional<int> score;
        bool declined = false;
        std::optional<int> stiffness; ///< minutes
    };

    void read();
    void build(const Today &today);
    [[nodiscard]] std::optional<Place> placeOf(const TodayComplaint &complaint);
    [[nodiscard]] std::optional<Place> placeOf(const TodaySession &session);
    [[nodiscard]] Draft draft(Kind kind, const TodayComplaint &complaint) const;
    [[nodiscard]] Draft setDraft(const AskedSession &session, const AskedItem &item, int number, SetHow how, const Entry *before) const;
    [[nodiscard]] CheckAnswer checkOf(const TodayComplaint &complaint);
    void answerCheck(TodayComplaint &complaint, const CheckAnswer &answer);
    void rate(TodaySession &session, Field field, std::optional<int> score);

    HomeSession &m_session;
    QList<TodayComplaint *> m_complaints;
    std::string m_shape; ///< of what is asked; the parts are made again when it changes
    CivilDay m_day; ///< that is shown
    QString m_line;
    QString m_beside;
    QString m_replyHead;
    QString m_reply;
    int m_setsDue = 0;
    int m_setsDone = 0;
    bool m_yesterday = false;
};

} // namespace morrow
