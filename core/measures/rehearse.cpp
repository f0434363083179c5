// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/rehearse.h"

#include "measures/check.h"
#include "measures/days.h"
#include "measures/response.h"
#include "measures/week_rules.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace morrow {

namespace {

std::vector<std::optional<Progression>> progressionsOn(const Diary &diary, const ComplaintDiary &complaint, CivilDay planStart, CivilDay to)
{
    const Responses responses(complaint, to);
    const std::vector<WeekRule> rules = weekRules(complaint, responses, to);
    // Reference and current are the same in any window; one of a day has no trend to compute.
    const CheckMeasures check = checkMeasures(diary, complaint, {planStart, to, to});
    return progressions(
        {.diary = diary, .complaint = complaint, .responses = responses, .rules = rules, .check = check, .planStart = planStart, .to = to});
}

/// Whether \a a and \a b, of the same stage, say the same: what is decided follows from the reasons.
bool saysTheSame(const Progression &a, const Progression &b)
{
    const auto isSame = [](const Reason &one, const Reason &other) { return one.condition == other.condition && one.isMet == other.isMet; };
    return a.waitsFor == b.waitsFor && std::equal(a.reasons.begin(), a.reasons.end(), b.reasons.begin(), b.reasons.end(), isSame);
}

/// Adds \a day, the one after the last of \a spans: an item is under way without a gap.
void add(std::vector<RehearsedSpan> &spans, CivilDay day, int stage, Progression progression)
{
    std::vector<Reason> reasons = progression.reasons;
    if (!spans.empty() && spans.back().stage == stage && saysTheSame(spans.back().progression, progression))
        spans.back().last = day;
    else
        spans.push_back({day, day, stage, std::move(progression), {}});
    spans.back().reasons.push_back(std::move(reasons));
}

} // namespace

std::vector<RehearsedComplaint> rehearse(const Diary &diary, CivilDay to)
{
    std::vector<RehearsedComplaint> result;
    for (const ComplaintDiary &complaint : diary.complaints()) {
        const auto planStart = complaint.firstStart();
        if (!planStart || *planStart > to)
            continue;
        RehearsedComplaint rehearsed{complaint.complaint.key, {}};
        for (const ItemDiary &item : complaint.items)
            rehearsed.items.push_back({item.item.key, {}});
        for (CivilDay day = *planStart; day <= to; day = day + 1) {
            auto said = progressionsOn(diary, complaint, *planStart, day);
            for (std::size_t i = 0; i < said.size(); ++i) {
                if (said[i])
                    add(rehearsed.items[i].spans, day, stageOn(complaint.items[i], day).number, *std::move(said[i]));
            }
        }
        result.push_back(std::move(rehearsed));
    }
    return result;
}

} // namespace morrow
