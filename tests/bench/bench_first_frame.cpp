// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// How long somebody waits for home: from starting the program to the first frame with today's
/// rows, with the demo and with a diary of five years, beside a bare window of Qt Quick Controls
/// in the same run; and the memory each takes then. It judges nothing; the aims stand beside the
/// numbers.

#include "base/file.h"
#include "bench/child.h"
#include "bench/long_diary.h"

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <spawn.h>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

using namespace morrow;
using namespace morrow::bench;
namespace fs = std::filesystem;

namespace {

constexpr int kRuns = 15;
constexpr int kYears = 5;

struct Start
{
    double milliseconds;
    double mebibytes; ///< resident, its own and shared
};

[[noreturn]] void give(const std::string &what)
{
    std::fprintf(stderr, "%s\n", what.c_str());
    std::exit(1);
}

double residentMebibytes(pid_t child)
{
    std::ifstream status("/proc/" + std::to_string(child) + "/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with("VmRSS:"))
            return std::strtod(line.c_str() + 6, nullptr) / 1024;
    }
    return 0;
}

/// Starts \a command, which is told when, waits for its first frame and ends it.
Start started(std::vector<std::string> command)
{
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    command.insert(command.end(), {"--since", std::to_string(std::chrono::duration_cast<std::chrono::milliseconds>(now).count())});
    std::vector<char *> arguments;
    for (const std::string &part : command)
        arguments.push_back(const_cast<char *>(part.c_str()));
    arguments.push_back(nullptr);
    int ends[2];
    if (pipe(ends) != 0)
        give("no pipe");
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    posix_spawn_file_actions_addclose(&actions, ends[0]);
    pid_t child = 0;
    if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0)
        give(command[0] + " did not start");
    posix_spawn_file_actions_destroy(&actions);
    close(ends[1]);
    std::string said;
    char byte = 0;
    while (read(ends[0], &byte, 1) == 1 && byte != '\n')
        said += byte;
    close(ends[0]);
    const double resident = residentMebibytes(child);
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    double milliseconds = 0;
    if (std::sscanf(said.c_str(), "first frame %lf ms", &milliseconds) != 1)
        give(command[0] + " said nothing of a first frame: " + said);
    return {milliseconds, resident};
}

struct Case
{
    const char *name;
    const char *aim;
    std::vector<std::string> command;
    std::vector<double> milliseconds{};
    std::vector<double> mebibytes{};
};

} // namespace

int main()
{
    setenv("QT_QPA_PLATFORM", "offscreen", 0); // with a display: unset it, or name xcb
    const fs::path folder = fs::temp_directory_path() / ("morrow-bench-frame-" + std::to_string(getpid()));
    fs::create_directories(folder);
    if (!writeFolder(folder / "tables", longDiary(kYears)))
        give("the tables were not written");
    const std::string store = (folder / "five-years").string();
    (void)run({MORROW_BATCH, "convert", (folder / "tables").string(), "--to", "store", store});

    std::vector<Case> cases{
        {"bare window", "", {MORROW_BARE_WINDOW}},
        {"home, demo", "aim 2", {MORROW_HOME, "--demo", "--store", (folder / "demo").string()}},
        {"home, five years", "aim 2.5", {MORROW_HOME, "--store", store, "--now", std::to_string(2015 + kYears) + "-01-01T07:00:00+01:00"}},
    };
    for (int i = 0; i < kRuns; ++i) {
        for (Case &one : cases) {
            const Start start = started(one.command);
            if (i == 0)
                continue; // the first finds the files cold
            one.milliseconds.push_back(start.milliseconds);
            one.mebibytes.push_back(start.mebibytes);
        }
    }
    std::printf("%-18s %10s %8s %10s %8s\n", "first frame", "ms", "ratio", "MiB", "ratio");
    for (const Case &one : cases) {
        const double milliseconds = median(one.milliseconds);
        const double mebibytes = median(one.mebibytes);
        std::printf("%-18s %10.0f %8.2f %10.1f %8.2f   %s\n", one.name, milliseconds, milliseconds / median(cases[0].milliseconds),
            mebibytes, mebibytes / median(cases[0].mebibytes), one.aim);
    }
    std::printf("Medians of %d starts each, after one that finds the files cold.\n", kRuns - 1);
    fs::remove_all(folder);
    return 0;
}
