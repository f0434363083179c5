// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/folders.h"

#include <filesystem>
#include <fstream>
#include <sstream>

namespace morrow::test {

std::optional<TablesDiary> diaryIn(const Files &files, std::string *why)
{
    auto read = readTableFiles(files);
    if (read)
        return *std::move(read);
    if (why) {
        for (const Issue &issue : read.error())
            *why += shown(issue) + '\n';
    }
    return std::nullopt;
}

std::vector<Issue> issuesOf(const Files &files)
{
    auto read = readTableFiles(files);
    return read ? std::vector<Issue>() : std::move(read).error();
}

std::string shown(const Issue &issue)
{
    return "issue " + std::to_string(static_cast<int>(issue.code)) + " at " + issue.file + ":" + std::to_string(issue.line) + ":"
        + std::to_string(issue.column) + " (" + issue.columnName + ") <" + issue.value + "> <" + issue.other + ">";
}

Files written(const TablesDiary &diary)
{
    const TablesFolder folder = writeTables(diary);
    return {folder.files.begin(), folder.files.end()};
}

Files smallFolder()
{
    return {
        {"complaints.csv", "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason\r\nheel,,,,,,,,\r\n"},
        {"plan.csv",
            "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,"
            "min_days,min_sessions,rests_after_visit\r\n"
            "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\r\n"
            "raise,heel raise,,2,4,10,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\r\n"},
    };
}

Files smallFolder(const Files &files)
{
    Files all = files;
    all.merge(smallFolder());
    return all;
}

Files loaded(const std::string &path)
{
    Files files;
    for (const auto &file : std::filesystem::directory_iterator(path)) {
        std::ostringstream bytes;
        bytes << std::ifstream(file.path(), std::ios::binary).rdbuf();
        files.emplace(file.path().filename().string(), std::move(bytes).str());
    }
    return files;
}

} // namespace morrow::test
