// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/home/stay.h"

#include <algorithm>

namespace morrow::test {

/// What the taps of a day leave in the diary, as another program reads it from the disk.
class tst_taps : public QObject
{
    Q_OBJECT

    static TodayComplaint &complaint(Stay &stay, qsizetype place = 0)
    {
        auto complaints = stay.session().today()->complaints();
        return *complaints.at(&complaints, place);
    }

    static TodaySession &session(Stay &stay, qsizetype place)
    {
        auto sessions = complaint(stay).sessions();
        return *sessions.at(&sessions, place);
    }

    static TodayRow &row(TodaySession &session)
    {
        auto cards = session.cards();
        auto rows = cards.at(&cards, 0)->rows();
        return *rows.at(&rows, 0);
    }

    static TodaySet &set(TodaySession &session, qsizetype number)
    {
        auto sets = row(session).sets();
        return *sets.at(&sets, number - 1);
    }

    /// "kind day body", and "replaces" where it does.
    static QStringList written(Stay &stay)
    {
        QStringList all;
        for (const Entry &entry : stay.fresh()) {
            all << QString::fromStdString(
                std::string(name(entry.kind)) + ' ' + entry.day.toString() + ' ' + entry.body + (entry.replaces ? " replaces" : ""));
        }
        return all;
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aTickIsASetAtThePrescribedDose()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->tick(&row(session(stay, 1)), &set(session(stay, 1), 2));

        QVERIFY(set(session(stay, 1), 2).done());
        QCOMPARE(written(stay),
            QStringList{QStringLiteral(
                "set 2026-04-23 {\"how\":\"tick\",\"item\":\"heel-raise\",\"load_kg\":7,\"reps\":8,\"set\":2,\"slot\":\"afternoon\"}")});
    }

    void aSecondTapTakesTheTickBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->tick(&row(session(stay, 1)), &set(session(stay, 1), 2));
        stay.session().today()->tick(&row(session(stay, 1)), &set(session(stay, 1), 2));

        QVERIFY(!set(session(stay, 1), 2).done());
        QCOMPARE(written(stay).size(), 2);
        QVERIFY2(written(stay).last().contains(QStringLiteral("withdrawn")), qPrintable(written(stay).last()));
        QCOMPARE(stay.session().today()->progress(), QStringLiteral("0 of 6 sets"));
    }

    void allAsPlannedIsEverySetAndOneTapTakesItBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        TodaySession &afternoon = session(stay, 1);
        stay.session().today()->tick(&row(afternoon), &set(afternoon, 1));

        stay.session().today()->tickAll(&afternoon);
        QVERIFY(afternoon.allDone());
        QVERIFY(afternoon.tickedAtOnce());
        QCOMPARE(written(stay).filter(QStringLiteral("\"how\":\"all\"")).size(), 4);

        stay.session().today()->takeBackAll(&afternoon);
        QVERIFY(set(afternoon, 1).done()); // it was ticked by itself
        QVERIFY(!set(afternoon, 2).done());
        QVERIFY(!afternoon.tickedAtOnce());
        QCOMPARE(stay.session().today()->progress(), QStringLiteral("1 of 6 sets"));
    }

    void anotherAnswerCorrectsTheFirst()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->check(&complaint(stay), 4);
        stay.session().today()->stiffness(&complaint(stay), 10'000);
        stay.session().today()->check(&complaint(stay), 3);

        QCOMPARE(written(stay),
            (QStringList{QStringLiteral("check 2026-04-23 {\"complaint\":\"heel\",\"pain\":4}"),
                QStringLiteral("check 2026-04-23 {\"complaint\":\"heel\",\"pain\":4,\"stiffness_min\":10} replaces"),
                QStringLiteral("check 2026-04-23 {\"complaint\":\"heel\",\"pain\":3,\"stiffness_min\":10} replaces")}));
        QCOMPARE(complaint(stay).check()->value(), 3);
        QCOMPARE(complaint(stay).check()->said(), QStringLiteral("Saved 07:10"));
    }

    void cannotSayIsAnAnswerAndCanBeTakenBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->checkDeclined(&complaint(stay));
        QVERIFY(complaint(stay).check()->declined());
        QCOMPARE(written(stay), QStringList{QStringLiteral("check 2026-04-23 {\"complaint\":\"heel\",\"declined\":1}")});

        stay.session().today()->takeBackCheck(&complaint(stay));
        QVERIFY(!complaint(stay).check()->declined());
        QCOMPARE(complaint(stay).check()->said(), QString());
    }

    void theTwoPainsOfASessionAreOneEntryThatGrows()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        TodaySession &afternoon = session(stay, 1);

        stay.session().today()->rateDuring(&afternoon, 4);
        stay.session().today()->rateAfter(&afternoon, 2);
        stay.session().today()->takeBackDuring(&afternoon);

        QCOMPARE(afternoon.during()->value(), -1);
        QCOMPARE(afternoon.after()->value(), 2);
        QCOMPARE(written(stay),
            (QStringList{QStringLiteral("session 2026-04-23 {\"complaint\":\"heel\",\"pain_during\":4,\"slot\":\"afternoon\"}"),
                QStringLiteral(
                    "session 2026-04-23 {\"complaint\":\"heel\",\"pain_after\":2,\"pain_during\":4,\"slot\":\"afternoon\"} replaces"),
                QStringLiteral("session 2026-04-23 {\"complaint\":\"heel\",\"pain_after\":2,\"slot\":\"afternoon\"} replaces")}));
    }

    void skippingHasAReasonAndCanBeTakenBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().today()->skip(&session(stay, 1), QStringLiteral("no time"));
        QCOMPARE(session(stay, 1).skipWords(), QStringLiteral("Not today: no time"));
        QCOMPARE(written(stay),
            QStringList{QStringLiteral("skip 2026-04-23 {\"complaint\":\"heel\",\"reason\":\"no time\",\"slot\":\"afternoon\"}")});

        stay.session().today()->takeBackSkip(&session(stay, 1));
        QVERIFY(!session(stay, 1).skipped());
    }

    void whatWasForgottenYesterdayIsEnteredForYesterday()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        stay.session().today()->setYesterday(true);
        QCOMPARE(stay.session().today()->line(), QStringLiteral("Wednesday"));

        stay.session().today()->tick(&row(session(stay, 0)), &set(session(stay, 0), 1));

        QCOMPARE(written(stay).size(), 1);
        QVERIFY2(written(stay).first().startsWith(QStringLiteral("set 2026-04-22")), qPrintable(written(stay).first()));
        stay.session().today()->setYesterday(false);
        QCOMPARE(stay.session().today()->line(), QStringLiteral("Thursday"));
        QCOMPARE(stay.session().today()->progress(), QStringLiteral("0 of 6 sets"));
    }

    void theLimitOfThePlanIsQuotedWithTheLastAnswers()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        QCOMPARE(session(stay, 1).during()->limit(), QStringLiteral("The limit for pain in the exercise in your plan is 5."));
        QCOMPARE(session(stay, 1).during()->last(), QStringLiteral("Your last sessions: 4, 3, 4."));
    }

    void theNewestReplyStandsOnTopForTwoWeeks()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        QCOMPARE(stay.session().today()->replyHead(), QStringLiteral("From your clinic, 13 April"));

        Stay later({kMorning.utcMs + std::int64_t{4} * 86'400'000, kMorning.offsetMinutes});
        later.begin(bakerBefore(kMorning));
        later.open();
        QCOMPARE(later.session().today()->reply(), QString());
    }

    void anAnswerAboutOneComplaintIsNotAboutTheOther()
    {
        Stay stay;
        stay.begin(diaryOfManyThings());
        stay.open();

        stay.session().today()->check(&complaint(stay, 1), 6);

        QCOMPARE(written(stay), QStringList{QStringLiteral("check 2026-04-23 {\"complaint\":\"heel\",\"pain\":6}")});
        QCOMPARE(complaint(stay, 0).check()->value(), -1);
        QCOMPARE(complaint(stay, 1).check()->value(), 6);
    }
};

MORROW_SUITE(tst_taps)

} // namespace morrow::test

#include "tst_taps.moc"
