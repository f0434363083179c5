// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The chart's table: every number that is drawn, in words, one row a day on which there is one.

#include <QAbstractListModel> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include "Charts/course.h"

#include <optional>
#include <vector>

namespace morrow {

class CourseRows : public QAbstractListModel
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A chart's model makes it.")

public:
    using QAbstractListModel::QAbstractListModel;

    enum Role {
        Day = Qt::UserRole,
        What, ///< what was entered about the day: pain and how it came, a visit, the person's words
        Work, ///< of the week that begins here; empty in the middle of one
        Whole, ///< all of them
    };

    /// One thing that was entered about a day.
    struct Said
    {
        QString words;
        std::vector<EntryIndex> entries;
    };
    struct Row
    {
        QString day;
        std::vector<Said> said;
        QString what;
        QString work;
        QString whole;
        std::optional<WorkInWeek> week; ///< that \l work is about
    };

    void setCourse(const Course &course);

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QHash<int, QByteArray> roleNames() const override;

    /// nullptr: there is no such row.
    [[nodiscard]] const Row *row(int number) const;

private:
    std::vector<Row> m_rows;
};

} // namespace morrow
