// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/erase.h"
#include "actions/open.h"
#include "core/store/kept_diary.h"

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

const std::string kCanary = "canary-5f0e7c1b93";

} // namespace

/// A person names an entry, and it is gone from everything of the diary.
class tst_erasing : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        auto diary = OpenDiary::open(path(), kRef).value();
        const Entry first = note(1, kCanary);
        QCOMPARE(outcome(diary.add({fact(0), first, correctionOf(first, 2)})), "done");
        QCOMPARE(outcome(diary.backUp(kNow)), "done");
    }

    void theEntryGoesWithItsCorrectionsFromTheStoreAndItsBackups()
    {
        const auto erased = eraseFrom(path(), note(1, "").id, kNow);

        QCOMPARE(outcome(erased), "done");
        QCOMPARE(*erased, 2);
        for (const auto &[name, bytes] : bytesBelow(path()))
            QVERIFY2(bytes.find(kCanary) == std::string::npos, name.c_str());
        QCOMPARE(OpenDiary::openToRead(path())->entries(), std::vector{fact(0)});
    }

    void itIsFoundWithWhomeverItIs()
    {
        keep(path(), {note(5, kCanary), fact(6)}, kOtherRef);

        QCOMPARE(eraseFrom(path(), note(5, "").id, kNow).value(), 1);

        QCOMPARE(kept(path(), kOtherRef).entries, std::vector{fact(6)});
        QCOMPARE(kept(path()).entries.size(), std::size_t(3));
    }

    void anIdThatIsNotThereErasesNothing()
    {
        QCOMPARE(eraseFrom(path(), "nothing-of-that-name", kNow).value(), 0);

        QCOMPARE(OpenDiary::openToRead(path())->entries().size(), std::size_t(3));
    }

    void erasingMakesNoStoreWhereThereIsNone()
    {
        QCOMPARE(outcome(eraseFrom(*m_folder / "nowhere", "one", kNow)), "Missing");

        QVERIFY(!fs::exists(*m_folder / "nowhere"));
    }

    void nothingIsErasedFromALostStore()
    {
        fs::remove(path() / "diary.db");
        const auto before = bytesBelow(path());

        QCOMPARE(outcome(eraseFrom(path(), note(1, "").id, kNow)), "Damaged");

        QVERIFY(bytesBelow(path()) == before);
    }

    void nothingIsErasedFromAnOpenDiary()
    {
        const auto diary = OpenDiary::open(path()).value();

        QCOMPARE(outcome(eraseFrom(path(), note(1, "").id, kNow)), "Busy");
    }

private:
    [[nodiscard]] fs::path path() const { return *m_folder / "diary"; }

    std::unique_ptr<ScratchFolder> m_folder;
};

MORROW_SUITE(tst_erasing)
#include "tst_erasing.moc"
