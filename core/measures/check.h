// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The daily question: pain 0-10, and stiffness in minutes (measures, section 5).
///
/// Counts are over the window; the medians name their days, and rows before P count:
///
///     firstWeek = median of the recorded values of days P .. P + 6, at least 3
///     reference = pain at the first assessment, else firstWeek
///     current = median of the recorded values of days to - 6 .. to, at least 3
///     change = current - reference; absent if to < P + 13
///     changeRatio = change / reference; absent if reference is 0
///     clearChange = change <= -2 and changeRatio <= -0.30; absent if change is, false if
///         the reference is 0: "as large as people in studies called a clear change"
///         (Farrar 2001; -2 or -33 % in Salaffi 2004)
///
///     trend = Trend (statistics.h) of the medians of the weeks of the window with at least 3
///         recorded values, at least 6 such weeks, time in weeks: weekly medians, because
///         neighbouring days are not independent
///     limits = individuals chart (NIST/SEMATECH e-Handbook 6.3.2.2) of the first 14 recorded
///         days from P on, at least 8, whatever the window
///
/// "Can't say" is an answer, counted as declined; it is not a recorded value.

#include "measures/days.h"
#include "measures/statistics.h"
#include "model/diary.h"

#include <optional>
#include <span>
#include <vector>

namespace morrow {

/// Fewer values than this have no median: one bad day is not a week.
inline constexpr std::size_t kLeastValues = 3;

/// An individuals chart is made of the first recorded days, at most so many.
inline constexpr std::size_t kDaysOfOwnLimits = 14;

/// An individuals chart of a person's own first days: a hint for the clinician, never a verdict.
///
///     meanRange = mean of |difference| over consecutive days that are both recorded
///     lower, upper = centre -+ 3 meanRange / 1.128, cut to 0..10
struct OwnLimits
{
    int n = 0; ///< days that it is made of
    double centre = 0;
    std::optional<double> meanRange; ///< nullopt: no two days in a row
    std::optional<double> lower; ///< nullopt as well if meanRange is 0
    std::optional<double> upper;
    std::vector<CivilDay> beyond; ///< later recorded days outside, up to `to`, whatever the window

    friend bool operator==(const OwnLimits &, const OwnLimits &) = default;
};

struct CheckMeasures
{
    int expected = 0; ///< days of the window on which it was asked
    int recorded = 0; ///< entries of the window with a pain value; of these:
    int sameDay = 0; ///< recorded on the diary day that they are about
    int late = 0; ///< on another
    int paper = 0; ///< typed in, without an instant
    int declined = 0;
    std::optional<double> firstWeek;
    std::optional<double> reference;
    std::optional<double> current;
    std::optional<double> change;
    std::optional<double> changeRatio;
    std::optional<bool> clearChange;
    std::optional<Trend> trend; ///< a week
    std::optional<OwnLimits> limits;

    friend bool operator==(const CheckMeasures &, const CheckMeasures &) = default;
};

struct StiffnessMeasures
{
    int recorded = 0; ///< entries of the window with minutes
    std::optional<double> current; ///< minutes, as for pain
    std::optional<Trend> trend; ///< minutes a week

    friend bool operator==(const StiffnessMeasures &, const StiffnessMeasures &) = default;
};

/// The check in one week of the window.
struct CheckWeek
{
    int week; ///< from 0, counted from P
    CivilDay start; ///< P + 7 week, also of a cut week
    int expected = 0;
    int recorded = 0;
    std::optional<double> median; ///< of at least 3 recorded values

    friend bool operator==(const CheckWeek &, const CheckWeek &) = default;
};

/// \a diary tells when the checks of \a complaint were recorded.
[[nodiscard]] CheckMeasures checkMeasures(const Diary &diary, const ComplaintDiary &complaint, const Window &window);

[[nodiscard]] StiffnessMeasures stiffnessMeasures(const ComplaintDiary &complaint, const Window &window);

/// One for each of \a weeks, the weeks of the window.
[[nodiscard]] std::vector<CheckWeek> checkWeeks(const ComplaintDiary &complaint, const Window &window, std::span<const Week> weeks);

/// The checks of the days \a first .. \a last; \a checks are by day.
[[nodiscard]] std::span<const Check> checksOf(std::span<const Check> checks, CivilDay first, CivilDay last);

/// The pain values among \a checks, without those of soreness days if they are given.
[[nodiscard]] std::vector<double> painValues(std::span<const Check> checks, const SorenessDays *leftOut = nullptr);

/// The minutes of stiffness among \a checks.
[[nodiscard]] std::vector<double> stiffnessValues(std::span<const Check> checks);

} // namespace morrow
