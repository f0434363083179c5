// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/rhythm.h"

#include <rapidcheck.h>

#include <array>
#include <set>
#include <sstream>

using namespace morrow;

namespace {

constexpr std::array kWeekdays{"MO", "TU", "WE", "TH", "FR", "SA", "SU"};

CivilDay day(const char *text)
{
    return *CivilDay::parse(text);
}

/// A rule in the words of whoever made it up.
struct Words
{
    bool weekly;
    int interval; ///< 0: not named
    std::set<int> weekdays; ///< 0 Monday .. 6 Sunday

    [[nodiscard]] std::string text() const
    {
        std::string all = weekly ? "FREQ=WEEKLY" : "FREQ=DAILY";
        if (interval > 0)
            all += ";INTERVAL=" + std::to_string(interval);
        std::string separator = ";BYDAY=";
        for (const int weekday : weekdays) {
            all += separator + kWeekdays[static_cast<std::size_t>(weekday)];
            separator = ",";
        }
        return all;
    }

    /// The days on which the rule falls up to \a last, by walking from \a start as a person
    /// does: from one due day, or one due week, to the next.
    [[nodiscard]] std::set<CivilDay> walk(CivilDay start, CivilDay last) const
    {
        std::set<CivilDay> days;
        const int step = interval > 0 ? interval : 1;
        if (!weekly) {
            for (CivilDay at = start; at <= last; at = at + step) {
                if (weekdays.empty() || weekdays.contains(at.weekday()))
                    days.insert(at);
            }
            return days;
        }
        CivilDay monday = start;
        while (monday.weekday() != 0)
            monday = monday - 1;
        for (; monday <= last; monday = monday + 7 * step) {
            for (int weekday = 0; weekday < 7; ++weekday) {
                const bool isNamed = weekdays.empty() ? weekday == start.weekday() : weekdays.contains(weekday);
                const CivilDay at = monday + weekday;
                if (isNamed && at >= start && at <= last)
                    days.insert(at);
            }
        }
        return days;
    }
};

Words anyWords()
{
    Words words{*rc::gen::arbitrary<bool>(), *rc::gen::inRange(0, 6), {}};
    for (int i = *rc::gen::inRange(0, 5); i > 0; --i)
        words.weekdays.insert(*rc::gen::inRange(0, 7));
    return words;
}

} // namespace

/// A rhythm says on which days something is due, as RFC 5545 says it.
class tst_rhythm : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aRuleHasOneForm_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("form");
        const auto row
            = [](const char *name, const char *text, const char *form) { QTest::newRow(name) << QByteArray(text) << QByteArray(form); };

        row("daily", "FREQ=DAILY", "FREQ=DAILY");
        row("weekly", "FREQ=WEEKLY", "FREQ=WEEKLY");
        row("an interval of one", "FREQ=DAILY;INTERVAL=1", "FREQ=DAILY");
        row("an interval", "FREQ=DAILY;INTERVAL=02", "FREQ=DAILY;INTERVAL=2");
        row("parts in another order", "BYDAY=MO;INTERVAL=3;FREQ=WEEKLY", "FREQ=WEEKLY;INTERVAL=3;BYDAY=MO");
        row("weekdays in another order", "FREQ=WEEKLY;BYDAY=SU,MO,FR", "FREQ=WEEKLY;BYDAY=MO,FR,SU");
        row("small letters", "freq=weekly;byday=tu", "FREQ=WEEKLY;BYDAY=TU");
        row("a filtered daily", "FREQ=DAILY;BYDAY=MO,TU,WE,TH,FR", "FREQ=DAILY;BYDAY=MO,TU,WE,TH,FR");
        row("the longest interval", "FREQ=DAILY;INTERVAL=9999", "FREQ=DAILY;INTERVAL=9999");
    }

    void aRuleHasOneForm()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, form);

        const auto rule = RecurrenceRule::parse(text.toStdString());

        QVERIFY(rule);
        QCOMPARE(QByteArray::fromStdString(rule->toString()), form);
        QVERIFY(RecurrenceRule::parse(rule->toString()) == rule);
    }

    void whatPlansDoNotUseIsRefused_data()
    {
        QTest::addColumn<QByteArray>("text");

        for (const char *const text :
            {"", "FREQ", "FREQ=", "DAILY", "FREQ=MONTHLY", "FREQ=DAILY;", ";FREQ=DAILY", "FREQ=DAILY;;INTERVAL=2", "FREQ=DAILY;FREQ=DAILY",
                "INTERVAL=2", "FREQ=DAILY;INTERVAL=0", "FREQ=DAILY;INTERVAL=-1", "FREQ=DAILY;INTERVAL=", "FREQ=DAILY;INTERVAL=2x",
                "FREQ=DAILY;INTERVAL=10000", "FREQ=DAILY;INTERVAL=2;INTERVAL=2", "FREQ=DAILY;COUNT=3", "FREQ=DAILY;UNTIL=20260301",
                "FREQ=WEEKLY;WKST=SU", "FREQ=WEEKLY;BYDAY=", "FREQ=WEEKLY;BYDAY=MO,", "FREQ=WEEKLY;BYDAY=1MO", "FREQ=WEEKLY;BYDAY=MO,MO",
                "FREQ=WEEKLY;BYDAY=MON", "FREQ=WEEKLY;BYDAY=MO;BYDAY=TU", "FREQ= DAILY", "FREQ=DAILY=2", "RRULE:FREQ=DAILY"})
            QTest::newRow(*text != 0 ? text : "nothing") << QByteArray(text);
    }

    void whatPlansDoNotUseIsRefused()
    {
        QFETCH(QByteArray, text);

        QVERIFY(!RecurrenceRule::parse(text.toStdString()));
    }

    void itFallsOnTheDaysOfRfc5545_data()
    {
        QTest::addColumn<QByteArray>("rule");
        QTest::addColumn<QByteArray>("start");
        QTest::addColumn<QByteArray>("days");
        const auto row = [](const char *name, const char *rule, const char *start, const char *days) {
            QTest::newRow(name) << QByteArray(rule) << QByteArray(start) << QByteArray(days);
        };

        // RFC 5545, 3.8.5.3, examples; COUNT and UNTIL stand in the last day here. Its WKST=SU is left
        // out where the weekdays named make no difference to it.
        row("every other day", "FREQ=DAILY;INTERVAL=2", "1997-09-02", "1997-09-02 1997-09-04 1997-09-06 1997-09-08");
        row("every 10 days", "FREQ=DAILY;INTERVAL=10", "1997-09-02", "1997-09-02 1997-09-12 1997-09-22 1997-10-02 1997-10-12");
        row("weekly", "FREQ=WEEKLY", "1997-09-02", "1997-09-02 1997-09-09 1997-09-16 1997-09-23 1997-09-30");
        row("every other week", "FREQ=WEEKLY;INTERVAL=2", "1997-09-02", "1997-09-02 1997-09-16 1997-09-30 1997-10-14");
        row("weekly on Tuesday and Thursday", "FREQ=WEEKLY;BYDAY=TU,TH", "1997-09-02",
            "1997-09-02 1997-09-04 1997-09-09 1997-09-11 1997-09-16");
        row("every other week on Tuesday and Thursday", "FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,TH", "1997-09-02",
            "1997-09-02 1997-09-04 1997-09-16 1997-09-18 1997-09-30 1997-10-02 1997-10-14 1997-10-16");
        row("the week starts on Monday", "FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,SU", "1997-08-05", "1997-08-05 1997-08-10 1997-08-19 1997-08-24");
        // Ours: BYDAY filters DAILY, and a start that does not match is no instance.
        row("daily on workdays", "FREQ=DAILY;BYDAY=MO,TU,WE,TH,FR", "2026-03-06", "2026-03-06 2026-03-09 2026-03-10");
        row("every other day on workdays", "FREQ=DAILY;INTERVAL=2;BYDAY=MO,TU,WE,TH,FR", "2026-03-07",
            "2026-03-09 2026-03-11 2026-03-13 2026-03-17");
        row("a start on another weekday", "FREQ=WEEKLY;BYDAY=MO", "2026-03-04", "2026-03-09 2026-03-16");
        row("a start on another weekday of the first of two weeks", "FREQ=WEEKLY;INTERVAL=2;BYDAY=MO", "2026-03-04",
            "2026-03-16 2026-03-30");
    }

    void itFallsOnTheDaysOfRfc5545()
    {
        QFETCH(QByteArray, rule);
        QFETCH(QByteArray, start);
        QFETCH(QByteArray, days);
        const auto parsed = RecurrenceRule::parse(rule.toStdString());
        const CivilDay first = day(start.constData());
        const CivilDay last = day(days.right(10).constData());

        std::string found;
        for (CivilDay at = first - 20; at <= last; at = at + 1) {
            if (parsed->falls(at, first))
                found += (found.empty() ? "" : " ") + at.toString();
        }

        QCOMPARE(QByteArray::fromStdString(found), days);
    }

    void itFallsWhereAPersonWalkingFromDayToDayArrives()
    {
        const bool holds = rc::check("falls() against a walk from the start", [] {
            const Words words = anyWords();
            const CivilDay start = day("2026-01-01") + *rc::gen::inRange(0, 400);
            const CivilDay last = start + 150;

            const auto rule = RecurrenceRule::parse(words.text());

            RC_ASSERT(rule.has_value());
            const auto walked = words.walk(start, last);
            for (CivilDay at = start - 30; at <= last; at = at + 1)
                RC_ASSERT(rule->falls(at, start) == walked.contains(at));
        });
        QVERIFY(holds);
    }

    void writingOutTheStartsWeekdayChangesNoDay()
    {
        const bool holds = rc::check("startingOn", [] {
            const auto rule = RecurrenceRule::parse(anyWords().text());
            const CivilDay start = day("2026-01-01") + *rc::gen::inRange(0, 14);

            const RecurrenceRule written = rule->startingOn(start);

            RC_ASSERT(written.startingOn(start + 1) == written);
            RC_ASSERT(RecurrenceRule::parse(written.toString()) == written);
            for (int i = -10; i < 60; ++i)
                RC_ASSERT(written.falls(start + i, start) == rule->falls(start + i, start));
        });
        QVERIFY(holds);
        QCOMPARE(RecurrenceRule::parse("FREQ=WEEKLY")->startingOn(day("2026-03-05")).toString(), std::string("FREQ=WEEKLY;BYDAY=TH"));
        QCOMPARE(RecurrenceRule::parse("FREQ=DAILY")->startingOn(day("2026-03-05")).toString(), std::string("FREQ=DAILY"));
        QCOMPARE(
            RecurrenceRule::parse("FREQ=WEEKLY;BYDAY=MO")->startingOn(day("2026-03-05")).toString(), std::string("FREQ=WEEKLY;BYDAY=MO"));
    }

    void theRuleThatNobodyNamedIsDaily()
    {
        const RecurrenceRule rule;

        QCOMPARE(rule.toString(), std::string("FREQ=DAILY"));
        QVERIFY(rule.falls(day("2026-03-05"), day("2026-03-05")));
        QVERIFY(!rule.falls(day("2026-03-04"), day("2026-03-05")));
    }
};

MORROW_SUITE(tst_rhythm)

#include "tst_rhythm.moc"
