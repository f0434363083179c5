// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// The rule and its conditions in words.

#include "measures/statistics.h"
#include "report/figures.h"
#include "report/review_parts.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr std::size_t kWordsOfText = 14;

std::string known(const std::optional<double> &value)
{
    return value ? figure(*value) : "unknown";
}

/// What is open, told in a few words.
std::string shortly(Condition condition)
{
    switch (condition) {
    case Condition::DaysInStage:
        return "days in stage";
    case Condition::SessionsInStage:
        return "sessions in stage";
    case Condition::Adherence:
        return "sets done";
    case Condition::SetsComplete:
        return "full dose";
    case Condition::PainDuring:
        return "pain in exercise";
    case Condition::PainAfter:
        return "pain after exercise";
    case Condition::Settled:
        return "next check";
    case Condition::WeeklyRise:
        return "weekly rise";
    case Condition::Level:
        return "level this week";
    case Condition::NextStage:
        return "no further stage";
    case Condition::Sign:
        return "sign not answered for";
    case Condition::SessionPain:
        return "pain in or after exercise";
    case Condition::CheckPain:
        return "check well above usual";
    case Condition::LastTwoUnsettled:
        return "next check above usual after the last 2 sessions";
    }
    return {};
}

/// A condition of one item being put into words.
class ConditionWords
{
public:
    ConditionWords(const ReviewBasis &basis, const ItemDiary &item, const Reason &reason)
        : m_basis(basis)
        , m_reason(reason)
        , m_stage(basis.numbersOf(item.item.key).stage)
        , m_trace(behindCondition(basis.diary, basis.complaint, item, basis.window, reason))
    {
    }

    [[nodiscard]] Clause clause() const
    {
        const std::string limit = known(m_reason.limit);
        const std::string lastSessions = " of the last " + counted(static_cast<int>(m_reason.limit.value_or(0)), "session");
        switch (m_reason.condition) {
        case Condition::DaysInStage:
            return {value(known(m_reason.value)),
                words((m_reason.value == 1.0 ? " day in stage " : " days in stage ") + std::to_string(m_stage) + ", at least " + limit)};
        case Condition::SessionsInStage:
            return {value(known(m_reason.value)),
                words((m_reason.value == 1.0 ? " session in stage " : " sessions in stage ") + std::to_string(m_stage) + ", at least "
                    + limit)};
        case Condition::Adherence:
            return {value(m_reason.value ? share(*m_reason.value) : "unknown share"), words(" of the due sets done, at least "),
                words(share(m_reason.limit.value_or(0)))};
        case Condition::SetsComplete:
            return {value(known(m_reason.value)), words(lastSessions + " at full dose")};
        case Condition::PainDuring:
            return worstPain("in");
        case Condition::PainAfter:
            return worstPain("after");
        case Condition::Settled:
            if (m_reason.limit == 0.0)
                return {words("no session yet whose next check can be judged")};
            return {words("next check within " + m_basis.complaint.limits().riseAllowed.toString() + " of usual after "),
                value(known(m_reason.value)), words(lastSessions)};
        case Condition::WeeklyRise:
            return weeklyRise();
        case Condition::Level:
            return {words("usually "), value(known(m_reason.value)), words(" this week, at most " + limit)};
        case Condition::NextStage:
            if (!m_reason.isMet)
                return {words("stage " + known(m_reason.value) + " is the last")};
            return {words("stage " + known(m_reason.value) + " of " + limit)};
        case Condition::Sign:
        case Condition::LastTwoUnsettled:
            return {value(shortly(m_reason.condition))};
        case Condition::SessionPain:
            return {words("pain "), value(known(m_reason.value)), words(" in or after exercise, contact from " + limit)};
        case Condition::CheckPain:
            return {words(question(m_basis) + ": "), value(known(m_reason.value)), words(", well above usual, contact from " + limit)};
        }
        return {};
    }

private:
    [[nodiscard]] Piece value(std::string text) const { return made(m_basis.diary, std::move(text), m_trace, listed(m_trace)); }

    /// A session whose pain nobody entered does not count as within the limit.
    [[nodiscard]] Clause worstPain(const char *when) const
    {
        const bool isWithin = m_reason.value && isAtMost(*m_reason.value, m_reason.limit.value_or(0));
        return {words(std::string("worst pain ") + when + " exercise "), value(known(m_reason.value)),
            words(", at most " + known(m_reason.limit) + (isWithin && !m_reason.isMet ? "; not entered for every session" : ""))};
    }

    [[nodiscard]] Clause weeklyRise() const
    {
        const std::string most = "at most " + known(m_reason.limit);
        if (!m_reason.value)
            return {words("rise from week to week "), value("unknown"), words(", " + most)};
        const std::string change = signedFigure(*m_reason.value);
        return {words("mean of this week against the week before "), value(change), words(", " + most)};
    }

    const ReviewBasis &m_basis;
    const Reason &m_reason;
    int m_stage;
    Trace m_trace;
};

bool isContact(Condition condition) noexcept
{
    return condition == Condition::Sign || condition == Condition::SessionPain || condition == Condition::CheckPain;
}

/// `10`, `3 of 10`.
std::string metOfAll(const RuleLine &rule)
{
    const auto met = std::count_if(rule.conditions.begin(), rule.conditions.end(), [](const ConditionLine &line) { return line.isMet; });
    return std::to_string(met) + " of " + std::to_string(rule.conditions.size());
}

std::string becauseOf(const RuleLine &rule)
{
    std::string text;
    for (const ConditionLine &line : rule.because)
        text += (text.empty() ? "" : ", ") + shortly(line.condition);
    return text;
}

/// "waits for squat (went up on 9 March 2026)"
Clause waitingClause(const ReviewBasis &basis, const WaitsFor &other)
{
    const ItemDiary &item = basis.item(other.item);
    const auto why = [&]() -> std::string {
        switch (other.because) {
        case GoesFirst::LongerInStage:
            return "longer in its stage";
        case GoesFirst::EarlierInPlan:
            return "as long in its stage, earlier in the plan";
        case GoesFirst::SteppedUp:
            return "went up on " + dated(basis.diary.entries()[*other.change].day);
        }
        return {};
    }();
    return {words("waits for " + exerciseName(item) + " ("), other.change ? stated(why, {*other.change}) : words(why), words(")")};
}

/// "your rule for stage 3: 7 of 10 hold"
void addRule(Saying &saying, const ReviewBasis &basis, const RuleLine &rule, bool isNamed)
{
    const ItemDiary &item = basis.item(rule.item);
    const int stage = basis.numbersOf(rule.item).stage;
    const std::string exercise = isNamed ? exerciseName(item) : std::string();
    switch (rule.decision) {
    case Decision::Contact:
        saying.add({words("your rule says: contact (" + becauseOf(rule) + ")")});
        return;
    case Decision::StepDown:
        saying.add({words("your rule " + (isNamed ? "for " + exercise + " " : std::string())
            + (rule.toStage ? "says: back to stage " + std::to_string(*rule.toStage) : std::string("says: step down from stage 1")))});
        saying.add({words(becauseOf(rule))}, "; ");
        return;
    case Decision::StepUp:
    case Decision::Hold:
        break;
    }
    const bool isLast = stage >= static_cast<int>(item.item.stages.size());
    saying.add({words("your rule for " + (isLast ? "the last stage" : "stage " + std::to_string(stage + 1))
        + (isNamed ? " of " + exercise : std::string()) + ": " + metOfAll(rule) + " hold")});
    for (const WaitsFor &other : rule.waitsFor)
        saying.add(waitingClause(basis, other), "; ");
}

} // namespace

std::vector<RuleLine> ruleLines(const ReviewBasis &basis)
{
    std::vector<RuleLine> rules;
    for (const ItemMeasures &numbers : basis.measures.items) {
        if (!numbers.progression)
            continue;
        const ItemDiary &item = basis.item(numbers.item);
        RuleLine rule{.item = numbers.item,
            .exercise = exerciseName(item),
            .decision = numbers.progression->decision,
            .toStage = numbers.progression->toStage,
            .waitsFor = numbers.progression->waitsFor,
            .sentences = {},
            .conditions = {},
            .because = {}};
        for (const Reason &reason : numbers.progression->reasons) {
            const bool isBecause = isContact(reason.condition) || reason.condition == Condition::LastTwoUnsettled;
            ConditionLine line{reason.condition, reason.isMet, {ConditionWords(basis, item, reason).clause()}};
            (isBecause ? rule.because : rule.conditions).push_back(std::move(line));
        }
        Saying saying;
        addRule(saying, basis, rule, false);
        rule.sentences = saying.take();
        rules.push_back(std::move(rule));
    }
    return rules;
}

Groups next(const ReviewBasis &basis, const std::vector<RuleLine> &rules)
{
    Groups groups;
    Saying saying;
    // Where the rule is off, no page says a word of it.
    if (rules.empty() && basis.complaint.plan && basis.complaint.plan->authority != Authority::Off) {
        saying.add({words("no exercise is under way that your rule looks at")});
        saying.stop();
    }
    for (const RuleLine &rule : rules) {
        // A reason to get in touch is the person's, and the same for each exercise.
        if (rule.decision == Decision::Contact && &rule != &rules.front())
            continue;
        addRule(saying, basis, rule, rules.size() > 1);
        bool isFirst = true;
        for (const ConditionLine &line : rule.conditions) {
            if (line.isMet || rule.decision != Decision::Hold)
                continue;
            const std::string open = shortly(line.condition);
            if (isFirst)
                saying.add({words("open: " + open)}, "; ");
            else
                saying.add({words(saying.fits({words(open)}) ? open : "also open: " + open)});
            isFirst = false;
        }
        groups.push_back(saying.take());
    }
    const Memo *noted = nullptr;
    for (const Visit &visit : basis.complaint.visits) {
        for (const Memo &memo : basis.remarks.memos) {
            if (visit.day <= basis.today() && memo.visit == basis.diary.entries()[visit.entry].id && !memo.nextTime.empty())
                noted = &memo;
        }
    }
    if (noted) {
        saying.add({words("you noted: "), quoted(noted->nextTime, kWordsOfText, noted->entry)});
        saying.stop();
    }
    if (basis.complaint.plan && basis.complaint.plan->reviewDay) {
        saying.add({words("review point " + dated(*basis.complaint.plan->reviewDay))});
        if (!basis.complaint.plan->reviewText.empty())
            saying.add({words("'" + clipped(basis.complaint.plan->reviewText, kWordsOfText) + "'")}, ": ");
    }
    auto sentences = saying.take();
    if (sentences.empty() && groups.empty()) {
        saying.add({words("no note to self, no review point")});
        sentences = saying.take();
    }
    if (!sentences.empty())
        groups.push_back(std::move(sentences));
    return groups;
}

} // namespace morrow
