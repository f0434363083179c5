// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What is handed over at the next visit: exactly what will be in the file, the questions, and
/// the file itself.
///
/// The preview reads the whole diary, so it is made while the page is shown only.

#include <QList>
#include <QObject> // Qt first, for moc
#include <QQmlListProperty>
#include <QStringList>
#include <QUrl>
#include <QtQml/qqmlregistration.h>

#include "Entries/word_rows.h"
#include "model/diary.h"

#include <optional>
#include <string>

namespace morrow {

class HomeSession;

class AskedQuestion : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("VisitModel makes it.")

    Q_PROPERTY(QString words MEMBER words CONSTANT)
    Q_PROPERTY(QString when MEMBER when CONSTANT)
    Q_PROPERTY(QString reply MEMBER reply CONSTANT)
    Q_PROPERTY(QString replyHead MEMBER replyHead CONSTANT)

public:
    using QObject::QObject;

    QString words;
    QString when;
    QString reply; ///< empty: none yet
    QString replyHead;
    std::string entry; ///< id
};

class VisitModel : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("HomeSession makes it.")

    Q_PROPERTY(bool shown READ isShown WRITE setShown NOTIFY changed)
    Q_PROPERTY(QString name READ name WRITE setName NOTIFY changed)
    Q_PROPERTY(QString days READ days NOTIFY changed)
    Q_PROPERTY(QString holds READ holds NOTIFY changed)
    Q_PROPERTY(QString leftOut READ leftOut NOTIFY changed)
    Q_PROPERTY(morrow::WordRows *entries READ entries CONSTANT)
    Q_PROPERTY(bool listed READ isListed WRITE setListed NOTIFY changed)
    Q_PROPERTY(int earlier READ earlier NOTIFY changed)
    Q_PROPERTY(QQmlListProperty<morrow::AskedQuestion> questions READ questions NOTIFY changed)
    Q_PROPERTY(QStringList handed READ handed NOTIFY changed)
    Q_PROPERTY(QString saved READ saved NOTIFY changed)
    Q_PROPERTY(QString saveFailure READ saveFailure NOTIFY changed)
    Q_PROPERTY(QString questionFailure READ questionFailure NOTIFY changed)

public:
    explicit VisitModel(HomeSession &session);

    [[nodiscard]] bool isShown() const { return m_isShown; }
    [[nodiscard]] QString name() const { return m_name; }
    /// "16 February to 23 April 2026".
    [[nodiscard]] QString days() const { return m_days; }
    [[nodiscard]] QString holds() const { return m_holds; }
    [[nodiscard]] QString leftOut() const { return m_leftOut; }
    /// What will be handed over, entry by entry: a row a day, the newest first; only while it is listed.
    [[nodiscard]] WordRows *entries() { return &m_entries; }
    [[nodiscard]] bool isListed() const { return m_daysListed > 0; }
    /// How many days before those in \l entries have some, too.
    [[nodiscard]] int earlier() const { return m_earlier; }
    void setListed(bool listed);
    Q_INVOKABLE void listEarlier();
    /// Shows the notes that are not in the file.
    Q_INVOKABLE void openLeftOut();
    [[nodiscard]] QQmlListProperty<AskedQuestion> questions() { return {this, &m_questions}; }
    /// Files that were handed over, newest first.
    [[nodiscard]] QStringList handed() const { return m_handed; }
    [[nodiscard]] QString saved() const { return m_saved; }
    [[nodiscard]] QString saveFailure() const { return m_saveFailure; }
    [[nodiscard]] QString questionFailure() const { return m_questionFailure; }
    void setShown(bool shown);
    void setName(const QString &name);

    /// Where save() puts files; the person's documents unless it was chosen.
    void setFolder(const QString &folder) { m_folder = folder; }

    /// Writes the question down; false: it could not be kept.
    Q_INVOKABLE bool ask(const QString &question);
    Q_INVOKABLE void takeBack(morrow::AskedQuestion *question);
    /// Writes the summary into the person's documents, beside whatever lies there.
    Q_INVOKABLE void save();
    Q_INVOKABLE void saveAs(const QUrl &file);
    /// The name that save() would give.
    Q_INVOKABLE QString fileName(int copy = 1) const;

Q_SIGNALS:
    void changed();

private:
    void read();
    void list();
    void readQuestions();
    void readHanded();
    void write(const QString &path);

    HomeSession &m_session;
    bool m_isShown = false;
    QString m_folder;
    QString m_name;
    QString m_days;
    QString m_holds;
    QString m_leftOut;
    std::optional<Diary> m_file; ///< what will be in it, while the page is shown
    WordRows m_entries;
    int m_daysListed = 0;
    int m_earlier = 0;
    QList<AskedQuestion *> m_questions;
    QStringList m_handed;
    QString m_saved;
    QString m_saveFailure;
    QString m_questionFailure;
};

} // namespace morrow
