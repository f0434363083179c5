// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

std::vector<ItemWeek> weeks(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measured(builder, to, from).items.at(0).weeks;
}

Stage withTempo(Stage stage, int up, int pause, int down)
{
    stage.dose.upSeconds = up;
    stage.dose.pauseSeconds = pause;
    stage.dose.downSeconds = down;
    return stage;
}

/// Every day three sets of ten with a load of 2 kg.
DiaryBuilder everyDay()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-04", {loaded(withTempo(onDays(3, 10), 3, 0, 3), "2")}));
    return builder;
}

} // namespace

/// How much an item was loaded, week by week.
class tst_load : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aWeekHoldsAllDoneSetsAndWhatWasDue()
    {
        DiaryBuilder builder = everyDay();
        builder
            .sets("2026-03-04", "morning", "squat", 5, 10) // two extra
            .sets("2026-03-10", "noon", "squat", 2, 8, {.loadKg = "3"})
            .set("2026-03-10", "noon", "squat", 3, 0) // not done
            .sets("2026-03-11", "morning", "squat", 1, 1);

        const auto found = weeks(builder, "2026-03-11");

        QCOMPARE(found.size(), 2);
        QCOMPARE(found[0].week, 0);
        QCOMPARE(found[0].start, day("2026-03-04"));
        QCOMPARE(found[0].setsDue, 21);
        QCOMPARE(found[0].setsDone, 3 + 2);
        QCOMPARE(found[0].sets, 7);
        QCOMPARE(found[0].reps, 50 + 16);
        QCOMPARE(found[0].volume, std::optional(100.0 + 48));
        QVERIFY(found[0].volumeUnit == VolumeUnit::KgReps);
        QCOMPARE(found[0].tensionSeconds.value_or(-1), 66 * 6);
        QCOMPARE(found[1].week, 1);
        QCOMPARE(found[1].setsDue, 3);
        QCOMPARE(found[1].reps, 1);
    }

    void aCutWeekKeepsItsNumberAndStart()
    {
        const auto found = weeks(everyDay(), "2026-03-20", "2026-03-13");

        QCOMPARE(found.size(), 2);
        QCOMPARE(found[0].week, 1);
        QCOMPARE(found[0].start, day("2026-03-11"));
        QCOMPARE(found[0].setsDue, 5 * 3);
        QCOMPARE(found[1].start, day("2026-03-18"));
        QCOMPARE(found[1].setsDue, 3 * 3);
    }

    void weeksWithoutASetHoldNothingAndNoUnit()
    {
        const auto found = weeks(everyDay(), "2026-03-10");

        QCOMPARE(found[0].sets, 0);
        QCOMPARE(found[0].volume, std::optional(0.0));
        QVERIFY(!found[0].volumeUnit);
        QCOMPARE(found[0].tensionSeconds.value_or(-1), 0);
    }

    void weeksBeforeTheStartAreThereAndThoseAfterTheEndAreNot_data()
    {
        QTest::addColumn<std::string>("end");
        QTest::addColumn<std::string>("from");
        QTest::addColumn<int>("first");
        QTest::addColumn<int>("count");

        QTest::newRow("ends in the middle of a week") << std::string("2026-03-19") << std::string("2026-03-04") << 0 << 3;
        QTest::newRow("ends with a week") << std::string("2026-03-17") << std::string("2026-03-04") << 0 << 2;
        QTest::newRow("only the days before the window are before its end")
            << std::string("2026-03-19") << std::string("2026-03-20") << 2 << 0;
        QTest::newRow("one day of the window is before its end") << std::string("2026-03-19") << std::string("2026-03-19") << 2 << 1;
    }

    void weeksBeforeTheStartAreThereAndThoseAfterTheEndAreNot()
    {
        QFETCH(std::string, end);
        QFETCH(std::string, from);
        QFETCH(int, first);
        QFETCH(int, count);
        DiaryBuilder builder;
        builder.item(until(item("squat", "2026-03-12", {onDays(3, 10)}), day(end))).item(item("press", "2026-03-04", {onDays(3, 10)}));
        builder.sets("2026-04-01", "morning", "squat", 1, 10); // after the end

        const auto found = weeks(builder, "2026-04-10", day(from));

        QCOMPARE(found.size(), count);
        if (count > 0)
            QCOMPARE(found[0].week, first);
        if (first == 0) {
            QCOMPARE(found[0].setsDue, 0); // the item starts in the week after
            QCOMPARE(found[1].setsDue, 18);
        }
    }

    void setsAreCountedByTheStageOfTheirDay()
    {
        DiaryBuilder builder;
        builder
            .item(item("squat", "2026-03-04",
                {withTempo(onDays(3, 10), 1, 0, 1), loaded(withTempo(onDays(3, 10), 2, 0, 2), "4"), loaded(onDays(3, 10), "5")}))
            .stage("2026-03-06", "squat", 2)
            .stage("2026-03-18", "squat", 3)
            .sets("2026-03-05", "morning", "squat", 1, 10)
            .sets("2026-03-06", "morning", "squat", 1, 10)
            .sets("2026-03-17", "morning", "squat", 1, 10)
            .sets("2026-03-20", "morning", "squat", 1, 10);

        const auto found = weeks(builder, "2026-03-31");

        QCOMPARE(found[0].volume, kNone); // reps and kg.reps
        QVERIFY(!found[0].volumeUnit);
        QCOMPARE(found[0].tensionSeconds.value_or(-1), 20 + 40);
        QCOMPARE(found[1].volume, std::optional(40.0));
        QCOMPARE(found[1].tensionSeconds.value_or(-1), 40);
        QCOMPARE(found[2].volume, std::optional(50.0));
        QVERIFY(!found[2].tensionSeconds); // stage 3 has no tempo
    }

    void volumeChangeNeedsTwoWholeWeeksOfOneUnit_data()
    {
        QTest::addColumn<int>("before"); // reps in the week before
        QTest::addColumn<int>("now");
        QTest::addColumn<std::string>("from");
        QTest::addColumn<std::string>("to");
        QTest::addColumn<std::optional<double>>("change"); // of week 1

        const std::string start = "2026-03-04";
        const std::string end = "2026-03-17";
        QTest::newRow("more") << 40 << 50 << start << end << std::optional(0.25);
        QTest::newRow("less") << 40 << 10 << start << end << std::optional(-0.75);
        QTest::newRow("as much") << 40 << 40 << start << end << std::optional(0.0);
        QTest::newRow("nothing before") << 0 << 10 << start << end << kNone;
        QTest::newRow("nothing now") << 40 << 0 << start << end << kNone;
        QTest::newRow("the week before is cut") << 40 << 50 << std::string("2026-03-05") << end << kNone;
        QTest::newRow("this week is cut") << 40 << 50 << start << std::string("2026-03-16") << kNone;
        QTest::newRow("the week before is not in the window") << 40 << 50 << std::string("2026-03-11") << end << kNone;
    }

    void volumeChangeNeedsTwoWholeWeeksOfOneUnit()
    {
        QFETCH(int, before);
        QFETCH(int, now);
        QFETCH(std::string, from);
        QFETCH(std::string, to);
        QFETCH(std::optional<double>, change);
        DiaryBuilder builder = everyDay();
        builder.set("2026-03-06", "morning", "squat", 1, before).set("2026-03-12", "morning", "squat", 1, now);

        const auto found = weeks(builder, day(to), day(from));

        QVERIFY(found.back().week == 1);
        QCOMPARE(found.back().volumeChange, change);
        QCOMPARE(found.front().week == 0 ? found.front().volumeChange : kNone, kNone);
    }

    void volumesOfTwoUnitsHaveNoChange()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-04", {onDays(3, 10), loaded(onDays(3, 10), "2"), loaded(onDays(3, 10), "0", "0.5")}))
            .stage("2026-03-11", "squat", 2)
            .stage("2026-03-25", "squat", 3);
        for (int week = 0; week < 5; ++week)
            builder.set(day("2026-03-04") + 7 * week, "morning", "squat", 1, 10);

        const auto found = weeks(builder, "2026-04-07");

        QCOMPARE(found[1].volumeChange, kNone); // kg.reps after reps
        QCOMPARE(found[2].volumeChange, std::optional(0.0));
        QCOMPARE(found[3].volumeChange, kNone); // of an unknown body mass
        QCOMPARE(found[4].volumeChange, kNone); // two unknowns
    }
};

MORROW_SUITE(tst_load)

#include "tst_load.moc"
