// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/ids.h"
#include "exchange/folders.h"
#include "model/body.h"
#include "support/diary_generator.h"
#include "support/entry_layouts.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <sstream>

using namespace morrow;
using namespace morrow::test;

namespace {

std::vector<std::string> split(const std::string &list)
{
    std::vector<std::string> parts;
    std::istringstream in(list);
    for (std::string part; std::getline(in, part, ',');)
        parts.push_back(part);
    return parts;
}

/// The small diary with a visit, a sign that was cleared, a setting and an end, to add to.
TablesDiary told()
{
    return *diaryIn(smallFolder({
        {"complaints.csv",
            "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason\nheel,,,,,,,2026-05-01,better\n"},
        {"settings.csv", "key,value\npatient_ref,q1\nday_starts,03:00\n"},
        {"visits.csv",
            "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note,id\n2026-03-10,,,,,,,,,,,sore,"
            "v\n"},
        {"flags.csv", "id,day,sign,note,recorded_at,cleared_on\nf,2026-03-11,numb,,,2026-03-12\n"},
    }));
}

Entry entry(Kind kind, const char *day, std::initializer_list<std::pair<Field, Body::Value>> fields, std::optional<Moment> recorded = {})
{
    Body body;
    for (const auto &[field, value] : fields)
        body.set(field, value);
    Entry made{{}, kind, *CivilDay::parse(day), recorded, Author::Clinic, {}, body.toJson()};
    Sha256 hash;
    made.id = derivedId(made, hash);
    return made;
}

Body::Value text(const char *words)
{
    return std::string(words);
}

/// The first entry of \a kind in \a diary, changed by \a change and added to it.
template<class Change>
void addLike(TablesDiary &diary, Kind kind, Change change)
{
    Entry like = *std::find_if(diary.entries.begin(), diary.entries.end(), [kind](const Entry &e) { return e.kind == kind; });
    Body body = *BodyReader().read(like.body);
    change(like, body);
    like.body = body.toJson();
    Sha256 hash;
    like.id = derivedId(like, hash);
    diary.entries.push_back(like);
}

int count(const TablesFolder &folder, LeftOut what)
{
    const auto found = folder.leftOut.find(what);
    return found == folder.leftOut.end() ? 0 : found->second;
}

bool holds(const TablesFolder &folder, const char *file, const char *text)
{
    return folder.files.contains(file) && folder.files.at(file).find(text) != std::string::npos;
}

constexpr Moment kNoon{1'773'000'000'000, 60};

} // namespace

/// What is written is what the format asks for, and what it has no place for is counted.
class tst_written : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void whatWasTypedIsNotLeftOut()
    {
        const TablesFolder folder = writeTables(told());

        QVERIFY(folder.leftOut.empty());
        QVERIFY(holds(folder, "visits.csv", "sore"));
        QVERIFY(holds(folder, "flags.csv", "2026-03-12"));
        QVERIFY(holds(folder, "complaints.csv", "better"));
    }

    void anEarlierRevisionOfAPlanIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Plan, [](Entry &like, Body &body) {
            body.set(Field::Number, Decimal::whole(2));
            body.set(Field::By, text("A. M."));
            like.day = like.day + 30;
        });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::EarlierPlanRevisions), 1);
        QCOMPARE(folder.leftOut.size(), std::size_t{1});
        QVERIFY(holds(folder, "settings.csv", "plan_number,2"));
        QVERIFY(holds(folder, "settings.csv", "plan_from,2026-04-01"));
        QVERIFY(holds(folder, "settings.csv", "plan_by,A. M."));
    }

    void anEarlierWordingOfAComplaintIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Complaint, [](Entry &like, Body &body) {
            body.set(Field::Region, text("heel bone"));
            like.recorded = kNoon;
        });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::EarlierComplaints), 1);
        QCOMPARE(count(folder, LeftOut::OriginOfDerived), 1);
        QCOMPARE(folder.leftOut.size(), std::size_t{2});
        QVERIFY(holds(folder, "complaints.csv", "heel bone"));
    }

    void anEarlierSettingIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Setting, [](Entry &like, Body &body) {
            body.set(Field::Value, text("05:00"));
            like.recorded = kNoon;
        });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::EarlierSettings), 1);
        QVERIFY(holds(folder, "settings.csv", "day_starts,05:00"));
        QVERIFY(!holds(folder, "settings.csv", "03:00"));
    }

    void anEarlierMemoIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Memo, [](Entry &like, Body &body) {
            body.set(Field::Note, text("less sore"));
            like.recorded = kNoon;
        });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::EarlierMemos), 1);
        QVERIFY(holds(folder, "visits.csv", "less sore"));
    }

    void allButTheEarliestClearingIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Cleared, [](Entry &like, Body &) { like.day = like.day + 3; });
        addLike(diary, Kind::Cleared, [](Entry &like, Body &) { like.day = like.day + 5; });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::LaterClears), 2);
        QCOMPARE(folder.leftOut.size(), std::size_t{1});
        QVERIFY(holds(folder, "flags.csv", "2026-03-12"));
    }

    void anEarlierClosingIsCounted()
    {
        TablesDiary diary = told();
        addLike(diary, Kind::Closed, [](Entry &like, Body &body) {
            body.set(Field::EndReason, text("moved away"));
            like.recorded = kNoon;
        });

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::EarlierClosings), 1);
        QVERIFY(holds(folder, "complaints.csv", "moved away"));
    }

    void whatStaysAtHomeOrAtTheDeskIsCounted()
    {
        TablesDiary diary = told();
        diary.entries.push_back(entry(Kind::Handed, "2026-03-20", {{Field::File, text("ab")}}));
        diary.entries.push_back(entry(Kind::KnownAs, "2026-03-20", {{Field::Label, text("H.")}}));
        diary.entries.push_back(entry(Kind::Alias, "2026-03-20", {{Field::Ref, text("q2")}}));
        diary.entries.push_back(entry(Kind::SetAside, "2026-03-20", {{Field::File, text("cd")}}));

        const TablesFolder folder = writeTables(diary);

        QCOMPARE(count(folder, LeftOut::Handed), 1);
        QCOMPARE(count(folder, LeftOut::DeskOnly), 3);
        QCOMPARE(folder.leftOut.size(), std::size_t{2});
        QVERIFY(folder.files == writeTables(told()).files);
    }

    void anOriginThatTablesDoNotKeepIsCounted_data()
    {
        QTest::addColumn<int>("kind");

        for (const Kind kind : {Kind::Cleared, Kind::Closed, Kind::Complaint, Kind::Plan, Kind::Setting, Kind::Memo})
            QTest::newRow(std::string(name(kind)).c_str()) << static_cast<int>(kind);
    }

    void anOriginThatTablesDoNotKeepIsCounted()
    {
        QFETCH(int, kind);
        for (const bool byId : {true, false}) {
            TablesDiary diary = told();
            for (Entry &one : diary.entries) {
                if (one.kind != static_cast<Kind>(kind))
                    continue;
                one.id = byId ? "given" : one.id;
                if (!byId)
                    one.recorded = kNoon;
            }

            const TablesFolder folder = writeTables(diary);

            QCOMPARE(count(folder, LeftOut::OriginOfDerived), 1);
            QVERIFY(folder.files == writeTables(told()).files);
        }
    }

    void rowsOfOneThingThatWouldBeRefusedGetTheirIds()
    {
        // Typed on two sheets that met: reading again has to take both.
        TablesDiary diary = told();
        for (const int pain : {4, 5}) {
            Entry check = entry(Kind::Check, "2026-03-03", {{Field::Complaint, text("heel")}, {Field::Pain, Decimal::whole(pain)}});
            check.author = Author::Patient;
            Sha256 hash;
            check.id = derivedId(check, hash);
            diary.entries.push_back(check);
        }

        std::string why;
        const auto again = diaryIn(written(diary), &why);

        QVERIFY2(again, why.c_str());
        QCOMPARE(std::count_if(again->entries.begin(), again->entries.end(), [](const Entry &e) { return e.kind == Kind::Check; }), 2);
    }

    void theMetadataNameEveryFileAndItsColumnsInOrder()
    {
        const bool good = rc::check("csv-metadata.json describes what is written", [] {
            const Files files = written(*diaryIn(filesOf(*typedFolders())));

            QJsonParseError error{};
            const QJsonDocument metadata = QJsonDocument::fromJson(QByteArray::fromStdString(files.at("csv-metadata.json")), &error);
            RC_ASSERT(error.error == QJsonParseError::NoError);
            RC_ASSERT(metadata[QStringLiteral("@context")].toString() == QStringLiteral("http://www.w3.org/ns/csvw"));
            Files headers;
            for (const auto &table : metadata[QStringLiteral("tables")].toArray()) {
                std::string &header = headers[table[QStringLiteral("url")].toString().toStdString()];
                RC_ASSERT(header.empty()); // each once
                for (const auto &column : table[QStringLiteral("tableSchema")][QStringLiteral("columns")].toArray()) {
                    header += (header.empty() ? "" : ",") + column[QStringLiteral("name")].toString().toStdString();
                    RC_ASSERT(!column[QStringLiteral("datatype")].isUndefined());
                }
            }

            RC_ASSERT(headers.size() == files.size() - 1);
            for (const auto &[name, bytes] : files) {
                if (name != "csv-metadata.json")
                    RC_ASSERT(headers.at(name) == bytes.substr(0, bytes.find("\r\n")));
            }
        });
        QVERIFY(good);
    }

    void theMetadataSayWhatACellIs()
    {
        const Files files = written(told());
        const QJsonDocument metadata = QJsonDocument::fromJson(QByteArray::fromStdString(files.at("csv-metadata.json")));
        QMap<QString, QJsonValue> types;
        for (const auto &table : metadata[QStringLiteral("tables")].toArray()) {
            for (const auto &column : table[QStringLiteral("tableSchema")][QStringLiteral("columns")].toArray())
                types.insert(table[QStringLiteral("url")].toString() + QLatin1Char(' ') + column[QStringLiteral("name")].toString(),
                    column[QStringLiteral("datatype")]);
        }

        // W3C Metadata Vocabulary for Tabular Data, 5.11: datatypes.
        const QJsonValue pain = types.value(QStringLiteral("visits.csv pain_during"));
        QCOMPARE(pain[QStringLiteral("base")].toString(), QStringLiteral("integer"));
        QCOMPARE(pain[QStringLiteral("minimum")].toInt(-1), 0);
        QCOMPARE(pain[QStringLiteral("maximum")].toInt(-1), 10);
        QCOMPARE(types.value(QStringLiteral("visits.csv day"))[QStringLiteral("base")].toString(), QStringLiteral("date"));
        QCOMPARE(types.value(QStringLiteral("flags.csv recorded_at")).toString(), QStringLiteral("dateTimeStamp"));
        QCOMPARE(types.value(QStringLiteral("visits.csv side"))[QStringLiteral("format")].toString(), QStringLiteral("left|right|both"));
        QCOMPARE(types.value(QStringLiteral("visits.csv note")).toString(), QStringLiteral("string"));
    }

    void anOptionalColumnIsThereWhereARowNeedsIt()
    {
        const bool good = rc::check("no optional column is empty, and none of the others is missing", [] {
            const Files files = written(*diaryIn(filesOf(*typedFolders())));

            for (const Layout &layout : layouts()) {
                if (!files.contains(layout.file))
                    continue;
                const auto rows = rowsOf(files.at(layout.file));
                const auto needed = split(layout.header);
                RC_ASSERT(rows.size() > 1);
                RC_ASSERT(std::equal(needed.begin(), needed.end(), rows[0].begin())); // in the format's order, ahead of the others
                for (std::size_t column = needed.size(); column < rows[0].size(); ++column)
                    RC_ASSERT(std::any_of(rows.begin() + 1, rows.end(), [column](const auto &row) { return !row[column].empty(); }));
            }
        });
        QVERIFY(good);
    }

    void aFileIsCsvAsTheStandardWritesIt()
    {
        const Files files = written(told());

        QCOMPARE(files.at("visits.csv"),
            std::string("day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note,id\r\n"
                        "2026-03-10,,,,,,,,,,,sore,v\r\n"));
        QCOMPARE(files.at("settings.csv"), std::string("key,value\r\npatient_ref,q1\r\nday_starts,03:00\r\n"));
    }

    void aDiaryWithoutPlanIsWrittenAsAHeader()
    {
        const Files files = written({{}, {}});

        QCOMPARE(files.size(), std::size_t{3}); // plan.csv, complaints.csv, csv-metadata.json
        QCOMPARE(std::count(files.at("plan.csv").begin(), files.at("plan.csv").end(), '\n'), 1);
        const auto again = diaryIn(files);
        QVERIFY(again && again->entries.empty() && !again->person);
    }
};

MORROW_SUITE(tst_written)

#include "tst_written.moc"
