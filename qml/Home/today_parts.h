// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a day asks, in the parts that its page shows: complaints, sessions, cards, rows, sets.
///
/// What a part is stays as it was made; what was answered changes in place.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QQmlListProperty>
#include <QtQml/qqmlregistration.h>

#include <string>
#include <utility>

namespace morrow {

class TodayCard;
class TodayComplaint;
class TodaySession;

/// One answer on a scale of 0 to 10.
class TodayRating : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(bool asked READ asked NOTIFY changed)
    Q_PROPERTY(QString question READ question NOTIFY changed)
    Q_PROPERTY(int value READ value NOTIFY changed)
    Q_PROPERTY(bool declined READ declined NOTIFY changed)
    Q_PROPERTY(QString said READ said NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)
    Q_PROPERTY(QString limit READ limit NOTIFY changed)
    Q_PROPERTY(QString last READ last NOTIFY changed)

public:
    struct State
    {
        bool asked = false;
        QString question;
        int value = -1; ///< -1: no answer
        bool declined = false;
        QString said;
        QString limit; ///< the clinic's own rule
        QString last; ///< the person's numbers beside it; empty: there are none

        friend bool operator==(const State &, const State &) = default;
    };

    using QObject::QObject;

    [[nodiscard]] bool asked() const { return m_state.asked; }
    [[nodiscard]] QString question() const { return m_state.question; }
    [[nodiscard]] int value() const { return m_state.value; }
    [[nodiscard]] bool declined() const { return m_state.declined; }
    [[nodiscard]] QString said() const { return m_state.said; }
    [[nodiscard]] QString failure() const { return m_failure; }
    [[nodiscard]] QString limit() const { return m_state.limit; }
    [[nodiscard]] QString last() const { return m_state.last; }

    void set(const State &state);
    void setFailure(const QString &failure);

Q_SIGNALS:
    void changed();

private:
    State m_state;
    QString m_failure;
};

/// One set to tick.
class TodaySet : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(int number MEMBER number CONSTANT)
    Q_PROPERTY(QString spoken MEMBER spoken CONSTANT)
    Q_PROPERTY(bool done READ done NOTIFY changed)

public:
    using QObject::QObject;

    int number = 1;
    QString spoken; ///< "Heel raise, right, set 2 of 3"

    [[nodiscard]] bool done() const { return m_done; }
    void setDone(bool done);

Q_SIGNALS:
    void changed();

private:
    bool m_done = false;
};

/// The sets of one item, a row on its card.
class TodayRow : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(QString side MEMBER side CONSTANT)
    Q_PROPERTY(QQmlListProperty<morrow::TodaySet> sets READ sets CONSTANT)

public:
    TodayRow(std::string item, TodayCard &card);

    QString side; ///< empty where the card has one row and the item no side
    QList<TodaySet *> all;

    [[nodiscard]] QQmlListProperty<TodaySet> sets() { return {this, &all}; }
    [[nodiscard]] const std::string &item() const { return m_item; }
    [[nodiscard]] TodayCard &card() const { return m_card; }

private:
    std::string m_item;
    TodayCard &m_card;
};

/// One exercise; its left and right are two rows.
class TodayCard : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(QString title MEMBER title CONSTANT)
    Q_PROPERTY(QString sentence MEMBER sentence CONSTANT)
    Q_PROPERTY(QString keyPoint MEMBER keyPoint CONSTANT)
    Q_PROPERTY(QString week READ week NOTIFY changed)
    Q_PROPERTY(QQmlListProperty<morrow::TodayRow> rows READ rows CONSTANT)
    Q_PROPERTY(QString said READ said NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)

public:
    explicit TodayCard(TodaySession &session);

    QString title;
    QString sentence;
    QString keyPoint;
    QList<TodayRow *> all;

    [[nodiscard]] QQmlListProperty<TodayRow> rows() { return {this, &all}; }
    [[nodiscard]] TodaySession &session() const { return m_session; }
    [[nodiscard]] QString week() const { return m_week; }
    [[nodiscard]] QString said() const { return m_said; }
    [[nodiscard]] QString failure() const { return m_failure; }
    void set(const QString &week, const QString &said);
    void setFailure(const QString &failure);

Q_SIGNALS:
    void changed();

private:
    TodaySession &m_session;
    QString m_week;
    QString m_said;
    QString m_failure;
};

/// What is done in one go: a slot of the day.
class TodaySession : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(QString title MEMBER title CONSTANT)
    Q_PROPERTY(QString sentence READ sentence NOTIFY changed)
    Q_PROPERTY(QQmlListProperty<morrow::TodayCard> cards READ cards CONSTANT)
    Q_PROPERTY(bool several READ several CONSTANT)
    Q_PROPERTY(bool allDone READ allDone NOTIFY changed)
    Q_PROPERTY(bool anyDone READ anyDone NOTIFY changed)
    Q_PROPERTY(bool tickedAtOnce READ tickedAtOnce NOTIFY changed)
    Q_PROPERTY(bool skipped READ skipped NOTIFY changed)
    Q_PROPERTY(QString skipWords READ skipWords NOTIFY changed)
    Q_PROPERTY(QString said READ said NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)
    Q_PROPERTY(morrow::TodayRating *during READ during CONSTANT)
    Q_PROPERTY(morrow::TodayRating *after READ after CONSTANT)

public:
    struct State
    {
        int setsDue = 0;
        int setsDone = 0;
        int exercises = 0;
        bool anyDone = false;
        bool tickedAtOnce = false; ///< some sets came by one tap together
        bool skipped = false;
        QString skipWords; ///< "Not today: too sore"
        QString said;

        friend bool operator==(const State &, const State &) = default;
    };

    TodaySession(std::string slot, TodayComplaint &complaint);

    QString title;
    QList<TodayCard *> all;

    [[nodiscard]] QQmlListProperty<TodayCard> cards() { return {this, &all}; }
    [[nodiscard]] bool several() const { return all.size() > 1; }
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] bool allDone() const { return m_state.setsDue > 0 && m_state.setsDone == m_state.setsDue; }
    [[nodiscard]] bool anyDone() const { return m_state.anyDone; }
    [[nodiscard]] bool tickedAtOnce() const { return m_state.tickedAtOnce; }
    [[nodiscard]] bool skipped() const { return m_state.skipped; }
    [[nodiscard]] QString skipWords() const { return m_state.skipWords; }
    [[nodiscard]] QString said() const { return m_state.said; }
    [[nodiscard]] QString failure() const { return m_failure; }
    [[nodiscard]] TodayRating *during() { return &m_during; }
    [[nodiscard]] TodayRating *after() { return &m_after; }

    [[nodiscard]] TodayComplaint &complaint() const { return m_complaint; }
    [[nodiscard]] const std::string &slot() const { return m_slot; }
    void set(const State &state);
    void setFailure(const QString &failure);

Q_SIGNALS:
    void changed();

private:
    TodayComplaint &m_complaint;
    std::string m_slot;
    State m_state;
    QString m_failure;
    TodayRating m_during{this};
    TodayRating m_after{this};
};

class TodayComplaint : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("TodayModel makes it.")

    Q_PROPERTY(QString name MEMBER name CONSTANT)
    Q_PROPERTY(morrow::TodayRating *check READ check CONSTANT)
    Q_PROPERTY(bool stiffnessAsked READ stiffnessAsked NOTIFY changed)
    Q_PROPERTY(int stiffness READ stiffness NOTIFY changed)
    Q_PROPERTY(QString quiet READ quiet NOTIFY changed)
    Q_PROPERTY(QQmlListProperty<morrow::TodaySession> sessions READ sessions CONSTANT)

public:
    struct State
    {
        bool stiffnessAsked = false;
        int stiffness = -1; ///< thousandths of a minute, as NumberField counts; -1: no answer
        QString quiet; ///< why no exercise is asked, and when the next one is

        friend bool operator==(const State &, const State &) = default;
    };

    TodayComplaint(std::string key, QObject *parent)
        : QObject(parent)
        , m_key(std::move(key))
    {
    }

    QString name; ///< empty where there is only one
    QList<TodaySession *> all;

    [[nodiscard]] QQmlListProperty<TodaySession> sessions() { return {this, &all}; }
    [[nodiscard]] TodayRating *check() { return &m_check; }
    [[nodiscard]] bool stiffnessAsked() const { return m_state.stiffnessAsked; }
    [[nodiscard]] int stiffness() const { return m_state.stiffness; }
    [[nodiscard]] QString quiet() const { return m_state.quiet; }
    [[nodiscard]] const std::string &key() const { return m_key; }
    void set(const State &state);

Q_SIGNALS:
    void changed();

private:
    std::string m_key;
    State m_state;
    TodayRating m_check{this};
};

} // namespace morrow
