// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"

#include <sqlite3.h>

using namespace morrow;
using namespace morrow::test;

/// The connection is what was measured to lose nothing, and its guards let no statement through
/// that changes or drops a fact. Named after the invariants of database.h and diary_store.h.
class tst_recipe : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i1_everyPragmaHolds_data()
    {
        QTest::addColumn<QString>("pragma");
        QTest::addColumn<QString>("value");

        QTest::newRow("no other program") << "locking_mode"
                                          << "exclusive";
        QTest::newRow("write-ahead log") << "journal_mode"
                                         << "wal";
        QTest::newRow("synced at every commit") << "synchronous"
                                                << "2";
        QTest::newRow("foreign keys") << "foreign_keys"
                                      << "1";
        QTest::newRow("replacing wakes the guards") << "recursive_triggers"
                                                    << "1";
        QTest::newRow("deleted is overwritten") << "secure_delete"
                                                << "1";
        QTest::newRow("no trust in the file's own code") << "trusted_schema"
                                                         << "0";
        QTest::newRow("cells are checked") << "cell_size_check"
                                           << "1";
        QTest::newRow("not mapped into memory") << "mmap_size"
                                                << "0";
    }

    void i1_everyPragmaHolds()
    {
        QFETCH(QString, pragma);
        QFETCH(QString, value);
        const ScratchFolder folder;
        DiaryStore store = opened(folder / "diary");

        SQLite::Statement read(store.database()->connection(), "PRAGMA " + pragma.toStdString());

        QVERIFY(read.executeStep());
        QCOMPARE(QString::fromStdString(read.getColumn(0).getString()), value);
    }

    void i2_noStatementChangesOrDropsAFact_data()
    {
        QTest::addColumn<QString>("sql");

        const auto row = [](const char *name, const char *sql) { QTest::newRow(name) << QString::fromUtf8(sql); };
        row("an entry's body", "UPDATE entry SET body = '{}'");
        row("an entry's digest", "UPDATE entry SET digest = zeroblob(32)");
        row("an entry's day, to the same", "UPDATE entry SET day = day");
        row("an entry's id", "UPDATE entry SET id = 'other' WHERE id = 'fact-000001'");
        row("an entry over another", "UPDATE OR REPLACE entry SET id = 'fact-000002' WHERE id = 'fact-000001'");
        row("an entry, quietly", "UPDATE OR IGNORE entry SET body = '{}'");
        row("an entry to another person", "UPDATE entry SET person = 2 WHERE id = 'fact-000001'");
        row("an entry deleted", "DELETE FROM entry WHERE id = 'fact-000001'");
        row("all entries deleted", "DELETE FROM entry");
        row("an entry replaced",
            "INSERT OR REPLACE INTO entry SELECT person, id, kind, day, recorded, utc_offset, author, replaces, '{}', digest FROM entry");
        row("an entry replaced by REPLACE", "REPLACE INTO entry SELECT * FROM entry");
        row("an entry upserted", "INSERT INTO entry SELECT * FROM entry WHERE true ON CONFLICT(person, id) DO UPDATE SET body = '{}'");
        row("an entry upserted, whatever the conflict",
            "INSERT INTO entry SELECT * FROM entry WHERE true ON CONFLICT DO UPDATE SET digest = zeroblob(32)");
        row("an entry of nobody",
            "INSERT INTO entry SELECT 77, id, kind, day, recorded, utc_offset, author, replaces, body, digest FROM entry");
        row("a person's ref", "UPDATE person SET ref = 'somebody else' WHERE person = 1");
        row("a person's ref over another", "UPDATE OR REPLACE person SET ref = (SELECT ref FROM person WHERE person = 2) WHERE person = 1");
        row("a person's number", "UPDATE person SET person = 9 WHERE person = 1");
        row("a person's digest", "UPDATE person SET digest = zeroblob(32)");
        row("a person deleted", "DELETE FROM person WHERE person = 2");
        row("a person replaced by number", "REPLACE INTO person(person, ref, digest) VALUES (1, 'somebody else', zeroblob(32))");
        row("a person replaced by ref",
            "INSERT OR REPLACE INTO person(person, ref, digest) SELECT 9, ref, digest FROM person WHERE person = 2");
        row("a person upserted",
            "INSERT INTO person(person, ref, digest) VALUES (1, 'x', zeroblob(32)) ON CONFLICT(person) DO UPDATE SET ref = 'x'");
        row("a person's count upserted down",
            "INSERT INTO person(person, ref, digest) VALUES (1, 'x', zeroblob(32)) ON CONFLICT(person) DO UPDATE SET entries = 0");
        row("a person's count down", "UPDATE person SET entries = entries - 1 WHERE person = 1");
        row("what was erased, deleted", "DELETE FROM erased");
        row("what was erased, changed", "UPDATE erased SET id_digest = zeroblob(32)");
        row("what was erased, moved", "UPDATE erased SET person = 2");
        row("what was erased, replaced", "REPLACE INTO erased SELECT * FROM erased");
        row("what was erased, upserted",
            "INSERT INTO erased SELECT * FROM erased WHERE true ON CONFLICT DO UPDATE SET digest = zeroblob(32)");
        row("a row left in erasing", "INSERT INTO erasing(person) VALUES (1)");
        row("a row left in erasing after deleting", "BEGIN; INSERT INTO erasing VALUES (1); DELETE FROM entry WHERE person = 1; COMMIT");
        row("a row left in erasing by an upsert", "INSERT OR REPLACE INTO erasing(person) VALUES (1)");
        row("somebody in nobody", "INSERT INTO nobody(person) VALUES (1)");
        row("somebody in nobody, to cover a row of erasing",
            "BEGIN; INSERT INTO erasing VALUES (1); INSERT OR IGNORE INTO nobody VALUES (1); COMMIT");
        row("erasing one opens no other",
            "BEGIN; INSERT INTO erasing VALUES (2); DELETE FROM entry WHERE person = 1; DELETE FROM erasing; COMMIT");
    }

    void i2_noStatementChangesOrDropsAFact()
    {
        QFETCH(QString, sql);
        const ScratchFolder folder;
        fill(folder / "diary");
        auto database = Database::openToWrite(storeFile(folder / "diary"), {});
        QVERIFY(database.has_value());
        SQLite::Database &connection = database->connection();
        const std::string before = dump(connection);

        bool isRefused = false;
        try {
            connection.exec(sql.toStdString());
        } catch (const SQLite::Exception &exception) {
            isRefused = storeError(exception) == StoreError::Refused;
        }
        (void)connection.tryExec("ROLLBACK");

        // What SQLite ignores is as good as refused, as long as nothing came of it.
        QVERIFY(isRefused || dump(connection) == before);
        QCOMPARE(dump(connection), before);
        QVERIFY2(isRefused, "the statement went through");
    }

    // Shows that the guard above is the pragma's doing.
    void replacingWalksThroughTheGuardsWithoutRecursiveTriggers()
    {
        const ScratchFolder folder;
        fill(folder / "diary");
        auto database = Database::openToWrite(storeFile(folder / "diary"), {});
        SQLite::Database &connection = database->connection();
        const std::string before = dump(connection);

        connection.exec("PRAGMA recursive_triggers=OFF");
        connection.exec(
            "INSERT OR REPLACE INTO entry SELECT person, id, kind, day, recorded, utc_offset, author, replaces, '{}', digest FROM entry");

        QVERIFY(dump(connection) != before);
    }

    void i2_anErasingTransactionIsTheOneWayToDelete()
    {
        const ScratchFolder folder;
        fill(folder / "diary");
        auto database = Database::openToWrite(storeFile(folder / "diary"), {});
        SQLite::Database &connection = database->connection();

        connection.exec("BEGIN; INSERT INTO erasing VALUES (1); DELETE FROM entry WHERE person = 1 AND id = 'fact-000001';"
                        "UPDATE person SET entries = entries - 1 WHERE person = 1; DELETE FROM erasing; COMMIT");

        QCOMPARE(SQLite::Statement(connection, "SELECT 1 FROM entry WHERE person = 1 AND id = 'fact-000001'").executeStep(), false);
    }

    void i4_aDroppedGuardIsNoticedOnOpening_data()
    {
        QTest::addColumn<QString>("sql");

        QTest::newRow("a guard dropped") << "DROP TRIGGER entry_is_never_changed";
        QTest::newRow("a guard that does nothing")
            << "DROP TRIGGER entry_is_never_changed; CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry BEGIN SELECT 1; END";
        QTest::newRow("a trigger too many") << "CREATE TRIGGER more AFTER INSERT ON entry BEGIN DELETE FROM card; END";
        QTest::newRow("a table too many") << "CREATE TABLE more (x)";
        QTest::newRow("an index too many") << "CREATE INDEX more ON entry(day)";
        QTest::newRow("a bit of a check")
            << "PRAGMA writable_schema=ON; UPDATE sqlite_schema SET sql = replace(sql, 'clinic', 'clinib') WHERE name = 'entry'";
    }

    void i4_aDroppedGuardIsNoticedOnOpening()
    {
        QFETCH(QString, sql);
        const ScratchFolder folder;
        fill(folder / "diary");

        tamper(storeFile(folder / "diary"), sql.toStdString());

        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "Damaged");
        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "Damaged");
    }

private:
    /// Two persons, entries, something erased.
    static void fill(const std::filesystem::path &folder)
    {
        keep(folder, facts(0, 4));
        keep(folder, facts(0, 2), kOtherRef);
        QCOMPARE(opened(folder).eraseChain(kRef, fact(3).id).value(), 1);
    }
};

MORROW_SUITE(tst_recipe)
#include "tst_recipe.moc"
