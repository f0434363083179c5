// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The sets of a diary while it is folded. Nine of ten entries are sets, so of each no more is
/// kept than what becomes of it, and their order is found by numbers.

#include "model/body.h"
#include "model/diary.h"

#include <compare>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace morrow {

class SetFold
{
public:
    /// The set that \a body, of entry \a entry about \a day, tells of.
    void add(EntryIndex entry, CivilDay day, const Body &body);

    /// Leaves to \a items, by key, those of \a entries that count (diary.h, I2), by day, slot and number.
    void fold(const std::vector<Entry> &entries, const std::unordered_map<std::string_view, ItemDiary *> &items);

private:
    /// What a set is about; by the numbers of its names, which follow their order as text once all have come.
    struct Thing
    {
        CivilDay day;
        std::uint32_t slot;
        std::uint32_t item;
        int number;

        friend auto operator<=>(const Thing &, const Thing &) = default;
    };

    struct Read
    {
        Thing thing;
        EntryIndex entry;
        int reps;
        std::optional<int> holdSeconds;
        std::optional<Decimal> loadKg;
        std::optional<int> spareReps;
        std::optional<SetHow> how;
        bool withdraws;
    };

    /// Names with their numbers in the order in which they came.
    using Names = std::map<std::string, std::uint32_t, std::less<>>;

    static std::uint32_t numberOf(std::string_view name, Names &names);

    std::vector<Read> m_read;
    Names m_slots;
    Names m_items;
};

} // namespace morrow
