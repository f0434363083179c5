// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/desk/clinic.h"

#include <fstream>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

std::string undoing(OpenDesk &desk, const std::string &bytes)
{
    const auto undone = undoTakeIn(desk, RecordFolder::nameOf(bytes), kNow);
    if (undone)
        return std::to_string(undone->before) + " to " + std::to_string(undone->after);
    const auto *const problem = std::get_if<UndoProblem>(&undone.error());
    if (!problem)
        return "failed";
    return *problem == UndoProblem::UnknownFile ? "unknown file" : *problem == UndoProblem::SetAside ? "set aside" : "record damaged";
}

/// The ids of a person's entries that came from a patient.
std::vector<std::string> patientsIds(OpenDesk &desk, const std::string &person)
{
    std::vector<std::string> ids;
    const auto entries = desk.entriesOf(person);
    for (const Entry &entry : *entries) {
        if (entry.author == Author::Patient)
            ids.push_back(entry.id);
    }
    return ids;
}

} // namespace

/// A taking in can be undone, and that is a decision that every desk sees.
class tst_undo : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        makeDesk(*m_folder / "one", *m_folder / "record");
        makeDesk(*m_folder / "other", *m_folder / "record");
        m_desk.emplace(openedDesk(*m_folder / "one"));
        QCOMPARE(takingIn(*m_desk, m_first, kSomebodyNew), std::string("added 10 known 0"));
        QCOMPARE(takingIn(*m_desk, m_second), std::string("added 4 known 8"));
    }

    void cleanup() { m_desk.reset(); }

    void whatOnlyThatFileSaidIsGone()
    {
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("14 to 11"));

        const std::vector<std::string> left{"check-0", "check-1", "check-2", "check-3", "set-0", "set-1", "set-2", "set-3"};
        QCOMPARE(patientsIds(*m_desk, kRef), left);
        QVERIFY(m_desk->store().read(kRef)->isWhole());
    }

    void theFileItselfStaysInTheRecord()
    {
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("14 to 11"));

        const auto read = m_desk->record().read(RecordFolder::nameOf(m_second.bytes));
        QVERIFY(read.has_value() && *read == m_second.bytes);
    }

    void theOtherDeskAndARebuildSeeItToo()
    {
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("14 to 11"));
        const Sums after = sumsOf(*m_desk);
        m_desk.reset();

        OpenDesk other = openedDesk(*m_folder / "other");
        QVERIFY(OpenDesk::rebuild(*m_folder / "one").has_value());
        OpenDesk rebuilt = openedDesk(*m_folder / "one");

        QVERIFY(sumsOf(other) == after);
        QVERIFY(sumsOf(rebuilt) == after);
    }

    void aFileThatWasSetAsideComesInOnlyWhenAsked()
    {
        const Sums before = sumsOf(*m_desk);
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("14 to 11"));

        QCOMPARE(takingIn(*m_desk, m_second), std::string("set aside"));
        QCOMPARE(takingIn(*m_desk, m_second, somebodyKnown(kRef)), std::string("added 4 known 8"));

        // All is as before, but for the decision and its withdrawal.
        QCOMPARE(patientsIds(*m_desk, kRef).size(), std::size_t{12});
        QCOMPARE(m_desk->entriesOf(kRef)->size(), std::size_t{16});
        QVERIFY(sumsOf(*m_desk) != before);
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("16 to 13"));
    }

    void anUndoneJoiningIsNoJoiningAnyMore()
    {
        const Foreign theirs = summary(diaryOf(20, 22), kOtherRef);
        QCOMPARE(takingIn(*m_desk, theirs, somebodyKnown(kRef)), std::string("added 6 known 2"));

        QCOMPARE(undoing(*m_desk, theirs.bytes), std::string("21 to 17"));

        QVERIFY(!m_desk->index().isKnown(kOtherRef));
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(20, 25), kOtherRef)), std::string("waits"));
        QCOMPARE(takingIn(*m_desk, theirs, kSomebodyNew), std::string("added 8 known 0"));
        QCOMPARE(m_desk->store().persons()->size(), std::size_t{2});
    }

    void aDecisionNotedUnderSomebodyElseHoldsAsWell()
    {
        const Foreign theirs = summary(diaryOf(20, 22), kOtherRef);
        QCOMPARE(takingIn(*m_desk, theirs, kSomebodyNew), std::string("added 8 known 0"));
        Draft aside{.kind = Kind::SetAside, .author = Author::Clinic};
        aside.body.set(Field::File, RecordFolder::nameOf(theirs.bytes));

        QCOMPARE(saying(*m_desk, kRef, aside), std::string("said"));

        QVERIFY(patientsIds(*m_desk, kOtherRef).empty());
        QCOMPARE(m_desk->entriesOf(kRef)->size(), std::size_t{15});
    }

    void somebodyTakenForNewByMistakeCanBeJoined()
    {
        const Foreign theirs = summary(diaryOf(20, 22), kOtherRef);
        QCOMPARE(takingIn(*m_desk, theirs, kSomebodyNew), std::string("added 8 known 0"));
        QCOMPARE(undoing(*m_desk, theirs.bytes), std::string("8 to 1"));

        QCOMPARE(takingIn(*m_desk, theirs, somebodyKnown(kRef)), std::string("added 6 known 2"));

        QCOMPARE(*m_desk->store().persons(), std::vector<std::string>{kRef});
        QVERIFY(m_desk->index().personOf(kOtherRef) == kRef);
    }

    void whatWasNotTakenInIsNotUndone()
    {
        QCOMPARE(undoing(*m_desk, "never taken in"), std::string("unknown file"));
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("14 to 11"));
        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("set aside"));
    }

    void nothingIsUndoneWhereAnotherFileCannotBeRead()
    {
        const Sums before = sumsOf(*m_desk);
        std::ofstream(*m_folder / ("record/" + RecordFolder::nameOf(m_first.bytes))) << "half";

        QCOMPARE(undoing(*m_desk, m_second.bytes), std::string("record damaged"));

        QVERIFY(sumsOf(*m_desk) == before);
        QVERIFY(!m_desk->index().isSetAside(RecordFolder::nameOf(m_second.bytes)));
    }

private:
    const Foreign m_first = summary(diaryOf(0, 3));
    const Foreign m_second = summary(diaryOf(1, 5));
    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<OpenDesk> m_desk;
};

MORROW_SUITE(tst_undo)
#include "tst_undo.moc"
