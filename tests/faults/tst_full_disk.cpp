// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "core/store/small_disk.h"
#include "store/backup.h"
#include "store/erase.h"
#include "store/restore.h"

#include <QProcess>

#include <algorithm>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

const std::string kCanary = "canary-5f0e7c1b93";
constexpr std::uintmax_t kDiskBytes = 6 << 20;
constexpr int kFacts = 2000; ///< so that the store takes a good part of the disk

struct Ended
{
    int status;
    QByteArray err;
};

Ended batch(const QStringList &arguments)
{
    QProcess program;
    program.start(QStringLiteral(MORROW_BATCH), arguments);
    program.closeWriteChannel();
    program.waitForFinished(-1);
    return {program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1, program.readAllStandardError()};
}

} // namespace

/// On a disk without a byte left, or with too few, the diary opens and reads, what cannot be saved is
/// said, nothing half-made stays, and space can be freed. On a real disk of 6 MiB, which needs root;
/// without it, it says that it was not tried.
class tst_full_disk : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_disk = std::make_unique<SmallDisk>(kDiskBytes);
        m_temporary = std::make_unique<ScratchFolder>();
        qputenv("XDG_RUNTIME_DIR", m_temporary->path().c_str());
        m_isTried = m_disk->isMounted();
        if (!m_isTried) {
            qInfo("not tried: this needs root, and the right to mount a file system");
            return;
        }
        keep(diary(), facts(0, kFacts));
        back(2);
    }

    void everythingIsShown()
    {
        if (!m_isTried)
            return;
        m_disk->fill();

        {
            DiaryStore store = opened(diary());
            QCOMPARE(store.read(kRef)->entries, byId(facts(0, kFacts)));
        }
        QCOMPARE(kept(diary()).entries, byId(facts(0, kFacts)));

        QVERIFY(fs::is_empty(m_temporary->path()));
        QCOMPARE(namesIn(diary()).c_str(), "backups ballast diary.db");
    }

    void aKilledProgramsEntriesAreShown()
    {
        if (!m_isTried)
            return;
        // What was recorded and not moved out of the log, as a kill leaves it.
        {
            DiaryStore store = opened(diary());
            QVERIFY(store.add(kRef, facts(kFacts, 5)).has_value());
            fs::copy_file(storeFile(diary()).string() + "-wal", m_disk->path() / "log");
        }
        fs::rename(m_disk->path() / "log", storeFile(diary()).string() + "-wal");
        m_disk->fill();

        QCOMPARE(kept(diary()).entries, byId(facts(0, kFacts + 5)));
        QCOMPARE(opened(diary()).read(kRef)->entries, byId(facts(0, kFacts + 5)));
    }

    void theBallastIsGivenUpForTheNextEntry()
    {
        if (!m_isTried)
            return;
        m_disk->fill();

        {
            DiaryStore store = opened(diary());
            QCOMPARE(outcome(store.add(kRef, facts(kFacts, 1))), "done");
            QVERIFY(!fs::exists(ballastFile(diary())));
        }

        QCOMPARE(kept(diary()).entries, byId(facts(0, kFacts + 1)));
        m_disk->emptyFiller();
        keep(diary(), {});
        QVERIFY(fs::exists(ballastFile(diary())));
    }

    void whatCannotBeSavedIsSaidAndNothingElseIsLost()
    {
        if (!m_isTried)
            return;
        m_disk->fill();
        int acknowledged = kFacts;

        {
            DiaryStore store = opened(diary());
            for (;; acknowledged += 50) {
                const auto added = store.add(kRef, facts(acknowledged, 50));
                if (!added) {
                    QCOMPARE(outcome(added), "Full");
                    break;
                }
            }
            QVERIFY(acknowledged > kFacts); // the ballast
            QCOMPARE(outcome(store.add(kRef, facts(acknowledged, 50))), "Full");
            QCOMPARE(store.read(kRef)->entries, byId(facts(0, acknowledged)));
        }
        QCOMPARE(kept(diary()).entries, byId(facts(0, acknowledged)));

        m_disk->emptyFiller();
        keep(diary(), facts(acknowledged, 50));
        QCOMPARE(kept(diary()).entries, byId(facts(0, acknowledged + 50)));
    }

    void aFirstStartIsRefusedOrWhole_data() { roomLeft(256); }

    void aFirstStartIsRefusedOrWhole()
    {
        if (!m_isTried)
            return;
        QFETCH(int, kibibytes);
        m_disk->fillBut(static_cast<std::uintmax_t>(kibibytes) * 1024);
        const fs::path other = m_disk->path() / "other" / "diary";

        const auto store = DiaryStore::open(other, {});

        QVERIFY2(store || store.error() == StoreError::Full, outcome(store));
        m_disk->emptyFiller();
        if (!store)
            keep(other, facts(0, 3));
    }

    void aBackupIsWholeOrLeavesNothing_data() { roomLeft(1024); }

    void aBackupIsWholeOrLeavesNothing()
    {
        if (!m_isTried)
            return;
        QFETCH(int, kibibytes);
        DiaryStore store = opened(diary());
        m_disk->fillBut(static_cast<std::uintmax_t>(kibibytes) * 1024);
        const std::string before = namesIn(backupFolder(diary()));

        const auto backup = makeBackup(store.database()->connection(), diary(), kNow);

        if (!backup) {
            QCOMPARE(outcome(backup), "Full");
            QCOMPARE(namesIn(backupFolder(diary())), before);
        }
        for (const fs::path &file : backupsIn(diary()))
            QVERIFY(canBeReadWhole(file));
        QCOMPARE(backupsIn(diary()).size(), std::size_t(backup ? 2 : 1));
    }

    void theFirstBackupThatFailsLeavesNoFolder()
    {
        if (!m_isTried)
            return;
        fs::remove_all(backupFolder(diary()));
        DiaryStore store = opened(diary());
        m_disk->fill();

        QCOMPARE(outcome(makeBackup(store.database()->connection(), diary(), kNow)), "Full");

        QVERIFY(!fs::exists(backupFolder(diary())));
    }

    void restoringIsDoneOrLeavesNothing_data() { roomLeft(2048); }

    void restoringIsDoneOrLeavesNothing()
    {
        if (!m_isTried)
            return;
        QFETCH(int, kibibytes);
        tamper(storeFile(diary()), "DROP TRIGGER entry_is_never_changed; UPDATE entry SET body = '{}' WHERE id = 'fact-000100'");
        m_disk->fillBut(static_cast<std::uintmax_t>(kibibytes) * 1024);
        const auto before = bytesBelow(diary());

        const auto restored = restore(diary(), kNow);

        if (!restored) {
            QCOMPARE(outcome(restored), "Full");
            QVERIFY(bytesBelow(diary()) == before);
            QCOMPARE(namesIn(diary()).c_str(), "backups ballast diary.db");
            m_disk->emptyFiller();
            QCOMPARE(outcome(restore(diary(), kNow)), "done");
        }
        QCOMPARE(kept(diary()).entries, byId(facts(0, kFacts)));
    }

    void erasingANoteIsDoneOrSaidNotToBe_data() { roomLeft(2048); }

    void erasingANoteIsDoneOrSaidNotToBe()
    {
        if (!m_isTried)
            return;
        QFETCH(int, kibibytes);
        keep(diary(), {note(1, kCanary)});
        back(1);
        {
            DiaryStore store = opened(diary());
            m_disk->fillBut(static_cast<std::uintmax_t>(kibibytes) * 1024);

            const auto erased = eraseNote(store, kRef, note(1, "").id, kNow);

            if (!erased) {
                QCOMPARE(outcome(erased), "Full");
                for (const fs::path &file : backupsIn(diary()))
                    QVERIFY(canBeReadWhole(file));
                QVERIFY(namesIn(backupFolder(diary())).find(".part") == std::string::npos);
                m_disk->emptyFiller();
                QCOMPARE(outcome(eraseNote(store, kRef, note(1, "").id, kNow)), "done");
            }
        }
        for (const auto &[name, bytes] : bytesBelow(diary()))
            QVERIFY2(bytes.find(kCanary) == std::string::npos, name.c_str());
        QCOMPARE(kept(diary()).entries, byId(facts(0, kFacts)));
    }

    void erasingEverythingFreesTheSpace()
    {
        if (!m_isTried)
            return;
        m_disk->fill();
        const auto before = fs::space(m_disk->path()).available;

        QCOMPARE(outcome(eraseStore(diary())), "done");

        QCOMPARE(before, std::uintmax_t(0));
        QVERIFY(fs::space(m_disk->path()).available > (1 << 20));
        QVERIFY(fs::is_empty(diary()));
    }

    void aDiaryIsExportedElsewhere()
    {
        if (!m_isTried)
            return;
        const QString store = QString::fromStdString((m_disk->path() / "paper").string());
        const QString tables = QString::fromStdString((*m_temporary / "tables").string());
        const QString paper = QStringLiteral(MORROW_DEMO_DATA "/paper");
        QCOMPARE(batch({QStringLiteral("convert"), paper, QStringLiteral("--to"), QStringLiteral("store"), store}).status, 0);
        m_disk->fill();

        QCOMPARE(batch({QStringLiteral("convert"), store, QStringLiteral("--to"), QStringLiteral("tables"), tables}).err, QByteArray());
        const Ended there
            = batch({QStringLiteral("convert"), store, QStringLiteral("--to"), QStringLiteral("tables"), store + QStringLiteral("-copy")});

        QCOMPARE(batch({QStringLiteral("check"), tables}).status, 0);
        QCOMPARE(there.status, 3);
        QVERIFY(there.err.contains("there is no space left"));
        QVERIFY(!fs::exists(m_disk->path() / "paper-copy"));
    }

private:
    [[nodiscard]] fs::path diary() const { return m_disk->path() / "diary"; }

    void back(int hours)
    {
        DiaryStore store = opened(diary());
        QVERIFY(makeBackup(store.database()->connection(), diary(), {kNow.utcMs - hours * 3'600'000LL, 60}).has_value());
    }

    /// From nothing to \a most.
    static void roomLeft(int most)
    {
        QTest::addColumn<int>("kibibytes");

        QTest::newRow("no byte left") << 0;
        for (int kibibytes = 4; kibibytes <= most; kibibytes = kibibytes * 3 / 2)
            QTest::addRow("%d KiB left", kibibytes) << kibibytes;
    }

    std::unique_ptr<SmallDisk> m_disk;
    std::unique_ptr<ScratchFolder> m_temporary;
    bool m_isTried = false;
};

MORROW_SUITE(tst_full_disk)
#include "tst_full_disk.moc"
