// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/response.h"

#include "measures/check.h"
#include "measures/statistics.h"

#include <algorithm>

namespace morrow {

namespace {

std::optional<double> painOn(const ComplaintDiary &complaint, CivilDay day)
{
    const auto checks = checksOf(complaint.checks, day, day);
    return checks.empty() || !checks.front().pain ? std::nullopt : std::optional<double>(checks.front().pain->value());
}

} // namespace

Responses::Responses(const ComplaintDiary &complaint, CivilDay to)
    : m_complaint(complaint)
    , m_limits(complaint.limits())
    , m_soreness(visitDays(complaint, to), m_limits.sorenessDays)
{
}

std::optional<double> Responses::usual(CivilDay day) const
{
    if (const auto middle = median(painValues(checksOf(m_complaint.checks, day - 6, day), &m_soreness), kLeastValues))
        return middle;
    const auto &assessed = m_complaint.complaint.firstAssessmentPain;
    return assessed ? std::optional(assessed->toDouble()) : std::nullopt;
}

ResponseDay Responses::after(CivilDay day) const
{
    ResponseDay response{.day = day};
    const auto check = painOn(m_complaint, day + 1);
    const bool isSore = m_soreness.holds(day + 1);
    const auto before = usual(day);
    if (check && before && !isSore)
        response.rise = *check - *before;
    const bool isAboveLimit = check && m_limits.check && !isAtMost(*check, m_limits.check->toDouble());
    if (isAboveLimit || (response.rise && !isAtMost(*response.rise, m_limits.riseAllowed.toDouble())))
        response.state = ResponseState::Unsettled;
    else if (response.rise)
        response.state = ResponseState::Settled;
    else
        response.reason = isSore ? UnknownBecause::AfterVisit : UnknownBecause::Missing;
    return response;
}

std::vector<CivilDay> Responses::loadingDays(CivilDay first, CivilDay last) const
{
    std::vector<CivilDay> days;
    for (const ItemDiary &item : m_complaint.items) {
        if (!item.item.loads)
            continue;
        auto set
            = std::lower_bound(item.sets.begin(), item.sets.end(), first, [](const SetDone &one, CivilDay day) { return one.day < day; });
        for (; set != item.sets.end() && set->day <= last; ++set) {
            if (set->reps >= 1 && (days.empty() || days.back() != set->day))
                days.push_back(set->day);
        }
    }
    std::sort(days.begin(), days.end());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    return days;
}

ResponseMeasures responseMeasures(const Responses &responses, const Window &window)
{
    ResponseMeasures result;
    for (const CivilDay day : responses.loadingDays(window.from, window.to - 1)) {
        result.days.push_back(responses.after(day));
        const ResponseState state = result.days.back().state;
        ++(state == ResponseState::Settled ? result.settled : state == ResponseState::Unsettled ? result.unsettled : result.unknown);
    }
    return result;
}

} // namespace morrow
