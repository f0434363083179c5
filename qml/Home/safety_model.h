// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Signs at which to stop and ask: what they are, which were reported, and what became of it.
///
/// Reporting tells nobody: it is an entry like any other, and the words say so.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QQmlListProperty>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include "model/diary.h"

#include <string>

namespace morrow {

class HomeSession;

/// Signs that ask for the same: to call now, today, or before the next session.
class SignGroup : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("SafetyModel makes it.")

    Q_PROPERTY(QString title MEMBER title CONSTANT)
    Q_PROPERTY(QStringList signs MEMBER all CONSTANT)

public:
    using QObject::QObject;

    QString title;
    QStringList all;
};

/// A sign that was reported.
class SignReport : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("SafetyModel makes it.")

    Q_PROPERTY(QString words READ words NOTIFY changed)
    Q_PROPERTY(QString state READ state NOTIFY changed)
    Q_PROPERTY(bool open READ open NOTIFY changed)
    Q_PROPERTY(bool told READ told NOTIFY changed)

public:
    struct State
    {
        QString words; ///< what was reported
        QString state; ///< when, and what became of it
        bool open = false; ///< the clinic has not answered for it
        bool told = false; ///< the person has called
        std::string entry; ///< id

        friend bool operator==(const State &, const State &) = default;
    };

    using QObject::QObject;

    [[nodiscard]] QString words() const { return m_state.words; }
    [[nodiscard]] QString state() const { return m_state.state; }
    [[nodiscard]] bool open() const { return m_state.open; }
    [[nodiscard]] bool told() const { return m_state.told; }
    [[nodiscard]] const std::string &entry() const { return m_state.entry; }
    void set(const State &state);

Q_SIGNALS:
    void changed();

private:
    State m_state;
};

class SafetyModel : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("HomeSession makes it.")

    Q_PROPERTY(QQmlListProperty<morrow::SignGroup> groups READ groups CONSTANT)
    Q_PROPERTY(QQmlListProperty<morrow::SignReport> reports READ reports NOTIFY reportsChanged)
    Q_PROPERTY(int open READ open NOTIFY changed)
    Q_PROPERTY(QString progress READ progress NOTIFY changed)
    Q_PROPERTY(bool waits READ waits NOTIFY changed)
    Q_PROPERTY(QString waitingWords READ waitingWords NOTIFY changed)
    Q_PROPERTY(bool stops READ stops NOTIFY changed)
    Q_PROPERTY(QString stopWords READ stopWords NOTIFY changed)
    Q_PROPERTY(QString whom READ whom NOTIFY changed)
    Q_PROPERTY(QString failure READ failure NOTIFY changed)

public:
    enum Answer {
        GoOn,
        Lighter,
        Wait
    };
    Q_ENUM(Answer)

    explicit SafetyModel(HomeSession &session);

    [[nodiscard]] QQmlListProperty<SignGroup> groups() { return {this, &m_groups}; }
    [[nodiscard]] QQmlListProperty<SignReport> reports() { return {this, &m_reports}; }
    /// How many reported signs nobody of the clinic answered for.
    [[nodiscard]] int open() const { return m_open; }
    [[nodiscard]] QString progress() const;
    /// Whether the day's exercises wait for what the clinic says.
    [[nodiscard]] bool waits() const { return m_waits; }
    [[nodiscard]] QString waitingWords() const;
    /// Whether a sign was just reported, so that nothing else is shown until that was answered.
    [[nodiscard]] bool stops() const { return !m_stop.isEmpty(); }
    [[nodiscard]] QString stopWords() const { return m_stop; }
    /// Who issued the plan; empty if that is not known.
    [[nodiscard]] QString whom() const { return m_whom; }
    [[nodiscard]] QString failure() const { return m_failure; }

    Q_INVOKABLE void report(const QString &sign);
    /// Answers the page that a report opens.
    Q_INVOKABLE void called(bool yes);
    Q_INVOKABLE void calledAbout(morrow::SignReport *report);
    Q_INVOKABLE void heard(morrow::SignReport *report, morrow::SafetyModel::Answer answer);
    /// The sign was reported by mistake.
    Q_INVOKABLE void takeBack(morrow::SignReport *report);

Q_SIGNALS:
    void changed();
    void reportsChanged();

private:
    void readSigns();
    void read();
    void settle(const QString &failure);
    void tell(const Diary &diary, const ReportedSign &sign, bool told);
    [[nodiscard]] const ReportedSign *find(const Diary &diary, const SignReport &report) const;

    HomeSession &m_session;
    QList<SignGroup *> m_groups;
    QList<SignReport *> m_reports;
    int m_open = 0;
    bool m_waits = false;
    QString m_stop;
    QString m_whom;
    QString m_failure;
};

} // namespace morrow
