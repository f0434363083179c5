// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/measures/simulated_people.h"

#include "measures/measures.h"
#include "support/diary_builder.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <random>

namespace morrow::test {

namespace {

constexpr int kFirstReview = 14; // earlier there is no second week to compare with
constexpr int kEvery = 7;
const CivilDay kStart = day("2026-03-02");

/// The same numbers with every standard library, whose distributions differ.
class Chance
{
public:
    explicit Chance(unsigned seed)
        : m_engine(seed)
    {
    }

    double share() { return static_cast<double>(m_engine()) / static_cast<double>(std::mt19937::max()); }
    bool happens(double probability) { return share() < probability; }
    /// Normal but for its tails: the sum of twelve.
    double normal(double deviation)
    {
        double sum = -6;
        for (int i = 0; i < 12; ++i)
            sum += share();
        return sum * deviation;
    }

private:
    std::mt19937 m_engine;
};

int onTheScale(double pain)
{
    return static_cast<int>(std::lround(std::clamp(pain, 0.0, 10.0)));
}

Item exercise()
{
    Item squat = item("squat", kStart, {onDays(3, 15), onDays(3, 15), onDays(3, 15)});
    for (Stage &stage : squat.stages) {
        stage.minDays = 14;
        stage.minSessions = 8;
    }
    return squat;
}

/// The pain of one person, day by day.
class PainOfDays
{
public:
    PainOfDays(const Course &course, Chance &chance)
        : m_course(course)
        , m_chance(chance)
        , m_person(chance.normal(0.5))
    {
    }

    double next()
    {
        m_calm = 0.5 * m_calm + m_chance.normal(0.7);
        m_flare = m_chance.happens(0.02) ? 3 : m_flare - 1;
        const double part = static_cast<double>(m_day++) / (kSimulatedDays - 1);
        return m_person + m_course.from + (m_course.to - m_course.from) * part + m_calm + (m_flare > 0 ? 3 : 0);
    }

private:
    const Course &m_course;
    Chance &m_chance;
    double m_person;
    double m_calm = 0;
    int m_flare = 0; ///< days that are left of it
    int m_day = 0;
};

void tellDay(DiaryBuilder &builder, CivilDay today, double pain, Chance &chance)
{
    if (chance.happens(0.9))
        builder.check(today, onTheScale(pain));
    const bool isDone = chance.happens(0.9);
    const int during = onTheScale(pain + 0.5 + chance.normal(0.7));
    const int after = onTheScale(pain + chance.normal(0.7));
    if (!isDone)
        return;
    builder.sets(today, "morning", "squat", 3, 15);
    builder.session(today, "morning", during, after);
}

void addPerson(SimulatedDecisions &result, const Course &course, Chance &chance)
{
    DiaryBuilder builder;
    builder.item(exercise());
    PainOfDays pain(course, chance);
    std::array<bool, 4> had{};
    int stage = 1;
    for (int place = 0; place < kSimulatedDays; ++place) {
        const CivilDay today = kStart + place;
        tellDay(builder, today, pain.next(), chance);
        if (place < kFirstReview)
            continue;
        const auto measures = measure(builder.diary(), today, std::nullopt);
        const Progression &found = *measures.value().at(0).items.at(0).progression;
        const auto decision = static_cast<std::size_t>(found.decision);
        ++result.days.at(decision);
        if (place % kEvery != 0)
            continue;
        ++result.reviews.at(decision);
        had.at(decision) = true;
        for (const Condition condition : found.unmet)
            ++result.unmet.at(static_cast<std::size_t>(condition));
        if (found.toStage && found.decision != Decision::Contact) {
            stage = *found.toStage;
            builder.stage(today + 1, "squat", stage);
        }
    }
    for (std::size_t i = 0; i < had.size(); ++i)
        result.people.at(i) += had.at(i) ? 1 : 0;
    ++result.lastStage.at(static_cast<std::size_t>(stage - 1));
}

} // namespace

SimulatedDecisions simulate(const Course &course, int count, unsigned seed)
{
    SimulatedDecisions result;
    Chance chance(seed);
    for (int person = 0; person < count; ++person)
        addPerson(result, course, chance);
    return result;
}

} // namespace morrow::test
