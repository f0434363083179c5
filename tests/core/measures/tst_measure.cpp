// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include <cmath>

using namespace morrow;
using namespace morrow::test;

namespace {

/// A heel and a shoulder, which start a week apart.
DiaryBuilder heelAndShoulder()
{
    DiaryBuilder builder;
    builder.complaint("heel", body({{Field::Region, std::string("heel")}, {Field::Side, std::string("left")}}))
        .item(item("raise", "2026-03-02", {onDays(3, 15), onDays(4, 10)}))
        .complaint("shoulder")
        .item(item("press", "2026-03-09", {onDays(2, 10)}));
    return builder;
}

std::vector<ComplaintMeasures> all(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measure(builder.diary(), to, from ? std::optional<CivilDay>(*from) : std::nullopt).value();
}

std::vector<std::string> names(const std::vector<ComplaintMeasures> &measures)
{
    std::vector<std::string> result;
    for (const ComplaintMeasures &complaint : measures)
        result.push_back(complaint.complaint);
    return result;
}

} // namespace

/// Each complaint is measured by itself, over a window of its own.
class tst_measure : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aComplaintThatHasNotStartedIsLeftOut()
    {
        QCOMPARE(names(all(heelAndShoulder(), "2026-03-01")), std::vector<std::string>{});
        QCOMPARE(names(all(heelAndShoulder(), "2026-03-08")), std::vector<std::string>{"heel"});
        QCOMPARE(names(all(heelAndShoulder(), "2026-03-09")), (std::vector<std::string>{"heel", "shoulder"}));
    }

    void aComplaintWithoutAPlanIsLeftOut()
    {
        DiaryBuilder builder = heelAndShoulder();
        builder.complaint("knee").checks("2026-03-02", {5, 5, 5});

        QCOMPARE(names(all(builder, "2026-03-20")), (std::vector<std::string>{"heel", "shoulder"}));
    }

    void theWindowBeginsOnTheAskedDayOrTheFirstStart()
    {
        QCOMPARE(all(heelAndShoulder(), "2026-03-20")[0].from, day("2026-03-02"));
        QCOMPARE(all(heelAndShoulder(), "2026-03-20", "2026-03-05")[0].from, day("2026-03-05"));
        QCOMPARE(all(heelAndShoulder(), "2026-03-20", "2026-03-05")[1].from, day("2026-03-09"));
        QCOMPARE(all(heelAndShoulder(), "2026-03-20", "2020-01-01")[0].from, day("2026-03-02"));
    }

    void aWindowThatEndsBeforeItBeginsIsRefused()
    {
        const Diary diary = heelAndShoulder().diary();

        const auto refused = measure(diary, day("2026-03-20"), day("2026-03-21"));

        QVERIFY(!refused);
        QVERIFY(refused.error() == MeasureError::WindowEmpty);
        QVERIFY(!measure(Diary::from({}), day("2026-03-20"), day("2026-03-21")));
        QVERIFY(measure(diary, day("2026-03-20"), day("2026-03-20")));
    }

    void aWindowOfOneDayIsMeasured()
    {
        DiaryBuilder builder = heelAndShoulder();
        builder.complaint("heel").sets("2026-03-05", "morning", "raise", 2, 15).check("2026-03-05", 4);

        const ComplaintMeasures found = measured(builder, "2026-03-05", "2026-03-05");

        QCOMPARE(found.items[0].adherence.setsDue, 3);
        QCOMPARE(found.items[0].adherence.setsDone, 2);
        QCOMPARE(found.items[0].weeks.size(), 1);
        QCOMPARE(found.check.expected, 1);
        QCOMPARE(found.check.recorded, 1);
    }

    void anEmptyDiaryHasNoMeasures() { QVERIFY(all(DiaryBuilder(), "2026-03-05").empty()); }

    void whatACaseIsCalledIsHandedOn()
    {
        const ComplaintMeasures found = measured(heelAndShoulder(), "2026-03-20");

        QCOMPARE(found.region, std::string("heel"));
        QVERIFY(found.side == Side::Left);
        QCOMPARE(found.items[0].item, std::string("raise"));
        QCOMPARE(found.items[0].exercise, std::string("raise"));
        QVERIFY(!found.items[0].side);
    }

    void theStageIsThatOfTheLastDayAndALaterChangeDoesNotCount()
    {
        DiaryBuilder builder = heelAndShoulder();
        builder.stage("2026-03-10", "raise", 2).stage("2026-03-21", "raise", 1);

        QCOMPARE(measured(builder, "2026-03-20").items[0].stage, 2);
        QCOMPARE(measured(builder, "2026-03-20").items[0].stageBegan, day("2026-03-10"));
        QCOMPARE(measured(builder, "2026-03-21").items[0].stage, 1);
    }

    void anItemThatStartsLaterHasAStageAndNothingDue()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "2026-03-02", {onDays(3, 15)})).item(item("hop", "2026-04-01", {onDays(3, 15)}));

        const ItemMeasures later = measured(builder, "2026-03-20").items.at(1);

        QCOMPARE(later.stage, 1);
        QCOMPARE(later.stageBegan, day("2026-04-01"));
        QCOMPARE(later.adherence.setsDue, 0);
        QCOMPARE(later.adherence.setRatio, kNone);
        QCOMPARE(later.weeks.size(), 3);
    }

    void aComplaintIsMeasuredAsIfItsRowsStoodAlone()
    {
        const auto tellHeel = [](DiaryBuilder &builder) {
            builder.complaint("heel", body({{Field::Side, std::string("left")}}))
                .planSetting(Field::RestDaysAfterVisit, Decimal::whole(2))
                .item(restingAfterVisits(item("raise", "2026-03-02", {onDays(3, 15)})))
                .sets("2026-03-03", "morning", "raise", 3, 15)
                .checks("2026-03-02", {6, 5, 4, 3})
                .skip("2026-03-05", "morning")
                .visit("2026-03-06")
                .outcome("2026-03-06", "overall", "", "", "50");
        };
        DiaryBuilder alone;
        tellHeel(alone);
        DiaryBuilder together;
        together.complaint("shoulder")
            .planSetting(Field::SorenessDays, Decimal::whole(0))
            .item(item("press", "2026-02-20", {onDays(2, 10)}))
            .sets("2026-03-03", "morning", "press", 2, 10)
            .checks("2026-03-02", {1, 1, 1, 1, 1})
            .skip("2026-03-04", "morning")
            .easier("2026-03-04", "morning")
            .visit("2026-03-10")
            .putAside("2026-03-12")
            .outcome("2026-03-06", "overall", "", "", "90");
        tellHeel(together);

        const auto ofAlone = all(alone, "2026-03-20");
        const auto ofTogether = all(together, "2026-03-20");

        QVERIFY(ofAlone.back() == ofTogether.back());
        QVERIFY(ofTogether.size() == 2 && ofTogether[0].complaint == "shoulder");
    }

    void aCorrectionRecordedLaterCountsInAnEarlierWindow()
    {
        DiaryBuilder builder = heelAndShoulder();
        builder.complaint("heel")
            .set("2026-03-03", "morning", "raise", 1, 15, {}, {.id = "first", .recorded = "2026-03-03T08:00:00Z"})
            .set("2026-03-03", "morning", "raise", 1, 0, {}, {.recorded = "2026-04-03T08:00:00Z", .replaces = "first"});

        QCOMPARE(measured(builder, "2026-03-08").items[0].adherence.setsDone, 0);
    }

    void fiftyYearsAreCountedToTheDay()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "1976-03-01", {onDays(3, 15, "FREQ=DAILY;INTERVAL=2", {"morning", "evening"})}));
        builder.sets("2026-02-28", "morning", "raise", 3, 15);

        const ComplaintMeasures found = measured(builder, "2026-02-28"); // 18 262 days, the last of them an odd one
        const ItemMeasures &item = found.items[0];

        QCOMPARE(day("2026-02-28") - day("1976-03-01") + 1, 18262);
        QCOMPARE(item.adherence.setsDue, 9131 * 6);
        QCOMPARE(item.adherence.setsDone, 0);
        QCOMPARE(item.adherence.setsExtra, 3);
        QCOMPARE(item.weeks.size(), 2609);
        QCOMPARE(found.check.expected, 18262);
    }

    /// From 8 down to 3, a point each 3 044 days.
    void fiftyYearsOfChecksHaveATrend()
    {
        const CivilDay start = day("1976-03-01");
        const CivilDay to = day("2026-02-28");
        DiaryBuilder builder;
        builder.item(item("raise", start, {onDays(1, 15)}));
        for (CivilDay on = start; on <= to; on = on + 1)
            builder.check(on, 8 - (on - start) / 3044);
        builder.sets(to - 1, "morning", "raise", 1, 15);

        const ComplaintMeasures found = measured(builder, to);

        QCOMPARE(found.check.recorded, 18262);
        QCOMPARE(found.check.change, std::optional<double>(-5));
        QCOMPARE(found.check.trend->n, 2609);
        QVERIFY(found.check.trend->slope < 0 && std::isfinite(found.check.trend->slope));
        QVERIFY(found.check.trend->p >= 0 && found.check.trend->p < 1e-9);
        QCOMPARE(found.check.limits->meanRange, std::optional<double>(0));
        QVERIFY(!found.check.limits->lower && found.check.limits->beyond.empty()); // its first days are all equal
        QCOMPARE(found.response.settled, 1);
    }
};

MORROW_SUITE(tst_measure)

#include "tst_measure.moc"
