// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/demo.h"
#include "batch/program.h"
#include "batch/table_folder.h"
#include "model/body.h"
#include "model/rules.h"
#include "support/reference_table.h"

#include <QFile>
#include <QJsonValue>

#include <set>

using namespace morrow;
using namespace morrow::test;

namespace {

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("(not there)");
}

QStringList namesIn(const QString &folder)
{
    return QDir(folder).entryList(QDir::Files, QDir::Name);
}

/// Sets, repetitions and rhythm of every stage of \a item, as `sets x reps rhythm`, ...
std::vector<std::string> dosesOf(const TablesDiary &diary, std::string_view complaint)
{
    std::vector<std::string> doses;
    BodyReader reader;
    for (const Entry &entry : diary.entries) {
        const auto body = reader.read(entry.body);
        if (entry.kind != Kind::Plan || body->textOr(Field::Complaint) != complaint)
            continue;
        for (const Body &item : *body->list(Field::Items)) {
            if (item.intOr(Field::Loads, 1) == 0)
                continue; // a stretch, which is ours
            for (const Body &stage : *item.list(Field::Stages)) {
                const std::string_view slots = stage.textOr(Field::Slots);
                doses.push_back(std::to_string(stage.intOr(Field::Sets, 0)) + " x " + std::to_string(stage.intOr(Field::Reps, 0)) + " "
                    + std::string(stage.textOr(Field::Rrule)) + (slots.find(' ') != std::string_view::npos ? " twice" : "")
                    + (stage.has(Field::PerWeek) ? std::to_string(stage.intOr(Field::PerWeek, 0)) + " a week" : ""));
            }
        }
    }
    return doses;
}

/// The same as the reference table has it, each stage once.
std::vector<std::string> published(std::string_view programme)
{
    std::vector<std::string> doses;
    for (const ReferenceRow &row : referenceRows("programmes.csv")) {
        if (row.at("programme") == programme)
            doses.push_back(row.at("sets") + " x " + row.at("reps") + " " + row.at("rrule")
                + (row.at("slots_per_day") == "2" ? " twice" : "") + (row.at("per_week").empty() ? "" : row.at("per_week") + " a week"));
    }
    return doses;
}

std::vector<std::string> repeated(const std::vector<std::string> &doses, std::size_t times)
{
    std::vector<std::string> all;
    for (; times > 0; --times)
        all.insert(all.end(), doses.begin(), doses.end());
    return all;
}

} // namespace

/// The demo is the same everywhere, is what lies in demo-data, and is a diary as a person's is.
class tst_demo : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void writesWhatLiesInDemoData()
    {
        const TableFolder folder;

        const Outcome outcome = run({QStringLiteral("demo"), folder.path("new")}, {.zone = "EAST-14"});

        QCOMPARE(outcome.err, QByteArray());
        QCOMPARE(outcome.status, 0);
        for (const char *person : {"runner", "two-complaints"}) {
            const QString made = folder.path("new/") + QString::fromLatin1(person);
            const QString kept = QStringLiteral(MORROW_DEMO_DATA "/") + QString::fromLatin1(person);
            QCOMPARE(namesIn(made), namesIn(kept));
            QVERIFY(namesIn(made).contains(QStringLiteral("plan.csv")));
            const QStringList names = namesIn(made);
            for (const QString &name : names)
                QVERIFY2(bytesOf(made + QLatin1Char('/') + name) == bytesOf(kept + QLatin1Char('/') + name), qPrintable(made + name));
        }
    }

    void isAcceptedAndMeasured()
    {
        const Outcome outcome = run({QStringLiteral("check"), QStringLiteral(MORROW_DEMO_DATA "/runner"),
            QStringLiteral(MORROW_DEMO_DATA "/two-complaints"), QStringLiteral(MORROW_DEMO_DATA "/paper")});

        QCOMPARE(outcome.err, QByteArray());
        QCOMPARE(outcome.status, 0);
    }

    void refusesAFolderThatIsThereAndWritesNothing()
    {
        TableFolder folder;
        QVERIFY(QDir(folder.path()).mkdir(QStringLiteral("two-complaints")));
        const QByteArray before = folder.contents();

        const Outcome outcome = run({QStringLiteral("demo"), folder.path()});

        QCOMPARE(outcome.err, folder.path("two-complaints").toUtf8() + " was not written: there is something at that place already.\n");
        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.out, QByteArray());
        QCOMPARE(folder.contents(), before);
    }

    void everyEntryIsOneThatCouldHaveBeenMade_data()
    {
        QTest::addColumn<bool>("isRunner");

        QTest::newRow("runner") << true;
        QTest::newRow("two complaints") << false;
    }

    void everyEntryIsOneThatCouldHaveBeenMade()
    {
        QFETCH(bool, isRunner);
        const TablesDiary diary = isRunner ? batch::demoRunner() : batch::demoTwoComplaints();
        const auto november = *CivilDay::parse("2026-11-01");
        BodyReader reader;
        std::set<std::string_view> ids;
        for (const Entry &entry : diary.entries) {
            const auto body = reader.read(entry.body);
            QVERIFY2(body.has_value(), entry.body.c_str());
            QVERIFY2(problemsOf(entry.kind, *body, entry.day).empty(), entry.body.c_str());
            QVERIFY2(ids.insert(entry.id).second, entry.id.c_str());
            QVERIFY2(entry.day < november, entry.day.toString().c_str());
            const KindRule &rule = ruleOf(entry.kind);
            QVERIFY(entry.author == Author::Clinic ? rule.clinic : rule.patient);
            if (!entry.recorded)
                continue;
            QVERIFY2(diaryDay(*entry.recorded, std::chrono::minutes{240}) >= entry.day || entry.kind == Kind::Pause, entry.body.c_str());
            // UUID version 7 of RFC 9562: the first 48 bits are the milliseconds of its making, and no two entries of
            // one millisecond run past it.
            QCOMPARE(entry.id[14], '7');
            QCOMPARE(
                QByteArray::fromStdString(entry.id.substr(0, 8) + entry.id.substr(9, 4)).toLongLong(nullptr, 16), entry.recorded->utcMs);
        }
        // tables -> entries gives the entries that were written, those that tables cannot carry apart.
        const TablesFolder folder = writeTables(diary);
        QCOMPARE(folder.leftOut.size(), std::size_t{0});
    }

    void everythingThatHappensToADiaryHappens()
    {
        std::set<std::string> seen;
        BodyReader reader;
        for (const TablesDiary &diary : {batch::demoRunner(), batch::demoTwoComplaints()}) {
            for (const Entry &entry : diary.entries) {
                const auto body = reader.read(entry.body);
                seen.insert(std::string(name(entry.kind)));
                if (entry.replaces)
                    seen.insert(body->has(Field::Withdrawn) ? "withdrawn" : "corrected");
                if (entry.kind == Kind::Check && !entry.recorded)
                    seen.insert("paper");
                if (entry.kind == Kind::Check && entry.recorded && diaryDay(*entry.recorded, std::chrono::minutes{240}) > entry.day)
                    seen.insert("late");
                if (entry.kind == Kind::Check && body->intOr(Field::Declined, 0) == 1)
                    seen.insert("declined");
                if (entry.author == Author::Helper)
                    seen.insert("helper");
                if (entry.recorded)
                    seen.insert("offset " + std::to_string(entry.recorded->offsetMinutes));
            }
        }

        // Summer and winter time of both cities; and every kind that tables hold but one: no plan was put aside.
        for (const char *thing : {"withdrawn", "corrected", "paper", "late", "declined", "helper", "offset 0", "offset 60", "offset 120",
                 "offset 180", "check", "set", "session", "skip", "easier", "stage", "setting", "unusual", "note", "flag", "outcome",
                 "pause", "visit", "heard", "complaint", "plan", "cleared", "closed", "memo"})
            QVERIFY2(seen.contains(thing), thing);
    }

    void dosesAreThePublishedOnes()
    {
        const TablesDiary two = batch::demoTwoComplaints();

        QCOMPARE(dosesOf(batch::demoRunner(), "knees"), repeated(published("kongsgaard"), 3));
        QCOMPARE(dosesOf(two, "shoulder"), repeated(published("holmgren"), 5));
        // Two exercises; three stages of one dose, which differ in the load.
        QCOMPARE(dosesOf(two, "achilles"), repeated(published("alfredson"), 2 * 3));
    }
};

MORROW_SUITE(tst_demo)
#include "tst_demo.moc"
