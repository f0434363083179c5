// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What was due and what was done of one item in one week: what sections 3 and 4 of the
/// measures add up.
///
/// A week is cut where the stage number changes; each part belongs to one stage and is
/// counted by its rhythm. A set is done if reps >= 1.
///
///                     on the days of a rule,            k a week,
///                     summed over days                  summed over parts
///     setsDue         slots x sets                      e x sets
///     setsDone        min(done, due)                    sum of the e largest daily min(done, sets)
///     sessionsDue     slots                             e
///     ...Attended     min(slots with a done set,        min(days with a done set, e)
///                     slots)
///     ...Complete     min(slots with done >= sets,      min(days with done >= sets, e)
///                     slots)
///     volumeDue       volume of the due dose            e x session volume
///     volumeDone      min(recorded, due)                sum of the e largest daily
///                                                       min(recorded, session volume)
///
/// a = the days of the part that are not excluded; e = k a / 7 to the nearest whole number
/// (a tie cannot come up: k a / 7 is never half of an odd number). Done sets of a part of
/// k a week count only on its a days.
///
/// On the days of a rule any slot's sets count for the day, prescribed or not.

#include "measures/days.h"
#include "measures/volume.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace morrow {

struct WeekTally
{
    std::int64_t setsDue = 0;
    std::int64_t setsDone = 0;
    std::int64_t sessionsDue = 0;
    std::int64_t sessionsAttended = 0;
    std::int64_t sessionsComplete = 0;
    VolumeSum volumeDue; ///< known if all stages with sets due are of one unit
    VolumeSum volumeDone;

    std::int64_t sets = 0; ///< all done sets, extra ones and those of excluded days too
    std::int64_t reps = 0;
    VolumeSum volume; ///< of all done sets
    std::optional<std::int64_t> tensionSeconds = 0; ///< nullopt if that of any done set is unknown
    std::optional<double> strength; ///< the greatest of any done set, in kg
};

/// One for each of \a weeks, which are those of \a window; \a days are the item's.
[[nodiscard]] std::vector<WeekTally> weekTallies(const ItemDiary &item, const Window &window, std::span<const Week> weeks,
    std::span<const ItemDay> days, const std::optional<Decimal> &bodyMassKg);

} // namespace morrow
