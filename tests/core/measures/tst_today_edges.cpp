// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "measures/today.h"
#include "support/diary_builder.h"

namespace {

using namespace morrow;
using namespace morrow::test;

/// The only complaint of \a diary on \a of.
AskedComplaint askedOn(const Diary &diary, const char *of)
{
    return today(diary, day(of)).complaints.front();
}

/// First and last days, several things in one session, and answers that are none.
class tst_today_edges : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aSetWithoutARepIsShownAndNotDone()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(2, 15)}))
            .set("2026-03-03", "morning", "drop", 1, 0)
            .set("2026-03-03", "morning", "drop", 2, 1)
            .set("2026-03-03", "morning", "drop", 3, 15);
        const Diary diary = builder.diary();

        const AskedSession session = askedOn(diary, "2026-03-03").sessions.front();

        QCOMPARE(session.items.front().sets.size(), std::size_t(3));
        QVERIFY(session.items.front().sets[0]);
        QCOMPARE(session.setsDone(), 1);
        QCOMPARE(session.setsDue(), 2);
    }

    void aDueItemHasAPlaceForEachSet()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(4, 15)}));
        const Diary diary = builder.diary();

        const AskedItem asked = askedOn(diary, "2026-03-02").sessions.front().items.front();

        QVERIFY(asked.sets == std::vector<const SetDone *>(4, nullptr));
        QVERIFY(!asked.daysAsked);
    }

    void aDayOfTheWeekCountsOnceSomethingWasDoneOnIt()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {perWeek(4, 8, 2)}))
            .set("2026-03-03", "day", "squat", 1, 0)
            .set("2026-03-05", "day", "squat", 1, 1)
            .set("2026-03-10", "day", "squat", 1, 8)
            .set("2026-03-11", "day", "squat", 1, 8)
            .set("2026-03-13", "day", "squat", 1, 8);
        const Diary diary = builder.diary();

        const auto daysDone = [&diary](const char *of) { return askedOn(diary, of).sessions.front().items.front().daysDone; };

        QCOMPARE(askedOn(diary, "2026-03-02").sessions.front().slot, std::string("day"));
        QCOMPARE(daysDone("2026-03-02"), 0);
        QCOMPARE(daysDone("2026-03-05"), 0);
        QCOMPARE(daysDone("2026-03-06"), 1);
        QCOMPARE(daysDone("2026-03-09"), 0); // another week
        QCOMPARE(askedOn(diary, "2026-03-13").sessions.front().items.front().daysDone, 2);
    }

    void whatIsOnlyRecordedStandsInTheSessionAndIsNotSummedUp()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15)}))
            .item(item("squat", "2026-03-02", {onDays(4, 8, "FREQ=WEEKLY")}))
            .set("2026-03-03", "morning", "drop", 1, 15)
            .set("2026-03-03", "morning", "squat", 2, 8);
        const Diary diary = builder.diary();

        const AskedSession session = askedOn(diary, "2026-03-03").sessions.front();

        QCOMPARE(session.items.size(), std::size_t(2));
        QVERIFY(session.isDue());
        QCOMPARE(session.setsDue(), 3);
        QCOMPARE(session.setsDone(), 1);
    }

    void whatIsDoneAtAnotherTimeOfTheDayAsksForNoMore()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15)}));
        builder.set("2026-03-02", "noon", "drop", 1, 15);
        const Diary diary = builder.diary();

        const Today asked = today(diary, day("2026-03-02"));

        QCOMPARE(asked.setsDue, 3);
        QCOMPARE(asked.setsDone, 0);
        QCOMPARE(asked.complaints.front().sessions.size(), std::size_t(2));
        QVERIFY(asked.complaints.front().sessions[0].isDue());
        QVERIFY(!asked.complaints.front().sessions[1].isDue());
    }

    void theFirstDayOfAPlanAsks()
    {
        DiaryBuilder builder;
        builder.item(until(item("drop", "2026-03-02", {onDays(3, 15)}), "2026-03-09"));
        const Diary diary = builder.diary();

        QCOMPARE(askedOn(diary, "2026-03-02").sessions.size(), std::size_t(1));
        QVERIFY(askedOn(diary, "2026-03-02").isCheckDue);
        QVERIFY(askedOn(diary, "2026-03-01").sessions.empty());
        QVERIFY(!askedOn(diary, "2026-03-01").isCheckDue);
    }

    void aCheckIsDueByItsRule()
    {
        DiaryBuilder builder;
        builder.complaint("main", body({{Field::Check, std::string("FREQ=WEEKLY")}})).item(item("drop", "2026-03-02", {onDays(3, 15)}));
        const Diary diary = builder.diary();

        QVERIFY(askedOn(diary, "2026-03-09").isCheckDue);
        QVERIFY(!askedOn(diary, "2026-03-10").isCheckDue);
    }

    void aComplaintPutAsideLaterIsFollowedToday()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15)})).putAside("2026-03-20");
        const Diary diary = builder.diary();

        QVERIFY(askedOn(diary, "2026-03-19").isCheckDue);
        QVERIFY(!askedOn(diary, "2026-03-19").quiet);
        QVERIFY(!askedOn(diary, "2026-03-20").isCheckDue);
        QVERIFY(askedOn(diary, "2026-03-20").quiet == QuietReason::PutAside);
        QVERIFY(!askedOn(diary, "2026-03-20").next);
    }

    void aFreeDayAmongSeveralExercisesSaysWhy_data()
    {
        QTest::addColumn<QString>("of");
        QTest::addColumn<int>("why");

        QTest::newRow("one is ahead") << "2026-03-03" << int(QuietReason::NotToday);
        QTest::newRow("one is ahead after a visit") << "2026-03-05" << int(QuietReason::NotToday);
        QTest::newRow("starts after a visit") << "2026-03-10" << int(QuietReason::AfterVisit);
        QTest::newRow("ends after a visit") << "2026-03-17" << int(QuietReason::AfterVisit);
        QTest::newRow("one is over after a visit") << "2026-03-18" << int(QuietReason::NotToday);
        QTest::newRow("one is over") << "2026-03-20" << int(QuietReason::NotToday);
        QTest::newRow("the last day of all") << "2026-03-24" << int(QuietReason::NotToday);
        QTest::newRow("all are over") << "2026-03-25" << int(QuietReason::Over);
    }

    void aFreeDayAmongSeveralExercisesSaysWhy()
    {
        QFETCH(QString, of);
        QFETCH(int, why);
        DiaryBuilder builder;
        builder.item(until(restingAfterVisits(item("drop", "2026-03-10", {onDays(3, 15)})), "2026-03-17"))
            .item(until(item("squat", "2026-03-02", {onDays(3, 15, "FREQ=WEEKLY")}), "2026-03-24"))
            .planSetting(Field::RestDaysAfterVisit, Decimal::whole(2));
        for (const char *const visit : {"2026-03-04", "2026-03-10", "2026-03-17"})
            builder.visit(visit);
        const Diary diary = builder.diary();

        const auto quiet = askedOn(diary, of.toLatin1().constData()).quiet;

        QCOMPARE(quiet ? int(*quiet) : -1, why);
    }

    void oneOverAndOneAheadIsNeither()
    {
        DiaryBuilder builder;
        builder.item(until(item("drop", "2026-03-02", {onDays(3, 15)}), "2026-03-08")).item(item("squat", "2026-03-20", {onDays(3, 15)}));
        const Diary diary = builder.diary();

        QVERIFY(askedOn(diary, "2026-03-10").quiet == QuietReason::NotToday);
        QVERIFY(askedOn(diary, "2026-03-10").next == day("2026-03-20"));
    }

    void aPlanThatBeginsOnAFreeDayHasBegun()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15, "FREQ=WEEKLY;BYDAY=WE")}));
        const Diary diary = builder.diary();

        QVERIFY(askedOn(diary, "2026-03-02").quiet == QuietReason::NotToday);
        QVERIFY(askedOn(diary, "2026-03-01").quiet == QuietReason::NotStarted);
    }

    void theNextDayIsLookedForOverEightWeeks_data()
    {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("next");

        QTest::newRow("the last of them") << "FREQ=DAILY;INTERVAL=56"
                                          << "2026-04-27";
        QTest::newRow("one later") << "FREQ=DAILY;INTERVAL=57"
                                   << "";
    }

    void theNextDayIsLookedForOverEightWeeks()
    {
        QFETCH(QString, rule);
        QFETCH(QString, next);
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15, rule.toStdString())})).pause("2026-03-02", "2026-03-02");
        const Diary diary = builder.diary();

        const AskedComplaint asked = askedOn(diary, "2026-03-02");

        QVERIFY(asked.quiet == QuietReason::Paused); // on the first day of the plan
        QCOMPARE(asked.next ? QString::fromStdString(asked.next->toString()) : QString(), next);
    }

    void thePainOfASessionStandsWithIt()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15, "FREQ=DAILY", {"morning", "evening"})}))
            .session("2026-03-03", "morning", 6, std::nullopt)
            .session("2026-03-03", "evening", 4, std::nullopt)
            .session("2026-03-04", "evening", 3, std::nullopt);
        const Diary diary = builder.diary();

        const AskedComplaint asked = askedOn(diary, "2026-03-03");

        QVERIFY(asked.sessions[1].session);
        QVERIFY(asked.sessions[1].session->painDuring == PainScore::from(4));
        QVERIFY(!askedOn(diary, "2026-03-05").sessions[1].session);
    }

    void theSetsOfAllComplaintsAreSummedUp()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15)})).set("2026-03-02", "morning", "drop", 1, 15);
        builder.complaint("elbow").item(item("wrist", "2026-03-02", {onDays(5, 15)})).sets("2026-03-02", "morning", "wrist", 4, 15);
        const Diary diary = builder.diary();

        const Today asked = today(diary, day("2026-03-02"));

        QCOMPARE(asked.setsDue, 8);
        QCOMPARE(asked.setsDone, 5);
    }

    void aSignOfTheDayIsOpen()
    {
        DiaryBuilder builder;
        builder.entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("numb foot")}}));
        const Diary diary = builder.diary();

        QVERIFY(today(diary, day("2026-03-03")).openSign);
        QVERIFY(!today(diary, day("2026-03-02")).openSign);
    }
};

MORROW_SUITE(tst_today_edges)

} // namespace

#include "tst_today_edges.moc"
