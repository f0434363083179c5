// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/open.h"
#include "actions/restore.h"
#include "core/store/kept_diary.h"

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

/// What a person is told to do when the diary is damaged does what they were told.
class tst_restoring : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        auto diary = OpenDiary::open(path(), kRef).value();
        QCOMPARE(outcome(diary.add(facts(0, 10))), "done");
        QCOMPARE(outcome(diary.backUp(kNow)), "done");
        QCOMPARE(outcome(diary.add(facts(10, 2))), "done");
    }

    void aLostStoreIsDamagedUntilItIsRestored()
    {
        fs::remove(path() / "diary.db");
        QCOMPARE(outcome(OpenDiary::open(path())), "Damaged");

        const auto report = restoreDiary(path(), kNow);

        QCOMPARE(outcome(report), "done");
        QCOMPARE(report->back, 10);
        QVERIFY(!report->missing); // nobody can say what came after the backup
        QCOMPARE(report->sinceBackup, std::string("2026-11-25T180351Z"));
        auto diary = OpenDiary::open(path()).value();
        QCOMPARE(diary.person(), std::string(kRef));
        QCOMPARE(diary.entries(), byId(facts(0, 10)));
        QCOMPARE(outcome(diary.add(facts(20, 1))), "done");
    }

    void aDamagedEntryReachesNoDiaryAndIsBackFromTheBackup()
    {
        tamper(path() / "diary.db",
            "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}' WHERE id = 'fact-000004';"
            "CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry\nBEGIN SELECT RAISE(ABORT, 'an entry is "
            "never changed'); END");
        {
            const auto diary = OpenDiary::openToRead(path()).value();
            QVERIFY(!diary.reading().isWhole());
            QCOMPARE(diary.entries().size(), std::size_t(11));
        }

        const auto report = restoreDiary(path(), kNow);

        QCOMPARE(report->back, 12);
        QVERIFY(report->missing == 0);
        QCOMPARE(OpenDiary::openToRead(path())->entries(), byId(facts(0, 12)));
    }

    void whatWasErasedStaysErased()
    {
        {
            auto store = opened(path());
            QCOMPARE(store.eraseChain(kRef, fact(4).id).value(), 1); // the backup still holds it
        }

        QCOMPARE(restoreDiary(path(), kNow)->back, 11);

        auto diary = OpenDiary::open(path()).value();
        QCOMPARE(diary.add(facts(4, 1))->erased, 1);
        QCOMPARE(diary.entries().size(), std::size_t(11));
    }

    void anOpenDiaryIsNotRestored()
    {
        const auto diary = OpenDiary::open(path()).value();

        QCOMPARE(outcome(restoreDiary(path(), kNow)), "Busy");
    }

    void whereThereIsNothingNothingIsMade()
    {
        QCOMPARE(outcome(restoreDiary(*m_folder / "nowhere", kNow)), "Missing");

        QVERIFY(!fs::exists(*m_folder / "nowhere"));
    }

private:
    [[nodiscard]] fs::path path() const { return *m_folder / "diary"; }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_restoring)
#include "tst_restoring.moc"
