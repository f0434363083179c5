// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "core/measures/random_diary.h"

#include <rapidcheck.h>

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

CivilDay lastDay(const RandomDiary &random)
{
    return day(kRandomStart) + (random.length - 1);
}

ComplaintMeasures measuredAll(const RandomDiary &random, int shift = 0)
{
    return measured(random.told(shift), lastDay(random) + shift);
}

/// \a measures with every day in it \a days later.
ComplaintMeasures shifted(ComplaintMeasures measures, int days)
{
    const auto move = [days](CivilDay &day) { day = day + days; };
    move(measures.from);
    for (ItemMeasures &item : measures.items) {
        move(item.stageBegan);
        for (ItemWeek &week : item.weeks)
            move(week.start);
    }
    for (CheckWeek &week : measures.checkWeeks)
        move(week.start);
    for (ResponseDay &response : measures.response.days)
        move(response.day);
    if (measures.check.limits)
        std::for_each(measures.check.limits->beyond.begin(), measures.check.limits->beyond.end(), move);
    for (VisitMeasures &visit : measures.visits)
        move(visit.day);
    for (OutcomeMeasures &series : measures.outcomes) {
        move(series.firstDay);
        move(series.lastDay);
    }
    return measures;
}

bool isShareOrNone(const std::optional<double> &ratio, bool isNone)
{
    return isNone ? !ratio : ratio && 0 <= *ratio && *ratio <= 1;
}

/// The sums that windows which follow each other have together.
struct Sums
{
    std::int64_t setsDue = 0, setsDone = 0, setsExtra = 0, sessionsDue = 0, attended = 0, complete = 0, skips = 0, away = 0;

    void add(const Adherence &adherence)
    {
        setsDue += adherence.setsDue;
        setsDone += adherence.setsDone;
        setsExtra += adherence.setsExtra;
        sessionsDue += adherence.sessionsDue;
        attended += adherence.sessionsAttended;
        complete += adherence.sessionsComplete;
        skips += adherence.skips;
        away += adherence.away;
    }

    friend bool operator==(const Sums &, const Sums &) = default;
};

} // namespace

/// What holds of every diary.
class tst_properties : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aRatioLiesWithinZeroAndOneAndIsNoneExactlyWhenNothingWasDue()
    {
        QVERIFY(rc::check([] {
            for (const ItemMeasures &item : measuredAll(randomDiary()).items) {
                const Adherence &found = item.adherence;
                RC_CLASSIFY(found.setsDue == 0, "nothing was due");
                RC_CLASSIFY(found.setsDone > 0, "something was done");
                RC_ASSERT(isShareOrNone(found.setRatio, found.setsDue == 0));
                RC_ASSERT(isShareOrNone(found.sessionRatio, found.sessionsDue == 0));
                RC_ASSERT(found.sessionInterval.has_value() == (found.sessionsDue > 0));
                RC_ASSERT(!found.volumeDue || isShareOrNone(found.volumeRatio, found.setsDue == 0));
                RC_ASSERT(found.volumeDue.has_value() == found.volumeDone.has_value());
                RC_ASSERT(found.volumeUnit.has_value() == found.volumeRatio.has_value());
                RC_ASSERT(found.setsExtra >= 0);
                RC_ASSERT(found.sessionsComplete <= found.sessionsAttended);
            }
        }));
    }

    void extraWorkNeverHidesAMissedDay()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            random.items[0].stages = {onDays(3, 10, "FREQ=DAILY", {"morning", "evening"})};
            random.items[0].end.reset();
            random.pauses.clear();
            random.putAside.reset();
            random.items[0].restsAfterVisit = false;
            const int missed = *rc::gen::inRange(0, random.length);
            std::erase_if(random.work, [missed](const RandomDiary::Work &work) { return work.day == missed && work.item == "squat"; });
            for (int other = 0; other < random.length; ++other) {
                for (int number = 1; number <= (other == missed ? 0 : 9); ++number)
                    random.work.push_back({other, "morning", "squat", number, 20});
            }

            const Adherence found = measuredAll(random).items[0].adherence;

            RC_ASSERT(found.setsDue == 6 * random.length);
            RC_ASSERT(found.setsDone == found.setsDue - 6);
            RC_ASSERT(found.sessionsAttended <= found.sessionsDue - 2);
            RC_ASSERT(*found.volumeDone <= *found.volumeDue - 60);
        }));
    }

    void extraWorkNeverHidesAMissedWeek()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            random.items[0].stages = {perWeek(3, 10, 3)};
            random.items[0].end.reset();
            random.pauses.clear();
            random.putAside.reset();
            random.items[0].restsAfterVisit = false;
            random.changes.clear();
            random.length = 28;
            const int missed = *rc::gen::inRange(0, 4);
            std::erase_if(random.work, [](const RandomDiary::Work &work) { return work.item == "squat"; });
            for (int day = 0; day < 28; ++day) {
                for (int number = 1; number <= (day / 7 == missed ? 0 : 5); ++number)
                    random.work.push_back({day, "day", "squat", number, 20});
            }

            const Adherence found = measuredAll(random).items[0].adherence;

            RC_ASSERT(found.setsDue == 36);
            RC_ASSERT(found.setsDone == 27);
            RC_ASSERT(found.sessionsAttended == 9);
            RC_ASSERT(found.volumeRatio == std::optional(0.75));
        }));
    }

    void moreWorkNeverLowersWhatWasDoneNorChangesWhatWasDue()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            const auto before = measuredAll(random);
            const int extra = *rc::gen::inRange(1, 40);
            for (int number = 0; number < extra; ++number) {
                const int day = *rc::gen::inRange(0, random.length);
                random.work.push_back({day, *rc::gen::element<std::string>("morning", "evening", "day"), "squat", 100 + number, 10});
            }
            const auto after = measuredAll(random);

            const Adherence &less = before.items[0].adherence;
            const Adherence &more = after.items[0].adherence;
            RC_ASSERT(more.setsDue == less.setsDue && more.sessionsDue == less.sessionsDue && more.volumeDue == less.volumeDue);
            RC_ASSERT(more.setsDone >= less.setsDone && more.sessionsAttended >= less.sessionsAttended);
            RC_ASSERT(more.setsDone + more.setsExtra == less.setsDone + less.setsExtra + extra);
            RC_ASSERT(after.items[1].adherence == before.items[1].adherence && after.items[1].weeks == before.items[1].weeks);
        }));
    }

    void aDiaryOfOtherWeeksHasTheSameNumbers()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const int days = 7 * *rc::gen::inRange(-300, 300);

            RC_ASSERT(measuredAll(random, days) == shifted(measuredAll(random), days));
        }));
    }

    void theWindowChangesNeitherVisitsNorOutcomesNorTheMediansThatNameTheirDays()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const auto whole = measuredAll(random);
            const auto part = measured(random.told(), lastDay(random), lastDay(random) - *rc::gen::inRange(0, random.length));

            RC_ASSERT(part.visits == whole.visits);
            RC_ASSERT(part.outcomes == whole.outcomes);
            RC_ASSERT(part.check.current == whole.check.current);
            RC_ASSERT(part.check.firstWeek == whole.check.firstWeek);
            RC_ASSERT(part.check.reference == whole.check.reference);
            RC_ASSERT(part.check.change == whole.check.change);
            RC_ASSERT(part.check.clearChange == whole.check.clearChange);
            RC_ASSERT(part.stiffness.current == whole.stiffness.current);
            RC_ASSERT(part.rules == whole.rules);
            RC_ASSERT(part.check.limits == whole.check.limits);
            for (std::size_t i = 0; i < part.items.size(); ++i) {
                RC_ASSERT(part.items[i].stage == whole.items[i].stage);
                RC_ASSERT(part.items[i].stageBegan == whole.items[i].stageBegan);
                RC_ASSERT(part.items[i].progression == whole.items[i].progression);
            }
        }));
    }

    void theWeeksOfAWindowAddUpToIt()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            const auto found = measured(random.told(), lastDay(random), lastDay(random) - *rc::gen::inRange(0, random.length));

            for (const ItemMeasures &item : found.items) {
                std::int64_t due = 0;
                std::int64_t done = 0;
                for (const ItemWeek &week : item.weeks) {
                    due += week.setsDue;
                    done += week.setsDone;
                }
                RC_ASSERT(due == item.adherence.setsDue);
                RC_ASSERT(done == item.adherence.setsDone);
            }
            int expected = 0;
            int recorded = 0;
            for (const CheckWeek &week : found.checkWeeks) {
                expected += week.expected;
                recorded += week.recorded;
            }
            RC_ASSERT(expected == found.check.expected);
            RC_ASSERT(recorded == found.check.recorded);
            RC_ASSERT(found.check.sameDay + found.check.late + found.check.paper == recorded);
        }));
    }

    void aWindowCutBetweenTwoWeeksAddsUp()
    {
        QVERIFY(rc::check([] {
            RandomDiary random = randomDiary();
            random.length = 15 + *rc::gen::inRange(0, 40);
            const CivilDay cut = day(kRandomStart) + 14; // the first day of a week
            const DiaryBuilder builder = random.told();
            const auto before = measured(builder, cut - 1);
            const auto after = measured(builder, lastDay(random), cut);
            const auto whole = measured(builder, lastDay(random));

            for (std::size_t i = 0; i < whole.items.size(); ++i) {
                Sums parts;
                parts.add(before.items[i].adherence);
                parts.add(after.items[i].adherence);
                Sums together;
                together.add(whole.items[i].adherence);
                RC_ASSERT(parts == together);
            }
        }));
    }
};

MORROW_SUITE(tst_properties)

#include "tst_properties.moc"
