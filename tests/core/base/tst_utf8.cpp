// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/utf8.h"

using namespace morrow;

/// Text is well-formed UTF-8 without control characters, and is never repaired.
class tst_utf8 : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void findsTheFirstBadByte_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<int>("at"); // -1: none

        QTest::newRow("ascii") << QByteArray("heel") << -1;
        QTest::newRow("two, three, four bytes") << QByteArray("a\xc3\xa9\xe2\x82\xac\xf0\x9f\x98\x80") << -1;
        QTest::newRow("a lone continuation") << QByteArray("ab\x80") << 2;
        QTest::newRow("cut short") << QByteArray("a\xe2\x82") << 1;
        QTest::newRow("overlong slash") << QByteArray("\xc0\xaf") << 0;
        QTest::newRow("overlong in three") << QByteArray("\xe0\x80\xaf") << 0;
        QTest::newRow("overlong in four") << QByteArray("\xf0\x80\x80\xaf") << 0;
        QTest::newRow("surrogate") << QByteArray("x\xed\xa0\x80") << 1;
        QTest::newRow("last before the surrogates") << QByteArray("\xed\x9f\xbf") << -1;
        QTest::newRow("above U+10FFFF") << QByteArray("\xf4\x90\x80\x80") << 0;
        QTest::newRow("greatest") << QByteArray("\xf4\x8f\xbf\xbf") << -1;
        QTest::newRow("five bytes") << QByteArray("\xf8\x88\x80\x80\x80") << 0;
    }

    void findsTheFirstBadByte()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(int, at);

        const auto found = firstInvalidUtf8({bytes.constData(), static_cast<std::size_t>(bytes.size())});

        QCOMPARE(found ? static_cast<int>(*found) : -1, at);
    }

    void controlCharactersAreNotText()
    {
        QVERIFY(!hasControlCharacter("one\ttwo\r\nthree"));
        QVERIFY(!hasControlCharacter("\xc2\xa0 and \xc3\x80"));
        QVERIFY(hasControlCharacter(std::string_view("a\0b", 3)));
        QVERIFY(hasControlCharacter("\x1b[2J"));
        QVERIFY(hasControlCharacter("\x7f"));
        QVERIFY(hasControlCharacter("\xc2\x85"));
        QVERIFY(hasControlCharacter("\xc2\x9f"));
    }

    void countsCharactersNotBytes() { QCOMPARE(codePoints("a\xc3\xa9\xe2\x82\xac\xf0\x9f\x98\x80"), std::size_t{4}); }
};

MORROW_SUITE(tst_utf8)

#include "tst_utf8.moc"
