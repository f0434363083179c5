// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/json.h"

#include <QJsonDocument>
#include <QJsonObject>

#include <limits>

using morrow::batch::Json;

/// JSON keeps the order it was said in and every digit of a number.
class tst_json : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void keysStayInTheirOrder()
    {
        QCOMPARE(Json::object({{"b", 1}, {"a", nullptr}, {"c", true}}).toText(), std::string("{\"b\": 1, \"a\": null, \"c\": true}\n"));
    }

    void whatIsAbsentIsNull()
    {
        QCOMPARE(Json(std::optional<double>()).toText(), std::string("null\n"));
        QCOMPARE(Json(std::optional<int>(3)).toText(), std::string("3\n"));
        QCOMPARE(Json(std::numeric_limits<double>::quiet_NaN()).toText(), std::string("null\n"));
        QCOMPARE(Json(std::numeric_limits<double>::infinity()).toText(), std::string("null\n"));
    }

    void aNumberIsReadBackAsTheSameDouble_data()
    {
        QTest::addColumn<double>("value");

        for (const double value : {0.0, 0.1, 1.0 / 3, 2.0 / 3, 81.0 / 113, -4.5, 1e-9, 1e17, 123456789.125, 5e-324, 1.7976931348623157e308})
            QTest::addRow("%.17g", value) << value;
    }

    void aNumberIsReadBackAsTheSameDouble()
    {
        QFETCH(double, value);

        const std::string text = Json(value).toText();

        QCOMPARE(QByteArray::fromStdString(text).trimmed().toDouble(), value);
        QVERIFY(QJsonDocument::fromJson(QByteArray::fromStdString("[" + text + "]")).isArray());
    }

    void aWholeNumberHasNoPoint()
    {
        QCOMPARE(Json(3.0).toText(), std::string("3\n"));
        QCOMPARE(Json(-0.0).toText(), std::string("0\n"));
        QCOMPARE(Json(std::numeric_limits<std::int64_t>::min()).toText(), std::string("-9223372036854775808\n"));
    }

    void textIsReadBackAsItWas_data()
    {
        QTest::addColumn<QByteArray>("text");

        QTest::newRow("quotes and backslashes") << QByteArray("how far is \"all the way\"? C:\\x");
        QTest::newRow("line ends and tabs") << QByteArray("a\r\nb\tc");
        QTest::newRow("control characters") << QByteArray("\x01\x1f\x7f");
        QTest::newRow("other scripts") << QByteArray("Arresø γόνατο ركبة 🦶");
        QTest::newRow("a separator of lines") << QByteArray("a\xe2\x80\xa8"
                                                            "b");
        QTest::newRow("nothing") << QByteArray("");
    }

    void textIsReadBackAsItWas()
    {
        QFETCH(QByteArray, text);

        const std::string json = Json::object({{"text", text.toStdString()}}).toText();

        QCOMPARE(QJsonDocument::fromJson(QByteArray::fromStdString(json)).object()[QLatin1String("text")].toString().toUtf8(), text);
    }

    void bytesThatAreNotTextAreShown() { QCOMPARE(Json(std::string("a\xff")).toText(), std::string("\"a<xFF>\"\n")); }

    void longListsHaveALineAMember()
    {
        Json list = Json::array();
        for (int i = 0; i < 100; ++i)
            list.add(Json(i));

        const std::string text = Json::object({{"list", list}, {"none", Json::array()}}).toText();

        QCOMPARE(text.substr(0, 26), std::string("{\n  \"list\": [\n    0,\n    1"));
        QVERIFY(text.ends_with("    99\n  ],\n  \"none\": []\n}\n"));
    }
};

MORROW_SUITE(tst_json)
#include "tst_json.moc"
