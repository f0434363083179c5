// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/whose.h"
#include "core/desk/clinic.h"

#include <rapidcheck.h>

#include <fstream>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// One thing that happens at one of two desks, told by numbers.
struct Event
{
    int desk; ///< 0 or 1
    int what;
    int first; ///< of the days in a file
    int person;
};

constexpr int kEvents = 7;

std::string refOf(int person)
{
    return std::vector<std::string>{kRef, kOtherRef, "third-person"}[static_cast<std::size_t>(person)];
}

void happen(OpenDesk &desk, const Event &event, Moment now)
{
    const std::string ref = refOf(event.person);
    const Foreign file = summary(diaryOf(event.first, event.first + 3), ref);
    switch (event.what) {
    case 0:
    case 1:
        (void)takingIn(desk, file, kSomebodyNew, now);
        break;
    case 2:
        (void)saying(desk, ref, visitOn(day("2026-03-02") + event.first), now);
        break;
    case 3:
        (void)saying(desk, ref, named("label " + std::to_string(event.first)), now);
        break;
    case 4:
        (void)undoTakeIn(desk, RecordFolder::nameOf(file.bytes), now);
        break;
    case 5:
        (void)takingIn(desk, file, somebodyKnown(refOf((event.person + 1) % 3)), now);
        break;
    default: {
        // What contradicts what another desk may be taking in at the same time.
        auto entries = diaryOf(event.first, event.first + 3);
        entries.back().day = entries.back().day + 1;
        (void)takingIn(desk, summary(entries, ref), kSomebodyNew, now);
    }
    }
}

std::map<std::string, std::string> namesOf(OpenDesk &desk)
{
    std::map<std::string, std::string> names;
    const auto persons = desk.store().persons();
    for (const std::string &person : *persons) {
        if (const auto known = knownAs(*desk.entriesOf(person)))
            names[person] = known->label;
    }
    return names;
}

} // namespace

/// Two desks that share a record know the same, whoever wrote what and when.
class tst_two_desks : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i2_whateverHappensAtEitherDeskBothKnowTheSame()
    {
        QVERIFY(rc::check("two desks", [] {
            const auto told = *rc::gen::container<std::vector<std::tuple<int, int, int, int>>>(
                rc::gen::tuple(rc::gen::inRange(0, 4), rc::gen::inRange(0, kEvents), rc::gen::inRange(0, 4), rc::gen::inRange(0, 3)));
            const ScratchFolder folder;
            makeDesk(folder / "one", folder / "record");
            makeDesk(folder / "other", folder / "record");
            {
                OpenDesk one = openedDesk(folder / "one");
                OpenDesk other = openedDesk(folder / "other");
                Moment now = kNow;
                for (const auto &[desk, what, first, person] : told) {
                    now.utcMs += 60'000;
                    // Now and then a desk sees what the other one did; mostly both go on without.
                    if (desk >= 2)
                        RC_ASSERT((desk == 2 ? one : other).takeInNew().has_value());
                    happen(desk % 2 == 0 ? one : other, {desk % 2, what, first, person}, now);
                }
                RC_ASSERT(one.takeInNew().has_value());
                RC_ASSERT(other.takeInNew().has_value());
            }
            const auto seen = [&folder](const char *name) {
                OpenDesk desk = openedDesk(folder / name);
                return std::pair(sumsOf(desk), namesOf(desk));
            };
            const auto one = seen("one");
            const auto other = seen("other");
            RC_ASSERT(OpenDesk::rebuild(folder / "one").has_value());
            const auto rebuilt = seen("one");

            RC_TAG(one.first.size());
            RC_ASSERT(one == other);
            RC_ASSERT(one == rebuilt);
            for (const auto &[person, sum] : one.first)
                RC_ASSERT(sum.find("damaged") == std::string::npos);
        }));
    }

    void namesAndDecisionsAreThereAfterARebuild()
    {
        const ScratchFolder folder;
        Sums before;
        {
            OpenDesk desk = openedDesk(folder / "desk");
            QCOMPARE(takingIn(desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
            QCOMPARE(saying(desk, kRef, named("Mr B, room 4")), std::string("said"));
            QCOMPARE(saying(desk, kRef, visitOn("2026-03-04")), std::string("said"));
            before = sumsOf(desk);
        }
        fs::remove_all(folder / "desk/store");

        QVERIFY(OpenDesk::rebuild(folder / "desk").has_value());

        OpenDesk desk = openedDesk(folder / "desk");
        QVERIFY(sumsOf(desk) == before);
        QCOMPARE(knownAs(*desk.entriesOf(kRef))->label, std::string("Mr B, room 4"));
    }

    void i4_aFileThatCannotBeReadTakesNothingAway()
    {
        const ScratchFolder folder;
        const Foreign first = summary(diaryOf(0, 3));
        {
            OpenDesk desk = openedDesk(folder / "desk");
            QCOMPARE(takingIn(desk, first, kSomebodyNew), std::string("added 10 known 0"));
        }
        std::ofstream(folder / ("desk/record/" + RecordFolder::nameOf(first.bytes))) << "half";
        auto record = RecordFolder::open(folder / "desk/record");
        QVERIFY(record->add(summary(diaryOf(3, 5)).bytes).has_value());

        OpenDesk desk = openedDesk(folder / "desk");

        QCOMPARE(desk.news().unread, std::vector<std::string>{RecordFolder::nameOf(first.bytes)});
        QCOMPARE(desk.entriesOf(kRef)->size(), std::size_t{14});
    }

    void aRebuildFromLessThanTheRecordKeepsTheOldStore()
    {
        const ScratchFolder folder;
        const Foreign first = summary(diaryOf(0, 3));
        {
            OpenDesk desk = openedDesk(folder / "desk");
            QCOMPARE(takingIn(desk, first, kSomebodyNew), std::string("added 10 known 0"));
            QCOMPARE(takingIn(desk, summary(diaryOf(3, 5))), std::string("added 4 known 4"));
        }
        fs::remove(folder / ("desk/record/" + RecordFolder::nameOf(first.bytes)));

        const auto rebuilt = OpenDesk::rebuild(folder / "desk");

        QVERIFY(rebuilt->keepsOld);
        QCOMPARE(rebuilt->record.missing, std::vector<std::string>{RecordFolder::nameOf(first.bytes)});
        QCOMPARE(namesIn(folder / "desk"), std::string("record store store.old"));
        QCOMPARE(kept(folder / "desk/store.old").entries.size(), std::size_t{14});
    }

    void aRecordWhoseDriveIsGoneIsNotWritten()
    {
        const ScratchFolder folder;
        makeDesk(folder / "desk", folder / "drive");
        {
            OpenDesk desk = openedDesk(folder / "desk");
            QCOMPARE(takingIn(desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        }
        fs::rename(folder / "drive", folder / "away");

        const auto without = OpenDesk::open(folder / "desk");
        fs::create_directory(folder / "drive"); // the empty folder that the drive is mounted on
        const auto onEmpty = OpenDesk::open(folder / "desk");

        QVERIFY(!without.has_value() && without.error() == DeskError(FileError::Missing));
        QVERIFY(!onEmpty.has_value() && onEmpty.error() == DeskError(FileError::Missing));
        QVERIFY(fs::is_empty(folder / "drive"));
    }

    void i3_anErasureIsObeyedByTheOtherDesk()
    {
        const ScratchFolder folder;
        makeDesk(folder / "one", folder / "record");
        makeDesk(folder / "other", folder / "record");
        OpenDesk one = openedDesk(folder / "one");
        OpenDesk other = openedDesk(folder / "other");
        QCOMPARE(takingIn(one, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
        QVERIFY(other.takeInNew().has_value());
        QCOMPARE(saying(other, kRef, named("written at the same time")), std::string("said"));

        QVERIFY(one.erasePerson(kRef).has_value());
        const auto news = other.takeInNew();
        QVERIFY(one.takeInNew().has_value());

        QCOMPARE(news->erasedPersons, 1);
        QVERIFY(sumsOf(one).empty() && sumsOf(other).empty());
        QVERIFY(one.record().names()->empty());
    }
};

MORROW_SUITE(tst_two_desks)
#include "tst_two_desks.moc"
