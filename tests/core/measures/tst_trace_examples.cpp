// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "measures/trace.h"

#include <string>

using namespace morrow;
using namespace morrow::test;

namespace {

/// A day as the ids say it: "0302".
std::string shortDay(CivilDay day)
{
    const std::string text = day.toString();
    return text.substr(5, 2) + text.substr(8, 2);
}

std::string shortNumber(double number)
{
    return QString::number(number).toStdString();
}

Outcome hopsOf(Side side)
{
    return {0, day("2026-03-02"), OutcomeKind::Test, "hops", side, Decimal(), {}};
}

/// Five weeks from Monday 2 March and a little around them, each entry with a name that says its
/// kind and day: k a check, a b z the sets of the squat (z without a rep), c one of the stretch.
DiaryBuilder fiveWeeks()
{
    DiaryBuilder builder;
    Item stretch = item("stretch", "2026-03-02", {onDays(1, 10)});
    stretch.loads = false;
    builder.item(restingAfterVisits(item("squat", "2026-03-02", {onDays(2, 15), onDays(2, 12)})))
        .item(stretch)
        .planSetting(Field::RestDaysAfterVisit, number("2"))
        .planSetting(Field::CheckLimit, number("7"))
        .planSetting(Field::StepWindowDays, number("6"))
        .planSetting(Field::StepSessions, number("2"))
        .planSetting(Field::ContactRise, number("2"));

    const auto check = [&builder](const char *day, int pain, std::optional<int> minutes = {}, const char *recorded = "") {
        builder.check(day, pain, minutes, {.id = "k" + shortDay(Day(day)), .recorded = recorded});
    };
    check("2026-02-22", 9);
    check("2026-03-01", 6);
    check("2026-03-02", 5, 20);
    check("2026-03-03", 5, {}, "2026-03-04T07:00:00+01:00");
    check("2026-03-04", 4, 15, "2026-03-04T07:00:00+01:00");
    builder.declined("2026-03-05", {.id = "k0305"});
    check("2026-03-08", 6);
    check("2026-03-09", 3);
    check("2026-03-10", 4);
    check("2026-03-11", 7);
    check("2026-03-17", 3);
    check("2026-03-18", 3, 5);
    check("2026-03-23", 2, 6);
    check("2026-03-25", 5);
    check("2026-03-27", 4, 7);
    check("2026-03-29", 2);
    check("2026-03-30", 3, 10);
    check("2026-03-31", 2);
    check("2026-04-03", 8, 12);
    check("2026-04-05", 2);
    check("2026-04-06", 8, 30);

    const auto set = [&builder](const char *name, const char *day, const char *item, int number, int reps) {
        builder.set(day, "morning", item, number, reps, {}, {.id = name + shortDay(Day(day))});
    };
    for (const char *const day :
        {"2026-03-02", "2026-03-16", "2026-03-17", "2026-03-26", "2026-03-30", "2026-04-02", "2026-04-04", "2026-04-05"}) {
        set("a", day, "squat", 1, 12);
        set("b", day, "squat", 2, 1);
        set("z", day, "squat", 3, 0);
    }
    set("a", "2026-03-11", "squat", 1, 15);
    set("c", "2026-03-02", "stretch", 1, 10);
    set("c", "2026-03-31", "stretch", 1, 10);

    builder.session("2026-03-02", "morning", 4, 4, {.id = "s0302"})
        .session("2026-03-29", "morning", 2, {}, {.id = "s0329"})
        .session("2026-03-30", "morning", 3, 4, {.id = "s0330"})
        .session("2026-04-02", "morning", {}, 8, {.id = "s0402"})
        .session("2026-04-03", "morning", 8, {}, {.id = "s0403"})
        .session("2026-04-04", "morning", {}, {}, {.id = "s0404"})
        .session("2026-04-05", "morning", 2, 5, {.id = "s0405"})
        .session("2026-04-06", "morning", 1, 9, {.id = "s0406"});
    builder.skip("2026-03-03", "morning", {.id = "skip0303"})
        .skip("2026-03-11", "morning", {.id = "skip0311"})
        .skip("2026-04-06", "morning", {.id = "skip0406"})
        .easier("2026-03-04", "morning", {.id = "easy0304"})
        .easier("2026-03-12", "morning", {.id = "easy0312"});
    builder.stage("2026-03-16", "squat", 2, {.id = "stage0316"}).stage("2026-04-06", "squat", 1, {.id = "stage0406"});
    builder.pause("2026-02-20", "2026-03-01", {.id = "pause0220"})
        .pause("2026-03-12", "2026-03-13", {.id = "pause0312"})
        .pause("2026-04-06", "2026-04-07", {.id = "pause0406"});
    builder.visit("2026-02-28", {}, {.id = "v0228"})
        .visit("2026-03-01", {}, {.id = "v0301"})
        .visit("2026-03-10", {}, {.id = "v0310"})
        .visit("2026-03-24", {}, {.id = "v0324"})
        .visit("2026-03-24", {}, {.id = "w0324"})
        .visit("2026-04-06", {}, {.id = "v0406"});
    builder.entry(Kind::Flag, "2026-03-03", body({{Field::Sign, std::string("fever")}}), {.id = "f0303"})
        .entry(Kind::Cleared, "2026-04-06", body({{Field::Flag, std::string("f0303")}}), {.id = "cleared0406"})
        .entry(Kind::Flag, "2026-04-01", body({{Field::Sign, std::string("fever")}}), {.id = "f0401"})
        .entry(Kind::Cleared, "2026-04-07", body({{Field::Flag, std::string("f0401")}}), {.id = "cleared0407"})
        .entry(Kind::Flag, "2026-04-06", body({{Field::Sign, std::string("fever")}}), {.id = "f0406"})
        .entry(Kind::Flag, "2026-04-07", body({{Field::Sign, std::string("fever")}}), {.id = "f0407"});
    const auto hops = [&builder](const char *day, const char *side, const char *value) {
        builder.outcome(day, "test", "hops", side, value, {.id = side + shortDay(Day(day))});
    };
    hops("2026-03-02", "left", "5");
    hops("2026-03-02", "right", "6");
    hops("2026-03-30", "left", "7");
    hops("2026-03-30", "right", "8");
    hops("2026-03-30", "both", "9");
    hops("2026-04-06", "left", "8");
    builder.outcome("2026-03-30", "test", "jumps", "right", "3", {.id = "jumps"});
    return builder;
}

/// The days, the values by entry, what shaped them and the limit.
std::string told(const Diary &diary, const Trace &trace)
{
    std::string text = shortDay(trace.first) + "-" + shortDay(trace.last) + ":";
    for (const Behind &behind : trace.values) {
        text += ' ' + diary.entries()[behind.entry].id;
        if (behind.value)
            text += '=' + shortNumber(*behind.value);
    }
    for (const EntryIndex entry : trace.shapedBy)
        text += (entry == trace.shapedBy.front() ? " by " : " ") + diary.entries()[entry].id;
    if (trace.limit)
        text += " limit " + shortNumber(*trace.limit);
    return text;
}

} // namespace

/// Each number of one diary, with every entry behind it: one too many or too few is seen.
class tst_trace_examples : public QObject
{
    Q_OBJECT

    const Diary m_diary = fiveWeeks().diary();
    const ComplaintDiary &m_complaint = m_diary.complaints().front();
    const CivilDay m_to = day("2026-04-05");
    const Window m_window{day("2026-03-02"), day("2026-03-02"), m_to};

    /// What is behind \a condition of the first item with the limit that the rule looked at, if it did.
    [[nodiscard]] std::string toldOf(Condition condition) const
    {
        const auto measures = measure(m_diary, m_to).value();
        const auto &reasons = measures.front().items.front().progression->reasons;
        const auto found
            = std::find_if(reasons.begin(), reasons.end(), [condition](const Reason &one) { return one.condition == condition; });
        const Reason reason = found == reasons.end() ? Reason{.condition = condition} : *found;
        return told(m_diary, behindCondition(m_diary, m_complaint, m_complaint.items[0], m_window, reason));
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void adherenceOfAnItemThatRestsAfterVisits()
    {
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[0], m_window, AdherenceFigure::Due)),
            std::string("0302-0405: by stage0316 pause0312 v0301 v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[0], m_window, AdherenceFigure::Done)),
            std::string("0302-0405: a0302=12 b0302=1 a0311=15 a0316=12 b0316=1 a0317=12 b0317=1 a0326=12 "
                        "b0326=1 a0330=12 b0330=1 a0402=12 b0402=1 a0404=12 b0404=1 a0405=12 b0405=1 by "
                        "stage0316 pause0312 v0301 v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[0], m_window, AdherenceFigure::Skips)),
            std::string("0302-0405: skip0303 by stage0316 pause0312 v0301 v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[0], m_window, AdherenceFigure::Easier)),
            std::string("0302-0405: easy0304 by stage0316 pause0312 v0301 v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[0], m_window, AdherenceFigure::Away)),
            std::string("0302-0405: by stage0316 pause0312 v0301 v0310 v0324 w0324"));
    }

    void adherenceOfAnItemThatDoesNot()
    {
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[1], m_window, AdherenceFigure::Due)),
            std::string("0302-0405: by pause0312"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[1], m_window, AdherenceFigure::Done)),
            std::string("0302-0405: c0302=10 c0331=10 by pause0312"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[1], m_window, AdherenceFigure::Skips)),
            std::string("0302-0405: skip0303 skip0311 by pause0312"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[1], m_window, AdherenceFigure::Easier)),
            std::string("0302-0405: easy0304 by pause0312"));
        QCOMPARE(told(m_diary, behindAdherence(m_diary, m_complaint, m_complaint.items[1], m_window, AdherenceFigure::Away)),
            std::string("0302-0405: by pause0312"));
    }

    void adherenceOverAFewDays()
    {
        QCOMPARE(told(m_diary,
                     behindAdherence(m_diary, m_complaint, m_complaint.items[0], {day("2026-03-02"), day("2026-03-12"), day("2026-03-16")},
                         AdherenceFigure::Due)),
            std::string("0312-0316: by stage0316 pause0312"));
        QCOMPARE(told(m_diary,
                     behindAdherence(m_diary, m_complaint, m_complaint.items[0], {day("2026-03-02"), day("2026-03-12"), day("2026-03-16")},
                         AdherenceFigure::Done)),
            std::string("0312-0316: a0316=12 b0316=1 by stage0316 pause0312"));
    }

    void theCheck()
    {
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Recorded)),
            std::string("0302-0405: k0302=5 k0303=5 k0304=4 k0308=6 k0309=3 k0310=4 k0311=7 k0317=3 k0318=3 "
                        "k0323=2 k0325=5 k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::SameDay)), std::string("0302-0405: k0304=4"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Late)), std::string("0302-0405: k0303=5"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Paper)),
            std::string("0302-0405: k0302=5 k0308=6 k0309=3 k0310=4 k0311=7 k0317=3 k0318=3 k0323=2 k0325=5 "
                        "k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Declined)), std::string("0302-0405: k0305"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::FirstWeek)),
            std::string("0302-0308: k0302=5 k0303=5 k0304=4 k0308=6"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Reference)),
            std::string("0302-0308: k0302=5 k0303=5 k0304=4 k0308=6"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Current)),
            std::string("0330-0405: k0330=3 k0331=2 k0403=8 k0405=2"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Change)),
            std::string("0302-0405: k0302=5 k0303=5 k0304=4 k0308=6 k0330=3 k0331=2 k0403=8 k0405=2"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Trend)),
            std::string("0302-0405: k0302=5 k0303=5 k0304=4 k0308=6 k0309=3 k0310=4 k0311=7 k0317=3 k0318=3 "
                        "k0323=2 k0325=5 k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::Limits)),
            std::string("0302-0405: k0302=5 k0303=5 k0304=4 k0308=6 k0309=3 k0310=4 k0311=7 k0317=3 k0318=3 "
                        "k0323=2 k0325=5 k0327=4 k0329=2 k0330=3"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::StiffnessRecorded)),
            std::string("0302-0405: k0302=20 k0304=15 k0318=5 k0323=6 k0327=7 k0330=10 k0403=12"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::StiffnessCurrent)),
            std::string("0330-0405: k0330=10 k0403=12"));
        QCOMPARE(told(m_diary, behindCheck(m_diary, m_complaint, m_window, CheckFigure::StiffnessTrend)),
            std::string("0302-0405: k0302=20 k0304=15 k0318=5 k0323=6 k0327=7 k0330=10 k0403=12"));
    }

    void aResponse()
    {
        QCOMPARE(told(m_diary, behindResponse(m_complaint, m_to, day("2026-03-11"))),
            std::string("0305-0312: by k0308 k0309 k0310 a0311 v0310 limit 1"));
        QCOMPARE(told(m_diary, behindResponse(m_complaint, m_to, day("2026-03-26"))),
            std::string("0320-0327: k0327=4 by k0323 a0326 b0326 v0324 w0324 limit 1"));
        QCOMPARE(told(m_diary, behindResponse(m_complaint, m_to, day("2026-03-30"))),
            std::string("0324-0331: k0331=2 by k0327 k0329 k0330 a0330 b0330 v0324 w0324 limit 1"));
        QCOMPARE(told(m_diary, behindResponse(m_complaint, m_to, day("2026-04-02"))),
            std::string("0327-0403: k0403=8 by k0327 k0329 k0330 k0331 a0402 b0402 limit 1"));
        QCOMPARE(told(m_diary, behindResponse(m_complaint, m_to, day("2026-04-05"))),
            std::string("0330-0406: k0406=8 by k0330 k0331 k0403 k0405 a0405 b0405 limit 1"));
    }

    void responses()
    {
        QCOMPARE(told(m_diary, behindResponses(m_complaint, day("2026-03-30"), m_to, ResponseState::Settled)),
            std::string("0330-0405: k0331=2 k0405=2 by k0327 k0329 k0330 k0403 a0330 b0330 a0402 b0402 a0404 b0404 v0324 "
                        "w0324 limit 1"));
        QCOMPARE(told(m_diary, behindResponses(m_complaint, day("2026-03-30"), m_to, ResponseState::Unsettled)),
            std::string("0330-0405: k0403=8 by k0327 k0329 k0330 k0331 k0405 a0330 b0330 a0402 b0402 a0404 b0404 v0324 "
                        "w0324 limit 1"));
        QCOMPARE(told(m_diary, behindResponses(m_complaint, day("2026-03-30"), m_to, ResponseState::Unknown)),
            std::string("0330-0405: by k0327 k0329 k0330 k0331 k0403 k0405 a0330 b0330 a0402 b0402 a0404 b0404 v0324 w0324 "
                        "limit 1"));
    }

    void theRulesOfTheWeek()
    {
        QCOMPARE(
            told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::During)), std::string("0330-0405: s0330=3 s0403=8 s0405=2 limit 5"));
        QCOMPARE(
            told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::After)), std::string("0330-0405: s0330=4 s0402=8 s0405=5 limit 5"));
        QCOMPARE(told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::Check)),
            std::string("0330-0405: k0330=3 k0331=2 k0403=8 k0405=2 limit 7"));
        QCOMPARE(told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::Settled)),
            std::string("0330-0405: k0403=8 by k0327 k0329 k0330 k0331 k0405 a0330 b0330 a0402 b0402 a0404 b0404 v0324 "
                        "w0324 limit 0"));
        QCOMPARE(told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::Weekly)),
            std::string("0323-0405: k0323=2 k0325=5 k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2 limit "
                        "0.5"));
        QCOMPARE(told(m_diary, behindRule(m_complaint, m_to, WeekRuleName::Stiffness)),
            std::string("0323-0405: k0323=6 k0327=7 k0330=10 k0403=12 limit 10"));
    }

    void conditions()
    {
        QCOMPARE(toldOf(Condition::DaysInStage), std::string("0316-0405: by stage0316 v0324 w0324 limit 0"));
        QCOMPARE(toldOf(Condition::SessionsInStage),
            std::string("0316-0405: a0316=12 b0316=1 a0317=12 b0317=1 a0326=12 b0326=1 a0330=12 b0330=1 "
                        "a0402=12 b0402=1 a0404=12 b0404=1 a0405=12 b0405=1 by stage0316 v0324 w0324 limit 0"));
        QCOMPARE(toldOf(Condition::Adherence),
            std::string("0316-0405: a0316=12 b0316=1 a0317=12 b0317=1 a0326=12 b0326=1 a0330=12 b0330=1 "
                        "a0402=12 b0402=1 a0404=12 b0404=1 a0405=12 b0405=1 by stage0316 v0324 w0324 limit 0.8"));
        QCOMPARE(
            toldOf(Condition::SetsComplete), std::string("0402-0404: a0402=12 b0402=1 a0404=12 b0404=1 by stage0316 v0324 w0324 limit 2"));
        QCOMPARE(
            toldOf(Condition::PainDuring), std::string("0402-0404: s0402 s0404 by a0402 b0402 a0404 b0404 stage0316 v0324 w0324 limit 5"));
        QCOMPARE(
            toldOf(Condition::PainAfter), std::string("0402-0404: s0402=8 s0404 by a0402 b0402 a0404 b0404 stage0316 v0324 w0324 limit 5"));
        QCOMPARE(toldOf(Condition::Settled),
            std::string("0402-0404: k0403=8 k0405=2 by k0327 k0329 k0330 k0331 a0402 b0402 a0404 b0404 stage0316 v0324 "
                        "w0324 limit 2"));
        QCOMPARE(toldOf(Condition::WeeklyRise),
            std::string("0323-0405: k0323=2 k0325=5 k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2 limit "
                        "0.5"));
        QCOMPARE(toldOf(Condition::Level),
            std::string("0302-0405: k0302=5 k0303=5 k0304=4 k0308=6 k0330=3 k0331=2 k0403=8 k0405=2 limit "
                        "6"));
        QCOMPARE(toldOf(Condition::NextStage), std::string("0316-0405: by stage0316 v0324 w0324 limit 2"));
        QCOMPARE(toldOf(Condition::Sign), std::string("0302-0406: f0401 f0406 by f0303 cleared0406"));
        QCOMPARE(toldOf(Condition::SessionPain), std::string("0403-0406: s0403=8 s0406=9 limit 8"));
        QCOMPARE(toldOf(Condition::CheckPain), std::string("0403-0406: k0403=8 k0406=8 by k0327 k0329 k0330 k0331 k0405 limit 8"));
        QCOMPARE(toldOf(Condition::LastTwoUnsettled),
            std::string("0402-0404: k0403=8 k0405=2 by k0327 k0329 k0330 k0331 k0406 a0402 b0402 a0404 b0404 stage0316 "
                        "v0324 w0324"));
    }

    void visits()
    {
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-02-28"), VisitFigure::Before)),
            std::string("0221-0227: k0222=9 by v0228"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-02-28"), VisitFigure::Given)), std::string("0228-0228: v0228"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-10"), VisitFigure::Before)),
            std::string("0303-0309: k0304=4 k0308=6 k0309=3 by v0301 v0310"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-10"), VisitFigure::After)),
            std::string("0313-0323: k0317=3 k0318=3 k0323=2 by v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-10"), VisitFigure::Change)),
            std::string("0303-0323: k0304=4 k0308=6 k0309=3 k0317=3 k0318=3 k0323=2 by v0301 v0310 v0324 w0324"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-10"), VisitFigure::Given)), std::string("0310-0310: v0310"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-24"), VisitFigure::Before)),
            std::string("0317-0323: k0317=3 k0318=3 k0323=2 by v0324 w0324"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-24"), VisitFigure::After)),
            std::string("0327-0405: k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2 by v0324 w0324"));
        QCOMPARE(told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-24"), VisitFigure::Change)),
            std::string("0317-0405: k0317=3 k0318=3 k0323=2 k0327=4 k0329=2 k0330=3 k0331=2 k0403=8 k0405=2 "
                        "by v0324 w0324"));
        QCOMPARE(
            told(m_diary, behindVisit(m_complaint, m_to, day("2026-03-24"), VisitFigure::Given)), std::string("0324-0324: v0324 w0324"));
    }

    void outcomes()
    {
        QCOMPARE(
            told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Left), false)), std::string("0302-0330: left0302=5 left0330=7"));
        QCOMPARE(
            told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Left), true)), std::string("0330-0330: left0330=7 right0330=8"));
        QCOMPARE(
            told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Right), false)), std::string("0302-0330: right0302=6 right0330=8"));
        QCOMPARE(
            told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Right), true)), std::string("0330-0330: right0330=8 left0330=7"));
        QCOMPARE(told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Both), false)), std::string("0330-0330: both0330=9"));
        QCOMPARE(told(m_diary, behindOutcome(m_complaint, m_to, hopsOf(Side::Both), true)), std::string("0330-0330: both0330=9"));
    }
};

MORROW_SUITE(tst_trace_examples)

#include "tst_trace_examples.moc"
