// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/random_diary.h"
#include "measures/measures.h"
#include "measures/rehearse.h"
#include "support/diary_builder.h"

#include <rapidcheck.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

using namespace morrow;
using namespace morrow::test;

namespace {

const RehearsedSpan *spanOf(const RehearsedItem &item, CivilDay day)
{
    const auto found = std::find_if(
        item.spans.begin(), item.spans.end(), [day](const RehearsedSpan &span) { return span.first <= day && day <= span.last; });
    return found == item.spans.end() ? nullptr : &*found;
}

/// What is said without its values: each condition and whether it holds, and what is waited for.
std::pair<std::vector<std::pair<Condition, bool>>, std::vector<std::string>> told(const Progression &progression)
{
    std::vector<std::pair<Condition, bool>> conditions;
    for (const Reason &reason : progression.reasons)
        conditions.emplace_back(reason.condition, reason.isMet);
    std::vector<std::string> waitsFor;
    for (const WaitsFor &other : progression.waitsFor)
        waitsFor.push_back(other.item);
    return {conditions, waitsFor};
}

/// Twelve days of what was due, with a check of \a pain and the pain of its session each day.
DiaryBuilder trained(int pain)
{
    Stage first = onDays(3, 15);
    first.minDays = 7;
    DiaryBuilder builder;
    builder.complaint("main", body({{Field::FirstAssessmentPain, number("6")}})).item(item("squat", "2026-03-02", {first, onDays(3, 12)}));
    for (int day = 0; day < 12; ++day) {
        const CivilDay on = test::day("2026-03-02") + day;
        builder.check(on, 3).sets(on, "morning", "squat", 3, 15);
        builder.session(on, "morning", pain, pain);
    }
    return builder;
}

} // namespace

/// On each day that has passed the rule says what it would have said then.
class tst_rehearse : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void everyDaySaysWhatMeasuresOfThatDaySay()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const Diary diary = random.told().diary();
            const CivilDay start = day(kRandomStart);
            const auto rehearsed = rehearse(diary, start + (random.length - 1));
            const int days = *rc::gen::inRange(0, random.length);
            const auto measures = measure(diary, start + days).value();

            RC_ASSERT(rehearsed.empty() == measures.empty());
            for (std::size_t i = 0; !measures.empty() && i < measures.front().items.size(); ++i) {
                const ItemMeasures &item = measures.front().items[i];
                const RehearsedSpan *const span = spanOf(rehearsed.front().items.at(i), start + days);
                RC_ASSERT((span != nullptr) == item.progression.has_value());
                if (!span)
                    continue;
                RC_ASSERT(span->stage == item.stage);
                RC_ASSERT(span->progression.decision == item.progression->decision);
                RC_ASSERT(span->progression.toStage == item.progression->toStage);
                RC_ASSERT(span->progression.waitsFor == item.progression->waitsFor);
                RC_ASSERT(span->progression.unmet == item.progression->unmet);
                RC_ASSERT(span->reasons.size() == static_cast<std::size_t>(span->last - span->first + 1));
                RC_ASSERT(span->reasons.at(static_cast<std::size_t>(start + days - span->first)) == item.progression->reasons);
            }
        }));
    }

    void neighbouringSpansDiffer()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const auto rehearsed = rehearse(random.told().diary(), day(kRandomStart) + (random.length - 1));
            for (const RehearsedItem &item : rehearsed.front().items) {
                for (std::size_t i = 1; i < item.spans.size(); ++i) {
                    const RehearsedSpan &before = item.spans[i - 1];
                    const RehearsedSpan &after = item.spans[i];
                    RC_ASSERT(before.first <= before.last && before.last + 1 == after.first);
                    RC_ASSERT(before.stage != after.stage || told(before.progression) != told(after.progression));
                }
            }
        }));
    }

    void anOfferIsMadeFromTheDayOnWhichAllConditionsHold()
    {
        const auto rehearsed = rehearse(trained(4).diary(), day("2026-03-13"));
        const std::vector<RehearsedSpan> &spans = rehearsed.front().items.front().spans;

        QCOMPARE(spans.back().progression.decision, Decision::StepUp);
        QCOMPARE(spans.back().progression.toStage, std::optional(2));
        QCOMPARE(spans.back().first, day("2026-03-12")); // the 4 values of the week before are there from the 11th day on
        QCOMPARE(spans.back().last, day("2026-03-13"));
        QVERIFY(spans.front().progression.decision == Decision::Hold);
        QVERIFY(spans[spans.size() - 2].progression.unmet == std::vector<Condition>{Condition::WeeklyRise});
    }

    void aLowerLimitMakesNoOffer()
    {
        DiaryBuilder builder = trained(4);
        builder.planSetting(Field::DuringLimit, number("3"));

        const auto rehearsed = rehearse(builder.diary(), day("2026-03-13"));

        for (const RehearsedSpan &span : rehearsed.front().items.front().spans) {
            QVERIFY(span.progression.decision == Decision::Hold);
            QVERIFY(std::count(span.progression.unmet.begin(), span.progression.unmet.end(), Condition::PainDuring) == 1);
        }
    }

    void aRuleThatIsOffSaysNothing()
    {
        DiaryBuilder builder = trained(4);
        builder.planSetting(Field::Authority, std::string("off"));

        QVERIFY(rehearse(builder.diary(), day("2026-03-13")).front().items.front().spans.empty());
    }

    void aPlanThatBeginsLaterIsNotRehearsed() { QVERIFY(rehearse(trained(4).diary(), day("2026-03-01")).empty()); }
};

MORROW_SUITE(tst_rehearse)

#include "tst_rehearse.moc"
