// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/measures/random_diary.h"

#include <rapidcheck.h>

namespace morrow::test {

namespace {

std::string noonOf(CivilDay day)
{
    return rfc3339({.utcMs = (std::int64_t{day.number()} * 24 + 12) * 3'600'000, .offsetMinutes = 0});
}

int upTo(int greatest)
{
    return *rc::gen::inRange(0, greatest + 1);
}

Stage randomStage()
{
    const int sets = 1 + upTo(3);
    const int reps = 1 + upTo(14);
    Stage stage = perWeek(sets, reps, 1 + upTo(6));
    if (upTo(2) > 0) {
        const auto rule = *rc::gen::element<std::string>("FREQ=DAILY", "FREQ=DAILY;INTERVAL=2", "FREQ=WEEKLY;BYDAY=MO,TH", "FREQ=WEEKLY");
        const auto slots = upTo(1) == 0 ? std::vector<std::string>{"morning"} : std::vector<std::string>{"morning", "evening"};
        stage = onDays(sets, reps, rule, slots);
    }
    if (upTo(2) == 0)
        stage = held(std::move(stage), 1 + upTo(40));
    if (upTo(1) == 0)
        stage = loaded(std::move(stage), "2.35", upTo(1) == 0 ? "0.6" : "0");
    return stage;
}

/// A number of least .. most, or none.
std::optional<int> maybe(int least, int most)
{
    return upTo(1) == 0 ? std::nullopt : std::optional(least + upTo(most - least));
}

template<class Each>
auto several(int most, Each each)
{
    std::vector<decltype(each())> all;
    for (int left = upTo(most); left > 0; --left)
        all.push_back(each());
    return all;
}

std::string anySlot()
{
    return *rc::gen::element<std::string>("morning", "evening", "noon", "day");
}

std::string anyItem()
{
    return *rc::gen::element<std::string>("squat", "press");
}

} // namespace

DiaryBuilder RandomDiary::told(int shift) const
{
    const CivilDay start = day(kRandomStart) + shift;
    DiaryBuilder builder;
    builder.complaint("main", body({{Field::Side, std::string("left")}})).setting("body_mass_kg", "71.3");
    builder.planSetting(Field::RestDaysAfterVisit, Decimal::whole(restDays));
    for (Item item : items) {
        item.start = item.start + shift;
        if (item.end)
            item.end = *item.end + shift;
        builder.item(std::move(item));
    }
    for (const Work &one : work)
        builder.set(start + one.day, one.slot, one.item, one.number, one.reps);
    for (std::size_t i = 0; i < pauses.size(); ++i) {
        const Span &pause = pauses[i];
        const std::string id = "pause-" + std::to_string(i);
        builder.pause(start + pause.first, start + pause.last,
            {.id = id, .recorded = pause.recorded ? noonOf(start + *pause.recorded) : std::string()});
        if (pause.extendedTo)
            builder.pause(start + pause.first, start + *pause.extendedTo, {.recorded = noonOf(start + pause.extendedOn), .replaces = id});
    }
    for (const Answer &answer : answers)
        builder.check(start + answer.day, answer.pain, answer.pain * 3,
            {.recorded = answer.recorded ? noonOf(start + *answer.recorded) : std::string()});
    // Of two on one day the greater id counts: ids of their own, whatever else is told.
    for (std::size_t i = 0; i < changes.size(); ++i)
        builder.stage(start + changes[i].day, changes[i].item, changes[i].stage, {.id = "stage-" + std::to_string(i)});
    for (const int visit : visits)
        builder.visit(start + visit, body({{Field::Impulses, number("2000")}, {Field::Hz, number("10")}}));
    for (const int skip : skips)
        builder.skip(start + skip, "morning");
    for (const Result &result : results)
        builder.outcome(start + result.day, "test", "hops", result.value % 2 == 0 ? "left" : "right", std::to_string(result.value));
    for (const Rated &rated : sessions)
        builder.session(start + rated.day, rated.slot, rated.during, rated.after);
    for (const int easy : easier)
        builder.easier(start + easy, "morning");
    for (std::size_t i = 0; i < signs.size(); ++i) {
        const std::string id = "sign-" + std::to_string(i);
        builder.entry(Kind::Flag, start + signs[i].day, body({{Field::Sign, std::string("numb foot")}}), {.id = id});
        if (signs[i].cleared)
            builder.entry(Kind::Cleared, start + signs[i].day + *signs[i].cleared, body({{Field::Flag, id}}));
    }
    if (putAside)
        builder.putAside(start + *putAside);
    return builder;
}

RandomDiary randomDiary()
{
    RandomDiary diary;
    diary.restDays = 1 + upTo(2);
    diary.length = 1 + upTo(60);
    const CivilDay start = day(kRandomStart);
    for (const char *const key : {"squat", "press"}) {
        std::vector<Stage> stages = several(2, randomStage);
        stages.push_back(randomStage());
        // The first starts on the first day, so that days count from there.
        Item one = item(key, diary.items.empty() ? start : start + upTo(20), std::move(stages));
        if (upTo(2) == 0)
            one.end = one.start + upTo(50);
        one.restsAfterVisit = upTo(1) == 0;
        diary.items.push_back(std::move(one));
    }
    const auto anyDay = [] { return upTo(75) - 10; };
    diary.work = several(120, [&] { return RandomDiary::Work{anyDay(), anySlot(), anyItem(), 1 + upTo(4), upTo(15)}; });
    diary.pauses = several(3, [&] {
        const int first = anyDay();
        const int last = first + upTo(12);
        return RandomDiary::Span{first, last, maybe(-10, 65), maybe(first, first + 20), anyDay()};
    });
    diary.answers = several(60, [&] { return RandomDiary::Answer{anyDay(), upTo(10), maybe(-10, 65)}; });
    diary.changes = several(5, [&] { return RandomDiary::Change{anyDay(), anyItem(), 1 + upTo(2)}; });
    diary.visits = several(4, anyDay);
    diary.skips = several(5, anyDay);
    diary.results = several(5, [&] { return RandomDiary::Result{anyDay(), upTo(20)}; });
    diary.sessions = several(40, [&] { return RandomDiary::Rated{anyDay(), anySlot(), maybe(0, 10), maybe(0, 10)}; });
    diary.easier = several(3, anyDay);
    diary.signs = several(2, [&] { return RandomDiary::Sign{anyDay(), maybe(0, 20)}; });
    if (upTo(5) == 0)
        diary.putAside = anyDay();
    return diary;
}

} // namespace morrow::test
