// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/week_rules.h"

#include "measures/check.h"
#include "measures/statistics.h"

#include <algorithm>
#include <numeric>
#include <span>

namespace morrow {

namespace {

constexpr std::size_t kLeastForMean = 4;

WeekRule judged(WeekRuleName rule, std::optional<double> value, std::optional<double> limit)
{
    const RuleState state = !value || !limit ? RuleState::Unknown : isAtMost(*value, *limit) ? RuleState::Ok : RuleState::Exceeded;
    return {rule, state, value, limit};
}

/// The greatest \a pain of the sessions of the last seven days.
std::optional<double> greatestPain(const ComplaintDiary &complaint, CivilDay to, std::optional<PainScore> Session::*pain)
{
    std::optional<double> greatest;
    for (const Session &session : complaint.sessions) {
        if (session.day >= to - 6 && session.day <= to && session.*pain)
            greatest = std::max(greatest.value_or(0), static_cast<double>((session.*pain)->value()));
    }
    return greatest;
}

std::optional<double> mean(const std::vector<double> &values)
{
    if (values.size() < kLeastForMean)
        return std::nullopt;
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// How much the mean of the last seven days lies above that of the seven before.
template<class ValuesIn>
std::optional<double> rise(const ComplaintDiary &complaint, CivilDay to, ValuesIn valuesIn)
{
    const auto now = mean(valuesIn(checksOf(complaint.checks, to - 6, to)));
    const auto before = mean(valuesIn(checksOf(complaint.checks, to - 13, to - 7)));
    return now && before ? std::optional(*now - *before) : std::nullopt;
}

std::optional<double> unsettledDays(const Responses &responses, CivilDay to)
{
    int unsettled = 0;
    bool isKnown = false;
    for (const CivilDay day : responses.loadingDays(to - 6, to - 1)) {
        const ResponseState state = responses.after(day).state;
        isKnown = isKnown || state != ResponseState::Unknown;
        unsettled += state == ResponseState::Unsettled ? 1 : 0;
    }
    return isKnown ? std::optional<double>(unsettled) : std::nullopt;
}

} // namespace

std::vector<WeekRule> weekRules(const ComplaintDiary &complaint, const Responses &responses, CivilDay to)
{
    const Limits &limits = complaint.limits();
    const Asks asks = complaint.plan ? complaint.plan->asks : Asks();
    std::vector<WeekRule> rules;
    if (asks.during)
        rules.push_back(judged(WeekRuleName::During, greatestPain(complaint, to, &Session::painDuring), limits.during.toDouble()));
    if (asks.after)
        rules.push_back(judged(WeekRuleName::After, greatestPain(complaint, to, &Session::painAfter), limits.after.toDouble()));
    const std::vector<double> pains = painValues(checksOf(complaint.checks, to - 6, to));
    rules.push_back(judged(WeekRuleName::Check, pains.empty() ? std::nullopt : std::optional(*std::max_element(pains.begin(), pains.end())),
        limits.check ? std::optional(limits.check->toDouble()) : std::nullopt));
    rules.push_back(judged(WeekRuleName::Settled, unsettledDays(responses, to), 0));
    rules.push_back(judged(WeekRuleName::Weekly, rise(complaint, to, [](std::span<const Check> checks) { return painValues(checks); }),
        limits.weeklyRiseAllowed.toDouble()));
    if (asks.stiffness)
        rules.push_back(
            judged(WeekRuleName::Stiffness, rise(complaint, to, [](std::span<const Check> checks) { return stiffnessValues(checks); }),
                limits.weeklyStiffnessAllowed.toDouble()));
    return rules;
}

} // namespace morrow
