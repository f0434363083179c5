// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How much an item was loaded, week by week (measures, section 4).
///
/// Sets, reps, volume and tension are over all recorded done sets, extra ones included,
/// by the stage of their day; setsDue and setsDone are those of section 3.
///
///     volumeChange = volume of this week / of the week before - 1
///
/// absent if either week is not whole in the window, of another unit, unknown or 0.

#include "measures/days.h"
#include "measures/tally.h"
#include "measures/volume.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace morrow {

struct ItemWeek
{
    int week; ///< from 0, counted from P
    CivilDay start; ///< P + 7 week, also of a cut week
    std::int64_t setsDue = 0;
    std::int64_t setsDone = 0;
    std::int64_t sets = 0; ///< recorded done sets, extra ones included
    std::int64_t reps = 0;
    std::optional<double> volume; ///< 0 without sets; absent if a body mass is unknown or units are mixed
    std::optional<VolumeUnit> volumeUnit;
    std::optional<std::int64_t> tensionSeconds; ///< nullopt if any set's is unknown
    std::optional<double> volumeChange;
    std::optional<double> strength; ///< kg for one repetition, an estimate (volume.h), for the clinician only

    friend bool operator==(const ItemWeek &, const ItemWeek &) = default;
};

/// The weeks of \a item, made of \a weeks and their \a tallies, but for those whose days in
/// the window all lie after its end.
[[nodiscard]] std::vector<ItemWeek> itemWeeks(const ItemDiary &item, std::span<const Week> weeks, std::span<const WeekTally> tallies);

} // namespace morrow
