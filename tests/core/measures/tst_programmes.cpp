// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"
#include "support/reference_table.h"

#include <algorithm>
#include <numeric>

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr const char *kStart = "2026-01-05"; // a Monday

Stage stageOf(const ReferenceRow &row)
{
    Stage stage = row.at("per_week").empty() ? onDays(wholeCell(row, "sets"), wholeCell(row, "reps"), row.at("rrule"),
                      row.at("slots_per_day") == "2" ? std::vector<std::string>{"morning", "evening"} : std::vector<std::string>{"morning"})
                                             : perWeek(wholeCell(row, "sets"), wholeCell(row, "reps"), wholeCell(row, "per_week"));
    if (!row.at("up_s").empty()) {
        stage.dose.upSeconds = wholeCell(row, "up_s");
        stage.dose.pauseSeconds = wholeCell(row, "pause_s");
        stage.dose.downSeconds = wholeCell(row, "down_s");
    }
    return stage;
}

/// Does a whole week, or the days of a rule, exactly as prescribed.
void doAsPrescribed(DiaryBuilder &builder, const std::string &item, const Stage &stage, CivilDay first, int weeks)
{
    const CivilDay start = day(kStart);
    for (CivilDay on = first; on < first + 7 * weeks; on = on + 1) {
        if (const auto *week = std::get_if<PerWeek>(&stage.rhythm)) {
            if ((on - first) % 7 % 2 == 0 && (on - first) % 7 / 2 < week->sessions) // Monday, Wednesday, Friday
                builder.sets(on, "day", item, stage.dose.sets, stage.dose.reps);
            continue;
        }
        const auto &days = std::get<OnDays>(stage.rhythm);
        for (const std::string &slot : days.slots) {
            if (days.rule.falls(on, start))
                builder.sets(on, slot, item, stage.dose.sets, stage.dose.reps);
        }
    }
}

struct Programme
{
    ComplaintMeasures measures;
    std::vector<int> stageWeeks; ///< how long each stage lasts
    int setsTotal; ///< of the table
    int repsTotal;
};

/// A perfect diary of the programme called \a name, with its stage changes.
Programme perfect(const std::string &name)
{
    std::vector<ReferenceRow> rows = referenceRows("programmes.csv");
    std::erase_if(rows, [&name](const ReferenceRow &row) { return row.at("programme") != name; });
    std::vector<Stage> stages;
    std::vector<int> stageWeeks;
    int setsTotal = 0;
    int repsTotal = 0;
    for (const ReferenceRow &row : rows) {
        stages.push_back(stageOf(row));
        stageWeeks.push_back(wholeCell(row, "weeks"));
        setsTotal += wholeCell(row, "sets_total");
        repsTotal += wholeCell(row, "reps_total");
    }
    DiaryBuilder builder;
    const CivilDay start = day(kStart);
    for (int exercise = 1; exercise <= wholeCell(rows.front(), "exercises"); ++exercise) {
        const std::string key = "exercise-" + std::to_string(exercise);
        builder.item(item(key, start, stages));
        CivilDay first = start;
        for (std::size_t stage = 0; stage < stages.size(); ++stage) {
            if (stage > 0)
                builder.stage(first, key, static_cast<int>(stage) + 1);
            doAsPrescribed(builder, key, stages[stage], first, stageWeeks[stage]);
            first = first + 7 * stageWeeks[stage];
        }
    }
    const int weeks = std::accumulate(stageWeeks.begin(), stageWeeks.end(), 0);
    return {measured(builder, start + (7 * weeks - 1)), stageWeeks, setsTotal, repsTotal};
}

/// The reps of week \a week over all exercises.
std::int64_t repsOfWeek(const ComplaintMeasures &measures, std::size_t week)
{
    std::int64_t reps = 0;
    for (const ItemMeasures &item : measures.items)
        reps += item.weeks.at(week).reps;
    return reps;
}

std::int64_t repsDue(const ComplaintMeasures &measures)
{
    double reps = 0;
    for (const ItemMeasures &item : measures.items)
        reps += item.adherence.volumeDue.value();
    return static_cast<std::int64_t>(reps);
}

} // namespace

/// A perfect diary of a published programme comes to the published numbers.
class tst_programmes : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aPerfectDiaryComesToThePublishedTotals_data()
    {
        QTest::addColumn<int>("weeks");
        QTest::addColumn<int>("sets"); // 0: not published as a total
        QTest::addColumn<int>("reps");
        QTest::addColumn<int>("sessions"); // of one exercise

        // Alfredson H et al. Am J Sports Med 1998;26:360-366
        QTest::newRow("alfredson") << 12 << 1008 << 15120 << 168;
        // Beyer R et al. Am J Sports Med 2015;43:1704-1711
        QTest::newRow("beyer") << 12 << 405 << 3501 << 36;
        // Kongsgaard M et al. Scand J Med Sci Sports 2009;19:790-802
        QTest::newRow("kongsgaard") << 12 << 432 << 3852 << 36;
        // Rathleff MS et al. Scand J Med Sci Sports 2015;25:e292-300
        QTest::newRow("rathleff") << 12 << 189 << 1652 << 42;
        // Holmgren T et al. BMJ 2012;344:e787
        QTest::newRow("holmgren") << 12 << 2100 << 31500 << 140;
    }

    void aPerfectDiaryComesToThePublishedTotals()
    {
        QFETCH(int, weeks);
        QFETCH(int, sets);
        QFETCH(int, reps);
        QFETCH(int, sessions);

        const Programme programme = perfect(QTest::currentDataTag());
        const ComplaintMeasures &found = programme.measures;

        QCOMPARE(programme.setsTotal, sets);
        QCOMPARE(programme.repsTotal, reps);
        QCOMPARE(found.all.setsDue, sets);
        QCOMPARE(found.all.setsDone, sets);
        QCOMPARE(found.all.setsExtra, 0);
        QCOMPARE(found.all.setRatio, std::optional(1.0));
        QCOMPARE(found.all.sessionRatio, std::optional(1.0));
        QCOMPARE(repsDue(found), reps);
        std::int64_t recorded = 0;
        for (int week = 0; week < weeks; ++week)
            recorded += repsOfWeek(found, static_cast<std::size_t>(week));
        QCOMPARE(recorded, reps);
        for (const ItemMeasures &item : found.items) {
            QCOMPARE(item.adherence.sessionsDue, sessions);
            QCOMPARE(item.adherence.sessionsAttended, sessions);
            QCOMPARE(item.adherence.sessionsComplete, sessions);
            QCOMPARE(item.adherence.volumeRatio, std::optional(1.0));
            QCOMPARE(item.weeks.size(), weeks);
            QCOMPARE(item.stage, static_cast<int>(programme.stageWeeks.size()));
        }
    }

    void alfredsonIs180RepsADayAnd1260AWeek()
    {
        // Alfredson H et al. Am J Sports Med 1998;26:360-366
        const Programme programme = perfect("alfredson");

        for (std::size_t week = 0; week < 12; ++week)
            QCOMPARE(repsOfWeek(programme.measures, week), 1260);
        QCOMPARE(programme.measures.items.size(), 2);
        for (const ItemMeasures &item : programme.measures.items)
            QCOMPARE(item.adherence.setsDue * 15, 180 / 2 * 84);
    }

    void timeUnderTensionIsThatOfThePublishedTempo()
    {
        // Rathleff MS et al. Scand J Med Sci Sports 2015;25:e292-300: 3 s up, 2 s hold, 3 s down
        const Programme programme = perfect("rathleff");
        std::int64_t seconds = 0;
        for (const ItemWeek &week : programme.measures.items[0].weeks)
            seconds += week.tensionSeconds.value();

        QCOMPARE(seconds, 1652 * 8);
    }

    void aPerfectDiaryOfNoTempoHasNoTension()
    {
        // Alfredson H et al. Am J Sports Med 1998;26:360-366 gives none in the table
        const Programme programme = perfect("alfredson");
        for (const ItemWeek &week : programme.measures.items[0].weeks)
            QVERIFY(!week.tensionSeconds);
    }
};

MORROW_SUITE(tst_programmes)

#include "tst_programmes.moc"
