// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/set_fold.h"

#include "model/fold_parts.h"

#include <algorithm>
#include <iterator>

namespace morrow {

namespace {

std::optional<SetHow> setHow(std::string_view text) noexcept
{
    return text == "tick" ? std::optional(SetHow::Tick)
        : text == "all"   ? std::optional(SetHow::All)
        : text == "timer" ? std::optional(SetHow::Timer)
                          : std::nullopt;
}

/// What the names of a map were numbered, in their order as text.
template<class Names>
std::vector<std::uint32_t> placesOf(const Names &names)
{
    std::vector<std::uint32_t> places(names.size());
    std::uint32_t place = 0;
    for (const auto &[name, number] : names)
        places[number] = place++;
    return places;
}

} // namespace

std::uint32_t SetFold::numberOf(std::string_view name, Names &names)
{
    const auto found = names.find(name);
    if (found != names.end())
        return found->second;
    const auto number = static_cast<std::uint32_t>(names.size());
    names.emplace(name, number);
    return number;
}

void SetFold::add(EntryIndex entry, CivilDay day, const Body &body)
{
    m_read.push_back({
        .thing = {day, numberOf(body.textOr(Field::Slot), m_slots), numberOf(body.textOr(Field::Item), m_items), body.intOr(Field::Set, 1)},
        .entry = entry,
        .reps = body.intOr(Field::Reps, 0),
        .holdSeconds = body.whole(Field::HoldS),
        .loadKg = body.decimal(Field::LoadKg),
        .spareReps = body.whole(Field::Spare),
        .how = setHow(body.textOr(Field::How)),
        .withdraws = body.has(Field::Withdrawn),
    });
}

void SetFold::fold(const std::vector<Entry> &entries, const std::unordered_map<std::string_view, ItemDiary *> &items)
{
    dropReplaced(m_read, entries);
    const std::vector<std::uint32_t> slotPlaces = placesOf(m_slots);
    const std::vector<std::uint32_t> itemPlaces = placesOf(m_items);
    for (Read &read : m_read) {
        read.thing.slot = slotPlaces[read.thing.slot];
        read.thing.item = itemPlaces[read.thing.item];
    }
    std::sort(m_read.begin(), m_read.end(), [&entries](const Read &a, const Read &b) {
        const auto order = a.thing <=> b.thing;
        return order != 0 ? order < 0 : countsBefore(entries[a.entry], entries[b.entry]);
    });

    std::vector<std::string_view> slots;
    for (const auto &[slot, number] : m_slots)
        slots.push_back(slot);
    std::vector<ItemDiary *> itemsByPlace;
    for (const auto &[item, number] : m_items) {
        const auto found = items.find(item);
        itemsByPlace.push_back(found == items.end() ? nullptr : found->second);
    }
    for (auto read = m_read.begin(); read != m_read.end(); ++read) {
        const bool isNewest = read == m_read.begin() || read->thing != std::prev(read)->thing;
        ItemDiary *const item = itemsByPlace[read->thing.item];
        if (!isNewest || read->withdraws || !item)
            continue;
        item->sets.push_back({
            .entry = read->entry,
            .day = read->thing.day,
            .slot = std::string(slots[read->thing.slot]),
            .number = read->thing.number,
            .reps = read->reps,
            .holdSeconds = read->holdSeconds,
            .loadKg = read->loadKg,
            .spareReps = read->spareReps,
            .how = read->how,
        });
    }
}

} // namespace morrow
