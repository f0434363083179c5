// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/decimal.h"

#include <rapidcheck.h>

using morrow::Decimal;

/// A decimal is what was written, in its shortest form, and nothing else is one.
class tst_decimal : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void readsAtMostThreeDecimals_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("written"); // empty: refused

        QTest::newRow("whole") << QByteArray("12") << QByteArray("12");
        QTest::newRow("shortest form") << QByteArray("2.50") << QByteArray("2.5");
        QTest::newRow("three decimals") << QByteArray("0.125") << QByteArray("0.125");
        QTest::newRow("small negative") << QByteArray("-0.005") << QByteArray("-0.005");
        QTest::newRow("negative zero") << QByteArray("-0") << QByteArray("0");
        QTest::newRow("greatest") << QByteArray("999999999.999") << QByteArray("999999999.999");
        QTest::newRow("a thousand million") << QByteArray("1000000000") << QByteArray();
        QTest::newRow("twenty digits") << QByteArray("10000000000000000000") << QByteArray();
        QTest::newRow("four decimals") << QByteArray("0.1250") << QByteArray();
        QTest::newRow("exponent") << QByteArray("1e3") << QByteArray();
        QTest::newRow("NaN") << QByteArray("NaN") << QByteArray();
        QTest::newRow("plus") << QByteArray("+1") << QByteArray();
        QTest::newRow("comma") << QByteArray("2,5") << QByteArray();
        QTest::newRow("leading zero") << QByteArray("05") << QByteArray();
        QTest::newRow("no whole part") << QByteArray(".5") << QByteArray();
        QTest::newRow("no decimals after the point") << QByteArray("5.") << QByteArray();
        QTest::newRow("space") << QByteArray(" 5") << QByteArray();
        QTest::newRow("nothing") << QByteArray("") << QByteArray();
        QTest::newRow("a sign alone") << QByteArray("-") << QByteArray();
    }

    void readsAtMostThreeDecimals()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, written);

        const auto number = Decimal::parse({text.constData(), static_cast<std::size_t>(text.size())});

        QCOMPARE(number.has_value(), !written.isEmpty());
        if (number)
            QCOMPARE(number->toString(), written.toStdString());
    }

    void writingAndReadingGivesTheSameNumber()
    {
        QVERIFY(rc::check([] {
            const auto number = Decimal::fromThousandths(*rc::gen::inRange<std::int64_t>(-Decimal::kLimit + 1, Decimal::kLimit));
            RC_ASSERT(number.has_value());
            RC_ASSERT(Decimal::parse(number->toString()) == number);
        }));
        QVERIFY(!Decimal::fromThousandths(Decimal::kLimit));
        QVERIFY(!Decimal::fromThousandths(-Decimal::kLimit));
    }
};

MORROW_SUITE(tst_decimal)

#include "tst_decimal.moc"
