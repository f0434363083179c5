// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How the tissue answered to loading (measures, section 6): the check after a loading day
/// against what was usual before it.
///
///     loading day = a day with a done set of an item that loads; a stretch does not
///     usual(d) = median of the recorded checks of d - 6 .. d, soreness days left out, at
///         least 3; else the pain at the first assessment; else unknown
///     rise(d) = check(d + 1) - usual(d), unknown if either is or d + 1 is a soreness day
///     settled: rise <= rise_allowed and, where a check_limit is set, check(d + 1) <= it
///     unsettled: either fails; a check above the limit is enough
///     unknown: everything else, with its reason
///
/// One day is never compared with one day: a lasting flare would count as settled from its
/// second day.

#include "measures/days.h"
#include "model/diary.h"

#include <optional>
#include <vector>

namespace morrow {

enum class ResponseState {
    Settled,
    Unsettled,
    Unknown
};

/// Why a response is not known.
enum class UnknownBecause {
    AfterVisit, ///< the day after is a soreness day
    Missing ///< there is no check on it, or nothing usual to compare it with
};

struct ResponseDay
{
    CivilDay day; ///< the loading day
    std::optional<double> rise;
    ResponseState state = ResponseState::Unknown;
    std::optional<UnknownBecause> reason; ///< of Unknown only

    friend bool operator==(const ResponseDay &, const ResponseDay &) = default;
};

struct ResponseMeasures
{
    std::vector<ResponseDay> days; ///< the loading days d of the window with d + 1 <= to
    int settled = 0;
    int unsettled = 0;
    int unknown = 0;

    friend bool operator==(const ResponseMeasures &, const ResponseMeasures &) = default;
};

/// Answers for one complaint, from rows up to a day.
class Responses
{
public:
    /// \a complaint outlives this.
    Responses(const ComplaintDiary &complaint, CivilDay to);

    /// The usual pain up to \a day.
    [[nodiscard]] std::optional<double> usual(CivilDay day) const;
    /// The response to the loading on \a day.
    [[nodiscard]] ResponseDay after(CivilDay day) const;
    /// The days from \a first to \a last with a done set of an item that loads.
    [[nodiscard]] std::vector<CivilDay> loadingDays(CivilDay first, CivilDay last) const;

private:
    const ComplaintDiary &m_complaint;
    const Limits &m_limits;
    SorenessDays m_soreness;
};

[[nodiscard]] ResponseMeasures responseMeasures(const Responses &responses, const Window &window);

} // namespace morrow
