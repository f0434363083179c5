// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "base/civil_day.h"
#include "batch/program.h"
#include "batch/table_folder.h"
#include "support/reference_table.h"

#include <QJsonValue>

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

/// A published programme as a folder of tables: its plan, its stage changes, and a diary in which
/// every set was done as prescribed. Dose, weeks and rhythm come from the reference table.
class PerfectDiary
{
public:
    explicit PerfectDiary(std::string_view programme)
    {
        for (const ReferenceRow &row : referenceRows("programmes.csv")) {
            if (row.at("programme") == programme)
                addStage(row);
        }
        m_folder.write("plan.csv", QByteArray(kPlanHeader) + "\n" + m_plan);
        m_folder.write("stages.csv", "day,item,stage,reason\n" + m_stages);
        m_folder.write("sets.csv", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\n" + m_sets);
    }

    [[nodiscard]] QString path() const { return m_folder.path(); }
    [[nodiscard]] CivilDay start() const { return m_start; }
    [[nodiscard]] CivilDay end() const { return m_next - 1; }

private:
    void addStage(const ReferenceRow &row)
    {
        const int stage = wholeCell(row, "stage");
        const bool twice = wholeCell(row, "slots_per_day") == 2;
        const QByteArray rule = QByteArray::fromStdString(row.at("rrule"));
        const QByteArray slots = rule.isEmpty() ? "" : twice ? "morning evening" : "morning";
        const CivilDay first = m_next;
        m_next = m_next + 7 * wholeCell(row, "weeks");
        for (int exercise = 1; exercise <= wholeCell(row, "exercises"); ++exercise) {
            const QByteArray item = "exercise-" + QByteArray::number(exercise);
            const auto cell = [&row](const char *column) { return QByteArray::fromStdString(row.at(column)); };
            m_plan += item + ',' + item + ",," + cell("stage") + ',' + cell("sets") + ',' + cell("reps") + ",,,," + cell("up_s") + ','
                + cell("pause_s") + ',' + cell("down_s") + ",," + rule + ',' + slots + ',' + cell("per_week") + ','
                + QByteArray::fromStdString(m_start.toString()) + ",,,,0\n";
            if (stage > 1)
                m_stages += QByteArray::fromStdString(first.toString()) + ',' + item + ',' + cell("stage") + ",\n";
            for (CivilDay day = first; day < m_next; day = day + 1) {
                if (!isDue(rule, day))
                    continue;
                addSets(day, rule.isEmpty() ? "day" : "morning", item, row);
                if (twice)
                    addSets(day, "evening", item, row);
            }
        }
    }

    /// Every day, every other day, or Monday, Wednesday and Friday for three times a week.
    [[nodiscard]] bool isDue(const QByteArray &rule, CivilDay day) const
    {
        if (rule.isEmpty())
            return day.weekday() == 0 || day.weekday() == 2 || day.weekday() == 4;
        return rule == "FREQ=DAILY" || (day - m_start) % 2 == 0;
    }

    void addSets(CivilDay day, const char *slot, const QByteArray &item, const ReferenceRow &row)
    {
        for (int set = 1; set <= wholeCell(row, "sets"); ++set) {
            m_sets += ',' + QByteArray::fromStdString(day.toString()) + ',' + slot + ',' + item + ',' + QByteArray::number(set) + ','
                + QByteArray::fromStdString(row.at("reps")) + ",,,\n";
        }
    }

    TableFolder m_folder;
    const CivilDay m_start = *CivilDay::parse("2026-01-05"); // a Monday
    CivilDay m_next = m_start;
    QByteArray m_plan;
    QByteArray m_stages;
    QByteArray m_sets;
};

QJsonObject measured(const QString &path, CivilDay from, CivilDay to)
{
    const Outcome outcome = run({QStringLiteral("measure"), path, QStringLiteral("--from"), QString::fromStdString(from.toString()),
        QStringLiteral("--as-of"), QString::fromStdString(to.toString())});
    if (outcome.status != 0)
        QTest::qFail(outcome.err.constData(), __FILE__, __LINE__);
    return outcome.object()[QLatin1String("complaints")][0].toObject();
}

/// The repetitions of all items in week \a week of what was measured, or in all weeks.
int repsOf(const QJsonObject &complaint, int week = -1)
{
    int reps = 0;
    const QJsonArray items = complaint[QLatin1String("items")].toArray();
    for (const QJsonValue &item : items) {
        const QJsonArray weeks = item[QLatin1String("weeks")].toArray();
        for (const QJsonValue &each : weeks) {
            if (week < 0 || each[QLatin1String("week")].toInt() == week)
                reps += each[QLatin1String("reps")].toInt();
        }
    }
    return reps;
}

} // namespace

/// `measure` on a perfect diary of a published programme prints the published totals.
class tst_published_totals : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aPerfectDiaryAddsUpToTheProgramme_data()
    {
        QTest::addColumn<int>("weeks");
        QTest::addColumn<int>("sets");
        QTest::addColumn<int>("reps");
        QTest::addColumn<int>("sessions");

        // Sessions are an item's: each exercise has its own.
        // Alfredson H et al. Am J Sports Med 1998;26:360-366
        QTest::newRow("alfredson") << 12 << 1008 << 15'120 << 2 * 2 * 84;
        // Beyer R et al. Am J Sports Med 2015;43:1704-1711
        QTest::newRow("beyer") << 12 << 405 << 3'501 << 3 * 3 * 12;
        // Kongsgaard M et al. Scand J Med Sci Sports 2009;19:790-802
        QTest::newRow("kongsgaard") << 12 << 432 << 3'852 << 3 * 3 * 12;
        // Rathleff MS et al. Scand J Med Sci Sports 2015;25:e292-300
        QTest::newRow("rathleff") << 12 << 189 << 1'652 << 42;
        // Holmgren T et al. BMJ 2012;344:e787
        QTest::newRow("holmgren") << 12 << 2100 << 31'500 << 5 * (2 * 56 + 28);
    }

    void aPerfectDiaryAddsUpToTheProgramme()
    {
        QFETCH(int, weeks);
        QFETCH(int, sets);
        QFETCH(int, reps);
        QFETCH(int, sessions);
        const PerfectDiary diary(QTest::currentDataTag());
        QCOMPARE(diary.end() - diary.start() + 1, 7 * weeks);

        const QJsonObject complaint = measured(diary.path(), diary.start(), diary.end());

        const QJsonObject all = complaint[QLatin1String("all")].toObject();
        QCOMPARE(all[QLatin1String("setsDue")].toInt(), sets);
        QCOMPARE(all[QLatin1String("setsDone")].toInt(), sets);
        QCOMPARE(all[QLatin1String("setsExtra")].toInt(), 0);
        QCOMPARE(all[QLatin1String("setRatio")].toDouble(), 1.0);
        QCOMPARE(all[QLatin1String("sessionsDue")].toInt(), sessions);
        QCOMPARE(all[QLatin1String("sessionsComplete")].toInt(), sessions);
        QCOMPARE(repsOf(complaint), reps);
    }

    // Alfredson H et al. Am J Sports Med 1998;26:360-366: 180 repetitions a day
    void alfredsonIs180RepsADayAnd1260AWeek()
    {
        const PerfectDiary diary("alfredson");

        for (CivilDay day = diary.start(); day <= diary.end(); day = day + 17)
            QCOMPARE(repsOf(measured(diary.path(), day, day)), 180);
        const QJsonObject whole = measured(diary.path(), diary.start(), diary.end());
        for (int week = 0; week < 12; ++week)
            QCOMPARE(repsOf(whole, week), 1'260);
    }

    // Newcombe RG. Stat Med 1998;17:857-872, Table I
    void sessionIntervalsAreNewcombes_data()
    {
        QTest::addColumn<int>("attended");
        QTest::addColumn<int>("due");
        QTest::addColumn<double>("lower");
        QTest::addColumn<double>("upper");

        for (const ReferenceRow &row : referenceRows("wilson.csv")) {
            QTest::addRow("%d of %d", wholeCell(row, "r"), wholeCell(row, "n"))
                << wholeCell(row, "r") << wholeCell(row, "n") << realCell(row, "lower") << realCell(row, "upper");
        }
    }

    void sessionIntervalsAreNewcombes()
    {
        QFETCH(int, attended);
        QFETCH(int, due);
        QFETCH(double, lower);
        QFETCH(double, upper);
        const CivilDay start = *CivilDay::parse("2025-01-06");
        TableFolder folder;
        folder.write("plan.csv", QByteArray(kPlanHeader) + "\nraise,raise,,1,1,10,,,,,,,,FREQ=DAILY,day,,2025-01-06,,,,0\n");
        QByteArray sets = "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\n";
        for (int i = 0; i < attended; ++i)
            sets += ',' + QByteArray::fromStdString((start + i).toString()) + ",day,raise,1,10,,,\n";
        folder.write("sets.csv", sets);

        const QJsonObject adherence
            = measured(folder.path(), start, start + (due - 1))[QLatin1String("items")][0][QLatin1String("adherence")].toObject();

        QCOMPARE(adherence[QLatin1String("sessionsAttended")].toInt(), attended);
        QCOMPARE(adherence[QLatin1String("sessionsDue")].toInt(), due);
        // The table has four decimals.
        const QJsonArray interval = adherence[QLatin1String("sessionInterval")].toArray();
        QVERIFY2(std::abs(interval[0].toDouble() - lower) <= 0.00005, QByteArray::number(interval[0].toDouble(), 'g', 17).constData());
        QVERIFY2(std::abs(interval[1].toDouble() - upper) <= 0.00005, QByteArray::number(interval[1].toDouble(), 'g', 17).constData());
    }
};

MORROW_SUITE(tst_published_totals)
#include "tst_published_totals.moc"
