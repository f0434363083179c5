// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A course as a chart takes it: axes that we fix, series that it fills, words for its labels.
/// Days are counted from the first one shown, so that the axis runs from 0.

#include <QAbstractSeries> // Qt first, for moc
#include <QObject>
#include <QPointF>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include "Charts/course.h"
#include "Charts/course_rows.h"

#include <optional>
#include <vector>

namespace morrow {

class CourseModel : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A session makes it.")

    Q_PROPERTY(int days READ days NOTIFY changed)
    Q_PROPERTY(bool hasPain READ hasPain NOTIFY changed)
    Q_PROPERTY(bool hasLate READ hasLate NOTIFY changed)
    Q_PROPERTY(bool hasPaper READ hasPaper NOTIFY changed)
    Q_PROPERTY(bool hasWork READ hasWork NOTIFY changed)
    Q_PROPERTY(bool hasVisits READ hasVisits NOTIFY changed)
    Q_PROPERTY(bool hasUnusual READ hasUnusual NOTIFY changed)
    Q_PROPERTY(double mostWork READ mostWork NOTIFY changed)
    Q_PROPERTY(QString workUnit READ workUnit NOTIFY changed)
    Q_PROPERTY(int runs READ runs NOTIFY changed)
    Q_PROPERTY(int marks READ marks NOTIFY changed)
    Q_PROPERTY(QString sentence READ sentence NOTIFY changed)
    Q_PROPERTY(morrow::CourseRows *rows READ rows CONSTANT)

public:
    explicit CourseModel(QObject *parent = nullptr);

    /// Shows \a course, whose check asks \a question; nullopt: there is nothing to show.
    void setCourse(std::optional<Course> course, const QString &question = {});

    [[nodiscard]] int days() const; ///< at least 1
    [[nodiscard]] bool hasPain() const;
    [[nodiscard]] bool hasLate() const { return has(Entered::Late); }
    [[nodiscard]] bool hasPaper() const { return has(Entered::Paper); }
    [[nodiscard]] bool hasWork() const;
    [[nodiscard]] bool hasVisits() const;
    [[nodiscard]] bool hasUnusual() const;
    /// The upper end of the axis of work, a round number.
    [[nodiscard]] double mostWork() const;
    [[nodiscard]] QString workUnit() const;
    /// How many times days with an answer follow each other without a gap.
    [[nodiscard]] int runs() const { return static_cast<int>(m_runs.size()); }
    /// Visits and unusual days.
    [[nodiscard]] int marks() const { return static_cast<int>(m_marks.size()); }
    /// What the chart shows, for whoever does not see it.
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] CourseRows *rows() { return &m_rows; }

    /// What is drawn, by day from 0 and by value; of a run that is not there nothing.
    [[nodiscard]] QList<QPointF> run(int number) const;
    [[nodiscard]] QList<QPointF> pain(Entered entered) const;
    /// The outline of the bars, from the first to the last.
    [[nodiscard]] QList<QPointF> work() const;
    [[nodiscard]] QList<QPointF> prescribed() const;

    /// Each puts the same into a series.
    Q_INVOKABLE void fillRun(QAbstractSeries *series, int number) const;
    Q_INVOKABLE void fillSameDay(QAbstractSeries *series) const;
    Q_INVOKABLE void fillLate(QAbstractSeries *series) const;
    Q_INVOKABLE void fillPaper(QAbstractSeries *series) const;
    Q_INVOKABLE void fillWork(QAbstractSeries *series) const;
    Q_INVOKABLE void fillPrescribed(QAbstractSeries *series) const;

    Q_INVOKABLE int markDay(int mark) const { return m_marks[static_cast<std::size_t>(mark)].day; }
    Q_INVOKABLE QString markWords(int mark) const { return m_marks[static_cast<std::size_t>(mark)].words; }
    /// The number of a visit alone.
    Q_INVOKABLE QString markNumber(int mark) const { return QString::number(m_marks[static_cast<std::size_t>(mark)].number); }
    Q_INVOKABLE bool markIsVisit(int mark) const { return m_marks[static_cast<std::size_t>(mark)].number > 0; }
    /// "7 Jan", the day that is \a day after the first.
    Q_INVOKABLE QString dayLabel(int day) const;
    Q_INVOKABLE QString amountLabel(double value) const { return amount(value); }

    /// "720 kg × reps", in the unit of the course; "unknown".
    [[nodiscard]] QString workWords(std::optional<double> value) const;
    /// "3 March", with the year.
    [[nodiscard]] static QString dayWords(CivilDay day);
    /// A number as the reader's language writes it, with at most one decimal.
    [[nodiscard]] static QString amount(double value);
    [[nodiscard]] static QString unitWords(std::optional<VolumeUnit> unit);

Q_SIGNALS:
    void changed();

private:
    struct Mark
    {
        int day;
        QString words;
        int number; ///< of a visit; 0: an unusual day
    };

    [[nodiscard]] bool has(Entered entered) const;
    [[nodiscard]] double place(CivilDay day) const { return day - m_course->from; }

    std::optional<Course> m_course;
    QString m_question;
    std::vector<QList<QPointF>> m_runs;
    std::vector<Mark> m_marks; ///< by day, visits first
    CourseRows m_rows;
};

} // namespace morrow
