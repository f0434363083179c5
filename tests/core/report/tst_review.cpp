// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/utf8.h"
#include "core/measures/random_diary.h"
#include "report/plain_text.h"
#include "report/review.h"
#include "support/diary_builder.h"

#include <rapidcheck.h>

#include <algorithm>
#include <functional>

using namespace morrow;
using namespace morrow::test;

namespace {

Review reviewed(const Diary &diary, CivilDay to)
{
    return review(diary, measure(diary, to).value().front(), to);
}

/// The same with counts over the days from \a from on.
Review reviewedFrom(const DiaryBuilder &builder, CivilDay from, CivilDay to)
{
    const Diary diary = builder.diary();
    return review(diary, measure(diary, to, from).value().front(), to);
}

Review reviewed(const DiaryBuilder &builder, Day to)
{
    return reviewed(builder.diary(), to);
}

std::vector<std::string> linesOf(const Review &review, ReviewPart part)
{
    std::vector<std::string> lines;
    for (const ReviewLine &line : review.lines) {
        if (line.part == part)
            lines.push_back(line.text());
    }
    return lines;
}

/// The lines of \a part one below the other.
QByteArray said(const Review &review, ReviewPart part)
{
    std::string all;
    for (const std::string &line : linesOf(review, part))
        all += (all.empty() ? "" : "\n") + line;
    return QByteArray::fromStdString(all);
}

QByteArray excepted(const Review &review)
{
    std::string all;
    for (const ExceptionLine &line : review.exceptions)
        all += (all.empty() ? "" : "\n") + line.sentence.text();
    return QByteArray::fromStdString(all);
}

QByteArray text(const Sentence &sentence)
{
    return QByteArray::fromStdString(sentence.text());
}

/// What the first piece that says \a value opens; empty if none does.
Opening opened(const Sentence &sentence, const std::string &value)
{
    for (const Piece &piece : sentence.pieces) {
        if (piece.text == value && piece.opens)
            return *piece.opens;
    }
    return {};
}

std::vector<std::string> idsOf(const Diary &diary, const Opening &opening)
{
    std::vector<std::string> ids;
    for (const EntryIndex entry : opening.entries)
        ids.push_back(diary.entries()[entry].id);
    return ids;
}

/// One exercise a day for two weeks, nothing recorded.
DiaryBuilder planned()
{
    Stage first = onDays(3, 15);
    first.minDays = 14;
    DiaryBuilder builder;
    builder.complaint("main", body({{Field::FirstAssessmentPain, number("6")}})).item(item("squat", "2026-03-02", {first, onDays(3, 12)}));
    return builder;
}

DiaryBuilder &note(DiaryBuilder &builder, Day on, const char *kind, const char *text, Origin origin = {})
{
    return builder.entry(Kind::Note, on,
        body({{Field::Complaint, std::string("main")}, {Field::Kind, std::string(kind)}, {Field::Text, std::string(text)}}),
        std::move(origin));
}

DiaryBuilder &sign(DiaryBuilder &builder, Day on, const char *told, const std::string &id)
{
    return builder.entry(Kind::Flag, on, body({{Field::Sign, std::string("numb foot")}, {Field::Told, std::string(told)}}), {.id = id});
}

void forEachSentence(const Review &review, const std::function<void(const Sentence &)> &look)
{
    for (const ReviewLine &line : review.lines)
        std::for_each(line.sentences.begin(), line.sentences.end(), look);
    for (const ExceptionLine &line : review.exceptions)
        look(line.sentence);
    look(review.visit);
    std::for_each(review.quality.begin(), review.quality.end(), look);
    for (const RuleLine &rule : review.rules) {
        std::for_each(rule.sentences.begin(), rule.sentences.end(), look);
        for (const ConditionLine &line : rule.conditions)
            look(line.sentence);
        for (const ConditionLine &line : rule.because)
            look(line.sentence);
    }
}

std::size_t wordCount(const std::string &text)
{
    return static_cast<std::size_t>(QString::fromStdString(text).split(u' ', Qt::SkipEmptyParts).size());
}

} // namespace

/// Five sentences say what is in the diary, in counts, and that what is not known is not.
class tst_review : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aDiaryWithoutAnEntryIsSaidToBeOne()
    {
        const Review review = reviewed(planned(), "2026-03-15");

        QCOMPARE(said(review, ReviewPart::LookFirst), QByteArray("No sign, no new health answer, no question since 2 March 2026."));
        QCOMPARE(said(review, ReviewPart::PainAndGoal),
            QByteArray("Check: too few entries this week to say (0, at least 3); 6 at first assessment. "
                       "0 of 14 entries; today none."));
        QCOMPARE(said(review, ReviewPart::Done), QByteArray("Did 0 of 14 sessions of squat, 0 of 42 sets."));
        QCOMPARE(said(review, ReviewPart::AfterLoading),
            QByteArray("No loading day that can be judged yet. Worst pain in exercise unknown, limit 5."));
        QCOMPARE(text(review.visit), QByteArray("No visit yet; today none."));
        QCOMPARE(text(joined(review.quality)),
            QByteArray("0 of 14 days, 14 missing, none entered late, none corrected, no entries from paper, no sessions ticked at once."));
    }

    void theUsualOfTheWeekOpensTheChecksItWasMadeOf()
    {
        const Diary diary = planned().checks("2026-03-08", {5, 4, -1, 3}).check("2026-03-15", 2).diary();

        const Review review = reviewed(diary, day("2026-03-14"));
        const Sentence &sentence = review.lines[1].sentences.front();

        QCOMPARE(text(sentence), QByteArray("Check: usually 4 this week; 6 at first assessment."));
        QCOMPARE(opened(sentence, "4").how, std::string("Median of 8 to 14 March 2026: 5, 4, 3"));
        QVERIFY(idsOf(diary, opened(sentence, "4")) == (std::vector<std::string>{"e1", "e2", "e3"}));
        QCOMPARE(text(review.lines[1].sentences.back()), QByteArray("3 of 13 entries; today 2."));
    }

    void theCheckIsCalledByWhatThePersonIsAsked()
    {
        DiaryBuilder builder;
        builder
            .complaint("main", body({{Field::Question, std::string("Worst pain last night?")}, {Field::FirstAssessmentPain, number("6")}}))
            .item(item("squat", "2026-03-02", {onDays(3, 15), onDays(3, 12)}))
            .checks("2026-03-02", {8, 9, 8});

        const Review review = reviewed(builder, "2026-03-05");

        QVERIFY(said(review, ReviewPart::PainAndGoal).startsWith("Worst pain last night: usually 8 this week; 6 at first assessment."));
        QCOMPARE(excepted(review), QByteArray("Worst pain last night: usually 8 this week, 6 at first assessment."));
        QCOMPARE(text(review.rules[0].because[0].sentence), QByteArray("Worst pain last night: 9, well above usual, contact from 8"));
        QVERIFY(reviewText(review, 200).find("orning check") == std::string::npos);
    }

    void daysWithoutAPainAreCountedByWhetherTheyWereAnswered()
    {
        DiaryBuilder builder = planned();
        builder.checks("2026-03-02", {4, 4}).declined("2026-03-04");

        QVERIFY(text(joined(reviewed(builder, "2026-03-08").quality)).startsWith("2 of 7 days, 1 can't say, 4 missing, "));
        builder.check("2026-03-05", std::nullopt, 10); // stiffness alone is an answer
        builder.putAside("2026-03-07"); // and nothing is asked from then on
        QVERIFY(text(joined(reviewed(builder, "2026-03-08").quality)).startsWith("2 of 7 days, 1 can't say, 1 missing, "));
        QVERIFY(text(joined(reviewed(builder, "2026-03-08").quality))
                    .endsWith("No sessions ticked at once.")); // though in a sentence of its own
    }

    void bothLinesCountTheSameEntriesFromPaper()
    {
        DiaryBuilder builder = planned();
        builder.check("2026-03-02", 4, {}, {.recorded = "2026-03-02T07:00:00+01:00"}).sets("2026-03-02", "morning", "squat", 3, 15);

        const Review review = reviewed(builder, "2026-03-03");

        QVERIFY(said(review, ReviewPart::Done).endsWith("3 entries from paper."));
        QVERIFY(text(joined(review.quality)).contains("3 entries from paper"));
    }

    void theFirstActivityIsTheGoal()
    {
        DiaryBuilder builder = planned();
        builder.outcome("2026-03-02", "activity", "run 5 km", {}, "2")
            .outcome("2026-03-08", "activity", "run 5 km", {}, "4")
            .outcome("2026-03-08", "activity", "walk stairs", {}, "6");

        QVERIFY(said(reviewed(builder, "2026-03-08"), ReviewPart::PainAndGoal)
                    .endsWith("Goal 'run 5 km': 2 to 4 of 10 on 8 March 2026. Activity 'walk stairs': 6 of 10 on 8 March 2026."));
    }

    void anExerciseThatIsUnclearTwiceIsOne()
    {
        DiaryBuilder builder = planned();
        for (const char *const on : {"2026-03-03", "2026-03-04"}) {
            builder.entry(Kind::Note, day(on),
                body({{Field::Complaint, std::string("main")}, {Field::Kind, std::string("unsure")}, {Field::Item, std::string("squat")}}));
        }

        const Review review = reviewed(builder, "2026-03-08");

        QCOMPARE(said(review, ReviewPart::LookFirst), QByteArray("1 exercise unsure since 2 March 2026."));
        QCOMPARE(opened(review.lines.front().sentences.front(), "1").entries.size(), std::size_t(2));
    }

    void theExerciseWithTheFewestSessionsComesFirstAndStretchesAreOne()
    {
        Item stretch = item("calf stretch", "2026-03-02", {onDays(1, 1)});
        stretch.loads = false;
        Item other = stretch;
        other.key = "sole stretch";
        DiaryBuilder builder = planned();
        builder.item(item("press", "2026-03-02", {onDays(3, 15)})).item(stretch).item(other);
        builder.sets("2026-03-02", "morning", "squat", 3, 15).sets("2026-03-02", "morning", "calf stretch", 1, 1);

        const auto lines = linesOf(reviewed(builder, "2026-03-03"), ReviewPart::Done);

        QCOMPARE(lines.size(), std::size_t(3));
        QCOMPARE(lines[0], std::string("Did 0 of 2 sessions of press, 0 of 6 sets."));
        QCOMPARE(lines[1], std::string("Did 1 of 2 sessions of squat, 3 of 6 sets."));
        QCOMPARE(lines[2], std::string("Stretches: 1 of 4 sessions. 4 entries from paper."));
    }

    void loadSkipsAndLighterSessionsStandBesideWhatWasDone()
    {
        DiaryBuilder builder = planned();
        builder.sets("2026-03-02", "morning", "squat", 3, 15, {.loadKg = "5"})
            .sets("2026-03-03", "morning", "squat", 3, 15, {.loadKg = "7.5"});
        builder.easier("2026-03-03", "morning");
        builder.entry(Kind::Skip, day("2026-03-04"),
            body({{Field::Complaint, std::string("main")}, {Field::Slot, std::string("morning")}, {Field::Reason, std::string("travel")}}));

        const auto lines = linesOf(reviewed(builder, "2026-03-04"), ReviewPart::Done);

        QCOMPARE(
            lines.front(), std::string("Did 2 of 3 sessions of squat, 6 of 9 sets, 1 lighter, 1 skipped: 'travel'. Load 5 to 7.5 kg."));
    }

    void aSetWithoutALoadOfItsOwnWasDoneWithThePrescribedOne()
    {
        Stage light = onDays(3, 15);
        Stage heavy = onDays(3, 12);
        heavy.dose.loadKg = Decimal::whole(10);
        DiaryBuilder builder;
        builder.item(item("squat", "2026-03-02", {light, heavy})).stage("2026-03-04", "squat", 2);
        builder.set("2026-03-02", "morning", "squat", 1, 15)
            .set("2026-03-03", "morning", "squat", 1, 15, {.loadKg = "2"})
            .set("2026-03-04", "morning", "squat", 1, 12);

        QVERIFY(linesOf(reviewed(builder, "2026-03-04"), ReviewPart::Done).front().ends_with("load 2 to 10 kg."));
    }

    void ofResponsesWithoutAnUnknownOneThatIsSaid()
    {
        DiaryBuilder builder = planned();
        builder.checks("2026-03-02", {4, 4, 4, 4}).sets("2026-03-04", "morning", "squat", 3, 15);

        QVERIFY(said(reviewed(builder, "2026-03-05"), ReviewPart::AfterLoading)
                    .startsWith("Next check stayed within 1 of usual after 1 of 1 loading day, 0 unknown."));
    }

    void anOfferThatWaitsSaysForWhatAndWhy()
    {
        const auto next = [](const DiaryBuilder &builder) {
            DiaryBuilder trained = builder;
            for (int i = 0; i < 14; ++i) {
                const CivilDay on = day("2026-03-02") + i;
                trained.check(on, 3).session(on, "morning", 2, 2).sets(on, "morning", "squat", 3, 15).sets(on, "morning", "lunge", 3, 15);
            }
            return said(reviewed(trained, "2026-03-15"), ReviewPart::Next);
        };
        const std::vector<Stage> stages{onDays(3, 15), onDays(3, 15), onDays(3, 15)};
        DiaryBuilder longer;
        longer.item(item("squat", "2026-03-03", stages)).item(item("lunge", "2026-03-02", stages));
        DiaryBuilder equal;
        equal.item(item("squat", "2026-03-02", stages)).item(item("lunge", "2026-03-02", stages));
        DiaryBuilder stepped = equal;
        stepped.stage("2026-03-10", "lunge", 2);

        QVERIFY(next(longer).startsWith("Your rule for stage 2 of squat: 10 of 10 hold; waits for lunge (longer in its stage)."));
        QVERIFY(next(equal).endsWith(
            "Your rule for stage 2 of lunge: 10 of 10 hold. Waits for squat (as long in its stage, earlier in the plan)."));
        DiaryBuilder longName;
        Item lunge = item("lunge", "2026-03-02", stages);
        lunge.exercise = "lunge with a name of more words than one sentence has room for";
        longName.item(lunge).item(item("squat", "2026-03-03", stages));
        for (int i = 0; i < 14; ++i) {
            const CivilDay on = day("2026-03-02") + i;
            longName.check(on, 3).session(on, "morning", 2, 2).sets(on, "morning", "squat", 3, 15).sets(on, "morning", "lunge", 3, 15);
        }
        QVERIFY(text(joined(reviewed(longName, "2026-03-15").rules[1].sentences)).endsWith("(longer in its stage)."));
        QVERIFY(next(stepped).startsWith("Your rule for stage 2 of squat: 10 of 10 hold; waits for lunge (went up on 10 March 2026)."));
    }

    void theNextCheckIsCountedWithWhatIsUnknown()
    {
        DiaryBuilder builder = planned();
        builder.checks("2026-03-02", {4, 4, 4, 4, 8}).visit("2026-03-05");
        for (const char *const on : {"2026-03-03", "2026-03-04", "2026-03-05", "2026-03-06"})
            builder.sets(on, "morning", "squat", 3, 15);
        builder.session("2026-03-04", "morning", 6, std::nullopt);
        builder.entry(Kind::Unusual, day("2026-03-06"), body({{Field::Text, std::string("ran for the bus")}}));

        const auto lines = linesOf(reviewed(builder, "2026-03-07"), ReviewPart::AfterLoading);

        QCOMPARE(lines[0],
            std::string("Next check stayed within 1 of usual after 2 of 2 loading days, 2 unknown (2 after a visit). "
                        "Worst pain in exercise 6, limit 5."));
        QCOMPARE(lines[1], std::string("Unusual day: 6 March 2026, 'ran for the bus'."));
    }

    void anOpenSignAndAQuestionComeFirst()
    {
        DiaryBuilder builder = planned();
        sign(builder, "2026-03-04", "no", "sign-1");
        note(builder, "2026-03-05", "question", "May it click?", {.id = "question-1"});
        note(builder, "2026-03-06", "answer", "New medicine? None");
        builder.entry(Kind::Note, day("2026-03-07"),
            body({{Field::Complaint, std::string("main")}, {Field::Kind, std::string("reply")}, {Field::Text, std::string("Yes.")},
                {Field::About, std::string("question-1")}}));

        const Review review = reviewed(builder, "2026-03-08");

        QCOMPARE(said(review, ReviewPart::LookFirst),
            QByteArray("Sign: numb foot on 4 March 2026; clinic told: no. New health answer on 6 March 2026: 'New medicine? None'.\n"
                       "1 question since 2 March 2026."));
        QCOMPARE(review.questions.size(), std::size_t(2));
        QCOMPARE(review.questions.back().text, std::string("May it click?"));
        QCOMPARE(review.questions.back().replyText, std::string("Yes."));
        QVERIFY(review.questions.back().isNew);
        QVERIFY(excepted(review).contains("Sign: numb foot on 4 March 2026; clinic told: no.\nNew health answer on 6 March 2026: "));
        QVERIFY(said(review, ReviewPart::Next).contains("Your rule says: contact (sign not answered for)."));
    }

    void whatWasAnsweredBeforeTheLastVisitIsNotNew()
    {
        DiaryBuilder builder = planned();
        sign(builder, "2026-03-04", "yes", "sign-1").entry(Kind::Cleared, day("2026-03-05"), body({{Field::Flag, std::string("sign-1")}}));
        note(builder, "2026-03-04", "question", "May it click?");
        builder.visit("2026-03-05");

        const Review review = reviewed(builder, "2026-03-08");

        QCOMPARE(review.since, day("2026-03-05"));
        QCOMPARE(said(review, ReviewPart::LookFirst), QByteArray("No sign, no new health answer, no question since 5 March 2026."));
        QCOMPARE(review.questions.size(), std::size_t(1));
        QVERIFY(!review.questions.front().isNew);
        QVERIFY(review.exceptions.empty());
    }

    void aVisitBeyondThePlannedOnesIsNeverOneOfThem()
    {
        DiaryBuilder builder = planned();
        builder.planSetting(Field::VisitsPlanned, Decimal::whole(1));
        const Body parts = body(
            {{Field::Impulses, number("2000")}, {Field::Bar, number("2.5")}, {Field::Hz, number("9")}, {Field::PainDuring, number("4")}});
        builder.visit("2026-03-03", parts);
        QCOMPARE(text(reviewed(builder, "2026-03-08").visit),
            QByteArray("Visit 1 of 1, 6 days ago: 2000 impulses, 2.5 bar, 9 Hz, pain 4; today none."));

        builder.visit("2026-03-08");

        QCOMPARE(text(reviewed(builder, "2026-03-08").visit),
            QByteArray("Visit 2 (1 planned), 1 day ago: settings unknown, pain unknown; today none."));
    }

    void theRuleSaysWhichConditionsAreOpenWithTheirNumbers()
    {
        DiaryBuilder builder = planned();
        builder.checks("2026-03-02", {4, 4, 4, 4});
        for (const char *const on : {"2026-03-02", "2026-03-03", "2026-03-04"})
            builder.sets(on, "morning", "squat", 3, 15);

        const Review review = reviewed(builder, "2026-03-05");

        QCOMPARE(review.rules.size(), std::size_t(1));
        QCOMPARE(text(joined(review.rules[0].sentences)), QByteArray("Your rule for stage 2: 5 of 10 hold."));
        QCOMPARE(said(review, ReviewPart::Next),
            QByteArray("Your rule for stage 2: 5 of 10 hold; open: days in stage, sets done, pain in exercise. "
                       "Also open: pain after exercise, weekly rise."));
        QCOMPARE(text(review.rules[0].conditions[0].sentence), QByteArray("4 days in stage 1, at least 14"));
        QVERIFY(!review.rules[0].conditions[0].isMet);
        QCOMPARE(text(review.rules[0].conditions[2].sentence), QByteArray("75 % of the due sets done, at least 80 %"));
        QCOMPARE(opened(review.rules[0].conditions[2].sentence, "75 %").entries.size(), std::size_t(9));
        QCOMPARE(text(review.rules[0].conditions[9].sentence), QByteArray("stage 1 of 2"));
    }

    void aSignOfManyWordsStillSaysWhenItWasAnswered()
    {
        DiaryBuilder builder = planned();
        builder
            .entry(Kind::Flag, day("2026-03-03"),
                body({{Field::Sign, std::string("a sign of more words than a line has room for, which is possible")}}), {.id = "sign-1"})
            .entry(Kind::Cleared, day("2026-03-05"), body({{Field::Flag, std::string("sign-1")}}));

        QVERIFY(said(reviewed(builder, "2026-03-08"), ReviewPart::LookFirst)
                    .endsWith("... on 3 March 2026; clinic told: no answer; cleared 5 March 2026."));
    }

    void aStepDownSaysWhyAndOfWhichExercise()
    {
        DiaryBuilder builder = planned();
        builder.item(item("press", "2026-03-02", {onDays(3, 15)})).checks("2026-03-02", {3, 3, 3, 3, 7, 7});
        builder.sets("2026-03-05", "morning", "squat", 3, 15).sets("2026-03-06", "morning", "squat", 3, 15);

        const Review review = reviewed(builder, "2026-03-07");

        QCOMPARE(linesOf(review, ReviewPart::Next).front(),
            std::string("Your rule for squat says: step down from stage 1; next check above usual after the last 2 sessions."));
        QCOMPARE(review.rules[0].because.size(), std::size_t(1));
    }

    void aRuleThatIsOffIsNotMentioned()
    {
        DiaryBuilder builder = planned();
        builder.planSetting(Field::Authority, std::string("off"));

        const Review review = reviewed(builder, "2026-03-08");

        QVERIFY(review.rules.empty());
        QCOMPARE(said(review, ReviewPart::Next), QByteArray("No note to self, no review point."));
        QVERIFY(reviewText(review, 80).find("rule") == std::string::npos);
    }

    void theNoteToSelfAndTheReviewPointComeLast()
    {
        DiaryBuilder builder = planned();
        builder.planSetting(Field::ReviewDay, std::string("2026-03-20")).planSetting(Field::ReviewText, std::string("Try running"));
        builder.visit("2026-03-03", {}, {.id = "visit-1"});
        builder.entry(
            Kind::Memo, day("2026-03-03"), body({{Field::Visit, std::string("visit-1")}, {Field::NextTime, std::string("Less bar")}}));

        QCOMPARE(linesOf(reviewed(builder, "2026-03-08"), ReviewPart::Next).back(),
            std::string("You noted: 'Less bar'. Review point 20 March 2026: 'Try running'."));
    }

    void badDaysInARowAndWeeksWithoutASetAreExceptions()
    {
        DiaryBuilder builder = planned();
        builder.easier("2026-03-03", "morning").easier("2026-03-04", "morning").easier("2026-03-06", "morning");

        QCOMPARE(excepted(reviewed(builder, "2026-03-14")), QByteArray("Bad-day dose on 2 days in a row, 3 to 4 March 2026."));
        QCOMPARE(excepted(reviewed(builder, "2026-03-15")),
            QByteArray("Bad-day dose on 2 days in a row, 3 to 4 March 2026.\n"
                       "No set for 14 days, 2 to 15 March 2026."));
    }

    void exceptionsAreTheSameWhateverTheDaysThatAreCounted()
    {
        DiaryBuilder builder = planned();
        builder.sets("2026-03-02", "morning", "squat", 3, 15)
            .visit("2026-03-20")
            .easier("2026-03-19", "morning")
            .easier("2026-03-20", "morning");

        const QByteArray whole = excepted(reviewed(builder, "2026-03-24"));

        QVERIFY(whole.contains("No set for 22 days, 3 to 24 March 2026."));
        QCOMPARE(excepted(reviewedFrom(builder, day("2026-03-20"), day("2026-03-24"))), whole);
    }

    void painAboveTheFirstAndNoChangeByTheReviewPointAreExceptions()
    {
        DiaryBuilder builder = planned();
        builder.planSetting(Field::ReviewDay, std::string("2026-03-08")).checks("2026-03-02", {8, 8, 8, 8, 8, 8, 8});

        QCOMPARE(excepted(reviewed(builder, "2026-03-06")), QByteArray("Check: usually 8 this week, 6 at first assessment."));
        QVERIFY(excepted(reviewed(builder, "2026-03-07"))
                    .endsWith("\nReview point 8 March 2026 reached: usually 8 this week, 6 at first assessment."));
    }

    void ofALongTextTheFirstWordsAreShownAndTheRestOpens()
    {
        const std::string many = "one two three four five six seven eight nine ten eleven twelve, thirteen fourteen";
        DiaryBuilder builder = planned();
        note(builder, "2026-03-03", "answer", many.c_str());

        const Sentence sentence = reviewed(builder, "2026-03-08").lines.front().sentences.front();

        QCOMPARE(text(sentence),
            QByteArray("New health answer on 3 March 2026: 'one two three four five six seven eight nine ten eleven twelve...'"));
        QCOMPARE(sentence.pieces[1].opens->how, "'" + many + "'");
    }

    void noSentenceIsLongerThanTwentyWordsAndWhatOpensIsThere()
    {
        QVERIFY(rc::check([] {
            const RandomDiary random = randomDiary();
            DiaryBuilder builder = random.told();
            const std::string name = *rc::gen::element<std::string>(
                "lunge", "a very long name of an exercise that nobody would ever use", std::string(300, 'w'), "a\nb");
            Item extra = item("extra", kRandomStart, {onDays(2, 10), onDays(2, 8)});
            extra.exercise = name;
            builder.item(extra).planSetting(Field::ReviewDay, std::string("2026-03-10")).planSetting(Field::ReviewText, name);
            note(builder, kRandomStart, "answer", name.c_str());
            const Diary diary = builder.diary();
            const Review review = reviewed(diary, day(kRandomStart) + (random.length - 1));

            forEachSentence(review, [&](const Sentence &sentence) {
                const std::string whole = sentence.text();
                RC_LOG() << whole << std::endl;
                RC_ASSERT(!sentence.pieces.empty() && !whole.empty());
                RC_ASSERT(wordCount(whole) <= kMostWords);
                RC_ASSERT(whole.find("nan") == std::string::npos && whole.find("inf") == std::string::npos);
                RC_ASSERT(whole.find('\n') == std::string::npos);
                for (const Piece &piece : sentence.pieces) {
                    std::vector<EntryIndex> entries = piece.opens ? piece.opens->entries : std::vector<EntryIndex>();
                    RC_ASSERT(std::is_sorted(entries.begin(), entries.end(),
                        [&](EntryIndex a, EntryIndex b) { return diary.entries()[a].day < diary.entries()[b].day; }));
                    std::sort(entries.begin(), entries.end());
                    RC_ASSERT(std::adjacent_find(entries.begin(), entries.end()) == entries.end());
                }
            });
            for (const auto part :
                {ReviewPart::LookFirst, ReviewPart::PainAndGoal, ReviewPart::Done, ReviewPart::AfterLoading, ReviewPart::Next})
                RC_ASSERT(!linesOf(review, part).empty());
            for (const std::size_t width : {20U, 40U, 80U}) {
                const std::string page = reviewText(review, width);
                for (const QString &line : QString::fromStdString(page).split(u'\n'))
                    RC_ASSERT(codePoints(line.toStdString()) <= width);
            }
        }));
    }
};

MORROW_SUITE(tst_review)

#include "tst_review.moc"
