// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/golden.h"
#include "store/backup.h"

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

/// A store that an earlier program wrote opens for ever and gives what it was given.
class tst_golden : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
    }

    void everyLandedSchemaHasAGoldenStore()
    {
        for (const SchemaStep &step : schemaSteps())
            QVERIFY2(fs::exists(golden(step.version)), golden(step.version).c_str());
    }

    void itIsRead_data() { versions(); }

    void itIsRead()
    {
        QFETCH(int, version);
        place(version);

        QCOMPARE(kept(diary()).entries, byId(goldenEntries()));
        QCOMPARE(kept(diary(), kOtherRef).entries, byId(otherGoldenEntries()));
        QCOMPARE(kept(diary()).erased, std::vector{sha256(note(203, {}).id)});
        QVERIFY(kept(diary()).isWhole() && kept(diary(), kOtherRef).isWhole());
    }

    void itIsOpenedAndGoesOn_data() { versions(); }

    void itIsOpenedAndGoesOn()
    {
        QFETCH(int, version);
        place(version);
        DiaryStore store = opened(diary());

        QCOMPARE(store.persons().value(), (std::vector<std::string>{kRef, kOtherRef}));
        QCOMPARE(store.add(kRef, goldenEntries())->known, 123);
        QCOMPARE(store.add(kRef, {{note(203, "erased")}})->erased, 1);
        QCOMPARE(store.add(kRef, facts(120, 1))->added, 1);
        QVERIFY(store.read(kRef)->isWhole());
    }

    void itsSumIsWhatItWas_data() { versions(); }

    // The sums were worked out by `digests.py tests/data/stores/schema-1.db` (Python's hashlib) from the file's rows.
    void itsSumIsWhatItWas()
    {
        QFETCH(int, version);
        place(version);
        DiaryStore store = opened(diary());

        SQLite::Statement read(store.database()->connection(), "SELECT lower(hex(sum)) FROM person ORDER BY person");

        QVERIFY(read.executeStep());
        QCOMPARE(read.getColumn(0).getString().c_str(), "f367bcae4d2ecd502889f787bdb6788c04cdd3ec1f5958b0174832a7d89d3164");
        QVERIFY(read.executeStep());
        QCOMPARE(read.getColumn(0).getString().c_str(), "d4e8208c5c48a7336867ad202a3fbee32f87c6f0353a82e05851dbd2569dbcd3");
    }

private:
    static fs::path golden(int version) { return fs::path(MORROW_TEST_DATA) / "stores" / ("schema-" + std::to_string(version) + ".db"); }

    static void versions()
    {
        QTest::addColumn<int>("version");

        for (const SchemaStep &step : schemaSteps())
            QTest::addRow("schema %d", step.version) << step.version;
    }

    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }

    void place(int version)
    {
        fs::create_directory(diary());
        fs::copy_file(golden(version), storeFile(diary()));
    }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_golden)
#include "tst_golden.moc"
