// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "base/utf8.h"
#include "report/overview.h"
#include "support/diary_builder.h"

using namespace morrow;

namespace {

CivilDay day(const char *text)
{
    return CivilDay::parse(text).value();
}

/// Two weeks of one exercise, one visit and one outcome.
ComplaintMeasures heel()
{
    ComplaintMeasures heel{.complaint = "heel",
        .region = "plantar heel",
        .side = Side::Right,
        .from = day("2026-02-16"),
        .items = {},
        .all = {},
        .check = {},
        .stiffness = {},
        .checkWeeks = {},
        .visits = {},
        .outcomes = {}};
    ItemMeasures item{.item = "raise",
        .exercise = "heel raise",
        .side = Side::Right,
        .stage = 2,
        .stageBegan = day("2026-02-23"),
        .adherence = {},
        .weeks = {}};
    item.adherence.setsDue = 20;
    item.adherence.setsDone = 16;
    item.adherence.setsExtra = 3;
    item.adherence.sessionsDue = 5;
    item.adherence.sessionsAttended = 4;
    item.adherence.sessionsComplete = 2;
    item.adherence.volumeDue = 240;
    item.adherence.volumeDone = 180;
    item.adherence.volumeUnit = VolumeUnit::KgReps;
    item.adherence.volumeRatio = 0.75;
    item.adherence.skips = 1;
    item.adherence.easier = 2;
    item.adherence.away = 7;
    const ItemWeek first{.week = 0,
        .start = day("2026-02-16"),
        .setsDue = 12,
        .setsDone = 8,
        .sets = 9,
        .reps = 105,
        .volume = 120,
        .volumeUnit = VolumeUnit::KgReps,
        .tensionSeconds = std::nullopt,
        .volumeChange = std::nullopt};
    const ItemWeek second{.week = 1,
        .start = day("2026-02-23"),
        .setsDue = 8,
        .setsDone = 8,
        .sets = 10,
        .reps = 81,
        .volume = 99.5,
        .volumeUnit = VolumeUnit::KgReps,
        .tensionSeconds = std::nullopt,
        .volumeChange = -0.17};
    item.weeks = {first, second};
    heel.items = {item};
    heel.check.expected = 14;
    heel.check.recorded = 9;
    heel.check.sameDay = 5;
    heel.check.late = 1;
    heel.check.paper = 3;
    heel.check.declined = 1;
    heel.check.reference = 6;
    heel.check.current = 4;
    heel.check.change = -2;
    heel.check.changeRatio = -1.0 / 3;
    heel.check.clearChange = true;
    heel.checkWeeks = {{.week = 0, .start = day("2026-02-16"), .expected = 7, .recorded = 7, .median = 6.5},
        {.week = 1, .start = day("2026-02-23"), .expected = 7, .recorded = 2, .median = std::nullopt}};
    return heel;
}

QByteArray page(const ComplaintMeasures &complaint, const char *to = "2026-03-01")
{
    return QByteArray::fromStdString(overview(Diary::from({}), {complaint}, day(to)));
}

} // namespace

/// The page says every number, says what is not known, and gives no advice.
class tst_overview : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theFirstLineSaysWhatItIsNot() { QVERIFY(page(heel()).startsWith("This adds up what was recorded. It gives no advice.\n")); }

    void everyComplaintHasItsSideAndDays()
    {
        QVERIFY(page(heel()).contains("\nplantar heel, right\n===================\n16 February to 1 March 2026, 14 days\n"));
    }

    void countsComeBeforeShares()
    {
        const QByteArray text = page(heel());

        QVERIFY(text.contains("heel raise, right: stage 2 since 23 February 2026\n"));
        QVERIFY(text.contains("sets      16 of 20 (80 %), 3 extra\n"));
        QVERIFY(text.contains("sessions  4 of 5 (80 %), 2 with every set\n"));
        QVERIFY(text.contains("volume    180 of 240 kg x reps (75 %)\n"));
        QVERIFY(text.contains("noted     skipped 1, easier dose 2, due although away 7\n"));
    }

    void loadStandsInColumns()
    {
        QVERIFY(page(heel()).contains("    week  from        due  done  sets  reps          volume  change\n"
                                      "       1  2026-02-16   12     8     9   105   120 kg x reps       -\n"
                                      "       2  2026-02-23    8     8    10    81  99.5 kg x reps   -17 %\n"));
    }

    void aWeekOfTooFewEntriesHasNoMedian()
    {
        const QByteArray text = page(heel());

        QVERIFY(text.contains("       1  2026-02-16     6.5  7 of 7\n"));
        QVERIFY(text.contains("       2  2026-02-23       -  too few entries to say (2 of 7)\n"));
    }

    void theCheckIsComparedWithWhatItStartedFrom()
    {
        const QByteArray text = page(heel());

        QVERIFY(text.contains("Due on 14 days, 9 values recorded: 5 on the day, 1 on another, 3 from paper.\n  \"Can't say\": 1.\n"));
        QVERIFY(text.contains("To compare with: 6, the median of the first week.\n"));
        QVERIFY(text.contains("Last 7 days, 23 February to 1 March 2026: median 4.\n"));
        QVERIFY(text.contains("Change: -2 (-33 %)."));
    }

    void whatIsNotKnownIsSaid()
    {
        ComplaintMeasures complaint = heel();
        complaint.check = {};
        complaint.items[0].adherence.volumeDue.reset();
        complaint.visits = {{.day = day("2026-02-20"),
            .before = std::nullopt,
            .afterWeeks = {std::nullopt},
            .change = std::nullopt,
            .seconds = std::nullopt,
            .perCm2 = std::nullopt,
            .totalImpulses = 2000}};

        const QByteArray text = page(complaint);

        QVERIFY(text.contains("volume    not known: "));
        QVERIFY(text.contains("To compare with: nothing."));
        QVERIFY(text.contains("1 March 2026: too few entries to say.\n"));
        QVERIFY(text.contains("Change: too few entries to say.\n"));
        QVERIFY(text.contains("check     before: too few entries; weeks after: too few entries; change: not\n              known\n"));
        QVERIFY(text.contains("given     2000 impulses, seconds: not known, per cm2: not known\n"));
        QVERIFY(text.contains("Outcomes\n--------\n  None recorded.\n"));
    }

    void aChangeIsNotShownInTheFirstTwoWeeks()
    {
        ComplaintMeasures complaint = heel();
        complaint.check.change.reset();

        QVERIFY(page(complaint, "2026-02-28").contains("Change: not shown before the 14th day.\n"));
        QVERIFY(!page(complaint, "2026-03-01").contains("14th day"));
    }

    void visitsAndOutcomesHaveTheirNumbers()
    {
        ComplaintMeasures complaint = heel();
        complaint.visits = {{.day = day("2026-02-20"),
            .before = 6,
            .afterWeeks = {5, std::nullopt, 3.5},
            .change = -2.5,
            .seconds = 208.25,
            .perCm2 = 45.5,
            .totalImpulses = 2500}};
        complaint.outcomes = {{.kind = OutcomeKind::Test,
            .name = "knee to wall",
            .side = Side::Right,
            .n = 3,
            .firstDay = day("2026-02-12"),
            .first = *Decimal::parse("8.5"),
            .lastDay = day("2026-03-01"),
            .last = Decimal::whole(10),
            .change = *Decimal::parse("1.5"),
            .ratio = 0.8}};

        const QByteArray text = page(complaint);

        QVERIFY(text.contains("  20 February 2026\n    check     before: 6; weeks after: 5, too few entries, 3.5; change: -2.5\n"));
        QVERIFY(text.contains("    given     2500 impulses, seconds: 208.2, per cm2: 45.5\n"));
        QVERIFY(
            text.contains("  test: knee to wall, right\n    8.5 on 12 February 2026, 10 on 1 March 2026, change +1.5 (3 entries); 80 %\n"
                          "    of the other side that day\n"));
    }

    void yesAndNoAreNoNumbers()
    {
        ComplaintMeasures complaint = heel();
        complaint.outcomes = {{.kind = OutcomeKind::Acceptable,
            .name = {},
            .side = std::nullopt,
            .n = 2,
            .firstDay = day("2026-02-12"),
            .first = Decimal(),
            .lastDay = day("2026-03-01"),
            .last = Decimal::whole(1),
            .change = Decimal::whole(1),
            .ratio = std::nullopt}};

        QVERIFY(page(complaint).contains("    no on 12 February 2026, yes on 1 March 2026\n"));
    }

    void noLineIsWiderThanThePageAndNoNumberIsLost()
    {
        ComplaintMeasures complaint = heel();
        complaint.region = std::string(300, 'r');
        complaint.items[0].exercise = "ein Wort " + std::string(200, 'w') + " ende";
        complaint.items[0].weeks[0].volume = 123456789012345678.0;
        complaint.items[0].weeks[0].setsDue = 1234567890123;
        complaint.items[0].weeks[0].reps = 9876543210987;

        const QByteArray text = page(complaint);

        for (const QByteArray &line : text.split('\n'))
            QVERIFY2(codePoints(line.toStdString()) <= kPageWidth, line.constData());
        QCOMPARE(text.count('r') >= 300, true);
        QVERIFY(text.contains("123456789012345677 kg") || text.contains("123456789012345680 kg") || text.contains("123456789012345678 kg"));
        QVERIFY(text.contains("due 1234567890123"));
        QVERIFY(text.contains("9876543210987"));
    }

    void wordsOfTheDiaryCannotSteerThePage()
    {
        ComplaintMeasures complaint = heel();
        complaint.region = "heel\n\xe2\x80\xae"
                           "100 of 100";

        QVERIFY(page(complaint).contains("\nheel<U+000A><U+202E>100 of 100, right\n"));
    }

    void theQuestionIsShownAsPlainText()
    {
        Body body;
        body.set(Field::Complaint, std::string("heel"));
        body.set(Field::Place, Decimal::whole(1));
        body.set(Field::Question, std::string("Pain\xe2\x80\xae now"));
        const Diary diary = Diary::from({Entry{"c", Kind::Complaint, day("2026-02-01"), {}, Author::Clinic, {}, body.toJson()}});

        const QByteArray text = QByteArray::fromStdString(overview(diary, {heel()}, day("2026-03-01")));

        QVERIFY(text.contains("  \"Pain<U+202E> now\", 0 (none) to 10\n"));
    }

    void aComplaintWithoutANameIsCalledByItsKey()
    {
        ComplaintMeasures complaint = heel();
        complaint.region.clear();

        QVERIFY(page(complaint).contains("\nheel, right\n"));
    }

    void theReviewStandsBeforeTheTables()
    {
        test::DiaryBuilder builder;
        builder.item(test::item("squat", "2026-03-02", {test::onDays(3, 15)})).sets("2026-03-02", "morning", "squat", 3, 15);
        const Diary diary = builder.diary();
        const CivilDay to = day("2026-03-03");

        const QByteArray text = QByteArray::fromStdString(overview(diary, measure(diary, to).value(), to));

        QVERIFY(text.contains("\n  Done           Did 1 of 2 sessions of squat, 3 of 6 sets.\n"));
        QVERIFY(text.contains("\n  Rule           squat: Your rule for the last stage: "));
        QVERIFY(text.indexOf("\n  Look first") < text.indexOf("\nDue and done\n"));
        for (const QByteArray &line : text.split('\n'))
            QVERIFY2(codePoints(line.toStdString()) <= kPageWidth, line.constData());
    }

    void aComplaintThatHasNotStartedIsNamed()
    {
        Body body;
        body.set(Field::Complaint, std::string("later"));
        body.set(Field::Place, Decimal::whole(1));
        body.set(Field::Region, std::string("shoulder"));
        const Diary diary = Diary::from({Entry{"c", Kind::Complaint, day("2026-05-01"), {}, Author::Clinic, {}, body.toJson()}});

        QVERIFY(QByteArray::fromStdString(overview(diary, {}, day("2026-03-01"))).contains("Not started by then: shoulder.\n"));
    }
};

MORROW_SUITE(tst_overview)
#include "tst_overview.moc"
