// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "support/reference_table.h"

#include "measures/statistics.h"

#include <rapidcheck.h>

using namespace morrow;
using namespace morrow::test;

/// Medians and intervals are those of the books.
class tst_statistics : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void medianIsTheMiddleValueOrTheMeanOfTheMiddleTwo_data()
    {
        QTest::addColumn<std::vector<double>>("values");
        QTest::addColumn<std::optional<double>>("expected");

        QTest::newRow("one value") << std::vector<double>{4} << std::optional(4.0);
        QTest::newRow("odd, out of order") << std::vector<double>{9, 1, 5} << std::optional(5.0);
        QTest::newRow("even, out of order") << std::vector<double>{7, 1, 2, 10} << std::optional(4.5);
        QTest::newRow("ties") << std::vector<double>{3, 3, 3, 8} << std::optional(3.0);
        QTest::newRow("no values") << std::vector<double>{} << kNone;
    }

    void medianIsTheMiddleValueOrTheMeanOfTheMiddleTwo()
    {
        QFETCH(std::vector<double>, values);
        QFETCH(std::optional<double>, expected);

        QCOMPARE(median(values), expected);
    }

    void fewerValuesThanAskedForHaveNoMedian()
    {
        QCOMPARE(median({1, 2}, 3), kNone);
        QCOMPARE(median({1, 2, 6}, 3), std::optional(2.0));
        QCOMPARE(median({}, 0), kNone);
    }

    void wilsonIntervalAgreesWithNewcombe_data()
    {
        QTest::addColumn<int>("r");
        QTest::addColumn<int>("n");
        QTest::addColumn<double>("lower");
        QTest::addColumn<double>("upper");

        // Newcombe RG, Stat Med 1998;17:857-872, Table I (Wilson score, no continuity correction), 95 %
        for (const ReferenceRow &row : referenceRows("wilson.csv")) {
            const std::string label = row.at("r") + " of " + row.at("n");
            QTest::newRow(label.c_str()) << wholeCell(row, "r") << wholeCell(row, "n") << realCell(row, "lower") << realCell(row, "upper");
        }
    }

    void wilsonIntervalAgreesWithNewcombe()
    {
        QFETCH(int, r);
        QFETCH(int, n);
        QFETCH(double, lower);
        QFETCH(double, upper);

        const auto interval = wilson(r, n);

        QVERIFY(interval);
        QVERIFY2(std::abs(interval->lower - lower) <= 0.00005, std::to_string(interval->lower).c_str());
        QVERIFY2(std::abs(interval->upper - upper) <= 0.00005, std::to_string(interval->upper).c_str());
    }

    void wilsonIntervalHoldsTheProportionAndStaysWithinZeroAndOne()
    {
        QVERIFY(rc::check([] {
            const int n = *rc::gen::inRange(1, 5000);
            const int r = *rc::gen::inRange(0, n + 1);
            const auto interval = wilson(r, n);
            RC_ASSERT(interval.has_value());
            RC_ASSERT(0 <= interval->lower && interval->upper <= 1);
            RC_ASSERT(isAtMost(interval->lower, double(r) / n) && isAtMost(double(r) / n, interval->upper));
        }));
    }

    void roundingDoesNotPassTheWhole() { QVERIFY(wilson(15, 15)->upper <= 1); }

    void noTrialsHaveNoInterval() { QVERIFY(!wilson(0, 0)); }

    void aRatioToZeroIsNone()
    {
        QCOMPARE(ratio(0, 0), kNone);
        QCOMPARE(ratio(3, 0), kNone);
        QCOMPARE(ratio(3, 4), std::optional(0.75));
    }

    void aLimitIsPassedByMoreThanABillionthOnly()
    {
        QVERIFY(isAtMost(0.1 + 0.2, 0.3));
        QVERIFY(!isAtMost(0.3 + 2e-9, 0.3));
        QVERIFY(isAtMost(-2 + 5e-10, -2));
        QVERIFY(!isAtMost(kTolerance, 0));
    }
};

MORROW_SUITE(tst_statistics)

#include "tst_statistics.moc"
