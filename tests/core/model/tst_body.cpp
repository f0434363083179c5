// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/body.h"
#include "support/json_text.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <rapidcheck.h>

using namespace morrow;
using namespace morrow::test;

namespace {

QString qt(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

std::string anyText()
{
    static const std::vector<std::string> pieces{
        "a", "\"", "\\", "/", "\b", "\t", "\n", "\f", "\r", std::string(1, '\0'), "\x1f", "\x7f", "é", "\u2028", "\uffff", "😀", "{", ","};
    std::string text;
    for (int i = *rc::gen::inRange(0, 6); i > 0; --i)
        text += *rc::gen::elementOf(pieces);
    return text;
}

Body anyBody(int depth)
{
    Body body;
    for (int i = *rc::gen::inRange(0, 6); i > 0; --i) {
        const auto field = static_cast<Field>(*rc::gen::inRange(0, static_cast<int>(Field::Withdrawn) + 1));
        const int type = *rc::gen::inRange(0, depth < 3 ? 3 : 2);
        if (type == 0) {
            body.set(field, *Decimal::fromThousandths(*rc::gen::inRange<std::int64_t>(-999'999'999'999, 1'000'000'000'000)));
        } else if (type == 1) {
            body.set(field, anyText());
        } else {
            std::vector<Body> list;
            for (int j = *rc::gen::inRange(0, 3); j > 0; --j)
                list.push_back(anyBody(depth + 1));
            body.set(field, std::move(list));
        }
    }
    return body;
}

/// Whether another reader of JSON finds in \a object what \a body says.
bool says(const QJsonObject &object, const Body &body)
{
    if (object.size() != static_cast<qsizetype>(body.fields().size()))
        return false;
    for (const auto &[field, value] : body.fields()) {
        const QJsonValue found = object[qt(name(field))];
        if (const auto *number = std::get_if<Decimal>(&value)) {
            if (!found.isDouble() || qRound64(found.toDouble() * 1000) != number->thousandths())
                return false;
        } else if (const auto *text = std::get_if<std::string>(&value)) {
            if (!found.isString() || found.toString() != qt(*text))
                return false;
        } else {
            const auto &list = std::get<std::vector<Body>>(value);
            const QJsonArray array = found.toArray();
            if (!found.isArray() || array.size() != static_cast<qsizetype>(list.size()))
                return false;
            for (std::size_t i = 0; i < list.size(); ++i) {
                if (!says(array[static_cast<qsizetype>(i)].toObject(), list[i]))
                    return false;
            }
        }
    }
    return true;
}

} // namespace

/// A body has one form on every machine, and nothing else is taken for one.
class tst_body : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aTextIsWrittenByRfc8785_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("written");
        const auto row = [](const char *name, QByteArray text, const char *written) { QTest::newRow(name) << text << QByteArray(written); };

        // RFC 8785, 3.2.2.2: the seven short escapes, \u00xx in small letters for other controls, all else as it is.
        row("the example of 3.2.3", QByteArray("\u20ac$\x0f\nA'B\"\\\\\"/"), "\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"");
        row("short escapes", QByteArray("\b\t\n\f\r\"\\"), "\"\\b\\t\\n\\f\\r\\\"\\\\\"");
        row("other controls", QByteArray("\x01\x0b\x1f"), "\"\\u0001\\u000b\\u001f\"");
        row("a zero byte", QByteArray("a\0b", 3), "\"a\\u0000b\"");
        row("a solidus", QByteArray("a/b"), "\"a/b\"");
        row("delete", QByteArray("\x7f"), "\"\x7f\"");
        row("a line separator", QByteArray("\u2028"), "\"\u2028\"");
        row("four bytes", QByteArray("😀"), "\"😀\"");
        row("nothing", QByteArray(""), "\"\"");
    }

    void aTextIsWrittenByRfc8785()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, written);
        Body body;

        body.set(Field::Text, text.toStdString());

        QCOMPARE(QByteArray::fromStdString(body.toJson()), "{\"text\":" + written + "}");
        QVERIFY(BodyReader().read(body.toJson()) == body);
    }

    void aNumberIsWrittenInItsShortestForm_data()
    {
        QTest::addColumn<qint64>("thousandths");
        QTest::addColumn<QByteArray>("written");

        QTest::newRow("zero") << qint64{0} << QByteArray("0");
        QTest::newRow("whole") << qint64{3000} << QByteArray("3");
        QTest::newRow("a half") << qint64{2500} << QByteArray("2.5");
        QTest::newRow("thousandths") << qint64{-125} << QByteArray("-0.125");
        QTest::newRow("hundredths") << qint64{70} << QByteArray("0.07");
        QTest::newRow("the greatest") << qint64{999'999'999'999} << QByteArray("999999999.999");
    }

    void aNumberIsWrittenInItsShortestForm()
    {
        QFETCH(qint64, thousandths);
        QFETCH(QByteArray, written);
        Body body;

        body.set(Field::Value, *Decimal::fromThousandths(thousandths));

        QCOMPARE(QByteArray::fromStdString(body.toJson()), "{\"value\":" + written + "}");
    }

    void fieldsStandInTheOrderOfTheirNames()
    {
        Body item;
        item.set(Field::Start, std::string("2026-03-02"));
        item.set(Field::Item, std::string("raise"));
        Body body;
        body.set(Field::Plan, std::string("p"));
        body.set(Field::Complaint, std::string("heel"));
        body.set(Field::Number, Decimal::whole(1));
        body.set(Field::Items, std::vector<Body>{item, {}});
        body.set(Field::By, std::string("A."));
        body.set(Field::Asks, std::string("none"));

        QCOMPARE(body.toJson(),
            json("{'asks':'none','by':'A.','complaint':'heel','items':[{'item':'raise','start':'2026-03-02'},{}],'number':1,'plan':'p'}"));
    }

    void anEmptyBodyAndAnEmptyListAreWritten()
    {
        Body body;

        QCOMPARE(body.toJson(), std::string("{}"));
        body.set(Field::Items, std::vector<Body>());
        QCOMPARE(body.toJson(), json("{'items':[]}"));
    }

    void whatIsSaidAgainStandsInThePlaceOfWhatWasSaid()
    {
        Body body;
        body.set(Field::Pain, Decimal::whole(4));
        body.set(Field::Complaint, std::string("heel"));

        body.set(Field::Pain, Decimal::whole(5));
        body.remove(Field::Complaint);

        QCOMPARE(body.toJson(), json("{'pain':5}"));
        QVERIFY(!body.has(Field::Complaint));
    }

    void aFieldOfAnotherTypeIsNotFound()
    {
        Body body;
        body.set(Field::Pain, std::string("4"));

        QVERIFY(body.has(Field::Pain));
        QVERIFY(!body.number(Field::Pain));
        QVERIFY(!body.list(Field::Pain));
        QCOMPARE(body.intOr(Field::Pain, 7), 7);
        QVERIFY(body.textOr(Field::Pain) == "4");
        QVERIFY(body.textOr(Field::Note, "none") == "none");
    }

    void whatIsWrittenIsReadAgainByUsAndByOthers()
    {
        const bool holds = rc::check("body -> JSON -> body", [] {
            const Body body = anyBody(1);

            const std::string written = body.toJson();

            const auto read = BodyReader().read(written);
            RC_ASSERT(read.has_value());
            RC_ASSERT(*read == body);
            RC_ASSERT(read->toJson() == written);
            const QJsonDocument other = QJsonDocument::fromJson(QByteArray::fromStdString(written));
            RC_ASSERT(says(other.object(), body));
        });
        QVERIFY(holds);
    }

    void aBodyThatIsReadIntoKeepsNothingOfTheOneBefore()
    {
        BodyReader reader;
        Body body;

        QVERIFY(reader.read(R"({"pain":3,"stiffness_min":10})", body));
        QVERIFY(reader.read(R"({"declined":1})", body));

        QCOMPARE(QByteArray::fromStdString(body.toJson()), QByteArray(R"({"declined":1})"));
    }

    void oneReaderReadsManyBodies()
    {
        BodyReader reader;
        const std::string longer = json("{'text':'") + std::string(5000, 'x') + "\"}";

        QVERIFY(reader.read(json("{'pain':4}")));
        QVERIFY(!reader.read("{"));
        QVERIFY(reader.read(longer));
        QCOMPARE(reader.read(json("{'pain':4}"))->intOr(Field::Pain, -1), 4);
    }

    void whatIsNoBodyIsRefused_data()
    {
        QTest::addColumn<QByteArray>("text");
        const auto row = [](const char *name, const std::string &text) { QTest::newRow(name) << QByteArray::fromStdString(json(text)); };

        row("nothing", "");
        row("a space", " ");
        row("a list", "[]");
        row("a number", "3");
        row("null", "null");
        row("half an object", "{'pain':3");
        row("an object that breaks off in a text", "{'text':'a");
        row("text behind it", "{'pain':3}x");
        row("a second object", "{'pain':3}{}");
        row("keys out of order", "{'pain':3,'complaint':'heel'}");
        row("unknown keys out of order", "{'zebra':3,'pain':3}");
        row("a key twice", "{'pain':3,'pain':4}");
        row("an unknown key twice", "{'zebra':3,'zebra':4}");
        row("keys of an item out of order", "{'items':[{'start':'a','item':'b'}]}");
        row("a fourth decimal", "{'pain':3.0001}");
        row("an exponent", "{'pain':3e0}");
        row("a number of 1e9", "{'pain':1000000000}");
        row("a leading zero", "{'pain':03}");
        row("a plus", "{'pain':+3}");
        row("a point alone", "{'pain':3.}");
        row("NaN", "{'pain':NaN}");
        row("a letter behind a number", "{'pain':3a}");
        row("null inside", "{'pain':null}");
        row("a truth", "{'pain':true}");
        row("an object inside", "{'pain':{}}");
        row("a list of numbers", "{'items':[1]}");
        row("lists four deep", "{'items':[{'items':[{'items':[{'items':[]}]}]}]}");
        row("a control character", "{'text':'a\tb'}");
        row("an unknown escape", "{'text':'a\\x'}");
        row("half a surrogate pair", "{'text':'\\ud83d'}");
        row("the other half", "{'text':'\\ude00'}");
        row("bad UTF-8", "{'text':'\xc3('}");
        row("an overlong form", "{'text':'\xc0\xaf'}");
        row("bad UTF-8 under an unknown key", "{'zebra':'\xff'}");
        row("a comma too many", "{'pain':3,}");
        row("no comma", "{'pain':3 'text':'a'}");
        row("no colon", "{'pain' 3}");
    }

    void whatIsNoBodyIsRefused()
    {
        QFETCH(QByteArray, text);

        QVERIFY(!BodyReader().read(text.toStdString()));
    }

    void keysOfANewerProgramArePassedOver()
    {
        const auto body = BodyReader().read(json("{'aaa':[1,null,{'x':[true]}],'pain':3,'zebra':{'pain':'x'}}"));

        QVERIFY(body);
        QCOMPARE(body->toJson(), json("{'pain':3}"));
    }

    void escapesOfOthersAreRead()
    {
        const auto body = BodyReader().read(json("{'text':'\\ud83d\\ude00\\/\\u00e9'}"));

        QVERIFY(body);
        QVERIFY(body->textOr(Field::Text) == "😀/é");
    }
};

MORROW_SUITE(tst_body)

#include "tst_body.moc"
