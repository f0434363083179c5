// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "core/measures/random_diary.h"

#include <rapidcheck.h>

#include <algorithm>
#include <functional>

using namespace morrow;
using namespace morrow::test;

namespace {

const CivilDay kStart = day(kRandomStart);

CivilDay lastDay(const RandomDiary &random)
{
    return kStart + (random.length - 1);
}

/// Noon of the day \a place, as it is recorded.
std::string noon(int place)
{
    return (kStart + place).toString() + "T12:00:00Z";
}

std::optional<RuleState> state(const ComplaintMeasures &measures, WeekRuleName name)
{
    const auto found
        = std::find_if(measures.rules.begin(), measures.rules.end(), [name](const WeekRule &rule) { return rule.rule == name; });
    return found == measures.rules.end() ? std::nullopt : std::optional(found->state);
}

bool holds(const Progression &progression, Condition condition)
{
    return std::find(progression.unmet.begin(), progression.unmet.end(), condition) == progression.unmet.end();
}

constexpr WeekRuleName kRules[] = {
    WeekRuleName::During, WeekRuleName::After, WeekRuleName::Check, WeekRuleName::Settled, WeekRuleName::Weekly, WeekRuleName::Stiffness};
// What hangs on values that a person gives; the others count days and sets.
constexpr Condition kValueConditions[]
    = {Condition::PainDuring, Condition::PainAfter, Condition::Settled, Condition::WeeklyRise, Condition::Level};

/// Weeks of daily loading, the checks and sessions of which are given. In its second stage.
DiaryBuilder loaded(const std::vector<std::optional<int>> &checks, const std::vector<std::optional<int>> &sessions)
{
    DiaryBuilder builder;
    builder.item(item("squat", kStart, {onDays(1, 5), onDays(1, 5), onDays(1, 5)})).stage(kStart, "squat", 2);
    for (int place = 0; place < static_cast<int>(checks.size()); ++place) {
        const auto at = static_cast<std::size_t>(place);
        builder.sets(kStart + place, "morning", "squat", 1, 5);
        if (checks[at])
            builder.check(kStart + place, *checks[at], *checks[at] * 3, {.recorded = noon(place)});
        if (sessions[at])
            builder.session(kStart + place, "morning", *sessions[at], *sessions[at], {.recorded = noon(place)});
    }
    return builder;
}

/// \a days values of 0 .. \a most around one that each diary has, some of them missing.
std::vector<std::optional<int>> randomValues(int days, int most)
{
    const int usual = *rc::gen::inRange(0, most + 1);
    std::vector<std::optional<int>> values;
    for (int place = 0; place < days; ++place) {
        const int value = std::clamp(usual + *rc::gen::inRange(-2, 4), 0, 10);
        values.push_back(*rc::gen::inRange(0, 6) == 0 ? std::nullopt : std::optional(value));
    }
    return values;
}

DiaryBuilder randomLoaded(int days)
{
    return loaded(randomValues(days, 8), randomValues(days, 6));
}

} // namespace

/// What is unknown never looks well, a correction is as if it had been said at once, and a worse
/// day never leads up.
class tst_careful : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void anEntryWithoutAValueAboutAThingThatHadNoneTurnsNothingWell()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(10, 40);
            const auto checks = randomValues(days, 8);
            const auto sessions = randomValues(days, 6);
            const int place = *rc::gen::inRange(0, days);
            const auto at = static_cast<std::size_t>(place);
            const CivilDay to = kStart + (days - 1);
            DiaryBuilder empty = loaded(checks, sessions);
            if (!checks[at])
                empty.declined(kStart + place, {.recorded = noon(place)});
            if (!sessions[at])
                empty.session(kStart + place, "morning", std::nullopt, std::nullopt, {.recorded = noon(place)});
            if (*rc::gen::arbitrary<bool>()) // a second one of the day, beside one that may have its values
                empty.session(kStart + place, "evening", std::nullopt, std::nullopt, {.recorded = noon(place)});

            const ComplaintMeasures before = measured(loaded(checks, sessions), to);
            const ComplaintMeasures after = measured(empty, to);

            RC_CLASSIFY(!checks[at] || !sessions[at], "a value was missing");
            for (const WeekRuleName rule : kRules)
                RC_ASSERT(state(after, rule) != RuleState::Ok || state(before, rule) == RuleState::Ok);
            for (const Condition condition : kValueConditions)
                RC_ASSERT(!holds(*after.items[0].progression, condition) || holds(*before.items[0].progression, condition));
            RC_ASSERT(after.check.recorded == before.check.recorded);
            RC_ASSERT(after.response == before.response);
        }));
    }

    void aSetWithoutRepetitionsIsNoWork()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            DiaryBuilder more = random.told();
            more.set(kStart + *rc::gen::inRange(0, random.length), "morning", "squat", 77, 0);

            RC_ASSERT(measured(more, lastDay(random)) == measured(random.told(), lastDay(random)));
        }));
    }

    void noExtraWorkRaisesARatioAboveOne()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            for (int place = 0; place < random.length; ++place) {
                for (int number = 1; number <= 12; ++number) {
                    for (const char *const slot : {"morning", "evening", "day", "noon"})
                        random.work.push_back({place, slot, number % 2 == 0 ? "squat" : "press", number, 40});
                }
            }

            for (const ItemMeasures &item : measured(random.told(), lastDay(random)).items) {
                const Adherence &found = item.adherence;
                RC_CLASSIFY(found.setsDue > 0, "something was due");
                for (const auto &ratio : {found.setRatio, found.sessionRatio, found.volumeRatio})
                    RC_ASSERT(ratio.value_or(0) <= 1);
                RC_ASSERT(found.setRatio.has_value() == (found.setsDue > 0));
                RC_ASSERT(found.sessionRatio.has_value() == (found.sessionsDue > 0));
            }
        }));
    }

    void aCorrectedCheckIsAsIfItHadBeenSaidSo()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(5, 40);
            auto checks = randomValues(days, 8);
            const int place = *rc::gen::inRange(0, days);
            checks[static_cast<std::size_t>(place)].reset();
            const DiaryBuilder told = loaded(checks, randomValues(days, 6));
            const int pain = *rc::gen::inRange(0, 11);
            const std::string when = noon(*rc::gen::inRange(place, days + 5));
            DiaryBuilder corrected = told;
            // A correction counts whatever the clocks say.
            corrected.check(kStart + place, *rc::gen::inRange(0, 11), 5, {.id = "first", .recorded = noon(days + 10)})
                .check(kStart + place, pain, 25, {.recorded = when, .replaces = "first"});
            DiaryBuilder atOnce = told;
            atOnce.check(kStart + place, pain, 25, {.recorded = when});

            const CivilDay to = kStart + (days - 1);
            RC_ASSERT(measured(corrected, to) == measured(atOnce, to));
        }));
    }

    void aCorrectedSetIsAsIfItHadBeenSaidSo()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            const int place = *rc::gen::inRange(0, random.length);
            const int reps = *rc::gen::inRange(0, 20);
            const std::string when = noon(*rc::gen::inRange(place, place + 20));
            const auto set = [&](DiaryBuilder &builder, int count, const Origin &origin) {
                builder.set(kStart + place, "morning", "squat", 55, count, {}, origin);
            };
            DiaryBuilder corrected = random.told();
            set(corrected, *rc::gen::inRange(0, 20), {.id = "first", .recorded = noon(place)});
            set(corrected, reps, {.recorded = when, .replaces = "first"});
            DiaryBuilder atOnce = random.told();
            set(atOnce, reps, {.recorded = when});

            RC_ASSERT(measured(corrected, lastDay(random)) == measured(atOnce, lastDay(random)));
        }));
    }

    void aCorrectedSessionIsAsIfItHadBeenSaidSo()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(5, 40);
            auto sessions = randomValues(days, 6);
            const int place = *rc::gen::inRange(0, days);
            sessions[static_cast<std::size_t>(place)].reset();
            const DiaryBuilder told = loaded(randomValues(days, 8), sessions);
            const int during = *rc::gen::inRange(0, 11);
            const int after = *rc::gen::inRange(0, 11);
            DiaryBuilder corrected = told;
            corrected.session(kStart + place, "morning", *rc::gen::inRange(0, 11), std::nullopt, {.id = "first", .recorded = noon(place)})
                .session(kStart + place, "morning", during, after, {.recorded = noon(place + 3), .replaces = "first"});
            DiaryBuilder atOnce = told;
            atOnce.session(kStart + place, "morning", during, after, {.recorded = noon(place + 3)});

            RC_ASSERT(measured(corrected, kStart + (days - 1)) == measured(atOnce, kStart + (days - 1)));
        }));
    }

    void aCorrectedOutcomeIsAsIfItHadBeenSaidSo()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const int place = *rc::gen::inRange(-5, random.length + 5);
            const std::string right = std::to_string(*rc::gen::inRange(0, 30));
            const auto outcome = [&](DiaryBuilder &builder, const std::string &value, const Origin &origin) {
                builder.outcome(kStart + place, "test", "hops", "left", value, origin);
            };
            DiaryBuilder corrected = random.told();
            outcome(corrected, std::to_string(*rc::gen::inRange(0, 30)), {.id = "first", .recorded = noon(place)});
            outcome(corrected, right, {.recorded = noon(place + 2), .replaces = "first"});
            DiaryBuilder atOnce = random.told();
            outcome(atOnce, right, {.recorded = noon(place + 2)});

            RC_ASSERT(measured(corrected, lastDay(random)) == measured(atOnce, lastDay(random)));
        }));
    }

    void aWorseCheckOnTheLastDayNeverTurnsAStepDownIntoAStepUp()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(8, 30);
            const int usual = *rc::gen::inRange(0, 5);
            std::vector<std::optional<int>> checks(static_cast<std::size_t>(days), usual);
            const std::vector<std::optional<int>> sessions(static_cast<std::size_t>(days), *rc::gen::inRange(0, 7));
            // Rising or not for one to three days, mostly enough for a step down.
            for (int last = *rc::gen::inRange(1, 4); last > 0; --last)
                checks[static_cast<std::size_t>(days - last)] = *rc::gen::inRange(usual, usual + 6);
            const CivilDay to = kStart + (days - 1);
            checks.back() = std::min(*checks.back(), 9);
            const Progression before = *measured(loaded(checks, sessions), to).items[0].progression;
            checks.back() = *rc::gen::inRange(*checks.back() + 1, 11);
            const Progression after = *measured(loaded(checks, sessions), to).items[0].progression;

            RC_CLASSIFY(before.decision == Decision::StepDown, "a step down");
            RC_CLASSIFY(before.decision == Decision::StepUp, "a step up");
            RC_ASSERT(before.decision != Decision::StepDown || after.decision == Decision::StepDown || after.decision == Decision::Contact);
            RC_ASSERT(after.decision != Decision::StepUp || before.decision == Decision::StepUp);
        }));
    }

    void theWindowChangesNoDecision()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(4, 40);
            const DiaryBuilder builder = randomLoaded(days);
            const CivilDay to = kStart + (days - 1);
            const ComplaintMeasures whole = measured(builder, to);
            const ComplaintMeasures part = measured(builder, to, to - *rc::gen::inRange(0, days));

            RC_ASSERT(part.items[0].progression == whole.items[0].progression);
            RC_ASSERT(part.rules == whole.rules);
        }));
    }

    void weeksLaterTheDecisionIsTheSame()
    {
        QVERIFY(rc::check([] {
            const int days = *rc::gen::inRange(4, 40);
            const auto checks = randomValues(days, 8);
            const auto sessions = randomValues(days, 6);
            const int later = 7 * *rc::gen::inRange(1, 200);
            const auto at = [&](int shift) {
                DiaryBuilder builder;
                builder.item(item("squat", kStart + shift, {onDays(1, 5), onDays(1, 5)}));
                for (int place = 0; place < days; ++place) {
                    const auto one = static_cast<std::size_t>(place);
                    builder.sets(kStart + shift + place, "morning", "squat", 1, 5);
                    if (checks[one])
                        builder.check(kStart + shift + place, *checks[one]);
                    builder.session(kStart + shift + place, "morning", sessions[one], sessions[one]);
                }
                return *measured(builder, kStart + shift + (days - 1)).items[0].progression;
            };

            RC_ASSERT(at(later) == at(0));
        }));
    }
};

MORROW_SUITE(tst_careful)

#include "tst_careful.moc"
