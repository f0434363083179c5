// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/outcomes.h"

#include "measures/statistics.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace morrow {

namespace {

using SeriesKey = std::tuple<OutcomeKind, std::string_view, std::optional<Side>>;

} // namespace

std::vector<OutcomeMeasures> outcomeMeasures(const ComplaintDiary &complaint, CivilDay to)
{
    std::vector<OutcomeMeasures> series;
    std::map<SeriesKey, std::size_t> places;
    // What the other side gave last on a day: a test is compared with that of the same day only.
    std::map<std::tuple<std::string_view, CivilDay>, Decimal> otherSideTests;
    const auto other = otherSide(complaint.complaint.side);
    for (const Outcome &outcome : complaint.outcomes) {
        if (outcome.day > to)
            continue;
        if (other && outcome.kind == OutcomeKind::Test && outcome.side == other)
            otherSideTests.insert_or_assign({outcome.name, outcome.day}, outcome.value);

        const auto [place, isFirst] = places.try_emplace({outcome.kind, outcome.name, outcome.side}, series.size());
        if (isFirst) {
            series.push_back({.kind = outcome.kind,
                .name = outcome.name,
                .side = outcome.side,
                .n = 1,
                .firstDay = outcome.day,
                .first = outcome.value,
                .lastDay = outcome.day,
                .last = outcome.value,
                .change = std::nullopt,
                .ratio = std::nullopt});
            continue;
        }
        OutcomeMeasures &one = series[place->second];
        ++one.n;
        one.lastDay = outcome.day;
        one.last = outcome.value;
        one.change = Decimal::fromThousandths(one.last.thousandths() - one.first.thousandths());
    }

    for (OutcomeMeasures &one : series) {
        if (!other || one.kind != OutcomeKind::Test || one.side != complaint.complaint.side)
            continue;
        const auto found = otherSideTests.find({one.name, one.lastDay});
        if (found != otherSideTests.end())
            one.ratio = ratio(one.last.toDouble(), found->second.toDouble());
    }
    return series;
}

} // namespace morrow
