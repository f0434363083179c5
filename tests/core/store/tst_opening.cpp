// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "core/store/second_program.h"

#include "store/backup.h"

#include <fstream>
#include <sys/stat.h>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

int modeOf(const fs::path &path)
{
    struct stat status
    {
    };
    return ::stat(path.c_str(), &status) == 0 ? static_cast<int>(status.st_mode & 0777) : -1;
}

void write(const fs::path &path, const std::string &bytes)
{
    fs::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << bytes;
}

/// The steps of a program that is one version ahead.
const std::string kNextSql = "CREATE TABLE later (x INTEGER) STRICT";
std::vector<SchemaStep> newerSteps()
{
    std::vector<SchemaStep> steps(schemaSteps().begin(), schemaSteps().end());
    steps.push_back({steps.back().version + 1, kNextSql});
    return steps;
}

} // namespace

/// A store is opened if it is one of ours, if nobody else has it and if it is not newer; nothing else is touched.
class tst_opening : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aNewStoreIsForItsUserOnly()
    {
        const ScratchFolder folder;
        const fs::path diary = folder / "share" / "morrow";

        DiaryStore store = opened(diary);
        QVERIFY(store.add(kRef, facts(0, 1)).has_value());

        QCOMPARE(modeOf(folder / "share"), 0700);
        QCOMPARE(modeOf(diary), 0700);
        QCOMPARE(namesIn(diary).c_str(), "ballast diary.db diary.db-wal");
        for (const char *file : {"ballast", "diary.db", "diary.db-wal"})
            QCOMPARE(modeOf(diary / file), 0600);
    }

    void closingLeavesOneFile()
    {
        const ScratchFolder folder;

        keep(folder / "diary", facts(0, 3));

        QCOMPARE(namesIn(folder / "diary").c_str(), "ballast diary.db");
    }

    void aHomeBehindALinkIsOpened()
    {
        const ScratchFolder folder;
        fs::create_directory(folder / "disk");
        fs::create_symlink(folder / "disk", folder / "home");

        keep(folder / "home" / "diary", facts(0, 3));

        QCOMPARE(kept(folder / "disk" / "diary").entries.size(), std::size_t(3));
    }

    void aStoreFileThatIsALinkIsRefused()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 3));
        fs::create_directory(folder / "trap");
        fs::create_symlink(folder / "diary" / "diary.db", folder / "trap" / "diary.db");

        QCOMPARE(outcome(DiaryStore::open(folder / "trap", {})), "Io");
    }

    void whatIsNoDiaryIsRefusedAndUntouched_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QByteArray>("bytes");

        QTest::newRow("a text in the store's place") << "diary.db" << QByteArray("Dear diary, today I was in pain.\n").repeated(40);
        QTest::newRow("a short text") << "diary.db" << QByteArray("x");
        QTest::newRow("a folder of other things") << "holiday.jpg" << QByteArray("\xff\xd8\xff");
        QTest::newRow("a folder with a log alone") << "diary.db-wal" << QByteArray();
    }

    void whatIsNoDiaryIsRefusedAndUntouched()
    {
        QFETCH(QString, name);
        QFETCH(QByteArray, bytes);
        const ScratchFolder folder;
        write(folder / name.toStdString(), bytes.toStdString());
        const auto before = bytesBelow(folder.path());

        QCOMPARE(outcome(DiaryStore::open(folder.path(), {})), "NotADiary");
        (void)DiaryStore::openToRead(folder.path(), {});

        QVERIFY(bytesBelow(folder.path()) == before);
    }

    void i2_aForeignDatabaseIsRefusedAndUntouched_data()
    {
        QTest::addColumn<QString>("mode");
        QTest::addColumn<bool>("isKilled");

        QTest::newRow("with a rollback journal") << "DELETE" << false;
        QTest::newRow("with a log") << "WAL" << false;
        QTest::newRow("with a log that was not closed") << "WAL" << true;
    }

    void i2_aForeignDatabaseIsRefusedAndUntouched()
    {
        QFETCH(QString, mode);
        QFETCH(bool, isKilled);
        const ScratchFolder folder;
        const std::string sql = "PRAGMA journal_mode=" + mode.toStdString() + "; CREATE TABLE entry(x); INSERT INTO entry VALUES (1)";
        fs::create_directory(folder / "diary");
        {
            SQLite::Database foreign((folder / "made.db").string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            foreign.exec(sql);
            foreign.exec("PRAGMA wal_checkpoint; INSERT INTO entry VALUES (2)");
            if (isKilled) { // a copy of it while open is what a killed program leaves
                fs::copy_file(folder / "made.db-wal", folder / "diary" / "diary.db-wal");
                fs::copy_file(folder / "made.db", folder / "diary" / "diary.db");
            }
        }
        if (!isKilled)
            fs::copy_file(folder / "made.db", folder / "diary" / "diary.db");
        const auto before = bytesBelow(folder / "diary");

        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "NotADiary");
        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "NotADiary");

        QVERIFY(bytesBelow(folder / "diary") == before);
    }

    void i4_aNewerStoreIsReadAndNeverWritten_data()
    {
        QTest::addColumn<bool>("isKilled");

        QTest::newRow("closed") << false;
        QTest::newRow("not closed") << true;
    }

    void i4_aNewerStoreIsReadAndNeverWritten()
    {
        QFETCH(bool, isKilled);
        const ScratchFolder folder;
        const auto steps = newerSteps();
        {
            auto newer = DiaryStore::open(folder / "made", {.steps = steps});
            QVERIFY(newer->add(kRef, facts(0, 5)).has_value());
            if (isKilled)
                fs::copy(folder / "made", folder / "diary");
        }
        if (!isKilled)
            fs::copy(folder / "made", folder / "diary");
        const auto before = bytesBelow(folder / "diary");
        QCOMPARE(before.contains("diary.db-wal"), isKilled);

        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "Newer");
        {
            auto store = DiaryStore::openToRead(folder / "diary", {});
            QVERIFY(store->isNewer());
            QCOMPARE(store->read(kRef)->entries, byId(facts(0, 5)));
            QCOMPARE(outcome(store->add(kRef, facts(5, 1))), "Newer");
            QCOMPARE(outcome(store->eraseChain(kRef, fact(0).id)), "Newer");
            QCOMPARE(outcome(store->checkpoint()), "Newer");
        }

        QVERIFY(bytesBelow(folder / "diary") == before);
    }

    void i5_readingLeavesTheFolderAsItWas_data()
    {
        QTest::addColumn<bool>("isKilled");

        QTest::newRow("closed") << false;
        QTest::newRow("not closed") << true;
    }

    void i5_readingLeavesTheFolderAsItWas()
    {
        QFETCH(bool, isKilled);
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 5));
        if (isKilled)
            runToItsDeath(folder / "diary", 5, 3);
        const auto before = bytesBelow(folder / "diary");

        QCOMPARE(kept(folder / "diary").entries, byId(facts(0, isKilled ? 8 : 5)));

        QVERIFY(bytesBelow(folder / "diary") == before);
    }

    void whatAKilledProgramSavedIsThere()
    {
        const ScratchFolder folder;

        runToItsDeath(folder / "diary", 0, 20);

        DiaryStore store = opened(folder / "diary");
        QCOMPARE(store.read(kRef)->entries, byId(facts(0, 20)));
        QVERIFY(store.read(kRef)->isWhole());
    }

    void i6_aSecondProgramIsToldThatTheStoreIsBusy()
    {
        const ScratchFolder folder;
        DiaryStore store = opened(folder / "diary");

        QCOMPARE(outcomeElsewhere("open", folder / "diary").c_str(), "Busy");
        QCOMPARE(outcomeElsewhere("read", folder / "diary").c_str(), "Busy");
        QCOMPARE(outcomeElsewhere("restore", folder / "diary").c_str(), "Busy");

        QVERIFY(store.add(kRef, facts(0, 1)).has_value());
    }

    void i6_theStoreIsFreeWhenTheFirstProgramHasClosed()
    {
        const ScratchFolder folder;

        keep(folder / "diary", facts(0, 1));

        QCOMPARE(outcomeElsewhere("open", folder / "diary").c_str(), "done");
    }

    void readersDoNotKeepReadersOut()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 2));
        const auto store = DiaryStore::openToRead(folder / "diary", {});

        QCOMPARE(outcomeElsewhere("read", folder / "diary").c_str(), "done");
        QCOMPARE(outcomeElsewhere("open", folder / "diary").c_str(), "Busy");

        QVERIFY(store.has_value());
    }

    void aStoreThatIsGoneIsNoFirstStart()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 2));
        {
            DiaryStore store = opened(folder / "diary");
            QVERIFY(makeBackup(store.database()->connection(), folder / "diary", kNow).has_value());
        }

        fs::remove(folder / "diary" / "diary.db");

        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "Damaged");
        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "Damaged");
        QVERIFY(!fs::exists(folder / "diary" / "diary.db"));
    }

    void aStoreThatIsEmptyIsNoFirstStart()
    {
        const ScratchFolder folder;
        keep(folder / "diary", facts(0, 2));

        fs::resize_file(folder / "diary" / "diary.db", 0);

        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "Damaged");
        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "Damaged");
        QCOMPARE(fs::file_size(folder / "diary" / "diary.db"), std::uintmax_t(0));
        fs::remove(folder / "diary" / "diary.db");
        QCOMPARE(outcome(DiaryStore::open(folder / "diary", {})), "Damaged");
        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "Damaged");
    }

    // A program that was killed after making the file, and before anything else, leaves no store behind.
    void anEmptyFileThatNothingTellsOfIsAFirstStart()
    {
        const ScratchFolder folder;
        write(folder / "diary" / "diary.db", "");

        keep(folder / "diary", facts(0, 2));

        QCOMPARE(kept(folder / "diary").entries, byId(facts(0, 2)));
    }

    void nothingToReadIsMissing()
    {
        const ScratchFolder folder;

        QCOMPARE(outcome(DiaryStore::openToRead(folder / "diary", {})), "Missing");

        QVERIFY(!fs::exists(folder / "diary"));
    }

    void theBallastTakesRealSpaceAndIsMadeAgain()
    {
        const ScratchFolder folder;
        keep(folder / "diary", {});
        struct stat status
        {
        };
        QCOMPARE(::stat((folder / "diary" / "ballast").c_str(), &status), 0);
        QCOMPARE(status.st_size, off_t(1024 * 1024));
        QVERIFY(status.st_blocks * 512 >= 1024 * 1024);

        fs::remove(folder / "diary" / "ballast");
        keep(folder / "diary", {});

        QVERIFY(fs::exists(folder / "diary" / "ballast"));
    }
};

MORROW_SUITE(tst_opening)
#include "tst_opening.moc"
