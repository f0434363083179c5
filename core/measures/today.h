// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What one day asks of a person, and what was answered so far: the page that is opened every
/// day computes this, and none of the sections that look back.
///
/// An item is asked for on a day by the rhythm of its stage (days.h), in each of its slots; one
/// that is due on any k days of a week until k days of the week before this one had a done set.
/// What was done without being due stands beside it, so that nothing recorded is out of sight.

#include "measures/days.h"
#include "model/diary.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

/// One item in one session.
struct AskedItem
{
    const ItemDiary *item;
    int stage; ///< in force, from 1
    bool isDue;
    std::vector<const SetDone *> sets; ///< by number from 1: nullptr is not recorded; as many as prescribed, more where more were recorded
    std::optional<int> daysAsked; ///< k, of an item that is due on any k days of a week
    int daysDone = 0; ///< of that week, before this day

    [[nodiscard]] const Dose &dose() const noexcept;
    /// Prescribed sets that have a repetition.
    [[nodiscard]] int setsDone() const noexcept;
};

/// The items of one slot.
struct AskedSession
{
    std::string slot;
    std::vector<AskedItem> items; ///< plan order; at least one
    const Session *session = nullptr; ///< the pain in it, if it was told
    const SlotMark *skip = nullptr;

    [[nodiscard]] bool isDue() const noexcept;
    [[nodiscard]] int setsDue() const noexcept;
    [[nodiscard]] int setsDone() const noexcept;
};

/// Why nothing is asked.
enum class QuietReason {
    NoPlan,
    NotStarted,
    Over, ///< every item has ended
    PutAside,
    Paused,
    AfterVisit, ///< what is due rests after a visit
    NotToday ///< the rhythm leaves the day free
};

struct AskedComplaint
{
    const ComplaintDiary *complaint;
    bool isCheckDue;
    const Check *check = nullptr; ///< as answered
    std::vector<AskedSession> sessions; ///< by slot, in the order in which the plan first names it
    std::optional<QuietReason> quiet; ///< nullopt: a session is due
    std::optional<CivilDay> next; ///< the next day with a session, looked for over 8 weeks, where none is due
};

struct Today
{
    CivilDay day;
    std::vector<AskedComplaint> complaints; ///< diary order
    int setsDue = 0; ///< of all
    int setsDone = 0;
    const ReportedSign *openSign = nullptr; ///< the last one up to the day that nobody of the clinic answered for
};

/// The days of the week that \a day is in, counted from \a planStart, before it; none on the first.
[[nodiscard]] Window weekBefore(CivilDay planStart, CivilDay day) noexcept;

/// What \a day asks of the person. The result points into \a diary.
[[nodiscard]] Today today(const Diary &diary, CivilDay day);

} // namespace morrow
