// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

const CivilDay kTo = day("2026-04-30"); // the last closed day
const std::string kLater = "2026-04-30T20:00:00Z"; // recorded after all that is on paper

Item squat(Stage stage)
{
    return item("squat", "2026-03-02", {std::move(stage), onDays(3, 15)});
}

/// A diary of one item with two stages, the first as given.
DiaryBuilder begun(Stage stage = onDays(3, 15))
{
    DiaryBuilder builder;
    builder.item(squat(std::move(stage)));
    return builder;
}

DiaryBuilder &addSession(DiaryBuilder &builder, Day day, int during, int after)
{
    return builder.session(day, "morning", during, after);
}

Progression progression(const DiaryBuilder &builder, Day to = kTo)
{
    return measured(builder, to).items.at(0).progression.value();
}

Reason reason(const Progression &progression, Condition condition)
{
    const auto found = std::find_if(
        progression.reasons.begin(), progression.reasons.end(), [condition](const Reason &one) { return one.condition == condition; });
    return found == progression.reasons.end() ? Reason{condition, false, -1, -1} : *found;
}

Reason reason(const DiaryBuilder &builder, Condition condition)
{
    return reason(progression(builder), condition);
}

/// How many of the days of E are complete, and how many E has.
std::pair<int, int> completeDays(const DiaryBuilder &builder)
{
    const Progression found = progression(builder);
    return {static_cast<int>(*reason(found, Condition::SetsComplete).value), static_cast<int>(*reason(found, Condition::Settled).limit)};
}

bool isContact(const DiaryBuilder &builder)
{
    return progression(builder).decision == Decision::Contact;
}

/// A set of the morning four days before the last, in a stage of one set a day.
bool isComplete(Stage stage, int reps, const SetParts &parts = {})
{
    DiaryBuilder builder = begun(std::move(stage));
    builder.set(kTo - 4, "morning", "squat", 1, reps, parts);
    return completeDays(builder) == std::pair(1, 1);
}

} // namespace

/// Each condition of the next stage at its edge.
class tst_conditions : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void contactLooksBackTwoDaysAndAtToday_data()
    {
        QTest::addColumn<int>("place"); // counted from the last closed day
        QTest::addColumn<bool>("isContact");

        QTest::newRow("three days before") << -3 << false;
        QTest::newRow("two days before") << -2 << true;
        QTest::newRow("the last closed day") << 0 << true;
        QTest::newRow("today") << 1 << true;
        QTest::newRow("tomorrow") << 2 << false;
    }

    void contactLooksBackTwoDaysAndAtToday()
    {
        QFETCH(int, place);
        QFETCH(bool, isContact);
        DiaryBuilder session = begun();
        addSession(session, kTo + place, 8, 0);
        DiaryBuilder check = begun();
        check.check(kTo + place, 8);

        QCOMPARE(::isContact(session), isContact);
        QCOMPARE(::isContact(check), isContact);
    }

    void aSignOfTodayMakesForContactAndOneOfTomorrowDoesNot()
    {
        const auto sign = [](int place) {
            DiaryBuilder builder = begun();
            builder.entry(Kind::Flag, kTo + place, body({{Field::Sign, std::string("numbness")}}));
            return builder;
        };

        QVERIFY(isContact(sign(1)));
        QVERIFY(!isContact(sign(2)));
    }

    void contactNamesTheWorstPain()
    {
        DiaryBuilder builder = begun();
        for (const auto &[place, during, after] : {std::tuple(-2, 8, 9), {-1, 10, 2}, {0, 8, 7}})
            addSession(builder, kTo + place, during, after);
        builder.check(kTo - 2, 8).check(kTo - 1, 9).check(kTo, 8);

        QVERIFY(reason(builder, Condition::SessionPain) == (Reason{Condition::SessionPain, true, 10, 8}));
        QVERIFY(reason(builder, Condition::CheckPain) == (Reason{Condition::CheckPain, true, 9, 8}));
    }

    void aLevelOfNoPainIsMetByNoPain()
    {
        DiaryBuilder builder = begun();
        builder.planSetting(Field::ContactLevel, Decimal::whole(0));
        addSession(builder, kTo, 0, 0).check(kTo, 0);

        QVERIFY(reason(builder, Condition::SessionPain) == (Reason{Condition::SessionPain, true, 0, 0}));
        QVERIFY(reason(builder, Condition::CheckPain) == (Reason{Condition::CheckPain, true, 0, 0}));
    }

    void aHighCheckIsComparedWithWhatWasUsualOnTheDayBefore()
    {
        DiaryBuilder jump = begun(); // usual(d - 1) is 3; with d itself it would be 7
        jump.check(kTo - 7, 3).check(kTo - 6, 3).check(kTo - 1, 7).check(kTo, 8);
        DiaryBuilder usual = begun(); // usual(d - 1) is 7; without d - 1 it would be unknown
        usual.check(kTo - 3, 3).check(kTo - 2, 7).check(kTo - 1, 7).check(kTo, 8);

        QVERIFY(isContact(jump));
        QVERIFY(!isContact(usual));
    }

    void sessionsOlderThanTheStepWindowAreNoneOfThoseLookedAt()
    {
        DiaryBuilder within = begun();
        DiaryBuilder outside = begun();
        for (const int place : {13, 5, 4})
            within.sets(kTo - place, "morning", "squat", 3, 15);
        for (const int place : {14, 5, 4})
            outside.sets(kTo - place, "morning", "squat", 3, 15);

        QCOMPARE(completeDays(within), std::pair(3, 3));
        QCOMPARE(completeDays(outside), std::pair(2, 2));
    }

    void theLastDayHasNoAnswerAndIsNoneOfThoseLookedAt()
    {
        DiaryBuilder builder = begun();
        builder.sets(kTo - 1, "morning", "squat", 3, 15).sets(kTo, "morning", "squat", 3, 15);

        QCOMPARE(completeDays(builder), std::pair(1, 1));
    }

    void onlyTheLatestSessionsAreLookedAt()
    {
        DiaryBuilder builder = begun();
        for (const int place : {6, 5, 4, 3})
            builder.sets(kTo - place, "morning", "squat", place == 6 ? 3 : 2, 15);

        QCOMPARE(completeDays(builder), std::pair(0, 3));
    }

    void aDayOnWhichTheItemWasNotDueIsNone()
    {
        DiaryBuilder builder = begun(onDays(3, 15, "FREQ=DAILY;INTERVAL=2")); // 30 April is the 59th day after the start
        builder.sets(kTo - 4, "morning", "squat", 3, 15).sets(kTo - 3, "morning", "squat", 3, 15);

        QCOMPARE(completeDays(builder), std::pair(1, 1));
    }

    void aDayIsOneOfThemByAnyDoneSet()
    {
        DiaryBuilder builder = begun(onDays(3, 1));
        builder.set(kTo - 6, "morning", "squat", 1, 0).set(kTo - 6, "morning", "squat", 2, 15); // one done of two
        builder.set(kTo - 5, "morning", "squat", 1, 0); // none
        builder.set(kTo - 4, "morning", "squat", 1, 1); // a single repetition

        QCOMPARE(completeDays(builder), std::pair(0, 2));
    }

    void aDayIsCompleteByWhatWasDueInAllItsSlots()
    {
        const Stage twice = onDays(3, 15, "FREQ=DAILY", {"morning", "evening"});
        DiaryBuilder whole = begun(twice);
        whole.sets(kTo - 4, "morning", "squat", 3, 15).sets(kTo - 4, "evening", "squat", 3, 15);
        DiaryBuilder part = begun(twice);
        part.sets(kTo - 4, "morning", "squat", 3, 15).sets(kTo - 4, "evening", "squat", 2, 15);
        DiaryBuilder anyDay = begun(perWeek(3, 15, 7));
        anyDay.sets(kTo - 4, "day", "squat", 3, 15).sets(kTo - 3, "day", "squat", 2, 15);

        QCOMPARE(completeDays(whole), std::pair(1, 1));
        QCOMPARE(completeDays(part), std::pair(0, 1));
        QCOMPARE(completeDays(anyDay), std::pair(1, 2));
    }

    void aSetIsCompleteByRepsAndByHoldAndLoadWhereRecorded()
    {
        const Stage plain = onDays(1, 15);
        const Stage hold = held(onDays(1, 5), 30);
        const Stage load = loaded(onDays(1, 5), "20");

        QVERIFY(isComplete(plain, 15));
        QVERIFY(isComplete(plain, 16));
        QVERIFY(!isComplete(plain, 14));
        QVERIFY(isComplete(hold, 5));
        QVERIFY(isComplete(hold, 5, {.holdSeconds = 30}));
        QVERIFY(isComplete(hold, 5, {.holdSeconds = 31}));
        QVERIFY(!isComplete(hold, 5, {.holdSeconds = 29}));
        QVERIFY(isComplete(load, 5));
        QVERIFY(isComplete(load, 5, {.loadKg = "20"}));
        QVERIFY(isComplete(load, 5, {.loadKg = "22.5"}));
        QVERIFY(!isComplete(load, 5, {.loadKg = "19.5"}));
    }

    void painIsTheWorstOfTheSessionsLookedAt()
    {
        DiaryBuilder builder = begun();
        for (const int place : {6, 5, 4, 3})
            builder.sets(kTo - place, "morning", "squat", 3, 15);
        addSession(builder, kTo - 6, 6, 6); // too long ago to be looked at
        addSession(builder, kTo - 5, 3, 1);
        addSession(builder, kTo - 4, 5, 5);
        addSession(builder, kTo - 3, 4, 2);
        DiaryBuilder none = begun();
        none.sets(kTo - 4, "morning", "squat", 3, 15);
        addSession(none, kTo - 4, 0, 0);
        DiaryBuilder untold = begun();
        untold.sets(kTo - 4, "morning", "squat", 3, 15);

        QVERIFY(reason(builder, Condition::PainDuring) == (Reason{Condition::PainDuring, true, 5, 5}));
        QVERIFY(reason(builder, Condition::PainAfter) == (Reason{Condition::PainAfter, true, 5, 5}));
        QVERIFY(reason(none, Condition::PainDuring) == (Reason{Condition::PainDuring, true, 0, 5}));
        QVERIFY(reason(untold, Condition::PainDuring) == (Reason{Condition::PainDuring, false, std::nullopt, 5}));
        QVERIFY(!reason(begun(), Condition::PainDuring).isMet); // no session, no pain to go by
    }

    void twoUnsettledDaysAreEnoughAndNamed()
    {
        DiaryBuilder builder = begun();
        builder.complaint("main", body({{Field::FirstAssessmentPain, Decimal::whole(2)}}));
        builder.sets(kTo - 4, "morning", "squat", 3, 15).sets(kTo - 2, "morning", "squat", 3, 15);
        builder.check(kTo - 3, 5).check(kTo - 1, 5);

        const Progression found = progression(builder);

        QVERIFY(found.decision == Decision::StepDown);
        QVERIFY(found.reasons.back() == (Reason{Condition::LastTwoUnsettled, true, 2, 2}));
    }

    void theLevelNeedsBothACurrentPainAndAReference()
    {
        DiaryBuilder current = begun();
        current.check(kTo - 2, 0).check(kTo - 1, 0).check(kTo, 0);
        DiaryBuilder reference = begun();
        reference.complaint("main", body({{Field::FirstAssessmentPain, Decimal::whole(4)}}));
        DiaryBuilder edge = reference;
        edge.check(kTo - 2, 5).check(kTo - 1, 5).check(kTo, 5);
        DiaryBuilder above = reference;
        above.check(kTo - 2, 6).check(kTo - 1, 6).check(kTo, 6);

        QVERIFY(reason(current, Condition::Level) == (Reason{Condition::Level, false, 0, std::nullopt}));
        QVERIFY(reason(reference, Condition::Level) == (Reason{Condition::Level, false, std::nullopt, 5}));
        QVERIFY(reason(edge, Condition::Level) == (Reason{Condition::Level, true, 5, 5}));
        QVERIFY(!reason(above, Condition::Level).isMet);
    }

    void anItemThatStartsOnTheLastDayIsUnderWay() { QVERIFY(measured(begun(), "2026-03-02").items.at(0).progression); }
};

MORROW_SUITE(tst_conditions)

#include "tst_conditions.moc"
