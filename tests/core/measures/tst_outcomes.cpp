// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// A complaint of the right side whose plan starts on 2 March.
DiaryBuilder right()
{
    DiaryBuilder builder;
    builder.complaint("main", body({{Field::Side, std::string("right")}})).item(item("squat", "2026-03-02", {onDays(3, 15)}));
    return builder;
}

std::vector<OutcomeMeasures> outcomes(const DiaryBuilder &builder, Day to)
{
    return measured(builder, to).outcomes;
}

} // namespace

/// Answers and tests that are asked now and then.
class tst_outcomes : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aSeriesHasOneKindOneNameAndOneSide()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-02", "test", "hops", "left", "20")
            .outcome("2026-03-02", "test", "hops", "right", "8")
            .outcome("2026-03-02", "test", "reach", "right", "9.5")
            .outcome("2026-03-02", "activity", "hops", "", "3")
            .outcome("2026-03-30", "test", "hops", "right", "12")
            .outcome("2026-03-16", "test", "hops", "right", "10");

        const auto series = outcomes(builder, "2026-03-31");

        QCOMPARE(series.size(), 4);
        QCOMPARE(series[1].name, std::string("hops"));
        QVERIFY(series[1].side == Side::Right);
        QCOMPARE(series[1].n, 3);
        QCOMPARE(series[1].firstDay, day("2026-03-02"));
        QVERIFY(series[1].first == number("8"));
        QCOMPARE(series[1].lastDay, day("2026-03-30"));
        QVERIFY(series[1].last == number("12"));
        QVERIFY(series[1].change == number("4"));
        QVERIFY(series[3].kind == OutcomeKind::Activity);
        QCOMPARE(series[3].n, 1);
    }

    void oneAnswerHasNoChange()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-02", "overall", "", "", "45");

        QVERIFY(!outcomes(builder, "2026-03-31").at(0).change);
        QVERIFY(outcomes(builder.outcome("2026-03-20", "overall", "", "", "45"), "2026-03-31").at(0).change == Decimal());
    }

    void seriesStandInTheOrderOfTheirFirstEntry()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-09", "activity", "stairs", "", "4", {.id = "z"})
            .outcome("2026-03-09", "activity", "shopping", "", "4", {.id = "b", .recorded = "2026-03-09T10:00:00Z"})
            .outcome("2026-03-09", "activity", "garden", "", "4", {.id = "a", .recorded = "2026-03-09T10:00:00Z"})
            .outcome("2026-03-02", "activity", "running", "", "0", {.id = "y", .recorded = "2026-03-20T10:00:00Z"});

        std::vector<std::string> names;
        for (const OutcomeMeasures &series : outcomes(builder, "2026-03-31"))
            names.push_back(series.name);

        // By day; then what was typed in, then by recording, then by id.
        QCOMPARE(names, (std::vector<std::string>{"running", "stairs", "garden", "shopping"}));
    }

    void ofOneDayTheLaterRecordedIsTheLast()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-02", "overall", "", "", "30")
            .outcome("2026-03-09", "overall", "", "", "60", {.recorded = "2026-03-09T18:00:00Z"})
            .outcome("2026-03-09", "overall", "", "", "50", {.recorded = "2026-03-09T08:00:00Z"});

        QVERIFY(outcomes(builder, "2026-03-31").at(0).last == number("60"));
        QCOMPARE(outcomes(builder, "2026-03-31").at(0).n, 3);
    }

    void onlyEntriesUpToTheLastDayCountAndThoseBeforeThePlanDo()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-01-10", "overall", "", "", "20")
            .outcome("2026-03-10", "overall", "", "", "50")
            .outcome("2026-03-11", "overall", "", "", "60");

        const auto series = outcomes(builder, "2026-03-10");

        QCOMPARE(series.size(), 1);
        QCOMPARE(series[0].n, 2);
        QCOMPARE(series[0].firstDay, day("2026-01-10"));
        QVERIFY(series[0].last == number("50"));
    }

    void aTestIsComparedWithTheOtherSideOfThatDay_data()
    {
        QTest::addColumn<std::string>("complaintSide");
        QTest::addColumn<std::string>("otherDay");
        QTest::addColumn<std::string>("other");
        QTest::addColumn<std::optional<double>>("ratio"); // of the right side, 9 on the 20th

        QTest::newRow("tested on the same day")
            << std::string("right") << std::string("2026-03-20") << std::string("12") << std::optional(0.75);
        QTest::newRow("tested on another day") << std::string("right") << std::string("2026-03-19") << std::string("12") << kNone;
        QTest::newRow("tested after the last day") << std::string("right") << std::string("2026-04-01") << std::string("12") << kNone;
        QTest::newRow("0 on the other side") << std::string("right") << std::string("2026-03-20") << std::string("0") << kNone;
        QTest::newRow("the complaint is of the other side")
            << std::string("left") << std::string("2026-03-20") << std::string("12") << kNone;
        QTest::newRow("the complaint is of both sides") << std::string("both") << std::string("2026-03-20") << std::string("12") << kNone;
        QTest::newRow("the complaint has no side") << std::string() << std::string("2026-03-20") << std::string("12") << kNone;
    }

    void aTestIsComparedWithTheOtherSideOfThatDay()
    {
        QFETCH(std::string, complaintSide);
        QFETCH(std::string, otherDay);
        QFETCH(std::string, other);
        QFETCH(std::optional<double>, ratio);
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(3, 15)}))
            .outcome("2026-03-05", "test", "hops", "right", "6")
            .outcome("2026-03-20", "test", "hops", "right", "9")
            .outcome("2026-03-20", "test", "reach", "left", "3") // another test
            .outcome(day(otherDay), "test", "hops", "left", other);
        if (!complaintSide.empty())
            builder.complaint("main", body({{Field::Side, complaintSide}}));

        const auto series = outcomes(builder, "2026-03-31");

        QVERIFY(series[0].side == Side::Right);
        QCOMPARE(series[0].ratio, ratio);
    }

    void theOtherSidesLastOfThatDayCountsAndItHasNoRatioOfItsOwn()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-20", "test", "hops", "left", "8", {.recorded = "2026-03-20T10:00:00Z"})
            .outcome("2026-03-20", "test", "hops", "left", "12", {.recorded = "2026-03-20T11:00:00Z"})
            .outcome("2026-03-22", "test", "hops", "left", "20")
            .outcome("2026-03-20", "test", "hops", "right", "9", {.recorded = "2026-03-20T09:00:00Z"});

        const auto series = outcomes(builder, "2026-03-31");

        QVERIFY(series[0].side == Side::Right);
        QCOMPARE(series[0].ratio, std::optional(0.75));
        QCOMPARE(series[1].ratio, kNone);
    }

    void anActivityHasNoRatio()
    {
        DiaryBuilder builder = right();
        builder.outcome("2026-03-20", "activity", "hops", "left", "8").outcome("2026-03-20", "activity", "hops", "right", "4");

        for (const OutcomeMeasures &series : outcomes(builder, "2026-03-31"))
            QCOMPARE(series.ratio, kNone);
    }
};

MORROW_SUITE(tst_outcomes)

#include "tst_outcomes.moc"
