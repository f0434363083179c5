// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "Charts/course_model.h"
#include "qml/desk/sitting.h"
#include "support/diary_builder.h"

namespace morrow::test {

namespace {

Course courseOf(const DiaryBuilder &builder, Day from, Day to)
{
    const Diary diary = builder.diary();
    return morrow::courseOf(diary, diary.complaints().front(), from, to);
}

using Points = QList<QPointF>;

QString said(const std::vector<WorkInWeek> &weeks)
{
    QStringList all;
    for (const WorkInWeek &week : weeks)
        all << QStringLiteral("%1..%2: %3 of %4")
                   .arg(QString::fromStdString(week.first.toString()), QString::fromStdString(week.last.toString()))
                   .arg(*week.done)
                   .arg(*week.due);
    return all.join(QStringLiteral("; "));
}

} // namespace

/// What the chart draws, for diaries small enough to count by hand.
class tst_course : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aDayWithoutAnAnswerIsAGap()
    {
        DiaryBuilder builder;
        builder.checks("2026-03-02", {4, 5, -1, 0, 3});
        builder.declined("2026-03-07");
        CourseModel model;
        model.setCourse(courseOf(builder, "2026-03-02", "2026-03-08"));

        QCOMPARE(model.days(), 7);
        QCOMPARE(model.runs(), 2);
        QCOMPARE(model.run(0), (Points{{0, 4}, {1, 5}}));
        QCOMPARE(model.run(1), (Points{{3, 0}, {4, 3}}));
        QCOMPARE(model.run(2), Points());
    }

    void anAnswerIsDrawnByHowItWasEntered()
    {
        DiaryBuilder builder;
        builder.check("2026-03-02", 4, std::nullopt, {.recorded = "2026-03-02T08:00:00+01:00"})
            .check("2026-03-03", 5, std::nullopt, {.recorded = "2026-03-04T08:00:00+01:00"})
            .check("2026-03-04", 6);
        CourseModel model;
        model.setCourse(courseOf(builder, "2026-03-02", "2026-03-08"));

        QCOMPARE(model.pain(Entered::SameDay), (Points{{0, 4}}));
        QCOMPARE(model.pain(Entered::Late), (Points{{1, 5}}));
        QCOMPARE(model.pain(Entered::Paper), (Points{{2, 6}}));
    }

    void workIsTheVolumeOfWhatLoads()
    {
        DiaryBuilder builder;
        Item stretch = item("stretch", "2026-03-02", {held(onDays(2, 1), 30)});
        stretch.loads = false;
        builder.item(item("raise", "2026-03-02", {loaded(onDays(3, 10), "5")})).item(stretch);
        builder.sets("2026-03-02", "morning", "raise", 3, 10)
            .sets("2026-03-02", "morning", "stretch", 2, 1)
            .sets("2026-03-10", "morning", "raise", 4, 10);
        const Course course = courseOf(builder, "2026-03-02", "2026-03-10");

        QCOMPARE(course.unit, std::optional(VolumeUnit::KgReps));
        QCOMPARE(said(course.weeks), QStringLiteral("2026-03-02..2026-03-08: 150 of 1050; 2026-03-09..2026-03-10: 200 of 300"));
    }

    void aBarRunsFromTheFirstToTheLastDayOfItsWeek()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "2026-03-02", {loaded(onDays(3, 10), "5")})).sets("2026-03-02", "morning", "raise", 3, 10);
        CourseModel model;
        model.setCourse(courseOf(builder, "2026-03-02", "2026-03-08"));

        QCOMPARE(model.work(), (Points{{-0.4, 0}, {-0.4, 150}, {6.4, 150}, {6.4, 0}}));
        QCOMPARE(model.prescribed(), (Points{{-0.5, 1050}, {6.5, 1050}}));
    }

    void workIsCountedInSetsWhereUnitsDiffer()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "2026-03-02", {loaded(onDays(3, 10), "5")})).item(item("hold", "2026-03-02", {held(onDays(2, 1), 30)}));
        builder.sets("2026-03-02", "morning", "raise", 3, 10).sets("2026-03-02", "morning", "hold", 2, 1);
        const Course course = courseOf(builder, "2026-03-02", "2026-03-08");

        QCOMPARE(course.unit, std::nullopt);
        QCOMPARE(said(course.weeks), QStringLiteral("2026-03-02..2026-03-08: 5 of 35"));
    }

    void visitsKeepTheirNumberInALaterWindow()
    {
        DiaryBuilder builder;
        builder.visit("2026-03-02").visit("2026-03-09").visit("2026-03-09");
        builder.visit("2026-03-16");
        const Course course = courseOf(builder, "2026-03-09", "2026-03-16");

        QCOMPARE(course.visits.size(), std::size_t{2});
        QCOMPARE(course.visits[0].number, 2);
        QCOMPARE(course.visits[1].number, 3);
    }

    void anUnusualDayIsMarkedInThePersonsWords()
    {
        DiaryBuilder builder;
        builder.check("2026-03-02", 3);
        builder.entry(Kind::Unusual, "2026-03-03", body({{Field::Text, std::string("long drive")}}), {.id = "first"});
        builder.entry(Kind::Unusual, "2026-03-03", body({{Field::Text, std::string("very long drive")}}), {.replaces = "first"});
        CourseModel model;
        model.setCourse(courseOf(builder, "2026-03-02", "2026-03-08"));

        QCOMPARE(model.marks(), 1);
        QCOMPARE(model.markDay(0), 1);
        QCOMPARE(model.markWords(0), QStringLiteral("very long drive"));
        QVERIFY(!model.markIsVisit(0));
    }

    void theAxisOfWorkEndsOnARoundNumberAboveAllOfIt_data()
    {
        QTest::addColumn<double>("most");
        QTest::addColumn<double>("end");

        QTest::newRow("nothing") << 0.0 << 1.0;
        QTest::newRow("on the mark") << 20.0 << 20.0;
        QTest::newRow("just above") << 21.0 << 30.0;
        QTest::newRow("large") << 10500.0 << 12000.0;
        QTest::newRow("nine") << 9.0 << 10.0;
    }

    void theAxisOfWorkEndsOnARoundNumberAboveAllOfIt()
    {
        QFETCH(double, most);
        QFETCH(double, end);
        const CivilDay first = day("2026-03-02");
        CourseModel model;
        model.setCourse(Course{.from = first, .to = first + 6, .weeks = {{first, first + 6, most, 0.0}}});

        QCOMPARE(model.mostWork(), end);
    }

    void behindTheWorkOfAWeekAreItsDoneSetsAndWhatDecidedOnThoseThatWereDue()
    {
        DiaryBuilder builder;
        Item stretch = item("stretch", "2026-03-02", {held(onDays(2, 1), 30)});
        stretch.loads = false;
        builder.item(item("raise", "2026-03-02", {loaded(onDays(3, 10), "5"), loaded(onDays(4, 10), "5")})).item(stretch);
        builder.set("2026-03-03", "morning", "raise", 1, 10, {}, {.id = "first"})
            .set("2026-03-08", "morning", "raise", 1, 10, {}, {.id = "last"})
            .set("2026-03-08", "morning", "raise", 2, 0, {}, {.id = "not-done"})
            .set("2026-03-08", "morning", "stretch", 1, 1, {}, {.id = "no-load"})
            .set("2026-03-09", "morning", "raise", 1, 10, {}, {.id = "next-week"})
            .stage("2026-03-05", "raise", 2, {.id = "stage"});
        const Diary diary = builder.diary();
        const ComplaintDiary &complaint = diary.complaints().front();
        const Course course = morrow::courseOf(diary, complaint, day("2026-03-02"), day("2026-03-10"));
        const auto said = [&diary](const std::vector<EntryIndex> &entries) {
            QStringList ids;
            for (const EntryIndex entry : entries)
                ids << QString::fromStdString(diary.entries()[entry].id);
            return ids.join(QLatin1Char(' '));
        };

        const BehindWork behind = behindWork(diary, complaint, course.weeks.front());

        QCOMPARE(said(behind.done), QStringLiteral("first last stage"));
        QCOMPARE(said(behind.due), QStringLiteral("stage"));
        QCOMPARE(said(behindWork(diary, complaint, course.weeks.back()).done), QStringLiteral("next-week stage"));
    }

    void aRowOfTheTableKeepsTheEntriesOfItsDay()
    {
        DiaryBuilder builder;
        builder.check("2026-03-03", 4, std::nullopt, {.id = "check"}).visit("2026-03-03", {}, {.id = "visit"});
        builder.entry(Kind::Unusual, "2026-03-03", body({{Field::Text, std::string("long drive")}}), {.id = "drive"});
        const Diary diary = builder.diary();
        CourseModel model;
        model.setCourse(morrow::courseOf(diary, diary.complaints().front(), day("2026-03-02"), day("2026-03-08")));

        const CourseRows::Row *const row = model.rows()->row(0);
        QCOMPARE(row->whole, QStringLiteral("3 March 2026: pain 4, from paper; visit 1; long drive"));
        QStringList ids;
        for (const CourseRows::Said &said : row->said) {
            for (const EntryIndex entry : said.entries)
                ids << said.words + QStringLiteral(" = ") + QString::fromStdString(diary.entries()[entry].id);
        }
        QCOMPARE(ids,
            (QStringList{
                QStringLiteral("pain 4, from paper = check"), QStringLiteral("visit 1 = visit"), QStringLiteral("long drive = drive")}));
        QVERIFY(model.rows()->row(1) == nullptr);
        QVERIFY(model.rows()->row(-1) == nullptr);
    }

    void thePaperDiaryHasTheNumbersOfItsMeasures()
    {
        const Diary diary = Diary::from(bakersDiary());
        const auto course = morrow::courseOf(diary, diary.complaints().front(), day("2026-02-16"), day("2026-04-27"));

        QCOMPARE(course.pain.size(), std::size_t{60}); // as demo-data/README.md counts from the rows
        QCOMPARE(course.unusual.size(), std::size_t{2});
        QCOMPARE(course.visits.size(), std::size_t{5});
    }
};

MORROW_SUITE(tst_course)

} // namespace morrow::test

#include "tst_course.moc"
