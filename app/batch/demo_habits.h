// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What an invented person does from day to day: answers the check, exercises,
/// forgets, is late.

#include "batch/demo_diary.h"

#include <string>
#include <vector>

namespace morrow::batch {

/// How pain goes over the days of a diary, in tenths of a point: evenly from the first to
/// the last day, with one flare that rises at once and wears off.
struct PainCourse
{
    CivilDay first;
    int atFirst;
    CivilDay last;
    int atLast;
    CivilDay flare; ///< the day after which it is there
    int flareHeight;
    int flareDays;

    [[nodiscard]] int on(CivilDay day) const noexcept;
};

/// One item's share of a session.
struct Portion
{
    std::string item;
    int sets;
    int reps;
    std::optional<int> holdSeconds;
    Decimal loadKg; ///< 0: nothing is written down
};

struct Sitting
{
    std::string complaint;
    CivilDay day;
    std::string slot;
    int hour; ///< about when it begins
    Author author = Author::Patient;
    bool onPaper = false;
    bool isWhole = true; ///< no set is left out
    bool spare = false; ///< says what would still have gone
};

class DemoHabits
{
public:
    DemoHabits(DemoDiary &diary, PainCourse course)
        : m_diary(diary)
        , m_course(course)
    {
    }

    /// The check of \a day: mostly in the morning, now and then a day late or not at all.
    /// \a stiffness: minutes are given too.
    void check(const std::string &complaint, CivilDay day, bool onPaper, bool stiffness);
    /// The same, never left out and never late; gives the entry.
    DemoDiary::Ref checkFor(const std::string &complaint, CivilDay day, bool onPaper, bool stiffness);

    /// A session with its sets and pain; gives the sets.
    std::vector<DemoDiary::Ref> exercise(const Sitting &sitting, const std::vector<Portion> &portions);

private:
    [[nodiscard]] int pain(CivilDay day, int more);
    DemoDiary::Ref checkAt(const std::string &complaint, CivilDay day, std::optional<Moment> moment, bool stiffness);

    DemoDiary &m_diary;
    PainCourse m_course;
};

} // namespace morrow::batch
