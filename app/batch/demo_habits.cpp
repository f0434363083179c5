// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/demo_habits.h"

#include <algorithm>

namespace morrow::batch {

namespace {

constexpr int kUnanswered = 10; ///< one check in so many is never given
constexpr int kLate = 14; ///< and one in so many a day late
constexpr int kSetLeftOut = 24; ///< one last set in so many is left out
constexpr int kWearsOut = 9; ///< in one last set in so many the repetitions do not all go

} // namespace

int PainCourse::on(CivilDay day) const noexcept
{
    const int even = atFirst + (atLast - atFirst) * (day - first) / (last - first);
    const int since = day - flare;
    return even + (since > 0 && since <= flareDays ? flareHeight * (flareDays + 1 - since) / flareDays : 0);
}

int DemoHabits::pain(CivilDay day, int more)
{
    const int tenths = m_course.on(day) + more + m_diary.chance().between(-7, 7);
    return std::clamp((std::max(tenths, 0) + 5) / 10, 0, 10);
}

DemoDiary::Ref DemoHabits::checkAt(const std::string &complaint, CivilDay day, std::optional<Moment> moment, bool stiffness)
{
    Body body = bodyOf({{Field::Complaint, complaint}, {Field::Pain, pain(day, 0)}});
    if (stiffness)
        body.set(Field::StiffnessMin, Decimal::whole(5 * ((m_course.on(day) + 5) / 10 + m_diary.chance().below(2))));
    if (moment)
        return m_diary.recorded(Kind::Check, day, *moment, Author::Patient, std::move(body));
    return m_diary.onPaper(Kind::Check, day, Author::Patient, std::move(body));
}

DemoDiary::Ref DemoHabits::checkFor(const std::string &complaint, CivilDay day, bool onPaper, bool stiffness)
{
    const Moment morning = m_diary.at(day, 7, m_diary.chance().between(2, 58));
    return checkAt(complaint, day, onPaper ? std::nullopt : std::optional(morning), stiffness);
}

void DemoHabits::check(const std::string &complaint, CivilDay day, bool onPaper, bool stiffness)
{
    if (m_diary.chance().oneIn(kUnanswered))
        return;
    if (onPaper || !m_diary.chance().oneIn(kLate))
        checkFor(complaint, day, onPaper, stiffness);
    else
        checkAt(complaint, day, m_diary.at(day + 1, 8, m_diary.chance().between(0, 50)), false);
}

std::vector<DemoDiary::Ref> DemoHabits::exercise(const Sitting &sitting, const std::vector<Portion> &portions)
{
    Chance &chance = m_diary.chance();
    std::vector<DemoDiary::Ref> made;
    const bool together = chance.oneIn(3); // ticked off in one go, at the end
    int minute = chance.between(0, 25);
    const auto add = [&](Kind kind, Body body) {
        if (sitting.onPaper)
            return m_diary.onPaper(kind, sitting.day, sitting.author, std::move(body));
        const Moment moment = m_diary.at(sitting.day, sitting.hour + minute / 60, minute % 60);
        return m_diary.recorded(kind, sitting.day, moment, sitting.author, std::move(body));
    };
    for (const Portion &portion : portions) {
        for (int set = 1; set <= portion.sets; ++set) {
            const bool isLast = set == portion.sets;
            if (isLast && !sitting.isWhole && chance.oneIn(kSetLeftOut))
                continue;
            const int missing = isLast && portion.reps > 2 && chance.oneIn(kWearsOut) ? chance.between(1, 2) : 0;
            Body body = bodyOf(
                {{Field::Slot, sitting.slot}, {Field::Item, portion.item}, {Field::Set, set}, {Field::Reps, portion.reps - missing}});
            if (portion.holdSeconds)
                body.set(Field::HoldS, Decimal::whole(*portion.holdSeconds));
            if (portion.loadKg > Decimal())
                body.set(Field::LoadKg, portion.loadKg);
            if (sitting.spare && isLast)
                body.set(Field::Spare, Decimal::whole(missing > 0 ? 0 : chance.oneIn(3) ? 3 : 1));
            if (!sitting.onPaper)
                body.set(Field::How, std::string(portion.holdSeconds ? "timer" : together ? "all" : "tick"));
            minute += together ? 0 : chance.between(2, 3);
            made.push_back(add(Kind::Set, std::move(body)));
        }
    }
    minute += chance.between(1, 12);
    Body body = bodyOf({{Field::Complaint, sitting.complaint}, {Field::Slot, sitting.slot}, {Field::PainDuring, pain(sitting.day, 8)}});
    if (!chance.oneIn(6))
        body.set(Field::PainAfter, Decimal::whole(pain(sitting.day, 3)));
    add(Kind::Session, std::move(body));
    return made;
}

} // namespace morrow::batch
