// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/plan.h"

namespace morrow {

namespace {

std::optional<int> wholeNumber(const Body &body, Field field)
{
    const Decimal *const number = body.number(field);
    return number ? std::optional(number->toInt()) : std::nullopt;
}

void assign(Decimal &limit, const Body &body, Field field)
{
    if (const Decimal *const number = body.number(field))
        limit = *number;
}

void assign(int &limit, const Body &body, Field field)
{
    limit = body.intOr(field, limit);
}

Limits readLimits(const Body &body)
{
    Limits limits;
    assign(limits.restDaysAfterVisit, body, Field::RestDaysAfterVisit);
    assign(limits.sorenessDays, body, Field::SorenessDays);
    assign(limits.during, body, Field::DuringLimit);
    assign(limits.after, body, Field::AfterLimit);
    if (const Decimal *const check = body.number(Field::CheckLimit))
        limits.check = *check;
    assign(limits.riseAllowed, body, Field::RiseAllowed);
    assign(limits.weeklyRiseAllowed, body, Field::WeeklyRiseAllowed);
    assign(limits.weeklyStiffnessAllowed, body, Field::WeeklyStiffnessAllowed);
    assign(limits.levelRiseAllowed, body, Field::LevelRiseAllowed);
    assign(limits.contactLevel, body, Field::ContactLevel);
    assign(limits.contactRise, body, Field::ContactRise);
    assign(limits.stepSessions, body, Field::StepSessions);
    assign(limits.stepWindowDays, body, Field::StepWindowDays);
    assign(limits.stepSpacingDays, body, Field::StepSpacingDays);
    assign(limits.stepAdherence, body, Field::StepAdherence);
    return limits;
}

std::vector<std::string> splitWords(std::string_view words)
{
    std::vector<std::string> parts;
    while (!words.empty()) {
        const std::size_t space = std::min(words.find(' '), words.size());
        if (space > 0)
            parts.emplace_back(words.substr(0, space));
        words.remove_prefix(std::min(space + 1, words.size()));
    }
    return parts;
}

std::optional<Rhythm> readRhythm(const Body &body)
{
    if (const auto perWeek = wholeNumber(body, Field::PerWeek))
        return PerWeek{*perWeek};
    const auto rule = RecurrenceRule::parse(body.textOr(Field::Rrule));
    auto slots = splitWords(body.textOr(Field::Slots));
    if (!rule || slots.empty())
        return std::nullopt;
    return OnDays{*rule, std::move(slots)};
}

std::optional<Stage> readStage(const Body &body)
{
    auto rhythm = readRhythm(body);
    const auto sets = wholeNumber(body, Field::Sets);
    const int hold = body.intOr(Field::HoldS, 0);
    const auto reps = wholeNumber(body, Field::Reps);
    if (!rhythm || !sets || (!reps && hold == 0))
        return std::nullopt;

    Stage stage{.dose = {}, .rhythm = *std::move(rhythm)};
    stage.dose.sets = *sets;
    stage.dose.reps = reps.value_or(1);
    stage.dose.holdSeconds = hold;
    assign(stage.dose.loadKg, body, Field::LoadKg);
    assign(stage.dose.bodyShare, body, Field::BodyShare);
    stage.dose.upSeconds = wholeNumber(body, Field::UpS);
    stage.dose.pauseSeconds = wholeNumber(body, Field::PauseS);
    stage.dose.downSeconds = wholeNumber(body, Field::DownS);
    stage.minDays = body.intOr(Field::MinDays, 0);
    stage.minSessions = body.intOr(Field::MinSessions, 0);
    stage.keyPoint = body.textOr(Field::KeyPoint);
    return stage;
}

std::optional<Item> readItem(const Body &body)
{
    const auto start = CivilDay::parse(body.textOr(Field::Start));
    const auto *const stages = body.list(Field::Stages);
    if (!start || !stages || stages->empty())
        return std::nullopt;
    Item item{
        .key = std::string(body.textOr(Field::Item)),
        .exercise = std::string(body.textOr(Field::Exercise)),
        .side = sideNamed(body.textOr(Field::Side)),
        .start = *start,
        .end = CivilDay::parse(body.textOr(Field::End)),
        .loads = body.intOr(Field::Loads, 1) == 1,
        .restsAfterVisit = body.intOr(Field::RestsAfterVisit, 0) == 1,
        .continues = std::string(body.textOr(Field::Continues)),
        .stages = {},
    };
    for (const Body &stageBody : *stages) {
        auto stage = readStage(stageBody);
        if (!stage)
            return std::nullopt;
        item.stages.push_back(*std::move(stage));
    }
    return item;
}

Asks readAsks(std::string_view text)
{
    if (text.empty())
        return {};
    Asks asks{false, false, false, false};
    for (const std::string &word : splitWords(text)) {
        asks.stiffness |= word == "stiffness";
        asks.during |= word == "during";
        asks.after |= word == "after";
        asks.spare |= word == "spare";
    }
    return asks;
}

Authority readAuthority(std::string_view text)
{
    return text == "off" ? Authority::Off : text == "patient" ? Authority::Patient : Authority::Clinic;
}

} // namespace

std::optional<Plan> Plan::read(const Body &body, CivilDay from)
{
    const auto *const items = body.list(Field::Items);
    if (!items)
        return std::nullopt;
    Plan plan{
        .id = std::string(body.textOr(Field::Plan)),
        .complaint = std::string(body.textOr(Field::Complaint)),
        .number = body.intOr(Field::Number, 1),
        .from = from,
        .by = std::string(body.textOr(Field::By)),
        .items = {},
        .limits = readLimits(body),
        .authority = readAuthority(body.textOr(Field::Authority)),
        .asks = readAsks(body.textOr(Field::Asks)),
        .visitsPlanned = wholeNumber(body, Field::VisitsPlanned),
        .reviewDay = CivilDay::parse(body.textOr(Field::ReviewDay)),
        .reviewText = std::string(body.textOr(Field::ReviewText)),
    };
    for (const Body &itemBody : *items) {
        auto item = readItem(itemBody);
        if (!item)
            return std::nullopt;
        plan.items.push_back(*std::move(item));
    }
    return plan;
}

} // namespace morrow
