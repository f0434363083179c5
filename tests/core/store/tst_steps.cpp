// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "store/backup.h"

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// The landed steps and those in \a more, one version each.
std::vector<SchemaStep> stepsAnd(std::initializer_list<std::string_view> more)
{
    std::vector<SchemaStep> steps(schemaSteps().begin(), schemaSteps().end());
    for (const std::string_view sql : more)
        steps.push_back({steps.back().version + 1, sql});
    return steps;
}

int versionOf(const fs::path &file)
{
    SQLite::Database connection(file.string(), SQLite::OPEN_READONLY);
    SQLite::Statement read(connection, "PRAGMA user_version");
    return read.executeStep() ? read.getColumn(0).getInt() : -1;
}

constexpr std::string_view kGood = "CREATE TABLE pace (person INTEGER PRIMARY KEY) STRICT; INSERT INTO pace SELECT person FROM person";
constexpr std::string_view kAlsoGood = "ALTER TABLE card ADD COLUMN later TEXT";
constexpr std::string_view kHalfGood = "CREATE TABLE pace (person INTEGER PRIMARY KEY) STRICT; INSERT INTO nowhere VALUES (1)";

} // namespace

/// A step of the schema is whole or not there, with what was there before it backed up (database.h I3).
class tst_steps : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        keep(diary(), facts(0, 20));
        m_first = schemaSteps().back().version;
    }

    void i3_everyStepRunsOnceAndKeepsEveryEntry()
    {
        const auto steps = stepsAnd({kGood, kAlsoGood});

        QVERIFY(DiaryStore::open(diary(), {.steps = steps}).has_value());
        auto again = DiaryStore::open(diary(), {.steps = steps});

        QCOMPARE(outcome(again), "done");
        QCOMPARE(again->read(kRef)->entries, byId(facts(0, 20)));
        QVERIFY(again->read(kRef)->isWhole());
        QCOMPARE(again->add(kRef, facts(20, 1))->added, 1);
        again = DiaryStore::open(*m_folder / "other", {});
        QCOMPARE(versionOf(storeFile(diary())), m_first + 2);
    }

    void i3_whatWasThereIsBackedUpBeforeEachStep()
    {
        const auto steps = stepsAnd({kGood, kAlsoGood});

        QVERIFY(DiaryStore::open(diary(), {.steps = steps}).has_value());

        for (int step = m_first + 1; step <= m_first + 2; ++step) {
            const fs::path backup = backupFolder(diary()) / ("before-step-" + std::to_string(step) + ".db");
            QCOMPARE(versionOf(backup), step - 1);
            auto database = Database::openToRead(backup, {.steps = steps});
            QVERIFY(database.has_value());
            Sha256 hash;
            QCOMPARE(readPerson(database->connection(), 1, hash).entries, byId(facts(0, 20)));
            QVERIFY(readPerson(database->connection(), 1, hash).isWhole());
        }
    }

    void i3_aNewStoreNeedsNoBackupOnItsWay()
    {
        const auto steps = stepsAnd({kGood, kAlsoGood});

        QVERIFY(DiaryStore::open(*m_folder / "new", {.steps = steps}).has_value());

        QVERIFY(!fs::exists(backupFolder(*m_folder / "new")));
        QCOMPARE(versionOf(storeFile(*m_folder / "new")), m_first + 2);
    }

    void i3_aStepThatFailsLeavesTheStoreAsItWas_data()
    {
        QTest::addColumn<bool>("isSecond");

        QTest::newRow("the first") << false;
        QTest::newRow("the second, the first being whole") << true;
    }

    void i3_aStepThatFailsLeavesTheStoreAsItWas()
    {
        QFETCH(bool, isSecond);
        const auto steps = isSecond ? stepsAnd({kAlsoGood, kHalfGood}) : stepsAnd({kHalfGood});

        QVERIFY(!DiaryStore::open(diary(), {.steps = steps}).has_value());

        QCOMPARE(versionOf(storeFile(diary())), m_first + (isSecond ? 1 : 0));
        const auto before = stepsAnd({kAlsoGood});
        auto store = DiaryStore::open(diary(), {.steps = isSecond ? std::span<const SchemaStep>(before) : schemaSteps()});
        QCOMPARE(outcome(store), "done");
        QCOMPARE(store->read(kRef)->entries, byId(facts(0, 20)));
        QVERIFY(store->read(kRef)->isWhole());
        QVERIFY(!SQLite::Statement(store->database()->connection(), "SELECT 1 FROM sqlite_schema WHERE name = 'pace'").executeStep());
    }

    void i3_noStepRunsWhereTheBackupCannotBeMade()
    {
        std::FILE *const inTheWay = std::fopen(backupFolder(diary()).c_str(), "w");
        std::fclose(inTheWay);
        const auto steps = stepsAnd({kGood});

        QVERIFY(!DiaryStore::open(diary(), {.steps = steps}).has_value());

        QCOMPARE(versionOf(storeFile(diary())), m_first);
        QCOMPARE(kept(diary()).entries, byId(facts(0, 20)));
    }

    void i3_noStepRunsOnADamagedStore()
    {
        tamper(storeFile(diary()), "UPDATE person SET sum = zeroblob(32)");
        const auto steps = stepsAnd({kGood});

        QCOMPARE(outcome(DiaryStore::open(diary(), {.steps = steps})), "Damaged");

        QCOMPARE(versionOf(storeFile(diary())), m_first);
        QVERIFY(backupsIn(diary()).empty());
    }

    void aBackupBeforeAStepIsNeverRotatedAway()
    {
        const auto steps = stepsAnd({kGood});
        QVERIFY(DiaryStore::open(diary(), {.steps = steps}).has_value());

        rotateBackups(diary());

        QCOMPARE(namesIn(backupFolder(diary())), "before-step-" + std::to_string(m_first + 1) + ".db");
    }

    // A landed step is never edited: there is one for each version, in order.
    void theStepsAreNumberedFromOneWithoutAGap()
    {
        int version = 0;
        for (const SchemaStep &step : schemaSteps())
            QCOMPARE(step.version, ++version);
        QVERIFY(version >= 1);
    }

private:
    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }

    std::unique_ptr<ScratchFolder> m_folder;
    int m_first = 0;
};

MORROW_SUITE(tst_steps)
#include "tst_steps.moc"
