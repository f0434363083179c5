// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/diary_union.h"

#include <algorithm>
#include <utility>

namespace morrow {

namespace {

/// Calls \a complaint and \a item with each key that the plan \a entry names.
template<class Take>
void eachKey(const Entry &entry, Take take)
{
    if (entry.kind != Kind::Plan)
        return;
    const auto body = BodyReader().read(entry.body);
    if (!body)
        return;
    const std::string plan(body->textOr(Field::Plan));
    take(Clash::Code::ComplaintOfAnotherPlan, std::string(body->textOr(Field::Complaint)), plan);
    if (const auto *const items = body->list(Field::Items)) {
        for (const Body &item : *items)
            take(Clash::Code::ItemOfAnotherPlan, std::string(item.textOr(Field::Item)), plan);
    }
}

} // namespace

DiaryUnion::DiaryUnion(std::vector<Entry> entries)
    : m_entries(std::move(entries))
{
    m_byId.reserve(m_entries.size());
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        m_byId.emplace(m_entries[i].id, i);
        learn(m_entries[i]);
    }
}

void DiaryUnion::learn(const Entry &entry)
{
    eachKey(entry, [this](Clash::Code code, std::string key, const std::string &plan) {
        (code == Clash::Code::ItemOfAnotherPlan ? m_items : m_complaints)[std::move(key)].insert(plan);
    });
}

std::vector<Clash> DiaryUnion::clashes(std::span<const Entry> entries, Source source) const
{
    std::vector<Clash> all;
    const auto say = [&all](Clash clash) {
        if (std::find(all.begin(), all.end(), clash) == all.end())
            all.push_back(std::move(clash));
    };
    for (const Entry &entry : entries) {
        const auto there = m_byId.find(entry.id);
        if (there != m_byId.end() && m_entries[there->second] != entry)
            say({Clash::Code::TwoContentsForOneId, entry.id});
        if (source == Source::Own || there != m_byId.end())
            continue;
        eachKey(entry, [&](Clash::Code code, const std::string &key, const std::string &plan) {
            const Plans &plans = code == Clash::Code::ItemOfAnotherPlan ? m_items : m_complaints;
            const auto owners = plans.find(key);
            if (owners != plans.end() && !owners->second.contains(plan))
                say({code, key});
        });
    }
    return all;
}

int DiaryUnion::known(std::span<const Entry> entries) const
{
    return static_cast<int>(std::count_if(entries.begin(), entries.end(), [this](const Entry &entry) { return holds(entry.id); }));
}

void DiaryUnion::add(std::span<const Entry> entries)
{
    for (const Entry &entry : entries) {
        if (!m_byId.emplace(entry.id, m_entries.size()).second)
            continue;
        learn(entry);
        m_entries.push_back(entry);
    }
}

} // namespace morrow
