// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Charts/course_model.h"

#include <QDate>
#include <QLocale>
#include <QXYSeries>

#include <algorithm>
#include <cmath>

namespace morrow {

namespace {

constexpr double kHalfDay = 0.5;
constexpr double kBarGap = 0.1; ///< of a day, on either side of a bar

QDate dateOf(CivilDay day)
{
    return QDate(1970, 1, 1).addDays(day.number());
}

void put(QAbstractSeries *series, const QList<QPointF> &points)
{
    if (auto *const xy = qobject_cast<QXYSeries *>(series))
        xy->replace(points);
}

/// The least round number that is not below \a most.
double roundedUp(double most)
{
    if (!(most > 0))
        return 1;
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double step : {1.0, 1.2, 1.6, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0}) {
        if (most <= step * power * (1 + 1e-9))
            return step * power;
    }
    return 10 * power;
}

} // namespace

CourseModel::CourseModel(QObject *parent)
    : QObject(parent)
{
}

void CourseModel::setCourse(std::optional<Course> course, const QString &question)
{
    m_course = std::move(course);
    m_question = question;
    m_runs.clear();
    m_marks.clear();
    if (m_course) {
        const PainOnDay *before = nullptr;
        for (const PainOnDay &pain : m_course->pain) {
            if (before == nullptr || pain.day - before->day > 1)
                m_runs.emplace_back();
            m_runs.back().append({place(pain.day), static_cast<double>(pain.pain)});
            before = &pain;
        }
        for (const VisitOnDay &visit : m_course->visits)
            //: A label on a chart: the number of a visit to the clinic.
            m_marks.push_back({visit.day - m_course->from, tr("visit %1").arg(visit.number), visit.number});
        for (const UnusualDay &unusual : m_course->unusual)
            m_marks.push_back({unusual.day - m_course->from, QString::fromStdString(unusual.text), 0});
        std::stable_sort(m_marks.begin(), m_marks.end(), [](const Mark &one, const Mark &other) { return one.day < other.day; });
        m_rows.setCourse(*m_course);
    } else {
        m_rows.setCourse(Course{.from = *CivilDay::fromNumber(0), .to = *CivilDay::fromNumber(0)});
    }
    Q_EMIT changed();
}

int CourseModel::days() const
{
    return m_course ? m_course->to - m_course->from + 1 : 1;
}

bool CourseModel::hasPain() const
{
    return m_course && !m_course->pain.empty();
}

bool CourseModel::has(Entered entered) const
{
    return m_course
        && std::any_of(m_course->pain.begin(), m_course->pain.end(), [entered](const PainOnDay &pain) { return pain.entered == entered; });
}

bool CourseModel::hasWork() const
{
    return m_course && !m_course->weeks.empty();
}

bool CourseModel::hasVisits() const
{
    return m_course && !m_course->visits.empty();
}

bool CourseModel::hasUnusual() const
{
    return m_course && !m_course->unusual.empty();
}

double CourseModel::mostWork() const
{
    double most = 0;
    if (m_course) {
        for (const WorkInWeek &week : m_course->weeks)
            most = std::max({most, week.done.value_or(0), week.due.value_or(0)});
    }
    return roundedUp(most);
}

QString CourseModel::workUnit() const
{
    return m_course ? unitWords(m_course->unit) : QString();
}

QString CourseModel::sentence() const
{
    if (!m_course || (m_course->pain.empty() && m_course->weeks.empty()))
        //: What a chart shows when there is nothing on it.
        return tr("Nothing was entered on these days.");
    //: What a chart shows, first part: the days.
    QStringList parts{tr("%1 to %2").arg(dayWords(m_course->from), dayWords(m_course->to))};
    if (m_course->pain.empty()) {
        //: What a chart shows: no answer to the daily question.
        parts << tr("no pain entered");
    } else {
        const auto [least, most] = std::minmax_element(m_course->pain.begin(), m_course->pain.end(),
            [](const PainOnDay &one, const PainOnDay &other) { return one.pain < other.pain; });
        //: What a chart shows: the number of answers, and the least and the greatest of them.
        parts << tr("pain entered on %n day(s), between %1 and %2", nullptr, static_cast<int>(m_course->pain.size()))
                     .arg(least->pain)
                     .arg(most->pain);
    }
    if (hasWork())
        //: What a chart shows: how many weeks of work stand on it, and their unit.
        parts << tr("work in %n week(s), in %1", nullptr, static_cast<int>(m_course->weeks.size())).arg(workUnit());
    if (hasVisits())
        //: What a chart shows: how many visits to the clinic.
        parts << tr("%n visit(s)", nullptr, static_cast<int>(m_course->visits.size()));
    if (hasUnusual())
        //: What a chart shows: how many days the person called unusual.
        parts << tr("%n unusual day(s)", nullptr, static_cast<int>(m_course->unusual.size()));
    //: What a chart shows, whole: its parts with a comma between them.
    return tr("%1.").arg(parts.join(QStringLiteral(", ")));
}

QList<QPointF> CourseModel::run(int number) const
{
    return number < runs() ? m_runs[static_cast<std::size_t>(number)] : QList<QPointF>();
}

QList<QPointF> CourseModel::pain(Entered entered) const
{
    QList<QPointF> points;
    if (m_course) {
        for (const PainOnDay &each : m_course->pain) {
            if (each.entered == entered)
                points.append({place(each.day), static_cast<double>(each.pain)});
        }
    }
    return points;
}

QList<QPointF> CourseModel::work() const
{
    QList<QPointF> points;
    if (m_course) {
        for (const WorkInWeek &week : m_course->weeks) {
            const double left = place(week.first) - kHalfDay + kBarGap;
            const double right = place(week.last) + kHalfDay - kBarGap;
            const double height = week.done.value_or(0);
            points.append({{left, 0}, {left, height}, {right, height}, {right, 0}});
        }
    }
    return points;
}

QList<QPointF> CourseModel::prescribed() const
{
    QList<QPointF> points;
    if (m_course) {
        for (const WorkInWeek &week : m_course->weeks) {
            const double height = week.due.value_or(0);
            points.append({{place(week.first) - kHalfDay, height}, {place(week.last) + kHalfDay, height}});
        }
    }
    return points;
}

void CourseModel::fillRun(QAbstractSeries *series, int number) const
{
    put(series, run(number));
}

void CourseModel::fillSameDay(QAbstractSeries *series) const
{
    put(series, pain(Entered::SameDay));
}

void CourseModel::fillLate(QAbstractSeries *series) const
{
    put(series, pain(Entered::Late));
}

void CourseModel::fillPaper(QAbstractSeries *series) const
{
    put(series, pain(Entered::Paper));
}

void CourseModel::fillWork(QAbstractSeries *series) const
{
    put(series, work());
}

void CourseModel::fillPrescribed(QAbstractSeries *series) const
{
    put(series, prescribed());
}

QString CourseModel::dayLabel(int day) const
{
    //: A day below a chart: day of the month and short month (Qt date format).
    return m_course ? QLocale().toString(dateOf(m_course->from + day), tr("d MMM")) : QString();
}

QString CourseModel::workWords(std::optional<double> value) const
{
    if (!value)
        //: An amount of work that cannot be told.
        return tr("unknown");
    //: An amount of work and its unit.
    return tr("%1 %2").arg(amount(*value), workUnit());
}

QString CourseModel::dayWords(CivilDay day)
{
    //: A day in words: day of the month, month, year (Qt date format).
    return QLocale().toString(dateOf(day), tr("d MMMM yyyy"));
}

QString CourseModel::amount(double value)
{
    const double tenths = std::round(value * 10) / 10;
    return QLocale().toString(tenths, 'f', tenths == std::round(tenths) ? 0 : 1);
}

QString CourseModel::unitWords(std::optional<VolumeUnit> unit)
{
    if (!unit)
        //: The unit of work: sets of exercises.
        return tr("sets");
    switch (*unit) {
    case VolumeUnit::Reps:
        //: The unit of work: repetitions.
        return tr("reps");
    case VolumeUnit::Seconds:
        //: The unit of work: seconds held.
        return tr("seconds");
    case VolumeUnit::KgReps:
        //: The unit of work: kilograms times repetitions.
        return tr("kg × reps");
    case VolumeUnit::KgSeconds:
        //: The unit of work: kilograms times seconds held.
        return tr("kg × seconds");
    }
    return tr("sets");
}

} // namespace morrow
