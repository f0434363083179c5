// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/fold_parts.h"

#include "model/diary.h"

#include <cstddef>
#include <functional>
#include <tuple>

namespace morrow {

std::vector<bool> repeatedIds(const std::vector<Entry> &entries)
{
    std::vector<bool> isRepeated(entries.size());
    const auto isAfter = [](const Entry &a, const Entry &b) { return a.id >= b.id; };
    if (std::adjacent_find(entries.begin(), entries.end(), isAfter) == entries.end())
        return isRepeated; // as a store gives them
    struct Hashed
    {
        std::size_t hash;
        EntryIndex entry;
    };
    std::vector<Hashed> all;
    all.reserve(entries.size());
    for (const Entry &entry : entries)
        all.push_back({std::hash<std::string_view>()(entry.id), static_cast<EntryIndex>(all.size())});
    std::sort(all.begin(), all.end(), [&entries](const Hashed &a, const Hashed &b) {
        return a.hash != b.hash ? a.hash < b.hash : std::tie(entries[a.entry].id, a.entry) < std::tie(entries[b.entry].id, b.entry);
    });
    for (std::size_t i = 1; i < all.size(); ++i) {
        if (all[i].hash == all[i - 1].hash && entries[all[i].entry].id == entries[all[i - 1].entry].id)
            isRepeated[all[i].entry] = true;
    }
    return isRepeated;
}

} // namespace morrow
