// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Charts/course_rows.h"

#include "Charts/course_model.h"

#include <map>

namespace morrow {

namespace {

QString painWords(const PainOnDay &pain)
{
    //: In the table beside a chart: the pain of one day.
    QStringList parts{CourseRows::tr("pain %1").arg(pain.pain)};
    if (pain.entered == Entered::Late)
        //: In the table beside a chart: the answer was given on another day.
        parts << CourseRows::tr("entered late");
    else if (pain.entered == Entered::Paper)
        //: In the table beside a chart: the answer was typed in from a sheet of paper.
        parts << CourseRows::tr("from paper");
    if (pain.isCorrected)
        //: In the table beside a chart: the answer was changed later.
        parts << CourseRows::tr("corrected");
    return parts.join(QStringLiteral(", "));
}

QString workWords(const WorkInWeek &week, std::optional<VolumeUnit> unit)
{
    const QString done = week.done ? CourseModel::amount(*week.done) : CourseRows::tr("unknown");
    const QString due = week.due ? CourseModel::amount(*week.due) : CourseRows::tr("unknown");
    //: In the table beside a chart, of a week: what was done of what was prescribed, and its unit: "720 of 900 kg × reps".
    return CourseRows::tr("%1 of %2 %3").arg(done, due, CourseModel::unitWords(unit));
}

} // namespace

void CourseRows::setCourse(const Course &course)
{
    std::map<CivilDay, Row> days;
    for (const WorkInWeek &week : course.weeks) {
        days[week.first].work = workWords(week, course.unit);
        days[week.first].week = week;
    }
    for (const PainOnDay &pain : course.pain)
        days[pain.day].said.push_back({painWords(pain), {pain.entry}});
    for (const VisitOnDay &visit : course.visits)
        //: In the table beside a chart: the number of a visit to the clinic.
        days[visit.day].said.push_back({tr("visit %1").arg(visit.number), visit.entries});
    for (const UnusualDay &unusual : course.unusual)
        days[unusual.day].said.push_back({QString::fromStdString(unusual.text), {unusual.entry}});

    beginResetModel();
    m_rows.clear();
    for (auto &[day, row] : days) {
        QStringList all;
        for (const Said &said : row.said)
            all << said.words;
        row.day = CourseModel::dayWords(day);
        row.what = all.join(QStringLiteral("; "));
        if (!row.work.isEmpty())
            all << row.work;
        //: A row of the table beside a chart: its day and what stands in it.
        row.whole = tr("%1: %2").arg(row.day, all.join(QStringLiteral("; ")));
        m_rows.push_back(std::move(row));
    }
    endResetModel();
}

const CourseRows::Row *CourseRows::row(int number) const
{
    const bool isThere = number >= 0 && static_cast<std::size_t>(number) < m_rows.size();
    return isThere ? &m_rows[static_cast<std::size_t>(number)] : nullptr;
}

int CourseRows::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant CourseRows::data(const QModelIndex &index, int role) const
{
    const Row &row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case Day:
        return row.day;
    case What:
        return row.what;
    case Work:
        return row.work;
    case Whole:
        return row.whole;
    default:
        return {};
    }
}

QHash<int, QByteArray> CourseRows::roleNames() const
{
    return {{Day, "day"}, {What, "what"}, {Work, "work"}, {Whole, "whole"}};
}

} // namespace morrow
