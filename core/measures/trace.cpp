// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/trace.h"

#include "measures/adherence.h"
#include "measures/check.h"
#include "measures/trace_parts.h"

#include <algorithm>
#include <iterator>

namespace morrow {

namespace {

using Of = std::optional<double> (*)(const Check &);

std::optional<double> painOf(const Check &check)
{
    return check.pain ? std::optional<double>(check.pain->value()) : std::nullopt;
}

std::optional<double> minutesOf(const Check &check)
{
    return check.stiffnessMinutes ? std::optional<double>(*check.stiffnessMinutes) : std::nullopt;
}

void addChecks(Trace &trace, const ComplaintDiary &complaint, CivilDay first, CivilDay last, Of of)
{
    for (const Check &check : checksOf(complaint.checks, first, last)) {
        if (const auto value = of(check))
            trace.values.push_back({check.entry, check.day, value});
    }
}

void addMarks(Trace &trace, std::span<const SlotMark> marks, const Window &window)
{
    for (const SlotMark &mark : marks) {
        if (window.holds(mark.day))
            trace.values.push_back({mark.entry, mark.day, std::nullopt});
    }
}

/// Keeps of the marks of \a trace those in a slot of \a item on a day on which it was due.
void keepMarksWhereDue(Trace &trace, const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window,
    std::span<const SlotMark> marks)
{
    const auto days = itemDays(item, interruptions(diary.pauses(), complaint, window), window);
    std::erase_if(trace.values, [&](const Behind &behind) {
        const auto mark = std::find_if(marks.begin(), marks.end(), [&](const SlotMark &one) { return one.entry == behind.entry; });
        return !isMarkWhereDue(*mark, item.item, window, days);
    });
}

} // namespace

std::vector<EntryIndex> Trace::entries() const
{
    std::vector<EntryIndex> all;
    std::transform(values.begin(), values.end(), std::back_inserter(all), [](const Behind &behind) { return behind.entry; });
    all.insert(all.end(), shapedBy.begin(), shapedBy.end());
    return all;
}

void finish(Trace &trace)
{
    std::vector<EntryIndex> seen;
    std::transform(trace.values.begin(), trace.values.end(), std::back_inserter(seen), [](const Behind &behind) { return behind.entry; });
    std::sort(seen.begin(), seen.end());
    std::sort(trace.shapedBy.begin(), trace.shapedBy.end());
    trace.shapedBy.erase(std::unique(trace.shapedBy.begin(), trace.shapedBy.end()), trace.shapedBy.end());
    std::erase_if(trace.shapedBy, [&seen](EntryIndex entry) { return std::binary_search(seen.begin(), seen.end(), entry); });
}

void addVisits(Trace &trace, const ComplaintDiary &complaint, CivilDay first, CivilDay last)
{
    for (const Visit &visit : complaint.visits) {
        if (visit.day >= first && visit.day <= last)
            trace.shapedBy.push_back(visit.entry);
    }
}

void addPauses(Trace &trace, const Diary &diary, const Window &window)
{
    for (const Pause &pause : diary.pauses()) {
        const bool touches = std::any_of(pause.versions.begin(), pause.versions.end(),
            [&window](const PauseVersion &version) { return version.from <= window.to && version.to >= window.from; });
        for (const PauseVersion &version : pause.versions) {
            if (touches)
                trace.shapedBy.push_back(version.entry);
        }
    }
}

void addStageChanges(Trace &trace, const ItemDiary &item, CivilDay first, CivilDay last)
{
    std::vector<EntryIndex> changes;
    for (const StageChange &change : item.stageChanges) {
        if (change.day > last || !hasStage(item, change.stage))
            continue;
        if (change.day <= first)
            changes.clear(); // the stage of the first day is that of its latest change
        changes.push_back(change.entry);
    }
    trace.shapedBy.insert(trace.shapedBy.end(), changes.begin(), changes.end());
}

void addShape(Trace &trace, const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window)
{
    addStageChanges(trace, item, window.from, window.to);
    addPauses(trace, diary, window);
    if (item.item.restsAfterVisit)
        addVisits(trace, complaint, window.from - complaint.limits().restDaysAfterVisit + 1, window.to);
    if (complaint.putAsideFrom && *complaint.putAsideFrom <= window.to)
        trace.shapedBy.insert(trace.shapedBy.end(), complaint.putAside.begin(), complaint.putAside.end());
}

void addDoneSets(Trace &trace, const ItemDiary &item, CivilDay first, CivilDay last)
{
    for (const SetDone &set : item.sets) {
        if (set.reps >= 1 && set.day >= first && set.day <= last)
            trace.values.push_back({set.entry, set.day, set.reps});
    }
}

std::vector<Behind> behindPains(const ComplaintDiary &complaint, CivilDay first, CivilDay last)
{
    Trace trace{first, last, {}, {}, std::nullopt};
    addChecks(trace, complaint, first, last, painOf);
    return trace.values;
}

Trace behindAdherence(
    const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window, AdherenceFigure figure)
{
    Trace trace{window.from, window.to, {}, {}, std::nullopt};
    addShape(trace, diary, complaint, item, window);
    switch (figure) {
    case AdherenceFigure::Due:
    case AdherenceFigure::Away:
        break;
    case AdherenceFigure::Done:
        addDoneSets(trace, item, window.from, window.to);
        break;
    case AdherenceFigure::Skips:
        addMarks(trace, complaint.skips, window);
        keepMarksWhereDue(trace, diary, complaint, item, window, complaint.skips);
        break;
    case AdherenceFigure::Easier:
        addMarks(trace, complaint.easier, window);
        keepMarksWhereDue(trace, diary, complaint, item, window, complaint.easier);
        break;
    }
    finish(trace);
    return trace;
}

Trace behindCheck(const Diary &diary, const ComplaintDiary &complaint, const Window &window, CheckFigure figure)
{
    Trace trace{window.from, window.to, {}, {}, std::nullopt};
    const auto over = [&](CivilDay first, CivilDay last, Of of) {
        trace.first = first;
        trace.last = last;
        addChecks(trace, complaint, first, last, of);
    };
    const auto recorded = [&](auto isOne) {
        addChecks(trace, complaint, window.from, window.to, painOf);
        std::erase_if(trace.values, [&](const Behind &behind) { return !isOne(behind.day, diary.recordedOn(behind.entry)); });
    };
    const CivilDay endOfFirstWeek = std::min(window.planStart + 6, window.to);
    switch (figure) {
    case CheckFigure::Recorded:
        recorded([](CivilDay, const std::optional<CivilDay> &) { return true; });
        break;
    case CheckFigure::SameDay:
        recorded([](CivilDay day, const std::optional<CivilDay> &on) { return on == day; });
        break;
    case CheckFigure::Late:
        recorded([](CivilDay day, const std::optional<CivilDay> &on) { return on && *on != day; });
        break;
    case CheckFigure::Paper:
        recorded([](CivilDay, const std::optional<CivilDay> &on) { return !on; });
        break;
    case CheckFigure::Declined:
        for (const Check &check : checksOf(complaint.checks, window.from, window.to)) {
            if (check.declined)
                trace.values.push_back({check.entry, check.day, std::nullopt});
        }
        break;
    case CheckFigure::FirstWeek:
        over(window.planStart, endOfFirstWeek, painOf);
        break;
    case CheckFigure::Reference:
        if (!complaint.complaint.firstAssessmentPain)
            over(window.planStart, endOfFirstWeek, painOf);
        break;
    case CheckFigure::Change: {
        const CivilDay lastWeek = window.to - 6;
        over(complaint.complaint.firstAssessmentPain ? lastWeek : std::min(lastWeek, window.planStart), window.to, painOf);
        std::erase_if(trace.values, [&](const Behind &behind) { return behind.day > endOfFirstWeek && behind.day < lastWeek; });
        break;
    }
    case CheckFigure::Current:
        over(window.to - 6, window.to, painOf);
        break;
    case CheckFigure::Trend:
        over(window.from, window.to, painOf);
        break;
    case CheckFigure::Limits:
    case CheckFigure::Beyond: {
        over(window.planStart, window.to, painOf);
        const auto own = trace.values.begin() + static_cast<std::ptrdiff_t>(std::min(trace.values.size(), kDaysOfOwnLimits));
        if (figure == CheckFigure::Limits) {
            trace.values.erase(own, trace.values.end());
            break;
        }
        std::transform(trace.values.begin(), own, std::back_inserter(trace.shapedBy), [](const Behind &behind) { return behind.entry; });
        const auto limits = checkMeasures(diary, complaint, {window.planStart, window.to, window.to}).limits;
        std::erase_if(trace.values, [&limits](const Behind &behind) {
            return !limits || std::find(limits->beyond.begin(), limits->beyond.end(), behind.day) == limits->beyond.end();
        });
        break;
    }
    case CheckFigure::StiffnessRecorded:
    case CheckFigure::StiffnessTrend:
        over(window.from, window.to, minutesOf);
        break;
    case CheckFigure::StiffnessCurrent:
        over(window.to - 6, window.to, minutesOf);
        break;
    }
    finish(trace);
    return trace;
}

Trace behindVisit(const ComplaintDiary &complaint, CivilDay to, CivilDay day, VisitFigure figure)
{
    const int soreness = complaint.limits().sorenessDays;
    const std::vector<CivilDay> visits = visitDays(complaint, to);
    const auto next = std::upper_bound(visits.begin(), visits.end(), day);
    const CivilDay end = next == visits.end() ? to : *next - 1;
    Trace trace{day, day, {}, {}, std::nullopt};
    for (const Visit &visit : complaint.visits) {
        if (visit.day == day && figure == VisitFigure::Given)
            trace.values.push_back({visit.entry, visit.day, std::nullopt});
        else if (visit.day == day)
            trace.shapedBy.push_back(visit.entry);
    }
    if (figure == VisitFigure::Before || figure == VisitFigure::Change) {
        const SorenessDays sore(visits, soreness);
        trace.first = day - 7;
        trace.last = day - 1;
        addChecks(trace, complaint, trace.first, trace.last, painOf);
        std::erase_if(trace.values, [&sore](const Behind &behind) { return sore.holds(behind.day); });
        addVisits(trace, complaint, trace.first - soreness, trace.last - 1);
    }
    if (figure == VisitFigure::After || figure == VisitFigure::Change) {
        const CivilDay first = day + 1 + soreness;
        trace.first = figure == VisitFigure::After ? first : trace.first;
        trace.last = end;
        addChecks(trace, complaint, first, end, painOf);
        if (next != visits.end())
            addVisits(trace, complaint, *next, *next);
    }
    finish(trace);
    return trace;
}

Trace behindOutcome(const ComplaintDiary &complaint, CivilDay to, const Outcome &like, bool ratio)
{
    Trace trace{like.day, like.day, {}, {}, std::nullopt};
    std::vector<const Outcome *> series;
    for (const Outcome &outcome : complaint.outcomes) {
        if (outcome.day <= to && outcome.kind == like.kind && outcome.name == like.name && outcome.side == like.side)
            series.push_back(&outcome);
    }
    if (series.empty())
        return trace;
    trace.first = ratio ? series.back()->day : series.front()->day;
    trace.last = series.back()->day;
    for (const Outcome *const outcome : series) {
        if (!ratio || outcome->day == trace.last)
            trace.values.push_back({outcome->entry, outcome->day, outcome->value.toDouble()});
    }
    const auto other = otherSide(like.side);
    for (const Outcome &outcome : complaint.outcomes) {
        const bool isOther = outcome.kind == like.kind && outcome.name == like.name && outcome.side == other;
        if (ratio && isOther && outcome.day == trace.last)
            trace.values.push_back({outcome.entry, outcome.day, outcome.value.toDouble()});
    }
    return trace;
}

} // namespace morrow
