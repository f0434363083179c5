// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/clock.h"

using namespace std::chrono_literals;
using morrow::CivilDay;
using morrow::Moment;
using morrow::parseMoment;

/// An instant keeps the offset it was recorded at, and its diary day never moves.
class tst_clock : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void readsWhatRfc3339Allows_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("written"); // empty: refused

        QTest::newRow("plain") << QByteArray("2026-03-02T07:14:05+01:00") << QByteArray("2026-03-02T07:14:05+01:00");
        QTest::newRow("west") << QByteArray("2026-03-02T23:59:59-03:30") << QByteArray("2026-03-02T23:59:59-03:30");
        QTest::newRow("Z") << QByteArray("2026-03-02T07:14:05Z") << QByteArray("2026-03-02T07:14:05+00:00");
        QTest::newRow("lower case") << QByteArray("2026-03-02t07:14:05z") << QByteArray("2026-03-02T07:14:05+00:00");
        QTest::newRow("one digit of fraction") << QByteArray("2026-03-02T07:14:05.5Z") << QByteArray("2026-03-02T07:14:05.500+00:00");
        QTest::newRow("three digits") << QByteArray("2026-03-02T07:14:05.007Z") << QByteArray("2026-03-02T07:14:05.007+00:00");
        QTest::newRow("no milliseconds left") << QByteArray("2026-03-02T07:14:05.000Z") << QByteArray("2026-03-02T07:14:05+00:00");
        QTest::newRow("leap second") << QByteArray("2016-12-31T23:59:60Z") << QByteArray("2017-01-01T00:00:00+00:00");
        QTest::newRow("leap second after the last day") << QByteArray("2200-12-31T23:59:60Z") << QByteArray();
        QTest::newRow("in UTC after the last day") << QByteArray("2200-12-31T23:00:00-02:00") << QByteArray();
        QTest::newRow("in UTC before the first day") << QByteArray("1900-01-01T00:30:00+01:00") << QByteArray();
        QTest::newRow("the last hour of all") << QByteArray("2200-12-31T23:59:59Z") << QByteArray("2200-12-31T23:59:59+00:00");
        QTest::newRow("before 1970") << QByteArray("1969-12-31T23:59:59.999Z") << QByteArray("1969-12-31T23:59:59.999+00:00");
        QTest::newRow("four digits") << QByteArray("2026-03-02T07:14:05.0000Z") << QByteArray();
        QTest::newRow("a dot alone") << QByteArray("2026-03-02T07:14:05.Z") << QByteArray();
        QTest::newRow("no offset") << QByteArray("2026-03-02T07:14:05") << QByteArray();
        QTest::newRow("no seconds") << QByteArray("2026-03-02T07:14+01:00") << QByteArray();
        QTest::newRow("25 o'clock") << QByteArray("2026-03-02T25:14:05Z") << QByteArray();
        QTest::newRow("offset of a day") << QByteArray("2026-03-02T07:14:05+24:00") << QByteArray();
        QTest::newRow("offset without a colon") << QByteArray("2026-03-02T07:14:05+0100") << QByteArray();
        QTest::newRow("no such day") << QByteArray("2026-02-30T07:14:05Z") << QByteArray();
    }

    void readsWhatRfc3339Allows()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, written);

        const auto moment = parseMoment({text.constData(), static_cast<std::size_t>(text.size())});

        QCOMPARE(moment.has_value(), !written.isEmpty());
        if (moment)
            QCOMPARE(morrow::rfc3339(*moment), written.toStdString());
    }

    void theInstantIsIndependentOfTheOffset()
    {
        QCOMPARE(parseMoment("2026-03-02T07:14:05+01:00")->utcMs, parseMoment("2026-03-02T01:14:05-05:00")->utcMs);
        QCOMPARE(parseMoment("1970-01-01T00:00:01Z")->utcMs, 1000);
    }

    void aSetAfterMidnightBelongsToTheEveningBefore()
    {
        QCOMPARE(morrow::diaryDay(*parseMoment("2026-03-02T00:30:00+01:00"), 240min).toString(), std::string("2026-03-01"));
        QCOMPARE(morrow::diaryDay(*parseMoment("2026-03-02T03:59:59.999+01:00"), 240min).toString(), std::string("2026-03-01"));
        QCOMPARE(morrow::diaryDay(*parseMoment("2026-03-02T04:00:00+01:00"), 240min).toString(), std::string("2026-03-02"));
        QCOMPARE(morrow::diaryDay(*parseMoment("1969-12-31T23:00:00Z"), 0min).toString(), std::string("1969-12-31"));
    }

    void theDayIsThatOfTheTravellersOwnOffset()
    {
        const auto home = *parseMoment("2026-03-02T23:40:00+00:00");
        const Moment abroad{home.utcMs, 120};

        QCOMPARE(morrow::diaryDay(home, 240min).toString(), std::string("2026-03-02"));
        QCOMPARE(morrow::diaryDay(abroad, 240min).toString(), std::string("2026-03-02"));
        QCOMPARE(morrow::diaryDay(abroad, 0min).toString(), std::string("2026-03-03"));
    }

    void theSystemClockTellsItsOffset()
    {
        const Moment now = morrow::systemClock()->now();

        QCOMPARE(*parseMoment(morrow::rfc3339(now)), now);
        QVERIFY(now.utcMs > parseMoment("2026-01-01T00:00:00Z")->utcMs);
    }
};

MORROW_SUITE(tst_clock)

#include "tst_clock.moc"
