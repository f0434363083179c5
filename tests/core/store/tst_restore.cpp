// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "core/store/second_program.h"
#include "store/backup.h"
#include "store/restore.h"

#include <fstream>
#include <sys/stat.h>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

constexpr Moment kEarlier{kNow.utcMs - 3'600'000, 60};

void overwrite(const fs::path &file, std::uintmax_t from, std::uintmax_t count)
{
    std::fstream out(file, std::ios::in | std::ios::out | std::ios::binary);
    out.seekp(static_cast<std::streamoff>(from));
    out << std::string(count, '\xa5');
}

} // namespace

/// Named after the invariants of restore.h.
class tst_restore : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
    }

    void i1_whatTheBackupHoldsIsBackWhereTheStoreIsLost_data()
    {
        QTest::addColumn<QString>("loss");

        for (const char *loss : {"deleted", "emptied", "cut in half", "another file", "first page gone"})
            QTest::newRow(loss) << loss;
    }

    void i1_whatTheBackupHoldsIsBackWhereTheStoreIsLost()
    {
        QFETCH(QString, loss);
        keep(diary(), facts(0, 60));
        back(kEarlier);
        const fs::path file = storeFile(diary());
        if (loss == QStringLiteral("deleted"))
            fs::remove(file);
        else if (loss == QStringLiteral("emptied"))
            fs::resize_file(file, 0);
        else if (loss == QStringLiteral("cut in half"))
            fs::resize_file(file, fs::file_size(file) / 2);
        else if (loss == QStringLiteral("another file"))
            std::ofstream(file) << "Dear diary, today I was in pain.";
        else
            overwrite(file, 0, 4096);

        const auto report = restore(diary(), kNow);

        QCOMPARE(outcome(report), "done");
        QCOMPARE(report->back, 60);
        QCOMPARE(report->sinceBackup, std::string("2026-11-25T170351Z"));
        QCOMPARE(kept(diary()).entries, byId(facts(0, 60)));
        QVERIFY(kept(diary()).isWhole());
        keep(diary(), facts(60, 1));
        QCOMPARE(kept(diary()).entries.size(), std::size_t(61));
    }

    void i1_storeBackupsAndKeptFilesAreJoined()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        keep(diary(), facts(10, 10));
        tamper(storeFile(diary()),
            "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}' WHERE id IN ('fact-000003', 'fact-000015')");
        fs::create_directory(keptFolder(diary()));
        keep(*m_folder / "older", facts(15, 1));
        fs::copy_file(storeFile(*m_folder / "older"), keptFolder(diary()) / "2026-11-01T000000Z.db");

        const auto report = restore(diary(), kNow);

        QCOMPARE(report->back, 20);
        QVERIFY(report->missing == 0);
        QCOMPARE(report->sources, 3);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 20)));
    }

    void i1_whatTheLogAloneHoldsIsBack()
    {
        keep(diary(), facts(0, 10));
        runToItsDeath(diary(), 10, 10);
        tamper(storeFile(*m_folder / "diary"), "SELECT 1"); // makes no change, and leaves the log as it is

        const auto report = restore(diary(), kNow);

        QCOMPARE(report->back, 20);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 20)));
    }

    void i1_whatLiesBehindABrokenPageIsBack()
    {
        keep(diary(), facts(0, 2000));
        const auto pages = fs::file_size(storeFile(diary())) / 4096;
        overwrite(storeFile(diary()), pages / 2 * 4096, 4096);

        const auto report = restore(diary(), kNow);

        QVERIFY(report->back > 1900);
        QCOMPARE(report->back + report->missing.value(), 2000);
        QVERIFY(kept(diary()).isWhole());
    }

    void i2_theLossStaysNamedAlsoWhereNobodySawTheReport()
    {
        keep(diary(), facts(0, 2000));
        const auto pages = fs::file_size(storeFile(diary())) / 4096;
        overwrite(storeFile(diary()), pages / 2 * 4096, 4096);
        const auto report = restore(diary(), kNow);
        QVERIFY(report->missing.value() > 0);
        QVERIFY(fs::remove_all(keptFolder(diary())) > 0);

        {
            auto store = DiaryStore::openToRead(diary(), {});
            QCOMPARE(store->lost().value(), std::optional<std::int64_t>(*report->missing));
        }
        QCOMPARE(restore(diary(), kNow)->missing, report->missing);
    }

    void i2_whatALaterRestoreFindsIsLostNoMore()
    {
        keep(diary(), facts(0, 2000));
        back(kEarlier);
        const fs::path elsewhere = *m_folder / "backup";
        fs::rename(backupsIn(diary()).front(), elsewhere);
        const fs::path place = backupFolder(diary()) / "2026-01-01.db";
        const auto pages = fs::file_size(storeFile(diary())) / 4096;
        overwrite(storeFile(diary()), pages / 2 * 4096, 4096);
        QVERIFY(restore(diary(), kNow)->missing.value() > 0);

        fs::rename(elsewhere, place);
        const auto report = restore(diary(), kNow);

        QCOMPARE(report->missing, std::optional<int>(0));
        QCOMPARE(report->back, 2000);
        QCOMPARE(DiaryStore::openToRead(diary(), {})->lost().value(), std::optional<std::int64_t>(0));
    }

    void i2_aStoreThatWasNeverRestoredHasLostNothing()
    {
        keep(diary(), facts(0, 3));

        QCOMPARE(DiaryStore::openToRead(diary(), {})->lost().value(), std::optional<std::int64_t>(0));
    }

    void i1_everyPersonIsBack()
    {
        keep(diary(), facts(0, 5));
        keep(diary(), facts(0, 7), kOtherRef);
        back(kEarlier);
        fs::remove(storeFile(diary()));

        QCOMPARE(restore(diary(), kNow)->back, 12);

        QCOMPARE(kept(diary()).entries, byId(facts(0, 5)));
        QCOMPARE(kept(diary(), kOtherRef).entries, byId(facts(0, 7)));
    }

    void i1_whatWasErasedNeverComesBack()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        QCOMPARE(opened(diary()).eraseChain(kRef, fact(4).id).value(), 1); // the backup still holds it

        const auto report = restore(diary(), kNow);

        QCOMPARE(report->back, 9);
        QVERIFY(report->missing == 0);
        QVERIFY(kept(diary()).erased == std::vector{sha256(fact(4).id)});
        DiaryStore store = opened(diary());
        QCOMPARE(store.add(kRef, facts(4, 1))->erased, 1);
    }

    void i1_entriesWhosePersonIsLostAreTheOnlyOnes_data()
    {
        QTest::addColumn<QString>("sql");

        QTest::newRow("the row is gone") << "DROP TRIGGER person_is_only_erased; DELETE FROM person";
        QTest::newRow("the ref is another") << "DROP TRIGGER person_is_never_renamed; UPDATE person SET ref = 'somebody else'";
    }

    void i1_entriesWhosePersonIsLostAreTheOnlyOnes()
    {
        QFETCH(QString, sql);
        keep(diary(), facts(0, 10));
        back(kEarlier);
        keep(diary(), facts(10, 5));
        tamper(storeFile(diary()), sql.toStdString());

        const auto report = restore(diary(), kNow);

        QCOMPARE(report->back, 15);
        QVERIFY(!report->missing);
        QCOMPARE(opened(diary()).persons().value(), std::vector<std::string>{kRef});
        QCOMPARE(kept(diary()).entries, byId(facts(0, 15)));
    }

    void i2_entriesOfALostPersonAreNotGivenToOneOfSeveral()
    {
        keep(diary(), facts(0, 10));
        keep(diary(), facts(20, 1), kOtherRef);
        back(kEarlier);
        keep(diary(), facts(10, 5));
        tamper(storeFile(diary()), "DROP TRIGGER person_is_only_erased; DELETE FROM person WHERE person = 1");

        const auto report = restore(diary(), kNow);

        QVERIFY(!report->missing);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 10)));
        QCOMPARE(kept(diary(), kOtherRef).entries, byId(facts(20, 1)));
    }

    void i2_whatNoCopyHoldsIsCounted()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        keep(diary(), facts(10, 10));
        tamper(storeFile(diary()),
            "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}' WHERE id >= 'fact-000008' AND id < 'fact-000013'");

        const auto report = restore(diary(), kNow);

        QCOMPARE(report->back, 17);
        QCOMPARE(report->missing.value_or(-1), 3);
        QVERIFY(kept(diary()).isWhole());
    }

    void i2_whatWasErasedDoesNotMakeUpForWhatIsMissing()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        QCOMPARE(opened(diary()).eraseChain(kRef, fact(4).id).value(), 1);
        keep(diary(), facts(10, 2));
        tamper(storeFile(diary()), "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}' WHERE id = 'fact-000010'");

        QCOMPARE(restore(diary(), kNow)->missing.value_or(-1), 1);
    }

    void i2_nothingIsCountedWhereTheStoreCannotSay()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        overwrite(storeFile(diary()), 0, 4096);

        QVERIFY(!restore(diary(), kNow)->missing);
    }

    void aBackupThatCannotBeReadIsNotTheOneSince()
    {
        keep(diary(), facts(0, 10));
        back(kEarlier);
        const fs::path newer = back(kNow);
        fs::resize_file(newer, 4096);

        QCOMPARE(restore(diary(), kNow)->sinceBackup, std::string("2026-11-25T170351Z"));
    }

    void nothingToRestoreFromIsMissing()
    {
        QCOMPARE(outcome(restore(*m_folder / "nowhere", kNow)), "Missing");
        keep(diary(), facts(0, 3));
        overwrite(storeFile(diary()), 0, 4096);
        const auto before = bytesBelow(diary());

        QCOMPARE(outcome(restore(diary(), kNow)), "Missing");

        QVERIFY(bytesBelow(diary()) == before);
    }

    void aNewerStoreIsNotRestored()
    {
        keep(diary(), facts(0, 3));
        tamper(storeFile(diary()), "PRAGMA user_version=99");
        const auto before = bytesBelow(diary());

        QCOMPARE(outcome(restore(diary(), kNow)), "Newer");

        QVERIFY(bytesBelow(diary()) == before);
    }

    void anOpenStoreIsBusy()
    {
        keep(diary(), facts(0, 3));
        const DiaryStore store = opened(diary());

        QCOMPARE(outcome(restore(diary(), kNow)), "Busy");

        QCOMPARE(namesIn(diary()).c_str(), "ballast diary.db diary.db-wal");
    }

    void i3_theOldFilesAreKeptAside()
    {
        keep(diary(), facts(0, 3));
        back(kEarlier);
        runToItsDeath(diary(), 3, 3);
        overwrite(storeFile(diary()), 0, 100);
        const auto before = bytesBelow(diary());

        QCOMPARE(outcome(restore(diary(), kNow)), "done");

        const auto aside = bytesBelow(keptFolder(diary()));
        QCOMPARE(namesIn(keptFolder(diary())).c_str(), "2026-11-25T180351+0000.db 2026-11-25T180351+0000.db-wal");
        QVERIFY(aside.at("2026-11-25T180351+0000.db") == before.at("diary.db"));
        QVERIFY(aside.at("2026-11-25T180351+0000.db-wal") == before.at("diary.db-wal"));
        QCOMPARE(namesIn(diary()).c_str(), "backups ballast diary.db kept");
        struct stat status
        {
        };
        for (const fs::path &file : {storeFile(diary()), keptFolder(diary()) / "2026-11-25T180351+0000.db"}) {
            QCOMPARE(::stat(file.c_str(), &status), 0);
            QCOMPARE(status.st_mode & 0777, 0600U);
        }
    }

    void i3_whatIsKeptAsideIsNotWrittenOver()
    {
        keep(diary(), facts(0, 3));
        back(kEarlier);
        overwrite(storeFile(diary()), 0, 100);
        const auto damaged = bytesBelow(diary()).at("diary.db");
        QCOMPARE(outcome(restore(diary(), kNow)), "done");

        QCOMPARE(outcome(restore(diary(), kNow)), "done"); // in the same second

        QCOMPARE(namesIn(keptFolder(diary())).c_str(), "2026-11-25T180351+0000-2.db 2026-11-25T180351+0000.db");
        QVERIFY(bytesBelow(keptFolder(diary())).at("2026-11-25T180351+0000.db") == damaged);
    }

    void i3_whatCannotBeKeptAsideIsNotReplaced()
    {
        keep(diary(), facts(0, 3));
        back(kEarlier);
        overwrite(storeFile(diary()), 0, 100);
        std::ofstream(keptFolder(diary())) << "in the way";
        const auto before = bytesBelow(diary());

        QCOMPARE(outcome(restore(diary(), kNow)), "Io");

        QVERIFY(bytesBelow(diary()) == before);
    }

    // A journal that is hot would be played back over the restored store.
    void anOldJournalIsNotPlayedBackOverTheNewStore()
    {
        keep(diary(), facts(0, 3));
        back(kEarlier);
        overwrite(storeFile(diary()), 0, 100);
        std::ofstream(storeFile(diary()).string() + "-journal") << "whatever it held";

        QCOMPARE(outcome(restore(diary(), kNow)), "done");

        QCOMPARE(namesIn(diary()).c_str(), "backups ballast diary.db kept");
    }

    void i4_restoringAgainGivesTheSame()
    {
        keep(diary(), facts(0, 20));
        back(kEarlier);
        overwrite(storeFile(diary()), 4096, 4096);
        const auto first = restore(diary(), kNow);
        QCOMPARE(first->back, 20);

        const auto again = restore(diary(), kNow);

        QCOMPARE(again->back, 20);
        QVERIFY(again->missing == first->missing);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 20)));
    }

    // Between taking away the old log and putting the new file in its place, the old store is one
    // that lacks its last entries and says nothing of it.
    void i4_aStoreWhoseRestoringWasCutIsNotOpened()
    {
        keep(diary(), facts(0, 20));
        fs::copy_file(storeFile(diary()), restoredFile(diary()));
        keep(*m_folder / "old", facts(0, 5));
        fs::copy_file(storeFile(*m_folder / "old"), storeFile(diary()), fs::copy_options::overwrite_existing);

        QCOMPARE(outcome(DiaryStore::open(diary(), {})), "Damaged");
        QCOMPARE(outcome(DiaryStore::openToRead(diary(), {})), "Damaged");

        QCOMPARE(restore(diary(), kNow)->back, 20);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 20)));
        QVERIFY(!fs::exists(restoredFile(diary())));
    }

private:
    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }

    fs::path back(const Moment &now)
    {
        DiaryStore store = opened(diary());
        return makeBackup(store.database()->connection(), diary(), now).value();
    }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_restore)
#include "tst_restore.moc"
