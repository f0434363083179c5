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

Json textOrNull(const std::string &text)
{
    return text.empty() ? Json() : Json(text);
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
        {"strength", week.strength},
    });
}

std::string_view name(Decision decision)
{
    switch (decision) {
    case Decision::Contact:
        return "contact";
    case Decision::StepDown:
        return "step-down";
    case Decision::StepUp:
        return "step-up";
    case Decision::Hold:
        return "hold";
    }
    return {};
}

std::string_view name(Condition condition)
{
    switch (condition) {
    case Condition::DaysInStage:
        return "days-in-stage";
    case Condition::SessionsInStage:
        return "sessions-in-stage";
    case Condition::Adherence:
        return "adherence";
    case Condition::SetsComplete:
        return "sets-complete";
    case Condition::PainDuring:
        return "pain-during";
    case Condition::PainAfter:
        return "pain-after";
    case Condition::Settled:
        return "settled";
    case Condition::WeeklyRise:
        return "weekly-rise";
    case Condition::Level:
        return "level";
    case Condition::NextStage:
        return "next-stage";
    case Condition::Sign:
        return "sign";
    case Condition::SessionPain:
        return "session-pain";
    case Condition::CheckPain:
        return "check-pain";
    case Condition::LastTwoUnsettled:
        return "last-two-unsettled";
    }
    return {};
}

std::string_view name(RuleState state)
{
    switch (state) {
    case RuleState::Ok:
        return "ok";
    case RuleState::Exceeded:
        return "exceeded";
    case RuleState::Unknown:
        return "unknown";
    }
    return {};
}

std::string_view name(WeekRuleName rule)
{
    switch (rule) {
    case WeekRuleName::During:
        return "during";
    case WeekRuleName::After:
        return "after";
    case WeekRuleName::Check:
        return "check";
    case WeekRuleName::Settled:
        return "settled";
    case WeekRuleName::Weekly:
        return "weekly";
    case WeekRuleName::Stiffness:
        return "stiffness";
    }
    return {};
}

Json toJson(const std::optional<Trend> &trend)
{
    if (!trend)
        return {};
    return Json::object({
        {"n", trend->n},
        {"slopePerWeek", trend->slope},
        {"lower", trend->lower},
        {"upper", trend->upper},
        {"s", trend->s},
        {"varS", trend->varS},
        {"z", trend->z},
        {"p", trend->p},
    });
}

Json toJson(const OwnLimits &limits)
{
    return Json::object({
        {"n", limits.n},
        {"centre", limits.centre},
        {"meanRange", limits.meanRange},
        {"lower", limits.lower},
        {"upper", limits.upper},
        {"beyond", listOf(limits.beyond, [](CivilDay day) { return toJson(day); })},
    });
}

Json toJson(const WeekRule &rule)
{
    return Json::object({{"rule", name(rule.rule)}, {"state", name(rule.state)}, {"value", rule.value}, {"limit", rule.limit}});
}

Json toJson(const ResponseMeasures &response)
{
    const auto day = [](const ResponseDay &one) {
        const std::string_view state = one.state == ResponseState::Settled ? "settled"
            : one.state == ResponseState::Unsettled                        ? "unsettled"
                                                                           : "unknown";
        const auto reason = !one.reason ? Json() : Json(*one.reason == UnknownBecause::AfterVisit ? "after-visit" : "missing");
        return Json::object({{"day", toJson(one.day)}, {"rise", one.rise}, {"state", state}, {"reason", reason}});
    };
    return Json::object({
        {"days", listOf(response.days, day)},
        {"settled", response.settled},
        {"unsettled", response.unsettled},
        {"unknown", response.unknown},
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
        {"progression", item.progression ? progressionJson(*item.progression) : Json()},
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
        {"trend", toJson(check.trend)},
        {"limits", check.limits ? toJson(*check.limits) : Json()},
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
        {"name", textOrNull(series.name)},
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
        {"region", textOrNull(complaint.region)},
        {"side", toJson(complaint.side)},
        {"from", toJson(complaint.from)},
        {"items", listOf(complaint.items, [](const ItemMeasures &item) { return toJson(item); })},
        {"all", toJson(complaint.all)},
        {"check", toJson(complaint.check)},
        {"stiffness",
            Json::object({{"recorded", complaint.stiffness.recorded}, {"current", complaint.stiffness.current},
                {"trend", toJson(complaint.stiffness.trend)}})},
        {"response", toJson(complaint.response)},
        {"rules", listOf(complaint.rules, [](const WeekRule &rule) { return toJson(rule); })},
        {"visits", listOf(complaint.visits, [](const VisitMeasures &visit) { return toJson(visit); })},
        {"outcomes", listOf(complaint.outcomes, [](const OutcomeMeasures &series) { return toJson(series); })},
    });
}

} // namespace

Json reasonsJson(const std::vector<Reason> &reasons)
{
    return listOf(reasons, [](const Reason &reason) {
        return Json::object({
            {"condition", name(reason.condition)},
            {"text", "condition." + std::string(name(reason.condition))},
            {"met", reason.isMet},
            {"value", reason.value},
            {"limit", reason.limit},
        });
    });
}

Json progressionJson(const Progression &progression)
{
    return Json::object({
        {"decision", name(progression.decision)},
        {"toStage", progression.toStage},
        {"waits", !progression.waitsFor.empty()},
        {"unmet", listOf(progression.unmet, [](Condition condition) { return Json(name(condition)); })},
        {"reasons", reasonsJson(progression.reasons)},
    });
}

Json toJson(const std::vector<ComplaintMeasures> &measures, CivilDay to)
{
    return Json::object({
        {"asOf", toJson(to)},
        {"to", toJson(to)},
        {"complaints", listOf(measures, [](const ComplaintMeasures &complaint) { return toJson(complaint); })},
    });
}

} // namespace morrow::batch
