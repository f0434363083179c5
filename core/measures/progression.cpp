// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/progression.h"

#include "measures/adherence.h"
#include "measures/statistics.h"
#include "measures/tally.h"

#include <algorithm>
#include <iterator>

namespace morrow {

namespace {

/// A session with pain of \a level or more, on the days \a first .. \a last, if there is one.
std::optional<double> sessionPainFrom(const ComplaintDiary &complaint, CivilDay first, CivilDay last, double level)
{
    std::optional<double> worst;
    for (const Session &session : complaint.sessions) {
        if (session.day < first || session.day > last)
            continue;
        for (const auto &pain : {session.painDuring, session.painAfter}) {
            if (pain && isAtMost(level, pain->value()))
                worst = std::max(worst.value_or(0), static_cast<double>(pain->value()));
        }
    }
    return worst;
}

std::optional<double> checkPainFrom(const ProgressionBasis &basis, CivilDay first, CivilDay last, const Limits &limits)
{
    std::optional<double> worst;
    for (const Check &check : checksOf(basis.complaint.checks, first, last)) {
        if (!check.pain || !isAtMost(limits.contactLevel.toDouble(), check.pain->value()))
            continue;
        const auto usual = basis.responses.usual(check.day - 1);
        if (!usual || isAtMost(limits.contactRise.toDouble(), check.pain->value() - *usual))
            worst = std::max(worst.value_or(0), static_cast<double>(check.pain->value()));
    }
    return worst;
}

/// What makes for contact; it is the same for every item of a complaint.
std::vector<Reason> contactReasons(const ProgressionBasis &basis, const Limits &limits)
{
    const CivilDay today = basis.to + 1;
    std::vector<Reason> reasons;
    const auto &signs = basis.diary.signs();
    if (std::any_of(signs.begin(), signs.end(),
            [today](const ReportedSign &sign) { return sign.day <= today && !(sign.clearedOn && *sign.clearedOn <= today); }))
        reasons.push_back({Condition::Sign, true, std::nullopt, std::nullopt});
    const double level = limits.contactLevel.toDouble();
    if (const auto pain = sessionPainFrom(basis.complaint, basis.to - 2, today, level))
        reasons.push_back({Condition::SessionPain, true, pain, level});
    if (const auto pain = checkPainFrom(basis, basis.to - 2, today, limits))
        reasons.push_back({Condition::CheckPain, true, pain, level});
    return reasons;
}

/// One item, and what was done of it since its stage began.
class ItemProgress
{
public:
    ItemProgress(const ProgressionBasis &basis, const ItemDiary &item, std::span<const Interruption> interrupted)
        : m_basis(basis)
        , m_item(item)
        , m_stage(stageOn(item, basis.to))
        , m_limits(basis.complaint.plan->limits)
        , m_since{basis.planStart, m_stage.began, basis.to}
        , m_interrupted(interrupted.subspan(static_cast<std::size_t>(m_stage.began - basis.planStart)))
        , m_days(itemDays(item, m_interrupted, m_since))
    {
        const Window lately{m_since.planStart, std::max(m_since.from, basis.to - m_limits.stepWindowDays + 1), basis.to};
        m_recent = judgedDays(item, lately, std::span(m_days).subspan(m_since.place(lately.from)));
        const auto count = std::min(m_recent.size(), static_cast<std::size_t>(m_limits.stepSessions));
        m_sessions.assign(m_recent.end() - static_cast<std::ptrdiff_t>(count), m_recent.end());
    }

    [[nodiscard]] Progression progress(const std::vector<Reason> &contact) const
    {
        Progression result;
        result.reasons = conditions();
        for (const Reason &reason : result.reasons) {
            if (!reason.isMet)
                result.unmet.push_back(reason.condition);
        }
        if (!contact.empty()) {
            result.decision = Decision::Contact;
            result.reasons.insert(result.reasons.end(), contact.begin(), contact.end());
        } else if (lastTwoAreUnsettled()) {
            result.decision = Decision::StepDown;
            if (m_stage.number > 1)
                result.toStage = m_stage.number - 1;
            result.reasons.push_back({Condition::LastTwoUnsettled, true, 2, 2});
        } else if (result.unmet.empty()) {
            result.decision = Decision::StepUp;
            result.toStage = m_stage.number + 1;
        }
        return result;
    }

private:
    [[nodiscard]] const Stage &stage() const { return m_item.item.stages[static_cast<std::size_t>(m_stage.number - 1)]; }

    [[nodiscard]] std::vector<Reason> conditions() const
    {
        std::vector<Reason> reasons;
        const auto add = [&reasons](Condition condition, bool isMet, std::optional<double> value = std::nullopt,
                             std::optional<double> limit = std::nullopt) {
            reasons.push_back({condition, isMet, value, limit});
        };

        const auto stood = std::count_if(m_interrupted.begin(), m_interrupted.end(), [](const Interruption &day) { return !day.paused; });
        add(Condition::DaysInStage, stood >= stage().minDays, static_cast<double>(stood), stage().minDays);
        const std::vector<Week> weeks = weeksOf(m_since);
        const Adherence adherence = adherenceOf(
            m_basis.complaint, m_item, m_since, m_days, weekTallies(m_item, m_since, weeks, m_days, m_basis.diary.bodyMassKg()));
        add(Condition::SessionsInStage, adherence.sessionsAttended >= stage().minSessions, static_cast<double>(adherence.sessionsAttended),
            stage().minSessions);
        const double least = m_limits.stepAdherence.toDouble();
        add(Condition::Adherence, adherence.setRatio && isAtMost(least, *adherence.setRatio), adherence.setRatio, least);
        const auto complete = std::count_if(m_sessions.begin(), m_sessions.end(), [this](CivilDay day) { return isComplete(day); });
        add(Condition::SetsComplete, complete == m_limits.stepSessions, static_cast<double>(complete), m_limits.stepSessions);
        const Asks &asks = m_basis.complaint.plan->asks;
        if (asks.during)
            reasons.push_back(painReason(Condition::PainDuring, &Session::painDuring, m_limits.during));
        if (asks.after)
            reasons.push_back(painReason(Condition::PainAfter, &Session::painAfter, m_limits.after));
        const auto settled = std::count_if(m_sessions.begin(), m_sessions.end(),
            [this](CivilDay day) { return m_basis.responses.after(day).state == ResponseState::Settled; });
        add(Condition::Settled, !m_sessions.empty() && settled == static_cast<std::ptrdiff_t>(m_sessions.size()),
            static_cast<double>(settled), static_cast<double>(m_sessions.size()));
        const auto weekly = std::find_if(
            m_basis.rules.begin(), m_basis.rules.end(), [](const WeekRule &rule) { return rule.rule == WeekRuleName::Weekly; });
        add(Condition::WeeklyRise, weekly->state == RuleState::Ok, weekly->value, weekly->limit);
        const auto &check = m_basis.check;
        const auto most = check.reference ? std::optional(*check.reference + m_limits.levelRiseAllowed.toDouble()) : std::nullopt;
        add(Condition::Level, check.current && most && isAtMost(*check.current, *most), check.current, most);
        const auto stages = static_cast<int>(m_item.item.stages.size());
        add(Condition::NextStage, m_stage.number < stages, m_stage.number, stages);
        return reasons;
    }

    /// Whether what was due on \a day was done at the dose of the stage.
    [[nodiscard]] bool isComplete(CivilDay day) const
    {
        const Dose &dose = stage().dose;
        const auto *onDays = std::get_if<OnDays>(&stage().rhythm);
        const std::int64_t due = dose.sets * (onDays ? static_cast<std::int64_t>(onDays->slots.size()) : 1);
        const auto sets = setsOf(m_item, day);
        return std::count_if(sets.begin(), sets.end(), [&dose](const SetDone &set) {
            return set.reps >= dose.reps && (!set.holdSeconds || *set.holdSeconds >= dose.holdSeconds)
                && (!set.loadKg || *set.loadKg >= dose.loadKg);
        }) >= due;
    }

    [[nodiscard]] Reason painReason(Condition condition, std::optional<PainScore> Session::*pain, Decimal limit) const
    {
        Reason reason{condition, !m_sessions.empty(), std::nullopt, limit.toDouble()};
        for (const CivilDay day : m_sessions) {
            bool hasSession = false;
            for (const Session &session : m_basis.complaint.sessions) {
                if (session.day != day)
                    continue;
                hasSession = true;
                if (session.*pain)
                    reason.value = std::max(reason.value.value_or(0), static_cast<double>((session.*pain)->value()));
                reason.isMet = reason.isMet && session.*pain && isAtMost((session.*pain)->value(), limit.toDouble());
            }
            reason.isMet = reason.isMet && hasSession;
        }
        return reason;
    }

    [[nodiscard]] bool lastTwoAreUnsettled() const
    {
        constexpr std::ptrdiff_t kLast = 2;
        return static_cast<std::ptrdiff_t>(m_recent.size()) >= kLast
            && std::all_of(m_recent.end() - kLast, m_recent.end(),
                [this](CivilDay day) { return m_basis.responses.after(day).state == ResponseState::Unsettled; });
    }

    const ProgressionBasis &m_basis;
    const ItemDiary &m_item;
    StageInForce m_stage;
    const Limits &m_limits;
    Window m_since;
    std::span<const Interruption> m_interrupted; ///< of m_since
    std::vector<ItemDay> m_days; ///< the same
    std::vector<CivilDay> m_recent; ///< "such days"
    std::vector<CivilDay> m_sessions; ///< E
};

bool isUnderWay(const ItemDiary &item, const ComplaintDiary &complaint, CivilDay to)
{
    return item.item.loads && item.item.start <= to && !(item.item.end && *item.item.end < to)
        && !(complaint.putAsideFrom && *complaint.putAsideFrom <= to);
}

/// The last change of \a item to a higher stage on one of the last \a days days up to \a to.
std::optional<EntryIndex> steppedUpLately(const ItemDiary &item, CivilDay to, int days)
{
    int stage = 1;
    std::optional<EntryIndex> last;
    for (const StageChange &change : item.stageChanges) {
        if (change.day > to || !hasStage(item, change.stage))
            continue;
        if (change.stage > stage && to - change.day < days)
            last = change.entry;
        stage = change.stage;
    }
    return last;
}

} // namespace

std::span<const SetDone> setsOf(const ItemDiary &item, CivilDay day)
{
    const auto begin
        = std::lower_bound(item.sets.begin(), item.sets.end(), day, [](const SetDone &set, CivilDay one) { return set.day < one; });
    const auto end = std::find_if(begin, item.sets.end(), [day](const SetDone &set) { return set.day != day; });
    return {begin, end};
}

std::vector<CivilDay> judgedDays(const ItemDiary &item, const Window &window, std::span<const ItemDay> days)
{
    std::vector<CivilDay> judged;
    for (CivilDay day = window.from; day < window.to; day = day + 1) {
        const auto sets = setsOf(item, day);
        if (days[window.place(day)].due && std::any_of(sets.begin(), sets.end(), [](const SetDone &set) { return set.reps >= 1; }))
            judged.push_back(day);
    }
    return judged;
}

std::vector<std::optional<Progression>> progressions(const ProgressionBasis &basis)
{
    const std::vector<ItemDiary> &items = basis.complaint.items;
    std::vector<std::optional<Progression>> result(items.size());
    if (!basis.complaint.plan || basis.complaint.plan->authority == Authority::Off)
        return result;
    const Limits &limits = basis.complaint.plan->limits;
    const auto interrupted = interruptions(basis.diary.pauses(), basis.complaint, {basis.planStart, basis.planStart, basis.to});
    const std::vector<Reason> contact = contactReasons(basis, limits);
    std::vector<StageInForce> stages;
    std::transform(
        items.begin(), items.end(), std::back_inserter(stages), [&basis](const ItemDiary &item) { return stageOn(item, basis.to); });
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (isUnderWay(items[i], basis.complaint, basis.to))
            result[i] = ItemProgress(basis, items[i], interrupted).progress(contact);
    }
    const auto wouldStepUp = [&result](std::size_t i) { return result[i] && result[i]->decision == Decision::StepUp; };
    for (std::size_t i = 0; i < items.size(); ++i) {
        for (std::size_t j = 0; j < items.size() && wouldStepUp(i); ++j) {
            if (i == j)
                continue;
            std::vector<WaitsFor> &waitsFor = result[i]->waitsFor;
            if (const auto change = steppedUpLately(items[j], basis.to, limits.stepSpacingDays))
                waitsFor.push_back({items[j].item.key, GoesFirst::SteppedUp, change});
            else if (wouldStepUp(j) && stages[j].began < stages[i].began)
                waitsFor.push_back({items[j].item.key, GoesFirst::LongerInStage, stages[j].change});
            else if (wouldStepUp(j) && stages[j].began == stages[i].began && j < i)
                waitsFor.push_back({items[j].item.key, GoesFirst::EarlierInPlan, stages[j].change});
        }
    }
    return result;
}

} // namespace morrow
