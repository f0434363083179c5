// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "base/utf8.h"
#include "report/plain_text.h"

using namespace morrow;

namespace {

QByteArray joined(const std::vector<std::string> &lines)
{
    QByteArray text;
    for (const std::string &line : lines)
        text += QByteArray::fromStdString(line) + '|';
    return text;
}

} // namespace

/// Words of others cannot steer the page, and no line loses a part.
class tst_plain_text : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void whatWouldSteerAScreenIsShown_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("shown");

        QTest::newRow("letters of other scripts") << QByteArray("Arresø γόνατο ركبة") << QByteArray("Arresø γόνατο ركبة");
        QTest::newRow("escape") << QByteArray("a\x1b[31mb") << QByteArray("a<U+001B>[31mb");
        QTest::newRow("line end") << QByteArray("a\r\nb") << QByteArray("a<U+000D><U+000A>b");
        QTest::newRow("tab") << QByteArray("a\tb") << QByteArray("a<U+0009>b");
        QTest::newRow("C1") << QByteArray("a\xc2\x9b"
                                          "b")
                            << QByteArray("a<U+009B>b");
        QTest::newRow("right-to-left override") << QByteArray("\xe2\x80\xae"
                                                              "12")
                                                << QByteArray("<U+202E>12");
        QTest::newRow("isolate") << QByteArray("\xe2\x81\xa7"
                                               "1")
                                 << QByteArray("<U+2067>1");
        QTest::newRow("Arabic letter mark") << QByteArray("\xd8\x9c"
                                                          "1")
                                            << QByteArray("<U+061C>1");
        QTest::newRow("not UTF-8") << QByteArray("a\xff\xc3(") << QByteArray("a<xFF><xC3>(");
        QTest::newRow("cut inside a character") << QByteArray("a\xe2\x80") << QByteArray("a<xE2><x80>");
    }

    void whatWouldSteerAScreenIsShown()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, shown);

        QCOMPARE(QByteArray::fromStdString(visible(text.toStdString())), shown);
    }

    void aShortenedTextEndsInDotsAndIsNoLonger()
    {
        QCOMPARE(shortened("øøøøø", 5), std::string("øøøøø"));
        QCOMPARE(shortened("øøøøøø", 5), std::string("øø..."));
    }

    void linesAreBrokenAndNothingIsLost_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("lines");

        QTest::newRow("fits") << QByteArray("1 of 10") << QByteArray("1 of 10|");
        QTest::newRow("at spaces") << QByteArray("sets 81 of 113 done") << QByteArray("sets 81 of|113 done|");
        QTest::newRow("inside a long word") << QByteArray("no 123456789012345678901234 kg")
                                            << QByteArray("no|1234567890|1234567890|1234 kg|");
        QTest::newRow("a word as wide as a line") << QByteArray("1234567890 x") << QByteArray("1234567890|x|");
        QTest::newRow("counted in characters, not bytes") << QByteArray("øøøøøøøøøø ø") << QByteArray("øøøøøøøøøø|ø|");
        QTest::newRow("nothing") << QByteArray() << QByteArray("|");
    }

    void linesAreBrokenAndNothingIsLost()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, lines);

        QCOMPARE(joined(wrapped(text.toStdString(), 10)), lines);
    }

    void columnsLineUpByCharacters()
    {
        PlainTable table({{"name", PlainTable::Align::Left}, {"n", PlainTable::Align::Right}});
        table.add({"Arresø", "7"});
        table.add({"b", "12"});

        QCOMPARE(joined(table.lines(80)), QByteArray("name     n|Arresø   7|b       12|"));
    }

    void aTableThatIsTooWideNamesEveryCell()
    {
        PlainTable table({{"week", PlainTable::Align::Right}, {"volume", PlainTable::Align::Right}});
        table.add({"1", "12345678901"});
        table.add({"2", "0"});

        const auto lines = table.lines(16);

        QCOMPARE(joined(lines), QByteArray("week 1, volume|12345678901|week 2, volume 0|"));
    }
};

MORROW_SUITE(tst_plain_text)
#include "tst_plain_text.moc"
