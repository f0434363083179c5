// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "support/reference_table.h"

#include "measures/statistics.h"

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

std::vector<TimedValue> timed(const ReferenceRow &row)
{
    const std::vector<double> times = numbers(row.at("times"));
    const std::vector<double> values = numbers(row.at("values"));
    std::vector<TimedValue> result;
    for (std::size_t i = 0; i < values.size(); ++i)
        result.push_back({static_cast<int>(times.at(i)), values[i]});
    return result;
}

/// How many pairs of \a values differ.
template<class Value>
double differingPairs(std::span<const TimedValue> values, Value TimedValue::*value)
{
    double pairs = 0;
    for (std::size_t j = 0; j < values.size(); ++j) {
        for (std::size_t i = 0; i < j; ++i)
            pairs += values[i].*value != values[j].*value ? 1 : 0;
    }
    return pairs;
}

/// What the tests of SciPy and NumPy take for equal (assert_almost_equal).
constexpr double kAlmostEqual = 1.5e-7;

/// Half a step of the last of \a decimals, which is as near as a printed number tells.
double halfStep(int decimals)
{
    return 0.5001 * std::pow(10.0, -decimals);
}

} // namespace

/// Statistics are those that the tests of other libraries expect; each file of cases names the test.
class tst_published : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void wilsonIntervalIsThatOfOtherLibraries()
    {
        for (const ReferenceRow &row : referenceRows("wilson_libraries.csv")) {
            const auto found = wilson(wholeCell(row, "r"), wholeCell(row, "n"));
            const std::string label = row.at("file") + ": " + row.at("r") + " of " + row.at("n");

            QVERIFY2(found, label.c_str());
            const double within = halfStep(wholeCell(row, "decimals"));
            QVERIFY2(std::abs(found->lower - realCell(row, "lower")) <= within, label.c_str());
            QVERIFY2(std::abs(found->upper - realCell(row, "upper")) <= within, label.c_str());
        }
    }

    void kendallIsThatOfScipy()
    {
        for (const ReferenceRow &row : referenceRows("kendall_libraries.csv")) {
            const std::vector<TimedValue> values = timed(row);
            const auto found = trend(values, 2);
            const std::string &label = row.at("case");

            QVERIFY2(found, label.c_str());
            // tau-b = S / sqrt(pairs of different times x pairs of different values)
            const double pairs = differingPairs(values, &TimedValue::time) * differingPairs(values, &TimedValue::value);
            const auto s = static_cast<double>(found->s);
            QVERIFY2(std::abs(s / std::sqrt(pairs) - realCell(row, "tau")) <= kAlmostEqual, label.c_str());
            // SciPy takes no correction for continuity: its p tells var(S).
            QVERIFY2(std::abs(std::erfc(std::abs(s) / std::sqrt(2 * found->varS)) - realCell(row, "p")) <= kAlmostEqual, label.c_str());
        }
    }

    void slopeIsThatOfScipy()
    {
        for (const ReferenceRow &row : referenceRows("sen_libraries.csv")) {
            const auto found = trend(timed(row), 2);

            QVERIFY2(found && std::abs(found->slope - realCell(row, "slope")) <= kAlmostEqual, row.at("case").c_str());
        }
    }

    void medianIsThatOfNumpy()
    {
        for (const ReferenceRow &row : referenceRows("median_numpy.csv")) {
            const auto found = median(numbers(row.at("values")));

            QVERIFY2(found && std::abs(*found - realCell(row, "median")) <= kAlmostEqual, row.at("values").c_str());
        }
    }
};

MORROW_SUITE(tst_published)

#include "tst_published.moc"
