// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/whose.h"
#include "core/desk/clinic.h"

#include <rapidcheck.h>

#include <algorithm>
#include <random>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// A clinic's plan \a plan of the complaint heel, whose item is \a key.
std::vector<Entry> planOf(const std::string &plan, const std::string &key)
{
    std::vector<Entry> entries = diaryOf(0, -1);
    for (Entry &entry : entries) {
        auto said = *BodyReader().read(entry.body);
        if (entry.kind == Kind::Plan) {
            entry.id = "entry-of-" + plan;
            said.set(Field::Plan, plan);
            auto items = *said.list(Field::Items);
            items[0].set(Field::Item, key);
            said.set(Field::Items, std::move(items));
        }
        entry.body = said.toJson();
    }
    return entries;
}

std::vector<Entry> changed(std::vector<Entry> entries, const std::string &id)
{
    for (Entry &entry : entries) {
        if (entry.id == id)
            entry.day = entry.day + 1;
    }
    return entries;
}

} // namespace

/// A file comes in whole or not at all, and what came in does not depend on the order.
class tst_take_in : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_desk.emplace(openedDesk(*m_folder / "desk"));
    }

    void i3_aFileOfSomebodyUnknownWaits()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3))), std::string("waits"));

        QVERIFY(m_desk->record().names()->empty());
        QVERIFY(sumsOf(*m_desk).empty());
    }

    void i2_theSameFileTwiceIsKnown()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        const Sums once = sumsOf(*m_desk);

        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3))), std::string("added 0 known 10"));

        QVERIFY(sumsOf(*m_desk) == once);
        QCOMPARE(m_desk->record().names()->size(), std::size_t{1});
    }

    void i2_anyOrderOfOverlappingFilesGivesTheSameStore()
    {
        QVERIFY(rc::check("order", [] {
            struct Span
            {
                int first;
                int length;
                int person;
            };
            const auto spans = *rc::gen::nonEmpty(rc::gen::container<std::vector<std::tuple<int, int, int>>>(
                rc::gen::tuple(rc::gen::inRange(0, 30), rc::gen::inRange(0, 20), rc::gen::inRange(0, 2))));
            auto other = spans;
            const auto twice = *rc::gen::inRange<std::size_t>(0, spans.size());
            other.push_back(spans[twice]);
            std::shuffle(other.begin(), other.end(), std::mt19937(*rc::gen::arbitrary<unsigned>()));
            const ScratchFolder folder;
            const auto takeAll = [&](const char *name, const auto &all) {
                OpenDesk desk = openedDesk(folder / name);
                for (const auto &[first, length, person] : all) {
                    const Foreign file = summary(diaryOf(first, first + length), person == 0 ? kRef : kOtherRef);
                    RC_ASSERT(takingIn(desk, file, kSomebodyNew).starts_with("added"));
                }
                return sumsOf(desk);
            };

            RC_ASSERT(takeAll("one", spans) == takeAll("other", other));
        }));
    }

    void i1_anIdWithAnotherContentRefusesTheWholeFile()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        const Sums before = sumsOf(*m_desk);

        QCOMPARE(takingIn(*m_desk, summary(changed(diaryOf(0, 6), "check-2"))), std::string("two contents for check-2"));

        QVERIFY(sumsOf(*m_desk) == before);
        QCOMPARE(m_desk->record().names()->size(), std::size_t{1});
    }

    void i1_aKeyOfAnotherPlanRefusesTheWholeFile()
    {
        QCOMPARE(takingIn(*m_desk, foreign(planOf("one", "raise"), kRef, FhirFile::Plan), kSomebodyNew), std::string("added 2 known 0"));
        const Sums before = sumsOf(*m_desk);

        QCOMPARE(takingIn(*m_desk, foreign(planOf("other", "raise"), kRef, FhirFile::Plan)),
            std::string("another plan's complaint heel, another plan's item raise"));

        QVERIFY(sumsOf(*m_desk) == before);
    }

    void theSameKeyOfAnotherPersonIsNoClash()
    {
        QCOMPARE(takingIn(*m_desk, foreign(planOf("one", "raise"), kRef, FhirFile::Plan), kSomebodyNew), std::string("added 2 known 0"));

        QCOMPARE(
            takingIn(*m_desk, foreign(planOf("other", "raise"), kOtherRef, FhirFile::Plan), kSomebodyNew), std::string("added 2 known 0"));
    }

    void aFileAsSomebodyKnownJoinsTheirDiary()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));

        QCOMPARE(takingIn(*m_desk, summary(diaryOf(2, 5), kOtherRef), somebodyKnown(kRef)), std::string("added 4 known 6"));

        QCOMPARE(m_desk->store().persons()->size(), std::size_t{1});
        QVERIFY(m_desk->index().personOf(kOtherRef) == kRef);
        // From now on nobody has to say it.
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(5, 7), kOtherRef)), std::string("added 4 known 4"));
    }

    void whoIsKnownStaysWhoTheyWereWhenSomebodyIsJoined()
    {
        // The other way round as above, by the order of the refs as text.
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3), kOtherRef), kSomebodyNew), std::string("added 10 known 0"));

        QCOMPARE(takingIn(*m_desk, summary(diaryOf(2, 5)), somebodyKnown(kOtherRef)), std::string("added 4 known 6"));

        QCOMPARE(*m_desk->store().persons(), std::vector<std::string>{kOtherRef});
    }

    void theFileToThePatientCarriesTheRefOfTheLastSummary()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        QVERIFY(m_desk->index().refForPatient(kRef) == kRef);

        QCOMPARE(takingIn(*m_desk, summary(diaryOf(2, 5), kOtherRef), somebodyKnown(kRef)), std::string("added 4 known 6"));

        QCOMPARE(m_desk->index().refForPatient(kRef), std::string(kOtherRef));
    }

    void aFileOfOnePersonIsNotTakenForAnother()
    {
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3), kOtherRef), kSomebodyNew), std::string("added 10 known 0"));
        const Sums before = sumsOf(*m_desk);

        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 5), kOtherRef), somebodyKnown(kRef)), std::string("another person"));
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 5), "somebody-else"), somebodyKnown("nobody")), std::string("unknown person"));

        QVERIFY(sumsOf(*m_desk) == before);
    }

    void i4_whatOnlyADeskSaysComesInWithNoFile_data()
    {
        QTest::addColumn<int>("kind");
        for (const Kind kind : {Kind::Memo, Kind::KnownAs, Kind::Alias, Kind::SetAside, Kind::Handed})
            QTest::newRow(std::string(name(kind)).c_str()) << static_cast<int>(kind);
    }

    void i4_whatOnlyADeskSaysComesInWithNoFile()
    {
        QFETCH(int, kind);
        Foreign file = summary(diaryOf(0, 3));
        file.diary.entries.push_back(fact(3));
        file.diary.entries.back().kind = static_cast<Kind>(kind);

        QCOMPARE(takingIn(*m_desk, file, kSomebodyNew), std::string("of a desk"));
        QVERIFY(m_desk->record().names()->empty());
    }

    void i4_aFileThatClaimsToBeOfARecordIsRefused()
    {
        QCOMPARE(takingIn(*m_desk, foreign(diaryOf(0, -1), kRef, FhirFile::Record), kSomebodyNew), std::string("of a desk"));
    }

    void aWaitingFileShowsWhatItSaysOfItself()
    {
        auto entries = planOf("plan-7", "raise");
        for (Entry &entry : entries) {
            auto said = *BodyReader().read(entry.body);
            if (entry.kind == Kind::Plan)
                said.set(Field::BirthYear, Decimal::whole(1968));
            entry.body = said.toJson();
        }

        const Whose said = whose(*m_desk, foreign(entries, kRef, FhirFile::Plan).diary);

        QVERIFY(!said.person.has_value());
        QCOMPARE(said.ref, std::string(kRef));
        QCOMPARE(said.plans, std::vector<std::string>{"plan-7"});
        QVERIFY(said.birthYear == 1968);
    }

    void aFileThatIsDurableInTheRecordOnlyIsTakenInOnOpening()
    {
        const Foreign file = summary(diaryOf(0, 3));
        m_desk.reset();
        auto record = RecordFolder::open(*m_folder / "desk/record");
        QVERIFY(record->add(file.bytes).has_value()); // and then the power went

        m_desk.emplace(openedDesk(*m_folder / "desk"));

        QCOMPARE(m_desk->news().files, 1);
        QCOMPARE(takingIn(*m_desk, file), std::string("added 0 known 10"));
    }

    void anErasedPersonIsGoneAndStaysGone()
    {
        const Foreign file = summary(diaryOf(0, 3));
        QCOMPARE(takingIn(*m_desk, file, kSomebodyNew), std::string("added 10 known 0"));
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3), kOtherRef), kSomebodyNew), std::string("added 10 known 0"));
        QCOMPARE(saying(*m_desk, kRef, named("canary7431")), std::string("said"));

        QVERIFY(m_desk->erasePerson(kRef).has_value());

        QCOMPARE(takingIn(*m_desk, file, kSomebodyNew), std::string("erased person"));
        QCOMPARE(saying(*m_desk, kRef, named("again")), std::string("erased person"));
        QCOMPARE(*m_desk->store().persons(), std::vector<std::string>{kOtherRef});
        m_desk.reset();
        for (const auto &[name, bytes] : bytesBelow(*m_folder / "desk"))
            QVERIFY2(bytes.find("canary7431") == std::string::npos && bytes.find(kRef) == std::string::npos, name.c_str());
        QCOMPARE(openedDesk(*m_folder / "desk").record().names()->size(), std::size_t{1});
    }

    void aFolderThatHoldsOtherThingsIsNoDesk()
    {
        fs::create_directory(*m_folder / "letters");
        fs::create_directory(*m_folder / "letters/2026");

        const auto desk = OpenDesk::open(*m_folder / "letters");

        QVERIFY(!desk.has_value() && desk.error() == DeskError(StoreError::NotADiary));
        QCOMPARE(namesIn(*m_folder / "letters"), std::string("2026"));
    }

private:
    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<OpenDesk> m_desk;
};

MORROW_SUITE(tst_take_in)
#include "tst_take_in.moc"
