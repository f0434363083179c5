// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "support/diary_builder.h"

#include "report/figures.h"

using namespace morrow;

/// A rounded number never says something that is not so.
class tst_figures : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void numbersHaveOneDecimalAtMost_data()
    {
        QTest::addColumn<double>("value");
        QTest::addColumn<QByteArray>("plain");
        QTest::addColumn<QByteArray>("withSign");

        QTest::newRow("whole") << 6.0 << QByteArray("6") << QByteArray("+6");
        QTest::newRow("half") << 5.5 << QByteArray("5.5") << QByteArray("+5.5");
        QTest::newRow("long") << 120104.666 << QByteArray("120104.7") << QByteArray("+120104.7");
        QTest::newRow("below zero") << -3.25 << QByteArray("-3.2") << QByteArray("-3.2");
        QTest::newRow("nothing") << 0.0 << QByteArray("0") << QByteArray("0");
        QTest::newRow("a trace below zero") << -0.01 << QByteArray("0") << QByteArray("0");
        QTest::newRow("the largest volume") << 1e17 << QByteArray("100000000000000000") << QByteArray("+100000000000000000");
    }

    void numbersHaveOneDecimalAtMost()
    {
        QFETCH(double, value);
        QFETCH(QByteArray, plain);
        QFETCH(QByteArray, withSign);

        QCOMPARE(QByteArray::fromStdString(figure(value)), plain);
        QCOMPARE(QByteArray::fromStdString(signedFigure(value)), withSign);
    }

    void aSpanSaysOnceWhatItsDaysHaveInCommon_data()
    {
        QTest::addColumn<QByteArray>("first");
        QTest::addColumn<QByteArray>("last");
        QTest::addColumn<QByteArray>("said");

        QTest::newRow("one day") << QByteArray("2026-12-31") << QByteArray("2026-12-31") << QByteArray("31 December 2026");
        QTest::newRow("a month") << QByteArray("2026-03-02") << QByteArray("2026-03-08") << QByteArray("2 to 8 March 2026");
        QTest::newRow("a year") << QByteArray("2026-01-31") << QByteArray("2026-02-01") << QByteArray("31 January to 1 February 2026");
        QTest::newRow("neither") << QByteArray("2025-03-02") << QByteArray("2026-03-08") << QByteArray("2 March 2025 to 8 March 2026");
        QTest::newRow("an empty one") << QByteArray("2026-03-08") << QByteArray("2026-03-07") << QByteArray("8 March 2026");
    }

    void aSpanSaysOnceWhatItsDaysHaveInCommon()
    {
        QFETCH(QByteArray, first);
        QFETCH(QByteArray, last);
        QFETCH(QByteArray, said);

        QCOMPARE(QByteArray::fromStdString(datedSpan(test::day(first.constData()), test::day(last.constData()))), said);
    }

    void allAndNoneAreSaidOfAllAndNoneOnly_data()
    {
        QTest::addColumn<int>("done");
        QTest::addColumn<int>("due");
        QTest::addColumn<QByteArray>("said");

        QTest::newRow("all") << 300 << 300 << QByteArray("300 of 300 (100 %)");
        QTest::newRow("all but one") << 299 << 300 << QByteArray("299 of 300 (99 %)");
        QTest::newRow("one") << 1 << 300 << QByteArray("1 of 300 (1 %)");
        QTest::newRow("none") << 0 << 300 << QByteArray("0 of 300 (0 %)");
        QTest::newRow("some") << 4 << 5 << QByteArray("4 of 5 (80 %)");
        QTest::newRow("nothing was due") << 0 << 0 << QByteArray("0 of 0");
    }

    void allAndNoneAreSaidOfAllAndNoneOnly()
    {
        QFETCH(int, done);
        QFETCH(int, due);
        QFETCH(QByteArray, said);

        QCOMPARE(QByteArray::fromStdString(part(done, due)), said);
    }

    void volumeNamesItsUnit()
    {
        QCOMPARE(volume(60, VolumeUnit::Reps), std::string("60 reps"));
        QCOMPARE(volume(60, VolumeUnit::Seconds), std::string("60 s"));
        QCOMPARE(volume(60, VolumeUnit::KgReps), std::string("60 kg x reps"));
        QCOMPARE(volume(60, VolumeUnit::KgSeconds), std::string("60 kg x s"));
        QCOMPARE(volume(0, std::nullopt), std::string("0"));
    }
};

MORROW_SUITE(tst_figures)
#include "tst_figures.moc"
