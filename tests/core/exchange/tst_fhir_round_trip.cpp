// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "exchange/fhir.h"
#include "exchange/folders.h"
#include "support/diary_generator.h"
#include "support/typed_cells.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

using namespace morrow;
using namespace morrow::test;

namespace {

const std::string kPerson = "6f1c2a54-0d3e-4b8f-9a67-1c2d3e4f5a6b";

/// \a days after \a day, or \a day where the calendar ends before that.
CivilDay later(CivilDay day, int days)
{
    return CivilDay::fromNumber(day.number() + days).value_or(day);
}

/// What tables have no place for, and FHIR has: earlier revisions, files handed over, what stays at
/// the desk, instants far from UTC, rhythms told in more than one way.
std::vector<Entry> withWhatTablesLack(std::vector<Entry> entries)
{
    BodyReader reader;
    const std::size_t before = entries.size();
    const auto day = entries.empty() ? *CivilDay::fromNumber(20'000) : entries.front().day;
    const auto add = [&](Kind kind, Author author, const Body &body) {
        const Moment moment{.utcMs = 1'700'000'000'000 + pick(0, 1'000'000'000), .offsetMinutes = pick(-1439, 1439)};
        entries.push_back({"extra-" + std::to_string(entries.size()), kind, later(day, pick(0, 90)), moment, author, {}, body.toJson()});
    };
    const auto said = [](std::initializer_list<std::pair<Field, Body::Value>> fields) {
        Body body;
        for (const auto &[field, value] : fields)
            body.set(field, value);
        return body;
    };
    add(Kind::Handed, Author::Patient, said({{Field::File, std::string(64, 'a')}, {Field::From, std::string("2026-03-02")}}));
    add(Kind::Memo, Author::Clinic, said({{Field::Visit, std::string("v-1")}, {Field::Note, std::string("<b>&\"x")}}));
    add(Kind::KnownAs, Author::Clinic, said({{Field::Label, std::string("B.")}, {Field::BirthYear, Decimal::whole(1961)}}));
    add(Kind::Alias, Author::Clinic, said({{Field::Ref, std::string("other-ref")}}));
    add(Kind::SetAside, Author::Clinic, said({{Field::File, std::string(64, 'b')}}));
    for (std::size_t i = 0; i < before; ++i) {
        if (entries[i].kind != Kind::Plan || !chance(70))
            continue;
        Body plan = *reader.read(entries[i].body);
        const int number = plan.intOr(Field::Number, 1);
        if (number >= 1'000'000 || plan.has(Field::Withdrawn))
            continue;
        plan.set(Field::Number, Decimal::whole(number + 1));
        std::vector<Body> items = *plan.list(Field::Items);
        for (Body &item : items) {
            std::vector<Body> stages = *item.list(Field::Stages);
            for (Body &stage : stages) {
                if (stage.has(Field::PerWeek) && chance(50))
                    stage.set(Field::Slots, std::string("day"));
                if (stage.has(Field::Rrule) && chance(30))
                    stage.set(Field::Rrule, std::string(chance(50) ? "FREQ=WEEKLY" : "FREQ=DAILY;INTERVAL=3;BYDAY=TU,SU"));
            }
            item.set(Field::Stages, stages);
        }
        plan.set(Field::Items, items);
        entries.push_back({"revision-" + std::to_string(i), Kind::Plan, later(entries[i].day, 20),
            chance(50) ? std::optional(Moment{1'760'000'000'123, 120}) : std::nullopt, Author::Clinic,
            chance(50)       ? std::optional(entries[i].id)
                : chance(50) ? std::optional(std::string("not-here"))
                             : std::nullopt,
            plan.toJson()});
    }
    return entries;
}

bool staysOut(const Entry &entry, const std::set<std::string> &replacedNotes)
{
    return entry.kind == Kind::Handed || entry.kind == Kind::Memo || entry.kind == Kind::KnownAs || entry.kind == Kind::Alias
        || entry.kind == Kind::SetAside || (entry.kind == Kind::Note && replacedNotes.contains(entry.id));
}

/// What a summary of \a entries has to hold, told without the writer.
std::vector<Entry> expectedInSummary(const std::vector<Entry> &entries)
{
    std::set<std::string> replacedNotes;
    for (const Entry &entry : entries) {
        if (entry.kind == Kind::Note && entry.replaces)
            replacedNotes.insert(*entry.replaces);
    }
    std::vector<Entry> kept;
    std::copy_if(
        entries.begin(), entries.end(), std::back_inserter(kept), [&](const Entry &entry) { return !staysOut(entry, replacedNotes); });
    return kept;
}

std::vector<Entry> byId(std::vector<Entry> entries)
{
    std::sort(entries.begin(), entries.end(), [](const Entry &a, const Entry &b) { return a.id < b.id; });
    return entries;
}

std::string problemsIn(const Result<FhirDiary, std::vector<Issue>> &read)
{
    std::string text;
    for (const Issue &issue : read.error())
        text += std::to_string(static_cast<int>(issue.code)) + " " + issue.pointer + " " + issue.columnName + " '" + issue.value + "'\n";
    return text;
}

/// Writes \a entries, reads them and writes them again; what went wrong, if anything did.
std::string roundTripProblem(const std::vector<Entry> &entries, const std::vector<Entry> &expected, FhirFile file)
{
    const FhirBundle bundle = writeFhir(entries, kPerson, file, "Ann \"<&");
    const auto read = readFhir(bundle.json);
    if (!read)
        return "refused: " + problemsIn(read);
    if (read->file != file || read->person != kPerson || read->name != "Ann \"<&" || read->unknownResources + read->unknownExtensions != 0)
        return "another file, person or name";
    if (bundle.entries != static_cast<int>(expected.size()))
        return "another count";
    const std::vector<Entry> left = byId(read->entries);
    const std::vector<Entry> right = byId(expected);
    if (left != right) {
        for (std::size_t i = 0; i < std::min(left.size(), right.size()); ++i) {
            if (left[i] != right[i])
                return "other entries: " + left[i].id + " " + left[i].body + " != " + right[i].id + " " + right[i].body;
        }
        return "other entries";
    }
    if (writeFhir(read->entries, kPerson, file, "Ann \"<&").json != bundle.json)
        return "other bytes the second time";
    return {};
}

} // namespace

/// entries -> bundle -> entries changes nothing that anybody recorded.
class tst_fhir_round_trip : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i1_twoHundredRandomDiariesComeBackWhole()
    {
        std::map<std::string, int> counts;
        int diaries = 0;
        const bool holds = rc::check("entries -> bundle -> entries -> bundle", [&] {
            for (int i = 0; i < 2; ++i) { // RapidCheck tries a property a hundred times
                const auto typed = diaryIn(filesOf(*typedFolders()));
                RC_ASSERT(typed.has_value());
                const std::vector<Entry> entries = withWhatTablesLack(typed->entries);

                const std::string summary = roundTripProblem(entries, expectedInSummary(entries), FhirFile::Summary);
                const std::string record = roundTripProblem(entries, entries, FhirFile::Record);

                RC_LOG(summary);
                RC_LOG(record);
                RC_ASSERT(summary.empty());
                RC_ASSERT(record.empty());
                ++diaries;
                for (const Entry &entry : entries) {
                    ++counts["kind " + std::string(name(entry.kind))];
                    ++counts[entry.recorded ? "recorded" : "from paper"];
                    counts["correction"] += entry.replaces ? 1 : 0;
                    counts["withdrawn"] += entry.body.find("\"withdrawn\":1") == std::string::npos ? 0 : 1;
                }
            }
        });
        QVERIFY(holds);
        QCOMPARE(diaries, 200);
        QCOMPARE(counts.size(), std::size_t{kKindCount + 4});
        for (const auto &[what, count] : counts)
            QVERIFY2(count >= 20, (what + " " + std::to_string(count)).c_str());
    }

    void i2_theOrderOfEntriesIsNotInTheFile()
    {
        const bool holds = rc::check("shuffled entries are the same bytes", [] {
            const auto typed = diaryIn(filesOf(*typedFolders()));
            RC_ASSERT(typed.has_value());
            std::vector<Entry> shuffled = typed->entries;
            shuffle(shuffled);

            RC_ASSERT(writeFhir(shuffled, kPerson, FhirFile::Summary).json == writeFhir(typed->entries, kPerson, FhirFile::Summary).json);
        });
        QVERIFY(holds);
    }

    void i4_aFileToThePatientHoldsAllOfTheClinicAndNothingElse_data()
    {
        QTest::addColumn<int>("file");
        QTest::newRow("plan") << static_cast<int>(FhirFile::Plan);
        QTest::newRow("visit") << static_cast<int>(FhirFile::Visit);
    }

    void i4_aFileToThePatientHoldsAllOfTheClinicAndNothingElse()
    {
        QFETCH(int, file);
        const bool holds = rc::check("files to the patient", [file] {
            const auto typed = diaryIn(filesOf(*typedFolders()));
            RC_ASSERT(typed.has_value());
            const std::vector<Entry> entries = withWhatTablesLack(typed->entries);
            std::vector<Entry> expected = expectedInSummary(entries);
            std::erase_if(expected, [](const Entry &entry) { return entry.author != Author::Clinic; });

            const auto read = readFhir(writeFhir(entries, kPerson, static_cast<FhirFile>(file)).json);

            RC_LOG(read ? std::string() : problemsIn(read));
            RC_ASSERT(read.has_value());
            RC_ASSERT(byId(read->entries) == byId(expected));
        });
        QVERIFY(holds);
    }

    void aNoteThatWasTakenBackIsNotInASummary()
    {
        const std::string header = "id,day,kind,item,text,recorded_at,replaces,withdrawn\r\n";
        const auto diary = diaryIn(smallFolder({{"notes.csv",
            header
                + "n1,2026-03-03,question,,first words,2026-03-03T07:00:00+00:00,,\r\n"
                  "n2,2026-03-03,question,,second words,2026-03-03T08:00:00+00:00,n1,\r\n"
                  "n3,2026-03-04,note,,unwanted words,2026-03-04T07:00:00+00:00,,\r\n"
                  "n4,2026-03-04,,,,2026-03-04T08:00:00+00:00,n3,1\r\n"}}));
        QVERIFY(diary);

        const FhirBundle bundle = writeFhir(diary->entries, kPerson, FhirFile::Summary);

        QCOMPARE(bundle.notesLeftOut, 2);
        QCOMPARE(bundle.json.find("first words"), std::string::npos);
        QCOMPARE(bundle.json.find("unwanted words"), std::string::npos);
        QVERIFY(bundle.json.find("second words") != std::string::npos);
        const auto read = readFhir(bundle.json);
        QVERIFY2(read, read ? "" : problemsIn(read).c_str());
        const auto taken = std::find_if(read->entries.begin(), read->entries.end(), [](const Entry &entry) { return entry.id == "n4"; });
        QVERIFY(taken != read->entries.end());
        QCOMPARE(taken->replaces, std::optional<std::string>("n3"));
    }

    void aDiaryWithoutEntriesIsAFileToo()
    {
        const auto read = readFhir(writeFhir({}, kPerson, FhirFile::Summary).json);

        QVERIFY2(read, read ? "" : problemsIn(read).c_str());
        QCOMPARE(read->person, kPerson);
        QVERIFY(read->entries.empty());
    }
};

MORROW_SUITE(tst_fhir_round_trip)

#include "tst_fhir_round_trip.moc"
