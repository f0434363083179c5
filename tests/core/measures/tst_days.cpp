// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include "measures/days.h"

using namespace morrow;
using namespace morrow::test;

namespace {

using Versions = std::vector<std::tuple<std::string, std::string, std::string>>; ///< from, to ("-": withdrawn), recorded ("": paper)

/// The days of the first item, each as a letter: d due, a due and away, - not due.
std::string pattern(const DiaryBuilder &builder, Day from, Day to)
{
    const Diary diary = builder.diary();
    const ComplaintDiary &complaint = diary.complaints().front();
    const Window window{std::min<CivilDay>(from, *complaint.firstStart()), from, to};
    std::string letters;
    for (const ItemDay &day : itemDays(complaint.items.front(), interruptions(diary.pauses(), complaint, window), window))
        letters += day.away ? 'a' : day.due ? 'd' : '-';
    return letters;
}

} // namespace

/// Which days count, and on which of them an item is due.
class tst_days : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void weeksAreCountedFromTheFirstStartAndCutToTheWindow()
    {
        const auto weeks = weeksOf({day("2026-03-04"), day("2026-03-13"), day("2026-03-25")});

        QCOMPARE(weeks.size(), 3);
        QCOMPARE(weeks[0].number, 1);
        QCOMPARE(weeks[0].start, day("2026-03-11"));
        QCOMPARE(weeks[0].first, day("2026-03-13"));
        QCOMPARE(weeks[0].last, day("2026-03-17"));
        QVERIFY(!weeks[0].isWhole());
        QVERIFY(weeks[1].isWhole());
        QCOMPARE(weeks[2].number, 3);
        QCOMPARE(weeks[2].first, day("2026-03-25"));
        QCOMPARE(weeks[2].last, day("2026-03-25"));
    }

    void stageIsThatOfTheLatestChangeOnOrBeforeTheDay_data()
    {
        QTest::addColumn<std::string>("on");
        QTest::addColumn<int>("stage");
        QTest::addColumn<std::string>("began");

        QTest::newRow("before the start") << std::string("2026-02-20") << 1 << std::string("2026-03-02");
        QTest::newRow("a change before the start begins on the start") << std::string("2026-03-02") << 2 << std::string("2026-03-02");
        QTest::newRow("the day before a change") << std::string("2026-03-09") << 2 << std::string("2026-03-02");
        QTest::newRow("the day of a change") << std::string("2026-03-10") << 3 << std::string("2026-03-10");
        QTest::newRow("restarted by a change to the same stage") << std::string("2026-03-20") << 3 << std::string("2026-03-18");
        QTest::newRow("a step back") << std::string("2026-03-22") << 1 << std::string("2026-03-22");
        QTest::newRow("after a change to a stage that the item does not have")
            << std::string("2026-03-26") << 1 << std::string("2026-03-22");
        QTest::newRow("after the end") << std::string("2026-04-20") << 2 << std::string("2026-04-10");
    }

    void stageIsThatOfTheLatestChangeOnOrBeforeTheDay()
    {
        QFETCH(std::string, on);
        QFETCH(int, stage);
        QFETCH(std::string, began);
        const Diary diary = DiaryBuilder()
                                .item(until(item("squat", "2026-03-02", {onDays(3, 15), onDays(4, 10), onDays(5, 8)}), "2026-03-31"))
                                .stage("2026-03-10", "squat", 3)
                                .stage("2026-02-25", "squat", 2)
                                .stage("2026-03-18", "squat", 3)
                                .stage("2026-03-22", "squat", 1)
                                .stage("2026-03-25", "squat", 4)
                                .stage("2026-03-26", "squat", 0)
                                .stage("2026-04-10", "squat", 2)
                                .diary();

        const StageInForce found = stageOn(diary.complaints().front().items.front(), day(on));

        QCOMPARE(found.number, stage);
        QCOMPARE(found.began, day(began));
    }

    void ofTwoChangesOnOneDayTheLaterRecordedIsInForce()
    {
        const DiaryBuilder builder = DiaryBuilder()
                                         .item(item("squat", "2026-03-02", {onDays(3, 15), onDays(4, 10), onDays(5, 8)}))
                                         .stage("2026-03-10", "squat", 3, {.recorded = "2026-03-10T18:00:00+01:00"})
                                         .stage("2026-03-10", "squat", 2, {.recorded = "2026-03-10T19:00:00+01:00"});

        QCOMPARE(measured(builder, "2026-03-12").items[0].stage, 2);
    }

    void anItemIsDueFromItsStartToItsEnd()
    {
        const DiaryBuilder builder = DiaryBuilder().item(until(item("squat", "2026-03-03", {onDays(3, 15)}), "2026-03-06"));

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-08"), std::string("--dddd--"));
    }

    void anItemByTheWeekIsDueFromItsStartToItsEnd()
    {
        const DiaryBuilder builder = DiaryBuilder().item(until(item("squat", "2026-03-03", {perWeek(3, 15, 3)}), "2026-03-06"));

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-08"), std::string("--dddd--"));
    }

    void aRuleKeepsItsPhaseThroughStageChangesAndPauses_data()
    {
        QTest::addColumn<std::string>("rule");
        QTest::addColumn<std::string>("expected");

        // 2026-03-02 is a Monday; stage 2 begins on the 7th; the 10th to the 12th are a pause.
        QTest::newRow("every other day") << std::string("FREQ=DAILY;INTERVAL=2") << std::string("d-d-d-d-----d-d-");
        QTest::newRow("every third day") << std::string("FREQ=DAILY;INTERVAL=3") << std::string("d--d--d-----d--d");
        QTest::newRow("once a week on the weekday of the start") << std::string("FREQ=WEEKLY") << std::string("d------d------d-");
        QTest::newRow("a start that does not match is not due")
            << std::string("FREQ=WEEKLY;BYDAY=TU,FR") << std::string("-d--d------d---d");
        QTest::newRow("daily, filtered by weekday") << std::string("FREQ=DAILY;BYDAY=SA") << std::string("-----d------d---");
    }

    void aRuleKeepsItsPhaseThroughStageChangesAndPauses()
    {
        QFETCH(std::string, rule);
        QFETCH(std::string, expected);
        const DiaryBuilder builder = DiaryBuilder()
                                         .item(item("squat", "2026-03-02", {onDays(3, 15, rule), onDays(4, 10, rule)}))
                                         .stage("2026-03-07", "squat", 2)
                                         .pause("2026-03-10", "2026-03-12");

        QCOMPARE(pattern(builder, "2026-03-02", "2026-03-17"), expected);
    }

    void aPauseExcludesWhatItCoveredInTheVersionThatStoodOnTheDay_data()
    {
        QTest::addColumn<Versions>("versions"); // each corrects the one before
        QTest::addColumn<std::string>("expected"); // 1 to 12 March

        QTest::newRow("typed in from paper: all its days, both ends included")
            << Versions{{"2026-03-03", "2026-03-06", ""}} << std::string("dd----dddddd");
        QTest::newRow("recorded before it began: all its days")
            << Versions{{"2026-03-03", "2026-03-06", "2026-02-20T12:00:00Z"}} << std::string("dd----dddddd");
        QTest::newRow("recorded on its third day: the two days before are away")
            << Versions{{"2026-03-03", "2026-03-06", "2026-03-05T12:00:00Z"}} << std::string("ddaa--dddddd");
        QTest::newRow("recorded after it was over: all its days are away")
            << Versions{{"2026-03-03", "2026-03-06", "2026-03-10T12:00:00Z"}} << std::string("ddaaaadddddd");
        QTest::newRow("recorded at 03:00: the evening before")
            << Versions{{"2026-03-03", "2026-03-06", "2026-03-05T03:00:00Z"}} << std::string("dda---dddddd");
        QTest::newRow("extended in time: all its days")
            << Versions{{"2026-03-03", "2026-03-06", "2026-03-01T12:00:00Z"}, {"2026-03-03", "2026-03-09", "2026-03-06T12:00:00Z"}}
            << std::string("dd-------ddd");
        QTest::newRow("extended too late: it keeps what it had, the days between are away")
            << Versions{{"2026-03-03", "2026-03-05", "2026-03-01T12:00:00Z"}, {"2026-03-03", "2026-03-10", "2026-03-08T12:00:00Z"}}
            << std::string("dd---aa---dd");
        QTest::newRow("shortened while it ran: it keeps what it had") << Versions{{"2026-03-03", "2026-03-10", "2026-03-01T12:00:00Z"},
            {"2026-03-03", "2026-03-05", "2026-03-08T12:00:00Z"}} << std::string("dd-----ddddd");
        QTest::newRow("withdrawn while it ran: it keeps what it had, and no day is away")
            << Versions{{"2026-03-03", "2026-03-10", "2026-03-01T12:00:00Z"}, {"2026-03-03", "-", "2026-03-06T12:00:00Z"}}
            << std::string("dd---ddddddd");
        QTest::newRow("withdrawn on paper: as if it had never been")
            << Versions{{"2026-03-03", "2026-03-10", ""}, {"2026-03-03", "-", ""}} << std::string("dddddddddddd");
        QTest::newRow("on paper, extended late: the paper version stood until then") << Versions{{"2026-03-03", "2026-03-04", ""},
            {"2026-03-03", "2026-03-07", "2026-03-06T12:00:00Z"}} << std::string("dd--a--ddddd");
        QTest::newRow("three versions") << Versions{{"2026-03-02", "2026-03-12", "2026-03-01T12:00:00Z"},
            {"2026-03-02", "2026-03-03", "2026-03-05T12:00:00Z"}, {"2026-03-02", "2026-03-11", "2026-03-08T12:00:00Z"}}
                                        << std::string("d---aaa----d");
        QTest::newRow("of three, the one between recorded last") << Versions{{"2026-03-02", "2026-03-12", "2026-03-01T12:00:00Z"},
            {"2026-03-02", "2026-03-03", "2026-03-08T12:00:00Z"}, {"2026-03-02", "2026-03-05", "2026-03-04T12:00:00Z"}}
                                                                 << std::string("d----ddddddd");
        QTest::newRow("a correction whose clock was behind stands from its own day on")
            << Versions{{"2026-03-03", "2026-03-10", "2026-03-06T12:00:00Z"}, {"2026-03-03", "2026-03-05", "2026-03-02T12:00:00Z"}}
            << std::string("dd---ddddddd");
    }

    void aPauseExcludesWhatItCoveredInTheVersionThatStoodOnTheDay()
    {
        QFETCH(Versions, versions);
        QFETCH(std::string, expected);
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-01", {onDays(3, 15)}));
        std::string replaces;
        for (const auto &[from, to, recorded] : versions) {
            const std::string id = "after-" + replaces;
            builder.pause(
                day(from), day(to == "-" ? from : to), {.id = id, .recorded = recorded, .replaces = replaces, .withdraws = to == "-"});
            replaces = id;
        }

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-12"), expected);
    }

    void aDayInTwoPausesIsExcludedIfOneOfThemStood()
    {
        const DiaryBuilder builder = DiaryBuilder()
                                         .item(item("squat", "2026-03-01", {onDays(3, 15)}))
                                         .pause("2026-03-02", "2026-03-05")
                                         .pause("2026-03-04", "2026-03-07", {.recorded = "2026-03-20T12:00:00Z"});

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-08"), std::string("d----aad"));
    }

    void aWindowSeesTheSamePauseWhereverItBegins()
    {
        const DiaryBuilder builder = DiaryBuilder()
                                         .item(item("squat", "2026-03-01", {onDays(3, 15)}))
                                         .pause("2026-03-03", "2026-03-08", {.id = "a", .recorded = "2026-03-05T12:00:00Z"})
                                         .pause("2026-03-03", "2026-03-10", {.recorded = "2026-03-10T12:00:00Z", .replaces = "a"});

        const std::string whole = pattern(builder, "2026-03-01", "2026-03-12");

        QCOMPARE(whole, std::string("ddaa----a-dd"));
        for (int first = 1; first < 12; ++first)
            QCOMPARE(pattern(builder, day("2026-03-01") + first, "2026-03-12"), whole.substr(static_cast<std::size_t>(first)));
    }

    void aComplaintThatIsPutAsideIsDueNoMore_data()
    {
        QTest::addColumn<std::string>("recorded");
        QTest::addColumn<std::string>("expected");

        QTest::newRow("typed in from paper: from its day on") << std::string() << std::string("dd----");
        QTest::newRow("recorded before: from its day on") << std::string("2026-02-20T12:00:00Z") << std::string("dd----");
        QTest::newRow("recorded later: not before the diary day of its recording")
            << std::string("2026-03-05T12:00:00Z") << std::string("dddd--");
    }

    void aComplaintThatIsPutAsideIsDueNoMore()
    {
        QFETCH(std::string, recorded);
        QFETCH(std::string, expected);
        const DiaryBuilder builder
            = DiaryBuilder().item(item("squat", "2026-03-01", {onDays(3, 15)})).putAside("2026-03-03", {.recorded = recorded});

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-06"), expected);
    }

    void anItemRestsOnTheDaysThatBeginWithAVisit_data()
    {
        QTest::addColumn<int>("restDays");
        QTest::addColumn<std::string>("expected"); // 1 to 8 March; visits on 28 February, 3 and 4 March

        QTest::newRow("one day") << 1 << std::string("dd--dddd");
        QTest::newRow("two days") << 2 << std::string("-d---ddd");
        QTest::newRow("three days") << 3 << std::string("------dd");
    }

    void anItemRestsOnTheDaysThatBeginWithAVisit()
    {
        QFETCH(int, restDays);
        QFETCH(std::string, expected);
        DiaryBuilder builder;
        builder.planSetting(Field::RestDaysAfterVisit, Decimal::whole(restDays))
            .item(restingAfterVisits(item("squat", "2026-03-01", {onDays(3, 15)})))
            .visit("2026-02-28")
            .visit("2026-03-03")
            .visit("2026-03-04");

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-08"), expected);
    }

    void anItemThatDoesNotRestIsDueOnTheDayOfAVisit()
    {
        DiaryBuilder builder;
        builder.planSetting(Field::RestDaysAfterVisit, Decimal::whole(2))
            .item(item("squat", "2026-03-01", {onDays(3, 15)}))
            .visit("2026-03-02");

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-04"), std::string("dddd"));
    }

    void aVisitOfAnotherComplaintGivesNoRestAndAPauseIsShared()
    {
        DiaryBuilder builder;
        builder.planSetting(Field::RestDaysAfterVisit, Decimal::whole(2))
            .item(restingAfterVisits(item("squat", "2026-03-01", {onDays(3, 15)})))
            .complaint("shoulder")
            .item(item("press", "2026-03-01", {onDays(3, 15)}))
            .visit("2026-03-02")
            .pause("2026-03-04", "2026-03-05");

        QCOMPARE(pattern(builder, "2026-03-01", "2026-03-06"), std::string("ddd--d"));
    }

    void aSorenessDayIsOneOfThoseAfterAVisit()
    {
        const SorenessDays soreness({day("2026-03-02"), day("2026-03-03"), day("2026-03-20")}, 2);

        QVERIFY(!soreness.holds(day("2026-03-02")));
        QVERIFY(soreness.holds(day("2026-03-03"))); // of the visit on the 2nd
        QVERIFY(soreness.holds(day("2026-03-05")));
        QVERIFY(!soreness.holds(day("2026-03-06")));
        QVERIFY(!soreness.holds(day("2026-03-20")));
        QVERIFY(soreness.holds(day("2026-03-22")));
        QVERIFY(!SorenessDays({day("2026-03-02")}, 0).holds(day("2026-03-03")));
    }
};

MORROW_SUITE(tst_days)

#include "tst_days.moc"
