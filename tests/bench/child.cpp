// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "bench/child.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace morrow::bench {

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

} // namespace morrow::bench
