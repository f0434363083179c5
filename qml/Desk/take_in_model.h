// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Files that came to the desk in this sitting: what became of each, and what it waits for.
///
/// A file of somebody unknown waits until a person has said whose it is; what it says of itself
/// is shown, and chooses nothing.

#include <QAbstractListModel> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include "Desk/foreign_files.h"
#include "actions/take_in.h"
#include "actions/whose.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace morrow {

class TakeInModel : public QAbstractListModel
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A session makes it.")

    Q_PROPERTY(int files READ files NOTIFY filesChanged)
    Q_PROPERTY(int finished READ finished NOTIFY filesChanged)

public:
    /// What became of a file.
    enum State {
        Reading,
        Asks, ///< whose it is
        Taken,
        Refused,
        Undone,
        Left, ///< nobody said whose it is, and that is all right
        Failed ///< the desk could not keep it; it can be tried again
    };
    Q_ENUM(State)

    /// What the model needs of its session.
    struct Desk
    {
        std::function<OpenDesk *()> desk; ///< null: it is not open
        std::function<Moment()> now;
        std::function<KnownAs(const std::string &person)> knownAs;
        std::function<void(const std::string &person)> changed; ///< that person's entries are others now
    };

    explicit TakeInModel(Desk desk, QObject *parent = nullptr);

    /// Adds the file at \a path, which is being read.
    void add(const std::string &path);
    /// Takes in what was read, or asks whose it is.
    void take(const std::shared_ptr<const ForeignFile> &file);

    /// The file in \a row is of somebody new; \a birthYear is 0 where none was typed. False, and
    /// the row says why, if it could not be taken in.
    Q_INVOKABLE bool takeAsNew(int row, const QString &label, const QString &fileNumber, int birthYear);
    /// The file in \a row is of the person who is also \a ref.
    Q_INVOKABLE bool takeAs(int row, const QString &ref);
    Q_INVOKABLE void leave(int row);
    /// Answers for a file that the desk could not keep as it was answered before.
    Q_INVOKABLE void retry(int row);
    Q_INVOKABLE void undo(int row);

    [[nodiscard]] int files() const { return static_cast<int>(m_rows.size()); }
    [[nodiscard]] int finished() const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

Q_SIGNALS:
    void filesChanged();
    /// A file was taken in for \a person.
    void taken(const QString &person);

private:
    enum Role {
        File = Qt::UserRole,
        FileState,
        Words, ///< what became of it, in one or more sentences
        Says, ///< what it says of itself, where it is asked whose it is
        SaidName, ///< the name in it
        SaidBirthYear, ///< 0: none
        Person,
        Failure ///< why the last answer could not be carried out
    };

    struct Row
    {
        std::string path;
        State state = Reading;
        std::shared_ptr<const ForeignFile> file{};
        QString words;
        QString says;
        QString saidName;
        int saidBirthYear = 0;
        std::string person;
        std::string name; ///< by which the record knows the file
        QString failure;
        WhoseAnswer answer{}; ///< the last one
    };

    void tell(int row);
    void refuse(Row &row, const QStringList &why);
    bool takeIn(int row, const WhoseAnswer &answer);
    void ask(Row &row, const QString &why);

    Desk m_desk;
    std::vector<Row> m_rows;
};

} // namespace morrow
