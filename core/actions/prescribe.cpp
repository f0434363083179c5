// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/prescribe.h"

#include "measures/days.h"

#include <algorithm>
#include <map>
#include <set>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace morrow {

namespace {

using Code = PlanProblem::Code;
using Problems = std::vector<PlanProblem>;

/// A plan entry with what decides which of them is the last.
struct Revision
{
    const Entry *entry;
    std::string plan;
    int number;
};

/// The last revision of the plan of \a complaint, a withdrawn one included; nullopt: it has none.
std::optional<Revision> lastRevision(const Diary &diary, std::string_view complaint)
{
    std::unordered_set<std::string_view> replaced;
    for (const Entry &entry : diary.entries()) {
        if (entry.kind == Kind::Plan && entry.replaces)
            replaced.insert(*entry.replaces);
    }
    std::optional<Revision> last;
    BodyReader reader;
    for (const Entry &entry : diary.entries()) {
        if (entry.kind != Kind::Plan || replaced.contains(entry.id))
            continue;
        const auto body = reader.read(entry.body);
        if (!body || body->textOr(Field::Complaint) != complaint)
            continue;
        const int number = body->intOr(Field::Number, 1);
        if (!last || number > last->number || (number == last->number && countsBefore(entry, *last->entry)))
            last = Revision{&entry, std::string(body->textOr(Field::Plan)), number};
    }
    return last;
}

/// \a complaint as if \a plan were its plan; what was done of an item goes with its key.
ComplaintDiary under(const ComplaintDiary &complaint, const Plan &plan)
{
    ComplaintDiary result = complaint;
    result.plan = plan;
    result.items.clear();
    for (const Item &item : plan.items) {
        const auto old = std::find_if(
            complaint.items.begin(), complaint.items.end(), [&item](const ItemDiary &one) { return one.item.key == item.key; });
        result.items.push_back({item, old == complaint.items.end() ? std::vector<StageChange>() : old->stageChanges, {}});
    }
    return result;
}

bool isSameWork(const Stage &a, const Stage &b)
{
    return a.dose == b.dose && a.rhythm == b.rhythm;
}

/// Whether the same sets are due by both on a day on which both are.
bool isSameDue(const Stage &a, const Stage &b)
{
    const auto *const days = std::get_if<OnDays>(&a.rhythm);
    const auto *const otherDays = std::get_if<OnDays>(&b.rhythm);
    return a.dose == b.dose && (days && otherDays ? days->slots == otherDays->slots : a.rhythm == b.rhythm);
}

/// What is due of one item on each day of a window: the stage, or nothing.
std::vector<const Stage *> dueStages(const ItemDiary &item, const std::vector<Interruption> &interruptions, const Window &window)
{
    std::vector<const Stage *> stages;
    for (const ItemDay &day : itemDays(item, interruptions, window))
        stages.push_back(day.due ? &item.item.stages[static_cast<std::size_t>(day.stage - 1)] : nullptr);
    return stages;
}

const ItemDiary *itemNamed(const ComplaintDiary &complaint, std::string_view key)
{
    const auto found
        = std::find_if(complaint.items.begin(), complaint.items.end(), [key](const ItemDiary &one) { return one.item.key == key; });
    return found == complaint.items.end() ? nullptr : &*found;
}

/// I1: the first day of each item on which other sets would be due than were.
void findPastChanges(const Diary &diary, const ComplaintDiary &before, const ComplaintDiary &after, CivilDay from, Problems &problems)
{
    const auto starts = {before.firstStart().value_or(from), after.firstStart().value_or(from)};
    const Window window{std::min(starts), std::min(starts), from - 1};
    if (window.isEmpty())
        return;
    const auto interruptedBefore = interruptions(diary.pauses(), before, window);
    const auto interruptedAfter = interruptions(diary.pauses(), after, window);
    const std::vector<const Stage *> nothing(window.length(), nullptr);
    std::set<std::string> keys;
    for (const ComplaintDiary *const one : {&before, &after}) {
        for (const ItemDiary &item : one->items)
            keys.insert(item.item.key);
    }
    for (const std::string &key : keys) {
        const ItemDiary *const old = itemNamed(before, key);
        const ItemDiary *const revised = itemNamed(after, key);
        const auto was = old ? dueStages(*old, interruptedBefore, window) : nothing;
        const auto is = revised ? dueStages(*revised, interruptedAfter, window) : nothing;
        for (std::size_t place = 0; place < window.length(); ++place) {
            const bool isSame = was[place] && is[place] ? isSameDue(*was[place], *is[place]) : was[place] == is[place];
            if (!isSame) {
                problems.push_back({Code::PastChanges, key, window.day(place)});
                break;
            }
        }
    }
}

/// Whether \a revised is what \a old was up to the day before \a from.
bool isSameUntil(const ItemDiary &old, const Item &revised, CivilDay from)
{
    const Item &item = old.item;
    const auto endBefore = [from](const Item &one) { return std::min(one.end.value_or(from - 1), from - 1); };
    if (item.start != revised.start || endBefore(item) != endBefore(revised) || item.exercise != revised.exercise
        || item.side != revised.side || item.loads != revised.loads || item.continues != revised.continues)
        return false;
    for (CivilDay day = item.start; day <= endBefore(item); day = day + 1) {
        const auto stage = static_cast<std::size_t>(stageOn(old, day).number);
        if (stage > revised.stages.size() || !isSameWork(item.stages[stage - 1], revised.stages[stage - 1]))
            return false;
    }
    return true;
}

/// I2.
void findBegunChanges(const ComplaintDiary &before, const Plan &plan, CivilDay from, Problems &problems)
{
    for (const ItemDiary &old : before.items) {
        if (old.item.start >= from)
            continue;
        const auto revised
            = std::find_if(plan.items.begin(), plan.items.end(), [&old](const Item &item) { return item.key == old.item.key; });
        if (revised == plan.items.end() || !isSameUntil(old, *revised, from))
            problems.push_back({Code::BegunItemChanges, old.item.key});
    }
    for (const Item &item : plan.items) {
        const ItemDiary *const old = itemNamed(before, item.key);
        if (item.start < from && (!old || old->item.start >= from))
            problems.push_back({Code::NewItemTooEarly, item.key});
    }
}

void findWrongItems(const Diary &diary, const Plan &plan, Problems &problems)
{
    std::map<std::string_view, const Item *> items;
    for (const Item &item : plan.items) {
        if (!items.emplace(item.key, &item).second)
            problems.push_back({Code::ItemTwice, item.key});
    }
    for (const Item &item : plan.items) {
        if (item.continues.empty())
            continue;
        const auto old = items.find(item.continues);
        if (old == items.end())
            problems.push_back({Code::ContinuesUnknown, item.key});
        else if (!old->second->end || *old->second->end >= item.start)
            problems.push_back({Code::ContinuesOverlaps, item.key});
    }
    for (const ComplaintDiary &other : diary.complaints()) {
        if (other.complaint.key == plan.complaint)
            continue;
        for (const ItemDiary &item : other.items) {
            if (items.contains(item.item.key))
                problems.push_back({Code::ItemOfAnotherPlan, item.item.key});
        }
    }
}

} // namespace

Result<Draft, std::vector<PlanProblem>> nextRevision(const Diary &diary, Draft draft, const Moment &now, const std::string &newPlan)
{
    const auto refuse = [](Code code) { return failure(Problems{{code}}); };
    if (draft.body.has(Field::Withdrawn))
        return refuse(Code::Withdraws);
    const std::string complaintKey(draft.body.textOr(Field::Complaint));
    const auto complaint = std::find_if(diary.complaints().begin(), diary.complaints().end(),
        [&complaintKey](const ComplaintDiary &one) { return one.complaint.key == complaintKey; });
    if (complaint == diary.complaints().end())
        return refuse(Code::ComplaintUnknown);

    const auto last = lastRevision(diary, complaintKey);
    const int number = last ? last->number + 1 : 1;
    if (!draft.body.has(Field::Plan))
        draft.body.set(Field::Plan, last ? last->plan : newPlan);
    if (!draft.body.has(Field::Number))
        draft.body.set(Field::Number, Decimal::whole(number));
    auto plan = Plan::read(draft.body, draft.day.value_or(diaryDay(now, diary.dayStarts()) + 1));
    if (!plan)
        return refuse(Code::Unreadable);

    Problems problems;
    if (last && plan->id != last->plan)
        problems.push_back({Code::AnotherPlan});
    if (plan->number != number)
        problems.push_back({Code::NumberRefused});
    std::optional<CivilDay> firstStart;
    for (const Item &item : plan->items)
        firstStart = std::min(firstStart.value_or(item.start), item.start);
    const CivilDay dayAfter = diaryDay(draft.recorded.value_or(now), diary.dayStarts()) + 1;
    const CivilDay earliest = last ? dayAfter : firstStart.value_or(dayAfter);
    const CivilDay from = draft.day.value_or(earliest);
    if (last ? from < earliest : from != earliest)
        problems.push_back({Code::FromTooEarly, {}, earliest});
    findWrongItems(diary, *plan, problems);
    if (last) {
        plan->from = from;
        findPastChanges(diary, *complaint, under(*complaint, *plan), from, problems);
        findBegunChanges(*complaint, *plan, from, problems);
        draft.replaces = last->entry->id;
    }
    if (!problems.empty())
        return failure(std::move(problems));
    draft.day = from;
    return draft;
}

} // namespace morrow
