// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/measures_json.h"

namespace morrow::batch {

namespace {

Json toJson(CivilDay day)
{
    return day.toString();
}

Json toJson(Decimal number)
{
    return number.toDouble();
}

Json toJson(std::optional<Side> side)
{
    return side ? Json(name(*side)) : Json();
}

Json toJson(std::optional<VolumeUnit> unit)
{
    if (!unit)
        return {};
    switch (*unit) {
    case VolumeUnit::Reps:
        return "reps";
    case VolumeUnit::Seconds:
        return "s";
    case VolumeUnit::KgReps:
        return "kg.reps";
    case VolumeUnit::KgSeconds:
        return "kg.s";
    }
    return {};
}

Json toJson(OutcomeKind kind)
{
    switch (kind) {
    case OutcomeKind::Activity:
        return "activity";
    case OutcomeKind::Overall:
        return "overall";
    case OutcomeKind::Change:
        return "change";
    case OutcomeKind::Acceptable:
        return "acceptable";
    case OutcomeKind::Test:
        return "test";
    }
    return {};
}

template<class Things, class Each>
Json listOf(const Things &things, const Each &each)
{
    Json list = Json::array();
    for (const auto &thing : things)
        list.add(each(thing));
    return list;
}

Json toJson(const Adherence &adherence)
{
    return Json::object({
        {"setsDue", adherence.setsDue},
        {"setsDone", adherence.setsDone},
        {"setsExtra", adherence.setsExtra},
        {"sessionsDue", adherence.sessionsDue},
        {"sessionsAttended", adherence.sessionsAttended},
        {"sessionsComplete", adherence.sessionsComplete},
        {"volumeDue", adherence.volumeDue},
        {"volumeDone", adherence.volumeDone},
        {"volumeUnit", toJson(adherence.volumeUnit)},
        {"setRatio", adherence.setRatio},
        {"sessionRatio", adherence.sessionRatio},
        {"volumeRatio", adherence.volumeRatio},
        {"sessionInterval",
            adherence.sessionInterval ? Json::array({adherence.sessionInterval->lower, adherence.sessionInterval->upper}) : Json()},
        {"skips", adherence.skips},
        {"easier", adherence.easier},
        {"away", adherence.away},
    });
}

Json toJson(const AdherenceOfAll &all)
{
    return Json::object({
        {"setsDue", all.setsDue},
        {"setsDone", all.setsDone},
        {"setsExtra", all.setsExtra},
        {"sessionsDue", all.sessionsDue},
        {"sessionsAttended", all.sessionsAttended},
        {"sessionsComplete", all.sessionsComplete},
        {"setRatio", all.setRatio},
        {"sessionRatio", all.sessionRatio},
    });
}

Json toJson(const ItemWeek &week)
{
    return Json::object({
        {"week", week.week},
        {"start", toJson(week.start)},
        {"setsDue", week.setsDue},
        {"setsDone", week.setsDone},
        {"sets", week.sets},
        {"reps", week.reps},
        {"volume", week.volume},
        {"volumeUnit", toJson(week.volumeUnit)},
        {"tensionSeconds", week.tensionSeconds},
        {"volumeChange", week.volumeChange},
    });
}

Json toJson(const ItemMeasures &item)
{
    return Json::object({
        {"item", item.item},
        {"exercise", item.exercise},
        {"side", toJson(item.side)},
        {"stage", item.stage},
        {"stageBegan", toJson(item.stageBegan)},
        {"adherence", toJson(item.adherence)},
        {"weeks", listOf(item.weeks, [](const ItemWeek &week) { return toJson(week); })},
    });
}

Json toJson(const CheckMeasures &check)
{
    return Json::object({
        {"expected", check.expected},
        {"recorded", check.recorded},
        {"sameDay", check.sameDay},
        {"late", check.late},
        {"paper", check.paper},
        {"declined", check.declined},
        {"firstWeek", check.firstWeek},
        {"reference", check.reference},
        {"current", check.current},
        {"change", check.change},
        {"changeRatio", check.changeRatio},
        {"clearChange", check.clearChange},
    });
}

Json toJson(const VisitMeasures &visit)
{
    return Json::object({
        {"day", toJson(visit.day)},
        {"before", visit.before},
        {"afterWeeks", listOf(visit.afterWeeks, [](const auto &week) { return Json(week); })},
        {"change", visit.change},
        {"seconds", visit.seconds},
        {"perCm2", visit.perCm2},
        {"totalImpulses", visit.totalImpulses},
    });
}

Json toJson(const OutcomeMeasures &series)
{
    return Json::object({
        {"kind", toJson(series.kind)},
        {"name", series.name},
        {"side", toJson(series.side)},
        {"n", series.n},
        {"firstDay", toJson(series.firstDay)},
        {"first", toJson(series.first)},
        {"lastDay", toJson(series.lastDay)},
        {"last", toJson(series.last)},
        {"change", series.change ? toJson(*series.change) : Json()},
        {"ratio", series.ratio},
    });
}

Json toJson(const ComplaintMeasures &complaint)
{
    return Json::object({
        {"complaint", complaint.complaint},
        {"region", complaint.region},
        {"side", toJson(complaint.side)},
        {"from", toJson(complaint.from)},
        {"items", listOf(complaint.items, [](const ItemMeasures &item) { return toJson(item); })},
        {"all", toJson(complaint.all)},
        {"check", toJson(complaint.check)},
        {"stiffness", Json::object({{"recorded", complaint.stiffness.recorded}, {"current", complaint.stiffness.current}})},
        {"visits", listOf(complaint.visits, [](const VisitMeasures &visit) { return toJson(visit); })},
        {"outcomes", listOf(complaint.outcomes, [](const OutcomeMeasures &series) { return toJson(series); })},
    });
}

} // namespace

Json toJson(const std::vector<ComplaintMeasures> &measures, CivilDay to)
{
    return Json::object({
        {"asOf", toJson(to)},
        {"to", toJson(to)},
        {"complaints", listOf(measures, [](const ComplaintMeasures &complaint) { return toJson(complaint); })},
    });
}

} // namespace morrow::batch
