// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// Runs \a sql with the guards away and puts them back, as damage would get past them.
void damage(const std::filesystem::path &folder, const std::string &sql)
{
    std::string guards;
    std::string drops;
    {
        SQLite::Database connection(storeFile(folder).string(), SQLite::OPEN_READONLY);
        SQLite::Statement triggers(connection, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
        while (triggers.executeStep()) {
            drops += "DROP TRIGGER " + triggers.getColumn(0).getString() + ";";
            guards += triggers.getColumn(1).getString() + ";";
        }
    }
    tamper(storeFile(folder), "PRAGMA ignore_check_constraints=ON;" + drops + sql + ";" + guards);
}

} // namespace

/// Reading is checking (I3): what is not what was added is named and reaches nobody as an entry.
class tst_reading : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i3_aChangedColumnIsNamedByItsDay_data()
    {
        QTest::addColumn<QString>("change");

        QTest::newRow("id") << "id = 'fact-000009'";
        QTest::newRow("kind") << "kind = 'note'";
        QTest::newRow("kind that nobody knows") << "kind = 'sets'";
        QTest::newRow("recorded") << "recorded = recorded + 1";
        QTest::newRow("offset") << "utc_offset = utc_offset - 1";
        QTest::newRow("no instant") << "recorded = NULL, utc_offset = NULL";
        QTest::newRow("author") << "author = 'helper'";
        QTest::newRow("author that nobody knows") << "author = 'patienu'";
        QTest::newRow("replaces") << "replaces = 'fact-000000'";
        QTest::newRow("body") << "body = replace(body, '15', '14')";
        QTest::newRow("digest") << "digest = zeroblob(32)";
        QTest::newRow("a short digest") << "digest = substr(digest, 1, 31)";
        QTest::newRow("text ended early") << "body = body || char(0)";
    }

    void i3_aChangedColumnIsNamedByItsDay()
    {
        QFETCH(QString, change);
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "UPDATE entry SET " + change.toStdString() + " WHERE id = 'fact-000001'");

        const PersonReading reading = kept(folder / "diary");
        QCOMPARE(reading.entries, byId({fact(0), fact(2), fact(3)}));
        QCOMPARE(reading.damaged.size(), std::size_t(1));
        QVERIFY(reading.damaged[0].day == fact(1).day);
        QVERIFY(reading.sumDiffers);
        QVERIFY(!reading.isWhole());
    }

    void i3_aDayThatIsNoneIsNamedWithoutADay()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "UPDATE entry SET day = 5000000000 WHERE id = 'fact-000001'");

        const PersonReading reading = kept(folder / "diary");
        QCOMPARE(reading.damaged.size(), std::size_t(1));
        QVERIFY(!reading.damaged[0].day);
        QCOMPARE(reading.damaged[0].id, fact(1).id);
    }

    void i3_aLostEntryIsCounted()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "DELETE FROM entry WHERE id = 'fact-000001'");

        const PersonReading reading = kept(folder / "diary");
        QCOMPARE(reading.entries.size(), std::size_t(3));
        QVERIFY(reading.countDiffers && reading.sumDiffers);
        QCOMPARE(reading.counted, 4);
    }

    void i3_anEntryInAnothersPlaceIsNoticed()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));
        keep(folder / "diary", {fact(9)}, kOtherRef);

        // A right digest, a right count: only the sum knows.
        damage(folder / "diary", "DELETE FROM entry WHERE id = 'fact-000001'; UPDATE entry SET person = 1 WHERE person = 2");

        const PersonReading reading = kept(folder / "diary");
        QVERIFY(reading.damaged.empty() && !reading.countDiffers);
        QVERIFY(reading.sumDiffers);
    }

    void i3_aChangedPersonIsNamed_data()
    {
        QTest::addColumn<QString>("change");
        QTest::addColumn<QString>("what");

        QTest::newRow("digest") << "digest = zeroblob(32)"
                                << "person";
        QTest::newRow("count") << "entries = entries + 1"
                               << "count";
        QTest::newRow("sum") << "sum = zeroblob(32)"
                             << "sum";
        QTest::newRow("a short sum") << "sum = x'00'"
                                     << "sum";
    }

    void i3_aChangedPersonIsNamed()
    {
        QFETCH(QString, change);
        QFETCH(QString, what);
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "UPDATE person SET " + change.toStdString());

        const PersonReading reading = kept(folder / "diary");
        QCOMPARE(reading.personDamaged, what == QStringLiteral("person"));
        QCOMPARE(reading.countDiffers, what == QStringLiteral("count"));
        QCOMPARE(reading.sumDiffers, what == QStringLiteral("sum"));
        QVERIFY(!reading.isWhole());
    }

    void i3_aChangedRefIsNamed()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "UPDATE person SET ref = 'somebody else'");

        QVERIFY(kept(folder / "diary", "somebody else").personDamaged);
    }

    void i3_aChangedErasureIsNamed_data()
    {
        QTest::addColumn<QString>("sql");

        QTest::newRow("another id") << "UPDATE erased SET id_digest = zeroblob(32) WHERE id_digest = (SELECT min(id_digest) FROM erased)";
        QTest::newRow("another digest") << "UPDATE erased SET digest = zeroblob(32)";
        QTest::newRow("one lost") << "DELETE FROM erased WHERE id_digest = (SELECT min(id_digest) FROM erased)";
        QTest::newRow("all lost") << "DELETE FROM erased";
        QTest::newRow("their total lost") << "DELETE FROM meta";
        QTest::newRow("their total another") << "UPDATE meta SET value = '0' || substr(value, 2)";
    }

    void i3_aChangedErasureIsNamed()
    {
        QFETCH(QString, sql);
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));
        for (const int number : {1, 2})
            QVERIFY(opened(folder / "diary").eraseChain(kRef, fact(number).id).has_value());
        QCOMPARE(kept(folder / "diary").erased.size(), std::size_t(2));
        QVERIFY(kept(folder / "diary").isWhole());

        damage(folder / "diary", sql.toStdString());

        QVERIFY(kept(folder / "diary").erasedDamaged);
        QVERIFY(!kept(folder / "diary").isWhole());
    }

    void i3_entriesOfNobodyAreDamage()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));

        damage(folder / "diary", "DELETE FROM person");

        DiaryStore store = opened(folder / "diary");
        QCOMPARE(outcome(store.persons()), "Damaged");
        QCOMPARE(outcome(store.read(kRef)), "Damaged");
        QCOMPARE(outcome(store.add(kRef, facts(9, 1))), "Damaged");
    }

    void i3_aRefIsFoundWhateverItsIndexSays()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 4));
        keep(folder / "diary", facts(7, 1), kOtherRef);

        // The index alone says that the two refs are each other's.
        damage(folder / "diary",
            "CREATE TABLE swapped(ref TEXT UNIQUE, x); INSERT INTO swapped SELECT ref, x FROM (SELECT ref, person x FROM person ORDER BY "
            "person DESC);"
            "PRAGMA writable_schema=ON; UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = "
            "'sqlite_autoindex_swapped_1')"
            " WHERE name = 'sqlite_autoindex_person_1'; DELETE FROM sqlite_schema WHERE tbl_name = 'swapped'");

        QCOMPARE(kept(folder / "diary").entries, byId(facts(0, 4)));
        QVERIFY(kept(folder / "diary").isWhole());
        keep(folder / "diary", facts(8, 1), kOtherRef);
        QCOMPARE(kept(folder / "diary", kOtherRef).entries, byId(facts(7, 2)));
    }

    void aKindOfANewerProgramIsCountedAndNotShown()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 2));
        Sha256 hash;
        const Digest digest = digestOfColumns({"entry 1", "new", "mood", "20000", "", "", "patient", "", "{}"}, hash);
        Sum sum = sumOf(facts(0, 2));
        sum.add(digest);

        damage(folder / "diary",
            "INSERT INTO entry VALUES (1, 'new', 'mood', 20000, NULL, NULL, 'patient', NULL, '{}', x'" + toHex(digest)
                + "'); UPDATE person SET entries = 3, sum = x'" + toHex(sum.value()) + "'");

        const PersonReading reading = kept(folder / "diary");
        QCOMPARE(reading.entries.size(), std::size_t(2));
        QCOMPARE(reading.unknownKinds, 1);
        QVERIFY(reading.isWhole());
    }

    void i3_whatLiesBehindABrokenPageIsReadFromTheOtherEnd()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 400));
        const auto page = leafInTheMiddle(folder / "diary");

        overwrite(storeFile(folder / "diary"), page);

        const PersonReading reading = kept(folder / "diary");
        QVERIFY(reading.cutShort);
        QVERIFY(reading.entries.size() > 350);
        QCOMPARE(reading.entries.front(), fact(0));
        QCOMPARE(reading.entries.back(), fact(399));
    }

private:
    /// The number of a page in the middle of the entries.
    static int leafInTheMiddle(const std::filesystem::path &folder)
    {
        SQLite::Database connection(storeFile(folder).string(), SQLite::OPEN_READONLY);
        SQLite::Statement pages(connection, "SELECT pageno FROM dbstat WHERE name = 'entry' AND pagetype = 'leaf' ORDER BY path");
        std::vector<int> all;
        while (pages.executeStep())
            all.push_back(pages.getColumn(0).getInt());
        return all.at(all.size() / 2);
    }

    static void overwrite(const std::filesystem::path &file, int page)
    {
        std::FILE *const out = std::fopen(file.c_str(), "r+b");
        std::fseek(out, (page - 1) * 4096L, SEEK_SET);
        const std::string bytes(4096, '\xff');
        std::fwrite(bytes.data(), 1, bytes.size(), out);
        std::fclose(out);
    }
};

MORROW_SUITE(tst_reading)
#include "tst_reading.moc"
