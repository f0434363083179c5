// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/measures.h"

#include "measures/days.h"

#include <algorithm>

namespace morrow {

namespace {

ComplaintMeasures measuresOf(const Diary &diary, const ComplaintDiary &complaint, const Window &window)
{
    const std::vector<Week> weeks = weeksOf(window);
    const std::vector<Interruption> interrupted = interruptions(diary.pauses(), complaint, window);

    const Responses responses(complaint, window.to);

    ComplaintMeasures result{
        .complaint = complaint.complaint.key,
        .region = complaint.complaint.region,
        .side = complaint.complaint.side,
        .from = window.from,
        .items = {},
        .all = {},
        .check = checkMeasures(diary, complaint, window),
        .stiffness = stiffnessMeasures(complaint, window),
        .checkWeeks = checkWeeks(complaint, window, weeks),
        .response = responseMeasures(responses, window),
        .rules = weekRules(complaint, responses, window.to),
        .visits = visitMeasures(complaint, window.to),
        .outcomes = outcomeMeasures(complaint, window.to),
    };
    const std::vector<std::optional<Progression>> progress = progressions({.diary = diary,
        .complaint = complaint,
        .responses = responses,
        .rules = result.rules,
        .check = result.check,
        .planStart = window.planStart,
        .to = window.to});
    std::vector<Adherence> adherences;
    for (const ItemDiary &item : complaint.items) {
        const std::vector<ItemDay> days = itemDays(item, interrupted, window);
        const std::vector<WeekTally> tallies = weekTallies(item, window, weeks, days, diary.bodyMassKg());
        const StageInForce stage = stageOn(item, window.to);
        adherences.push_back(adherenceOf(complaint, item, window, days, tallies));
        result.items.push_back({
            .item = item.item.key,
            .exercise = item.item.exercise,
            .side = item.item.side,
            .stage = stage.number,
            .stageBegan = stage.began,
            .adherence = adherences.back(),
            .weeks = itemWeeks(item, weeks, tallies),
            .progression = progress[result.items.size()],
        });
    }
    result.all = adherenceOfAll(adherences);
    return result;
}

} // namespace

Result<std::vector<ComplaintMeasures>, MeasureError> measure(const Diary &diary, CivilDay to, std::optional<CivilDay> asked)
{
    if (asked && *asked > to)
        return failure(MeasureError::WindowEmpty);
    std::vector<ComplaintMeasures> result;
    for (const ComplaintDiary &complaint : diary.complaints()) {
        const auto planStart = complaint.firstStart();
        if (!planStart || *planStart > to)
            continue;
        result.push_back(measuresOf(diary, complaint, {*planStart, std::max(*planStart, asked.value_or(*planStart)), to}));
    }
    return result;
}

} // namespace morrow
