// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/diary.h"
#include "support/json_text.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// Where an entry came from: id, instant (0: paper) and what it replaces.
struct From
{
    std::string id;
    std::int64_t recorded = 0;
    std::string replaces{};
};

Entry told(Kind kind, const char *day, const char *body, const From &from)
{
    Entry entry{from.id, kind, *CivilDay::parse(day), {}, Author::Patient, {}, json(body)};
    if (from.recorded != 0)
        entry.recorded = Moment{from.recorded, 60};
    if (!from.replaces.empty())
        entry.replaces = from.replaces;
    return entry;
}

/// 2026-03-\a day 12:00 at +01:00, and \a ms later.
std::int64_t noon(int day, int ms = 0)
{
    return parseMoment("2026-03-01T12:00:00+01:00")->utcMs + std::int64_t{86'400'000} * (day - 1) + ms;
}

Entry complaint(const char *key = "heel", const char *more = "'place':1")
{
    return told(Kind::Complaint, "2026-03-01", ("{'complaint':'" + std::string(key) + "'," + more + "}").c_str(),
        {std::string("complaint-") + key});
}

Entry check(int pain, const From &from)
{
    return told(Kind::Check, "2026-03-03", ("{'complaint':'heel','pain':" + std::to_string(pain) + "}").c_str(), from);
}

Entry withdrawnCheck(const From &from)
{
    return told(Kind::Check, "2026-03-03", "{'complaint':'heel','withdrawn':1}", from);
}

Entry plan(int number, const char *item, const From &from)
{
    const std::string body = "{'complaint':'heel','items':[{'exercise':'e','item':'" + std::string(item)
        + "','stages':[{'per_week':3,'reps':9,'sets':3,'stage':1}],'start':'2026-03-02'}],'number':" + std::to_string(number)
        + ",'plan':'p'}";
    return told(Kind::Plan, "2026-03-02", body.c_str(), from);
}

/// The pain of the one check that counts; -1: none does, -2: more than one.
int painIn(std::vector<Entry> entries)
{
    entries.push_back(complaint());
    const Diary diary = Diary::from(std::move(entries));
    const auto &checks = diary.complaints().at(0).checks;
    return checks.empty() ? -1 : checks.size() > 1 ? -2 : checks[0].pain->value();
}

} // namespace

/// One person's entries become the diary that measures read.
class tst_diary : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i2_whatIsReplacedDoesNotCountWhateverTheClocksSaid()
    {
        QCOMPARE(painIn({check(4, {"z", noon(9)}), check(6, {"a", noon(3), "z"})}), 6);
        QCOMPARE(painIn({check(4, {"z", noon(9)}), check(6, {"a", 0, "z"})}), 6);
    }

    void i2_theLaterRecordedCounts() { QCOMPARE(painIn({check(4, {"z", noon(3)}), check(6, {"a", noon(3, 1)})}), 6); }

    void i2_anAbsentInstantComesFirst() { QCOMPARE(painIn({check(4, {"z"}), check(6, {"a", noon(3)})}), 6); }

    void i2_tiesGoToTheGreaterId()
    {
        QCOMPARE(painIn({check(4, {"z", noon(3)}), check(6, {"a", noon(3)})}), 4);
        QCOMPARE(painIn({check(6, {"a"}), check(4, {"z"})}), 4);
    }

    void i2_ifTheOneThatCountsWithdrawsNoneDoes()
    {
        QCOMPARE(painIn({check(4, {"a", noon(3)}), withdrawnCheck({"b", noon(4)})}), -1);
        QCOMPARE(painIn({check(4, {"a", noon(3)}), check(5, {"b", noon(4), "a"}), withdrawnCheck({"c", noon(5), "b"})}), -1);
    }

    void i2_aWithdrawalThatDoesNotCountTakesNothingBack()
    {
        QCOMPARE(painIn({check(4, {"a", noon(5)}), withdrawnCheck({"b", noon(4)})}), 4);
        QCOMPARE(painIn({check(4, {"a", noon(3)}), withdrawnCheck({"b", noon(4)}), check(6, {"c", 0, "b"})}),
            4); // the one replaced is out, an instant counts
    }

    void i2_aReplacesOfAnotherKindOrOfNothingChangesNothing()
    {
        QCOMPARE(
            painIn({check(4, {"a", noon(3)}), told(Kind::Note, "2026-03-03", "{'complaint':'heel','kind':'unsure'}", {"n", noon(4), "a"})}),
            4);
        QCOMPARE(painIn({check(4, {"a", noon(3), "nowhere"})}), 4);
        QCOMPARE(painIn({check(4, {"a", noon(3), "a"})}), 4);
    }

    void i2_aCircleOfCorrectionsTakesAllOfItOut()
    {
        QCOMPARE(painIn({check(4, {"a", 0, "b"}), check(5, {"b", 0, "a"}), check(6, {"c"})}), 6);
    }

    void i2_aChainCountsAtItsEndEvenIfItsMiddleCameLast()
    {
        QCOMPARE(painIn({check(4, {"a", noon(3)}), check(6, {"c", noon(4), "b"}), check(5, {"b", noon(9), "a"})}), 6);
    }

    void i2_eachThingHasItsOwn()
    {
        const Diary diary = Diary::from({
            complaint(),
            complaint("knee", "'place':2"),
            plan(1, "raise", {"p"}),
            told(Kind::Set, "2026-03-03", "{'item':'raise','reps':10,'set':2,'slot':'pm'}", {"s1"}),
            told(Kind::Set, "2026-03-03", "{'item':'raise','reps':11,'set':1,'slot':'pm'}", {"s2"}),
            told(Kind::Set, "2026-03-03", "{'item':'raise','reps':12,'set':1,'slot':'am'}", {"s3"}),
            told(Kind::Set, "2026-03-02", "{'item':'raise','reps':13,'set':1,'slot':'pm'}", {"s4"}),
            told(Kind::Set, "2026-03-02", "{'item':'raise','reps':14,'set':1,'slot':'pm'}", {"s5"}),
            told(Kind::Set, "2026-03-02", "{'item':'nobody','reps':15,'set':1,'slot':'pm'}", {"s6"}),
            told(Kind::Session, "2026-03-03", "{'complaint':'heel','pain_after':2,'slot':'am'}", {"t1"}),
            told(Kind::Session, "2026-03-03", "{'complaint':'knee','pain_after':3,'slot':'am'}", {"t2"}),
            told(Kind::Skip, "2026-03-03", "{'complaint':'heel','reason':'late','slot':'am'}", {"k1"}),
            told(Kind::Easier, "2026-03-03", "{'complaint':'knee','slot':'am'}", {"l1"}),
        });

        const auto &heel = diary.complaints().at(0);
        std::string sets;
        for (const SetDone &set : heel.items.at(0).sets)
            sets += set.day.toString() + set.slot + std::to_string(set.number) + ":" + std::to_string(set.reps) + " ";
        QCOMPARE(sets, std::string("2026-03-02pm1:14 2026-03-03am1:12 2026-03-03pm1:11 2026-03-03pm2:10 ")); // by day, slot, number
        QCOMPARE(heel.sessions.size(), std::size_t{1});
        QCOMPARE(heel.skips.at(0).reason, std::string("late"));
        QCOMPARE(heel.easier.size(), std::size_t{0});
        QCOMPARE(diary.complaints().at(1).sessions.at(0).painAfter->value(), 3);
        QCOMPARE(diary.complaints().at(1).easier.size(), std::size_t{1});
    }

    void thingsOfTheirOwnAllCountUnlessReplacedOrWithdrawn()
    {
        const Diary diary = Diary::from({
            complaint(),
            told(Kind::Visit, "2026-03-10", "{'complaint':'heel','impulses':2000}", {"a", noon(10)}),
            told(Kind::Visit, "2026-03-10", "{'complaint':'heel','impulses':500}", {"b", noon(9)}),
            told(Kind::Visit, "2026-03-05", "{'complaint':'heel'}", {"c"}),
            told(Kind::Visit, "2026-03-05", "{'complaint':'heel','withdrawn':1}", {"d", noon(6), "c"}),
            told(Kind::Outcome, "2026-03-05", "{'complaint':'heel','kind':'test','name':'hop','side':'left','unit':'cm','value':80.5}",
                {"o"}),
            told(Kind::Outcome, "2026-03-05", "{'complaint':'elbow','kind':'overall','value':80}", {"p"}),
        });

        const auto &heel = diary.complaints().at(0);
        QCOMPARE(heel.visits.size(), std::size_t{2});
        QVERIFY(heel.visits[0].impulses == 500 && heel.visits[1].impulses == 2000);
        QCOMPARE(heel.outcomes.size(), std::size_t{1});
        QVERIFY(heel.outcomes[0].kind == OutcomeKind::Test && heel.outcomes[0].side == Side::Left && heel.outcomes[0].unit == "cm");
        QVERIFY(heel.outcomes[0].value == *Decimal::parse("80.5"));
    }

    void aPauseKeepsTheVersionsThatStoodBefore()
    {
        const Diary diary = Diary::from({
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-12'}", {"a"}),
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-15'}", {"b", noon(12), "a"}),
            told(Kind::Pause, "2026-03-10", "{'withdrawn':1}", {"c", noon(14), "b"}),
            told(Kind::Pause, "2026-03-04", "{'to':'2026-03-05'}", {"d", noon(1)}),
            told(Kind::Pause, "2026-03-20", "{'to':'2026-03-21'}", {"e", 0, "nowhere"}),
        });

        QCOMPARE(diary.pauses().size(), std::size_t{3});
        QCOMPARE(diary.pauses()[0].versions.size(), std::size_t{1}); // by day
        const auto &versions = diary.pauses()[1].versions;
        QCOMPARE(versions.size(), std::size_t{3});
        QVERIFY(versions[0].withdrawn && versions[0].since->toString() == "2026-03-14");
        QVERIFY(!versions[1].withdrawn && versions[1].to.toString() == "2026-03-15" && versions[1].since->toString() == "2026-03-12");
        QVERIFY(versions[2].to.toString() == "2026-03-12" && !versions[2].since);
        QCOMPARE(diary.pauses()[2].versions.size(), std::size_t{1});
    }

    void aPauseReplacedByTwoIsAVersionOfBoth()
    {
        const Diary diary = Diary::from({
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-12'}", {"a"}),
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-15'}", {"b", 0, "a"}),
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-11'}", {"c", 0, "a"}),
        });

        QCOMPARE(diary.pauses().size(), std::size_t{2});
        for (const Pause &pause : diary.pauses())
            QCOMPARE(diary.entries()[pause.versions.at(1).entry].id, std::string("a"));
    }

    void aCircleOfPausesEnds()
    {
        const Diary diary = Diary::from({
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-12'}", {"a", 0, "b"}),
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-15'}", {"b", 0, "a"}),
            told(Kind::Pause, "2026-03-10", "{'to':'2026-03-11'}", {"c", 0, "a"}),
        });

        QCOMPARE(diary.pauses().size(), std::size_t{1});
        QVERIFY(diary.pauses()[0].versions.size() <= 3);
    }

    void aComplaintIsPutAsideFromTheEarliestDayButNotBeforeItWasSaid()
    {
        const auto asideOf = [](std::vector<Entry> entries) {
            entries.push_back(complaint());
            const auto day = Diary::from(std::move(entries)).complaints().at(0).putAsideFrom;
            return day ? day->toString() : "never";
        };
        const char *const body = "{'complaint':'heel'}";

        QCOMPARE(asideOf({}), std::string("never"));
        QCOMPARE(asideOf({told(Kind::PutAside, "2026-03-05", body, {"a"})}), std::string("2026-03-05"));
        QCOMPARE(asideOf({told(Kind::PutAside, "2026-03-05", body, {"a", noon(8)})}), std::string("2026-03-08"));
        QCOMPARE(asideOf({told(Kind::PutAside, "2026-03-09", body, {"a", noon(8)})}), std::string("2026-03-09"));
        QCOMPARE(asideOf({told(Kind::PutAside, "2026-03-05", body, {"a", noon(8)}), told(Kind::PutAside, "2026-03-07", body, {"b"})}),
            std::string("2026-03-07"));
        QCOMPARE(asideOf({told(Kind::PutAside, "2026-03-05", body, {"a"}),
                     told(Kind::PutAside, "2026-03-05", "{'complaint':'heel','withdrawn':1}", {"b", 0, "a"})}),
            std::string("never"));
    }

    void theNewestRevisionIsThePlanForAllDays()
    {
        const auto itemOf = [](std::vector<Entry> entries) {
            entries.push_back(complaint());
            const Diary diary = Diary::from(std::move(entries));
            const auto &heel = diary.complaints().at(0);
            return heel.items.empty() ? std::string("none") : heel.items[0].item.key;
        };

        QCOMPARE(itemOf({plan(2, "new", {"a", noon(1)}), plan(1, "old", {"z", noon(9)})}), std::string("new")); // by number
        QCOMPARE(itemOf({plan(1, "new", {"a", noon(2)}), plan(1, "old", {"z", noon(1)})}), std::string("new")); // then by instant
        QCOMPARE(itemOf({plan(1, "old", {"a"}), plan(1, "new", {"z"})}), std::string("new")); // then by id
        QCOMPARE(itemOf({plan(3, "old", {"a"}), plan(2, "new", {"b", 0, "a"})}), std::string("new")); // what is replaced is out
        QCOMPARE(itemOf({}), std::string("none"));
    }

    void aPlanThatCannotBeReadIsCountedAndNotFollowed()
    {
        const Diary diary = Diary::from({complaint(), plan(1, "old", {"a"}),
            told(Kind::Plan, "2026-03-02",
                "{'complaint':'heel','items':[{'exercise':'e','item':'i','stages':[],'start':'2026-03-02'}],'number':2,'plan':'p'}",
                {"b"})});

        QVERIFY(!diary.complaints().at(0).plan);
        QCOMPARE(diary.unreadable(), 1);
    }

    void stageChangesGoToTheirItemOneADay()
    {
        const Diary diary = Diary::from({
            complaint(),
            plan(1, "raise", {"p"}),
            told(Kind::Stage, "2026-03-09", "{'item':'raise','stage':1}", {"c"}),
            told(Kind::Stage, "2026-03-05", "{'item':'raise','stage':2}", {"a", noon(5)}),
            told(Kind::Stage, "2026-03-05", "{'item':'raise','stage':3}", {"b", noon(6)}),
            told(Kind::Stage, "2026-03-06", "{'item':'nobody','stage':3}", {"d"}),
        });

        const auto &changes = diary.complaints().at(0).items.at(0).stageChanges;
        QCOMPARE(changes.size(), std::size_t{2});
        QVERIFY(changes[0].day.toString() == "2026-03-05" && changes[0].stage == 3);
        QVERIFY(changes[1].day.toString() == "2026-03-09" && changes[1].stage == 1);
    }

    void complaintsStandByPlaceStartAndKey()
    {
        const Diary diary = Diary::from({complaint("d", "'place':2"), complaint("c", "'place':1,'started':'2026-02-02'"),
            complaint("b", "'place':1,'started':'2026-02-01'"), complaint("a", "'place':1,'started':'2026-02-02'")});

        std::string keys;
        for (const ComplaintDiary &one : diary.complaints())
            keys += one.complaint.key;
        QCOMPARE(keys, std::string("bacd"));
    }

    void aComplaintSaysWhatIsAsked()
    {
        const Diary diary = Diary::from({told(Kind::Complaint, "2026-03-01",
            "{'check':'FREQ=WEEKLY;BYDAY=MO','complaint':'heel','first_assessment_pain':6.5,'place':1,'question':'First steps',"
            "'region':'plantar heel','side':'left'}",
            {"c"})});

        const Complaint &heel = diary.complaints().at(0).complaint;
        QCOMPARE(heel.region + ", " + heel.question + ", " + heel.checkRule.toString(),
            std::string("plantar heel, First steps, FREQ=WEEKLY;BYDAY=MO"));
        QVERIFY(heel.side == Side::Left && heel.firstAssessmentPain == *Decimal::parse("6.5"));
        QCOMPARE(Diary::from({complaint()}).complaints().at(0).complaint.checkRule.toString(), std::string("FREQ=DAILY"));
    }

    void aSettingOfThePersonCounts()
    {
        const auto setting = [](const char *key, const char *value, const From &from) {
            return told(Kind::Setting, "2026-03-01", ("{'key':'" + std::string(key) + "','value':'" + value + "'}").c_str(), from);
        };
        const Diary plain = Diary::from({});
        const Diary set = Diary::from({setting("day_starts", "03:30", {"a"}), setting("body_mass_kg", "70.5", {"b"}),
            setting("body_mass_kg", "71", {"c", noon(2)}), setting("time_zone", "UTC", {"d"})});
        const Diary wrong = Diary::from({setting("day_starts", "half past three", {"a"}), setting("body_mass_kg", "-1", {"b"})});

        QCOMPARE(plain.dayStarts().count(), 240);
        QVERIFY(!plain.bodyMassKg());
        QCOMPARE(set.dayStarts().count(), 210);
        QVERIFY(set.bodyMassKg() == Decimal::whole(71));
        QCOMPARE(wrong.dayStarts().count(), 240);
        QVERIFY(!wrong.bodyMassKg());
    }

    void theDayOfARecordingIsThatOfTheDiary()
    {
        // 02:00 at +01:00 belongs to the day before until 04:00, and no longer once the day starts at 01:00.
        Entry late = check(4, {"a"});
        late.recorded = parseMoment("2026-03-04T02:00:00+01:00");

        QCOMPARE(Diary::from({late}).recordedOn(0)->toString(), std::string("2026-03-03"));
        QCOMPARE(
            Diary::from({late, told(Kind::Setting, "2026-03-01", "{'key':'day_starts','value':'01:00'}", {"s"})}).recordedOn(0)->toString(),
            std::string("2026-03-04"));
        QVERIFY(!Diary::from({check(4, {"a"})}).recordedOn(0));
    }

    void aBodyThatCannotBeReadReachesNothingAndIsCounted()
    {
        Entry broken = check(4, {"b", noon(9)});
        broken.body = "{";

        const Diary diary = Diary::from({complaint(), check(5, {"a", noon(3)}), broken});

        QCOMPARE(diary.unreadable(), 1);
        QCOMPARE(diary.complaints().at(0).checks.at(0).pain->value(), 5);
        QCOMPARE(diary.entries().size(), std::size_t{3});
    }

    void theFirstStartIsTheEarliest()
    {
        const std::string stage = "'stages':[{'per_week':3,'reps':9,'sets':3,'stage':1}]";
        const Diary diary = Diary::from({complaint(),
            told(Kind::Plan, "2026-03-02",
                ("{'complaint':'heel','items':[{'exercise':'e','item':'a'," + stage + ",'start':'2026-03-05'},{'exercise':'e','item':'b',"
                    + stage + ",'start':'2026-03-04'}],'number':1,'plan':'p'}")
                    .c_str(),
                {"p"})});

        QCOMPARE(diary.complaints().at(0).firstStart()->toString(), std::string("2026-03-04"));
        QVERIFY(!Diary::from({complaint()}).complaints().at(0).firstStart());
    }
};

MORROW_SUITE(tst_diary)

#include "tst_diary.moc"
