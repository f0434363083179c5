// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/trace.h"

#include "measures/check.h"
#include "measures/statistics.h"
#include "measures/trace_parts.h"

#include <algorithm>

namespace morrow {

namespace {

/// The done sets of items that load on \a day: they make it a loading day.
void addLoading(Trace &trace, const ComplaintDiary &complaint, CivilDay day)
{
    for (const ItemDiary &item : complaint.items) {
        if (!item.item.loads)
            continue;
        for (const SetDone &set : setsOf(item, day)) {
            if (set.reps >= 1)
                trace.shapedBy.push_back(set.entry);
        }
    }
}

/// What the usual pain up to \a day is made of.
void addUsual(Trace &trace, const ComplaintDiary &complaint, CivilDay to, CivilDay day)
{
    const SorenessDays sore(visitDays(complaint, to), complaint.limits().sorenessDays);
    for (const Behind &behind : behindPains(complaint, day - 6, day)) {
        if (!sore.holds(behind.day))
            trace.shapedBy.push_back(behind.entry);
    }
    addVisits(trace, complaint, day - 6 - complaint.limits().sorenessDays, std::min(day, to));
}

/// The check of the day after the loading on \a day, and what it is judged by.
void addResponse(Trace &trace, const ComplaintDiary &complaint, CivilDay to, CivilDay day, bool isValue)
{
    for (const Behind &behind : behindPains(complaint, day + 1, day + 1)) {
        if (isValue)
            trace.values.push_back(behind);
        else
            trace.shapedBy.push_back(behind.entry);
    }
    addUsual(trace, complaint, to, day);
}

void addSessions(Trace &trace, const ComplaintDiary &complaint, CivilDay first, CivilDay last, std::optional<PainScore> Session::*pain)
{
    for (const Session &session : complaint.sessions) {
        if (session.day >= first && session.day <= last && session.*pain)
            trace.values.push_back({session.entry, session.day, static_cast<double>((session.*pain)->value())});
    }
}

void addSigns(Trace &trace, const Diary &diary, CivilDay today)
{
    for (const ReportedSign &sign : diary.signs()) {
        if (sign.day > today)
            continue;
        if (sign.clearedOn && *sign.clearedOn <= today) {
            trace.shapedBy.push_back(sign.entry);
            trace.shapedBy.push_back(*sign.clearedBy);
        } else {
            trace.values.push_back({sign.entry, sign.day, std::nullopt});
        }
    }
}

/// What the conditions that look at the last sessions of an item have in common.
class LastSessions
{
public:
    LastSessions(const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window)
        : m_complaint(complaint)
        , m_item(item)
        , m_to(window.to)
        , m_since{window.planStart, stageOn(item, window.to).began, window.to}
    {
        const Limits &limits = complaint.limits();
        const Window lately{window.planStart, std::max(m_since.from, window.to - limits.stepWindowDays + 1), window.to};
        const auto days = itemDays(item, interruptions(diary.pauses(), complaint, lately), lately);
        m_recent = judgedDays(item, lately, days);
    }

    [[nodiscard]] const Window &since() const noexcept { return m_since; }

    /// The days of E.
    [[nodiscard]] std::vector<CivilDay> days() const { return last(m_complaint.limits().stepSessions); }
    [[nodiscard]] std::vector<CivilDay> last(int count) const
    {
        const auto length = std::min(m_recent.size(), static_cast<std::size_t>(count));
        return {m_recent.end() - static_cast<std::ptrdiff_t>(length), m_recent.end()};
    }

    void addTo(Trace &trace, Condition condition) const
    {
        const auto chosen = condition == Condition::LastTwoUnsettled ? last(2) : days();
        if (chosen.empty())
            return;
        trace.first = chosen.front();
        trace.last = chosen.back();
        for (const CivilDay day : chosen) {
            for (const SetDone &set : setsOf(m_item, day)) {
                if (set.reps >= 1 && condition == Condition::SetsComplete)
                    trace.values.push_back({set.entry, day, set.reps});
                else if (set.reps >= 1)
                    trace.shapedBy.push_back(set.entry);
            }
            if (condition == Condition::Settled || condition == Condition::LastTwoUnsettled)
                addResponse(trace, m_complaint, m_to, day, true);
            else if (condition == Condition::PainDuring)
                addAllSessions(trace, day, &Session::painDuring);
            else if (condition == Condition::PainAfter)
                addAllSessions(trace, day, &Session::painAfter);
        }
    }

private:
    /// A session without the value counts against it.
    void addAllSessions(Trace &trace, CivilDay day, std::optional<PainScore> Session::*pain) const
    {
        for (const Session &session : m_complaint.sessions) {
            if (session.day == day)
                trace.values.push_back(
                    {session.entry, day, session.*pain ? std::optional<double>((session.*pain)->value()) : std::nullopt});
        }
    }

    const ComplaintDiary &m_complaint;
    const ItemDiary &m_item;
    CivilDay m_to;
    Window m_since;
    std::vector<CivilDay> m_recent;
};

/// The checks that could make for contact, and what was usual before each.
void addContactChecks(Trace &trace, const ComplaintDiary &complaint, CivilDay to, bool isValue)
{
    for (const Behind &behind : behindPains(complaint, to - 2, to + 1)) {
        if (!isAtMost(complaint.limits().contactLevel.toDouble(), *behind.value))
            continue;
        if (isValue)
            trace.values.push_back(behind);
        else
            trace.shapedBy.push_back(behind.entry);
        addUsual(trace, complaint, to, behind.day - 1);
    }
}

} // namespace

Trace behindResponse(const ComplaintDiary &complaint, CivilDay to, CivilDay day)
{
    Trace trace{day - 6, day + 1, {}, {}, complaint.limits().riseAllowed.toDouble()};
    addLoading(trace, complaint, day);
    addResponse(trace, complaint, to, day, true);
    finish(trace);
    return trace;
}

Trace behindResponses(const ComplaintDiary &complaint, CivilDay first, CivilDay last, ResponseState state)
{
    Trace trace{first, last, {}, {}, complaint.limits().riseAllowed.toDouble()};
    const Responses responses(complaint, last);
    for (const CivilDay day : responses.loadingDays(first, last - 1)) {
        addLoading(trace, complaint, day);
        addResponse(trace, complaint, last, day, responses.after(day).state == state);
    }
    finish(trace);
    return trace;
}

Trace behindRule(const ComplaintDiary &complaint, CivilDay to, WeekRuleName rule)
{
    const Limits &limits = complaint.limits();
    Trace trace{to - 6, to, {}, {}, std::nullopt};
    switch (rule) {
    case WeekRuleName::During:
        trace.limit = limits.during.toDouble();
        addSessions(trace, complaint, trace.first, to, &Session::painDuring);
        break;
    case WeekRuleName::After:
        trace.limit = limits.after.toDouble();
        addSessions(trace, complaint, trace.first, to, &Session::painAfter);
        break;
    case WeekRuleName::Check:
        trace.limit = limits.check ? std::optional(limits.check->toDouble()) : std::nullopt;
        trace.values = behindPains(complaint, trace.first, to);
        break;
    case WeekRuleName::Settled:
        trace = behindResponses(complaint, trace.first, to, ResponseState::Unsettled);
        trace.limit = 0;
        break;
    case WeekRuleName::Weekly:
        trace.first = to - 13;
        trace.limit = limits.weeklyRiseAllowed.toDouble();
        trace.values = behindPains(complaint, trace.first, to);
        break;
    case WeekRuleName::Stiffness:
        trace.first = to - 13;
        trace.limit = limits.weeklyStiffnessAllowed.toDouble();
        for (const Check &check : checksOf(complaint.checks, trace.first, to)) {
            if (check.stiffnessMinutes)
                trace.values.push_back({check.entry, check.day, static_cast<double>(*check.stiffnessMinutes)});
        }
        break;
    }
    return trace;
}

Trace behindCondition(
    const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window, const Reason &reason)
{
    const Condition condition = reason.condition;
    const Limits &limits = complaint.limits();
    const CivilDay to = window.to;
    const LastSessions sessions(diary, complaint, item, window);
    Trace trace = behindAdherence(diary, complaint, item, sessions.since(),
        condition == Condition::SessionsInStage || condition == Condition::Adherence ? AdherenceFigure::Done : AdherenceFigure::Due);
    switch (condition) {
    case Condition::DaysInStage:
    case Condition::SessionsInStage:
    case Condition::Adherence:
    case Condition::NextStage:
        break;
    case Condition::SetsComplete:
    case Condition::PainDuring:
    case Condition::PainAfter:
    case Condition::Settled:
    case Condition::LastTwoUnsettled:
        sessions.addTo(trace, condition);
        // It is asked only where nothing makes for contact, and what was usual decides on that.
        if (condition == Condition::LastTwoUnsettled)
            addContactChecks(trace, complaint, to, false);
        break;
    case Condition::WeeklyRise:
        trace = behindRule(complaint, to, WeekRuleName::Weekly);
        break;
    case Condition::Level:
        trace = behindCheck(diary, complaint, window, CheckFigure::Change);
        break;
    case Condition::Sign:
        trace = {window.planStart, to + 1, {}, {}, std::nullopt};
        addSigns(trace, diary, to + 1);
        break;
    case Condition::SessionPain:
        trace = {to - 2, to + 1, {}, {}, std::nullopt};
        for (const Session &session : complaint.sessions) {
            const auto worst = std::max(session.painDuring, session.painAfter);
            if (session.day >= to - 2 && session.day <= to + 1 && worst && isAtMost(limits.contactLevel.toDouble(), worst->value()))
                trace.values.push_back({session.entry, session.day, static_cast<double>(worst->value())});
        }
        break;
    case Condition::CheckPain:
        trace = {to - 2, to + 1, {}, {}, std::nullopt};
        addContactChecks(trace, complaint, to, true);
        break;
    }
    trace.limit = reason.limit;
    finish(trace);
    return trace;
}

} // namespace morrow
