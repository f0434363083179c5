// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "store/backup.h"

#include <fstream>
#include <sys/stat.h>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

constexpr std::int64_t kDayMs = 86'400'000;

/// Noon of the day that is \a days before that of kNow.
Moment noon(int days)
{
    return {kNow.utcMs - kNow.utcMs % kDayMs + kDayMs / 2 - days * kDayMs, 60};
}

/// Half of the file's bytes.
void cut(const fs::path &file)
{
    fs::resize_file(file, fs::file_size(file) / 2);
}

} // namespace

/// Named after the invariants of backup.h.
class tst_backup : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_store.emplace(opened(diary()));
        QVERIFY(m_store->add(kRef, facts(0, 30)).has_value());
        QVERIFY(m_store->add(kOtherRef, facts(0, 3)).has_value());
        QCOMPARE(m_store->eraseChain(kRef, fact(7).id).value(), 1);
    }

    void cleanup() { m_store.reset(); }

    void i1_aBackupHoldsEveryEntryPersonAndErasure()
    {
        const auto backup = back(kNow);

        QVERIFY(canBeReadWhole(backup));
        auto database = Database::openToRead(backup, {});
        QCOMPARE(dump(database->connection()), dump(m_store->database()->connection()));
        QCOMPARE(backup.filename().string(), std::string("2026-11-25T180351Z.db"));
    }

    void i1_aBackupIsForItsUserOnlyAndNothingElseIsLeft()
    {
        const auto backup = back(kNow);

        QCOMPARE(namesIn(backupFolder(diary())), backup.filename().string());
        struct stat status
        {
        };
        QCOMPARE(::stat(backup.c_str(), &status), 0);
        QCOMPARE(status.st_mode & 0777, 0600U);
        QCOMPARE(::stat(backupFolder(diary()).c_str(), &status), 0);
        QCOMPARE(status.st_mode & 0777, 0700U);
    }

    void i1_aDamagedStoreMakesNoBackup_data()
    {
        QTest::addColumn<QString>("sql");

        QTest::newRow("a sum") << "UPDATE person SET sum = zeroblob(32) WHERE person = 2";
        QTest::newRow("a count") << "UPDATE person SET entries = entries + 1 WHERE person = 1";
        QTest::newRow("an entry") << "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}'";
        QTest::newRow("a person gone")
            << "DROP TRIGGER person_is_only_erased; PRAGMA foreign_keys=OFF; DELETE FROM person WHERE person = 2";
        QTest::newRow("a guard gone") << "DROP TRIGGER entry_is_never_changed";
    }

    void i1_aDamagedStoreMakesNoBackup()
    {
        QFETCH(QString, sql);
        back(noon(1));
        m_store->database()->connection().exec(sql.toStdString());

        QCOMPARE(outcome(makeBackup(m_store->database()->connection(), diary(), kNow)), "Damaged");

        QCOMPARE(namesIn(backupFolder(diary())).c_str(), "2026-11-24T120000Z.db");
    }

    void i1_aCopyThatCannotBeNamedIsNotLeft()
    {
        fs::create_directories(backupFolder(diary()) / "2026-11-25T180351Z.db" / "in the way");

        QVERIFY(!makeBackup(m_store->database()->connection(), diary(), kNow).has_value());

        QCOMPARE(namesIn(backupFolder(diary())).c_str(), "2026-11-25T180351Z.db");
    }

    void i1_anOlderHalfDoneCopyIsNoHindrance()
    {
        fs::create_directory(backupFolder(diary()));
        std::ofstream(backupFolder(diary()) / ".2026-11-25T180351Z.part") << "half a copy";

        QVERIFY(canBeReadWhole(back(kNow)));

        QCOMPARE(namesIn(backupFolder(diary())).c_str(), "2026-11-25T180351Z.db");
    }

    void i1_whatCannotBeReadIsNotWhole_data()
    {
        QTest::addColumn<int>("kind");

        QTest::newRow("cut in half") << 0;
        QTest::newRow("empty") << 1;
        QTest::newRow("another file") << 2;
        QTest::newRow("a sum that differs") << 3;
        QTest::newRow("not there") << 4;
    }

    void i1_whatCannotBeReadIsNotWhole()
    {
        QFETCH(int, kind);
        const auto backup = back(kNow);
        switch (kind) {
        case 0:
            cut(backup);
            break;
        case 1:
            fs::resize_file(backup, 0);
            break;
        case 2:
            std::ofstream(backup) << "Dear diary";
            break;
        case 3:
            tamper(backup, "UPDATE person SET sum = zeroblob(32)");
            break;
        default:
            fs::remove(backup);
        }

        QVERIFY(!canBeReadWhole(backup));
    }

    void i2_sevenDaysAndFourWeeksAreKept()
    {
        for (int days = 40; days >= 0; --days)
            back(noon(days));
        back(kNow); // a second one of today

        rotateBackups(diary());

        // 2026-11-25 is a Wednesday: the last seven days lie in two weeks, of which the earlier one's
        // newest day is among them; two more weeks give their Sundays.
        QCOMPARE(namesIn(backupFolder(diary())).c_str(),
            "2026-11-08T120000Z.db 2026-11-15T120000Z.db 2026-11-19T120000Z.db 2026-11-20T120000Z.db 2026-11-21T120000Z.db "
            "2026-11-22T120000Z.db 2026-11-23T120000Z.db 2026-11-24T120000Z.db 2026-11-25T180351Z.db");
    }

    void i2_daysAndWeeksAreThoseThatHaveABackup()
    {
        for (const int days : {300, 200, 100, 99, 50, 49, 48, 47, 46, 45, 44, 43})
            back(noon(days));

        rotateBackups(diary());

        QCOMPARE(backupsIn(diary()).size(), std::size_t(9));
    }

    void i2_aBackupThatCannotBeReadNeitherCountsNorDisplaces()
    {
        for (int days = 20; days >= 0; --days) {
            const auto backup = back(noon(days));
            if (days < 10)
                cut(backup);
        }

        rotateBackups(diary());

        // The ten broken ones are left for restore, and the readable ones count from the eleventh on.
        int broken = 0;
        int readable = 0;
        for (const fs::path &backup : backupsIn(diary()))
            ++(canBeReadWhole(backup) ? readable : broken);
        QCOMPARE(broken, 10);
        QVERIFY(readable >= 7);
        QVERIFY(canBeReadWhole(backupFolder(diary()) / "2026-11-15T120000Z.db"));
    }

    void i2_theLastReadableOneIsNeverDeleted()
    {
        back(noon(400));
        for (int days = 30; days >= 0; --days)
            cut(back(noon(days)));

        for (int run = 0; run < 3; ++run)
            rotateBackups(diary());

        QVERIFY(canBeReadWhole(backupFolder(diary()) / "2025-10-21T120000Z.db"));
    }

    void i2_filesOfOthersAreLeftAlone()
    {
        back(kNow);
        std::ofstream(backupFolder(diary()) / "my notes.db") << "mine";

        rotateBackups(diary());

        QVERIFY(fs::exists(backupFolder(diary()) / "my notes.db"));
        QCOMPARE(backupsIn(diary()).size(), std::size_t(1));
    }

    void i3_whatIsBackedUpWhileALogIsFullIsWhole()
    {
        QVERIFY(m_store->add(kRef, facts(30, 300)).has_value());
        QVERIFY(fs::file_size(storeFile(diary()).string() + "-wal") > 0);

        auto database = Database::openToRead(back(kNow), {});

        QCOMPARE(dump(database->connection()), dump(m_store->database()->connection()));
    }

    void i3_noBackupIsMadeInsideATransaction()
    {
        SQLite::Database &connection = m_store->database()->connection();
        SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
        connection.exec("UPDATE person SET entries = entries + 1");

        QVERIFY(!makeBackup(connection, diary(), kNow).has_value());

        QVERIFY(backupsIn(diary()).empty());
    }

    void newestComesFirst()
    {
        for (const int days : {3, 1, 2})
            back(noon(days));
        QVERIFY(makeBackupBeforeStep(m_store->database()->connection(), diary(), 2).has_value());

        std::vector<std::string> names;
        for (const fs::path &backup : backupsIn(diary()))
            names.push_back(backup.stem().string());

        QCOMPARE(names, (std::vector<std::string>{"2026-11-24T120000Z", "2026-11-23T120000Z", "2026-11-22T120000Z", "before-step-2"}));
    }

private:
    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }
    fs::path back(const Moment &now) { return makeBackup(m_store->database()->connection(), diary(), now).value(); }

    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<DiaryStore> m_store;
};

MORROW_SUITE(tst_backup)
#include "tst_backup.moc"
