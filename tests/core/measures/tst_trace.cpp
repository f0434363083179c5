// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "core/measures/random_diary.h"
#include "measures/statistics.h"
#include "measures/today.h"
#include "measures/trace.h"

#include <rapidcheck.h>

#include <algorithm>
#include <functional>
#include <utility>

using namespace morrow;
using namespace morrow::test;

namespace {

/// One number: nullopt if there is none.
using Number = std::optional<double>;

Number of(std::int64_t count)
{
    return static_cast<double>(count);
}

/// A diary up to a day, with what its numbers are.
struct Measured
{
    Measured(Diary told, CivilDay last)
        : diary(std::move(told))
        , to(last)
        , all(measure(diary, last).value())
    {
    }

    [[nodiscard]] const ComplaintDiary &complaint() const { return diary.complaints().front(); }
    [[nodiscard]] const ComplaintMeasures &numbers() const { return all.front(); }
    [[nodiscard]] Window window() const { return {all.front().from, all.front().from, to}; }

    Diary diary;
    CivilDay to;
    std::vector<ComplaintMeasures> all;
};

/// A number that can be opened.
struct Figure
{
    std::string name;
    std::function<Number(const Measured &)> number;
    std::function<Trace(const Measured &)> trace;
    bool isOnlyLookedAt = false; ///< there is no number unless the rule came to it
};

std::vector<Figure> adherenceFigures()
{
    std::vector<Figure> figures;
    using Of = std::function<Number(const Adherence &)>;
    const auto add = [&figures](const char *name, AdherenceFigure figure, const Of &number) {
        for (std::size_t i = 0; i < 2; ++i) {
            figures.push_back({name, [number, i](const Measured &one) { return number(one.numbers().items.at(i).adherence); },
                [figure, i](const Measured &one) {
                    return behindAdherence(one.diary, one.complaint(), one.complaint().items.at(i), one.window(), figure);
                }});
        }
    };
    add("sets due", AdherenceFigure::Due, [](const Adherence &one) { return of(one.setsDue); });
    add("sessions due", AdherenceFigure::Due, [](const Adherence &one) { return of(one.sessionsDue); });
    add("volume due", AdherenceFigure::Due, [](const Adherence &one) { return one.volumeDue; });
    add("sets done", AdherenceFigure::Done, [](const Adherence &one) { return of(one.setsDone); });
    add("extra sets", AdherenceFigure::Done, [](const Adherence &one) { return of(one.setsExtra); });
    add("complete sessions", AdherenceFigure::Done, [](const Adherence &one) { return of(one.sessionsComplete); });
    add("sessions attended", AdherenceFigure::Done, [](const Adherence &one) { return of(one.sessionsAttended); });
    add("volume done", AdherenceFigure::Done, [](const Adherence &one) { return one.volumeDone; });
    add("set ratio", AdherenceFigure::Done, [](const Adherence &one) { return one.setRatio; });
    add("skips", AdherenceFigure::Skips, [](const Adherence &one) { return of(one.skips); });
    add("easier", AdherenceFigure::Easier, [](const Adherence &one) { return of(one.easier); });
    add("session ratio", AdherenceFigure::Done, [](const Adherence &one) { return one.sessionRatio; });
    add("volume ratio", AdherenceFigure::Done, [](const Adherence &one) { return one.volumeRatio; });
    add("away", AdherenceFigure::Away, [](const Adherence &one) { return of(one.away); });
    return figures;
}

/// Of the last week of each item; \a before more weeks belong to the number.
std::vector<Figure> weekFigures()
{
    std::vector<Figure> figures;
    using Of = std::function<Number(const ItemWeek &)>;
    const auto add = [&figures](const char *name, int before, const Of &number) {
        for (std::size_t i = 0; i < 2; ++i) {
            figures.push_back({name,
                [number, i](const Measured &one) {
                    const auto &weeks = one.numbers().items.at(i).weeks;
                    return weeks.empty() ? std::nullopt : number(weeks.back());
                },
                [before, i](const Measured &one) {
                    const auto &weeks = one.numbers().items.at(i).weeks;
                    const CivilDay start = weeks.empty() ? one.to : weeks.back().start - 7 * before;
                    const Window window{one.window().planStart, std::max(start, one.window().planStart), one.to};
                    return behindAdherence(one.diary, one.complaint(), one.complaint().items.at(i), window, AdherenceFigure::Done);
                }});
        }
    };
    add("reps of a week", 0, [](const ItemWeek &week) { return of(week.reps); });
    add("volume of a week", 0, [](const ItemWeek &week) { return week.volume; });
    add("tension", 0, [](const ItemWeek &week) { return week.tensionSeconds ? of(*week.tensionSeconds) : std::nullopt; });
    add("strength", 0, [](const ItemWeek &week) { return week.strength; });
    add("volume change", 1, [](const ItemWeek &week) { return week.volumeChange; });
    return figures;
}

std::vector<Figure> checkFigures()
{
    std::vector<Figure> figures;
    const auto add = [&figures](const char *name, CheckFigure figure, const std::function<Number(const ComplaintMeasures &)> &number) {
        figures.push_back({name, [number](const Measured &one) { return number(one.numbers()); },
            [figure](const Measured &one) { return behindCheck(one.diary, one.complaint(), one.window(), figure); }});
    };
    add("recorded", CheckFigure::Recorded, [](const auto &one) { return of(one.check.recorded); });
    add("same day", CheckFigure::SameDay, [](const auto &one) { return of(one.check.sameDay); });
    add("late", CheckFigure::Late, [](const auto &one) { return of(one.check.late); });
    add("paper", CheckFigure::Paper, [](const auto &one) { return of(one.check.paper); });
    add("first week", CheckFigure::FirstWeek, [](const auto &one) { return one.check.firstWeek; });
    add("reference", CheckFigure::Reference, [](const auto &one) { return one.check.reference; });
    add("current", CheckFigure::Current, [](const auto &one) { return one.check.current; });
    add("change", CheckFigure::Change, [](const auto &one) { return one.check.change; });
    add("trend", CheckFigure::Trend, [](const auto &one) { return one.check.trend ? Number(one.check.trend->slope) : std::nullopt; });
    add("centre", CheckFigure::Limits, [](const auto &one) { return one.check.limits ? Number(one.check.limits->centre) : std::nullopt; });
    add("upper", CheckFigure::Limits, [](const auto &one) { return one.check.limits ? one.check.limits->upper : std::nullopt; });
    add("days beyond", CheckFigure::Beyond,
        [](const auto &one) { return of(one.check.limits ? static_cast<std::int64_t>(one.check.limits->beyond.size()) : 0); });
    add("minutes recorded", CheckFigure::StiffnessRecorded, [](const auto &one) { return of(one.stiffness.recorded); });
    add("minutes", CheckFigure::StiffnessCurrent, [](const auto &one) { return one.stiffness.current; });
    return figures;
}

std::vector<Figure> responseFigures()
{
    std::vector<Figure> figures;
    const std::pair<ResponseState, int ResponseMeasures::*> states[]{{ResponseState::Settled, &ResponseMeasures::settled},
        {ResponseState::Unsettled, &ResponseMeasures::unsettled}, {ResponseState::Unknown, &ResponseMeasures::unknown}};
    for (const auto &[state, count] : states) {
        figures.push_back({"responses", [count = count](const Measured &one) { return of(one.numbers().response.*count); },
            [state = state](const Measured &one) { return behindResponses(one.complaint(), one.window().from, one.to, state); }});
    }
    figures.push_back({"last response", [](const Measured &one) { return Responses(one.complaint(), one.to).after(one.to - 1).rise; },
        [](const Measured &one) { return behindResponse(one.complaint(), one.to, one.to - 1); }});
    for (const auto name : {WeekRuleName::During, WeekRuleName::After, WeekRuleName::Check, WeekRuleName::Settled, WeekRuleName::Weekly,
             WeekRuleName::Stiffness}) {
        figures.push_back({"rule " + std::to_string(static_cast<int>(name)),
            [name](const Measured &one) {
                const auto &rules = one.numbers().rules;
                return std::find_if(rules.begin(), rules.end(), [name](const WeekRule &rule) { return rule.rule == name; })->value;
            },
            [name](const Measured &one) { return behindRule(one.complaint(), one.to, name); }});
    }
    return figures;
}

/// The value of a condition, and whether it is met; -1 if it makes for nothing; nullopt if nobody looked at it.
Number valueOf(const ItemMeasures &item, Condition condition)
{
    if (!item.progression)
        return std::nullopt;
    const auto &reasons = item.progression->reasons;
    const auto reason = std::find_if(reasons.begin(), reasons.end(), [condition](const Reason &one) { return one.condition == condition; });
    if (reason == reasons.end())
        return condition == Condition::LastTwoUnsettled ? std::nullopt : Number(-1);
    return reason->value.value_or(0) + (reason->isMet ? 1000 : 0);
}

std::vector<Figure> conditionFigures()
{
    std::vector<Figure> figures;
    for (int number = 0; number <= static_cast<int>(Condition::LastTwoUnsettled); ++number) {
        const auto condition = static_cast<Condition>(number);
        figures.push_back({"condition " + std::to_string(number),
            [condition](const Measured &one) { return valueOf(one.numbers().items.front(), condition); },
            [condition](const Measured &one) {
                return behindCondition(one.diary, one.complaint(), one.complaint().items.front(), one.window(), {.condition = condition});
            },
            true});
    }
    return figures;
}

std::vector<Figure> visitFigures()
{
    std::vector<Figure> figures;
    const auto add = [&figures](const char *name, VisitFigure figure, const std::function<Number(const VisitMeasures &)> &number) {
        figures.push_back({name,
            [number](const Measured &one) {
                const auto &visits = one.numbers().visits;
                return visits.empty() ? std::nullopt : number(visits.front());
            },
            [figure](const Measured &one) {
                const auto &visits = one.numbers().visits;
                return visits.empty() ? Trace{one.to, one.to, {}, {}, std::nullopt}
                                      : behindVisit(one.complaint(), one.to, visits.front().day, figure);
            }});
    };
    add("before", VisitFigure::Before, [](const VisitMeasures &visit) { return visit.before; });
    add("last after", VisitFigure::After,
        [](const VisitMeasures &visit) { return visit.afterWeeks.empty() ? std::nullopt : visit.afterWeeks.back(); });
    add("change after a visit", VisitFigure::Change, [](const VisitMeasures &visit) { return visit.change; });
    add("seconds", VisitFigure::Given, [](const VisitMeasures &visit) { return visit.seconds; });
    for (const bool ratio : {false, true}) {
        figures.push_back({ratio ? "ratio" : "outcome",
            [ratio](const Measured &one) -> Number {
                for (const OutcomeMeasures &series : one.numbers().outcomes) {
                    if (series.side == Side::Left)
                        return ratio ? series.ratio : Number(series.last.toDouble() + 100 * series.first.toDouble());
                }
                return std::nullopt;
            },
            [ratio](const Measured &one) {
                const Outcome like{0, one.to, OutcomeKind::Test, "hops", Side::Left, Decimal(), {}};
                return behindOutcome(one.complaint(), one.to, like, ratio);
            }});
    }
    return figures;
}

/// What the page of the day after says.
std::vector<Figure> todayFigures()
{
    const auto dayOf = [](const Measured &one) { return one.to + 1; };
    std::vector<Figure> figures;
    figures.push_back({"sets today", [dayOf](const Measured &one) { return of(today(one.diary, dayOf(one)).setsDone); },
        [dayOf](const Measured &one) { return behindToday(one.diary, dayOf(one)); }});
    figures.push_back({"sets due today", [dayOf](const Measured &one) { return of(today(one.diary, dayOf(one)).setsDue); },
        [dayOf](const Measured &one) { return behindToday(one.diary, dayOf(one)); }});
    figures.push_back({"days of the week before",
        [dayOf](const Measured &one) {
            Number number;
            const Today asked = today(one.diary, dayOf(one));
            for (const AskedSession &session : asked.complaints.front().sessions) {
                for (const AskedItem &item : session.items) {
                    if (item.item == &one.complaint().items.front() && item.daysAsked && item.isDue)
                        number = of(100 * *item.daysAsked + item.daysDone);
                }
            }
            return number;
        },
        [dayOf](const Measured &one) { return behindWeekBefore(one.complaint(), one.complaint().items.front(), dayOf(one)); }, true});
    return figures;
}

/// What \a whole was told of the plan and, of what the person entered, only what stands behind a number.
Measured onlyBehind(const Measured &whole, const Trace &trace)
{
    const std::vector<EntryIndex> behind = trace.entries();
    std::vector<Entry> kept;
    for (EntryIndex i = 0; i < whole.diary.entries().size(); ++i) {
        const Entry &entry = whole.diary.entries()[i];
        const bool isPlan = entry.kind == Kind::Plan || entry.kind == Kind::Complaint || entry.kind == Kind::Setting;
        if (isPlan || std::find(behind.begin(), behind.end(), i) != behind.end())
            kept.push_back(entry);
    }
    return {Diary::from(std::move(kept)), whole.to};
}

Measured randomMeasured()
{
    const RandomDiary random = randomDiary();
    return {random.told().diary(), day(kRandomStart) + (random.length - 1)};
}

void staysWithNothingElse(const std::vector<Figure> &figures)
{
    QVERIFY(rc::check([&figures] {
        const Measured whole = randomMeasured();
        for (const Figure &figure : figures) {
            const Trace trace = figure.trace(whole);
            RC_LOG() << figure.name << std::endl;
            const Number number = figure.number(whole);
            // Of a complaint that was put aside nothing is looked at: there is no number to open.
            if (number || !figure.isOnlyLookedAt)
                RC_ASSERT(figure.number(onlyBehind(whole, trace)) == number);
        }
    }));
}

std::vector<double> valuesOf(const Trace &trace)
{
    std::vector<double> values;
    std::transform(
        trace.values.begin(), trace.values.end(), std::back_inserter(values), [](const Behind &one) { return one.value.value(); });
    return values;
}

std::vector<std::string> idsOf(const Diary &diary, const std::vector<EntryIndex> &entries)
{
    std::vector<std::string> ids;
    std::transform(entries.begin(), entries.end(), std::back_inserter(ids), [&](EntryIndex entry) { return diary.entries()[entry].id; });
    return ids;
}

} // namespace

/// What a number was made of is enough to make it, and nothing is behind it twice.
class tst_trace : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void adherenceStaysWithNothingElseInTheDiary() { staysWithNothingElse(adherenceFigures()); }
    void weeksStayWithNothingElseInTheDiary() { staysWithNothingElse(weekFigures()); }
    void theCheckStaysWithNothingElseInTheDiary() { staysWithNothingElse(checkFigures()); }
    void responsesAndRulesStayWithNothingElseInTheDiary() { staysWithNothingElse(responseFigures()); }
    void conditionsStayWithNothingElseInTheDiary() { staysWithNothingElse(conditionFigures()); }
    void visitsAndOutcomesStayWithNothingElseInTheDiary() { staysWithNothingElse(visitFigures()); }
    void thePageOfADayStaysWithNothingElseInTheDiary() { staysWithNothingElse(todayFigures()); }

    void noEntryIsBehindANumberTwice()
    {
        std::vector<Figure> figures;
        for (const auto &some :
            {adherenceFigures(), weekFigures(), checkFigures(), responseFigures(), conditionFigures(), visitFigures(), todayFigures()})
            figures.insert(figures.end(), some.begin(), some.end());
        QVERIFY(rc::check([&figures] {
            const Measured whole = randomMeasured();
            for (const Figure &figure : figures) {
                const Trace trace = figure.trace(whole);
                std::vector<EntryIndex> entries = trace.entries();
                RC_LOG() << figure.name << std::endl;
                std::sort(entries.begin(), entries.end());
                RC_ASSERT(std::adjacent_find(entries.begin(), entries.end()) == entries.end());
                RC_ASSERT(std::is_sorted(
                    trace.values.begin(), trace.values.end(), [](const Behind &a, const Behind &b) { return a.day < b.day; }));
                RC_ASSERT(std::is_sorted(trace.shapedBy.begin(), trace.shapedBy.end()));
            }
        }));
    }

    /// An entry too many behind a number would make another of it.
    void theValuesBehindANumberMakeItAgain()
    {
        QVERIFY(rc::check([] {
            const Measured one = randomMeasured();
            const auto check = [&](CheckFigure figure) { return behindCheck(one.diary, one.complaint(), one.window(), figure); };
            const CheckMeasures &numbers = one.numbers().check;
            const ItemMeasures &item = one.numbers().items.front();
            const auto adherence = [&](AdherenceFigure figure) {
                return behindAdherence(one.diary, one.complaint(), one.complaint().items.front(), one.window(), figure).values.size();
            };

            RC_ASSERT(std::cmp_equal(check(CheckFigure::Recorded).values.size(), numbers.recorded));
            RC_ASSERT(std::cmp_equal(check(CheckFigure::SameDay).values.size(), numbers.sameDay));
            RC_ASSERT(std::cmp_equal(check(CheckFigure::Late).values.size(), numbers.late));
            RC_ASSERT(std::cmp_equal(check(CheckFigure::Paper).values.size(), numbers.paper));
            RC_ASSERT(median(valuesOf(check(CheckFigure::Current)), kLeastValues) == numbers.current);
            RC_ASSERT(median(valuesOf(check(CheckFigure::Reference)), kLeastValues) == numbers.reference);
            RC_ASSERT(median(valuesOf(behindCheck(one.diary, one.complaint(), one.window(), CheckFigure::StiffnessCurrent)), kLeastValues)
                == one.numbers().stiffness.current);
            RC_ASSERT(std::cmp_equal(adherence(AdherenceFigure::Done), item.adherence.setsDone + item.adherence.setsExtra));
            RC_ASSERT(std::cmp_equal(adherence(AdherenceFigure::Skips), item.adherence.skips));
            RC_ASSERT(std::cmp_equal(adherence(AdherenceFigure::Easier), item.adherence.easier));
            RC_ASSERT(std::cmp_equal(behindToday(one.diary, one.to + 1).values.size(), today(one.diary, one.to + 1).setsDone));
            for (const VisitMeasures &visit : one.numbers().visits)
                RC_ASSERT(
                    median(valuesOf(behindVisit(one.complaint(), one.to, visit.day, VisitFigure::Before)), kLeastValues) == visit.before);
        }));
    }

    void theUsualOfTheWeekOpensItsChecksAndTheirValues()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(3, 15)})).checks("2026-03-02", {4, 5, -1, 3}).declined("2026-03-06");
        const Measured one(builder.diary(), day("2026-03-08"));

        const Trace trace = behindCheck(one.diary, one.complaint(), one.window(), CheckFigure::Current);

        QCOMPARE(trace.first, day("2026-03-02"));
        QCOMPARE(trace.last, day("2026-03-08"));
        QVERIFY(valuesOf(trace) == (std::vector<double>{4, 5, 3}));
        QVERIFY(idsOf(one.diary, trace.entries()) == (std::vector<std::string>{"e1", "e2", "e3"}));
    }

    void aCorrectedSetIsBehindANumberInTheVersionThatCounts()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(1, 15)}))
            .set("2026-03-02", "morning", "squat", 1, 15, {}, {.id = "wrong"})
            .set("2026-03-02", "morning", "squat", 1, 12, {}, {.id = "right", .replaces = "wrong"});
        const Measured one(builder.diary(), day("2026-03-02"));

        const Trace trace = behindAdherence(one.diary, one.complaint(), one.complaint().items.front(), one.window(), AdherenceFigure::Done);

        QVERIFY(idsOf(one.diary, trace.entries()) == std::vector<std::string>{"right"});
        QVERIFY(valuesOf(trace) == std::vector<double>{12});
    }

    void aReferenceOfTheFirstAssessmentHasNoEntryOfThePersonBehindIt()
    {
        DiaryBuilder builder;
        builder.complaint("main", body({{Field::FirstAssessmentPain, number("6")}}))
            .item(item("squat", "2026-03-02", {onDays(1, 15)}))
            .checks("2026-03-02", {4, 4, 4});
        const Measured one(builder.diary(), day("2026-03-08"));

        QVERIFY(behindCheck(one.diary, one.complaint(), one.window(), CheckFigure::Reference).entries().empty());
    }

    void theLimitBehindAConditionIsTheOneItWasComparedWith()
    {
        QVERIFY(rc::check([] {
            const Measured one = randomMeasured();
            const auto &progression = one.numbers().items.front().progression;
            for (const Reason &reason : progression ? progression->reasons : std::vector<Reason>()) {
                const Trace trace = behindCondition(one.diary, one.complaint(), one.complaint().items.front(), one.window(), reason);
                RC_ASSERT(trace.limit == reason.limit);
            }
        }));
    }

    void daysBeyondOwnLimitsOpenWithTheDaysThatTheseWereMadeOf()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(1, 15)})).checks("2026-03-02", {3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 9, 4});
        const Measured one(builder.diary(), day("2026-03-17"));

        const Trace trace = behindCheck(one.diary, one.complaint(), one.window(), CheckFigure::Beyond);

        QVERIFY(valuesOf(trace) == std::vector<double>{9});
        QCOMPARE(trace.shapedBy.size(), kDaysOfOwnLimits);
    }

    void aLimitIsThatOfThePlan()
    {
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {onDays(1, 15)})).planSetting(Field::DuringLimit, number("3.5"));
        const Measured one(builder.diary(), day("2026-03-08"));

        QCOMPARE(behindRule(one.complaint(), one.to, WeekRuleName::During).limit, Number(3.5));
    }
};

MORROW_SUITE(tst_trace)

#include "tst_trace.moc"
