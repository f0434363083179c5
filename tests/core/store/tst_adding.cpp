// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"

using namespace morrow;
using namespace morrow::test;

/// Adding is a union by id: all or none, and nothing that is there is ever changed by it.
class tst_adding : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_store.emplace(opened(*m_folder / "diary"));
    }

    void cleanup() { m_store.reset(); }

    void whatIsAddedIsReadAsItWas()
    {
        std::vector<Entry> entries = facts(0, 40);
        entries.push_back(correctionOf(entries[0], 1, R"({"complaint":"heel","pain":2})"));

        const auto added = m_store->add(kRef, entries);

        QCOMPARE(added->added, 41);
        QCOMPARE(read().entries, byId(entries));
        QVERIFY(read().isWhole());
        QCOMPARE(read().counted, 41);
    }

    void aKnownEntryIsCountedAndNothingElse()
    {
        QVERIFY(m_store->add(kRef, facts(0, 4)).has_value());
        const std::string before = dump(connection());

        const auto again = m_store->add(kRef, facts(0, 4));

        QCOMPARE(again->known, 4);
        QCOMPARE(again->added, 0);
        QCOMPARE(dump(connection()), before);
    }

    void twiceInOneCallIsOnce()
    {
        const auto added = m_store->add(kRef, {{fact(1), fact(2), fact(1)}});

        QCOMPARE(added->added, 2);
        QCOMPARE(added->known, 1);
        QVERIFY(read().isWhole());
    }

    void oneIdWithAnotherContentRefusesAll_data()
    {
        QTest::addColumn<int>("column");

        const char *const columns[] = {"kind", "day", "instant", "offset", "no instant", "author", "replaces", "body"};
        for (int column = 0; column < 8; ++column)
            QTest::newRow(columns[column]) << column;
    }

    void oneIdWithAnotherContentRefusesAll()
    {
        QFETCH(int, column);
        QVERIFY(m_store->add(kRef, facts(0, 4)).has_value());
        const std::string before = dump(connection());
        Entry other = fact(1);
        switch (column) {
        case 0:
            other.kind = Kind::Note;
            break;
        case 1:
            other.day = other.day + 1;
            break;
        case 2:
            other.recorded->utcMs += 1;
            break;
        case 3:
            other.recorded->offsetMinutes += 1;
            break;
        case 4:
            other.recorded.reset();
            break;
        case 5:
            other.author = Author::Helper;
            break;
        case 6:
            other.replaces = fact(0).id;
            break;
        default:
            other.body.insert(1, "\"a\":1,");
            break;
        }

        const auto added = m_store->add(kRef, {{fact(10), other, fact(11)}});

        QCOMPARE(outcome(added), "Refused");
        QCOMPARE(dump(connection()), before);
    }

    void oneIdWithTwoContentsInOneCallRefusesAll()
    {
        Entry other = fact(1);
        other.body = "{}";

        QCOMPARE(outcome(m_store->add(kRef, {{fact(0), fact(1), other}})), "Refused");

        QVERIFY(read().entries.empty());
        QVERIFY(m_store->persons()->empty());
    }

    void whatTheTableForbidsRefusesAllAndSpoilsNothing_data()
    {
        QTest::addColumn<std::string>("id");

        QTest::newRow("no id") << std::string();
        QTest::newRow("an id that is too long") << std::string(65, 'x');
    }

    void whatTheTableForbidsRefusesAllAndSpoilsNothing()
    {
        QFETCH(std::string, id);
        Entry bad = fact(1);
        bad.id = id;

        QCOMPARE(outcome(m_store->add(kRef, {{fact(0), bad}})), "Refused");

        QVERIFY(read().entries.empty());
        QCOMPARE(outcome(m_store->add(kRef, facts(0, 3))), "done");
        QCOMPARE(read().entries, byId(facts(0, 3)));
        QCOMPARE(outcome(m_store->add(std::string(65, 'x'), facts(0, 1))), "Refused");
        QCOMPARE(outcome(m_store->add("", facts(0, 1))), "Refused");
        QCOMPARE(m_store->persons()->size(), std::size_t(1));
    }

    void whatWasErasedIsSkippedAndCounted()
    {
        QVERIFY(m_store->add(kRef, facts(0, 4)).has_value());
        QCOMPARE(m_store->eraseChain(kRef, fact(2).id).value(), 1);

        const auto again = m_store->add(kRef, facts(0, 6));

        QCOMPARE(again->erased, 1);
        QCOMPARE(again->known, 3);
        QCOMPARE(again->added, 2);
        QCOMPARE(read().entries, byId({fact(0), fact(1), fact(3), fact(4), fact(5)}));
        QVERIFY(read().isWhole());
    }

    void anErasedIdIsSkippedWhateverItSays()
    {
        QVERIFY(m_store->add(kRef, facts(0, 2)).has_value());
        QCOMPARE(m_store->eraseChain(kRef, fact(1).id).value(), 1);
        Entry other = fact(1);
        other.body = "{}";

        QCOMPARE(m_store->add(kRef, {&other, 1})->erased, 1);
    }

    void twoPersonsDoNotMeet()
    {
        Entry same = fact(1);
        same.body = "{}";
        QVERIFY(m_store->add(kRef, facts(0, 3)).has_value());
        QVERIFY(m_store->add(kOtherRef, {&same, 1}).has_value());

        QCOMPARE(*m_store->persons(), (std::vector<std::string>{kRef, kOtherRef}));
        QCOMPARE(read().entries, byId(facts(0, 3)));
        QCOMPARE(read(kOtherRef).entries, std::vector{same});
        QCOMPARE(m_store->eraseChain(kOtherRef, same.id).value(), 1);
        QCOMPARE(read().entries, byId(facts(0, 3)));
        QCOMPARE(m_store->add(kRef, facts(0, 3))->known, 3);
        QVERIFY(read().isWhole() && read(kOtherRef).isWhole());
    }

    void nobodyKnownReadsAsNothing()
    {
        QVERIFY(m_store->add(kRef, facts(0, 3)).has_value());

        const PersonReading reading = read(kOtherRef);

        QVERIFY(reading.entries.empty() && reading.isWhole());
        QCOMPARE(reading.ref, std::string(kOtherRef));
    }

    // A day, an instant and an offset that were told are what is read, whatever they would work out to (entry.h I2).
    void theDayIsNeverRecomputed()
    {
        Entry odd = fact(0);
        odd.day = *CivilDay::from(1999, 12, 31);
        odd.recorded = Moment{4102444800000, -1439};

        QVERIFY(m_store->add(kRef, {&odd, 1}).has_value());

        QCOMPARE(read().entries, std::vector{odd});
    }

    void i2_aCorrectionKeepsTheOriginal()
    {
        const Entry original = fact(0);
        const Entry correction = correctionOf(original, 1, R"({"complaint":"heel","pain":9})");
        QVERIFY(m_store->add(kRef, {&original, 1}).has_value());

        QVERIFY(m_store->add(kRef, {&correction, 1}).has_value());

        QCOMPARE(read().entries, byId({original, correction}));
    }

private:
    PersonReading read(const char *ref = kRef) { return m_store->read(ref).value(); }
    SQLite::Database &connection() { return m_store->database()->connection(); }

    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<DiaryStore> m_store;
};

MORROW_SUITE(tst_adding)
#include "tst_adding.moc"
