// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "faults/judge.h"

using namespace morrow;
using namespace morrow::test;

namespace {

QString pragma(DiaryStore &store, const char *name)
{
    SQLite::Statement statement(store.database()->connection(), std::string("PRAGMA ") + name);
    return statement.executeStep() ? QString::fromStdString(statement.getColumn(0).getString()) : QString();
}

/// A disk without a write-ahead log, and the life of a diary on it.
Tally lifeWithoutLog(int count, std::uint64_t seed, const char *weakenedBy = nullptr)
{
    DiskVfs vfs(kVfs);
    vfs.setLogless(true);
    const auto lived = live(vfs, lifeOf(48), {.weakenedBy = weakenedBy});
    return Judge(vfs, *lived).judge(count, seed);
}

} // namespace

/// Where SQLite has no write-ahead log, the store falls back to a rollback journal that loses
/// nothing either (database.h I1). The machine's own SQLite always has one, so this is tried on the
/// disk in memory only.
class tst_without_log : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i1_theJournalIsCutShortAndSyncedWithItsFolder()
    {
        DiskVfs vfs(kVfs);
        vfs.setLogless(true);
        Disk disk;
        vfs.mount(&disk);
        auto store = openOnDisk();

        QCOMPARE(outcome(store), "done");
        QCOMPARE(pragma(*store, "journal_mode"), QStringLiteral("truncate"));
        QCOMPARE(pragma(*store, "synchronous"), QStringLiteral("3"));
        QCOMPARE(pragma(*store, "locking_mode"), QStringLiteral("exclusive"));
        QCOMPARE(pragma(*store, "secure_delete"), QStringLiteral("1"));
        QCOMPARE(outcome(store->add(kRef, facts(0, 3))), "done");
        QCOMPARE(outcome(store->checkpoint()), "done");
        QVERIFY(!disk.find("/diary/diary.db-wal"));
        QVERIFY(disk.find("/diary/diary.db-journal"));
    }

    void i1_whatWasAcknowledgedSurvives()
    {
        const int count = amount(1000, 4000, 100'000);

        const Tally tally = lifeWithoutLog(count, 1);

        tally.print("power cut without a log");
        QCOMPARE(tally.example.c_str(), "");
        QVERIFY(tally.states >= count);
    }

    void aJournalThatIsNotSyncedIsSeenToLose()
    {
        const Tally tally = lifeWithoutLog(1000, 2, "PRAGMA synchronous=OFF");

        tally.print("power cut without a log, control synchronous=OFF");
        QVERIFY(tally.broken + tally.half + tally.lost > 0);
    }
};

MORROW_SUITE(tst_without_log)
#include "tst_without_log.moc"
