// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/entry.h"
#include "support/json_text.h"

#include <rapidcheck.h>

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

Entry paperMorning()
{
    return {"", Kind::Check, *CivilDay::parse("2026-03-03"), {}, Author::Patient, {}, json("{'complaint':'heel','pain':4}")};
}

Entry correctedMorning()
{
    return {"019d43e1-0ea6-73bc-bf68-e0841eb0b9cc", Kind::Check, *CivilDay::parse("2026-03-03"), Moment{1'772'518'445'250, 60},
        Author::Helper, "q1", json("{'complaint':'früh','pain':2.5}")};
}

Digest anyDigest()
{
    Digest digest{};
    for (auto &byte : digest)
        byte = *rc::gen::element<std::uint8_t>(0, 1, 127, 128, 254, 255, *rc::gen::arbitrary<std::uint8_t>());
    return digest;
}

Digest number(std::uint8_t last, std::uint8_t others = 0)
{
    Digest digest{};
    digest.fill(others);
    digest.back() = last;
    return digest;
}

} // namespace

/// An entry has one digest everywhere, and a set of them one sum.
class tst_entry : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i3_theDigestIsTheOneThatTheDefinitionGives()
    {
        // By Python's hashlib, from the definition in core/model/entry.h.
        Sha256 hash;

        QCOMPARE(toHex(digestOf(paperMorning(), hash)), std::string("b4b8af29e5dd2dd9b2c5a2e22f37c081822e88e3cc2afb9d4f63dca0009c6285"));
        QCOMPARE(
            toHex(digestOf(correctedMorning(), hash)), std::string("55997c6e7e9e4f45be6a945f7a0e1aca318745bbe400b502cc9b1472792ff703"));
    }

    void i3_everyColumnIsInTheDigest()
    {
        Sha256 hash;
        const Entry entry = correctedMorning();
        std::vector<Entry> others(9, entry);
        others[0].id = "019d43e1-0ea6-73bc-bf68-e0841eb0b9cd";
        others[1].kind = Kind::Session;
        others[2].day = entry.day + 1;
        others[3].recorded->utcMs += 1;
        others[4].recorded->offsetMinutes = 0;
        others[5].recorded.reset();
        others[6].author = Author::Clinic;
        others[7].replaces.reset();
        others[8].body += ' ';

        for (const Entry &other : others)
            QVERIFY(digestOf(other, hash) != digestOf(entry, hash));
    }

    void i3_aLetterThatMovesToTheNextColumnChangesTheDigest()
    {
        Sha256 hash;
        Entry one = correctedMorning();
        Entry other = one;
        one.replaces = "q12";
        one.body = "3{}";
        other.replaces = "q1";
        other.body = "23{}";

        QVERIFY(digestOf(one, hash) != digestOf(other, hash));
    }

    void aDerivedIdIsUuidVersion8OfTheDigestWithoutAnId()
    {
        Sha256 hash;
        Entry entry = correctedMorning();

        const std::string id = derivedId(entry, hash);

        entry.id = "another";
        QCOMPARE(derivedId(entry, hash), id); // it does not feed on itself
        entry.id.clear();
        const std::string digest = toHex(digestOf(entry, hash));
        QCOMPARE(id.size(), std::size_t{36});
        QCOMPARE(id.substr(0, 8), digest.substr(0, 8));
        QCOMPARE(id.substr(24), digest.substr(20, 12));
        QCOMPARE(id[14], '8'); // RFC 9562, 4.2
        QVERIFY(std::string("89ab").find(id[19]) != std::string::npos); // RFC 9562, 4.1
        // By Python's hashlib and uuid.
        QCOMPARE(derivedId(paperMorning(), hash), std::string("b4b8af29-e5dd-8dd9-b2c5-a2e22f37c081"));
    }

    void i4_theSumDoesNotDependOnTheOrder()
    {
        const bool holds = rc::check("digests added in two orders", [] {
            std::vector<Digest> digests;
            for (int i = *rc::gen::inRange(0, 12); i > 0; --i)
                digests.push_back(anyDigest());
            std::vector<Digest> turned = digests;
            for (std::size_t i = turned.size(); i > 1; --i)
                std::swap(turned[i - 1], turned[*rc::gen::inRange<std::size_t>(0, i)]);

            Sum one;
            Sum other;
            for (std::size_t i = 0; i < digests.size(); ++i) {
                one.add(digests[i]);
                other.add(turned[i]);
            }

            RC_ASSERT(one == other);
        });
        QVERIFY(holds);
    }

    void i4_theSumAddsAs256BitNumbers()
    {
        Sum sum;
        sum.add(number(200));
        sum.add(number(100)); // 300 = 1 * 256 + 44

        Digest expected = number(44);
        expected[30] = 1;
        QVERIFY(sum.value() == expected);

        Sum whole;
        whole.add(number(255, 255)); // 2^256 - 1
        whole.add(number(2));
        QVERIFY(whole.value() == number(1)); // modulo 2^256
    }

    void i4_whatIsTakenBackWasNeverAdded()
    {
        const bool holds = rc::check("add, then subtract", [] {
            Sum sum;
            sum.add(anyDigest());
            const Sum before = sum;
            const Digest digest = anyDigest();

            sum.add(digest);
            sum.subtract(digest);

            RC_ASSERT(sum == before);
        });
        QVERIFY(holds);
    }

    void theLaterRecordedCountsThenTheGreaterId_data()
    {
        QTest::addColumn<QByteArray>("id");
        QTest::addColumn<qint64>("recorded"); // 0: paper
        QTest::addColumn<QByteArray>("otherId");
        QTest::addColumn<qint64>("otherRecorded");
        const auto row = [](const char *name, const char *id, qint64 recorded, const char *otherId, qint64 otherRecorded) {
            QTest::newRow(name) << QByteArray(id) << recorded << QByteArray(otherId) << otherRecorded;
        };

        row("later", "a", 2000, "b", 1000);
        row("an instant before paper", "a", 1, "b", 0);
        row("an instant before 1970 before paper", "a", -5, "b", 0);
        row("a tie of instants", "b", 1000, "a", 1000);
        row("a tie on paper", "b", 0, "a", 0);
        row("ids as bytes: small letters behind capitals", "a", 0, "B", 0);
        row("ids as bytes: longer", "aa", 0, "a", 0);
    }

    void theLaterRecordedCountsThenTheGreaterId()
    {
        QFETCH(QByteArray, id);
        QFETCH(qint64, recorded);
        QFETCH(QByteArray, otherId);
        QFETCH(qint64, otherRecorded);
        const auto made = [](const QByteArray &name, qint64 ms) {
            Entry entry = paperMorning();
            entry.id = name.toStdString();
            if (ms != 0)
                entry.recorded = Moment{ms, 0};
            return entry;
        };

        QVERIFY(countsBefore(made(id, recorded), made(otherId, otherRecorded)));
        QVERIFY(!countsBefore(made(otherId, otherRecorded), made(id, recorded)));
    }

    void theOffsetDecidesNothing()
    {
        Entry west = paperMorning();
        Entry east = paperMorning();
        west.id = "b";
        east.id = "a";
        west.recorded = Moment{1000, -300};
        east.recorded = Moment{1000, 300};

        QVERIFY(countsBefore(west, east));
        QVERIFY(!countsBefore(east, west));
    }
};

MORROW_SUITE(tst_entry)

#include "tst_entry.moc"
