// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include <cmath>

using namespace morrow;
using namespace morrow::test;

namespace {

/// Any three days of a week three sets of fifteen, from a Monday on.
DiaryBuilder threeAWeek()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {perWeek(3, 15, 3), perWeek(4, 10, 3)}));
    return builder;
}

} // namespace

/// A dose that is due on any k days of a week.
class tst_weekly : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void expectedSessionsAreTheNearestWholeNumberOfTheShareOfTheWeek()
    {
        for (int k = 1; k <= 7; ++k) {
            for (int days = 1; days <= 7; ++days) {
                DiaryBuilder builder;
                builder.item(item("squat", "2026-03-02", {perWeek(2, 15, k)}));

                const Adherence found = adherence(builder, day("2026-03-02") + (days - 1));

                QCOMPARE(found.sessionsDue, std::lround(k * days / 7.0));
                QCOMPARE(found.setsDue, 2 * std::lround(k * days / 7.0));
            }
        }
    }

    void aPartOfAWeekThatIsTooShortExpectsNothing()
    {
        DiaryBuilder builder = threeAWeek(); // 3 x 1 / 7 rounds to none
        builder.sets("2026-03-02", "day", "squat", 3, 15);

        const Adherence found = adherence(builder, "2026-03-02");

        QCOMPARE(found.setsDue, 0);
        QCOMPARE(found.setsExtra, 3);
        QCOMPARE(found.setRatio, kNone);
        QVERIFY(!found.volumeUnit);
    }

    void ofAWeekTheBestDaysCount_data()
    {
        QTest::addColumn<std::vector<int>>("sets"); // of each day, from Monday on
        QTest::addColumn<int>("done");
        QTest::addColumn<int>("extra");
        QTest::addColumn<int>("attended");
        QTest::addColumn<int>("complete");

        QTest::newRow("any three days") << std::vector<int>{0, 3, 3, 0, 0, 0, 3} << 9 << 0 << 3 << 3;
        QTest::newRow("the three greatest of four") << std::vector<int>{1, 3, 2, 0, 3} << 8 << 1 << 3 << 2;
        QTest::newRow("a day counts up to its sets") << std::vector<int>{6, 6, 0, 0, 0, 0, 0} << 6 << 6 << 2 << 2;
        QTest::newRow("every day") << std::vector<int>{3, 3, 3, 3, 3, 3, 3} << 9 << 12 << 3 << 3;
        QTest::newRow("one set a day is no whole session") << std::vector<int>{1, 1, 1, 1, 1, 1, 1} << 3 << 4 << 3 << 0;
        QTest::newRow("nothing") << std::vector<int>{} << 0 << 0 << 0 << 0;
    }

    void ofAWeekTheBestDaysCount()
    {
        QFETCH(std::vector<int>, sets);
        QFETCH(int, done);
        QFETCH(int, extra);
        QFETCH(int, attended);
        QFETCH(int, complete);
        DiaryBuilder builder = threeAWeek();
        for (std::size_t i = 0; i < sets.size(); ++i)
            builder.sets(day("2026-03-02") + static_cast<int>(i), "day", "squat", sets[i], 15);

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.setsDue, 9);
        QCOMPARE(found.sessionsDue, 3);
        QCOMPARE(found.setsDone, done);
        QCOMPARE(found.setsExtra, extra);
        QCOMPARE(found.sessionsAttended, attended);
        QCOMPARE(found.sessionsComplete, complete);
        QCOMPARE(found.volumeDue, std::optional(135.0));
        QCOMPARE(found.volumeDone, std::optional(15.0 * done));
    }

    void ofAWeekTheGreatestVolumesCountWhicheverDaysTheyWere()
    {
        DiaryBuilder builder = threeAWeek();
        builder
            .sets("2026-03-02", "day", "squat", 3, 10) // 30
            .sets("2026-03-03", "day", "squat", 3, 12) // 36
            .sets("2026-03-04", "day", "squat", 1, 60) // 45 at most
            .sets("2026-03-05", "day", "squat", 2, 20); // 40

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.setsDone, 3 + 3 + 2);
        QCOMPARE(found.volumeDone, std::optional(45.0 + 40 + 36));
    }

    void setsOfExcludedDaysOfAWeekAreExtra()
    {
        DiaryBuilder builder = threeAWeek(); // of 5 days 2.14 sessions: 2
        builder.pause("2026-03-07", "2026-03-08").sets("2026-03-02", "day", "squat", 3, 15).sets("2026-03-08", "day", "squat", 3, 15);

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.sessionsDue, 2);
        QCOMPARE(found.setsDone, 3);
        QCOMPARE(found.setsExtra, 3);
        QCOMPARE(found.sessionsAttended, 1);
    }

    void aWeekIsCutWhereTheStageNumberChanges()
    {
        DiaryBuilder builder = threeAWeek(); // Monday to Wednesday 9/7: 1 of 3 sets; Thursday on 12/7: 2 of 4 sets
        builder.stage("2026-03-05", "squat", 2)
            .sets("2026-03-02", "day", "squat", 3, 15)
            .sets("2026-03-03", "day", "squat", 3, 15)
            .sets("2026-03-05", "day", "squat", 4, 10);

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.sessionsDue, 1 + 2);
        QCOMPARE(found.setsDue, 1 * 3 + 2 * 4);
        QCOMPARE(found.setsDone, 3 + 4);
        QCOMPARE(found.setsExtra, 3);
        QCOMPARE(found.sessionsAttended, 1 + 1);
        QCOMPARE(found.volumeDue, std::optional(45.0 + 80));
    }

    void aChangeToTheSameStageCutsNoWeek()
    {
        DiaryBuilder builder = threeAWeek();
        for (int i = 1; i < 7; ++i)
            builder.stage(day("2026-03-02") + i, "squat", 1);

        QCOMPARE(adherence(builder, "2026-03-08").sessionsDue, 3); // in seven parts it would be none
    }

    void aWeekMayTurnFromAnyDaysToTheDaysOfARule()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {perWeek(3, 15, 3), onDays(4, 10)})).stage("2026-03-05", "squat", 2);

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.sessionsDue, 1 + 4);
        QCOMPARE(found.setsDue, 3 + 16);
    }
};

MORROW_SUITE(tst_weekly)

#include "tst_weekly.moc"
