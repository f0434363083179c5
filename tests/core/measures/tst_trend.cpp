// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "support/reference_table.h"

#include "measures/statistics.h"

#include <rapidcheck.h>

#include <cmath>
#include <sstream>

using namespace morrow;
using namespace morrow::test;

namespace {

std::vector<double> numbers(const std::string &text)
{
    std::istringstream in(text);
    return {std::istream_iterator<double>(in), {}};
}

std::vector<TimedValue> series(const std::vector<double> &values)
{
    std::vector<TimedValue> timed;
    for (const double value : values)
        timed.push_back({static_cast<int>(timed.size()), value});
    return timed;
}

bool isNear(double one, double other, double within)
{
    return std::abs(one - other) <= within;
}

} // namespace

/// Trends and charts are those of the books.
class tst_trend : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void kendallAgreesWithTheBooks_data()
    {
        QTest::addColumn<std::vector<double>>("times");
        QTest::addColumn<std::vector<double>>("values");
        QTest::addColumn<double>("s");
        QTest::addColumn<double>("varS");

        // Gilbert RO 1987 p. 211 and Ex. 17.1; Van Belle & Hughes 1984 p. 129
        for (const ReferenceRow &row : referenceRows("kendall.csv"))
            QTest::newRow(row.at("case").c_str())
                << numbers(row.at("times")) << numbers(row.at("values")) << realCell(row, "s") << realCell(row, "var_s");
    }

    void kendallAgreesWithTheBooks()
    {
        QFETCH(std::vector<double>, times);
        QFETCH(std::vector<double>, values);
        QFETCH(double, s);
        QFETCH(double, varS);
        std::vector<TimedValue> timed;
        for (std::size_t i = 0; i < values.size(); ++i)
            timed.push_back({static_cast<int>(times[i]), values[i]});

        const auto found = trend(timed, 2);

        QVERIFY(found);
        QCOMPARE(static_cast<double>(found->s), s);
        QVERIFY2(isNear(found->varS, varS, 5e-5), std::to_string(found->varS).c_str());
    }

    void slopeAndIntervalAgreeWithSen()
    {
        // Sen PK, JASA 1968;63:1379-1389: slope 4, interval 3.71 to 4.38 at alpha 0.07
        std::vector<TimedValue> timed;
        for (const ReferenceRow &row : referenceRows("sen.csv"))
            timed.push_back({wholeCell(row, "x"), realCell(row, "y")});
        constexpr double quantile965 = 1.8119; // of the standard normal distribution, at 0.965

        const auto found = trend(timed, 2, quantile965);

        QVERIFY(found);
        QVERIFY2(isNear(found->slope, 4, 1e-12), std::to_string(found->slope).c_str());
        QVERIFY2(isNear(found->lower, 3.71, 5e-3), std::to_string(found->lower).c_str());
        QVERIFY2(isNear(found->upper, 4.38, 5e-3), std::to_string(found->upper).c_str());
    }

    void chartAgreesWithNist()
    {
        // NIST/SEMATECH e-Handbook 6.3.2.2
        std::vector<double> flow;
        for (const ReferenceRow &row : referenceRows("individuals_chart.csv"))
            flow.push_back(realCell(row, "flowrate"));

        const auto chart = individualsChart(series(flow), 8);

        QVERIFY(chart && chart->meanRange && chart->limits);
        QVERIFY(isNear(chart->centre, 50.81, 1e-9));
        QVERIFY(isNear(*chart->meanRange, 1.8778, 5e-5));
        QVERIFY(isNear(chart->limits->upper, 55.8041, 5e-4));
        QVERIFY(isNear(chart->limits->lower, 45.8159, 5e-4));
    }

    void allEqualValuesHaveNoSlopeAndNoDoubt()
    {
        const auto found = trend(series({3, 3, 3, 3, 3, 3}), 6);

        QVERIFY(found);
        QCOMPARE(found->slope, 0.0);
        QCOMPARE(found->s, std::int64_t{0});
        QCOMPARE(found->z, 0.0);
        QCOMPARE(found->p, 1.0);
    }

    void theTestIsOfSOneNearerToZero_data()
    {
        QTest::addColumn<std::vector<double>>("values");
        QTest::addColumn<double>("z");

        // Without ties var(S) = n (n - 1) (2 n + 5) / 18: 26 / 3 for four values, 28 1/3 for six.
        QTest::newRow("rising") << std::vector<double>{10, 15, 14, 20} << 3 / std::sqrt(26.0 / 3); // S = 4
        QTest::newRow("falling") << std::vector<double>{20, 14, 15, 10} << -3 / std::sqrt(26.0 / 3);
        QTest::newRow("always rising") << std::vector<double>{1, 2, 3, 4, 5, 6} << 14 / std::sqrt(85.0 / 3); // S = 15
        QTest::newRow("by one pair") << std::vector<double>{2, 1, 3} << 0.0; // S = 1
        QTest::newRow("neither way") << std::vector<double>{2, 4, 1, 3} << 0.0;
    }

    void theTestIsOfSOneNearerToZero()
    {
        QFETCH(std::vector<double>, values);
        QFETCH(double, z);

        const auto found = trend(series(values), 2);

        QVERIFY2(isNear(found->z, z, 1e-12), std::to_string(found->z).c_str());
        // Two-sided: what the standard normal distribution has beyond |z| at both ends.
        QVERIFY2(isNear(found->p, std::erfc(std::abs(z) * std::sqrt(0.5)), 1e-12), std::to_string(found->p).c_str());
    }

    void fewerThanAskedForHaveNoTrend()
    {
        QVERIFY(!trend(series({1, 2, 3, 4, 5}), 6));
        QVERIFY(trend(series({1, 2, 3, 4, 5, 6}), 6));
        QVERIFY(!trend(series({1}), 1));
        QVERIFY(!trend(std::vector<TimedValue>{{4, 1}, {4, 2}}, 2));
    }

    void aChartNeedsTwoDaysInARowAndSomeChange()
    {
        const auto apart = individualsChart(std::vector<TimedValue>{{0, 1}, {2, 5}, {4, 3}}, 3);
        const auto flat = individualsChart(series({4, 4, 4}), 3);

        QCOMPARE(apart->meanRange, std::optional<double>());
        QVERIFY(!apart->limits);
        QCOMPARE(flat->meanRange, std::optional(0.0));
        QVERIFY(!flat->limits);
        QVERIFY(!individualsChart(series({1, 2}), 3));
        QVERIFY(!individualsChart({}, 0));
    }

    void turnedRoundValuesHaveTheOppositeTrend()
    {
        const bool holds = rc::check("a trend turned round", [] {
            const auto values = *rc::gen::container<std::vector<int>>(*rc::gen::inRange(2, 12), rc::gen::inRange(0, 11));
            std::vector<TimedValue> straight;
            std::vector<TimedValue> turned;
            for (const int value : values) {
                straight.push_back({static_cast<int>(straight.size()), static_cast<double>(value)});
                turned.push_back({static_cast<int>(turned.size()), static_cast<double>(-value)});
            }

            const auto one = trend(straight, 2);
            const auto other = trend(turned, 2);

            RC_ASSERT(one->s == -other->s);
            RC_ASSERT(one->slope == -other->slope);
            RC_ASSERT(one->varS == other->varS);
            RC_ASSERT(one->p == other->p);
            RC_ASSERT(one->lower <= one->slope && one->slope <= one->upper);
        });
        QVERIFY(holds);
    }
};

MORROW_SUITE(tst_trend)

#include "tst_trend.moc"
