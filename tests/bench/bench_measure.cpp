// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// The whole `measure` command, as a process, on diaries of 1, 2, 5 and 10 years
/// with 20 sets a day: how it grows with the diary, and how it compares with a bare
/// program that only reads the same bytes, run in turn with it. It prints and judges
/// nothing; the aims stand beside the numbers.

#include "base/civil_day.h"
#include "base/file.h"
#include "bench/child.h"
#include "bench/long_diary.h"

#include <algorithm>
#include <cstdio>
#include <string>
#include <unistd.h>
#include <vector>

using namespace morrow;
using namespace morrow::bench;
namespace fs = std::filesystem;

namespace {

constexpr int kRuns = 9;

} // namespace

int main()
{
    const fs::path folder = fs::temp_directory_path() / ("morrow-bench-" + std::to_string(getpid()));
    double oneYear = 0;
    std::printf("%5s %9s %12s %12s %8s %8s %10s\n", "years", "MiB", "measure ms", "read ms", "ratio", "growth", "peak MiB");
    for (const int years : {1, 2, 5, 10}) {
        const auto files = longDiary(years);
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
