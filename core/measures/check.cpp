// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/check.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr double kClearChange = -2; // Farrar 2001; Salaffi 2004
constexpr double kClearChangeRatio = -0.30; // Farrar 2001

/// How many of the days \a first .. \a last the check is due on.
int expectedChecks(const ComplaintDiary &complaint, const Window &window, CivilDay first, CivilDay last)
{
    int expected = 0;
    for (CivilDay day = first; day <= last; day = day + 1)
        expected += complaint.complaint.checkRule.falls(day, window.planStart) ? 1 : 0;
    return expected;
}

void compare(CheckMeasures &check, const Window &window)
{
    if (!check.current || !check.reference || window.to < window.planStart + 13)
        return;
    check.change = *check.current - *check.reference;
    check.changeRatio = ratio(*check.change, *check.reference);
    check.clearChange = check.changeRatio && isAtMost(*check.change, kClearChange) && isAtMost(*check.changeRatio, kClearChangeRatio);
}

std::span<const Check> lastSevenDays(const ComplaintDiary &complaint, const Window &window)
{
    return checksOf(complaint.checks, window.to - 6, window.to);
}

constexpr std::size_t kLeastWeeks = 6;
constexpr std::size_t kLeastFirstDays = 8;

/// The trend of the weekly medians of what \a valuesIn finds in a week's checks.
template<class ValuesIn>
std::optional<Trend> weeklyTrend(const ComplaintDiary &complaint, const Window &window, ValuesIn valuesIn)
{
    std::vector<TimedValue> medians;
    for (const Week &week : weeksOf(window)) {
        if (const auto middle = median(valuesIn(checksOf(complaint.checks, week.first, week.last)), kLeastValues))
            medians.push_back({week.number, *middle});
    }
    return trend(medians, kLeastWeeks);
}

std::optional<OwnLimits> ownLimits(const ComplaintDiary &complaint, const Window &window)
{
    std::vector<TimedValue> recorded;
    for (const Check &check : checksOf(complaint.checks, window.planStart, window.to)) {
        if (check.pain)
            recorded.push_back({check.day - window.planStart, static_cast<double>(check.pain->value())});
    }
    const auto first = std::span(recorded).first(std::min(recorded.size(), kDaysOfOwnLimits));
    const auto chart = individualsChart(first, kLeastFirstDays);
    if (!chart)
        return std::nullopt;
    OwnLimits limits{.n = static_cast<int>(first.size()), .centre = chart->centre, .meanRange = chart->meanRange};
    if (!chart->limits)
        return limits;
    limits.lower = std::max(chart->limits->lower, 0.0);
    limits.upper = std::min(chart->limits->upper, 10.0);
    for (const TimedValue &later : std::span(recorded).subspan(first.size())) {
        if (!isAtMost(*limits.lower, later.value) || !isAtMost(later.value, *limits.upper))
            limits.beyond.push_back(window.planStart + later.time);
    }
    return limits;
}

} // namespace

std::span<const Check> checksOf(std::span<const Check> checks, CivilDay first, CivilDay last)
{
    const auto begin
        = std::lower_bound(checks.begin(), checks.end(), first, [](const Check &check, CivilDay day) { return check.day < day; });
    const auto end = std::upper_bound(begin, checks.end(), last, [](CivilDay day, const Check &check) { return day < check.day; });
    return {begin, end};
}

std::vector<double> painValues(std::span<const Check> checks, const SorenessDays *leftOut)
{
    std::vector<double> values;
    for (const Check &check : checks) {
        if (check.pain && !(leftOut != nullptr && leftOut->holds(check.day)))
            values.push_back(check.pain->value());
    }
    return values;
}

std::vector<double> stiffnessValues(std::span<const Check> checks)
{
    std::vector<double> minutes;
    for (const Check &check : checks) {
        if (check.stiffnessMinutes)
            minutes.push_back(*check.stiffnessMinutes);
    }
    return minutes;
}

CheckMeasures checkMeasures(const Diary &diary, const ComplaintDiary &complaint, const Window &window)
{
    CheckMeasures check;
    check.expected = expectedChecks(complaint, window, window.from, window.to);
    for (const Check &answer : checksOf(complaint.checks, window.from, window.to)) {
        check.declined += answer.declined ? 1 : 0;
        if (!answer.pain)
            continue;
        ++check.recorded;
        const auto recordedOn = diary.recordedOn(answer.entry);
        ++(!recordedOn ? check.paper : *recordedOn == answer.day ? check.sameDay : check.late);
    }

    const CivilDay endOfFirstWeek = std::min(window.planStart + 6, window.to);
    check.firstWeek = median(painValues(checksOf(complaint.checks, window.planStart, endOfFirstWeek)), kLeastValues);
    const auto &assessed = complaint.complaint.firstAssessmentPain;
    check.reference = assessed ? std::optional(assessed->toDouble()) : check.firstWeek;
    check.current = median(painValues(lastSevenDays(complaint, window)), kLeastValues);
    compare(check, window);
    check.trend = weeklyTrend(complaint, window, [](std::span<const Check> checks) { return painValues(checks); });
    check.limits = ownLimits(complaint, window);
    return check;
}

StiffnessMeasures stiffnessMeasures(const ComplaintDiary &complaint, const Window &window)
{
    StiffnessMeasures stiffness;
    for (const Check &answer : checksOf(complaint.checks, window.from, window.to))
        stiffness.recorded += answer.stiffnessMinutes ? 1 : 0;
    stiffness.current = median(stiffnessValues(lastSevenDays(complaint, window)), kLeastValues);
    stiffness.trend = weeklyTrend(complaint, window, stiffnessValues);
    return stiffness;
}

std::vector<CheckWeek> checkWeeks(const ComplaintDiary &complaint, const Window &window, std::span<const Week> weeks)
{
    std::vector<CheckWeek> result;
    result.reserve(weeks.size());
    for (const Week &week : weeks) {
        const auto values = painValues(checksOf(complaint.checks, week.first, week.last));
        result.push_back({
            .week = week.number,
            .start = week.start,
            .expected = expectedChecks(complaint, window, week.first, week.last),
            .recorded = static_cast<int>(values.size()),
            .median = median(values, kLeastValues),
        });
    }
    return result;
}

} // namespace morrow
