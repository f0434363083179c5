// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/caseload.h"

#include "measures/measures.h"

#include <algorithm>
#include <tuple>

namespace morrow {

namespace {

bool signIsOpen(const Diary &diary, CivilDay today)
{
    return std::any_of(diary.signs().begin(), diary.signs().end(),
        [today](const ReportedSign &sign) { return sign.day <= today && (!sign.clearedOn || *sign.clearedOn > today); });
}

/// Whether something is due of \a complaint, or would be if nobody paused.
bool runs(const ComplaintDiary &complaint, CivilDay day)
{
    if (complaint.putAsideFrom && *complaint.putAsideFrom <= day)
        return false;
    return std::any_of(complaint.items.begin(), complaint.items.end(),
        [day](const ItemDiary &item) { return item.item.start <= day && (!item.item.end || *item.item.end >= day); });
}

std::optional<CivilDay> lastEntryOf(const Diary &diary, CivilDay today)
{
    std::optional<CivilDay> last;
    for (const Entry &entry : diary.entries()) {
        if (entry.author == Author::Clinic || entry.day > today)
            continue;
        if (!last || entry.day > *last)
            last = entry.day;
    }
    return last;
}

void addLook(std::vector<Look> &looks, Look look)
{
    if (std::none_of(looks.begin(), looks.end(), [&look](const Look &each) { return each.reason == look.reason; }))
        looks.push_back(look);
}

void addRules(std::vector<Look> &looks, const ComplaintMeasures &complaint, bool signOpen)
{
    for (const ItemMeasures &item : complaint.items) {
        if (!item.progression)
            continue;
        const Progression &rule = *item.progression;
        if (rule.decision == Decision::Contact && !signOpen)
            addLook(looks, {LookReason::RuleContact});
        else if (rule.decision == Decision::StepDown)
            addLook(looks, {LookReason::UnsettledTwice});
        else if (rule.decision == Decision::StepUp)
            addLook(looks, {LookReason::RuleMet, rule.toStage.value_or(item.stage + 1)});
    }
    for (const WeekRule &rule : complaint.rules) {
        if (rule.rule == WeekRuleName::Settled && rule.state == RuleState::Exceeded)
            addLook(looks, {LookReason::Unsettled});
    }
}

} // namespace

CaseCard cardOf(const std::string &person, std::vector<Entry> entries, const Moment &now)
{
    CaseCard card{.person = person};
    card.known = knownAs(entries).value_or(KnownAs{});
    const Diary diary = Diary::from(std::move(entries));
    const CivilDay today = diaryDay(now, diary.dayStarts());
    const CivilDay to = today - 1;
    card.lastEntry = lastEntryOf(diary, today);

    const bool signOpen = signIsOpen(diary, today);
    if (signOpen)
        card.looks.push_back({LookReason::SignOpen});
    // Only the last week presses; sums over the whole plan are not needed for it.
    if (const auto measures = measure(diary, to, to - 6)) {
        for (const ComplaintMeasures &complaint : *measures)
            addRules(card.looks, complaint, signOpen);
    }
    const bool anyRuns = std::any_of(
        diary.complaints().begin(), diary.complaints().end(), [to](const ComplaintDiary &complaint) { return runs(complaint, to); });
    if (anyRuns && card.lastEntry && to - *card.lastEntry >= kSilentDays)
        addLook(card.looks, {LookReason::Silent, to - *card.lastEntry});
    std::stable_sort(card.looks.begin(), card.looks.end(), [](const Look &one, const Look &other) { return one.reason < other.reason; });
    // Two unsettled days are unsettled days; the longer sentence says both.
    if (std::any_of(card.looks.begin(), card.looks.end(), [](const Look &look) { return look.reason == LookReason::UnsettledTwice; }))
        std::erase_if(card.looks, [](const Look &look) { return look.reason == LookReason::Unsettled; });
    return card;
}

bool standsBefore(const CaseCard &one, const CaseCard &other)
{
    const auto rank = [](const CaseCard &card) {
        return card.looks.empty() ? static_cast<int>(LookReason::RuleMet) + 1 : static_cast<int>(card.looks.front().reason);
    };
    return std::tuple(rank(one), one.known.label.empty(), one.known.label, one.person)
        < std::tuple(rank(other), other.known.label.empty(), other.known.label, other.person);
}

} // namespace morrow
