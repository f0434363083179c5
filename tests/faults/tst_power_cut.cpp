// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "faults/judge.h"

using namespace morrow;
using namespace morrow::test;

namespace {

const std::string kCopies
    = "CREATE TABLE copy (person INTEGER, id TEXT, body TEXT) STRICT; INSERT INTO copy SELECT person, id, body FROM entry";
const std::string kWidens = "ALTER TABLE card ADD COLUMN later TEXT; CREATE INDEX by_day ON entry(day)";

/// The landed steps and two more, of which one writes many pages.
std::vector<SchemaStep> nextSteps()
{
    std::vector<SchemaStep> steps(schemaSteps().begin(), schemaSteps().end());
    for (const std::string &sql : {std::cref(kCopies), std::cref(kWidens)})
        steps.push_back({steps.back().version + 1, sql});
    return steps;
}

} // namespace

/// The power goes at every moment of a diary's life: what was acknowledged is there (diary_store.h I1), and
/// nothing that is half done shows.
class tst_power_cut : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i1_whatWasAcknowledgedSurvives()
    {
        DiskVfs vfs(kVfs);
        const auto lived = live(vfs, lifeOf(96), {});
        const int count = amount(9000, 20'000, 1'000'000);

        const Tally tally = Judge(vfs, *lived).judge(count, 1);

        tally.print("power cut");
        QCOMPARE(tally.example.c_str(), "");
        QVERIFY(tally.rounds >= 1);
        QVERIFY(tally.states >= count);
    }

    // The harness sees a store that was set up too weakly, or it sees nothing.
    void aLogThatIsNotSyncedAtEachCommitIsSeenToLose()
    {
        DiskVfs vfs(kVfs);
        const auto lived = live(vfs, lifeOf(48), {.weakenedBy = "PRAGMA synchronous=NORMAL"});

        const Tally tally = Judge(vfs, *lived).judge(1000, 2);

        tally.print("power cut, control synchronous=NORMAL");
        QVERIFY(tally.lost > 0);
    }

    void aStoreThatIsNeverSyncedIsSeenToBreak()
    {
        DiskVfs vfs(kVfs);
        const auto lived = live(vfs, lifeOf(48), {.weakenedBy = "PRAGMA synchronous=OFF"});

        const Tally tally = Judge(vfs, *lived).judge(1000, 3);

        tally.print("power cut, control synchronous=OFF");
        QVERIFY(tally.broken > 0);
        QVERIFY(tally.lost > 0);
    }

    // The power comes back, the program opens the store and goes on, and the power goes again.
    void i1_aSecondCutDuringRecoveryLosesNothing()
    {
        DiskVfs vfs(kVfs);
        const auto lived = live(vfs, lifeOf(64), {});
        const int count = amount(4000, 14'000, 200'000);
        const std::vector<Step> goingOn{{Step::Kind::Add, kRef, {fact(9000)}}, {Step::Kind::Checkpoint}};
        Tally second;

        for (std::uint64_t seed = 10; second.states < count && second.example.empty(); ++seed) {
            int met = 0;
            (void)Judge(vfs, *lived).judge(8000, seed, [&](const Image &left, std::size_t step, bool isNext) {
                if (++met % 16 != 0 || second.states >= count)
                    return;
                const auto again = live(vfs, goingOn, {.start = left, .told = lived->told[step + (isNext ? 1 : 0)]});
                second.add(Judge(vfs, *again).judge(40, seed));
            });
        }

        second.print("power cut during recovery");
        QCOMPARE(second.example.c_str(), "");
        QVERIFY(second.states >= count);
    }

    void i3_aCutDuringAMigrationLeavesEveryEntry()
    {
        DiskVfs vfs(kVfs);
        const auto lived = live(vfs, lifeOf(48), {});
        const auto steps = nextSteps();
        const int count = amount(2000, 7000, 100'000);
        Tally second;

        for (std::uint64_t seed = 10; second.states < count && second.example.empty(); ++seed) {
            int met = 0;
            (void)Judge(vfs, *lived).judge(6000, seed, [&](const Image &left, std::size_t step, bool isNext) {
                if (++met % 40 != 0 || second.states >= count)
                    return;
                const auto again = live(vfs, {}, {.start = left, .told = lived->told[step + (isNext ? 1 : 0)], .steps = steps});
                second.add(Judge(vfs, *again).judge(100, seed));
            });
        }

        second.print("power cut during migration of a store that was cut before");
        QCOMPARE(second.example.c_str(), "");
        QVERIFY(second.states >= count);
    }
};

MORROW_SUITE(tst_power_cut)
#include "tst_power_cut.moc"
