// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/open.h"
#include "core/store/kept_diary.h"
#include "store/backup.h"

#include <fstream>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

/// A diary is opened for one person, holds in memory what the store holds, and is backed up when it changed.
class tst_open_diary : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
    }

    void aNewDiaryKeepsTheNameOfItsPerson()
    {
        std::string name;
        {
            auto diary = OpenDiary::open(path()).value();
            name = diary.person();
            QCOMPARE(outcome(diary.add(facts(0, 3))), "done");
        }

        QCOMPARE(OpenDiary::open(path())->person(), name);
        QCOMPARE(OpenDiary::openToRead(path())->entries(), byId(facts(0, 3)));
        QVERIFY(OpenDiary::open(*m_folder / "other")->person() != name);
    }

    void ofSeveralPersonsOneHasToBeNamed()
    {
        keep(path(), facts(0, 3));
        keep(path(), facts(3, 2), kOtherRef);

        QCOMPARE(outcome(OpenDiary::open(path())), "Refused");
        QCOMPARE(outcome(OpenDiary::openToRead(path())), "Refused");

        QCOMPARE(OpenDiary::open(path(), kOtherRef)->entries(), byId(facts(3, 2)));
        QCOMPARE(OpenDiary::openToRead(path(), kRef)->entries(), byId(facts(0, 3)));
    }

    void readingMakesNoStore()
    {
        QCOMPARE(outcome(OpenDiary::openToRead(path())), "Missing");

        QVERIFY(!fs::exists(path()));
    }

    void theFoldedDiaryFollowsWhatIsAdded()
    {
        auto diary = OpenDiary::open(path()).value();
        const auto isFolded = [&] { return diary.diary().entries().size() == diary.entries().size(); };
        QVERIFY(isFolded());

        QCOMPARE(outcome(diary.add(facts(0, 3))), "done");

        QVERIFY(isFolded());
        QCOMPARE(diary.entries().size(), std::size_t(3));
        QCOMPARE(diary.reading().counted, std::int64_t(3));
    }

    void whatIsKnownIsNotTakenInTwice()
    {
        auto diary = OpenDiary::open(path()).value();
        QCOMPARE(diary.add(facts(0, 3))->added, 3);

        const auto again = diary.add(facts(1, 3));

        QCOMPARE(again->added, 1);
        QCOMPARE(again->known, 2);
        QCOMPARE(diary.entries(), byId(facts(0, 4)));
    }

    void whatIsRefusedChangesNothingInMemory()
    {
        auto diary = OpenDiary::open(path()).value();
        QCOMPARE(diary.add(facts(0, 3))->added, 3);
        Entry other = fact(1);
        other.body = "{}";

        QCOMPARE(outcome(diary.add({fact(7), other})), "Refused");

        QCOMPARE(diary.entries(), byId(facts(0, 3)));
    }

    void idsGoOnAfterThoseInTheStore()
    {
        std::string last;
        {
            auto diary = OpenDiary::open(path()).value();
            Entry entry = fact(0);
            entry.id = last = diary.nextId(kNow.utcMs);
            QCOMPARE(outcome(diary.add({entry})), "done");
        }

        // The clock was set back meanwhile.
        QVERIFY(OpenDiary::open(path())->nextId(kNow.utcMs - 3'600'000) > last);
    }

    void aBackupIsMadeOfWhatChangedAndOfNothingElse()
    {
        auto diary = OpenDiary::open(path()).value();
        QCOMPARE(outcome(diary.backUp(kNow)), "done");
        QCOMPARE(backupsIn(path()).size(), std::size_t(0));

        QCOMPARE(outcome(diary.add(facts(0, 3))), "done");
        QCOMPARE(outcome(diary.backUp(kNow)), "done");
        QCOMPARE(outcome(diary.backUp({kNow.utcMs + 3'600'000, 60})), "done");

        QCOMPARE(backupsIn(path()).size(), std::size_t(1));
        QVERIFY(canBeReadWhole(backupsIn(path())[0]));
    }

    void backupsOfManyDaysAreRotated()
    {
        auto diary = OpenDiary::open(path()).value();
        for (int number = 0; number < 60; ++number) {
            QCOMPARE(outcome(diary.add(facts(number, 1))), "done");
            QCOMPARE(outcome(diary.backUp({kNow.utcMs + number * 86'400'000LL, 60})), "done");
        }

        QVERIFY(backupsIn(path()).size() <= 7 + 4);
        QVERIFY(backupsIn(path()).size() >= 7 + 2);
    }

    void whatIsLeftOfAStoreTellsOfIt_data()
    {
        QTest::addColumn<QString>("left");

        for (const char *left : {"diary.db", "ballast", "restored.db", "backups/2026-11-25T180351Z.db", "kept/2026-11-25T180351+0000.db"})
            QTest::newRow(left) << left;
    }

    void whatIsLeftOfAStoreTellsOfIt()
    {
        QFETCH(QString, left);
        const fs::path file = path() / left.toStdString();
        fs::create_directories(file.parent_path());
        std::ofstream(file) << "something";
        const auto before = bytesBelow(path());

        QVERIFY(storeIsAt(path()));
        if (left != QStringLiteral("diary.db")) {
            QCOMPARE(outcome(OpenDiary::open(path())), "Damaged");
            QCOMPARE(outcome(OpenDiary::openToRead(path())), "Damaged");
        }

        QVERIFY(bytesBelow(path()) == before);
    }

    void aFolderOfOtherThingsIsNoStore_data()
    {
        QTest::addColumn<QString>("file");

        for (const char *file : {"sets.csv", "backups/letters.tar", "kept/a ticket.png", "ballast/stones.txt"})
            QTest::newRow(file) << file;
    }

    void aFolderOfOtherThingsIsNoStore()
    {
        QFETCH(QString, file);
        const fs::path other = path() / file.toStdString();
        fs::create_directories(other.parent_path());
        std::ofstream(other) << "something";

        QVERIFY(!storeIsAt(path()));
        QVERIFY(!storeIsAt(*m_folder / "nowhere"));
        QCOMPARE(outcome(OpenDiary::open(path())), "NotADiary");
        QCOMPARE(outcome(OpenDiary::openToRead(path())), "Missing");
    }

private:
    [[nodiscard]] fs::path path() const { return *m_folder / "diary"; }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_open_diary)
#include "tst_open_diary.moc"
