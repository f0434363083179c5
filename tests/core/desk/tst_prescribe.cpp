// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/prescribe.h"
#include "support/diary_builder.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

/// Noon of 16 March 2026, UTC: a revision can be in force from the 17th.
constexpr Moment kIssued{1773662400000, 0};

/// What is prescribed from the start: one item of two stages since 2 March, one that begins on the 30th.
std::vector<Item> begun()
{
    return {item("raise", "2026-03-02", {onDays(3, 15), onDays(3, 8)}), item("squat", "2026-03-30", {onDays(2, 10)})};
}

DiaryBuilder builderOf(const std::vector<Item> &items)
{
    DiaryBuilder builder;
    for (const Item &one : items)
        builder.item(one);
    return builder;
}

/// The plan of \a items as somebody writes it down: without an id and a number.
Draft planOf(const std::vector<Item> &items, const Body &settings = {})
{
    Draft draft{.kind = Kind::Plan, .author = Author::Clinic};
    for (const Entry &entry : builderOf(items).entries()) {
        if (entry.kind == Kind::Plan)
            draft.body = *BodyReader().read(entry.body);
    }
    draft.body.remove(Field::Plan);
    draft.body.remove(Field::Number);
    for (const auto &[field, value] : settings.fields())
        draft.body.set(field, value);
    return draft;
}

Draft from(Draft draft, Day day)
{
    draft.day = CivilDay(day);
    return draft;
}

std::string said(const PlanProblem &problem)
{
    const auto with = [&problem](const char *name) {
        return std::string(name) + (problem.item.empty() ? "" : " " + problem.item) + (problem.day ? " " + problem.day->toString() : "");
    };
    switch (problem.code) {
    case PlanProblem::Code::Unreadable:
        return with("unreadable");
    case PlanProblem::Code::Withdraws:
        return with("withdraws");
    case PlanProblem::Code::ComplaintUnknown:
        return with("complaint unknown");
    case PlanProblem::Code::AnotherPlan:
        return with("another plan");
    case PlanProblem::Code::NumberRefused:
        return with("number");
    case PlanProblem::Code::FromTooEarly:
        return with("too early");
    case PlanProblem::Code::PastChanges:
        return with("past changes");
    case PlanProblem::Code::BegunItemChanges:
        return with("begun");
    case PlanProblem::Code::NewItemTooEarly:
        return with("new too early");
    case PlanProblem::Code::ContinuesUnknown:
        return with("continues unknown");
    case PlanProblem::Code::ContinuesOverlaps:
        return with("continues overlaps");
    case PlanProblem::Code::ItemTwice:
        return with("twice");
    case PlanProblem::Code::ItemOfAnotherPlan:
        return with("of another plan");
    }
    return {};
}

std::string prescribing(const Diary &diary, Draft draft)
{
    const auto revision = nextRevision(diary, std::move(draft), kIssued, "a-new-plan");
    if (revision)
        return "prescribed";
    std::string all;
    for (const PlanProblem &problem : revision.error())
        all += (all.empty() ? "" : ", ") + said(problem);
    return all;
}

std::vector<Item> with(std::vector<Item> items, const Item &more)
{
    items.push_back(more);
    return items;
}

Item continuing(Item item, const std::string &key)
{
    item.continues = key;
    return item;
}

} // namespace

/// A revision never changes a day that has passed, and says which rule it breaks.
class tst_prescribe : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theFirstRevisionBeginsOnItsOwnStart()
    {
        const Diary diary = DiaryBuilder().diary();

        const auto revision = nextRevision(diary, planOf(begun()), kIssued, "a-new-plan");

        QVERIFY(revision.has_value());
        QVERIFY(revision->day == day("2026-03-02"));
        QVERIFY(revision->body.textOr(Field::Plan) == "a-new-plan");
        QCOMPARE(revision->body.intOr(Field::Number, 0), 1);
        QVERIFY(!revision->replaces.has_value());
        QCOMPARE(prescribing(diary, from(planOf(begun()), "2026-03-03")), std::string("too early 2026-03-02"));
    }

    void theNextRevisionCountsOnFromTheLast()
    {
        const Diary diary = builderOf(begun()).diary();

        const auto revision = nextRevision(diary, planOf(begun()), kIssued, "a-new-plan");

        QVERIFY(revision.has_value());
        QVERIFY(revision->day == day("2026-03-17"));
        QVERIFY(revision->body.textOr(Field::Plan) == "plan-of-main");
        QCOMPARE(revision->body.intOr(Field::Number, 0), 2);
        QVERIFY(revision->replaces == "plan-main");
    }

    void theThirdRevisionReplacesTheSecond()
    {
        DiaryBuilder builder = builderOf(begun());
        auto second = nextRevision(builder.diary(), planOf(begun()), kIssued, {});
        QVERIFY(second.has_value());
        builder.entry(
            Kind::Plan, *second->day, second->body, {.id = "second", .recorded = "2026-03-16T12:00:00Z", .replaces = "plan-main"});

        const auto third = nextRevision(builder.diary(), planOf(begun()), kIssued, {});

        QVERIFY(third.has_value());
        QCOMPARE(third->body.intOr(Field::Number, 0), 3);
        QVERIFY(third->replaces == "second");
    }

    void i1_andI2_eachWrongRevisionIsNamed_data()
    {
        QTest::addColumn<Draft>("draft");
        QTest::addColumn<QString>("refusal");
        const auto row = [](const char *name, const Draft &draft, const char *refusal) {
            QTest::newRow(name) << draft << QString::fromLatin1(refusal);
        };
        const Item squat = begun()[1];
        const Item raise = begun()[0];

        row("unchanged", planOf(begun()), "prescribed");
        row("from today", from(planOf(begun()), "2026-03-16"), "too early 2026-03-17");
        row("from later on", from(planOf(begun()), "2026-04-01"), "prescribed");
        row("another number", planOf(begun(), body({{Field::Number, Decimal::whole(7)}})), "number");
        row("another plan", planOf(begun(), body({{Field::Plan, std::string("p9")}})), "another plan");
        row("taken back", planOf(begun(), body({{Field::Withdrawn, Decimal::whole(1)}})), "withdraws");
        row("of a complaint that is not there", planOf(begun(), body({{Field::Complaint, std::string("knee")}})), "complaint unknown");
        row("another dose of what was begun", planOf({item("raise", "2026-03-02", {onDays(3, 12), onDays(3, 8)}), squat}),
            "past changes raise 2026-03-02, begun raise");
        row("another rhythm of what was begun",
            planOf({item("raise", "2026-03-02", {onDays(3, 15, "FREQ=DAILY;INTERVAL=2"), onDays(3, 8)}), squat}),
            "past changes raise 2026-03-03, begun raise");
        row("what was begun is left out", planOf({squat}), "past changes raise 2026-03-02, begun raise");
        row("what was begun started later", planOf({item("raise", "2026-03-04", raise.stages), squat}),
            "past changes raise 2026-03-02, begun raise");
        row("what was begun ended in the past", planOf({until(raise, "2026-03-10"), squat}), "past changes raise 2026-03-11, begun raise");
        row("what was begun ends today", planOf({until(raise, "2026-03-16"), squat}), "prescribed");
        row("a later stage, not in force", planOf({item("raise", "2026-03-02", {onDays(3, 15), onDays(5, 6)}), squat}), "prescribed");
        row("one more stage", planOf({item("raise", "2026-03-02", {onDays(3, 15), onDays(3, 8), onDays(4, 6)}), squat}), "prescribed");
        row("what begins later", planOf({raise, item("squat", "2026-03-20", {onDays(9, 9)})}), "prescribed");
        row("what begins later is left out", planOf({raise}), "prescribed");
        row("a new item in the past", planOf(with(begun(), item("lunge", "2026-03-15", {onDays(1, 1)}))),
            "past changes lunge 2026-03-15, new too early lunge");
        row("a new item in the past that was not due yet",
            planOf(with(begun(), item("lunge", "2026-03-15", {onDays(1, 1, "FREQ=WEEKLY;BYDAY=FR")}))), "new too early lunge");
        row("a new item", planOf(with(begun(), item("lunge", "2026-03-17", {onDays(1, 1)}))), "prescribed");
        row("ended, and continued with another dose",
            planOf({until(raise, "2026-03-16"), squat, continuing(item("raise-2", "2026-03-17", {onDays(3, 12)}), "raise")}), "prescribed");
        row("continued while it goes on", planOf({raise, squat, continuing(item("raise-2", "2026-03-17", {onDays(3, 12)}), "raise")}),
            "continues overlaps raise-2");
        row("continues nothing", planOf(with(begun(), continuing(item("raise-2", "2026-03-17", {onDays(3, 12)}), "rise"))),
            "continues unknown raise-2");
        row("a key twice", planOf(with(begun(), item("squat", "2026-04-02", {onDays(1, 1)}))), "twice squat");
        row("a key of another plan", planOf(with(begun(), item("press", "2026-03-20", {onDays(1, 1)}))), "of another plan press");
    }

    void i1_andI2_eachWrongRevisionIsNamed()
    {
        QFETCH(Draft, draft);
        QFETCH(QString, refusal);
        DiaryBuilder builder = builderOf(begun());
        builder.complaint("shoulder").item(item("press", "2026-03-02", {onDays(1, 1)}));

        QCOMPARE(QString::fromStdString(prescribing(builder.diary(), draft)), refusal);
    }

    void i1_restAfterAVisitOfThePastIsNotPrescribedAfterwards()
    {
        DiaryBuilder builder = builderOf({restingAfterVisits(item("raise", "2026-03-02", {onDays(3, 15)}))});
        builder.visit("2026-03-09");
        const Draft rests = planOf(
            {restingAfterVisits(item("raise", "2026-03-02", {onDays(3, 15)}))}, body({{Field::RestDaysAfterVisit, Decimal::whole(2)}}));

        QCOMPARE(prescribing(builder.diary(), rests), std::string("past changes raise 2026-03-09"));
    }

    void i2_theStageThatWasInForceIsWhatMustNotChange()
    {
        DiaryBuilder builder = builderOf(begun());
        builder.stage("2026-03-10", "raise", 2);
        const Item squat = begun()[1];

        QCOMPARE(prescribing(builder.diary(), planOf({item("raise", "2026-03-02", {onDays(3, 15), onDays(3, 6)}), squat})),
            std::string("past changes raise 2026-03-10, begun raise"));
    }

    void i2_aPauseHidesNoChangeOfWhatWasBegun()
    {
        DiaryBuilder builder = builderOf(begun());
        builder.pause("2026-03-02", "2026-03-16");
        const Item squat = begun()[1];

        QCOMPARE(prescribing(builder.diary(), planOf({item("raise", "2026-03-02", {onDays(3, 12), onDays(3, 8)}), squat})),
            std::string("begun raise"));
    }
};

MORROW_SUITE(tst_prescribe)
#include "tst_prescribe.moc"
