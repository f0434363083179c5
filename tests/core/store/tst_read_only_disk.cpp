// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "core/store/second_program.h"
#include "core/store/small_disk.h"
#include "store/backup.h"
#include "store/erase.h"
#include "store/restore.h"

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

/// A disk that takes no writing still shows every entry. Needs root, for a real mount.
class tst_read_only_disk : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void everyEntryIsShown_data()
    {
        QTest::addColumn<bool>("isKilled");

        QTest::newRow("cleanly closed before") << false;
        QTest::newRow("killed before") << true;
    }

    void everyEntryIsShown()
    {
        QFETCH(bool, isKilled);
        SmallDisk disk(8 << 20);
        if (!disk.isMounted())
            QSKIP("needs root, to mount a disk");
        keep(disk.path() / "diary", facts(0, 30));
        if (isKilled)
            runToItsDeath(disk.path() / "diary", 30, 10);
        QVERIFY(disk.setReadOnly(true));
        const auto before = bytesBelow(disk.path());
        QCOMPARE(before.contains("diary/diary.db-wal"), isKilled);
        const ScratchFolder temporary;
        qputenv("XDG_RUNTIME_DIR", temporary.path().c_str());

        {
            auto store = DiaryStore::openToRead(disk.path() / "diary", {});
            QCOMPARE(outcome(store), "done");
            QCOMPARE(store->read(kRef)->entries, byId(facts(0, isKilled ? 40 : 30)));
            QVERIFY(store->read(kRef)->isWhole());
            QCOMPARE(outcome(store->add(kRef, facts(50, 1))), "ReadOnly");
            QCOMPARE(outcome(store->eraseChain(kRef, fact(1).id)), "ReadOnly");
        }

        QVERIFY(bytesBelow(disk.path()) == before);
        QVERIFY2(fs::is_empty(temporary.path()), "a private copy was left behind");
    }

    void openingToWriteIsRefused_data() { everyEntryIsShown_data(); }

    void openingToWriteIsRefused()
    {
        QFETCH(bool, isKilled);
        SmallDisk disk(8 << 20);
        if (!disk.isMounted())
            QSKIP("needs root, to mount a disk");
        keep(disk.path() / "diary", facts(0, 3));
        if (isKilled)
            runToItsDeath(disk.path() / "diary", 3, 3);
        QVERIFY(disk.setReadOnly(true));

        QCOMPARE(outcome(DiaryStore::open(disk.path() / "diary", {})), "ReadOnly");
        QCOMPARE(outcome(DiaryStore::open(disk.path() / "new", {})), "ReadOnly");
        QCOMPARE(outcome(restore(disk.path() / "diary", kNow)), "ReadOnly");
        QCOMPARE(outcome(eraseStore(disk.path() / "diary")), "ReadOnly");
    }
};

MORROW_SUITE(tst_read_only_disk)
#include "tst_read_only_disk.moc"
