// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Which days count, and on which of them an item is due (measures, sections 1 and 2).
///
/// An item is due on a day by the rhythm of the stage in force, unless the day is
/// *excluded*: before its start, after its end, in a pause, from the day on which its
/// complaint was put aside, or one of the days of rest that begin with a visit.
/// Exclusion never shifts the rhythm.
///
/// A pause excludes what it covered in the version that stood on that day; the days
/// that only a later version covers stay due and are *away*. So nobody declares missed
/// days away afterwards, and an extended or shortened pause keeps what it had.

#include "model/diary.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace morrow {

/// The slot of a dose that is due on any k days of a week.
inline constexpr std::string_view kPerWeekSlot = "day";

/// The days that counts are made over, both ends included, and the day that weeks are
/// counted from. `planStart` <= `from` <= `to`, unless \ref isEmpty.
struct Window
{
    CivilDay planStart; ///< P, the complaint's earliest item start
    CivilDay from;
    CivilDay to;

    [[nodiscard]] constexpr bool isEmpty() const noexcept { return to < from; }
    [[nodiscard]] constexpr bool holds(CivilDay day) const noexcept { return from <= day && day <= to; }
    [[nodiscard]] constexpr std::size_t length() const noexcept { return isEmpty() ? 0 : static_cast<std::size_t>(to - from + 1); }
    /// The place of \a day, which it holds, counted from 0.
    [[nodiscard]] constexpr std::size_t place(CivilDay day) const noexcept { return static_cast<std::size_t>(day - from); }
    [[nodiscard]] constexpr CivilDay day(std::size_t place) const noexcept { return from + static_cast<int>(place); }
};

/// Week k: the days P + 7 k .. P + 7 k + 6, cut to a window.
struct Week
{
    int number; ///< k, from 0
    CivilDay start; ///< P + 7 k, also of a cut week
    CivilDay first; ///< its first day in the window
    CivilDay last;

    [[nodiscard]] constexpr bool isWhole() const noexcept { return last - first == 6; }
};

/// The weeks that have a day in \a window.
[[nodiscard]] std::vector<Week> weeksOf(const Window &window);

/// What keeps a complaint's items from being due on one day.
struct Interruption
{
    bool paused = false; ///< in a pause by the version that stood on that day
    bool covered = false; ///< in a pause by the version that counts, whenever it was recorded
    bool afterVisit = false; ///< one of the days v .. v + rest_days_after_visit - 1 of a visit on v
    bool putAside = false;
};

/// One for each day of \a window.
///
/// The version of a pause that stood on day d is the newest, of the one that counts and
/// what it corrects, that was recorded on or before d or typed in from paper.
[[nodiscard]] std::vector<Interruption> interruptions(std::span<const Pause> pauses, const ComplaintDiary &complaint, const Window &window);

/// Whether \a item has a stage \a number, from 1.
[[nodiscard]] bool hasStage(const ItemDiary &item, int number) noexcept;

struct StageInForce
{
    int number; ///< from 1
    CivilDay began; ///< the later of the item's start and the day of the change to it
    std::optional<EntryIndex> change = std::nullopt; ///< the change to it; none if it is that of the start
};

/// The stage of \a item on \a day: that of its latest change on or before it, else 1; also
/// where the item has not started or is over. A change to the same stage restarts it. A
/// change to a stage that the item does not have is passed over.
[[nodiscard]] StageInForce stageOn(const ItemDiary &item, CivilDay day) noexcept;

/// One item on one day.
struct ItemDay
{
    int stage = 1; ///< in force, from 1
    bool due = false; ///< by the days of a rule: an instance, not excluded; by the week: not excluded
    bool away = false; ///< due, and a pause recorded too late covers it
};

/// One for each day of \a window, for which \a interruptions were made.
[[nodiscard]] std::vector<ItemDay> itemDays(const ItemDiary &item, std::span<const Interruption> interruptions, const Window &window);

/// The distinct days of visits up to \a to: two visits on one day are one.
[[nodiscard]] std::vector<CivilDay> visitDays(const ComplaintDiary &complaint, CivilDay to);

/// The days v + 1 .. v + length of visits v, on which a treated part may be sore.
class SorenessDays
{
public:
    SorenessDays(std::vector<CivilDay> visits, int length)
        : m_visits(std::move(visits))
        , m_length(length)
    {
    }

    [[nodiscard]] bool holds(CivilDay day) const noexcept;

private:
    std::vector<CivilDay> m_visits; ///< ascending
    int m_length;
};

} // namespace morrow
