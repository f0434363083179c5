// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "measures/today.h"
#include "support/diary_builder.h"

namespace {

using namespace morrow;
using namespace morrow::test;

/// What a day asks, and what was answered.
class tst_today : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void asksForEachSlotOfADueDay()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(3, 15, "FREQ=DAILY", {"morning", "evening"})}));
        builder.sets("2026-03-03", "evening", "drop", 2, 15);
        const Diary diary = builder.diary();

        const Today asked = today(diary, day("2026-03-03"));

        QCOMPARE(asked.complaints.size(), std::size_t(1));
        const auto &sessions = asked.complaints.front().sessions;
        QCOMPARE(sessions.size(), std::size_t(2));
        QCOMPARE(sessions[0].slot, std::string("morning"));
        QCOMPARE(sessions[0].setsDone(), 0);
        QCOMPARE(sessions[1].setsDone(), 2);
        QCOMPARE(asked.setsDue, 6);
        QCOMPARE(asked.setsDone, 2);
        QVERIFY(!asked.complaints.front().quiet);
        QVERIFY(asked.complaints.front().isCheckDue);
    }

    void aFreeDaySaysWhyAndWhenTheNextOneIs_data()
    {
        QTest::addColumn<QString>("of");
        QTest::addColumn<int>("why");
        QTest::addColumn<QString>("next");

        QTest::newRow("before the plan") << "2026-03-01" << int(QuietReason::NotStarted) << "2026-03-02";
        QTest::newRow("every other day") << "2026-03-03" << int(QuietReason::NotToday) << "2026-03-04";
        QTest::newRow("rest after a visit") << "2026-03-10" << int(QuietReason::AfterVisit) << "2026-03-12";
        QTest::newRow("pause") << "2026-03-15" << int(QuietReason::Paused) << "2026-03-20";
        QTest::newRow("over") << "2026-03-31" << int(QuietReason::Over) << "";
    }

    void aFreeDaySaysWhyAndWhenTheNextOneIs()
    {
        QFETCH(QString, of);
        QFETCH(int, why);
        QFETCH(QString, next);
        DiaryBuilder builder;
        builder.item(until(restingAfterVisits(item("drop", "2026-03-02", {onDays(3, 15, "FREQ=DAILY;INTERVAL=2")})), "2026-03-30"));
        builder.planSetting(Field::RestDaysAfterVisit, Decimal::whole(2));
        builder.visit("2026-03-10");
        builder.pause("2026-03-14", "2026-03-19", {.recorded = "2026-03-01T08:00:00+00:00"});
        const Diary diary = builder.diary();

        const Today asked = today(diary, day(of.toStdString()));

        const AskedComplaint &complaint = asked.complaints.front();
        QVERIFY(complaint.sessions.empty());
        QCOMPARE(complaint.quiet ? int(*complaint.quiet) : -1, why);
        QCOMPARE(complaint.next ? QString::fromStdString(complaint.next->toString()) : QString(), next);
        QCOMPARE(asked.setsDue, 0);
    }

    void aWeekThatIsDoneAsksForNoMore()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {perWeek(4, 8, 2)}));
        builder.sets("2026-03-02", "day", "squat", 4, 8).sets("2026-03-03", "day", "squat", 1, 8);
        const Diary diary = builder.diary();

        const AskedComplaint onTheSecond = today(diary, day("2026-03-03")).complaints.front();
        const AskedComplaint after = today(diary, day("2026-03-04")).complaints.front();

        QCOMPARE(onTheSecond.sessions.front().items.front().daysDone, 1);
        QVERIFY(onTheSecond.sessions.front().isDue());
        QVERIFY(after.sessions.empty());
        QVERIFY(after.next == day("2026-03-09"));
    }

    void whatWasDoneBesideThePlanIsInSight()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(2, 15, "FREQ=DAILY;INTERVAL=2")}));
        builder.sets("2026-03-03", "noon", "drop", 3, 15); // not due, another slot, one set more
        const Diary diary = builder.diary();

        const AskedComplaint asked = today(diary, day("2026-03-03")).complaints.front();

        QCOMPARE(asked.sessions.size(), std::size_t(1));
        QCOMPARE(asked.sessions.front().slot, std::string("noon"));
        QCOMPARE(asked.sessions.front().items.front().sets.size(), std::size_t(3));
        QVERIFY(!asked.sessions.front().isDue());
        QVERIFY(asked.quiet.has_value());
    }

    void answersOfTheDayAloneAreShown()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(1, 15)}));
        builder.check("2026-03-02", 7).check("2026-03-03", 4).skip("2026-03-03", "morning");
        const Diary diary = builder.diary();

        const AskedComplaint third = today(diary, day("2026-03-03")).complaints.front();
        const AskedComplaint fourth = today(diary, day("2026-03-04")).complaints.front();

        QVERIFY(third.check && third.check->pain == PainScore::from(4));
        QVERIFY(third.sessions.front().skip);
        QVERIFY(!fourth.check);
        QVERIFY(!fourth.sessions.front().skip);
    }

    void aPersonWithoutAPlanIsAskedNothing()
    {
        const Diary diary = DiaryBuilder().diary();

        const Today asked = today(diary, day("2026-03-03"));

        QVERIFY(asked.complaints.front().quiet == QuietReason::NoPlan);
        QVERIFY(!asked.complaints.front().isCheckDue);
    }

    void aSignStaysOpenUntilTheClinicAnswers()
    {
        DiaryBuilder builder;
        builder.item(item("drop", "2026-03-02", {onDays(1, 15)}));
        builder.entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("numb foot")}}), {.id = "sign"});
        const Diary open = builder.diary();
        builder.entry(Kind::Cleared, "2026-03-05", body({{Field::Flag, std::string("sign")}}));
        const Diary answered = builder.diary();

        QVERIFY(!today(open, day("2026-03-02")).openSign);
        QVERIFY(today(open, day("2026-03-20")).openSign);
        QVERIFY(!today(answered, day("2026-03-20")).openSign);
    }
};

MORROW_SUITE(tst_today)

} // namespace

#include "tst_today.moc"
