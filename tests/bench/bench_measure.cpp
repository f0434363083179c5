// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// The whole `measure` command, as a process, on diaries of 1, 2, 5 and 10 years
/// with 20 sets a day: how it grows with the diary, and how it compares with a bare
/// program that only reads the same bytes, run in turn with it. It prints and judges
/// nothing; the aims stand beside the numbers.

#include "base/civil_day.h"
#include "base/file.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <string>
#include <vector>

using namespace morrow;
namespace fs = std::filesystem;

namespace {

constexpr int kRuns = 9;

/// A diary of \a years: two items of 10 sets a day, a check every morning, a session's pain every evening.
std::map<std::string, std::string> tables(int years)
{
    const CivilDay start = *CivilDay::from(2015, 1, 1);
    const CivilDay end = *CivilDay::from(2015 + years, 1, 1);
    std::map<std::string, std::string> files;
    files["settings.csv"] = "key,value\r\npatient_ref,bench\r\n";
    std::string &plan = files["plan.csv"];
    plan = "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,min_"
           "days,min_sessions,"
           "rests_after_visit\r\n";
    for (const char *item : {"a", "b"})
        plan += std::string(item) + ",heel raise,both,1,10,12,,5,,3,0,3,90,FREQ=DAILY,evening,," + start.toString() + ",,,,0\r\n";
    std::string &mornings = files["mornings.csv"];
    std::string &sets = files["sets.csv"];
    std::string &sessions = files["sessions.csv"];
    mornings = "id,day,pain,stiffness_min,recorded_at\r\n";
    sets = "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\r\n";
    sessions = "id,day,slot,pain_during,pain_after,recorded_at\r\n";
    for (CivilDay day = start; day < end; day = day + 1) {
        const std::string text = day.toString();
        mornings += "," + text + "," + std::to_string(day.number() % 7) + ",10," + text + "T07:10:00+01:00\r\n";
        sessions += "," + text + ",evening," + std::to_string(day.number() % 5) + ",2," + text + "T19:40:00+01:00\r\n";
        for (int set = 0; set < 20; ++set) {
            const std::string second = std::to_string(10 + set);
            sets += "," + text + ",evening," + (set < 10 ? "a," : "b,") + std::to_string(set % 10 + 1) + ",12,,5," + text + "T19:" + second
                + ":00+01:00\r\n";
        }
    }
    return files;
}

struct Cost
{
    double milliseconds;
    long peakKiB;
};

/// Runs a command with its output thrown away.
Cost run(const std::vector<std::string> &command)
{
    std::vector<char *> arguments;
    for (const std::string &part : command)
        arguments.push_back(const_cast<char *>(part.c_str()));
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);

    const auto began = std::chrono::steady_clock::now();
    pid_t child = 0;
    int status = 0;
    rusage usage{};
    if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0 || wait4(child, &status, 0, &usage) < 0
        || status != 0) {
        std::fprintf(stderr, "%s did not run\n", command[0].c_str());
        std::exit(1);
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - began;
    posix_spawn_file_actions_destroy(&actions);
    return {took.count(), usage.ru_maxrss};
}

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

} // namespace

int main()
{
    const fs::path folder = fs::temp_directory_path() / ("morrow-bench-" + std::to_string(getpid()));
    double oneYear = 0;
    std::printf("%5s %9s %12s %12s %8s %8s %10s\n", "years", "MiB", "measure ms", "read ms", "ratio", "growth", "peak MiB");
    for (const int years : {1, 2, 5, 10}) {
        const auto files = tables(years);
        std::size_t bytes = 0;
        for (const auto &[name, content] : files)
            bytes += content.size();
        if (!writeFolder(folder, files))
            return 1;
        const std::string lastDay = (*CivilDay::from(2015 + years, 1, 1) - 1).toString();
        std::vector<double> measured;
        std::vector<double> read;
        std::vector<double> ratios;
        long peak = 0;
        for (int i = 0; i <= kRuns; ++i) {
            const Cost whole = run({MORROW_BATCH, "measure", folder.string(), "--as-of", lastDay});
            const Cost bare = run({MORROW_BARE_READ, folder.string()});
            if (i == 0)
                continue; // warming up
            measured.push_back(whole.milliseconds);
            read.push_back(bare.milliseconds);
            ratios.push_back(whole.milliseconds / bare.milliseconds);
            peak = std::max(peak, whole.peakKiB);
        }
        fs::remove_all(folder);
        if (years == 1)
            oneYear = median(measured);
        std::printf("%5d %9.2f %12.1f %12.1f %8.1f %8.2f %10.1f\n", years, static_cast<double>(bytes) / 1048576.0, median(measured),
            median(read), median(ratios), median(measured) / oneYear, static_cast<double>(peak) / 1024.0);
    }
    std::printf("Medians of %d runs. Growth is against one year (aim: no more than the years); aim for 10 years: under 300 ms.\n", kRuns);
}
