// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One sitting at a desk: the desk that is open, the caseload, the files that came, and the person
/// that is looked at.
///
/// The caseload is read a few persons at a time between whatever else the window does, so that it
/// never waits; a person whose entries changed is read again at once.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QUrl>
#include <QtQml/qqmlregistration.h>

#include "Desk/caseload_model.h"
#include "Desk/foreign_files.h"
#include "Desk/review_model.h"
#include "Desk/take_in_model.h"
#include "actions/desk.h"
#include "base/clock.h"

#include <deque>
#include <filesystem>
#include <memory>
#include <optional>

namespace morrow {

class DeskSession : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes it.")

    Q_PROPERTY(QString problem READ problem NOTIFY stateChanged)
    Q_PROPERTY(QString news READ news NOTIFY stateChanged)
    Q_PROPERTY(morrow::CaseloadModel *caseload READ caseload CONSTANT)
    Q_PROPERTY(morrow::WordRows *candidates READ candidates CONSTANT)
    Q_PROPERTY(morrow::TakeInModel *takeIn READ takeIn CONSTANT)
    Q_PROPERTY(morrow::ReviewModel *review READ review CONSTANT)

public:
    /// The desk in \a folder, which is not opened yet; files of others are read with the program at \a reader.
    DeskSession(std::filesystem::path folder, std::unique_ptr<Clock> clock, std::filesystem::path reader, QObject *parent = nullptr);
    ~DeskSession() override;

    /// Opens the desk, or says in \l problem why it cannot be.
    Q_INVOKABLE void open();
    /// Shows \a person in \l review.
    Q_INVOKABLE void look(const QString &person);
    /// Takes in \a files, one after another.
    Q_INVOKABLE void takeInFiles(const QList<QUrl> &files);
    /// Fills \l candidates with those that \a search finds, a few of them.
    Q_INVOKABLE void find(const QString &search);

    [[nodiscard]] QString problem() const { return m_problem; }
    [[nodiscard]] QString news() const { return m_news; }
    [[nodiscard]] CaseloadModel *caseload() { return &m_caseload; }
    [[nodiscard]] WordRows *candidates() { return &m_candidates; }
    [[nodiscard]] TakeInModel *takeIn() { return &m_takeIn; }
    [[nodiscard]] ReviewModel *review() { return &m_review; }

Q_SIGNALS:
    void stateChanged();
    /// Files came; their page should be shown.
    void filesCame();

private:
    void readSome();
    void readPerson(const std::string &person);
    void personChanged(const std::string &person);

    std::filesystem::path m_folder;
    std::unique_ptr<Clock> m_clock;
    std::optional<OpenDesk> m_desk;
    QString m_problem;
    QString m_news;
    std::deque<std::string> m_toRead;
    CaseloadModel m_caseload;
    WordRows m_candidates;
    TakeInModel m_takeIn;
    ReviewModel m_review;
    ForeignFiles m_files;
};

} // namespace morrow
