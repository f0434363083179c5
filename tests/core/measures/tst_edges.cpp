// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

const CivilDay kStart = day("2026-03-02");

DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", kStart, {onDays(3, 15)}));
    return builder;
}

Body said(std::initializer_list<std::pair<Field, int>> parts)
{
    Body result;
    for (const auto &[field, value] : parts)
        result.set(field, Decimal::whole(value));
    return result;
}

/// Two weeks in which all was done of items that have \a stages, whose answers are calm.
DiaryBuilder calmWeeks(const std::vector<Item> &items)
{
    DiaryBuilder builder;
    for (const Item &one : items)
        builder.item(one);
    for (int place = 0; place < 14; ++place) {
        builder.check(kStart + place, 3);
        builder.session(kStart + place, "morning", 3, 3);
        for (const Item &one : items)
            builder.sets(kStart + place, "morning", one.key, 3, 15);
    }
    return builder;
}

Item threeStages(std::string_view key, int later = 0)
{
    return item(key, kStart + later, {onDays(3, 15), onDays(3, 15), onDays(3, 15)});
}

/// Whether the first of the items waits for the second, of which \a tell says more.
template<class Tell>
bool firstWaits(Tell tell)
{
    // The other is ahead of nobody: it is the later in plan order.
    DiaryBuilder builder = calmWeeks({threeStages("squat"), threeStages("lunge")});
    tell(builder);
    const auto found = measured(builder, kStart + 13).items;
    return found.at(0).progression->decision == Decision::StepUp && !found.at(0).progression->waitsFor.empty();
}

ResponseMeasures responses(const DiaryBuilder &builder, int to = 20)
{
    return measured(builder, kStart + to).response;
}

} // namespace

/// Where one day, one value or one entry more or less makes the difference.
class tst_edges : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void anEmptyWindowHasNoDays()
    {
        const Window none{kStart, kStart + 5, kStart + 4};
        const Window one{kStart, kStart + 5, kStart + 5};

        QVERIFY(none.isEmpty());
        QCOMPARE(none.length(), std::size_t{0});
        QVERIFY(weeksOf(none).empty());
        QVERIFY(!one.isEmpty());
        QCOMPARE(one.length(), std::size_t{1});
    }

    void aSingleSessionHasNoTrendNoResponseAndNoOffer()
    {
        DiaryBuilder builder = begun();
        builder.session(kStart, "morning", 3, 3).sets(kStart, "morning", "squat", 3, 15);

        const ComplaintMeasures found = measured(builder, kStart);

        QCOMPARE(found.items.at(0).adherence.setRatio, std::optional(1.0));
        QVERIFY(!found.check.trend && !found.check.limits && !found.check.current && !found.check.change);
        QVERIFY(found.response.days.empty()); // its next day is not closed
        QVERIFY(found.items.at(0).progression->decision == Decision::Hold);
        QVERIFY(found == measured(builder, kStart)); // no number is NaN
    }

    void anItemThatNeverCameDueHasNoRatio()
    {
        DiaryBuilder builder;
        builder.item(item("squat", kStart, {onDays(3, 15, "FREQ=WEEKLY;BYDAY=SU")})); // begun on a Monday

        const ComplaintMeasures found = measured(builder, kStart + 5);
        const Adherence &adherence = found.items.at(0).adherence;

        QVERIFY(!adherence.setRatio && !adherence.sessionRatio && !adherence.sessionInterval && !adherence.volumeRatio);
        QCOMPARE(adherence.volumeDue, std::optional(0.0));
        QVERIFY(found == measured(builder, kStart + 5));
    }

    void extraSetsOfAllItemsAreAddedUp()
    {
        DiaryBuilder builder = begun();
        builder.item(item("lunge", kStart, {onDays(2, 10)}));
        builder.sets(kStart, "morning", "squat", 5, 15).sets(kStart, "morning", "lunge", 5, 10);

        QCOMPARE(measured(builder, kStart).all.setsExtra, std::int64_t{2 + 3});
    }

    void aChangeNeedsBothEnds()
    {
        DiaryBuilder noReference = begun();
        noReference.check(kStart + 17, 4).check(kStart + 18, 4).check(kStart + 19, 4);
        DiaryBuilder noCurrent = begun();
        noCurrent.checks(kStart, {6, 6, 6});

        for (const DiaryBuilder &builder : {noReference, noCurrent}) {
            const CheckMeasures found = measured(builder, kStart + 20).check;
            QCOMPARE(found.change, kNone);
            QCOMPARE(found.changeRatio, kNone);
            QVERIFY(!found.clearChange);
        }
    }

    void daysAwayAreThoseOfTheVersionThatCounts()
    {
        DiaryBuilder builder = begun();
        builder.pause(kStart + 8, kStart + 10, {.id = "first", .recorded = "2026-03-09T12:00:00Z"});
        builder.pause(kStart + 12, kStart + 15, {.recorded = "2026-03-20T12:00:00Z", .replaces = "first"});

        const Adherence found = adherence(builder, kStart + 20);

        QCOMPARE(found.away, 4); // missed, and declared so afterwards
        QCOMPARE(found.setsDue, std::int64_t{3 * (21 - 3)});
    }

    void aVisitOnTheLastDayIsThereAndTwoOfALaterDayAreOne()
    {
        DiaryBuilder builder = begun();
        builder.visit(kStart + 1).visit(kStart + 9).visit(kStart + 9);

        QCOMPARE(measured(builder, kStart + 9).visits.size(), std::size_t{2});
        QCOMPARE(measured(builder, kStart + 12).visits.size(), std::size_t{2});
        QVERIFY(measured(builder, kStart + 9).visits.at(1).afterWeeks.empty());
    }

    void theSpanAfterAVisitHasSevenDays()
    {
        DiaryBuilder builder = begun(); // soreness until day 3; spans of days 4 .. 10 and 11 on
        builder.visit(kStart + 1).check(kStart + 9, 2).check(kStart + 10, 2).check(kStart + 11, 2);

        QCOMPARE(measured(builder, kStart + 11).visits.at(0).afterWeeks.size(), std::size_t{2}); // of one day, unknown
        QCOMPARE(measured(builder, kStart + 17).visits.at(0).afterWeeks.at(0), kNone);
        builder.check(kStart + 4, 6);
        QCOMPARE(measured(builder, kStart + 17).visits.at(0).afterWeeks.at(0), std::optional(2.0));
    }

    void anyPartMakesAVisitOneThatGaveSomething_data()
    {
        QTest::addColumn<Body>("parts");

        QTest::newRow("warm-up impulses") << said({{Field::WarmupImpulses, 200}});
        QTest::newRow("warm-up Hz") << said({{Field::WarmupHz, 5}});
        QTest::newRow("impulses") << said({{Field::Impulses, 500}});
        QTest::newRow("Hz") << said({{Field::Hz, 8}});
        QTest::newRow("area") << said({{Field::AreaCm2, 20}});
    }

    void anyPartMakesAVisitOneThatGaveSomething()
    {
        QFETCH(Body, parts);
        const Body whole = said({{Field::Impulses, 2000}, {Field::Hz, 10}, {Field::AreaCm2, 40}});
        DiaryBuilder beside = begun();
        beside.visit(kStart + 3, whole).visit(kStart + 3, Body());
        DiaryBuilder with = begun();
        with.visit(kStart + 3, whole).visit(kStart + 3, parts);

        QCOMPARE(measured(beside, kStart + 5).visits.at(0).seconds, std::optional(200.0));
        QCOMPARE(measured(with, kStart + 5).visits.at(0).seconds, kNone);
    }

    void aWeekOfNoVolumeHasNoChange()
    {
        DiaryBuilder builder;
        builder.item(item("squat", kStart, {loaded(onDays(1, 10), "20")}));
        builder.set(kStart, "morning", "squat", 1, 10).set(kStart + 7, "morning", "squat", 1, 10, {.loadKg = "0"});

        const auto weeks = measured(builder, kStart + 13).items.at(0).weeks;

        QCOMPARE(weeks.at(1).volume, std::optional(0.0));
        QCOMPARE(weeks.at(1).volumeChange, kNone);
    }

    void aWeekOfOneRepetitionHasAChange()
    {
        DiaryBuilder builder = begun();
        builder.set(kStart, "morning", "squat", 1, 2).set(kStart + 7, "morning", "squat", 1, 1);

        QCOMPARE(measured(builder, kStart + 13).items.at(0).weeks.at(1).volumeChange, std::optional(-0.5));
    }

    void theStrengthOfAWeekIsItsGreatest()
    {
        DiaryBuilder builder = begun();
        int number = 1;
        for (const int kg : {60, 90, 30}) {
            Body set = said({{Field::Set, number++}, {Field::Reps, 3}, {Field::LoadKg, kg}, {Field::Spare, 0}});
            set.set(Field::Slot, std::string("morning"));
            set.set(Field::Item, std::string("squat"));
            builder.entry(Kind::Set, kStart, set);
        }

        QCOMPARE(measured(builder, kStart + 6).items.at(0).weeks.at(0).strength, std::optional(90 * 1.1));
    }

    void whatIsNoTestIsNotComparedWithTheOtherSide()
    {
        DiaryBuilder builder = begun();
        builder.complaint("main", body({{Field::Side, std::string("right")}}));
        builder.outcome(kStart, "activity", "hops", "left", "4").outcome(kStart, "test", "hops", "right", "8");
        DiaryBuilder other = begun();
        other.complaint("main", body({{Field::Side, std::string("right")}}));
        other.outcome(kStart, "test", "hops", "left", "4").outcome(kStart, "activity", "hops", "right", "8");

        for (const DiaryBuilder &one : {builder, other}) {
            for (const OutcomeMeasures &series : measured(one, kStart).outcomes)
                QCOMPARE(series.ratio, kNone);
        }
    }

    void aTestOfEitherSideIsComparedWithTheOther()
    {
        for (const auto &[side, other] : {std::pair("right", "left"), std::pair("left", "right")}) {
            DiaryBuilder builder = begun();
            builder.complaint("main", body({{Field::Side, std::string(side)}}));
            builder.outcome(kStart, "test", "hops", other, "4").outcome(kStart, "test", "hops", side, "3");

            QCOMPARE(measured(builder, kStart).outcomes.at(1).ratio, std::optional(0.75));
        }
    }

    void onlyAStepUpOfAnotherItemIsWaitedFor()
    {
        QVERIFY(firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 7, "lunge", 2); })); // six days ago
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 6, "lunge", 2); })); // seven
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 14, "lunge", 2); })); // not yet
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 7, "lunge", 1); })); // begun anew
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 7, "lunge", 9); })); // there is none
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 1, "lunge", 3).stage(kStart + 9, "lunge", 2); }));
        QVERIFY(firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 1, "lunge", 2).stage(kStart + 9, "lunge", 3); }));
        QVERIFY(firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 13, "lunge", 2); })); // the last day
        QVERIFY(firstWaits([](DiaryBuilder &builder) {
            builder.stage(kStart + 1, "lunge", 2).stage(kStart + 12, "lunge", 1).stage(kStart + 13, "lunge", 2);
        }));
        QVERIFY(!firstWaits([](DiaryBuilder &builder) { builder.stage(kStart + 12, "lunge", 0).stage(kStart + 13, "lunge", 1); }));
    }

    void anItemDoesNotWaitForItsOwnStep()
    {
        DiaryBuilder builder = calmWeeks({threeStages("squat"), item("lunge", kStart, {onDays(3, 15)})});
        builder.stage(kStart + 7, "squat", 2);

        const Progression found = *measured(builder, kStart + 13).items.at(0).progression;

        QVERIFY(found.decision == Decision::StepUp);
        QVERIFY(found.waitsFor.empty());
    }

    void ofTwoThatWouldStepUpOnePrecedes()
    {
        const auto waiting = [](const std::vector<Item> &items) {
            const auto found = measured(calmWeeks(items), kStart + 13).items;
            return std::pair(!found.at(0).progression->waitsFor.empty(), !found.at(1).progression->waitsFor.empty());
        };

        QVERIFY(waiting({threeStages("squat"), threeStages("lunge")}) == std::pair(false, true)); // by plan order
        QVERIFY(waiting({threeStages("squat"), threeStages("lunge", 2)}) == std::pair(false, true)); // by time in the stage
        QVERIFY(waiting({threeStages("squat", 2), threeStages("lunge")}) == std::pair(true, false));
    }

    void anItemThatHoldsIsNotWaitedFor()
    {
        const auto found = measured(calmWeeks({item("squat", kStart, {onDays(3, 15)}), threeStages("lunge", 2)}), kStart + 13).items;

        QVERIFY(found.at(0).progression->decision == Decision::Hold);
        QVERIFY(found.at(1).progression->decision == Decision::StepUp);
        QVERIFY(found.at(1).progression->waitsFor.empty());
    }

    void usualIsOfSevenDaysThatEndWithTheDay()
    {
        const auto rise = [](int first) {
            DiaryBuilder builder = begun();
            builder.sets(kStart + 10, "morning", "squat", 3, 15);
            builder.check(kStart + first, 0).check(kStart + 9, 4).check(kStart + 10, 4).check(kStart + 11, 4);
            return responses(builder).days.at(0).rise;
        };

        QCOMPARE(rise(4), std::optional(0.0));
        QCOMPARE(rise(3), kNone); // two values are too few
    }

    void theResponseIsSoreOnlyIfTheNextDayIs()
    {
        DiaryBuilder builder = begun();
        builder.checks(kStart, {3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3}).visit(kStart + 6); // sore on days 7 and 8
        builder.sets(kStart + 7, "morning", "squat", 3, 15).sets(kStart + 8, "morning", "squat", 3, 15);

        const auto found = responses(builder);

        QVERIFY(found.days.at(0).reason == UnknownBecause::AfterVisit);
        QVERIFY(found.days.at(1).state == ResponseState::Settled);
    }

    void aLoadingDayHasARepetitionAndIsListedOnceInOrder()
    {
        DiaryBuilder builder = begun();
        builder.item(item("lunge", kStart, {onDays(2, 10)}));
        builder.set(kStart + 5, "morning", "squat", 1, 1).set(kStart + 5, "morning", "squat", 2, 9);
        builder.set(kStart + 6, "morning", "squat", 1, 0).set(kStart + 7, "morning", "squat", 1, 1);
        builder.set(kStart + 3, "morning", "lunge", 1, 9).set(kStart + 5, "morning", "lunge", 1, 9);

        const auto found = responses(builder).days;

        QCOMPARE(found.size(), std::size_t{3});
        QCOMPARE(found.at(0).day, kStart + 3);
        QCOMPARE(found.at(1).day, kStart + 5);
        QCOMPARE(found.at(2).day, kStart + 7);
    }

    void eachStateIsCounted()
    {
        DiaryBuilder builder = begun();
        builder.checks(kStart, {3, 3, 3, 3, 3, 6});
        for (const int place : {3, 4, 5})
            builder.sets(kStart + place, "morning", "squat", 3, 15);

        const auto found = responses(builder);

        QCOMPARE(found.settled, 1);
        QCOMPARE(found.unsettled, 1);
        QCOMPARE(found.unknown, 1);
    }

    void aChartOfOnePairHasItsRange()
    {
        const auto found = individualsChart(std::vector<TimedValue>{{0, 1}, {1, 2}, {5, 6}}, 3);

        QCOMPARE(found->centre, 3.0);
        QCOMPARE(found->meanRange, std::optional(1.0));
        QCOMPARE(found->limits->upper, 3 + 3 / 1.128);
    }
};

MORROW_SUITE(tst_edges)

#include "tst_edges.moc"
