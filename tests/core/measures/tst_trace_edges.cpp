// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "measures/trace.h"

#include <string>

using namespace morrow;
using namespace morrow::test;

namespace {

const CivilDay kTo = day("2026-03-20"); // the last closed day

/// What follows is about an item that was begun on 2 March.
DiaryBuilder begun()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(1, 15), onDays(1, 12)}));
    return builder;
}

/// \a days back from the last closed day; negative: after it.
CivilDay back(int days)
{
    return kTo - days;
}

std::string named(std::string_view what, int days)
{
    return std::string(what) + std::to_string(days);
}

/// The ids of all entries behind a number, those of the values first.
template<class MakeTrace>
std::string behind(const DiaryBuilder &builder, MakeTrace trace)
{
    const Diary diary = builder.diary();
    std::string text;
    for (const EntryIndex entry : trace(diary, diary.complaints().front()).entries())
        text += (text.empty() ? "" : " ") + diary.entries()[entry].id;
    return text;
}

std::string behindOf(const DiaryBuilder &builder, Condition condition)
{
    return behind(builder, [condition](const Diary &diary, const ComplaintDiary &complaint) {
        const Window window{day("2026-03-02"), day("2026-03-02"), kTo};
        return behindCondition(diary, complaint, complaint.items.front(), window, {.condition = condition});
    });
}

/// One set on each of the days that lie \a backs back.
DiaryBuilder setsOn(std::initializer_list<int> backs)
{
    DiaryBuilder builder = begun();
    for (const int days : backs)
        builder.set(back(days), "morning", "squat", 1, 15, {}, {.id = named("set", days)});
    return builder;
}

} // namespace

/// The first and the last entry that stands behind a number, and the ones next to them that do not.
class tst_trace_edges : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void sessionsAreThoseOfTheDaysOfTheLimit()
    {
        DiaryBuilder builder = setsOn({6, 5, 3, 0});
        builder.planSetting(Field::StepWindowDays, number("6")).planSetting(Field::StepSessions, number("4"));

        QCOMPARE(behindOf(builder, Condition::SetsComplete), std::string("set5 set3"));
    }

    void sessionsBeforeTheStageAreNotBehindIt()
    {
        DiaryBuilder builder = setsOn({5, 4, 3, 2});
        builder.stage(back(3), "squat", 2, {.id = "stage"});

        QCOMPARE(behindOf(builder, Condition::SetsComplete), std::string("set3 set2 stage"));
    }

    void aStepDownLooksAtTheLastTwo()
    {
        DiaryBuilder builder = setsOn({5, 4, 3});
        builder.check(back(4), 1, {}, {.id = "check4"}).check(back(3), 2, {}, {.id = "check3"}).check(back(2), 3, {}, {.id = "check2"});

        QCOMPARE(behindOf(builder, Condition::LastTwoUnsettled), std::string("check3 check2 set4 set3 check4"));
    }

    void painThatMakesForContactIsThatOfTheLastThreeDaysAndToday()
    {
        DiaryBuilder builder = begun();
        for (const int days : {3, 2, -1, -2}) {
            builder.check(back(days), 9, {}, {.id = named("check", days)})
                .session(back(days), "morning", 9, 9, {.id = named("session", days)});
        }

        QCOMPARE(behindOf(builder, Condition::SessionPain), std::string("session2 session-1"));
        QCOMPARE(behindOf(builder, Condition::CheckPain), std::string("check2 check-1 check3"));
    }

    void theFirstVisitBehindWhatWasUsualIsOneThatMadeItsFirstDaySore()
    {
        DiaryBuilder builder = setsOn({1});
        builder.check(back(7), 4, {}, {.id = "check7"}).check(back(0), 4, {}, {.id = "check0"});
        for (const int days : {10, 9, 1, 0})
            builder.visit(back(days), {}, {.id = named("visit", days)});

        // Sore are the two days after a visit; usual is made of the days 7 .. 1 back.
        QCOMPARE(behind(builder, [](const Diary &, const ComplaintDiary &complaint) { return behindResponse(complaint, kTo, back(1)); }),
            std::string("check0 set1 visit9 visit1"));
    }

    void visitsBehindTheWeekBeforeOneAreThoseThatMadeADayOfItSore()
    {
        DiaryBuilder builder = begun();
        for (const int days : {20, 19, 12, 11, 10})
            builder.visit(back(days), {}, {.id = named("visit", days)});

        QCOMPARE(
            behind(builder,
                [](const Diary &, const ComplaintDiary &complaint) { return behindVisit(complaint, kTo, back(10), VisitFigure::Before); }),
            std::string("visit19 visit12 visit10"));
    }

    void whatDoesNotLoadMakesNoDayOfLoading()
    {
        Item stretch = item("stretch", "2026-03-02", {onDays(1, 10)});
        stretch.loads = false;
        DiaryBuilder builder = setsOn({1});
        builder.item(stretch).set(back(1), "morning", "stretch", 1, 10, {}, {.id = "stretched"});

        QCOMPARE(behind(builder, [](const Diary &, const ComplaintDiary &complaint) { return behindResponse(complaint, kTo, back(1)); }),
            std::string("set1"));
    }

    void aPauseIsBehindADayInEveryVersionOnceOneOfThemTouchesIt()
    {
        DiaryBuilder builder = begun();
        builder.pause(back(9), back(8), {.id = "planned", .recorded = "2026-03-01T12:00:00Z"})
            .pause(back(9), back(5), {.id = "longer", .recorded = "2026-03-12T12:00:00Z", .replaces = "planned"})
            .pause(back(15), back(14), {.id = "other"});

        QCOMPARE(behind(builder,
                     [](const Diary &diary, const ComplaintDiary &complaint) {
                         const Window window{day("2026-03-02"), back(6), back(5)};
                         return behindAdherence(diary, complaint, complaint.items.front(), window, AdherenceFigure::Due);
                     }),
            std::string("planned longer"));
    }

    void anOutcomeOfTheLastDayIsBehindItsSeries()
    {
        DiaryBuilder builder = begun();
        for (const int days : {4, 0, -1})
            builder.outcome(back(days), "test", "hops", "left", "5", {.id = named("hops", days)});
        const Outcome like{0, kTo, OutcomeKind::Test, "hops", Side::Left, Decimal(), {}};

        QCOMPARE(behind(builder, [&](const Diary &, const ComplaintDiary &complaint) { return behindOutcome(complaint, kTo, like); }),
            std::string("hops4 hops0"));
    }

    void behindTheSetsOfADayAreThoseThatItAsksFor()
    {
        DiaryBuilder builder = begun();
        builder.item(item("twice", "2026-03-02", {perWeek(2, 5, 2)}))
            .item(until(item("over", "2026-03-02", {onDays(1, 15)}), "2026-03-10"));
        builder.set(kTo, "morning", "squat", 1, 1, {}, {.id = "counted"})
            .set(kTo, "morning", "squat", 2, 15, {}, {.id = "more-than-asked"})
            .set(kTo, "evening", "over", 1, 15, {}, {.id = "of-what-is-over"})
            .set(back(1), "morning", "squat", 1, 15, {}, {.id = "the-day-before"})
            .set(back(2), "day", "twice", 1, 5, {}, {.id = "in-the-week"})
            .set(kTo, "day", "twice", 1, 0, {}, {.id = "not-done"});
        builder.pause(kTo + 1, kTo + 3, {.id = "later"})
            .stage(back(12), "squat", 2, {.id = "before"})
            .stage(kTo, "squat", 1, {.id = "stage"})
            .stage(kTo + 1, "squat", 1, {.id = "next"})
            .stage(back(9), "over", 1, {.id = "of-what-was-over"});

        QCOMPARE(behind(builder, [](const Diary &diary, const ComplaintDiary &) { return behindToday(diary, kTo); }),
            std::string("counted in-the-week stage"));
    }

    void whatHasNotBegunOrIsOverHasNothingBehindIt()
    {
        const auto of = [](CivilDay start, CivilDay end) {
            DiaryBuilder builder;
            builder.item(until(item("squat", start, {onDays(1, 15)}), end)).pause(kTo, kTo + 3, {.id = "pause"});
            return behind(builder, [](const Diary &diary, const ComplaintDiary &) { return behindToday(diary, kTo); });
        };

        QCOMPARE(of(kTo, kTo), std::string("pause"));
        QCOMPARE(of(kTo + 1, kTo + 9), std::string());
        QCOMPARE(of(back(9), back(1)), std::string());
    }

    void behindTheDaysOfAWeekAreThoseBeforeTheDay()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {perWeek(2, 5, 1)}));
        for (const char *const of : {"2026-03-15", "2026-03-16", "2026-03-19", "2026-03-20"}) // weeks begin on the 2nd, 9th, 16th
            builder.set(day(of), "day", "squat", 1, 5, {}, {.id = of});
        builder.stage("2026-03-17", "squat", 1, {.id = "stage"});
        const auto on = [&builder](CivilDay of) {
            return behind(builder,
                [of](const Diary &, const ComplaintDiary &complaint) { return behindWeekBefore(complaint, complaint.items.front(), of); });
        };

        QCOMPARE(on(day("2026-03-20")), std::string("2026-03-16 2026-03-19 stage"));
        QCOMPARE(on(day("2026-03-16")), std::string());
    }

    void theLevelInTheSecondWeekIsMadeOfBoth_data()
    {
        QTest::addColumn<std::string>("to");
        QTest::addColumn<std::string>("expected");

        QTest::newRow("before a week is over, days before the plan are of the last seven")
            << std::string("2026-03-05") << std::string("a b c");
        QTest::newRow("the weeks meet") << std::string("2026-03-14") << std::string("b c d e");
        QTest::newRow("the last day on which they touch") << std::string("2026-03-15") << std::string("b c d e");
        QTest::newRow("a day lies between them") << std::string("2026-03-16") << std::string("b c d");
    }

    void theLevelInTheSecondWeekIsMadeOfBoth()
    {
        QFETCH(std::string, to);
        QFETCH(std::string, expected);
        DiaryBuilder builder = begun();
        builder.check("2026-02-28", 4, {}, {.id = "a"})
            .check("2026-03-02", 4, {}, {.id = "b"})
            .check("2026-03-05", 4, {}, {.id = "c"})
            .check("2026-03-08", 4, {}, {.id = "d"})
            .check("2026-03-09", 4, {}, {.id = "e"});

        QCOMPARE(behind(builder,
                     [&](const Diary &diary, const ComplaintDiary &complaint) {
                         const Window window{day("2026-03-02"), day("2026-03-02"), day(to)};
                         return behindCondition(diary, complaint, complaint.items.front(), window, {.condition = Condition::Level});
                     }),
            expected);
    }
};

MORROW_SUITE(tst_trace_edges)

#include "tst_trace_edges.moc"
