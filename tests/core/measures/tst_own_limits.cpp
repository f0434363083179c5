// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr const char *kStart = "2026-03-02";

CivilDay dayOf(int place)
{
    return day(kStart) + place;
}

DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", kStart, {onDays(3, 15)}));
    return builder;
}

/// \a count checks from the first day on, \a one and \a other in turn.
DiaryBuilder inTurn(int count, int one, int other)
{
    DiaryBuilder builder = begun();
    for (int place = 0; place < count; ++place)
        builder.check(dayOf(place), place % 2 == 0 ? one : other);
    return builder;
}

std::optional<OwnLimits> limits(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measured(builder, to, from).check.limits;
}

/// Three checks a week of the pain in \a weeks, and of ten times that in minutes.
DiaryBuilder weekly(const std::vector<int> &weeks)
{
    DiaryBuilder builder = begun();
    for (std::size_t week = 0; week < weeks.size(); ++week) {
        for (int place = 0; place < 3; ++place)
            builder.check(dayOf(7 * static_cast<int>(week) + place), weeks[week], 10 * weeks[week]);
    }
    return builder;
}

bool isNear(const std::optional<double> &one, double other)
{
    return one && std::abs(*one - other) < 1e-9;
}

} // namespace

/// A person's own first days as an individuals chart, and the trend of the weeks.
class tst_own_limits : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theyAreOfTheFirstFourteenRecordedDays()
    {
        DiaryBuilder builder = inTurn(14, 6, 7);
        builder.check(dayOf(14), 0);

        const auto found = limits(builder, dayOf(14));

        QVERIFY(found);
        QCOMPARE(found->n, 14);
        QCOMPARE(found->centre, 6.5);
        QCOMPARE(found->meanRange, std::optional(1.0));
        QVERIFY(isNear(found->lower, 6.5 - 3 / 1.128));
        QVERIFY(isNear(found->upper, 6.5 + 3 / 1.128));
    }

    void theyNeedEightDays()
    {
        QVERIFY(!limits(inTurn(7, 6, 7), dayOf(20)));
        QCOMPARE(limits(inTurn(8, 6, 7), dayOf(20))->n, 8);
    }

    void theyAreCutToTheScale()
    {
        const auto low = limits(inTurn(14, 1, 3), dayOf(13)); // 2 -+ 5.3
        const auto high = limits(inTurn(14, 9, 7), dayOf(13)); // 8 -+ 5.3

        QCOMPARE(low->lower, std::optional(0.0));
        QVERIFY(isNear(low->upper, 2 + 6 / 1.128));
        QVERIFY(isNear(high->lower, 8 - 6 / 1.128));
        QCOMPARE(high->upper, std::optional(10.0));
    }

    void laterDaysOutsideAreBeyond()
    {
        DiaryBuilder builder = inTurn(14, 6, 7); // 3.84 .. 9.16
        builder.check(dayOf(15), 3).check(dayOf(16), 4).check(dayOf(17), 9).check(dayOf(18), 10);

        QVERIFY(limits(builder, dayOf(20))->beyond == (std::vector{dayOf(15), dayOf(18)}));
        QVERIFY(limits(builder, dayOf(17))->beyond == std::vector{dayOf(15)});
        QVERIFY(limits(builder, dayOf(20), dayOf(19)) == limits(builder, dayOf(20))); // whatever the window
    }

    void aDayOnALimitIsNotBeyond()
    {
        // 5 -+ 3 x 1.88 / 1.128 = 0 .. 10, the ends of the scale
        DiaryBuilder builder = inTurn(14, 4, 6);
        builder.check(dayOf(15), 0).check(dayOf(16), 10);

        QVERIFY(limits(builder, dayOf(20))->beyond.empty());
    }

    void daysThatAreAllEqualHaveACentreAndNoLimits()
    {
        const auto flat = limits(inTurn(10, 4, 4), dayOf(20));

        QVERIFY(flat);
        QCOMPARE(flat->n, 10);
        QCOMPARE(flat->centre, 4.0);
        QCOMPARE(flat->meanRange, std::optional(0.0));
        QVERIFY(!flat->lower && !flat->upper);
    }

    void daysOfWhichNoTwoAreInARowHaveNoRange()
    {
        DiaryBuilder builder = begun();
        for (int place = 0; place < 8; ++place)
            builder.check(dayOf(2 * place), place);

        const auto apart = limits(builder, dayOf(20));

        QVERIFY(apart);
        QCOMPARE(apart->centre, 3.5);
        QVERIFY(!apart->meanRange && !apart->lower && !apart->upper);
    }

    void checksBeforeThePlanAreNotAmongThem()
    {
        DiaryBuilder builder = inTurn(8, 6, 7);
        builder.check(dayOf(-1), 0);

        QVERIFY(limits(builder, dayOf(10)) == limits(inTurn(8, 6, 7), dayOf(10)));
    }

    void theTrendIsThatOfTheMediansOfSixWeeks()
    {
        const auto falling = measured(weekly({8, 7, 6, 5, 4, 3}), dayOf(41));

        QVERIFY(falling.check.trend);
        QCOMPARE(falling.check.trend->n, 6);
        QCOMPARE(falling.check.trend->slope, -1.0);
        QCOMPARE(falling.check.trend->s, std::int64_t{-15});
        QVERIFY(falling.stiffness.trend);
        QCOMPARE(falling.stiffness.trend->slope, -10.0);
        QVERIFY(!measured(weekly({8, 7, 6, 5, 4}), dayOf(41)).check.trend);
    }

    void aWeekOfTwoValuesIsLeftOutOfTheTrendAndKeepsItsTime()
    {
        DiaryBuilder builder = weekly({9, 8, 7, 6, 4, 4, 3});
        builder.check(dayOf(28), std::nullopt, std::nullopt, {.recorded = "2026-03-30T08:00:00Z"});

        const auto found = measured(builder, dayOf(48)).check.trend;

        QVERIFY(found);
        QCOMPARE(found->n, 6);
        QCOMPARE(found->slope, -1.0);
    }

    void theTrendIsOverTheWindow()
    {
        const auto found = measured(weekly({0, 8, 7, 6, 5, 4, 3}), dayOf(48), dayOf(7)).check.trend;

        QVERIFY(found);
        QCOMPARE(found->n, 6);
        QCOMPARE(found->s, std::int64_t{-15});
    }
};

MORROW_SUITE(tst_own_limits)

#include "tst_own_limits.moc"
