// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/ids.h"

#include <set>

using namespace morrow;

/// Ids are UUIDs of RFC 9562 that sort as they were made.
class tst_ids : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void versionSevenHoldsTheInstant()
    {
        // RFC 9562, appendix A.6: 0x017F22E279B0, version 7, variant 2; the random parts here are ours.
        IdSource source([] { return 0x18C4DC0C0C07398FULL; });

        const std::string id = source.next(0x017F22E279B0);

        QCOMPARE(id.substr(0, 15), std::string("017f22e2-79b0-7"));
        QCOMPARE(id.size(), std::size_t{36});
        QVERIFY(std::string("89ab").find(id[19]) != std::string::npos);
    }

    void neverRunsBackwards()
    {
        IdSource source([] { return ~0ULL; });
        std::string last;
        for (const std::int64_t ms : {1000, 1000, 999, 0, 1000, 1001, 1, 1001}) {
            const std::string id = source.next(ms);
            QVERIFY2(id > last, id.c_str());
            QVERIFY(isEntryId(id));
            last = id;
        }
    }

    void goesOnAfterTheIdsOfTheLastTime()
    {
        IdSource last([] { return ~0ULL; });
        const std::string old = last.next(5000);
        IdSource source([] { return 0ULL; });

        source.startAfter(old);
        source.startAfter("not an id");
        source.startAfter("ba7816bf-8f01-8fea-8141-40de5dae2223"); // version 8

        const std::string next = source.next(1);
        QVERIFY2(next > old, next.c_str());
        QCOMPARE(next.substr(0, 12), old.substr(0, 12));
    }

    void twoSourcesDoNotMeet()
    {
        IdSource one;
        IdSource other;
        std::set<std::string> ids;
        for (int i = 0; i < 1000; ++i) {
            ids.insert(one.next(5));
            ids.insert(other.next(5));
        }
        QCOMPARE(ids.size(), std::size_t{2000});
    }

    void versionEightIsTheDigestsFirstBytes()
    {
        // FIPS 180-4 example "abc": ba7816bf 8f01cfea 414140de 5dae2223 ...
        const Digest digest = sha256("abc");

        QCOMPARE(toHex(digest), std::string("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
        QCOMPARE(uuidFromDigest(digest), std::string("ba7816bf-8f01-8fea-8141-40de5dae2223"));
    }

    void oneContextHashesManyMessages()
    {
        Sha256 hash;
        (void)hash.of("something else first");

        QCOMPARE(hash.of("abc"), sha256("abc"));
        // FIPS 180-4: the empty message.
        QCOMPARE(toHex(hash.of("")), std::string("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"));
    }

    void anIdIsOneToSixtyFourPlainCharacters()
    {
        QVERIFY(isEntryId("a"));
        QVERIFY(isEntryId("A-z.9"));
        QVERIFY(isEntryId(std::string(64, 'x')));
        QVERIFY(!isEntryId(std::string(65, 'x')));
        QVERIFY(!isEntryId(""));
        QVERIFY(!isEntryId("a b"));
        QVERIFY(!isEntryId("a_b"));
        QVERIFY(!isEntryId("é"));
    }
};

MORROW_SUITE(tst_ids)

#include "tst_ids.moc"
