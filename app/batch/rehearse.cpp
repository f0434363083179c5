// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/rehearse.h"

#include "batch/arguments.h"
#include "batch/input.h"
#include "batch/measures_json.h"
#include "batch/verbs.h"
#include "batch/words.h"
#include "measures/rehearse.h"

#include <algorithm>
#include <array>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{
    OptionRule{"--plan", "FILE"}, OptionRule{"--set", "KEY=VALUE", true}, OptionRule{"--as-of", "DAY"}, OptionRule{"--person", "REF"}};

std::string_view name(GoesFirst because) noexcept
{
    switch (because) {
    case GoesFirst::LongerInStage:
        return "longer-in-stage";
    case GoesFirst::EarlierInPlan:
        return "earlier-in-plan";
    case GoesFirst::SteppedUp:
        return "stepped-up";
    }
    return {};
}

Json toJson(const WaitsFor &other, const Diary &diary)
{
    return Json::object({
        {"item", other.item},
        {"because", name(other.because)},
        {"changed", other.change ? Json(diary.entries()[*other.change].day.toString()) : Json()},
    });
}

Json toJson(const RehearsedSpan &span, const Diary &diary)
{
    Json days = Json::array();
    for (std::size_t i = 0; i < span.reasons.size(); ++i)
        days.add(Json::object({{"day", (span.first + static_cast<int>(i)).toString()}, {"reasons", reasonsJson(span.reasons[i])}}));
    Json waitsFor = Json::array();
    for (const WaitsFor &other : span.progression.waitsFor)
        waitsFor.add(toJson(other, diary));
    return Json::object({
        {"from", span.first.toString()},
        {"to", span.last.toString()},
        {"stage", span.stage},
        {"progression", progressionJson(span.progression)},
        {"waitsFor", std::move(waitsFor)},
        {"days", std::move(days)},
    });
}

Json toJson(const std::vector<RehearsedComplaint> &complaints, const Diary &diary, CivilDay to)
{
    Json list = Json::array();
    for (const RehearsedComplaint &complaint : complaints) {
        Json items = Json::array();
        for (const RehearsedItem &item : complaint.items) {
            Json spans = Json::array();
            for (const RehearsedSpan &span : item.spans)
                spans.add(toJson(span, diary));
            items.add(Json::object({{"item", item.item}, {"spans", std::move(spans)}}));
        }
        list.add(Json::object({{"complaint", complaint.complaint}, {"items", std::move(items)}}));
    }
    return Json::object({{"to", to.toString()}, {"complaints", std::move(list)}});
}

/// Why \a problem is one; \a file is the one that was given as a plan.
std::string sentence(const ProposalProblem &problem, const std::string &input, const std::string &file)
{
    switch (problem.code) {
    case ProposalProblem::Code::NoPlan:
        return shown(input) + " holds no plan whose rule could be rehearsed.";
    case ProposalProblem::Code::PlanOfNothing:
        return shown(file) + " holds no plan for a complaint of " + shown(input) + " that shares an exercise with it.";
    case ProposalProblem::Code::SettingUnknown:
        return "There is no setting " + shown(problem.key) + " of a plan.";
    case ProposalProblem::Code::ValueRefused:
        return "The setting " + problem.key + " cannot be " + shown(problem.value) + ".";
    case ProposalProblem::Code::Contradiction:
        return "That plan would contradict itself: its " + problem.key + " does not go with its " + problem.value + ".";
    }
    return {};
}

bool isUsage(ProposalProblem::Code code) noexcept
{
    return code == ProposalProblem::Code::SettingUnknown || code == ProposalProblem::Code::ValueRefused;
}

} // namespace

Status rehearseRule(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().size() != 1)
        return wrongUsage("The verb rehearse needs one INPUT, a folder of tables, a file or a store.");
    const auto asOf = arguments->day("--as-of");
    if (!asOf)
        return wrongUsage(asOf.error());
    Proposal proposal;
    for (const std::string &setting : arguments->values("--set")) {
        const std::size_t equals = setting.find('=');
        if (equals == std::string::npos)
            return wrongUsage("The option --set needs KEY=VALUE, and " + shown(setting) + " is none.");
        proposal.settings.emplace_back(setting.substr(0, equals), setting.substr(equals + 1));
    }

    const std::string &input = arguments->operands().front();
    auto read = readDiary(input, arguments->value("--person"));
    if (!read)
        return read.error();
    const std::string file = arguments->value("--plan").value_or(std::string());
    if (!file.empty()) {
        auto plan = readDiary(file, std::nullopt);
        if (!plan)
            return plan.error();
        proposal.plans = std::move(plan->diary.entries);
    }
    auto entries = propose(std::move(read->diary.entries), proposal);
    if (!entries) {
        const std::string why = sentence(entries.error(), input, file);
        if (isUsage(entries.error().code))
            return wrongUsage(why);
        complain(why);
        return Status::Refused;
    }
    const Diary diary = Diary::from(*std::move(entries));
    const CivilDay to = asOf->value_or(diaryDay(systemClock()->now(), diary.dayStarts()) - 1);
    return std::max(read->status, print(toJson(rehearse(diary, to), diary, to).toText()));
}

} // namespace morrow::batch
