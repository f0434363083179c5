// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/today.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr int kLookAheadDays = 56;

const Stage &stageOf(const AskedItem &asked) noexcept
{
    return asked.item->item.stages[static_cast<std::size_t>(asked.stage) - 1];
}

/// Whether \a item has a done set on \a day.
bool isDoneOn(const ItemDiary &item, CivilDay day)
{
    return std::any_of(item.sets.begin(), item.sets.end(), [day](const SetDone &set) { return set.day == day && set.reps >= 1; });
}

/// The days of the week of \a day before it with a done set.
int daysDone(const ItemDiary &item, CivilDay planStart, CivilDay day)
{
    const Window week = weekBefore(planStart, day);
    int count = 0;
    for (CivilDay d = week.from; d <= week.to; d = d + 1)
        count += isDoneOn(item, d) ? 1 : 0;
    return count;
}

AskedSession &sessionIn(std::vector<AskedSession> &sessions, const std::string &slot)
{
    const auto found = std::find_if(sessions.begin(), sessions.end(), [&](const AskedSession &one) { return one.slot == slot; });
    if (found != sessions.end())
        return *found;
    sessions.push_back({.slot = slot, .items = {}});
    return sessions.back();
}

void takeSets(AskedItem &asked, const std::string &slot, CivilDay day)
{
    for (const SetDone &set : asked.item->sets) {
        if (set.day != day || set.slot != slot)
            continue;
        const auto place = static_cast<std::size_t>(set.number) - 1;
        if (place >= asked.sets.size())
            asked.sets.resize(place + 1);
        asked.sets[place] = &set;
    }
}

/// What \a item asks on \a day in each slot of its rhythm, and what was done of it in others.
void addItem(std::vector<AskedSession> &sessions, const ItemDiary &item, const ItemDay &state, CivilDay planStart, CivilDay day)
{
    AskedItem asked{.item = &item, .stage = state.stage, .isDue = state.due, .sets = {}};
    const Stage &stage = stageOf(asked);
    std::vector<std::string> slots;
    if (const auto *const onDays = std::get_if<OnDays>(&stage.rhythm)) {
        slots = onDays->slots;
    } else {
        slots = {std::string(kPerWeekSlot)};
        asked.daysAsked = std::get<PerWeek>(stage.rhythm).sessions;
        asked.daysDone = daysDone(item, planStart, day);
        asked.isDue = asked.isDue && asked.daysDone < *asked.daysAsked;
    }
    const std::size_t prescribed = slots.size();
    for (const SetDone &set : item.sets) {
        if (set.day == day && std::find(slots.begin(), slots.end(), set.slot) == slots.end())
            slots.push_back(set.slot);
    }
    for (std::size_t place = 0; place < slots.size(); ++place) {
        const std::string &slot = slots[place];
        AskedItem here = asked;
        here.isDue = asked.isDue && place < prescribed; // a set of another time of the day asks for no more
        here.sets.assign(static_cast<std::size_t>(stage.dose.sets), nullptr);
        takeSets(here, slot, day);
        const bool isRecorded = std::any_of(here.sets.begin(), here.sets.end(), [](const SetDone *set) { return set != nullptr; });
        if (here.isDue || isRecorded)
            sessionIn(sessions, slot).items.push_back(std::move(here));
    }
}

bool asks(
    const ComplaintDiary &complaint, const std::vector<std::vector<ItemDay>> &days, std::size_t place, CivilDay planStart, CivilDay day)
{
    for (std::size_t i = 0; i < complaint.items.size(); ++i) {
        const ItemDay &state = days[i][place];
        if (!state.due)
            continue;
        const Stage &stage = complaint.items[i].item.stages[static_cast<std::size_t>(state.stage) - 1];
        const auto *const perWeek = std::get_if<PerWeek>(&stage.rhythm);
        if (!perWeek || daysDone(complaint.items[i], planStart, day) < perWeek->sessions)
            return true;
    }
    return false;
}

QuietReason quietReason(const ComplaintDiary &complaint, const Interruption &interruption, CivilDay day)
{
    if (interruption.putAside)
        return QuietReason::PutAside;
    const auto isOver = [day](const ItemDiary &item) { return item.item.end && *item.item.end < day; };
    const auto isAhead = [day](const ItemDiary &item) { return item.item.start > day; };
    if (std::all_of(complaint.items.begin(), complaint.items.end(), isOver))
        return QuietReason::Over;
    if (std::all_of(complaint.items.begin(), complaint.items.end(), isAhead))
        return QuietReason::NotStarted;
    if (interruption.paused)
        return QuietReason::Paused;
    const auto rests = [day](const ItemDiary &item) {
        return item.item.restsAfterVisit && item.item.start <= day && (!item.item.end || day <= *item.item.end);
    };
    if (interruption.afterVisit && std::any_of(complaint.items.begin(), complaint.items.end(), rests))
        return QuietReason::AfterVisit;
    return QuietReason::NotToday;
}

template<class Answer>
const Answer *answerOf(const std::vector<Answer> &answers, CivilDay day, const std::string &slot)
{
    const auto found = std::find_if(answers.begin(), answers.end(), [&](const Answer &one) { return one.day == day && one.slot == slot; });
    return found == answers.end() ? nullptr : &*found;
}

AskedComplaint askedOf(const Diary &diary, const ComplaintDiary &complaint, CivilDay day)
{
    AskedComplaint asked{.complaint = &complaint, .isCheckDue = false, .sessions = {}};
    const auto check = std::find_if(complaint.checks.begin(), complaint.checks.end(), [day](const Check &one) { return one.day == day; });
    if (check != complaint.checks.end())
        asked.check = &*check;
    const auto planStart = complaint.firstStart();
    if (!planStart) {
        asked.quiet = QuietReason::NoPlan;
        return asked;
    }
    // A day before the plan is asked nothing; its window begins with the plan all the same.
    const CivilDay from = std::max(*planStart, day);
    const Window window{*planStart, from, from + kLookAheadDays};
    const std::vector<Interruption> interrupted = interruptions(diary.pauses(), complaint, window);
    std::vector<std::vector<ItemDay>> days;
    for (const ItemDiary &item : complaint.items)
        days.push_back(itemDays(item, interrupted, window));

    if (day >= *planStart) {
        const bool isFollowed = !interrupted.front().putAside;
        asked.isCheckDue = isFollowed && complaint.complaint.checkRule.falls(day, *planStart);
        for (std::size_t i = 0; i < complaint.items.size(); ++i)
            addItem(asked.sessions, complaint.items[i], days[i].front(), *planStart, day);
        for (AskedSession &session : asked.sessions) {
            session.session = answerOf(complaint.sessions, day, session.slot);
            session.skip = answerOf(complaint.skips, day, session.slot);
        }
    }
    if (std::any_of(asked.sessions.begin(), asked.sessions.end(), [](const AskedSession &one) { return one.isDue(); }))
        return asked;
    asked.quiet = quietReason(complaint, day < *planStart ? Interruption{} : interrupted.front(), day);
    for (std::size_t place = day < *planStart ? 0 : 1; place < window.length() && !asked.next; ++place) {
        if (asks(complaint, days, place, *planStart, window.day(place)))
            asked.next = window.day(place);
    }
    return asked;
}

} // namespace

const Dose &AskedItem::dose() const noexcept
{
    return stageOf(*this).dose;
}

int AskedItem::setsDone() const noexcept
{
    int count = 0;
    for (std::size_t i = 0; i < sets.size() && i < static_cast<std::size_t>(dose().sets); ++i)
        count += sets[i] && sets[i]->reps >= 1 ? 1 : 0;
    return count;
}

bool AskedSession::isDue() const noexcept
{
    return std::any_of(items.begin(), items.end(), [](const AskedItem &item) { return item.isDue; });
}

int AskedSession::setsDue() const noexcept
{
    int count = 0;
    for (const AskedItem &item : items)
        count += item.isDue ? item.dose().sets : 0;
    return count;
}

int AskedSession::setsDone() const noexcept
{
    int count = 0;
    for (const AskedItem &item : items)
        count += item.isDue ? item.setsDone() : 0;
    return count;
}

Window weekBefore(CivilDay planStart, CivilDay day) noexcept
{
    return {planStart, day - (day - planStart) % 7, day - 1};
}

Today today(const Diary &diary, CivilDay day)
{
    Today result{.day = day, .complaints = {}};
    for (const ComplaintDiary &complaint : diary.complaints()) {
        result.complaints.push_back(askedOf(diary, complaint, day));
        for (const AskedSession &session : result.complaints.back().sessions) {
            result.setsDue += session.setsDue();
            result.setsDone += session.setsDone();
        }
    }
    for (const ReportedSign &sign : diary.signs()) {
        if (sign.day <= day && !sign.clearedOn)
            result.openSign = &sign;
    }
    return result;
}

} // namespace morrow
