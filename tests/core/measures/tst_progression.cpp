// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr int kDays = 14;

void addSession(DiaryBuilder &builder, Day day, int during, int after, const char *complaint = "main")
{
    builder.entry(Kind::Session, day,
        body({{Field::Complaint, std::string(complaint)}, {Field::Slot, std::string("morning")},
            {Field::PainDuring, Decimal::whole(during)}, {Field::PainAfter, Decimal::whole(after)}}));
}

/// Two weeks from 2 March on, everything done as prescribed, every check and session 3: a step
/// to stage 2 on the 16th, the last closed day the 15th.
DiaryBuilder twoGoodWeeks(const std::vector<Item> &items)
{
    DiaryBuilder builder;
    for (const Item &one : items)
        builder.item(one);
    for (int i = 0; i < kDays; ++i) {
        const CivilDay today = day("2026-03-02") + i;
        builder.check(today, 3);
        addSession(builder, today, 3, 3);
        for (const Item &one : items)
            builder.sets(today, "morning", one.key, 3, 15);
    }
    return builder;
}

Item twoStages(std::string_view key)
{
    return item(key, "2026-03-02", {onDays(3, 15), onDays(4, 15)});
}

DiaryBuilder goodWeeks()
{
    return twoGoodWeeks({twoStages("squat")});
}

Progression progression(const DiaryBuilder &builder, Day to = "2026-03-15")
{
    return measured(builder, to).items.at(0).progression.value();
}

bool isUnmet(const Progression &progression, Condition condition)
{
    return std::find(progression.unmet.begin(), progression.unmet.end(), condition) != progression.unmet.end();
}

} // namespace

/// The clinician's own rule for the next stage, with the person's numbers.
class tst_progression : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void twoGoodWeeksStepUp()
    {
        const Progression found = progression(goodWeeks());

        QVERIFY(found.decision == Decision::StepUp);
        QCOMPARE(found.toStage, std::optional(2));
        QVERIFY(found.unmet.empty());
        QVERIFY(found.waitsFor.empty());
    }

    void theLastStageHasNoNext()
    {
        const Progression found = progression(twoGoodWeeks({item("squat", "2026-03-02", {onDays(3, 15)})}));

        QVERIFY(found.decision == Decision::Hold);
        QVERIFY(found.unmet == std::vector{Condition::NextStage});
        QVERIFY(!found.toStage);
    }

    void daysInStageLeaveOutAPause()
    {
        Item squat = twoStages("squat");
        squat.stages[0].minDays = kDays;
        QVERIFY(progression(twoGoodWeeks({squat})).decision == Decision::StepUp);

        DiaryBuilder paused = twoGoodWeeks({squat});
        paused.pause("2026-03-05", "2026-03-05");

        QVERIFY(isUnmet(progression(paused), Condition::DaysInStage));
    }

    void sessionsInStageAreThoseAttended()
    {
        Item squat = twoStages("squat");
        squat.stages[0].minSessions = kDays;
        QVERIFY(progression(twoGoodWeeks({squat})).decision == Decision::StepUp);

        squat.stages[0].minSessions = kDays + 1;

        QVERIFY(progression(twoGoodWeeks({squat})).unmet == std::vector{Condition::SessionsInStage});
    }

    void aMissedWeekIsTooLittle()
    {
        DiaryBuilder builder = goodWeeks();
        for (int i = 0; i < 3; ++i) { // 33 of 42 sets are 79 %
            for (int set = 1; set <= 3; ++set)
                builder.set(day("2026-03-03") + i, "morning", "squat", set, 0, {}, {.recorded = "2026-03-10T08:00:00Z"});
        }

        QVERIFY(progression(builder).unmet == std::vector{Condition::Adherence});
    }

    void fewerRepsThanPrescribedAreNotComplete()
    {
        DiaryBuilder builder = goodWeeks();
        builder.set("2026-03-14", "morning", "squat", 2, 14, {}, {.recorded = "2026-03-14T20:00:00Z"});

        QVERIFY(progression(builder).unmet == std::vector{Condition::SetsComplete});
    }

    void aSessionAboveTheLimitHoldsBack()
    {
        DiaryBuilder builder = goodWeeks();
        builder.planSetting(Field::DuringLimit, Decimal::whole(2));

        QVERIFY(progression(builder).unmet == std::vector{Condition::PainDuring});
    }

    void aSessionWithoutAValueIsNotWithinTheLimit()
    {
        DiaryBuilder builder = goodWeeks();
        builder.session("2026-03-14", "evening", 1, std::nullopt);

        QVERIFY(progression(builder).unmet == std::vector{Condition::PainAfter});
    }

    void whatIsNotAskedIsNoCondition()
    {
        DiaryBuilder builder = goodWeeks();
        builder.planSetting(Field::Asks, std::string("none")).planSetting(Field::DuringLimit, Decimal::whole(2));

        QVERIFY(progression(builder).decision == Decision::StepUp);
    }

    void anUnknownResponseDoesNotSettle()
    {
        DiaryBuilder builder = goodWeeks();
        builder.entry(Kind::Check, "2026-03-14", body({{Field::Complaint, std::string("main")}, {Field::Declined, Decimal::whole(1)}}),
            {.recorded = "2026-03-14T20:00:00Z"});

        QVERIFY(progression(builder).unmet == std::vector{Condition::Settled});
    }

    void twoUnsettledDaysStepDown()
    {
        DiaryBuilder builder = goodWeeks();
        for (const char *one : {"2026-03-14", "2026-03-15"})
            builder.check(one, 6, std::nullopt, {.recorded = "2026-03-15T20:00:00Z"});

        const Progression first = progression(builder);
        builder.stage("2026-03-02", "squat", 2);
        const Progression second = progression(builder);

        QVERIFY(first.decision == Decision::StepDown);
        QVERIFY(!first.toStage); // in stage 1 the load is eased
        QVERIFY(second.decision == Decision::StepDown);
        QCOMPARE(second.toStage, std::optional(1));
    }

    void oneUnsettledDayHolds()
    {
        DiaryBuilder builder = goodWeeks();
        builder.check("2026-03-15", 6, std::nullopt, {.recorded = "2026-03-15T20:00:00Z"});

        QVERIFY(progression(builder).decision == Decision::Hold);
    }

    void aSignMakesForContactUntilTheClinicAnswers()
    {
        DiaryBuilder builder = goodWeeks();
        builder.entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("numbness")}}), {.id = "sign-1"});
        QVERIFY(progression(builder).decision == Decision::Contact);

        builder.entry(Kind::Cleared, "2026-03-16", body({{Field::Flag, std::string("sign-1")}}));

        QVERIFY(progression(builder).decision == Decision::StepUp);
        QVERIFY(progression(builder, "2026-03-14").decision == Decision::Contact); // not answered by the 15th
    }

    void aCorrectedSignIsOpenAgain()
    {
        DiaryBuilder builder = goodWeeks();
        builder.entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("numbness")}}), {.id = "sign-1"})
            .entry(Kind::Cleared, "2026-03-04", body({{Field::Flag, std::string("sign-1")}}))
            .entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("weakness")}}), {.id = "sign-2", .replaces = "sign-1"});

        QVERIFY(progression(builder).decision == Decision::Contact);
    }

    void painAtTheContactLevelMakesForContact()
    {
        DiaryBuilder builder = goodWeeks();
        addSession(builder, "2026-03-16", 8, 1); // today

        const Progression found = progression(builder);

        QVERIFY(found.decision == Decision::Contact);
        QVERIFY(found.reasons.back() == (Reason{Condition::SessionPain, true, 8, 8}));
        QVERIFY(progression(builder, "2026-03-14").decision != Decision::Contact);
    }

    void aHighCheckThatIsUsualMakesForNoContact()
    {
        DiaryBuilder high;
        high.item(twoStages("squat")).checks("2026-03-02", {7, 7, 7, 7, 7, 7, 8});
        DiaryBuilder jump;
        jump.item(twoStages("squat")).checks("2026-03-02", {3, 3, 3, 3, 3, 3, 8});
        DiaryBuilder alone;
        alone.item(twoStages("squat")).check("2026-03-08", 8);

        QVERIFY(progression(high, "2026-03-08").decision != Decision::Contact);
        QVERIFY(progression(jump, "2026-03-08").decision == Decision::Contact);
        QVERIFY(progression(alone, "2026-03-08").decision == Decision::Contact); // nothing usual is known
    }

    void ofTwoThatWouldStepUpTheLongerInItsStageGoesFirst()
    {
        Item late = twoStages("lunge");
        late.start = day("2026-03-03");
        const auto items = measured(twoGoodWeeks({late, twoStages("squat")}), "2026-03-15").items;

        QVERIFY(items[0].progression->decision == Decision::StepUp && items[1].progression->decision == Decision::StepUp);
        QVERIFY(items[0].progression->waitsFor == std::vector{(WaitsFor{"squat", GoesFirst::LongerInStage, std::nullopt})});
        QVERIFY(items[1].progression->waitsFor.empty());
    }

    void anotherItemThatHasJustSteppedUpIsWaitedFor()
    {
        Item lunge = item("lunge", "2026-03-02", {onDays(3, 15), onDays(3, 15)});
        DiaryBuilder builder = twoGoodWeeks({twoStages("squat"), lunge});
        builder.stage("2026-03-09", "lunge", 2);

        const std::vector<WaitsFor> waitsFor = progression(builder).waitsFor; // six days ago, and the spacing is seven
        QCOMPARE(waitsFor.size(), std::size_t{1});
        QVERIFY(waitsFor[0].because == GoesFirst::SteppedUp);
        QCOMPARE(builder.diary().entries()[waitsFor[0].change.value()].day, day("2026-03-09"));
        QVERIFY(progression(builder, "2026-03-16").waitsFor.empty());
    }

    void aStageThatBeganWithAChangeIsWaitedForByThatChange()
    {
        DiaryBuilder builder = twoGoodWeeks({twoStages("squat"), twoStages("lunge")});
        builder.stage("2026-03-02", "squat", 1);
        const auto items = measured(builder, "2026-03-15").items;

        const std::vector<WaitsFor> &waitsFor = items[1].progression->waitsFor;
        QCOMPARE(waitsFor.size(), std::size_t{1});
        QVERIFY(waitsFor[0].because == GoesFirst::EarlierInPlan);
        QVERIFY(builder.diary().entries()[waitsFor[0].change.value()].kind == Kind::Stage);
    }

    void whatIsNotUnderWayHasNoDecision()
    {
        Item stretch = twoStages("stretch");
        stretch.loads = false;
        const auto none = [](const DiaryBuilder &builder) { return !measured(builder, "2026-03-15").items.at(0).progression; };
        DiaryBuilder off = goodWeeks();
        off.planSetting(Field::Authority, std::string("off"));
        DiaryBuilder aside = goodWeeks();
        aside.putAside("2026-03-15");
        DiaryBuilder later;
        later.item(item("lunge", "2026-03-20", {onDays(3, 15)})).item(twoStages("squat"));

        QVERIFY(none(twoGoodWeeks({stretch})));
        QVERIFY(none(twoGoodWeeks({until(twoStages("squat"), "2026-03-14")})));
        QVERIFY(!none(twoGoodWeeks({until(twoStages("squat"), "2026-03-15")})));
        QVERIFY(none(off));
        QVERIFY(none(aside));
        QVERIFY(none(later));
    }

    void strengthIsEpleysWithRepetitionsInReserve_data()
    {
        QTest::addColumn<int>("reps");
        QTest::addColumn<int>("spare");
        QTest::addColumn<std::optional<double>>("strength");

        // Epley 1985: 100 kg x 10 gives 133.33 kg
        QTest::newRow("ten to the end") << 10 << 0 << std::optional(100 * (1 + 10.0 / 30));
        QTest::newRow("eight with two in reserve") << 8 << 2 << std::optional(100 * (1 + 10.0 / 30));
        QTest::newRow("too many for an estimate") << 8 << 3 << kNone;
        QTest::newRow("a single one") << 1 << 0 << kNone;
    }

    void strengthIsEpleysWithRepetitionsInReserve()
    {
        QFETCH(int, reps);
        QFETCH(int, spare);
        QFETCH(std::optional<double>, strength);
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(3, 8)}))
            .entry(Kind::Set, "2026-03-02",
                body({{Field::Slot, std::string("morning")}, {Field::Item, std::string("squat")}, {Field::Set, Decimal::whole(1)},
                    {Field::Reps, Decimal::whole(reps)}, {Field::LoadKg, Decimal::whole(100)}, {Field::Spare, Decimal::whole(spare)}}));

        QCOMPARE(measured(builder, "2026-03-08").items.at(0).weeks.at(0).strength, strength);
    }
};

MORROW_SUITE(tst_progression)

#include "tst_progression.moc"
