// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "store/backup.h"
#include "store/erase.h"
#include "store/restore.h"

#include <algorithm>
#include <fstream>
#include <random>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// Words that nothing else says.
const std::string kCanary = "canary-5f0e7c1b93";

/// The files below \a folder that hold the canary's bytes.
std::string filesWithCanary(const fs::path &folder)
{
    std::string names;
    for (const auto &[name, bytes] : bytesBelow(folder)) {
        if (bytes.find(kCanary) != std::string::npos)
            names += (names.empty() ? "" : " ") + name;
    }
    return names;
}

} // namespace

/// Named after the invariants of erase.h.
class tst_erase : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
    }

    void i1_noByteOfTheNoteIsLeftInAnyFile()
    {
        keep(diary(), facts(0, 200));
        DiaryStore store = opened(diary());
        QVERIFY(store.add(kRef, {{note(1, kCanary)}}).has_value());
        for (int hours = 3; hours > 0; --hours)
            back(store, hours);
        fs::create_directory(keptFolder(diary()));
        QVERIFY(store.checkpoint().has_value());
        fs::copy_file(storeFile(diary()), keptFolder(diary()) / "2026-11-01T000000Z.db");
        fs::copy_file(storeFile(diary()), unfinishedFile(diary()));
        fs::copy_file(storeFile(diary()), backupFolder(diary()) / ".2026-11-25T180351Z.part");
        QVERIFY(store.add(kRef, {{correctionOf(note(1, kCanary), 2)}}).has_value());
        QCOMPARE(filesWithCanary(diary()).c_str(),
            "backups/.2026-11-25T180351Z.part backups/2026-11-25T150351Z.db backups/2026-11-25T160351Z.db backups/2026-11-25T170351Z.db "
            "diary.db diary.db-wal kept/2026-11-01T000000Z.db restored.part");

        const auto erased = eraseNote(store, kRef, note(1, "").id, kNow);

        QCOMPARE(outcome(erased), "done");
        QCOMPARE(*erased, 2);
        QCOMPARE(filesWithCanary(diary()).c_str(), "");
        QCOMPARE(store.read(kRef)->entries, byId(facts(0, 200)));
        QVERIFY(store.read(kRef)->isWhole());
        QCOMPARE(backupsIn(diary()).size(), std::size_t(1));
        QVERIFY(canBeReadWhole(backupsIn(diary())[0]));
    }

    // Pages that were split hold what was moved off them in the space they do not use.
    void i1_noByteIsLeftWhereEntriesWereMoved_data()
    {
        QTest::addColumn<int>("seed");

        for (const int seed : {1, 2, 4}) // left something before the store was written anew after erasing
            QTest::addRow("order %d", seed) << seed;
    }

    void i1_noByteIsLeftWhereEntriesWereMoved()
    {
        QFETCH(int, seed);
        DiaryStore store = opened(diary());
        std::vector<int> order(300);
        for (int i = 0; i < 300; ++i)
            order[static_cast<std::size_t>(i)] = i;
        std::shuffle(order.begin(), order.end(), std::mt19937(static_cast<unsigned>(seed)));
        for (const int i : order)
            QVERIFY(store
                        .add(kRef,
                            {{note(i,
                                (i % 3 == 0 ? kCanary : std::string("plain")) + std::string(static_cast<std::size_t>(i * 7 % 900), '.'))}})
                        .has_value());

        for (const int i : order) {
            if (i % 3 == 0)
                QCOMPARE(eraseNote(store, kRef, note(i, "").id, kNow).value(), 1);
        }

        QCOMPARE(filesWithCanary(diary()).c_str(), "");
        QCOMPARE(store.read(kRef)->entries.size(), std::size_t(200));
        QVERIFY(store.read(kRef)->isWhole());
    }

    void i1_aLongNoteLeavesNothingOnItsPages()
    {
        DiaryStore store = opened(diary());
        std::string text;
        while (text.size() < 50000)
            text += kCanary + ' ';
        QVERIFY(store.add(kRef, {{note(1, text), fact(2)}}).has_value());

        QCOMPARE(eraseNote(store, kRef, note(1, "").id, kNow).value(), 1);

        QCOMPARE(filesWithCanary(diary()).c_str(), "");
    }

    void i1_theWholeChainGoes_data()
    {
        QTest::addColumn<QString>("id");

        QTest::newRow("named by the first") << "note-000001";
        QTest::newRow("named by one between") << "correction-000002";
        QTest::newRow("named by the last") << "correction-000003";
    }

    void i1_theWholeChainGoes()
    {
        QFETCH(QString, id);
        const Entry first = note(1, kCanary + " one");
        const Entry second = correctionOf(first, 2);
        const Entry third = correctionOf(second, 3);
        keep(diary(), {fact(0), first, second, third});
        DiaryStore store = opened(diary());

        QCOMPARE(eraseNote(store, kRef, id.toStdString(), kNow).value(), 3);

        QCOMPARE(store.read(kRef)->entries, std::vector{fact(0)});
        QCOMPARE(store.read(kRef)->erased.size(), std::size_t(3));
        QCOMPARE(filesWithCanary(diary()).c_str(), "");
    }

    void i1_aLaterRestoreDoesNotBringItBack()
    {
        keep(diary(), facts(0, 10));
        fs::path copy = *m_folder / "a copy that somebody kept.db";
        {
            DiaryStore store = opened(diary());
            QVERIFY(store.add(kRef, {{note(1, kCanary)}}).has_value());
            fs::copy_file(back(store, 1), copy);
            QCOMPARE(eraseNote(store, kRef, note(1, "").id, kNow).value(), 1);
        }
        fs::copy_file(copy, backupFolder(diary()) / "2026-11-25T230000Z.db");
        tamper(storeFile(diary()), "UPDATE person SET sum = zeroblob(32)");

        QCOMPARE(restore(diary(), kNow)->back, 10);

        QCOMPARE(kept(diary()).entries, byId(facts(0, 10)));
        DiaryStore store = opened(diary());
        QCOMPARE(store.add(kRef, {{note(1, kCanary)}})->erased, 1);
    }

    void i2_erasingThatWasCutIsFinishedWhenAskedAgain()
    {
        keep(diary(), facts(0, 10));
        DiaryStore store = opened(diary());
        QVERIFY(store.add(kRef, {{note(1, kCanary)}}).has_value());
        back(store, 1);
        QCOMPARE(store.eraseChain(kRef, note(1, "").id).value(), 1); // cut here: the backup still holds it
        QVERIFY(!filesWithCanary(diary()).empty());

        QCOMPARE(eraseNote(store, kRef, note(1, "").id, kNow).value(), 0);

        QCOMPARE(filesWithCanary(diary()).c_str(), "");
        QCOMPARE(backupsIn(diary()).size(), std::size_t(1));
    }

    void i1_whatARestoreLeftGoesToo()
    {
        keep(diary(), {fact(0), note(1, kCanary)});
        DiaryStore store = opened(diary());
        for (const fs::path &file : {unfinishedFile(diary()), restoredFile(diary())}) {
            for (const char *ending : {"", "-wal", "-journal"})
                std::ofstream(file.string() + ending) << kCanary;
        }

        QCOMPARE(outcome(eraseNote(store, kRef, note(1, "").id, kNow)), "done");

        QCOMPARE(filesWithCanary(diary()).c_str(), "");
        QCOMPARE(namesIn(diary()).c_str(), "ballast diary.db diary.db-wal");
    }

    void i1_whatCannotBeRemovedIsSaid_data()
    {
        QTest::addColumn<QString>("name");

        for (const char *name : {"restored.part", "restored.db", "restored.part-wal"})
            QTest::newRow(name) << name;
    }

    void i1_whatCannotBeRemovedIsSaid()
    {
        QFETCH(QString, name);
        keep(diary(), {fact(0), note(1, kCanary)});
        {
            DiaryStore store = opened(diary());
            fs::create_directories(diary() / name.toStdString() / "in the way");

            QCOMPARE(outcome(eraseNote(store, kRef, note(1, "").id, kNow)), "Io");
        }
        QCOMPARE(outcome(eraseStore(diary())), "Io");

        fs::remove_all(diary() / name.toStdString());
        QCOMPARE(outcome(eraseStore(diary())), "done");
        QVERIFY(fs::is_empty(diary()));
    }

    void anIdThatNeverWasErasesNothing()
    {
        keep(diary(), facts(0, 10));
        DiaryStore store = opened(diary());
        back(store, 2);
        back(store, 1);

        QCOMPARE(eraseNote(store, kRef, "nothing of that name", kNow).value(), 0);
        QCOMPARE(eraseNote(store, "nobody", fact(1).id, kNow).value(), 0);

        QCOMPARE(backupsIn(diary()).size(), std::size_t(2));
        QCOMPARE(store.read(kRef)->entries.size(), std::size_t(10));
    }

    void damageElsewhereStaysNoticed()
    {
        keep(diary(), facts(0, 10));
        tamper(storeFile(diary()), "UPDATE person SET sum = zeroblob(32)");
        DiaryStore store = opened(diary());

        QCOMPARE(store.eraseChain(kRef, fact(1).id).value(), 1);

        QVERIFY(store.read(kRef)->sumDiffers);
    }

    void aStoreThatIsReadOnlyErasesNothing()
    {
        keep(diary(), facts(0, 10));
        auto store = DiaryStore::openToRead(diary(), {});

        QCOMPARE(outcome(eraseNote(*store, kRef, fact(1).id, kNow)), "ReadOnly");
    }

    void erasingEverythingLeavesNothingOfOurs()
    {
        keep(diary(), {note(1, kCanary)});
        {
            DiaryStore store = opened(diary());
            back(store, 1);
        }
        fs::create_directory(keptFolder(diary()));
        for (const fs::path &file : {keptFolder(diary()) / "2026-11-01T000000Z.db", unfinishedFile(diary()), restoredFile(diary()),
                 fs::path(storeFile(diary()).string() + "-wal")})
            fs::copy_file(storeFile(diary()), file);
        std::ofstream(diary() / "holiday.jpg") << "not ours";

        QVERIFY(eraseStore(diary()).has_value());

        QCOMPARE(namesIn(diary()).c_str(), "holiday.jpg");
    }

private:
    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }
    fs::path back(DiaryStore &store, int hours)
    {
        return makeBackup(store.database()->connection(), diary(), {kNow.utcMs - hours * 3'600'000LL, 60}).value();
    }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_erase)
#include "tst_erase.moc"
