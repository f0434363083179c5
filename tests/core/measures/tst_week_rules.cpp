// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

const CivilDay kTo = day("2026-03-31"); // the last closed day

DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15)}));
    return builder;
}

WeekRule rule(const DiaryBuilder &builder, WeekRuleName name)
{
    const auto rules = measured(builder, kTo).rules;
    return *std::find_if(rules.begin(), rules.end(), [name](const WeekRule &one) { return one.rule == name; });
}

DiaryBuilder &addSession(DiaryBuilder &builder, int place, int during, int after)
{
    return builder.session(kTo + place, "morning", during, after);
}

/// A loading day \a place days from the last closed one, whose next check is \a next; usual is 3.
DiaryBuilder loading(int place, int next)
{
    DiaryBuilder builder = begun();
    builder.complaint("main", body({{Field::FirstAssessmentPain, Decimal::whole(3)}}));
    builder.sets(kTo + place, "morning", "squat", 3, 15).check(kTo + place + 1, next);
    return builder;
}

/// Checks on some days, counted from the last closed one: first the days before, then those of the week.
DiaryBuilder checks(const std::vector<int> &before, int pain, const std::vector<int> &week, int now)
{
    DiaryBuilder builder = begun();
    for (const int place : before)
        builder.check(kTo + place, pain);
    for (const int place : week)
        builder.check(kTo + place, now);
    return builder;
}

StageVolume counted(const Stage &stage, std::optional<Decimal> bodyMassKg = std::nullopt)
{
    return {stage.dose, bodyMassKg};
}

SetDone done(int reps, std::optional<int> spare, std::optional<Decimal> load = std::nullopt)
{
    return {.entry = {},
        .day = kTo,
        .slot = "morning",
        .number = 1,
        .reps = reps,
        .holdSeconds = std::nullopt,
        .loadKg = load,
        .spareReps = spare};
}

} // namespace

/// The clinician's limits over exactly the last seven closed days, and what a single set comes to.
class tst_week_rules : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void sessionsOfSevenDaysCount_data()
    {
        QTest::addColumn<int>("place");
        QTest::addColumn<bool>("counts");

        QTest::newRow("eight days ago") << -7 << false;
        QTest::newRow("the first of seven") << -6 << true;
        QTest::newRow("the last closed day") << 0 << true;
        QTest::newRow("today") << 1 << false;
    }

    void checksOfSevenDaysCount_data() { sessionsOfSevenDaysCount_data(); }
    void sessionsOfSevenDaysCount()
    {
        QFETCH(int, place);
        QFETCH(bool, counts);
        DiaryBuilder builder = begun();
        addSession(builder, place, 6, 5);

        QVERIFY(rule(builder, WeekRuleName::During)
            == (counts ? WeekRule{WeekRuleName::During, RuleState::Exceeded, 6, 5}
                       : WeekRule{WeekRuleName::During, RuleState::Unknown, std::nullopt, 5}));
        QVERIFY(rule(builder, WeekRuleName::After)
            == (counts ? WeekRule{WeekRuleName::After, RuleState::Ok, 5, 5}
                       : WeekRule{WeekRuleName::After, RuleState::Unknown, std::nullopt, 5}));
    }

    void checksOfSevenDaysCount()
    {
        QFETCH(int, place);
        QFETCH(bool, counts);
        DiaryBuilder builder = begun();
        builder.planSetting(Field::CheckLimit, number("5")).check(kTo + place, 6);

        QVERIFY(rule(builder, WeekRuleName::Check)
            == (counts ? WeekRule{WeekRuleName::Check, RuleState::Exceeded, 6, 5}
                       : WeekRule{WeekRuleName::Check, RuleState::Unknown, std::nullopt, 5}));
    }

    void noPainIsAValue()
    {
        DiaryBuilder builder = begun();
        addSession(builder, -1, 0, 0).check(kTo, 0);

        QCOMPARE(rule(builder, WeekRuleName::During).value, std::optional(0.0));
        QCOMPARE(rule(builder, WeekRuleName::Check).value, std::optional(0.0));
    }

    void theWeekBeforeHasSevenDaysToo()
    {
        const auto rise = [](const std::vector<int> &before, const std::vector<int> &week) {
            return rule(checks(before, 2, week, 5), WeekRuleName::Weekly).value;
        };

        QCOMPARE(rise({-13, -12, -8, -7}, {-6, -5, -1, 0}), std::optional(3.0));
        QCOMPARE(rise({-14, -12, -8, -7}, {-6, -5, -1, 0}), kNone);
        QCOMPARE(rise({-13, -12, -8}, {-6, -5, -1, 0}), kNone);
        QCOMPARE(rise({-13, -12, -8, -7}, {-6, -5, -1, 1}), kNone);
    }

    void loadingDaysOfTheWeekAreJudgedOnceTheirNextDayIsClosed_data()
    {
        QTest::addColumn<int>("place");
        QTest::addColumn<bool>("counts");

        QTest::newRow("eight days ago") << -7 << false;
        QTest::newRow("the first of seven") << -6 << true;
        QTest::newRow("the day before the last") << -1 << true;
        QTest::newRow("the last, whose answer is not in") << 0 << false;
    }

    void loadingDaysOfTheWeekAreJudgedOnceTheirNextDayIsClosed()
    {
        QFETCH(int, place);
        QFETCH(bool, counts);

        const WeekRule settled = rule(loading(place, 3), WeekRuleName::Settled);
        const WeekRule unsettled = rule(loading(place, 6), WeekRuleName::Settled);

        QCOMPARE(settled.value, counts ? std::optional(0.0) : kNone);
        QVERIFY(settled.state == (counts ? RuleState::Ok : RuleState::Unknown));
        QCOMPARE(unsettled.value, counts ? std::optional(1.0) : kNone);
        QVERIFY(unsettled.state == (counts ? RuleState::Exceeded : RuleState::Unknown));
    }

    void unsettledDaysAreCounted()
    {
        DiaryBuilder builder = loading(-6, 6);
        builder.sets(kTo - 4, "morning", "squat", 3, 15).check(kTo - 3, 7); // unsettled
        builder.sets(kTo - 2, "morning", "squat", 3, 15).check(kTo - 1, 2); // settled

        QCOMPARE(rule(builder, WeekRuleName::Settled).value, std::optional(2.0));
    }

    void strengthNeedsAnEffortThatTells_data()
    {
        QTest::addColumn<int>("reps");
        QTest::addColumn<int>("spare");
        QTest::addColumn<bool>("isKnown");

        QTest::newRow("none done") << 0 << 5 << false;
        QTest::newRow("one that was all") << 1 << 0 << false;
        QTest::newRow("one of two") << 1 << 1 << true;
        QTest::newRow("both of two") << 2 << 0 << true;
        QTest::newRow("ten") << 7 << 3 << true;
        QTest::newRow("eleven") << 7 << 4 << false;
    }

    void strengthNeedsAnEffortThatTells()
    {
        QFETCH(int, reps);
        QFETCH(int, spare);
        QFETCH(bool, isKnown);

        QCOMPARE(counted(loaded(onDays(1, 5), "20")).strength(done(reps, spare)).has_value(), isKnown);
    }

    void strengthNeedsALoadThatIsKnownAndMoved()
    {
        const Stage plain = onDays(1, 5);
        const Stage load = loaded(plain, "20");
        const Stage share = loaded(plain, "20", "0.5");

        QCOMPARE(counted(load).strength(done(3, 0)), std::optional(22.0)); // 20 (1 + 3/30)
        QCOMPARE(counted(load).strength(done(3, std::nullopt)), kNone); // spare repetitions were not told
        QCOMPARE(counted(load).strength(done(3, 0, number("0"))), kNone);
        QCOMPARE(counted(load).strength(done(3, 0, number("0.5"))), std::optional(0.55));
        QCOMPARE(counted(held(load, 30)).strength(done(3, 0)), kNone);
        QCOMPARE(counted(plain).strength(done(3, 0)), kNone);
        QCOMPARE(counted(plain).strength(done(3, 0, number("10"))), std::optional(11.0));
        QCOMPARE(counted(share, number("60")).strength(done(3, 0)), std::optional(50 * (1 + 3.0 / 30))); // 20 + 30
        QCOMPARE(counted(share).strength(done(3, 0)), kNone); // of an unknown mass
    }

    void aPartOfATempoThatWasNotPrescribedTakesNoTime()
    {
        const auto tension = [](std::optional<int> up, std::optional<int> pause, std::optional<int> down) {
            Stage stage = onDays(1, 5);
            stage.dose.upSeconds = up;
            stage.dose.pauseSeconds = pause;
            stage.dose.downSeconds = down;
            return counted(stage).tension(done(4, std::nullopt));
        };

        QVERIFY(tension(3, std::nullopt, std::nullopt) == std::optional<std::int64_t>(12));
        QVERIFY(tension(std::nullopt, 2, std::nullopt) == std::optional<std::int64_t>(8));
        QVERIFY(tension(std::nullopt, std::nullopt, 5) == std::optional<std::int64_t>(20));
        QVERIFY(tension(3, 2, 5) == std::optional<std::int64_t>(40));
        QVERIFY(!tension(std::nullopt, std::nullopt, std::nullopt));
    }
};

MORROW_SUITE(tst_week_rules)

#include "tst_week_rules.moc"
