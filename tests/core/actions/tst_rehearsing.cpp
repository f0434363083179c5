// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/rehearse.h"
#include "support/diary_builder.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

using Code = ProposalProblem::Code;

DiaryBuilder trained()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15)})).sets("2026-03-02", "morning", "squat", 3, 15).check("2026-03-02", 4);
    return builder;
}

/// A plan with other limits, whose items start later.
std::vector<Entry> proposedPlan(std::string_view key)
{
    DiaryBuilder builder;
    builder.item(item(key, "2026-05-01", {onDays(4, 10)})).planSetting(Field::DuringLimit, number("2"));
    return builder.entries();
}

/// What is left of \a entries without their plans.
std::vector<Entry> withoutPlans(std::vector<Entry> entries)
{
    std::erase_if(entries, [](const Entry &entry) { return entry.kind == Kind::Plan; });
    return entries;
}

} // namespace

/// A proposal is looked at on the person's own entries, none of which it touches.
class tst_rehearsing : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aSettingChangesThePlanAndNothingElse()
    {
        const std::vector<Entry> before = trained().entries();

        const auto after = propose(before, {{}, {{"during_limit", "3.5"}, {"step_sessions", "2"}}});

        QVERIFY(after.has_value());
        const Diary diary = Diary::from(*after);
        QCOMPARE(diary.complaints().front().limits().during.toString(), std::string("3.5"));
        QCOMPARE(diary.complaints().front().limits().stepSessions, 2);
        QVERIFY(withoutPlans(*after) == withoutPlans(before));
    }

    void aBegunItemOfAProposedPlanBeganWhenItDid()
    {
        const auto after = propose(trained().entries(), {proposedPlan("squat"), {}});

        QVERIFY(after.has_value());
        const ComplaintDiary complaint = Diary::from(*after).complaints().front();
        QCOMPARE(complaint.items.front().item.start, day("2026-03-02"));
        QCOMPARE(complaint.items.front().item.stages.front().dose.sets, 4);
        QCOMPARE(complaint.items.front().sets.size(), std::size_t(3));
        QCOMPARE(complaint.limits().during.toString(), std::string("2"));
    }

    void aSettingCountsOverTheProposedPlan()
    {
        const auto after = propose(trained().entries(), {proposedPlan("squat"), {{"during_limit", "7"}}});

        QCOMPARE(Diary::from(*after).complaints().front().limits().during.toString(), std::string("7"));
    }

    void anEmptyValueLeavesTheDefault()
    {
        DiaryBuilder builder = trained();
        builder.planSetting(Field::DuringLimit, number("3")).planSetting(Field::CheckLimit, number("6"));

        const auto after = propose(builder.entries(), {{}, {{"during_limit", ""}, {"check_limit", ""}}});

        QVERIFY(after.has_value());
        const Limits limits = Diary::from(*after).complaints().front().limits();
        QCOMPARE(limits.during.toString(), std::string("5"));
        QVERIFY(!limits.check);
    }

    void aPlanThatContradictsItselfIsNotRehearsed()
    {
        DiaryBuilder resting;
        Item squat = item("squat", "2026-03-02", {onDays(3, 15)});
        squat.restsAfterVisit = true;
        resting.item(squat).planSetting(Field::RestDaysAfterVisit, number("2"));
        DiaryBuilder over;
        Item ended = item("squat", "2026-02-01", {onDays(3, 15)});
        ended.end = day("2026-02-20");
        over.item(ended);

        const auto rest = propose(resting.entries(), {{}, {{"rest_days_after_visit", "0"}}});
        const auto moved = propose(trained().entries(), {over.entries(), {}});

        QVERIFY(propose(resting.entries(), {{}, {{"rest_days_after_visit", "1"}}}).has_value());
        QVERIFY(rest.error().code == Code::Contradiction);
        QCOMPARE(rest.error().key, std::string("rest_days_after_visit"));
        QCOMPARE(rest.error().value, std::string("rests_after_visit"));
        QVERIFY(moved.error().code == Code::Contradiction); // it would begin after it ended
        QCOMPARE(moved.error().key, std::string("end"));
    }

    void aRevisionThatIsNoLongerInForceContradictsNothing()
    {
        Item resting = item("squat", "2026-03-02", {onDays(3, 15)});
        resting.restsAfterVisit = true;
        DiaryBuilder first;
        first.item(resting).planSetting(Field::RestDaysAfterVisit, number("2"));
        DiaryBuilder second;
        second.item(item("squat", "2026-03-02", {onDays(3, 15)})).planSetting(Field::Number, number("2"));
        std::vector<Entry> entries = first.entries();
        for (Entry entry : second.entries()) {
            entry.id = "second-" + entry.id;
            entries.push_back(std::move(entry));
        }

        QVERIFY(propose(entries, {{}, {{"rest_days_after_visit", "0"}}}).has_value());
    }

    void whatCannotBeRehearsedIsSaid()
    {
        const std::vector<Entry> entries = trained().entries();

        QVERIFY(propose(entries, {proposedPlan("lunge"), {}}).error().code == Code::PlanOfNothing);
        QVERIFY(propose(entries, {{}, {{"during", "4"}}}).error().code == Code::SettingUnknown);
        QVERIFY(propose(entries, {{}, {{"during_limit", "11"}}}).error().code == Code::ValueRefused);
        QVERIFY(propose(withoutPlans(entries), {}).error().code == Code::NoPlan);
    }
};

MORROW_SUITE(tst_rehearsing)

#include "tst_rehearsing.moc"
