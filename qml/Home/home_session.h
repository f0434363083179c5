// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Home while its window is open: the diary, the clock it goes by, and what each page shows of it.
///
/// A page changes nothing itself: it tells its model, which records here. What was recorded is
/// durable when record() returns; then every model reads again.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QTemporaryDir>
#include <QTimer>
#include <QUrl>
#include <QtQml/qqmlregistration.h>

#include "Home/kept.h"
#include "Home/open_figures.h"
#include "Home/safety_model.h"
#include "Home/today_model.h"
#include "Home/visit_model.h"
#include "actions/open.h"
#include "base/clock.h"
#include "model/draft.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

namespace morrow {

class HomeSession : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes it.")

    Q_PROPERTY(State state READ state NOTIFY stateChanged)
    Q_PROPERTY(QString problem READ problem NOTIFY stateChanged)
    Q_PROPERTY(QString news READ news NOTIFY stateChanged)
    Q_PROPERTY(QString received READ received NOTIFY receivedChanged)
    Q_PROPERTY(QString refusal READ refusal NOTIFY receivedChanged)
    Q_PROPERTY(bool isDemo READ isDemo NOTIFY stateChanged)
    Q_PROPERTY(morrow::TodayModel *today READ today CONSTANT)
    Q_PROPERTY(morrow::VisitModel *visit READ visit CONSTANT)
    Q_PROPERTY(morrow::SafetyModel *safety READ safety CONSTANT)
    Q_PROPERTY(morrow::OpenFigures *figures READ figures CONSTANT)

public:
    enum State {
        FirstRun, ///< there is no diary yet
        Open,
        CannotOpen, ///< \l problem says why
    };
    Q_ENUM(State)

    /// Home in \a folder, which is not looked at yet.
    HomeSession(std::filesystem::path folder, std::unique_ptr<Clock> clock, QObject *parent = nullptr);
    ~HomeSession() override;

    /// Opens the diary, if there is one.
    Q_INVOKABLE void open();
    /// Adds what is in \a files, which a clinic or this program wrote; the first of them begins
    /// a diary where there is none. \l received or \l refusal say what became of it.
    Q_INVOKABLE void openFiles(const QList<QUrl> &files);
    /// What became of the last file has been read.
    Q_INVOKABLE void forgetReceived();
    /// Shows the diary of somebody invented, in a folder that goes with the program.
    Q_INVOKABLE void openDemo();
    /// Leaves that, back to where the program began.
    Q_INVOKABLE void leaveDemo();

    [[nodiscard]] State state() const { return m_state; }
    [[nodiscard]] QString problem() const { return m_problem; }
    /// What holds for every page: that nothing can be kept, or that part of the diary is damaged.
    [[nodiscard]] QString news() const { return m_news; }
    [[nodiscard]] QString received() const { return m_received; }
    [[nodiscard]] QString refusal() const { return m_refusal; }
    [[nodiscard]] bool isDemo() const { return m_demoFolder != nullptr; }
    [[nodiscard]] TodayModel *today() { return &m_today; }
    [[nodiscard]] VisitModel *visit() { return &m_visit; }
    [[nodiscard]] SafetyModel *safety() { return &m_safety; }
    /// The number that is open, of whichever page.
    [[nodiscard]] OpenFigures *figures() { return &m_figures; }

    // For the models.

    /// nullptr unless the state is Open.
    [[nodiscard]] OpenDiary *diary() { return m_diary ? &*m_diary : nullptr; }
    [[nodiscard]] Moment now() const { return m_clock->now(); }
    /// The diary day of now.
    [[nodiscard]] CivilDay day();

    /// Records \a drafts, all or none; everybody reads again.
    Kept record(std::vector<Draft> drafts);
    /// Takes \a entries back, all or none.
    Kept takeBack(const std::vector<Entry> &entries);
    /// To be called after something other than record() changed the diary.
    void reread();

Q_SIGNALS:
    void stateChanged();
    void receivedChanged();
    /// The diary changed, or the day did.
    void changed();

private:
    /// Shows the diary of \a folder, if there is one.
    void showIn(const std::filesystem::path &folder);
    void show(OpenDiary diary);
    void backUp();

    std::filesystem::path m_own; ///< where one's own diary lies
    std::unique_ptr<Clock> m_ownClock;
    std::unique_ptr<Clock> m_demoClock;
    Clock *m_clock;
    std::unique_ptr<QTemporaryDir> m_demoFolder;
    std::optional<OpenDiary> m_diary;
    State m_state = FirstRun;
    QString m_problem;
    QString m_news;
    QString m_received;
    QString m_refusal;
    QTimer m_quiet; ///< until the next backup
    QTimer m_minute;
    std::optional<CivilDay> m_day; ///< that the models read last
    TodayModel m_today;
    VisitModel m_visit;
    SafetyModel m_safety;
    OpenFigures m_figures;
};

} // namespace morrow
