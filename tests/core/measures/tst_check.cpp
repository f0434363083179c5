// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// A complaint whose plan starts on 2 March.
DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15)}));
    return builder;
}

CheckMeasures check(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measured(builder, to, from).check;
}

} // namespace

/// The daily question: how often it was answered, and what the answers come to.
class tst_check : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void itIsExpectedOnTheDaysOfItsRuleFromTheFirstStartOn_data()
    {
        QTest::addColumn<std::string>("rule");
        QTest::addColumn<std::string>("from");
        QTest::addColumn<int>("expected"); // up to 15 March

        QTest::newRow("none given: daily") << std::string() << std::string("2026-03-02") << 14;
        QTest::newRow("daily in a cut window") << std::string() << std::string("2026-03-10") << 6;
        QTest::newRow("every other day, counted from P") << std::string("FREQ=DAILY;INTERVAL=2") << std::string("2026-03-03") << 6;
        QTest::newRow("weekly on the weekday of P") << std::string("FREQ=WEEKLY") << std::string("2026-03-02") << 2;
        QTest::newRow("a window that begins before P") << std::string() << std::string("2026-02-20") << 14;
    }

    void itIsExpectedOnTheDaysOfItsRuleFromTheFirstStartOn()
    {
        QFETCH(std::string, rule);
        QFETCH(std::string, from);
        QFETCH(int, expected);
        DiaryBuilder builder = begun();
        if (!rule.empty())
            builder.complaint("main", body({{Field::Check, rule}}));
        builder.pause("2026-03-04", "2026-03-06"); // asked all the same

        QCOMPARE(check(builder, "2026-03-15", day(from)).expected, expected);
    }

    void answersAreCountedByWhenTheyWereWritten_data()
    {
        QTest::addColumn<std::string>("recorded");
        QTest::addColumn<std::string>("kind");

        QTest::newRow("typed in") << std::string() << std::string("paper");
        QTest::newRow("the same morning") << std::string("2026-03-03T07:10:00+01:00") << std::string("same day");
        QTest::newRow("after midnight, before the day begins at 04:00")
            << std::string("2026-03-04T03:59:00+01:00") << std::string("same day");
        QTest::newRow("the next morning") << std::string("2026-03-04T04:00:00+01:00") << std::string("late");
        QTest::newRow("the day before, by the offset stored with it") << std::string("2026-03-03T01:00:00+01:00") << std::string("late");
    }

    void answersAreCountedByWhenTheyWereWritten()
    {
        QFETCH(std::string, recorded);
        QFETCH(std::string, kind);
        DiaryBuilder builder = begun();
        builder.check("2026-03-03", 4, std::nullopt, {.recorded = recorded});

        const CheckMeasures found = check(builder, "2026-03-08");

        QCOMPARE(found.recorded, 1);
        QCOMPARE(found.paper, kind == "paper" ? 1 : 0);
        QCOMPARE(found.sameDay, kind == "same day" ? 1 : 0);
        QCOMPARE(found.late, kind == "late" ? 1 : 0);
    }

    void cantSayIsAnAnswerButNoValue()
    {
        DiaryBuilder builder = begun();
        builder.declined("2026-03-03")
            .declined("2026-03-04", {.recorded = "2026-03-04T08:00:00+01:00"})
            .check("2026-03-05", std::nullopt, 10) // stiffness alone
            .check("2026-03-06", 0);

        const CheckMeasures found = check(builder, "2026-03-08");

        QCOMPARE(found.declined, 2);
        QCOMPARE(found.recorded, 1);
        QCOMPARE(found.paper, 1);
        QCOMPARE(found.sameDay, 0);
    }

    void countsAreOverTheWindow()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-02-28", {1, 2, 3, 4, 5, 6, 7, 8}).declined("2026-03-08");

        const CheckMeasures found = check(builder, "2026-03-06", "2026-03-04");

        QCOMPARE(found.recorded, 3); // 4th to 6th; the 7th and 8th come after
        QCOMPARE(found.declined, 0);
    }

    void noChecksGiveNothingButWhatWasExpected()
    {
        const CheckMeasures found = check(begun(), "2026-03-20");

        QCOMPARE(found.expected, 19);
        QCOMPARE(found.recorded, 0);
        QCOMPARE(found.firstWeek, kNone);
        QCOMPARE(found.reference, kNone);
        QCOMPARE(found.current, kNone);
        QCOMPARE(found.change, kNone);
        QVERIFY(!found.clearChange);
    }

    void theFirstWeekIsTheMedianOfAtLeastThreeOfItsDays_data()
    {
        QTest::addColumn<std::vector<int>>("pain"); // from 1 March, the day before P, on
        QTest::addColumn<std::optional<double>>("firstWeek");

        QTest::newRow("three") << std::vector<int>{-1, 7, -1, -1, 4, -1, -1, 6} << std::optional(6.0);
        QTest::newRow("two, and one on each side of the week") << std::vector<int>{5, 7, 5, -1, -1, -1, -1, -1, 5} << kNone;
        QTest::newRow("four") << std::vector<int>{-1, 7, 6, 5, 4} << std::optional(5.5);
        QTest::newRow("zero is a value") << std::vector<int>{-1, 0, 0, 4} << std::optional(0.0);
    }

    void theFirstWeekIsTheMedianOfAtLeastThreeOfItsDays()
    {
        QFETCH(std::vector<int>, pain);
        QFETCH(std::optional<double>, firstWeek);
        DiaryBuilder builder = begun();
        for (std::size_t i = 0; i < pain.size(); ++i) {
            if (pain[i] >= 0)
                builder.check(day("2026-03-01") + static_cast<int>(i), pain[i]);
        }

        QCOMPARE(check(builder, "2026-03-20").firstWeek, firstWeek);
        QCOMPARE(check(builder, "2026-03-20").reference, firstWeek);
    }

    void nothingAfterTheLastDayCountsInTheFirstWeek()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-03-02", {7, 7, 1, 1, 1});

        QCOMPARE(check(builder, "2026-03-03").firstWeek, kNone);
        QCOMPARE(check(builder, "2026-03-04").firstWeek, std::optional(7.0));
    }

    void theFirstAssessmentIsTheReferenceWhereItIsKnown()
    {
        DiaryBuilder builder = begun();
        builder.complaint("main", body({{Field::FirstAssessmentPain, number("6.5")}})).checks("2026-03-02", {3, 3, 3});

        QCOMPARE(check(builder, "2026-03-20").firstWeek, std::optional(3.0));
        QCOMPARE(check(builder, "2026-03-20").reference, std::optional(6.5));
    }

    void currentIsTheMedianOfTheLastSevenDaysWhateverTheWindow()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-03-08", {9, -1, 5, -1, 3, 4, -1, 0});

        QCOMPARE(check(builder, "2026-03-15").current, std::optional(3.5)); // 5 3 4 0
        QCOMPARE(check(builder, "2026-03-14").current, std::optional(4.5)); // 9 5 3 4
        QCOMPARE(check(builder, "2026-03-15", "2026-03-15").current, std::optional(3.5));
        QCOMPARE(check(builder, "2026-03-17").current, std::optional(3.0)); // 3 4 0
        QCOMPARE(check(builder, "2026-03-19").current, kNone); // 4 0 are two
    }

    void currentSeesDaysBeforeThePlan()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-02-26", {8, 6, 7});

        const CheckMeasures found = check(builder, "2026-03-02");

        QCOMPARE(found.recorded, 0);
        QCOMPARE(found.current, std::optional(7.0));
    }

    void changeIsShownFromTheFourteenthDayOn()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-03-02", {6, 6, 6, 6, 6, 6, 6, 3, 3, 3, 3, 3, 3, 3});

        const CheckMeasures before = check(builder, "2026-03-14");
        const CheckMeasures after = check(builder, "2026-03-15");

        QCOMPARE(before.current, std::optional(3.0));
        QCOMPARE(before.change, kNone);
        QCOMPARE(before.changeRatio, kNone);
        QVERIFY(!before.clearChange);
        QCOMPARE(after.change, std::optional(-3.0));
        QCOMPARE(after.changeRatio, std::optional(-0.5));
        QVERIFY(after.clearChange == true);
    }

    void aClearChangeIsTwoPointsAndThirtyPerCentLess_data()
    {
        QTest::addColumn<std::string>("reference");
        QTest::addColumn<int>("current");
        QTest::addColumn<bool>("clear");

        // -2 and -30 %: Farrar 2001; -2 or -33 % in Salaffi 2004
        QTest::newRow("two points of six") << std::string("6") << 4 << true;
        QTest::newRow("two points of seven are under 30 %") << std::string("7") << 5 << false;
        QTest::newRow("three of ten are 30 %") << std::string("10") << 7 << true;
        QTest::newRow("one point of three is under two") << std::string("3") << 2 << false;
        QTest::newRow("just under two points") << std::string("5.999") << 4 << false;
        QTest::newRow("just under 30 %") << std::string("8.57") << 6 << false;
        QTest::newRow("more pain") << std::string("4") << 8 << false;
        QTest::newRow("a reference of 0") << std::string("0") << 2 << false;
        QTest::newRow("0 and still 0") << std::string("0") << 0 << false;
    }

    void aClearChangeIsTwoPointsAndThirtyPerCentLess()
    {
        QFETCH(std::string, reference);
        QFETCH(int, current);
        QFETCH(bool, clear);
        DiaryBuilder builder = begun();
        builder.complaint("main", body({{Field::FirstAssessmentPain, number(reference)}}))
            .checks("2026-03-13", {current, current, current});

        const CheckMeasures found = check(builder, "2026-03-15");

        QVERIFY(found.change);
        QCOMPARE(found.changeRatio.has_value(), reference != "0");
        QVERIFY(found.clearChange == clear);
    }

    void stiffnessIsCountedByItself()
    {
        DiaryBuilder builder = begun();
        builder.check("2026-03-03", 4, 30)
            .check("2026-03-04", std::nullopt, 0)
            .check("2026-03-05", 4)
            .check("2026-03-09", 4, 10)
            .check("2026-03-10", 4, 20)
            .check("2026-03-11", 4, 20); // after the window

        const StiffnessMeasures found = measured(builder, "2026-03-10").stiffness;

        QCOMPARE(found.recorded, 4);
        QCOMPARE(found.current, std::optional(10.0)); // 0 10 20
        QCOMPARE(measured(builder, "2026-03-10", "2026-03-05").stiffness.recorded, 2);
        QCOMPARE(measured(builder, "2026-03-10", "2026-03-05").stiffness.current, std::optional(10.0));
        QCOMPARE(measured(builder, "2026-03-16").stiffness.current, kNone); // 20 20
    }

    void aWeekHasTheMedianOfAtLeastThreeOfItsValues()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-03-02", {6, 5, -1, 7, -1, -1, -1, 4, 4, -1, -1, -1, -1, -1, 2, 3, 3}).declined("2026-03-12");

        const auto weeks = measured(builder, "2026-03-18").checkWeeks;

        QCOMPARE(weeks.size(), 3);
        QCOMPARE(weeks[0].median, std::optional(6.0));
        QCOMPARE(weeks[0].recorded, 3);
        QCOMPARE(weeks[1].week, 1);
        QCOMPARE(weeks[1].start, day("2026-03-09"));
        QCOMPARE(weeks[1].recorded, 2);
        QCOMPARE(weeks[1].expected, 7);
        QCOMPARE(weeks[1].median, kNone);
        QCOMPARE(weeks[2].expected, 3);
        QCOMPARE(weeks[2].median, std::optional(3.0));
        QCOMPARE(measured(builder, "2026-03-18", "2026-03-03").checkWeeks[0].recorded, 2); // cut to the window
    }
};

MORROW_SUITE(tst_check)

#include "tst_check.moc"
