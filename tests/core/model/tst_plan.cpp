// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/plan.h"
#include "support/json_text.h"

using namespace morrow;
using namespace morrow::test;

namespace {

std::optional<Plan> planOf(const std::string &body)
{
    return Plan::read(*BodyReader().read(json(body)), *CivilDay::parse("2026-03-02"));
}

/// A plan of one item with one stage of \a stage, whose fields have to stand in order.
std::optional<Plan> planOfStage(const std::string &stage)
{
    return planOf(
        "{'complaint':'heel','items':[{'exercise':'e','item':'i','stages':[" + stage + "],'start':'2026-03-02'}],'number':1,'plan':'p'}");
}

} // namespace

/// A plan's body is read into what measures ask about, with the defaults of the definitions.
class tst_plan : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void whatIsNotSetHasItsDefault()
    {
        const auto plan = planOf("{'complaint':'heel','items':[],'number':1,'plan':'p'}");

        QVERIFY(plan);
        const Limits &limits = plan->limits;
        QCOMPARE(limits.restDaysAfterVisit, 0);
        QCOMPARE(limits.sorenessDays, 2);
        QVERIFY(limits.during == Decimal::whole(5) && limits.after == Decimal::whole(5) && !limits.check);
        QVERIFY(limits.riseAllowed == Decimal::whole(1) && limits.weeklyRiseAllowed == *Decimal::parse("0.5"));
        QVERIFY(limits.weeklyStiffnessAllowed == Decimal::whole(10) && limits.levelRiseAllowed == Decimal::whole(1));
        QVERIFY(limits.contactLevel == Decimal::whole(8) && limits.contactRise == Decimal::whole(3));
        QCOMPARE(limits.stepSessions, 3);
        QCOMPARE(limits.stepWindowDays, 14);
        QCOMPARE(limits.stepSpacingDays, 7);
        QVERIFY(limits.stepAdherence == *Decimal::parse("0.8"));
        QVERIFY(plan->authority == Authority::Clinic);
        QVERIFY(plan->asks.stiffness && plan->asks.during && plan->asks.after && plan->asks.spare);
    }

    void whatIsSetStandsInItsPlace()
    {
        const auto plan
            = planOf("{'after_limit':3,'asks':'after spare','authority':'patient','check_limit':6,'complaint':'heel','contact_level':7,"
                     "'contact_rise':2,'during_limit':4,'items':[],'level_rise_allowed':0.5,'number':3,'plan':'p',"
                     "'rest_days_after_visit':1,'rise_allowed':2,'soreness_days':0,'step_adherence':0.9,'step_sessions':4,"
                     "'step_spacing_days':8,'step_window_days':15,'weekly_rise_allowed':1,'weekly_stiffness_allowed':5}");

        QVERIFY(plan);
        QCOMPARE(plan->id, std::string("p"));
        QCOMPARE(plan->complaint, std::string("heel"));
        QCOMPARE(plan->number, 3);
        QCOMPARE(plan->from.toString(), std::string("2026-03-02"));
        const Limits &limits = plan->limits;
        QVERIFY(limits.after == Decimal::whole(3) && limits.check == Decimal::whole(6) && limits.during == Decimal::whole(4));
        QVERIFY(limits.contactLevel == Decimal::whole(7) && limits.contactRise == Decimal::whole(2));
        QVERIFY(limits.levelRiseAllowed == *Decimal::parse("0.5") && limits.riseAllowed == Decimal::whole(2));
        QVERIFY(limits.weeklyRiseAllowed == Decimal::whole(1) && limits.weeklyStiffnessAllowed == Decimal::whole(5));
        QCOMPARE(limits.restDaysAfterVisit, 1);
        QCOMPARE(limits.sorenessDays, 0);
        QCOMPARE(limits.stepSessions, 4);
        QCOMPARE(limits.stepSpacingDays, 8);
        QCOMPARE(limits.stepWindowDays, 15);
        QVERIFY(limits.stepAdherence == *Decimal::parse("0.9"));
        QVERIFY(plan->authority == Authority::Patient);
        QVERIFY(!plan->asks.stiffness && !plan->asks.during && plan->asks.after && plan->asks.spare);
        const auto silent = planOf("{'asks':'none','authority':'off','complaint':'heel','items':[],'number':1,'plan':'p'}");
        QVERIFY(silent->authority == Authority::Off);
        QVERIFY(!silent->asks.stiffness && !silent->asks.during && !silent->asks.after && !silent->asks.spare);
    }

    void anItemIsReadWithItsStages()
    {
        const auto plan
            = planOf("{'complaint':'heel','items':[{'continues':'old','end':'2026-04-02','exercise':'heel raise','item':'raise','loads':0,"
                     "'rests_after_visit':1,'side':'both','stages':["
                     "{'body_share':0.8,'down_s':3,'load_kg':2.5,'min_days':14,'min_sessions':5,'pause_s':2,'reps':12,"
                     "'rrule':'FREQ=DAILY;INTERVAL=2','sets':3,'slots':'am pm','stage':1,'up_s':1},"
                     "{'hold_s':45,'per_week':3,'sets':4,'stage':2}],'start':'2026-03-02'}],'number':1,'plan':'p'}");

        QVERIFY(plan);
        QCOMPARE(plan->items.size(), std::size_t{1});
        const Item &item = plan->items[0];
        QCOMPARE(item.key + " " + item.exercise + " " + item.continues, std::string("raise heel raise old"));
        QVERIFY(item.side == Side::Both && !item.loads && item.restsAfterVisit);
        QCOMPARE(item.start.toString() + " " + item.end->toString(), std::string("2026-03-02 2026-04-02"));
        QCOMPARE(item.stages.size(), std::size_t{2});
        const Stage &first = item.stages[0];
        QVERIFY(first.dose.sets == 3 && first.dose.reps == 12 && !first.dose.isHeld());
        QVERIFY(first.dose.loadKg == *Decimal::parse("2.5") && first.dose.bodyShare == *Decimal::parse("0.8"));
        QVERIFY(first.dose.upSeconds == 1 && first.dose.pauseSeconds == 2 && first.dose.downSeconds == 3);
        QVERIFY(first.minDays == 14 && first.minSessions == 5);
        const auto &days = std::get<OnDays>(first.rhythm);
        QCOMPARE(days.rule.toString(), std::string("FREQ=DAILY;INTERVAL=2"));
        QVERIFY((days.slots == std::vector<std::string>{"am", "pm"}));
        const Stage &second = item.stages[1];
        QCOMPARE(std::get<PerWeek>(second.rhythm).sessions, 3);
        QVERIFY(second.dose.isHeld() && second.dose.holdSeconds == 45);
        QCOMPARE(second.dose.reps, 1); // of a held stage, unless prescribed
        QVERIFY(!second.dose.upSeconds);
    }

    void whatLacksWhatAPlanNeedsIsNone_data()
    {
        QTest::addColumn<QByteArray>("stage");

        QTest::newRow("no rhythm") << QByteArray("{'reps':12,'sets':3,'stage':1}");
        QTest::newRow("no slots") << QByteArray("{'reps':12,'rrule':'FREQ=DAILY','sets':3,'stage':1}");
        QTest::newRow("no rule") << QByteArray("{'reps':12,'sets':3,'slots':'am','stage':1}");
        QTest::newRow("another rule") << QByteArray("{'reps':12,'rrule':'FREQ=HOURLY','sets':3,'slots':'am','stage':1}");
        QTest::newRow("no sets") << QByteArray("{'per_week':3,'reps':12,'stage':1}");
        QTest::newRow("neither reps nor hold") << QByteArray("{'per_week':3,'sets':3,'stage':1}");
    }

    void whatLacksWhatAPlanNeedsIsNone()
    {
        QFETCH(QByteArray, stage);

        QVERIFY(planOfStage("{'per_week':3,'reps':12,'sets':3,'stage':1}"));
        QVERIFY(!planOfStage(stage.toStdString()));
    }

    void aPlanWithoutItemsOrAnItemWithoutStagesIsNone()
    {
        QVERIFY(!planOf("{'complaint':'heel','number':1,'plan':'p'}"));
        QVERIFY(
            !planOf("{'complaint':'heel','items':[{'exercise':'e','item':'i','stages':[],'start':'2026-03-02'}],'number':1,'plan':'p'}"));
        QVERIFY(!planOf("{'complaint':'heel','items':[{'exercise':'e','item':'i','start':'2026-03-02'}],'number':1,'plan':'p'}"));
        QVERIFY(!planOfStage(
            "{'per_week':3,'reps':12,'sets':3,'stage':1}]},{'exercise':'e','item':'j','stages':[{'per_week':3,'reps':1,'sets':1}"));
    }
};

MORROW_SUITE(tst_plan)

#include "tst_plan.moc"
