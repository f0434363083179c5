// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/load.h"

#include "measures/statistics.h"

namespace morrow {

namespace {

std::optional<double> change(const ItemWeek &now, const ItemWeek &before)
{
    // Equal units that are absent are weeks without a set, or unknown: no ratio either way.
    if (!now.volumeUnit || now.volumeUnit != before.volumeUnit || !now.volume || *now.volume == 0)
        return std::nullopt;
    const auto part = before.volume ? ratio(*now.volume, *before.volume) : std::nullopt;
    return part ? std::optional(*part - 1) : std::nullopt;
}

} // namespace

std::vector<ItemWeek> itemWeeks(const ItemDiary &item, std::span<const Week> weeks, std::span<const WeekTally> tallies)
{
    std::vector<ItemWeek> result;
    result.reserve(weeks.size());
    for (std::size_t i = 0; i < weeks.size(); ++i) {
        if (item.item.end && weeks[i].first > *item.item.end)
            break;
        const WeekTally &tally = tallies[i];
        result.push_back({
            .week = weeks[i].number,
            .start = weeks[i].start,
            .setsDue = tally.setsDue,
            .setsDone = tally.setsDone,
            .sets = tally.sets,
            .reps = tally.reps,
            .volume = tally.volume.value(),
            .volumeUnit = tally.volume.unit(),
            .tensionSeconds = tally.tensionSeconds,
            .volumeChange = std::nullopt,
            .strength = tally.strength,
        });
        if (i > 0 && weeks[i].isWhole() && weeks[i - 1].isWhole())
            result[i].volumeChange = change(result[i], result[i - 1]);
    }
    return result;
}

} // namespace morrow
