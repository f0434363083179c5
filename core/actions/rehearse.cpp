// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/rehearse.h"

#include "model/body.h"
#include "model/diary.h"
#include "model/rules.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>

namespace morrow {

namespace {

/// The first days of the items of a plan, by key.
using Starts = std::map<std::string, CivilDay, std::less<>>;

const FieldRule *settingNamed(std::string_view key)
{
    const auto rules = planSettingRules();
    const auto rule = std::find_if(rules.begin(), rules.end(), [key](const FieldRule &one) { return name(one.field) == key; });
    return rule == rules.end() ? nullptr : &*rule;
}

/// \a plan with the items of \a starts where they began; nullopt if it has none of them.
std::optional<Body> begunAt(const Body &plan, const Starts &starts)
{
    const auto *const items = plan.list(Field::Items);
    if (!items)
        return std::nullopt;
    std::vector<Body> moved = *items;
    bool isShared = false;
    for (Body &item : moved) {
        const auto start = starts.find(item.textOr(Field::Item));
        if (start == starts.end())
            continue;
        item.set(Field::Start, start->second.toString());
        isShared = true;
    }
    if (!isShared)
        return std::nullopt;
    Body result = plan;
    result.set(Field::Items, std::move(moved));
    return result;
}

/// Puts the plans among \a proposed in the place of those of \a entries. False: none has a place there.
bool replacePlans(std::vector<Entry> &entries, const std::vector<Entry> &proposed, BodyReader &reader)
{
    std::map<std::string, Starts, std::less<>> begun;
    const Diary diary = Diary::from(entries);
    for (const ComplaintDiary &complaint : diary.complaints()) {
        for (const ItemDiary &item : complaint.items)
            begun[complaint.complaint.key].emplace(item.item.key, item.item.start);
    }
    std::vector<Entry> plans;
    std::vector<std::string> complaints;
    for (const Entry &entry : proposed) {
        const auto plan = entry.kind == Kind::Plan ? reader.read(entry.body) : std::nullopt;
        const auto starts = plan ? begun.find(plan->textOr(Field::Complaint)) : begun.end();
        const auto moved = starts == begun.end() ? std::nullopt : begunAt(*plan, starts->second);
        if (!moved)
            continue;
        plans.push_back(entry);
        plans.back().body = moved->toJson();
        complaints.push_back(starts->first);
    }
    std::erase_if(entries, [&](const Entry &entry) {
        if (entry.kind != Kind::Plan)
            return false;
        const auto plan = reader.read(entry.body);
        return plan && std::find(complaints.begin(), complaints.end(), plan->textOr(Field::Complaint)) != complaints.end();
    });
    entries.insert(entries.end(), plans.begin(), plans.end());
    return !plans.empty();
}

/// What a plan that is in force among \a entries says against itself.
std::optional<ProposalProblem> contradictionIn(const std::vector<Entry> &entries, BodyReader &reader)
{
    std::vector<Entry> plans;
    std::copy_if(entries.begin(), entries.end(), std::back_inserter(plans),
        [](const Entry &entry) { return entry.kind == Kind::Plan || entry.kind == Kind::Complaint; });
    const Diary diary = Diary::from(std::move(plans));
    for (const ComplaintDiary &complaint : diary.complaints()) {
        if (!complaint.planEntry)
            continue;
        const Entry &entry = diary.entries()[*complaint.planEntry];
        const auto problems = problemsOf(Kind::Plan, *reader.read(entry.body), entry.day);
        if (!problems.empty())
            return ProposalProblem{
                ProposalProblem::Code::Contradiction, std::string(name(problems.front().field)), std::string(name(problems.front().other))};
    }
    return std::nullopt;
}

} // namespace

Result<std::vector<Entry>, ProposalProblem> propose(std::vector<Entry> entries, const Proposal &proposal)
{
    using Code = ProposalProblem::Code;
    std::vector<std::pair<Field, std::optional<Body::Value>>> settings;
    for (const auto &[key, text] : proposal.settings) {
        const FieldRule *const rule = settingNamed(key);
        if (!rule)
            return failure(ProposalProblem{Code::SettingUnknown, key});
        auto value = readValue(*rule, text);
        if (!value && !text.empty())
            return failure(ProposalProblem{Code::ValueRefused, key, text});
        settings.emplace_back(rule->field, std::move(value));
    }
    if (std::none_of(entries.begin(), entries.end(), [](const Entry &entry) { return entry.kind == Kind::Plan; }))
        return failure(ProposalProblem{Code::NoPlan});
    BodyReader reader;
    if (!proposal.plans.empty() && !replacePlans(entries, proposal.plans, reader))
        return failure(ProposalProblem{Code::PlanOfNothing});
    for (Entry &entry : entries) {
        auto plan = entry.kind == Kind::Plan && !settings.empty() ? reader.read(entry.body) : std::nullopt;
        if (!plan || plan->has(Field::Withdrawn))
            continue;
        for (const auto &[field, value] : settings) {
            if (value)
                plan->set(field, *value);
            else
                plan->remove(field);
        }
        entry.body = plan->toJson();
    }
    if (auto contradiction = contradictionIn(entries, reader))
        return failure(*std::move(contradiction));
    return entries;
}

} // namespace morrow
