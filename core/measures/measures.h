// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Every number that a screen, a report or the batch tool shows about a diary.
///
/// Missing is not zero: a ratio whose denominator is 0 is nullopt, never 0 or 1.
/// Everything is computed for each complaint as if only its rows stood in the diary,
/// from rows up to `to`; nothing about a day after it counts. Each section stands,
/// with its formulas, in a header of its own.

#include "base/result.h"
#include "measures/adherence.h"
#include "measures/check.h"
#include "measures/load.h"
#include "measures/outcomes.h"
#include "measures/progression.h"
#include "measures/response.h"
#include "measures/visits.h"
#include "measures/week_rules.h"
#include "model/diary.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

struct ItemMeasures
{
    std::string item;
    std::string exercise;
    std::optional<Side> side;
    int stage; ///< in force on `to`
    CivilDay stageBegan;
    Adherence adherence;
    std::vector<ItemWeek> weeks;
    std::optional<Progression> progression;

    friend bool operator==(const ItemMeasures &, const ItemMeasures &) = default;
};

struct ComplaintMeasures
{
    std::string complaint;
    std::string region;
    std::optional<Side> side;
    CivilDay from; ///< the first day of the window: the asked day, or P if that is later
    std::vector<ItemMeasures> items; ///< plan order
    AdherenceOfAll all;
    CheckMeasures check;
    StiffnessMeasures stiffness;
    std::vector<CheckWeek> checkWeeks;
    ResponseMeasures response;
    std::vector<WeekRule> rules;
    std::vector<VisitMeasures> visits;
    std::vector<OutcomeMeasures> outcomes;

    friend bool operator==(const ComplaintMeasures &, const ComplaintMeasures &) = default;
};

enum class MeasureError {
    WindowEmpty, ///< the asked first day is after `to`
};

/// The measures of \a diary up to \a to (the last closed day that counts), its window
/// beginning on \a asked or, without one or where it is earlier, on P, the complaint's
/// earliest item start. A complaint that has not started by \a to is left out.
[[nodiscard]] Result<std::vector<ComplaintMeasures>, MeasureError> measure(
    const Diary &diary, CivilDay to, std::optional<CivilDay> asked = std::nullopt);

} // namespace morrow
