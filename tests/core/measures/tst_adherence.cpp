// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include "measures/statistics.h"

using namespace morrow;
using namespace morrow::test;

namespace {

const std::vector<std::string> kTwiceADay{"morning", "evening"};

/// Twice a day three sets of fifteen.
DiaryBuilder twiceADay()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15, "FREQ=DAILY", kTwiceADay)}));
    return builder;
}

} // namespace

/// How much of what was due was done.
class tst_adherence : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void oneDayIsCountedUpToWhatWasDue_data()
    {
        QTest::addColumn<int>("morning");
        QTest::addColumn<int>("noon"); // a slot that is not prescribed
        QTest::addColumn<int>("evening");
        QTest::addColumn<int>("done");
        QTest::addColumn<int>("extra");
        QTest::addColumn<int>("attended");
        QTest::addColumn<int>("complete");

        QTest::newRow("nothing") << 0 << 0 << 0 << 0 << 0 << 0 << 0;
        QTest::newRow("as prescribed") << 3 << 0 << 3 << 6 << 0 << 2 << 2;
        QTest::newRow("one short") << 3 << 0 << 2 << 5 << 0 << 2 << 1;
        QTest::newRow("one slot left out") << 3 << 0 << 0 << 3 << 0 << 1 << 1;
        QTest::newRow("six in one slot") << 6 << 0 << 0 << 6 << 0 << 1 << 1;
        QTest::newRow("seven") << 4 << 0 << 3 << 6 << 1 << 2 << 2;
        QTest::newRow("another slot counts for the day") << 3 << 3 << 0 << 6 << 0 << 2 << 2;
        QTest::newRow("three slots are two sessions") << 3 << 3 << 3 << 6 << 3 << 2 << 2;
        QTest::newRow("sets of three slots, none whole") << 2 << 2 << 2 << 6 << 0 << 2 << 0;
    }

    void oneDayIsCountedUpToWhatWasDue()
    {
        QFETCH(int, morning);
        QFETCH(int, noon);
        QFETCH(int, evening);
        QFETCH(int, done);
        QFETCH(int, extra);
        QFETCH(int, attended);
        QFETCH(int, complete);
        DiaryBuilder builder = twiceADay();
        builder.sets("2026-03-02", "morning", "squat", morning, 15)
            .sets("2026-03-02", "noon", "squat", noon, 15)
            .sets("2026-03-02", "evening", "squat", evening, 15);

        const Adherence found = adherence(builder, "2026-03-02");

        QCOMPARE(found.setsDue, 6);
        QCOMPARE(found.setsDone, done);
        QCOMPARE(found.setsExtra, extra);
        QCOMPARE(found.sessionsDue, 2);
        QCOMPARE(found.sessionsAttended, attended);
        QCOMPARE(found.sessionsComplete, complete);
        QCOMPARE(found.setRatio, std::optional(done / 6.0));
        QCOMPARE(found.sessionRatio, std::optional(attended / 2.0));
        QVERIFY(found.sessionInterval == wilson(attended, 2));
    }

    void aSetOfNoRepsIsNotDone()
    {
        DiaryBuilder builder = twiceADay();
        builder.set("2026-03-02", "morning", "squat", 1, 0)
            .set("2026-03-02", "morning", "squat", 2, 1)
            .set("2026-03-02", "evening", "squat", 1, 0);

        const Adherence found = adherence(builder, "2026-03-02");

        QCOMPARE(found.setsDone, 1);
        QCOMPARE(found.sessionsAttended, 1);
        QCOMPARE(found.volumeDone, std::optional(1.0));
    }

    void aDayThatIsMissedIsNotMadeUpForOnAnother()
    {
        DiaryBuilder builder = twiceADay();
        builder.sets("2026-03-02", "morning", "squat", 6, 15).sets("2026-03-02", "evening", "squat", 6, 15);

        const Adherence found = adherence(builder, "2026-03-03");

        QCOMPARE(found.setsDue, 12);
        QCOMPARE(found.setsDone, 6);
        QCOMPARE(found.setsExtra, 6);
        QCOMPARE(found.sessionsAttended, 2);
        QCOMPARE(found.volumeDone, std::optional(90.0));
        QCOMPARE(found.volumeRatio, std::optional(0.5));
    }

    void setsOfDaysOnWhichNothingWasDueAreExtra()
    {
        DiaryBuilder builder;
        builder.item(until(item("squat", "2026-03-02", {onDays(3, 15, "FREQ=DAILY;INTERVAL=2")}), "2026-03-08"))
            .item(item("press", "2026-03-01", {onDays(3, 15)})) // so that the window begins a day earlier
            .pause("2026-03-06", "2026-03-06")
            .sets("2026-03-01", "morning", "squat", 1, 15) // before its start
            .sets("2026-03-03", "morning", "squat", 2, 15) // between
            .sets("2026-03-06", "morning", "squat", 3, 15) // in a pause
            .sets("2026-03-10", "morning", "squat", 4, 15); // after its end

        const Adherence found = adherence(builder, "2026-03-12");

        QCOMPARE(found.setsDue, 9);
        QCOMPARE(found.setsDone, 0);
        QCOMPARE(found.setsExtra, 10);
        QCOMPARE(found.sessionsAttended, 0);
        QCOMPARE(found.volumeDone, std::optional(0.0));
    }

    void nothingDueGivesNoRatioAndAVolumeOfNothing()
    {
        DiaryBuilder builder = twiceADay();
        builder.pause("2026-03-02", "2026-03-08").sets("2026-03-03", "morning", "squat", 3, 15);

        const Adherence found = adherence(builder, "2026-03-08");

        QCOMPARE(found.setsDue, 0);
        QCOMPARE(found.setsExtra, 3);
        QCOMPARE(found.setRatio, kNone);
        QCOMPARE(found.sessionRatio, kNone);
        QCOMPARE(found.volumeRatio, kNone);
        QVERIFY(!found.sessionInterval);
        QCOMPARE(found.volumeDue, std::optional(0.0));
        QCOMPARE(found.volumeDone, std::optional(0.0));
        QVERIFY(!found.volumeUnit);
    }

    void onlyTheWindowAndNothingAfterItIsCounted()
    {
        DiaryBuilder builder = twiceADay();
        for (int i = -2; i < 12; ++i)
            builder.sets(day("2026-03-02") + i, "morning", "squat", 3, 15).skip(day("2026-03-02") + i, "evening");

        const Adherence found = adherence(builder, "2026-03-08", "2026-03-04");

        QCOMPARE(found.setsDue, 5 * 6);
        QCOMPARE(found.setsDone, 5 * 3);
        QCOMPARE(found.setsExtra, 0);
        QCOMPARE(found.skips, 5);
    }

    void volumeOfMixedUnitsIsUnknownIfSetsOfBothWereDue()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(3, 15), loaded(onDays(3, 15), "5")})).stage("2026-03-05", "squat", 2);

        const Adherence mixed = adherence(builder, "2026-03-08");
        const Adherence one = adherence(builder, "2026-03-08", "2026-03-05");
        builder.pause("2026-03-05", "2026-03-08"); // nothing of stage 2 was due
        const Adherence paused = adherence(builder, "2026-03-08");

        QCOMPARE(mixed.volumeDue, kNone);
        QCOMPARE(mixed.volumeDone, kNone);
        QCOMPARE(mixed.volumeRatio, kNone);
        QVERIFY(!mixed.volumeUnit);
        QCOMPARE(mixed.setRatio, std::optional(0.0));
        QVERIFY(one.volumeUnit == VolumeUnit::KgReps);
        QCOMPARE(one.volumeDue, std::optional(4 * 3 * 15 * 5.0));
        QVERIFY(paused.volumeUnit == VolumeUnit::Reps);
        QCOMPARE(paused.volumeDue, std::optional(3 * 45.0));
    }

    void volumeOfAnUnknownBodyMassIsUnknown()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {loaded(onDays(3, 10), "0", "0.5")})).sets("2026-03-02", "morning", "squat", 3, 10);
        const Adherence unknown = adherence(builder, "2026-03-02");
        builder.setting("body_mass_kg", "70");
        const Adherence known = adherence(builder, "2026-03-02");

        QCOMPARE(unknown.volumeDue, kNone);
        QCOMPARE(unknown.volumeRatio, kNone);
        QVERIFY(!unknown.volumeUnit);
        QCOMPARE(unknown.setRatio, std::optional(1.0));
        QCOMPARE(known.volumeDue, std::optional(1050.0));
        QCOMPARE(known.volumeRatio, std::optional(1.0));
    }

    void heavierSetsDoNotHideMissedOnes()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {loaded(onDays(3, 10), "5")}))
            .sets("2026-03-02", "morning", "squat", 3, 10, {.loadKg = "20"})
            .sets("2026-03-03", "morning", "squat", 1, 10, {.loadKg = "4"});

        const Adherence found = adherence(builder, "2026-03-03");

        QCOMPARE(found.volumeDue, std::optional(300.0));
        QCOMPARE(found.volumeDone, std::optional(150.0 + 40));
    }

    void skipsAndBadDayDosesCountWhereTheItemWasDue()
    {
        DiaryBuilder builder = twiceADay();
        builder.item(until(item("press", "2026-03-02", {perWeek(3, 15, 3)}), "2026-03-05"))
            .pause("2026-03-06", "2026-03-06")
            .skip("2026-03-02", "morning")
            .skip("2026-03-02", "evening")
            .skip("2026-03-03", "noon") // no slot of an item
            .skip("2026-03-04", "day") // that of the item by the week
            .skip("2026-03-06", "morning") // in the pause
            .skip("2026-03-07", "day") // after the end
            .easier("2026-03-07", "evening")
            .easier("2026-03-05", "day");

        const auto items = measured(builder, "2026-03-08").items;

        QCOMPARE(items[0].adherence.skips, 2);
        QCOMPARE(items[0].adherence.easier, 1);
        QCOMPARE(items[1].adherence.skips, 1);
        QCOMPARE(items[1].adherence.easier, 1);
        QCOMPARE(items[0].adherence.setsDue, 6 * 6); // what was due stays due
    }

    void daysThatALatePauseCoversStandBesideTheRatios()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(3, 15, "FREQ=DAILY;INTERVAL=2")}))
            .item(item("press", "2026-03-02", {perWeek(3, 15, 3)}))
            .pause("2026-03-03", "2026-03-06", {.recorded = "2026-03-06T12:00:00Z"});

        const auto items = measured(builder, "2026-03-08").items;

        QCOMPARE(items[0].adherence.away, 1); // the 4th; the 6th is excluded, the others were not due
        QCOMPARE(items[0].adherence.setsDue, 3 * 3);
        QCOMPARE(items[1].adherence.away, 3);
        QCOMPARE(items[1].adherence.sessionsDue, 3); // 18/7
        QCOMPARE(measured(builder, "2026-03-08", "2026-03-05").items[1].adherence.away, 1);
    }

    void allIsTheSumOverItems()
    {
        DiaryBuilder builder = twiceADay();
        builder.item(item("press", "2026-03-02", {perWeek(2, 15, 7)}))
            .sets("2026-03-02", "morning", "squat", 4, 15)
            .sets("2026-03-02", "day", "press", 1, 15);

        const AdherenceOfAll all = measured(builder, "2026-03-02").all;

        QCOMPARE(all.setsDue, 6 + 2);
        QCOMPARE(all.setsDone, 4 + 1);
        QCOMPARE(all.setsExtra, 0);
        QCOMPARE(all.sessionsDue, 2 + 1);
        QCOMPARE(all.sessionsAttended, 1 + 1);
        QCOMPARE(all.sessionsComplete, 1);
        QCOMPARE(all.setRatio, std::optional(5.0 / 8));
        QCOMPARE(all.sessionRatio, std::optional(2.0 / 3));
    }
};

MORROW_SUITE(tst_adherence)

#include "tst_adherence.moc"
