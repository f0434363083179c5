// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Answers and tests that are asked now and then (measures, section 9).
///
/// A series has one kind, name and side; its entries are by day, recording, id.
///
///     change = last - first; absent if there is only one
///     ratio = last / the other side's last of that day, in a series of a test on the
///         complaint's side; absent if that is missing or 0, and in every other series

#include "model/diary.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

struct OutcomeMeasures
{
    OutcomeKind kind;
    std::string name;
    std::optional<Side> side;
    int n = 0;
    CivilDay firstDay;
    Decimal first;
    CivilDay lastDay;
    Decimal last;
    std::optional<Decimal> change;
    std::optional<double> ratio;

    friend bool operator==(const OutcomeMeasures &, const OutcomeMeasures &) = default;
};

/// The series of \a complaint up to \a to, whatever the window, in the order of their first entries.
[[nodiscard]] std::vector<OutcomeMeasures> outcomeMeasures(const ComplaintDiary &complaint, CivilDay to);

} // namespace morrow
