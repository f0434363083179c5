// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/diary_builder.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace morrow::test {

namespace {

/// What \a read holds; ends the program over \a text if it holds nothing.
template<class T>
T orEnd(std::optional<T> read, std::string_view text)
{
    if (!read) {
        std::fprintf(stderr, "a test wrote \"%.*s\", which cannot be read\n", static_cast<int>(text.size()), text.data());
        std::abort();
    }
    return *std::move(read);
}

Body::Value text(std::string_view words)
{
    return std::string(words);
}

Body::Value whole(int value)
{
    return Decimal::whole(value);
}

Body stageBody(const Stage &stage, int number)
{
    Body body;
    body.set(Field::Stage, whole(number));
    body.set(Field::Sets, whole(stage.dose.sets));
    if (stage.minDays > 0)
        body.set(Field::MinDays, whole(stage.minDays));
    if (stage.minSessions > 0)
        body.set(Field::MinSessions, whole(stage.minSessions));
    body.set(Field::Reps, whole(stage.dose.reps));
    if (stage.dose.holdSeconds != 0)
        body.set(Field::HoldS, whole(stage.dose.holdSeconds));
    body.set(Field::LoadKg, stage.dose.loadKg);
    body.set(Field::BodyShare, stage.dose.bodyShare);
    const auto setTempo = [&body](Field field, const std::optional<int> &seconds) {
        if (seconds)
            body.set(field, whole(*seconds));
    };
    setTempo(Field::UpS, stage.dose.upSeconds);
    setTempo(Field::PauseS, stage.dose.pauseSeconds);
    setTempo(Field::DownS, stage.dose.downSeconds);
    if (const auto *week = std::get_if<PerWeek>(&stage.rhythm)) {
        body.set(Field::PerWeek, whole(week->sessions));
        return body;
    }
    const auto &days = std::get<OnDays>(stage.rhythm);
    body.set(Field::Rrule, days.rule.toString());
    std::string slots;
    for (const std::string &slot : days.slots)
        slots += (slots.empty() ? "" : " ") + slot;
    body.set(Field::Slots, slots);
    return body;
}

Body itemBody(const Item &item)
{
    Body body;
    body.set(Field::Item, item.key);
    body.set(Field::Exercise, item.exercise);
    if (item.side)
        body.set(Field::Side, text(name(*item.side)));
    body.set(Field::Start, item.start.toString());
    if (item.end)
        body.set(Field::End, item.end->toString());
    body.set(Field::Loads, whole(item.loads ? 1 : 0));
    body.set(Field::RestsAfterVisit, whole(item.restsAfterVisit ? 1 : 0));
    if (!item.continues.empty())
        body.set(Field::Continues, item.continues);
    std::vector<Body> stages;
    for (const Stage &stage : item.stages)
        stages.push_back(stageBody(stage, static_cast<int>(stages.size()) + 1));
    body.set(Field::Stages, std::move(stages));
    return body;
}

} // namespace

Day::Day(const char *text)
    : m_day(test::day(text))
{
}

CivilDay day(std::string_view text)
{
    return orEnd(CivilDay::parse(text), text);
}

Decimal number(std::string_view text)
{
    return orEnd(Decimal::parse(text), text);
}

Body body(std::initializer_list<std::pair<Field, Body::Value>> fields)
{
    Body result;
    for (const auto &[field, value] : fields)
        result.set(field, value);
    return result;
}

Stage onDays(int sets, int reps, std::string_view rule, std::vector<std::string> slots)
{
    Stage stage{.dose = {}, .rhythm = OnDays{orEnd(RecurrenceRule::parse(rule), rule), std::move(slots)}};
    stage.dose.sets = sets;
    stage.dose.reps = reps;
    return stage;
}

Stage perWeek(int sets, int reps, int sessions)
{
    Stage stage{.dose = {}, .rhythm = PerWeek{sessions}};
    stage.dose.sets = sets;
    stage.dose.reps = reps;
    return stage;
}

Stage held(Stage stage, int holdSeconds)
{
    stage.dose.holdSeconds = holdSeconds;
    return stage;
}

Stage loaded(Stage stage, std::string_view kg, std::string_view bodyShare)
{
    stage.dose.loadKg = number(kg);
    stage.dose.bodyShare = number(bodyShare);
    return stage;
}

Item item(std::string_view key, Day start, std::vector<Stage> stages)
{
    return {
        .key = std::string(key),
        .exercise = std::string(key),
        .side = std::nullopt,
        .start = start,
        .end = std::nullopt,
        .loads = true,
        .restsAfterVisit = false,
        .continues = {},
        .stages = std::move(stages),
    };
}

Item until(Item item, Day end)
{
    item.end = end;
    return item;
}

Item restingAfterVisits(Item item)
{
    item.restsAfterVisit = true;
    return item;
}

DiaryBuilder::DiaryBuilder()
{
    complaint("main");
}

DiaryBuilder &DiaryBuilder::complaint(std::string_view key, const Body &fields)
{
    const auto known = std::find_if(m_complaints.begin(), m_complaints.end(), [key](const Told &told) { return told.key == key; });
    m_current = static_cast<std::size_t>(known - m_complaints.begin());
    if (known == m_complaints.end())
        m_complaints.push_back({std::string(key), {}, {}, {}});
    for (const auto &[field, value] : fields.fields())
        m_complaints[m_current].fields.set(field, value);
    return *this;
}

DiaryBuilder &DiaryBuilder::item(Item item)
{
    m_complaints[m_current].items.push_back(std::move(item));
    return *this;
}

DiaryBuilder &DiaryBuilder::planSetting(Field field, Body::Value value)
{
    m_complaints[m_current].planSettings.set(field, std::move(value));
    return *this;
}

DiaryBuilder &DiaryBuilder::setting(std::string_view key, std::string_view value)
{
    return entry(Kind::Setting, "2000-01-01", body({{Field::Key, text(key)}, {Field::Value, text(value)}}));
}

DiaryBuilder &DiaryBuilder::stage(Day day, std::string_view item, int stage, Origin origin)
{
    return entry(Kind::Stage, day, body({{Field::Item, text(item)}, {Field::Stage, whole(stage)}}), std::move(origin));
}

DiaryBuilder &DiaryBuilder::set(
    Day day, std::string_view slot, std::string_view item, int set, int reps, const SetParts &parts, Origin origin)
{
    Body said = body({{Field::Slot, text(slot)}, {Field::Item, text(item)}, {Field::Set, whole(set)}, {Field::Reps, whole(reps)}});
    if (parts.holdSeconds)
        said.set(Field::HoldS, whole(*parts.holdSeconds));
    if (!parts.loadKg.empty())
        said.set(Field::LoadKg, number(parts.loadKg));
    return entry(Kind::Set, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::sets(Day day, std::string_view slot, std::string_view item, int count, int reps, const SetParts &parts)
{
    for (int number = 1; number <= count; ++number)
        set(day, slot, item, number, reps, parts);
    return *this;
}

DiaryBuilder &DiaryBuilder::check(Day day, std::optional<int> pain, std::optional<int> stiffness, Origin origin)
{
    Body said = about();
    if (pain)
        said.set(Field::Pain, whole(*pain));
    if (stiffness)
        said.set(Field::StiffnessMin, whole(*stiffness));
    return entry(Kind::Check, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::checks(Day first, std::initializer_list<int> pain)
{
    CivilDay day = first;
    for (const int value : pain) {
        if (value >= 0)
            check(day, value);
        day = day + 1;
    }
    return *this;
}

DiaryBuilder &DiaryBuilder::declined(Day day, Origin origin)
{
    Body said = about();
    said.set(Field::Declined, whole(1));
    return entry(Kind::Check, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::session(Day day, std::string_view slot, std::optional<int> during, std::optional<int> after, Origin origin)
{
    Body said = about();
    said.set(Field::Slot, text(slot));
    if (during)
        said.set(Field::PainDuring, whole(*during));
    if (after)
        said.set(Field::PainAfter, whole(*after));
    return entry(Kind::Session, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::skip(Day day, std::string_view slot, Origin origin)
{
    Body said = about();
    said.set(Field::Slot, text(slot));
    return entry(Kind::Skip, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::easier(Day day, std::string_view slot, Origin origin)
{
    Body said = about();
    said.set(Field::Slot, text(slot));
    return entry(Kind::Easier, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::pause(Day from, Day to, Origin origin)
{
    Body said;
    if (!origin.withdraws)
        said.set(Field::To, CivilDay(to).toString());
    return entry(Kind::Pause, from, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::visit(Day day, const Body &parts, Origin origin)
{
    Body said = about();
    for (const auto &[field, value] : parts.fields())
        said.set(field, value);
    return entry(Kind::Visit, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::outcome(
    Day day, std::string_view kind, std::string_view name, std::string_view side, std::string_view value, Origin origin)
{
    Body said = about();
    said.set(Field::Kind, text(kind));
    if (!name.empty())
        said.set(Field::Name, text(name));
    if (!side.empty())
        said.set(Field::Side, text(side));
    said.set(Field::Value, number(value));
    if (kind == "test")
        said.set(Field::Unit, text("count"));
    return entry(Kind::Outcome, day, std::move(said), std::move(origin));
}

DiaryBuilder &DiaryBuilder::putAside(Day day, Origin origin)
{
    return entry(Kind::PutAside, day, about(), std::move(origin));
}

DiaryBuilder &DiaryBuilder::entry(Kind kind, Day day, Body body, Origin origin)
{
    if (origin.withdraws)
        body.set(Field::Withdrawn, whole(1));
    Entry entry{
        .id = origin.id.empty() ? "e" + std::to_string(m_entries.size() + 1) : std::move(origin.id),
        .kind = kind,
        .day = day,
        .recorded = std::nullopt,
        .author = Author::Patient,
        .replaces = std::nullopt,
        .body = body.toJson(),
    };
    if (!origin.recorded.empty())
        entry.recorded = orEnd(parseMoment(origin.recorded), origin.recorded);
    if (!origin.replaces.empty())
        entry.replaces = std::move(origin.replaces);
    m_entries.push_back(std::move(entry));
    return *this;
}

std::vector<Entry> DiaryBuilder::entries() const
{
    std::vector<Entry> all = m_entries;
    const auto add = [&all](std::string id, Kind kind, CivilDay day, const Body &body) {
        all.push_back({std::move(id), kind, day, std::nullopt, Author::Clinic, std::nullopt, body.toJson()});
    };
    for (std::size_t i = 0; i < m_complaints.size(); ++i) {
        const Told &told = m_complaints[i];
        CivilDay start = told.items.empty() ? test::day("2026-01-01") : told.items.front().start;
        std::vector<Body> items;
        for (const Item &item : told.items) {
            start = std::min(start, item.start);
            items.push_back(itemBody(item));
        }
        Body complaint = told.fields;
        complaint.set(Field::Complaint, told.key);
        complaint.set(Field::Place, whole(static_cast<int>(i) + 1));
        add("complaint-" + told.key, Kind::Complaint, start, complaint);
        if (items.empty())
            continue;
        Body plan = told.planSettings;
        plan.set(Field::Complaint, told.key);
        plan.set(Field::Plan, text("plan-of-" + told.key));
        plan.set(Field::Number, whole(1));
        plan.set(Field::Items, std::move(items));
        add("plan-" + told.key, Kind::Plan, start, plan);
    }
    return all;
}

Body DiaryBuilder::about() const
{
    return body({{Field::Complaint, m_complaints[m_current].key}});
}

} // namespace morrow::test
