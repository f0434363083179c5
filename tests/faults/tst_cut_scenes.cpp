// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "faults/judge.h"
#include "faults/scene.h"

using namespace morrow::test;

namespace {

using Kind = Operation::Kind;

struct Row
{
    const char *name;
    Scene (*scene)();
};

constexpr Row kScenes[]{
    {"first start", firstStart},
    {"backing up", backingUp},
    {"restoring", restoring},
    {"erasing a note", erasingANote},
    {"erasing everything", erasingEverything},
    {"a step of the schema", steppingUp},
};

} // namespace

/// The power goes at every call on a file while folders and whole files of a store change: what was
/// acknowledged is there, what is half done can be done again, and what was erased stays erased.
class tst_cut_scenes : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void nothingAcknowledgedIsLost_data()
    {
        QTest::addColumn<int>("scene");

        for (int i = 0; i < static_cast<int>(std::size(kScenes)); ++i)
            QTest::newRow(kScenes[i].name) << i;
    }

    void nothingAcknowledgedIsLost()
    {
        QFETCH(int, scene);
        const Scene played = kScenes[scene].scene();

        const Cuts cuts = cutEverywhere(played, played.start, amount(150, 500, 20'000), 1);

        cuts.print(std::string("power cut, ") + QTest::currentDataTag());
        QCOMPARE(cuts.example.c_str(), "");
        QVERIFY(cuts.rounds >= 1);
        QVERIFY(cuts.states > 10);
    }

    // The power comes back, the same is done again from its beginning, and the power goes again.
    void aSecondCutLosesNothing_data() { nothingAcknowledgedIsLost_data(); }

    void aSecondCutLosesNothing()
    {
        QFETCH(int, scene);
        const Scene played = kScenes[scene].scene();
        const int count = amount(60, 200, 10'000);
        Cuts second;
        int met = 0;

        (void)cutEverywhere(played, played.start, 40 * count, 2, {}, [&](const Image &left, std::size_t done) {
            if (done <= played.untilAgain && ++met % 5 == 0)
                second.add(cutEverywhere(played, left, 25, static_cast<std::uint64_t>(met)));
            return second.states < count;
        });

        second.print(std::string("second power cut, ") + QTest::currentDataTag());
        QCOMPARE(second.example.c_str(), "");
        QVERIFY(second.states > 10);
    }

    // The harness sees a machine that does not do what it is asked to, or it sees nothing.
    void aMachineThatDoesNotSyncIsSeenToLose_data()
    {
        QTest::addColumn<int>("scene");
        QTest::addColumn<int>("unsynced");

        QTest::newRow("first start, the names") << 0 << static_cast<int>(Kind::SyncFolder);
        QTest::newRow("first start, the bytes") << 0 << static_cast<int>(Kind::Sync);
        QTest::newRow("backing up, the bytes") << 1 << static_cast<int>(Kind::Sync);
        QTest::newRow("backing up, the names") << 1 << static_cast<int>(Kind::SyncFolder);
        QTest::newRow("restoring, the names") << 2 << static_cast<int>(Kind::SyncFolder);
        QTest::newRow("restoring, the bytes") << 2 << static_cast<int>(Kind::Sync);
        QTest::newRow("erasing a note, the names") << 3 << static_cast<int>(Kind::SyncFolder);
        QTest::newRow("erasing a note, the bytes") << 3 << static_cast<int>(Kind::Sync);
        QTest::newRow("erasing everything, the names") << 4 << static_cast<int>(Kind::SyncFolder);
        QTest::newRow("a step of the schema, the bytes") << 5 << static_cast<int>(Kind::Sync);
        QTest::newRow("a step of the schema, the names") << 5 << static_cast<int>(Kind::SyncFolder);
    }

    void aMachineThatDoesNotSyncIsSeenToLose()
    {
        QFETCH(int, scene);
        QFETCH(int, unsynced);
        const Scene played = kScenes[scene].scene();

        const Cuts cuts = cutEverywhere(
            played, played.start, 400, 3, [&](const Operation &operation) { return operation.kind == static_cast<Kind>(unsynced); });

        cuts.print(std::string("power cut, control without syncing, ") + QTest::currentDataTag());
        QVERIFY(cuts.states > 10);
        QVERIFY(cuts.bad > 0);
    }

    // What was wrong once: the folders on the way to a new store were made and not synced.
    void aNewStoreWhoseParentsAreNotSyncedIsSeenToBeLost()
    {
        const Scene played = firstStart();

        // 1 and 2 are the first two folders that the scene makes.
        const Cuts cuts = cutEverywhere(played, played.start, 400, 4,
            [](const Operation &operation) { return operation.kind == Kind::SyncFolder && operation.file <= 1; });

        cuts.print("power cut, control without syncing the parents of a new store");
        QVERIFY(cuts.bad > 0);
    }
};

MORROW_SUITE(tst_cut_scenes)
#include "tst_cut_scenes.moc"
