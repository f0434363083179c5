// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/civil_day.h"

using morrow::CivilDay;

/// A civil day is a day that the calendar has, and counts like one.
class tst_civil_day : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void readsOnlyDaysThatExist_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<bool>("exists");

        QTest::newRow("an ordinary day") << QByteArray("2026-03-02") << true;
        QTest::newRow("a leap day") << QByteArray("2024-02-29") << true;
        QTest::newRow("no leap day in 2100") << QByteArray("2100-02-29") << false;
        QTest::newRow("30 February") << QByteArray("2026-02-30") << false;
        QTest::newRow("month 13") << QByteArray("2026-13-01") << false;
        QTest::newRow("day 0") << QByteArray("2026-01-00") << false;
        QTest::newRow("first day") << QByteArray("1900-01-01") << true;
        QTest::newRow("before the first day") << QByteArray("1899-12-31") << false;
        QTest::newRow("last day") << QByteArray("2200-12-31") << true;
        QTest::newRow("after the last day") << QByteArray("2201-01-01") << false;
        QTest::newRow("one digit month") << QByteArray("2026-3-02") << false;
        QTest::newRow("slashes") << QByteArray("2026/03/02") << false;
        QTest::newRow("a space inside") << QByteArray("2026-03- 2") << false;
        QTest::newRow("a sign inside") << QByteArray("2026-03-+2") << false;
        QTest::newRow("more behind it") << QByteArray("2026-03-02 ") << false;
        QTest::newRow("nothing") << QByteArray("") << false;
    }

    void readsOnlyDaysThatExist()
    {
        QFETCH(QByteArray, text);
        QFETCH(bool, exists);

        const auto day = CivilDay::parse({text.constData(), static_cast<std::size_t>(text.size())});

        QCOMPARE(day.has_value(), exists);
        if (exists)
            QCOMPARE(day->toString(), text.toStdString());
    }

    void everyDayFollowsTheOneBefore()
    {
        const CivilDay first = *CivilDay::from(1900, 1, 1);
        const CivilDay last = *CivilDay::from(2200, 12, 31);

        for (CivilDay day = first; day < last; day = day + 1) {
            const CivilDay next = *CivilDay::parse((day + 1).toString());
            QCOMPARE(next - day, 1);
            QCOMPARE(next.weekday(), (day.weekday() + 1) % 7);
        }
        QVERIFY(!CivilDay::fromNumber(first.number() - 1));
        QVERIFY(!CivilDay::fromNumber(last.number() + 1));
        QVERIFY(CivilDay::fromNumber(first.number()) && CivilDay::fromNumber(last.number()));
    }

    void weeksBeginOnMonday()
    {
        // 1970-01-01 was a Thursday (POSIX epoch); 2026-03-02 a Monday.
        QCOMPARE(CivilDay::fromNumber(0)->weekday(), 3);
        QCOMPARE(CivilDay::from(2026, 3, 2)->weekday(), 0);
    }
};

MORROW_SUITE(tst_civil_day)

#include "tst_civil_day.moc"
