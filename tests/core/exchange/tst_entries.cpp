// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/ids.h"
#include "exchange/folders.h"
#include "exchange/plan_tables.h"
#include "support/json_text.h"

#include <algorithm>
#include <set>

using namespace morrow;
using namespace morrow::test;

namespace {

std::vector<Entry> ofKind(const TablesDiary &diary, Kind kind)
{
    std::vector<Entry> all;
    std::copy_if(
        diary.entries.begin(), diary.entries.end(), std::back_inserter(all), [kind](const Entry &entry) { return entry.kind == kind; });
    return all;
}

/// The entries of \a kind in the small folder with \a files; none if it is refused.
std::vector<Entry> entriesOf(const Files &files, Kind kind)
{
    const auto diary = diaryIn(smallFolder(files));
    return diary ? ofKind(*diary, kind) : std::vector<Entry>();
}

Files mornings(const std::string &rows, const std::string &more = {})
{
    return {{"mornings.csv", "id,day,pain,stiffness_min,recorded_at" + more + "\n" + rows}};
}

const std::string kVisitsHeader = "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note";

} // namespace

/// Rows become the entries that they stand for, under ids that another reading finds again.
class tst_entries : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aRowIsAnEntryAboutItsDay()
    {
        const auto checks
            = entriesOf(mornings("q1,2026-03-03,4,10,2026-03-03T07:14:05.250+01:00,helper,q0\n", ",author,replaces"), Kind::Check);

        QCOMPARE(checks.size(), std::size_t{1});
        QCOMPARE(checks[0].id, std::string("q1"));
        QCOMPARE(checks[0].day.toString(), std::string("2026-03-03"));
        QVERIFY(checks[0].recorded == (Moment{1772518445250, 60})); // by Python's datetime
        QVERIFY(checks[0].author == Author::Helper);
        QVERIFY(checks[0].replaces == "q0"); // not in this folder: it waits
        QCOMPARE(checks[0].body, json("{'complaint':'heel','pain':4,'stiffness_min':10}"));
    }

    void whatIsEmptyIsAbsent()
    {
        const auto checks = entriesOf(mornings(",2026-03-03,,,\n"), Kind::Check);

        QCOMPARE(checks.size(), std::size_t{1});
        QVERIFY(!checks[0].recorded);
        QVERIFY(!checks[0].replaces);
        QCOMPARE(checks[0].body, json("{'complaint':'heel'}"));
    }

    void anAuthorWhoIsNotNamedIsTheOneOfItsKind_data()
    {
        QTest::addColumn<QByteArray>("file");
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<int>("kind");
        QTest::addColumn<int>("author");
        const auto row = [](const char *name, const char *file, const std::string &bytes, Kind kind, Author author) {
            QTest::newRow(name) << QByteArray(file) << QByteArray::fromStdString(bytes) << static_cast<int>(kind)
                                << static_cast<int>(author);
        };
        const std::string notes = "id,day,kind,item,text,recorded_at\n,2026-03-03,";
        const std::string outcomes = "id,day,kind,name,side,value,unit,pain,by,recorded_at\n,2026-03-03,";

        row("a visit: clinic", "visits.csv", kVisitsHeader + "\n2026-03-03,,,,,,,,,,,\n", Kind::Visit, Author::Clinic);
        row("a stage: clinic", "stages.csv", "day,item,stage,reason\n2026-03-03,raise,2,\n", Kind::Stage, Author::Clinic);
        row("a reply: clinic", "notes.csv", notes + "reply,,yes,\n", Kind::Note, Author::Clinic);
        row("a question: patient", "notes.csv", notes + "question,,why,\n", Kind::Note, Author::Patient);
        row("a test: clinic", "outcomes.csv", outcomes + "test,hop,,3,count,,,\n", Kind::Outcome, Author::Clinic);
        row("an activity: patient", "outcomes.csv", outcomes + "activity,run,,3,,,,\n", Kind::Outcome, Author::Patient);
        row("a pause: patient", "pauses.csv", "from,to,reason\n2026-03-03,2026-03-04,\n", Kind::Pause, Author::Patient);
        row("a sign: patient", "flags.csv", "id,day,sign,note,recorded_at\n,2026-03-03,numb,,\n", Kind::Flag, Author::Patient);
        row("a morning: patient", "mornings.csv", "id,day,pain,stiffness_min,recorded_at\n,2026-03-03,4,,\n", Kind::Check, Author::Patient);
    }

    void anAuthorWhoIsNotNamedIsTheOneOfItsKind()
    {
        QFETCH(QByteArray, file);
        QFETCH(QByteArray, bytes);
        QFETCH(int, kind);
        QFETCH(int, author);

        const auto found = entriesOf({{file.toStdString(), bytes.toStdString()}}, static_cast<Kind>(kind));

        QCOMPARE(found.size(), std::size_t{1});
        QCOMPARE(static_cast<int>(found[0].author), author);
    }

    void anEmptyComplaintIsTheFirst()
    {
        const auto checks = entriesOf(mornings(",2026-03-03,4,,\n"), Kind::Check);
        const auto alone
            = diaryIn({{"plan.csv", smallFolder().at("plan.csv")}, {"mornings.csv", mornings(",2026-03-03,4,,\n").at("mornings.csv")}});

        QCOMPARE(checks[0].body, json("{'complaint':'heel','pain':4}"));
        QVERIFY(alone);
        QCOMPARE(ofKind(*alone, Kind::Check)[0].body, json("{'complaint':'main','pain':4}"));
    }

    void oneIdWithOneContentIsOneEntry()
    {
        const auto checks = entriesOf(mornings("q1,2026-03-03,4,,\nq1,2026-03-03,4.0,,\n"), Kind::Check);
        const auto notes
            = entriesOf({{"visits.csv", kVisitsHeader + ",id\n2026-03-03,,,,,,,,,,,,v\n2026-03-03,,,,,,,,,,,sore,v\n"}}, Kind::Memo);

        QCOMPARE(checks.size(), std::size_t{1});
        QCOMPARE(notes.size(), std::size_t{1});
    }

    void typingARowAgainGivesTheSameId()
    {
        // By Python's hashlib, from the definition in core/model/entry.h: day 20515 is 2026-03-03.
        const std::string byHashlib = "b4b8af29-e5dd-8dd9-b2c5-a2e22f37c081";

        const auto once = entriesOf(mornings(",2026-03-03,4,,\n"), Kind::Check);
        const auto again = entriesOf(mornings(",2026-03-04,5,,\n,2026-03-03,4.000,,\n"), Kind::Check);

        QCOMPARE(once.size(), std::size_t{1});
        QCOMPARE(once[0].id, byHashlib);
        QCOMPARE(again.size(), std::size_t{2});
        QCOMPARE(again[0].id, byHashlib);
    }

    void anIdIsDerivedAfterEveryRuleOfReading()
    {
        // A complaint written out, an author named, a rule in other words, an instant in another form.
        const auto plain = diaryIn(smallFolder(mornings(",2026-03-03,4,,2026-03-03T07:00:00+00:00\n")));
        Files wordy = smallFolder(mornings(",2026-03-03,4,,2026-03-03t07:00:00.000Z,heel,patient\n", ",complaint,author"));
        std::string &plan = wordy.find("plan.csv")->second;
        for (std::size_t at = plan.find("FREQ=DAILY"); at != std::string::npos; at = plan.find("FREQ=DAILY"))
            plan.replace(at, 10, "interval=1;freq=daily");
        const auto other = diaryIn(wordy);

        QVERIFY(plain && other);
        QVERIFY(plain->entries == other->entries);
    }

    void asidesAreNoPartOfTheRowsId()
    {
        const auto bare = entriesOf({{"visits.csv", kVisitsHeader + "\n2026-03-03,,,,,,,,,,,\n"}}, Kind::Visit);
        const auto noted = entriesOf({{"visits.csv", kVisitsHeader + ",next_time\n2026-03-03,,,,,,,,,,,sore,warm up\n"}}, Kind::Visit);
        const auto memos = entriesOf({{"visits.csv", kVisitsHeader + ",next_time\n2026-03-03,,,,,,,,,,,sore,warm up\n"}}, Kind::Memo);

        QCOMPARE(noted[0].id, bare[0].id);
        QCOMPARE(memos.size(), std::size_t{1});
        QCOMPARE(memos[0].body, json("{'next_time':'warm up','note':'sore','visit':'" + bare[0].id + "'}"));
        QCOMPARE(memos[0].day, bare[0].day);
        QVERIFY(memos[0].author == Author::Clinic);
    }

    void aClearedSignIsAnEntryOfTheClinic()
    {
        const Files flags{{"flags.csv", "id,day,sign,note,recorded_at,cleared_on\nf,2026-03-03,numb,,,2026-03-05\n"}};

        const auto cleared = entriesOf(flags, Kind::Cleared);

        QCOMPARE(cleared.size(), std::size_t{1});
        QCOMPARE(cleared[0].day.toString(), std::string("2026-03-05"));
        QCOMPARE(cleared[0].body, json("{'flag':'f'}"));
        QVERIFY(cleared[0].author == Author::Clinic);
    }

    void aCorrectionMayWaitForWhatItReplaces()
    {
        const Files waiting = mornings("q2,2026-03-03,4,,,q1\n", ",replaces");
        const auto diary = diaryIn(smallFolder(waiting));

        QVERIFY(diary);
        const auto again = diaryIn(written(*diary));
        QVERIFY(again);
        QVERIFY(again->entries == diary->entries);
        QVERIFY(ofKind(*again, Kind::Check)[0].replaces == "q1");
    }

    void twoRowsAboutOneThingStandBesideEachOtherIfOneHasAnOrigin_data()
    {
        QTest::addColumn<QByteArray>("second");

        QTest::newRow("an id") << QByteArray("q1,2026-03-03,5,,,,\n");
        QTest::newRow("an instant") << QByteArray(",2026-03-03,5,,2026-03-03T07:00:00Z,,\n");
        QTest::newRow("a correction") << QByteArray(",2026-03-03,5,,,q1,\n");
        QTest::newRow("another complaint") << QByteArray(",2026-03-03,4,,,,knee\n");
    }

    void twoRowsAboutOneThingStandBesideEachOtherIfOneHasAnOrigin()
    {
        QFETCH(QByteArray, second);
        Files files = smallFolder(mornings(",2026-03-03,4,,,,\n" + second.toStdString(), ",replaces,complaint"));
        files.find("complaints.csv")->second += "knee,,,,,,,,\n";

        const auto diary = diaryIn(files);

        QVERIFY(diary);
        QCOMPARE(ofKind(*diary, Kind::Check).size(), std::size_t{2});
    }

    void rowsOfOneThingEachAreNoSlipWhileTheyDiffer()
    {
        QCOMPARE(entriesOf({{"unusual.csv", "id,day,text,recorded_at\n,2026-03-03,rain,\n,2026-03-03,sun,\n"}}, Kind::Unusual).size(),
            std::size_t{2});
    }

    void aPlanWithoutIdGetsOneFromPersonAndComplaint()
    {
        // By Python's hashlib: SHA-256 of "plan", U+001F, the person, U+001F, the complaint.
        QCOMPARE(defaultPlanId("29c14bc4-1b05-473c-8442-050118c64670", "heel"), std::string("e71ac8df-bcba-8e26-a01d-f385dfa33bb9"));
        QCOMPARE(defaultPlanId("", "main"), std::string("1e2cb209-fa03-81d4-9abc-70d4f7a8f2c5"));

        const auto plans = entriesOf({{"settings.csv", "key,value\npatient_ref,29c14bc4-1b05-473c-8442-050118c64670\n"}}, Kind::Plan);

        QCOMPARE(plans.size(), std::size_t{1});
        QVERIFY(plans[0].body.find(json("'number':1,'plan':'e71ac8df-bcba-8e26-a01d-f385dfa33bb9'")) != std::string::npos);
    }

    void aPlansSettingsAreThoseOfItsComplaint()
    {
        Files files = smallFolder({{"settings.csv",
            "key,value,complaint\nduring_limit,4,\nduring_limit,3,knee\nafter_limit,,\nplan_from,2026-04-01,knee\nplan_number,2,\nplan_by,"
            "A. M.,heel\n"}});
        files.find("complaints.csv")->second += "knee,,,,,,,,\n";
        std::string &plan = files.find("plan.csv")->second;
        plan = "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,min_"
               "days,"
               "min_sessions,rests_after_visit,complaint\n"
               "raise,raise,,1,3,15,,,,,,,,FREQ=DAILY,am,,2026-03-02,,,,,\n"
               "squat,squat,,1,3,15,,,,,,,,FREQ=DAILY,am,,2026-03-04,,,,,knee\n";

        const auto diary = diaryIn(files);

        QVERIFY(diary);
        const auto plans = ofKind(*diary, Kind::Plan);
        QCOMPARE(plans.size(), std::size_t{2});
        QCOMPARE(plans[0].day.toString(), std::string("2026-03-02"));
        QVERIFY(plans[0].body.find(json("'by':'A. M.','complaint':'heel','during_limit':4,")) != std::string::npos);
        QCOMPARE(plans[1].day.toString(), std::string("2026-04-01"));
        QVERIFY(plans[1].body.find(json("'complaint':'knee','during_limit':3,")) != std::string::npos);
        QVERIFY(plans[1].body.find(json("'number':2")) != std::string::npos);
    }

    void aFirstPainMayStandInSettingsWhereThereIsNoOtherTable_data()
    {
        QTest::addColumn<QByteArray>("complaint");

        QTest::newRow("of all") << QByteArray();
        QTest::newRow("of the one complaint") << QByteArray("main");
    }

    void aFirstPainMayStandInSettingsWhereThereIsNoOtherTable()
    {
        QFETCH(QByteArray, complaint);

        const auto diary = diaryIn({{"plan.csv", smallFolder().at("plan.csv")},
            {"settings.csv", "key,value,complaint\nfirst_assessment_pain,6.5," + complaint.toStdString() + "\n"}});

        QVERIFY(diary);
        QCOMPARE(ofKind(*diary, Kind::Complaint)[0].body, json("{'complaint':'main','first_assessment_pain':6.5,'place':1}"));
    }

    void aDayThatNobodyNamedIsTheFirstStartOrTheEarliestDay()
    {
        const Files settings{{"settings.csv", "key,value\nday_starts,03:00\n"}};
        Files withoutPlan = smallFolder(mornings(",2026-02-03,4,,\n"));
        withoutPlan.merge(Files(settings));
        withoutPlan.find("plan.csv")->second.resize(withoutPlan.at("plan.csv").find('\n') + 1);

        QCOMPARE(entriesOf(settings, Kind::Setting)[0].day.toString(), std::string("2026-03-02"));
        QCOMPARE(entriesOf(settings, Kind::Complaint)[0].day.toString(), std::string("2026-03-02"));
        QCOMPARE(ofKind(*diaryIn(withoutPlan), Kind::Setting)[0].day.toString(), std::string("2026-02-03"));
        QCOMPARE(ofKind(*diaryIn(withoutPlan), Kind::Complaint)[0].day.toString(), std::string("2026-02-03"));
    }

    void entriesComeByDayKindAndId()
    {
        const auto diary = diaryIn(smallFolder(mornings("b,2026-03-04,4,,\na,2026-03-04,5,,\nc,2026-03-03,4,,\n")));

        QVERIFY(diary);
        QVERIFY(std::is_sorted(diary->entries.begin(), diary->entries.end(), [](const Entry &a, const Entry &b) {
            return std::tuple(a.day, std::string(name(a.kind)), a.id) < std::tuple(b.day, std::string(name(b.kind)), b.id);
        }));
        QCOMPARE(diary->entries.back().id, std::string("b"));
    }
};

MORROW_SUITE(tst_entries)

#include "tst_entries.moc"
