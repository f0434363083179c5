// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "faults/judge.h"
#include "store/backup.h"
#include "store/restore.h"

#include <fstream>
#include <random>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t kPage = 4096;
using Random = std::mt19937_64;

/// Does to \a bytes what disks, cables and other programs do to files. Says what.
const char *damage(std::string &bytes, Random &random)
{
    const auto any = [&random](std::size_t below) { return static_cast<std::size_t>(random() % below); };
    const std::size_t pages = bytes.size() / kPage;
    const auto page = [&bytes](std::size_t number) { return bytes.begin() + static_cast<std::ptrdiff_t>(number * kPage); };
    switch (any(12)) {
    case 0: {
        const std::size_t from = any(pages);
        const std::size_t to = any(pages);
        std::swap_ranges(page(from), page(from) + kPage, page(to));
        return "pages swapped";
    }
    case 1: {
        const std::size_t from = any(pages);
        std::copy(page(from), page(from) + kPage, page(any(pages)));
        return "a page twice";
    }
    case 2:
        bytes.resize(any(2) ? any(pages) * kPage : any(bytes.size()));
        return "cut short";
    case 3:
        std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>(any(bytes.size() / 512) * 512), 512, any(2) ? '\0' : '\xff');
        return "a sector blank";
    case 4: {
        const std::size_t at = any(bytes.size() - 8);
        for (std::size_t i = 0; i < 8; ++i)
            bytes[at + i] = static_cast<char>(random());
        return "eight bytes of noise";
    }
    case 5: // heads of pages, where one byte means most
        bytes[any(pages) * kPage + any(16)] ^= static_cast<char>(1U << any(8));
        return "a bit of a page's head";
    default:
        bytes[any(bytes.size())] ^= static_cast<char>(1U << any(8));
        return "a bit";
    }
}

/// What a person would be shown: every ref, every entry, what was erased; or, where that was said to be wrong, "named".
std::string shown(DiaryStore &store)
{
    const auto refs = store.persons();
    if (!refs)
        return "named";
    std::string all;
    for (const std::string &ref : *refs) {
        const auto reading = store.read(ref);
        if (!reading || !reading->isWhole() || reading->unknownKinds > 0)
            return "named";
        all += ref + '\n';
        for (const Entry &entry : reading->entries) {
            all += entry.id + '|' + std::string(name(entry.kind)) + '|' + entry.day.toString() + '|' + std::string(name(entry.author)) + '|'
                + entry.body + '|'
                + (entry.recorded ? std::to_string(entry.recorded->utcMs) + ' ' + std::to_string(entry.recorded->offsetMinutes) : "") + '|'
                + (entry.replaces ? "of " + *entry.replaces : "") + '\n';
        }
        for (const Digest &erased : reading->erased)
            all += toHex(erased) + '\n';
    }
    return all;
}

std::string shown(Result<DiaryStore, StoreError> store)
{
    return store ? shown(*store) : "named";
}

} // namespace

/// A file that was changed behind our back shows what it held, or is said not to.
class tst_damage : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void initTestCase()
    {
        const fs::path made = m_folder / "made";
        keep(made, facts(0, 250));
        keep(made, facts(1000, 20), kOtherRef);
        DiaryStore store = opened(made);
        QVERIFY(store.add(kRef, {{note(300, std::string(9000, 'p')), note(301, "x"), correctionOf(fact(5), 302)}}).has_value());
        QCOMPARE(store.eraseChain(kRef, note(301, {}).id).value(), 1);
        QCOMPARE(store.eraseChain(kRef, fact(17).id).value(), 1);
        QVERIFY(store.add(kRef, facts(400, 40)).has_value());
        m_before = shown(store);
        const fs::path backup = makeBackup(store.database()->connection(), made, kNow).value();
        m_backup = bytesBelow(backupFolder(made)).begin()->second;
        store = opened(m_folder / "other"); // closes the first
        m_store = bytesBelow(made).at("diary.db");
    }

    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i3_aDamagedStoreIsNamedOrShowsTheSame_data()
    {
        QTest::addColumn<int>("way");

        QTest::newRow("opened to write") << 0;
        QTest::newRow("opened to read") << 1;
    }

    void i3_aDamagedStoreIsNamedOrShowsTheSame()
    {
        QFETCH(int, way);
        run("store", m_store, amount(1000, 2500, 50'000), static_cast<unsigned>(way), [&](const fs::path &folder) {
            return way == 0 ? shown(DiaryStore::open(folder, {})) : shown(DiaryStore::openToRead(folder, {}));
        });
    }

    void i1_aDamagedBackupDoesNotCountOrShowsTheSame()
    {
        run("backup", m_backup, amount(500, 1000, 20'000), 7,
            [](const fs::path &folder) { return canBeReadWhole(storeFile(folder)) ? shown(DiaryStore::openToRead(folder, {})) : "named"; });
    }

    // restore.h I1 and I2: whatever happened to the store, everything that the backup holds is back, nothing is made up, and
    // what is missing is counted or said not to be known.
    void restoringGivesBackWhatAnyCopyHolds()
    {
        const fs::path made = m_folder / "restored";
        const std::vector<Entry> early = facts(0, 60);
        const std::vector<Entry> late = facts(60, 30);
        keep(made, early);
        {
            DiaryStore store = opened(made);
            QVERIFY(makeBackup(store.database()->connection(), made, kNow).has_value());
            QVERIFY(store.add(kRef, late).has_value());
            QCOMPARE(store.eraseChain(kRef, fact(7).id).value(), 1);
        }
        const std::string bytes = bytesBelow(made).at("diary.db");
        std::map<std::string, Entry> all;
        for (const Entry &entry : facts(0, 90))
            all.emplace(entry.id, entry);
        const fs::path folder = m_folder / "damaged";
        Random random(11);
        const int count = amount(100, 300, 10'000);
        int whole = 0;
        int missing = 0;
        for (int i = 0; i < count; ++i) {
            std::string damaged = bytes;
            const char *const how = damage(damaged, random);
            fs::remove_all(folder);
            fs::copy(made, folder, fs::copy_options::recursive);
            std::ofstream(storeFile(folder), std::ios::binary) << damaged;

            const auto report = restore(folder, kNow);

            // A changed version number is the one damage that looks like a newer program's doing.
            if (!report && report.error() == StoreError::Newer)
                continue;
            QVERIFY2(report.has_value(), how);
            const PersonReading reading = kept(folder);
            QVERIFY2(reading.isWhole(), how);
            QCOMPARE(opened(folder).persons().value(), std::vector<std::string>{kRef});
            std::size_t ofTheBackup = 0;
            for (const Entry &entry : reading.entries) {
                QVERIFY2(all.contains(entry.id) && all.at(entry.id) == entry, how);
                ofTheBackup += entry.id < fact(60).id ? 1U : 0U;
            }
            // The erasure may be what was lost; then the note is back, as nobody knows better.
            QVERIFY2(ofTheBackup >= 59, how);
            QCOMPARE(report->back, static_cast<int>(reading.entries.size()));
            if (report->missing && reading.erased.size() == 1)
                QCOMPARE(report->back + *report->missing, 89);
            whole += reading.entries.size() >= 89 ? 1 : 0;
            missing += report->missing.value_or(0) > 0 ? 1 : 0;
        }

        std::printf("damage, restore: %d damages, %d gave everything back, %d said how many are missing\n", count, whole, missing);
        std::fflush(stdout);
        QVERIFY(whole > count / 4);
        QVERIFY(missing > 0);
    }

private:
    template<class Show>
    void run(const char *what, const std::string &bytes, int count, unsigned seed, Show show)
    {
        Random random(seed);
        const fs::path folder = m_folder / "damaged";
        int named = 0;
        int same = 0;
        int unseen = 0;
        QByteArray example;
        for (int i = 0; i < count;) {
            std::string damaged = bytes;
            const char *const how = damage(damaged, random);
            if (damaged == bytes)
                continue;
            ++i;
            fs::remove_all(folder);
            fs::create_directory(folder);
            std::ofstream(storeFile(folder), std::ios::binary) << damaged;
            std::ofstream(ballastFile(folder)) << "as beside any store";
            const std::string after = show(folder);
            ++(after == "named" ? named : after == m_before ? same : unseen);
            if (after != "named" && after != m_before && example.isEmpty())
                example = "damage " + QByteArray::number(i) + ": " + how;
        }
        std::printf("damage, %s %s: %d damages, %d named, %d without effect, %d unseen\n", what,
            QTest::currentDataTag() ? QTest::currentDataTag() : "", count, named, same, unseen);
        std::fflush(stdout);
        QCOMPARE(example, QByteArray());
        QVERIFY(named > count / 2);
        QVERIFY(same > 0); // else nothing was read at all
    }

    ScratchFolder m_folder;
    std::string m_store;
    std::string m_backup;
    std::string m_before;
};

MORROW_SUITE(tst_damage)
#include "tst_damage.moc"
