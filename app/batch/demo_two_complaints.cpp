// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/demo.h"

#include "batch/demo_habits.h"

#include <array>

namespace morrow::batch {

namespace {

constexpr const char *kShoulder = "shoulder";
constexpr const char *kAchilles = "achilles";

/// Five exercises, 3 x 15, twice a day for 8 weeks and once a day for 4: Holmgren T et al. BMJ
/// 2012;344:e787. What the exercises are and every load is invented; a band has no kg.
struct ShoulderExercise
{
    const char *item;
    const char *words;
    int kgTenths; ///< in stage 1; half a kg more in stage 2
    const char *keyPoint;
};

constexpr std::array kShoulderExercises{
    ShoulderExercise{"lower-side", "lower the arm from the side, lying", 20, "Up with the help of the other hand, down slowly"},
    ShoulderExercise{"lower-front", "lower the arm from the front, standing", 15, ""},
    ShoulderExercise{"turn-out", "turn the forearm outwards against a band", 0, "Elbow at the ribs, a folded towel under it"},
    ShoulderExercise{"pull-back", "pull the shoulder blades together with a band", 0, ""},
    ShoulderExercise{"push-wall", "push away from the wall, shoulder blade forwards", 0, ""},
};

/// The stretch is invented, dose included.
constexpr const char *kStretch = "stretch-across";

/// Two exercises, 3 x 15, twice a day for 12 weeks: Alfredson H et al. Am J Sports Med 1998;26:360-366.
/// The stages differ in the weight in the rucksack, which is invented.
struct AchillesExercise
{
    const char *item;
    const char *words;
};

constexpr std::array kAchillesExercises{
    AchillesExercise{"drop-straight", "heel drop on one leg, knee straight"},
    AchillesExercise{"drop-bent", "heel drop on one leg, knee bent"},
};
constexpr std::array kRucksackKg{0, 4, 8};

constexpr int kSets = 3;
constexpr int kReps = 15;
constexpr const char *kTwice = "morning evening";

class Story
{
public:
    Story()
        : m_diary("9e4c21d8-0b57-4f6a-b1d3-52a7c86e9f10", Zone{"Europe/Athens", 120}, 1998)
        , m_shoulderHabits(m_diary, {m_shoulderStart, 58, m_shoulderEnd, 20, on("2026-08-23"), 20, 8})
        , m_achillesHabits(m_diary, {m_achillesStart, 62, m_achillesEnd, 14, on("2026-09-12"), 34, 12})
    {
    }

    TablesDiary tell()
    {
        tellShoulderPlan();
        tellAchillesPlan();
        tellStages();
        tellVisits();
        tellShoulderDays();
        tellAchillesDays();
        tellWhatBothShare();
        tellWords();
        tellOutcomes();
        return m_diary.finish();
    }

private:
    void tellShoulderPlan()
    {
        m_diary.onPaper(Kind::Complaint, on("2026-07-23"), Author::Clinic,
            bodyOf({{Field::Complaint, kShoulder}, {Field::Region, "shoulder"}, {Field::Side, "right"},
                {Field::Question, "Worst pain last night"}, {Field::FirstAssessmentPain, 6}, {Field::Started, on("2026-07-23")},
                {Field::Place, 1}}));
        std::vector<Body> items;
        for (const ShoulderExercise &exercise : kShoulderExercises) {
            std::vector<Body> stages;
            for (int stage = 1; stage <= 2; ++stage) {
                Body body = bodyOf({{Field::Stage, stage}, {Field::Sets, kSets}, {Field::Reps, kReps}, {Field::Rrule, "FREQ=DAILY"},
                    {Field::Slots, stage == 1 ? kTwice : "evening"}, {Field::MinDays, 56}, {Field::KeyPoint, exercise.keyPoint},
                    {Field::EasierSets, 1}});
                if (exercise.kgTenths > 0)
                    body.set(Field::LoadKg, shoulderKg(exercise, stage));
                stages.push_back(std::move(body));
            }
            items.push_back(bodyOf(
                {{Field::Item, exercise.item}, {Field::Exercise, exercise.words}, {Field::Side, "right"}, {Field::Start, m_shoulderStart},
                    {Field::End, m_shoulderEnd}, {Field::RestsAfterVisit, 1}, {Field::Stages, std::move(stages)}}));
        }
        Body stretch = bodyOf({{Field::Stage, 1}, {Field::Sets, 2}, {Field::Reps, 1}, {Field::HoldS, 30}, {Field::Rrule, "FREQ=DAILY"},
            {Field::Slots, "evening"}});
        items.push_back(bodyOf({{Field::Item, kStretch}, {Field::Exercise, "draw the arm across the chest"}, {Field::Side, "right"},
            {Field::Start, m_shoulderStart}, {Field::End, m_shoulderEnd}, {Field::Loads, 0}, {Field::RestsAfterVisit, 0},
            {Field::Stages, std::vector<Body>{std::move(stretch)}}}));
        m_diary.onPaper(Kind::Plan, m_shoulderStart, Author::Clinic,
            bodyOf({{Field::Complaint, kShoulder}, {Field::Plan, "7a9d3c15-62be-4c08-9f41-d0e5b8a27361"}, {Field::Number, 1},
                {Field::By, "M. P., physiotherapist"}, {Field::BirthYear, 1968}, {Field::Asks, "during after"},
                {Field::RestDaysAfterVisit, 1}, {Field::VisitsPlanned, 3}, {Field::ReviewDay, on("2026-09-24")},
                {Field::Items, std::move(items)}}));
    }

    [[nodiscard]] static Decimal shoulderKg(const ShoulderExercise &exercise, int stage)
    {
        return *Decimal::fromThousandths(std::int64_t{100} * (exercise.kgTenths + (exercise.kgTenths > 0 ? 5 * (stage - 1) : 0)));
    }

    void tellAchillesPlan()
    {
        m_diary.onPaper(Kind::Complaint, on("2026-07-24"), Author::Clinic,
            bodyOf({{Field::Complaint, kAchilles}, {Field::Region, "Achilles tendon"}, {Field::Side, "left"},
                {Field::Question, "Pain on your first ten steps this morning"}, {Field::Started, on("2026-07-24")}, {Field::Place, 2}}));
        std::vector<Body> items;
        for (const AchillesExercise &exercise : kAchillesExercises) {
            std::vector<Body> stages;
            for (std::size_t i = 0; i < kRucksackKg.size(); ++i) {
                stages.push_back(bodyOf(
                    {{Field::Stage, static_cast<int>(i) + 1}, {Field::Sets, kSets}, {Field::Reps, kReps}, {Field::LoadKg, kRucksackKg[i]},
                        {Field::BodyShare, 1}, {Field::Rrule, "FREQ=DAILY"}, {Field::Slots, kTwice}, {Field::MinDays, 14},
                        {Field::MinSessions, 20}, {Field::Range, "from the edge of a step down below it"}, {Field::EasierReps, 8}}));
            }
            items.push_back(bodyOf(
                {{Field::Item, exercise.item}, {Field::Exercise, exercise.words}, {Field::Side, "left"}, {Field::Start, m_achillesStart},
                    {Field::End, m_achillesEnd}, {Field::RestsAfterVisit, 0}, {Field::Stages, std::move(stages)}}));
        }
        m_diary.onPaper(Kind::Plan, m_achillesStart, Author::Clinic,
            bodyOf({{Field::Complaint, kAchilles}, {Field::Plan, "c2f08b46-91d7-4e3a-a6c9-1b7f5d03e824"}, {Field::Number, 1},
                {Field::By, "M. P., physiotherapist"}, {Field::BirthYear, 1968}, {Field::Asks, "stiffness during after"},
                {Field::CheckLimit, 5}, {Field::DuringLimit, 6}, {Field::VisitsPlanned, 4}, {Field::Items, std::move(items)}}));
    }

    void tellStages()
    {
        for (const ShoulderExercise &exercise : kShoulderExercises)
            stage("2026-09-28", exercise.item, 2, "eight weeks twice a day done, once a day from now on");
        for (const AchillesExercise &exercise : kAchillesExercises) {
            stage("2026-08-22", exercise.item, 2, "three weeks done, mornings lower");
            stage("2026-09-16", exercise.item, 1, "mornings up since the island walk: without the rucksack for now");
            stage("2026-09-26", exercise.item, 2, "mornings back where they were");
            stage("2026-10-10", exercise.item, 3, "two weeks with four kg went well");
        }
    }

    void stage(const char *when, const char *item, int stage, const char *reason)
    {
        m_diary.recorded(Kind::Stage, on(when), m_diary.at(on(when), 8, 20), Author::Clinic,
            bodyOf({{Field::Item, item}, {Field::Stage, stage}, {Field::Reason, reason}}));
    }

    void tellVisits()
    {
        m_diary.onPaper(Kind::Visit, on("2026-08-20"), Author::Clinic,
            bodyOf({{Field::Complaint, kShoulder}, {Field::Region, "shoulder"}, {Field::Side, "right"}, {Field::Impulses, 1700},
                {Field::Bar, *Decimal::parse("1.9")}, {Field::PainDuring, 6}, {Field::Consent, 1}}));
        treat(kShoulder, "2026-08-27", 300, 1800, "2.1", 10, "", 5);
        treat(kShoulder, "2026-09-03", 300, 1800, "2.3", 10, "27", 4);
        treat(kAchilles, "2026-08-19", 0, 1600, "1.7", 8, "18.5", 7);
        treat(kAchilles, "2026-08-26", 250, 2000, "2", 8, "18.5", 6);
        const auto third = treat(kAchilles, "2026-09-02", 250, 2000, "2.3", 8, "18.5", 5);
        treat(kAchilles, "2026-09-09", 250, 2000, "2.3", 8, "18.5", 4);
        m_diary.pointAt(
            m_diary.onPaper(Kind::Memo, on("2026-09-02"), Author::Clinic,
                bodyOf({{Field::Note, "Leaves for the islands on the 10th"}, {Field::NextTime, "Ask about the walking there"}})),
            Field::Visit, third);
    }

    DemoDiary::Ref treat(
        const char *complaint, const char *when, int warmUp, int impulses, const char *bar, int hz, const char *area, int pain)
    {
        const bool isShoulder = complaint == kShoulder;
        Body body = bodyOf({{Field::Complaint, complaint}, {Field::Region, isShoulder ? "shoulder" : "Achilles tendon"},
            {Field::Side, isShoulder ? "right" : "left"}, {Field::Impulses, impulses}, {Field::Bar, *Decimal::parse(bar)}, {Field::Hz, hz},
            {Field::PainDuring, pain}, {Field::By, "M. P."}, {Field::Applicator, isShoulder ? "20 mm" : "15 mm"}, {Field::Consent, 1}});
        if (warmUp > 0) {
            body.set(Field::WarmupImpulses, Decimal::whole(warmUp));
            body.set(Field::WarmupBar, *Decimal::parse("1.1"));
            body.set(Field::WarmupHz, Decimal::whole(13));
        }
        if (area[0] != '\0')
            body.set(Field::AreaCm2, *Decimal::parse(area));
        return m_diary.recorded(Kind::Visit, on(when), m_diary.at(on(when), 16, 30), Author::Clinic, std::move(body));
    }

    /// The first days of the pause were past when it was told; they stay due.
    [[nodiscard]] bool isAway(CivilDay today) const { return today >= on("2026-09-10") && today <= on("2026-09-16"); }

    void tellShoulderDays()
    {
        for (CivilDay today = m_shoulderStart; today <= m_shoulderEnd; today = today + 1) {
            const bool onPaper = today < m_phone;
            if (today == on("2026-10-05")) {
                const auto first = m_shoulderHabits.checkFor(kShoulder, today, false, false);
                m_diary.corrected(first, m_diary.at(today, 21, 44), bodyOf({{Field::Complaint, kShoulder}, {Field::Pain, 4}}));
            } else {
                m_shoulderHabits.check(kShoulder, today, onPaper, false);
            }
            const bool rests = today == on("2026-08-20") || today == on("2026-08-27") || today == on("2026-09-03");
            if (rests || isAway(today))
                continue;
            const bool twice = today < on("2026-09-28");
            if (twice && !m_diary.chance().oneIn(6))
                exerciseShoulder(today, "morning", onPaper, 1);
            if (!m_diary.chance().oneIn(8))
                exerciseShoulder(today, "evening", onPaper, twice ? 1 : 2);
        }
    }

    void exerciseShoulder(CivilDay today, const char *slot, bool onPaper, int stage)
    {
        const bool isEvening = std::string_view(slot) == "evening";
        std::vector<Portion> portions;
        portions.reserve(kShoulderExercises.size() + 1);
        for (const ShoulderExercise &exercise : kShoulderExercises)
            portions.push_back({exercise.item, kSets, kReps, std::nullopt, shoulderKg(exercise, stage)});
        if (m_diary.chance().oneIn(9))
            portions.pop_back();
        if (isEvening && !m_diary.chance().oneIn(5))
            portions.push_back({kStretch, 2, 1, 30, Decimal()});
        // In the first week with the phone her right arm was too tired to tap.
        const Author author = isEvening && !onPaper && today < m_phone + 7 ? Author::Helper : Author::Patient;
        m_shoulderHabits.exercise({.complaint = kShoulder,
                                      .day = today,
                                      .slot = slot,
                                      .hour = isEvening ? 20 : 7,
                                      .author = author,
                                      .onPaper = onPaper,
                                      .isWhole = false},
            portions);
    }

    void tellAchillesDays()
    {
        for (CivilDay today = m_achillesStart; today <= m_achillesEnd; today = today + 1) {
            const bool onPaper = today < m_phone;
            m_achillesHabits.check(kAchilles, today, onPaper, true);
            if (isAway(today))
                continue;
            if (!m_diary.chance().oneIn(5))
                exerciseAchilles(today, "morning", 8, onPaper);
            if (!m_diary.chance().oneIn(7))
                exerciseAchilles(today, "evening", 21, onPaper);
        }
        mark(Kind::Easier, "2026-09-17", "evening", "");
        mark(Kind::Easier, "2026-09-18", "evening", "");
        mark(Kind::Skip, "2026-10-03", "morning", "name day, guests from early on");
    }

    void exerciseAchilles(CivilDay today, const char *slot, int hour, bool onPaper)
    {
        const bool isEvening = std::string_view(slot) == "evening";
        if (today == on("2026-10-03") && !isEvening)
            return;
        const bool easier = isEvening && (today == on("2026-09-17") || today == on("2026-09-18"));
        std::vector<Portion> portions;
        portions.reserve(kAchillesExercises.size());
        for (const AchillesExercise &exercise : kAchillesExercises)
            portions.push_back({exercise.item, kSets, easier ? 8 : kReps, std::nullopt, Decimal()});
        if (m_diary.chance().oneIn(14))
            portions.front().sets = kSets + 1; // one more than asked
        m_achillesHabits.exercise(
            {.complaint = kAchilles, .day = today, .slot = slot, .hour = hour, .onPaper = onPaper, .isWhole = false}, portions);
    }

    void mark(Kind kind, const char *when, const char *slot, const char *reason)
    {
        m_diary.recorded(kind, on(when), m_diary.at(on(when), 22, 10), Author::Patient,
            bodyOf({{Field::Complaint, kAchilles}, {Field::Slot, slot}, {Field::Reason, reason}}));
    }

    void tellWhatBothShare()
    {
        m_diary.onPaper(
            Kind::Setting, m_shoulderStart, Author::Patient, bodyOf({{Field::Key, "time_zone"}, {Field::Value, "Europe/Athens"}}));
        m_diary.onPaper(Kind::Setting, m_shoulderStart, Author::Patient, bodyOf({{Field::Key, "body_mass_kg"}, {Field::Value, "64.5"}}));
        m_diary.recorded(Kind::Pause, on("2026-09-10"), m_diary.at(on("2026-09-12"), 22, 31), Author::Patient,
            bodyOf({{Field::To, on("2026-09-16")}, {Field::Reason, "islands with the family"}}));
        m_diary.recorded(Kind::Unusual, on("2026-09-12"), m_diary.at(on("2026-09-12"), 22, 34), Author::Patient,
            bodyOf({{Field::Text, "walked round the whole island in sandals, six hours"}}));
        m_diary.onPaper(
            Kind::Unusual, on("2026-08-23"), Author::Patient, bodyOf({{Field::Text, "held the ladder while the blinds went up"}}));
        const auto flag = m_diary.recorded(Kind::Flag, on("2026-10-01"), m_diary.at(on("2026-10-01"), 23, 5), Author::Patient,
            bodyOf({{Field::Sign, "pins and needles in the arm"}, {Field::Note, "right hand, woke up with it, gone after shaking it"},
                {Field::Told, "yes"}}));
        const auto heard = m_diary.recorded(
            Kind::Heard, on("2026-10-02"), m_diary.at(on("2026-10-02"), 11, 50), Author::Patient, bodyOf({{Field::Answer, "lighter"}}));
        m_diary.pointAt(heard, Field::Flag, flag);
        m_diary.pointAt(m_diary.onPaper(Kind::Cleared, on("2026-10-06"), Author::Clinic, {}), Field::Flag, flag);
    }

    void tellWords()
    {
        note(kShoulder, "2026-07-30", "note", "", "sleep better on the left side with a cushion in front");
        const auto question = note(kAchilles, "2026-08-18", "question", "drop-bent", "How far should the knee bend?");
        const auto reply = m_diary.recorded(Kind::Note, on("2026-08-19"), m_diary.at(on("2026-08-19"), 16, 52), Author::Clinic,
            bodyOf({{Field::Complaint, kAchilles}, {Field::Kind, "reply"}, {Field::Text, "So far that you no longer see your toes."}}));
        m_diary.pointAt(reply, Field::About, question);
        note(kShoulder, "2026-09-02", "unsure", "push-wall", "");
        note(kAchilles, "2026-09-25", "answer", "", "New shoes since the last visit? Only the sandals of the 12th");
        note(kAchilles, "2026-10-24", "note", "", "clocks go back tonight, evening session early");
    }

    DemoDiary::Ref note(const char *complaint, const char *when, const char *kind, const char *item, const char *text)
    {
        Body body = bodyOf({{Field::Complaint, complaint}, {Field::Kind, kind}, {Field::Item, item}, {Field::Text, text}});
        if (on(when) < m_phone)
            return m_diary.onPaper(Kind::Note, on(when), Author::Patient, std::move(body));
        return m_diary.recorded(Kind::Note, on(when), m_diary.at(on(when), 22, 15), Author::Patient, std::move(body));
    }

    void answer(const char *complaint, const char *when, const char *kind, const char *name, int value)
    {
        m_diary.onPaper(Kind::Outcome, on(when), Author::Patient,
            bodyOf({{Field::Complaint, complaint}, {Field::Kind, kind}, {Field::Name, name}, {Field::Value, value}}));
    }

    void test(const char *complaint, const char *when, const char *name, const char *side, const char *value, const char *unit, int pain)
    {
        m_diary.onPaper(Kind::Outcome, on(when), Author::Clinic,
            bodyOf({{Field::Complaint, complaint}, {Field::Kind, "test"}, {Field::Name, name}, {Field::Side, side},
                {Field::Value, *Decimal::parse(value)}, {Field::Unit, unit}, {Field::Pain, pain}, {Field::By, "M. P."}}));
    }

    void tellOutcomes()
    {
        static constexpr const char *shelf = "putting plates on the upper shelf";
        static constexpr const char *market = "walking to the market and back";
        static constexpr const char *raise = "hold a kilogram at shoulder height";
        static constexpr const char *heels = "heel raises on one leg";
        answer(kShoulder, "2026-07-23", "activity", shelf, 3);
        answer(kShoulder, "2026-07-23", "overall", "", 45);
        test(kShoulder, "2026-07-23", raise, "left", "52", "s", 0);
        test(kShoulder, "2026-07-23", raise, "right", "14.5", "s", 6);
        answer(kAchilles, "2026-07-24", "activity", market, 4);
        answer(kAchilles, "2026-07-24", "acceptable", "", 0);
        test(kAchilles, "2026-07-24", heels, "left", "9", "count", 6);
        test(kAchilles, "2026-07-24", heels, "right", "22", "count", 0);
        answer(kShoulder, "2026-09-24", "activity", shelf, 6);
        answer(kShoulder, "2026-09-24", "change", "", 2);
        answer(kShoulder, "2026-10-28", "activity", shelf, 8);
        answer(kShoulder, "2026-10-28", "overall", "", 80);
        answer(kShoulder, "2026-10-28", "change", "", 3);
        test(kShoulder, "2026-10-28", raise, "left", "55", "s", 0);
        test(kShoulder, "2026-10-28", raise, "right", "41", "s", 2);
        answer(kAchilles, "2026-10-28", "activity", market, 9);
        answer(kAchilles, "2026-10-28", "acceptable", "", 1);
        test(kAchilles, "2026-10-28", heels, "left", "19", "count", 1);
        test(kAchilles, "2026-10-28", heels, "right", "23", "count", 0);
    }

    // A week of pause makes 13 weeks of the 12, and in the last of them the clocks go back.
    const CivilDay m_shoulderStart = on("2026-07-27");
    const CivilDay m_shoulderEnd = on("2026-10-25");
    const CivilDay m_achillesStart = on("2026-07-29");
    const CivilDay m_achillesEnd = on("2026-10-27");
    const CivilDay m_phone = on("2026-08-24"); ///< on paper until then
    DemoDiary m_diary;
    DemoHabits m_shoulderHabits;
    DemoHabits m_achillesHabits;
};

} // namespace

TablesDiary demoTwoComplaints()
{
    return Story().tell();
}

} // namespace morrow::batch
