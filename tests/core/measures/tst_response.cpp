// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// Checks of 3 from 2 March on, and a loading day on the 8th.
DiaryBuilder loadedOnTheEighth()
{
    DiaryBuilder builder;
    builder.item(item("squat", "2026-03-02", {onDays(3, 15)}))
        .checks("2026-03-02", {3, 3, 3, 3, 3, 3, 3})
        .sets("2026-03-08", "morning", "squat", 3, 15);
    return builder;
}

ResponseDay onTheEighth(const DiaryBuilder &builder)
{
    return measured(builder, "2026-03-15").response.days.at(0);
}

const WeekRule *rule(const ComplaintMeasures &measures, WeekRuleName name)
{
    for (const WeekRule &one : measures.rules) {
        if (one.rule == name)
            return &one;
    }
    return nullptr;
}

} // namespace

/// How the tissue answered to loading, and the clinician's limits over the last seven days.
class tst_response : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theNextCheckIsComparedWithWhatWasUsual_data()
    {
        QTest::addColumn<int>("next");
        QTest::addColumn<std::optional<double>>("rise");
        QTest::addColumn<bool>("settled");

        QTest::newRow("less") << 1 << std::optional(-2.0) << true;
        QTest::newRow("as much more as is allowed") << 4 << std::optional(1.0) << true;
        QTest::newRow("more than that") << 5 << std::optional(2.0) << false;
    }

    void theNextCheckIsComparedWithWhatWasUsual()
    {
        QFETCH(int, next);
        QFETCH(std::optional<double>, rise);
        QFETCH(bool, settled);
        DiaryBuilder builder = loadedOnTheEighth();
        builder.check("2026-03-09", next);

        const ResponseDay day = onTheEighth(builder);

        QCOMPARE(day.rise, rise);
        QVERIFY(day.state == (settled ? ResponseState::Settled : ResponseState::Unsettled));
        QVERIFY(!day.reason);
    }

    void withoutTheNextCheckNothingIsKnown()
    {
        const ResponseDay day = onTheEighth(loadedOnTheEighth());

        QCOMPARE(day.rise, kNone);
        QVERIFY(day.state == ResponseState::Unknown);
        QVERIFY(day.reason == UnknownBecause::Missing);
    }

    void sorenessAfterAVisitIsNoResponse()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.check("2026-03-09", 9).visit("2026-03-07");

        const ResponseDay day = onTheEighth(builder);

        QCOMPARE(day.rise, kNone);
        QVERIFY(day.reason == UnknownBecause::AfterVisit);
    }

    void aCheckAboveItsLimitIsEnough()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.planSetting(Field::CheckLimit, Decimal::whole(3)).check("2026-03-09", 4);

        QVERIFY(onTheEighth(builder).state == ResponseState::Unsettled);
    }

    void aLastingFlareStaysUnsettled()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.sets("2026-03-09", "morning", "squat", 3, 15).checks("2026-03-09", {7, 7, 7});

        const ResponseMeasures response = measured(builder, "2026-03-15").response;

        QCOMPARE(response.unsettled, 2);
    }

    void aStretchIsNoLoading()
    {
        Item stretch = item("stretch", "2026-03-02", {onDays(1, 3)});
        stretch.loads = false;
        DiaryBuilder builder;
        builder.item(stretch).sets("2026-03-08", "morning", "stretch", 1, 3).check("2026-03-09", 4);

        QVERIFY(measured(builder, "2026-03-15").response.days.empty());
    }

    void theLastDayHasNoAnswerYet()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.check("2026-03-09", 3);

        QVERIFY(measured(builder, "2026-03-08").response.days.empty());
        QCOMPARE(measured(builder, "2026-03-09").response.settled, 1);
    }

    void thePainAtTheFirstAssessmentStandsInForWhatIsUsual()
    {
        DiaryBuilder builder;
        builder.complaint("main", body({{Field::FirstAssessmentPain, Decimal::whole(6)}}))
            .item(item("squat", "2026-03-02", {onDays(3, 15)}))
            .sets("2026-03-08", "morning", "squat", 3, 15)
            .check("2026-03-09", 7);

        QCOMPARE(onTheEighth(builder).rise, std::optional(1.0));
    }

    void theGreatestPainOfSevenDaysIsHeldAgainstItsLimit()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        const auto session = [&builder](Day day, int during) { builder.session(day, "morning", during, std::nullopt); };
        session("2026-03-08", 9); // eight days back
        session("2026-03-09", 5);
        session("2026-03-10", 2);

        const ComplaintMeasures at = measured(builder, "2026-03-15");
        session("2026-03-11", 6);
        const ComplaintMeasures above = measured(builder, "2026-03-15");

        QCOMPARE(rule(at, WeekRuleName::During)->value, std::optional(5.0));
        QVERIFY(rule(at, WeekRuleName::During)->state == RuleState::Ok);
        QVERIFY(rule(above, WeekRuleName::During)->state == RuleState::Exceeded);
        QVERIFY(rule(at, WeekRuleName::After)->state == RuleState::Unknown);
    }

    void whatIsNotAskedHasNoRule()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.planSetting(Field::Asks, std::string("none"));

        const ComplaintMeasures measures = measured(builder, "2026-03-15");

        QCOMPARE(measures.rules.size(), std::size_t{3});
        QVERIFY(!rule(measures, WeekRuleName::During) && !rule(measures, WeekRuleName::Stiffness));
    }

    void aCheckRuleWithoutALimitIsUnknown()
    {
        const ComplaintMeasures measures = measured(loadedOnTheEighth(), "2026-03-08");

        const WeekRule *const check = rule(measures, WeekRuleName::Check);

        QVERIFY(check);
        QVERIFY(check->state == RuleState::Unknown);
        QCOMPARE(check->value, std::optional(3.0));
        QCOMPARE(check->limit, kNone);
    }

    void theWeeklyRuleNeedsFourValuesEach()
    {
        DiaryBuilder builder = loadedOnTheEighth(); // 2 to 8 March: 3 each
        builder.checks("2026-03-09", {4, 4, 4});
        QVERIFY(rule(measured(builder, "2026-03-15"), WeekRuleName::Weekly)->state == RuleState::Unknown);

        builder.check("2026-03-12", 3);

        const WeekRule weekly = *rule(measured(builder, "2026-03-15"), WeekRuleName::Weekly);
        QCOMPARE(weekly.value, std::optional(0.75));
        QVERIFY(weekly.state == RuleState::Exceeded);
    }

    void theWindowChangesTheListOfResponsesAndNoRule()
    {
        DiaryBuilder builder = loadedOnTheEighth();
        builder.check("2026-03-09", 5).sets("2026-03-10", "morning", "squat", 3, 15).check("2026-03-11", 3);

        const ComplaintMeasures whole = measured(builder, "2026-03-14");
        const ComplaintMeasures cut = measured(builder, "2026-03-14", Day("2026-03-10"));

        QCOMPARE(whole.response.days.size(), std::size_t{2});
        QCOMPARE(cut.response.days.size(), std::size_t{1});
        QVERIFY(whole.rules == cut.rules);
        QVERIFY(whole.items[0].progression == cut.items[0].progression);
    }
};

MORROW_SUITE(tst_response)

#include "tst_response.moc"
