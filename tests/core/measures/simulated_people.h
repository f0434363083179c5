// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// People made up by a noise model, to see how often each decision of the progression rule
/// comes up. The model is invented; no study stands behind it.
///
///     pain of day d = person + from + (to - from) d / 83 + calm(d) + flare(d), 84 days
///     person: normal, sd 0.5; calm: each day 0.5 of the day before + normal, sd 0.7
///     flare: on 1 day in 50 begins one of three days, +3
///
/// The check is that pain, rounded and cut to 0..10, given on 9 days of 10. The exercise (3 x 15
/// daily, three stages of at least 14 days and 8 sessions each) is done on 9 days of 10, with
/// pain in it 0.5 above that of the day and 0 after it, both with a normal error of sd 0.7. What
/// is done changes no pain. Each seventh day a clinician follows what the rule offers: a step up
/// or down is a stage change of the next day. Limits are the defaults.

#include "measures/progression.h"

#include <array>
#include <string>

namespace morrow::test {

/// How the pain of one kind of person goes over the 12 weeks.
struct Course
{
    std::string name;
    double from;
    double to;
};

inline constexpr int kSimulatedDays = 84;

/// What came of \a count people.
struct SimulatedDecisions
{
    std::array<int, 4> days{}; ///< by Decision, of all days from the 15th on
    std::array<int, 4> reviews{}; ///< the same on the days of the reviews
    std::array<int, 10> unmet{}; ///< by Condition up to NextStage: reviews at which it did not hold
    std::array<int, 4> people{}; ///< people who had it at any review
    std::array<int, 3> lastStage{}; ///< people who ended in stage 1, 2, 3
};

/// \a count people of \a course, from \a seed alone.
[[nodiscard]] SimulatedDecisions simulate(const Course &course, int count, unsigned seed);

} // namespace morrow::test
