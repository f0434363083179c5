// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the folding of every kind of entry has in common (diary.h).

#include "model/entry.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <unordered_set>
#include <vector>

namespace morrow {

/// For each entry whether one before it has its id.
[[nodiscard]] std::vector<bool> repeatedIds(const std::vector<Entry> &entries);

/// Takes out of \a reads, each of an `entry` of one kind, what another of them names in
/// `replaces`, and gives it back.
template<class Read>
std::vector<Read> dropReplaced(std::vector<Read> &reads, const std::vector<Entry> &entries)
{
    std::unordered_set<std::string_view> replaced;
    for (const Read &read : reads) {
        const Entry &entry = entries[read.entry];
        if (entry.replaces && *entry.replaces != entry.id)
            replaced.insert(*entry.replaces);
    }
    if (replaced.empty())
        return {};
    const auto kept
        = std::stable_partition(reads.begin(), reads.end(), [&](const Read &read) { return !replaced.contains(entries[read.entry].id); });
    std::vector<Read> dropped(std::make_move_iterator(kept), std::make_move_iterator(reads.end()));
    reads.erase(kept, reads.end());
    return dropped;
}

} // namespace morrow
