// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// The parts of a treatment; empty: not written down.
struct Parts
{
    std::string warmupImpulses{};
    std::string warmupHz{};
    std::string impulses{};
    std::string hz{};
    std::string area{};

    [[nodiscard]] Body toBody() const
    {
        Body said;
        const auto set = [&said](Field field, const std::string &text) {
            if (!text.empty())
                said.set(field, number(text));
        };
        set(Field::WarmupImpulses, warmupImpulses);
        set(Field::WarmupHz, warmupHz);
        set(Field::Impulses, impulses);
        set(Field::Hz, hz);
        set(Field::AreaCm2, area);
        said.set(Field::Bar, number("2.5")); // of no account
        return said;
    }
};

/// A complaint whose plan starts on 2 March, with two soreness days.
DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15)}));
    return builder;
}

std::vector<VisitMeasures> visits(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measured(builder, to, from).visits;
}

VisitMeasures treatment(const std::vector<Parts> &parts)
{
    DiaryBuilder builder = begun();
    for (const Parts &one : parts)
        builder.visit("2026-03-10", one.toBody());
    return visits(builder, "2026-03-31").at(0);
}

} // namespace

/// What was given at each visit, and the check before and after it.
class tst_visits : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void treatmentArithmeticIsThatOfTheTrade()
    {
        // Common practice, no source: 2 500 impulses at 12 Hz take 208.3 s; 1 500 at 21 Hz
        // 71.4 s; 2 500 over 55 cm2 are 45.5 per cm2.
        const VisitMeasures main = treatment({{.impulses = "2500", .hz = "12", .area = "55"}});
        const VisitMeasures both = treatment({{.warmupImpulses = "1500", .warmupHz = "21", .impulses = "2500", .hz = "12", .area = "55"}});

        QVERIFY(std::abs(*main.seconds - 208.3) < 0.05);
        QVERIFY(std::abs(*main.perCm2 - 45.5) < 0.05);
        QCOMPARE(main.totalImpulses.value_or(-1), 2500);
        QVERIFY(std::abs(*both.seconds - *main.seconds - 71.4) < 0.05);
        QCOMPARE(both.perCm2, main.perCm2); // of the impulses without warm-up
        QCOMPARE(both.totalImpulses.value_or(-1), 4000);
    }

    void aMissingPartIsNotZero_data()
    {
        QTest::addColumn<Parts>("parts");
        QTest::addColumn<std::optional<double>>("seconds");
        QTest::addColumn<std::optional<double>>("perCm2");
        QTest::addColumn<int>("total"); // -1: none

        QTest::newRow("an empty warm-up count is none") << Parts{.warmupHz = "20", .impulses = "2000", .hz = "10", .area = "20"}
                                                        << std::optional(200.0) << std::optional(100.0) << 2000;
        QTest::newRow("a warm-up without Hz") << Parts{.warmupImpulses = "300", .impulses = "2000", .hz = "10", .area = "20"} << kNone
                                              << std::optional(100.0) << 2300;
        QTest::newRow("a warm-up of 0 Hz") << Parts{.warmupImpulses = "300", .warmupHz = "0", .impulses = "2000", .hz = "10"} << kNone
                                           << kNone << 2300;
        QTest::newRow("no Hz") << Parts{.impulses = "2000", .area = "20"} << kNone << std::optional(100.0) << 2000;
        QTest::newRow("0 Hz") << Parts{.impulses = "2000", .hz = "0", .area = "20"} << kNone << std::optional(100.0) << 2000;
        QTest::newRow("no impulses") << Parts{.warmupImpulses = "300", .warmupHz = "15", .hz = "10", .area = "20"} << kNone << kNone << -1;
        QTest::newRow("0 impulses") << Parts{.impulses = "0", .hz = "10", .area = "20"} << std::optional(0.0) << std::optional(0.0) << 0;
        QTest::newRow("no area") << Parts{.impulses = "2000", .hz = "10"} << std::optional(200.0) << kNone << 2000;
        QTest::newRow("an area of 0") << Parts{.impulses = "2000", .hz = "10", .area = "0"} << std::optional(200.0) << kNone << 2000;
        QTest::newRow("no part at all") << Parts{} << kNone << kNone << -1;
    }

    void aMissingPartIsNotZero()
    {
        QFETCH(Parts, parts);
        QFETCH(std::optional<double>, seconds);
        QFETCH(std::optional<double>, perCm2);
        QFETCH(int, total);

        const VisitMeasures found = treatment({parts});

        QCOMPARE(found.seconds, seconds);
        QCOMPARE(found.perCm2, perCm2);
        QCOMPARE(found.totalImpulses.value_or(-1), total);
    }

    void visitsOfOneDayAreOne_data()
    {
        QTest::addColumn<std::vector<Parts>>("parts");
        QTest::addColumn<std::optional<double>>("seconds");
        QTest::addColumn<std::optional<double>>("perCm2");
        QTest::addColumn<int>("total");

        const Parts first{.impulses = "2000", .hz = "10", .area = "20"};
        const Parts second{.warmupImpulses = "100", .warmupHz = "10", .impulses = "1000", .hz = "5", .area = "40"};
        QTest::newRow("times, impulses and areas add up")
            << std::vector{first, second} << std::optional(410.0) << std::optional(50.0) << 3100;
        QTest::newRow("a visit without parts counts as a day only")
            << std::vector{first, Parts{}} << std::optional(200.0) << std::optional(100.0) << 2000;
        QTest::newRow("a part that one of them does not give")
            << std::vector{first, Parts{.impulses = "1000", .hz = "5"}} << std::optional(400.0) << kNone << 3000;
        QTest::newRow("an area alone is a part") << std::vector{first, Parts{.area = "30"}} << kNone << kNone << -1;
        QTest::newRow("none gives a part") << std::vector{Parts{}, Parts{}} << kNone << kNone << -1;
    }

    void visitsOfOneDayAreOne()
    {
        QFETCH(std::vector<Parts>, parts);
        QFETCH(std::optional<double>, seconds);
        QFETCH(std::optional<double>, perCm2);
        QFETCH(int, total);
        DiaryBuilder builder = begun();
        for (const Parts &one : parts)
            builder.visit("2026-03-10", one.toBody());

        const auto found = visits(builder, "2026-03-31");

        QCOMPARE(found.size(), 1);
        QCOMPARE(found[0].seconds, seconds);
        QCOMPARE(found[0].perCm2, perCm2);
        QCOMPARE(found[0].totalImpulses.value_or(-1), total);
    }

    void eachVisitHasItsOwnTreatment()
    {
        DiaryBuilder builder = begun();
        builder.visit("2026-03-10", Parts{.impulses = "2000", .hz = "10"}.toBody())
            .visit("2026-03-17", Parts{.impulses = "3000", .hz = "10"}.toBody());

        const auto found = visits(builder, "2026-03-31");

        QCOMPARE(found.at(0).seconds, std::optional(200.0));
        QCOMPARE(found.at(1).seconds, std::optional(300.0));
    }

    void theDayBeforeTheNextVisitIsTheLastAfterOne()
    {
        DiaryBuilder builder = begun();
        builder.visit("2026-03-10").visit("2026-03-16").checks("2026-03-13", {4, 5, 5, 9});

        QVERIFY(visits(builder, "2026-03-31").at(0).afterWeeks == std::vector<std::optional<double>>{5.0});
    }

    void beforeIsTheMedianOfTheWeekBefore_data()
    {
        QTest::addColumn<std::vector<int>>("pain"); // from 2 March, 8 days before the visit, on
        QTest::addColumn<std::optional<double>>("before");

        QTest::newRow("seven days") << std::vector<int>{0, 7, 6, 5, 4, 3, 2, 1, 9} << std::optional(4.0);
        QTest::newRow("three of them") << std::vector<int>{0, 7, -1, -1, 4, -1, -1, 5, 9} << std::optional(5.0);
        QTest::newRow("two of them, and those around") << std::vector<int>{5, 5, -1, -1, -1, -1, -1, 5, 5} << kNone;
    }

    void beforeIsTheMedianOfTheWeekBefore()
    {
        QFETCH(std::vector<int>, pain);
        QFETCH(std::optional<double>, before);
        DiaryBuilder builder = begun();
        builder.visit("2026-03-10");
        for (std::size_t i = 0; i < pain.size(); ++i) {
            if (pain[i] >= 0)
                builder.check(day("2026-03-02") + static_cast<int>(i), pain[i]);
        }

        QCOMPARE(visits(builder, "2026-03-31").at(0).before, before);
    }

    void beforeLeavesOutTheSorenessDaysOfEarlierVisits_data()
    {
        QTest::addColumn<int>("sorenessDays");
        QTest::addColumn<std::optional<double>>("before");

        // Checks of 3 to 9 March: 1 9 8 2 4 3 5; visits on the 3rd and the 10th.
        QTest::newRow("none") << 0 << std::optional(4.0);
        QTest::newRow("two: 1 2 4 3 5") << 2 << std::optional(3.0);
        QTest::newRow("four: 1 3 5") << 4 << std::optional(3.0);
        QTest::newRow("five: two are left") << 5 << kNone;
    }

    void beforeLeavesOutTheSorenessDaysOfEarlierVisits()
    {
        QFETCH(int, sorenessDays);
        QFETCH(std::optional<double>, before);
        DiaryBuilder builder = begun();
        builder.planSetting(Field::SorenessDays, Decimal::whole(sorenessDays))
            .checks("2026-03-03", {1, 9, 8, 2, 4, 3, 5})
            .visit("2026-03-03")
            .visit("2026-03-10");

        QCOMPARE(visits(builder, "2026-03-31").at(1).before, before);
    }

    void theWeeksAfterBeginBehindTheSorenessDaysAndEndBeforeTheNextVisit()
    {
        DiaryBuilder builder = begun();
        // Visits on 3 and 22 March: soreness 4 and 5, spans 6-12, 13-19, 20-21; then soreness
        // 23 and 24, span 25-28 up to the last day.
        builder.visit("2026-03-03")
            .visit("2026-03-22")
            .checks("2026-02-24", {6, 6, 6, 6, 6, 6, 6}) // up to 2 March
            .checks("2026-03-03", {9, 9, 9}) // the visit and its soreness days
            .checks("2026-03-06", {5, 5, 5, 4, 5, 5, 5})
            .checks("2026-03-13", {4, -1, -1, 3, -1, -1, 3})
            .checks("2026-03-20", {2, 2}) // too few
            .checks("2026-03-25", {1, 1, 0});

        const auto found = visits(builder, "2026-03-28");

        using Weeks = std::vector<std::optional<double>>;
        QCOMPARE(found.size(), 2);
        QVERIFY((found[0].afterWeeks == Weeks{5.0, 3.0, std::nullopt}));
        QCOMPARE(found[0].before, std::optional(6.0));
        QCOMPARE(found[0].change, std::optional(-3.0)); // the last week that is known
        QVERIFY((found[1].afterWeeks == Weeks{1.0}));
        QCOMPARE(found[1].before, std::optional(2.5)); // 3 and 3 on the 16th and 19th, 2 and 2
    }

    void aVisitWithoutDaysAfterItHasNoWeeks()
    {
        DiaryBuilder builder = begun();
        builder.checks("2026-03-02", {5, 5, 5, 5, 5, 5, 5, 5, 5, 5}).visit("2026-03-06").visit("2026-03-09");

        const auto found = visits(builder, "2026-03-10");

        QVERIFY(found[0].afterWeeks.empty()); // both days before the next visit are soreness days
        QVERIFY(found[1].afterWeeks.empty());
        QCOMPARE(found[1].before, std::optional(5.0));
        QCOMPARE(found[1].change, kNone);
    }

    void visitsBeforeThePlanAreThereAndThoseAfterTheLastDayAreNot()
    {
        DiaryBuilder builder = begun();
        builder.visit("2026-02-20", Parts{.impulses = "2000", .hz = "10"}.toBody())
            .visit("2026-03-11")
            .checks("2026-02-13", {8, 8, 8})
            .checks("2026-02-23", {7, 7, 7, 7, 7, 7, 7, 6, 6, 6});

        const auto found = visits(builder, "2026-03-10", "2026-03-09");

        QCOMPARE(found.size(), 1);
        QCOMPARE(found[0].day, day("2026-02-20"));
        QCOMPARE(found[0].before, std::optional(8.0));
        QCOMPARE(found[0].afterWeeks.size(), 3); // to the last day: the next visit is not known yet
        QCOMPARE(found[0].change, std::optional(-2.0));
        QCOMPARE(found[0].seconds, std::optional(200.0));
    }
};

MORROW_SUITE(tst_visits)

#include "tst_visits.moc"
