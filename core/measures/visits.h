// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What was given at each visit, and the check before and after it (measures, section 8).
/// What came after, not because of.
///
/// All up to `to`, whatever the window; the visits of one day are one, on day v:
///
///     before = median of the recorded checks of v - 7 .. v - 1, without soreness days of
///         earlier visits, at least 3
///     afterWeeks = medians of 7-day spans from v + 1 + soreness_days up to the day before
///         the next later visit, or to `to`; the last may be shorter; at least 3 values each
///     change = the last known of afterWeeks - before
///     seconds = warm-up impulses / warm-up Hz + impulses / Hz
///     perCm2 = impulses / area
///     totalImpulses = warm-up impulses + impulses
///
/// An empty warm-up count means none; any other missing part, or a divisor 0, makes that
/// result absent. Times, impulses and areas of one day add up; a visit that gives none of
/// the five parts counts as a day only.

#include "model/diary.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace morrow {

/// The visits of one day, taken together.
struct VisitMeasures
{
    CivilDay day;
    std::optional<double> before;
    std::vector<std::optional<double>> afterWeeks;
    std::optional<double> change;
    std::optional<double> seconds;
    std::optional<double> perCm2;
    std::optional<std::int64_t> totalImpulses;

    friend bool operator==(const VisitMeasures &, const VisitMeasures &) = default;
};

/// The visits of \a complaint up to \a to, by day.
[[nodiscard]] std::vector<VisitMeasures> visitMeasures(const ComplaintDiary &complaint, CivilDay to);

} // namespace morrow
