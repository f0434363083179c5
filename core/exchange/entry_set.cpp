// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/entry_set.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <unordered_map>

namespace morrow {

namespace {

using Code = SetProblem::Code;

class SetCheck
{
public:
    SetCheck(std::span<const Entry> entries, std::span<const Body> bodies)
        : m_entries(entries)
        , m_bodies(bodies)
    {
        m_places.reserve(entries.size());
        for (std::size_t i = 0; i < entries.size(); ++i) {
            const auto [known, isNew] = m_places.emplace(entries[i].id, i);
            if (!isNew && !(entries[known->second] == entries[i]))
                add(Code::TwoContentsForOneId, i, entries[i].id);
            remember(bodies[i], entries[i].kind);
        }
    }

    std::vector<SetProblem> problems()
    {
        for (std::size_t i = 0; i < m_entries.size(); ++i)
            checkNames(i);
        std::vector<const Entry *> pointers;
        pointers.reserve(m_entries.size());
        for (const Entry &entry : m_entries)
            pointers.push_back(&entry);
        std::vector<SetProblem> corrections = correctionProblemsOf(pointers);
        std::move(corrections.begin(), corrections.end(), std::back_inserter(m_problems));
        return std::move(m_problems);
    }

private:
    void add(Code code, std::size_t entry, std::string name) { m_problems.push_back({code, entry, std::move(name)}); }

    void remember(const Body &body, Kind kind)
    {
        if (kind == Kind::Complaint)
            m_complaints.emplace(body.textOr(Field::Complaint));
        const std::vector<Body> *const items = kind == Kind::Plan ? body.list(Field::Items) : nullptr;
        for (std::size_t i = 0; items && i < items->size(); ++i) {
            const std::vector<Body> *const stages = (*items)[i].list(Field::Stages);
            std::size_t &most = m_stages[std::string((*items)[i].textOr(Field::Item))];
            most = std::max(most, stages ? stages->size() : 0);
        }
    }

    void checkNames(std::size_t at)
    {
        const Body &body = m_bodies[at];
        const std::string *const complaint = body.text(Field::Complaint);
        if (complaint && !m_complaints.contains(*complaint))
            add(Code::UnknownComplaint, at, *complaint);
        const std::string *const item = body.text(Field::Item);
        if (!item)
            return;
        const auto known = m_stages.find(*item);
        if (known == m_stages.end())
            add(Code::UnknownItem, at, *item);
        else if (m_entries[at].kind == Kind::Stage && body.intOr(Field::Stage, 1) > static_cast<int>(known->second))
            m_problems.push_back({Code::UnknownStage, at, std::to_string(body.intOr(Field::Stage, 1)), std::to_string(known->second)});
    }

    std::span<const Entry> m_entries;
    std::span<const Body> m_bodies;
    std::vector<SetProblem> m_problems;
    std::unordered_map<std::string_view, std::size_t> m_places;
    std::set<std::string, std::less<>> m_complaints;
    std::map<std::string, std::size_t, std::less<>> m_stages; ///< by item: how many
};

} // namespace

std::vector<SetProblem> correctionProblemsOf(std::span<const Entry *const> entries)
{
    std::unordered_map<std::string_view, std::size_t> places;
    places.reserve(entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i)
        places.emplace(entries[i]->id, i);
    const auto replacedBy = [&](std::size_t i) -> std::optional<std::size_t> {
        if (!entries[i]->replaces)
            return std::nullopt;
        const auto found = places.find(*entries[i]->replaces);
        return found == places.end() ? std::nullopt : std::optional(found->second);
    };
    std::vector<SetProblem> problems;
    std::vector<bool> isDone(entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const auto replaced = replacedBy(i);
        if (replaced && entries[*replaced]->kind != entries[i]->kind)
            problems.push_back({Code::ReplacesAnotherKind, i, *entries[i]->replaces});
        std::vector<std::size_t> path;
        std::optional<std::size_t> at = i;
        for (; at && !isDone[*at]; at = replacedBy(*at)) {
            isDone[*at] = true;
            path.push_back(*at);
        }
        if (at && std::find(path.begin(), path.end(), *at) != path.end())
            problems.push_back({Code::ReplacesLoop, *at, entries[*at]->id});
    }
    return problems;
}

std::vector<SetProblem> problemsOf(std::span<const Entry> entries, std::span<const Body> bodies)
{
    return SetCheck(entries, bodies).problems();
}

} // namespace morrow
