// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How much of what was due was done (measures, section 3).
///
/// The sums of tally.h over the weeks of a window, and
///
///     setsExtra = all done sets of the window - setsDone
///     setRatio = setsDone / setsDue, sessionRatio = sessionsAttended / sessionsDue,
///     volumeRatio = volumeDone / volumeDue
///     sessionInterval = Wilson 95 % of sessionsAttended / sessionsDue (Newcombe 1998)
///
/// Extra work never hides missed work. Nothing due: every ratio is absent, never 0 or 1.
/// `skips` and `easier` count slots in which the item was due, `away` days on which it
/// was due; they stand beside the ratios and change nothing that was due (our choice).

#include "measures/days.h"
#include "measures/statistics.h"
#include "measures/tally.h"
#include "measures/volume.h"
#include "model/diary.h"

#include <cstdint>
#include <optional>
#include <span>

namespace morrow {

/// Whether \a mark stands in a slot of \a item on a day of \a window on which it was due.
[[nodiscard]] bool isMarkWhereDue(const SlotMark &mark, const Item &item, const Window &window, std::span<const ItemDay> days);

struct Adherence
{
    std::int64_t setsDue = 0;
    std::int64_t setsDone = 0;
    std::int64_t setsExtra = 0;
    std::int64_t sessionsDue = 0;
    std::int64_t sessionsAttended = 0;
    std::int64_t sessionsComplete = 0;
    std::optional<double> volumeDue; ///< 0 if nothing was due; absent if a body mass is unknown or units are mixed
    std::optional<double> volumeDone;
    std::optional<VolumeUnit> volumeUnit;
    std::optional<double> setRatio;
    std::optional<double> sessionRatio;
    std::optional<double> volumeRatio;
    std::optional<Interval> sessionInterval;
    int skips = 0;
    int easier = 0;
    int away = 0;

    friend bool operator==(const Adherence &, const Adherence &) = default;
};

/// The adherence to \a item, an item of \a complaint, over \a window, of whose weeks \a
/// tallies are made and whose days are \a days.
[[nodiscard]] Adherence adherenceOf(const ComplaintDiary &complaint, const ItemDiary &item, const Window &window,
    std::span<const ItemDay> days, std::span<const WeekTally> tallies);

/// Sums over items. Volume and interval have none: units differ, sessions are not independent.
struct AdherenceOfAll
{
    std::int64_t setsDue = 0;
    std::int64_t setsDone = 0;
    std::int64_t setsExtra = 0;
    std::int64_t sessionsDue = 0;
    std::int64_t sessionsAttended = 0;
    std::int64_t sessionsComplete = 0;
    std::optional<double> setRatio;
    std::optional<double> sessionRatio;

    friend bool operator==(const AdherenceOfAll &, const AdherenceOfAll &) = default;
};

[[nodiscard]] AdherenceOfAll adherenceOfAll(std::span<const Adherence> items);

} // namespace morrow
