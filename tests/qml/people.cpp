// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/people.h"

#include "exchange/tables.h"
#include "support/diary_builder.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

namespace morrow::test {

[[noreturn]] void slip(const char *what)
{
    std::fprintf(stderr, "a test cannot go on: %s\n", what);
    std::_Exit(3);
}

std::vector<Entry> demoDiary(const char *folder)
{
    const auto tables = readTables(std::filesystem::path(MORROW_DEMO_DATA) / folder);
    if (!tables)
        slip("the demo diary cannot be read");
    return tables->entries;
}

std::vector<Entry> bakersDiary(CivilDay lastDay)
{
    std::vector<Entry> entries = demoDiary("paper");
    std::erase_if(entries, [lastDay](const Entry &entry) { return entry.day > lastDay; });
    return entries;
}

std::vector<Entry> diaryOfManyThings()
{
    DiaryBuilder builder;
    builder.complaint("shoulder", body({{Field::Region, std::string("shoulder")}, {Field::Side, std::string("right")}}));
    for (int number = 1; number <= 12; ++number) {
        const std::string key = "exercise-" + std::to_string(number);
        builder.item(item(key, "2026-03-02", {onDays(3, 15), onDays(3, 12)})).sets("2026-04-20", "morning", key, number % 4, 15);
    }
    builder.checks("2026-03-02", {6, 6, 5, -1, 5, 6, 4, 4, -1, -1, 3, 4});
    builder.complaint("heel", body({{Field::Region, std::string("plantar heel")}, {Field::Side, std::string("left")}}))
        .item(item("raise", "2026-04-01", {onDays(3, 15)}))
        .checks("2026-04-01", {2, 2, 3});
    builder.complaint("elbow", body({{Field::Region, std::string("outer elbow")}, {Field::Side, std::string("left")}}));
    auto entries = builder.entries();
    // The builder begins with a complaint of its own.
    std::erase_if(entries, [](const Entry &entry) { return entry.id == "complaint-main"; });
    return entries;
}

std::vector<Entry> diaryOfAnyThreeDays()
{
    DiaryBuilder builder;
    Item squat = item("squat", "2026-03-02", {perWeek(2, 8, 3), perWeek(3, 8, 3)});
    squat.exercise = "Squat with the heels on a rolled-up towel";
    builder.item(squat).stage("2026-04-13", "squat", 2);
    builder.sets("2026-04-17", "day", "squat", 3, 8).sets("2026-04-20", "day", "squat", 3, 8).sets("2026-04-22", "day", "squat", 1, 8);
    builder.checks("2026-04-20", {2, 3, 2});
    return builder.entries();
}

std::vector<Entry> diaryOfLongNames()
{
    DiaryBuilder builder;
    Item raise = item("heel-raise", "2026-03-02", {onDays(4, 12)});
    raise.exercise = "Heel raise on one leg over a rolled-up towel";
    raise.side = Side::Left;
    raise.stages.front().keyPoint = "Let the heel come all the way down, slowly, and keep the knee quite straight while you do it";
    Item other = raise;
    other.key = "heel-raise-right";
    other.side = Side::Right;
    builder.item(raise).item(other);
    return builder.entries();
}

} // namespace morrow::test
