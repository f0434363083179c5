// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Every number of a diary with 20 sets and a check a day, in the core alone: 12 weeks, and
/// 1, 3, 10 and 30 years; how it grows, and how it compares with the second implementation
/// (tests/reference/second), run in turn with it on the same folder. Both make a diary of entries
/// that were read and then every measure; neither counts the reading of files. It prints and
/// judges nothing; the aims stand below the numbers.

#include "base/civil_day.h"
#include "base/file.h"
#include "bench/child.h"
#include "bench/long_diary.h"
#include "exchange/tables.h"
#include "measures/measures.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <memory>
#include <string>
#include <unistd.h>
#include <vector>

using namespace morrow;
using namespace morrow::bench;
namespace fs = std::filesystem;

namespace {

constexpr int kRuns = 9;

struct Length
{
    const char *name;
    int days;
    int everySecond; ///< the second implementation runs in one of so many, since it is so much slower
};

template<class Work>
double milliseconds(Work work)
{
    const auto began = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
}

/// What the second implementation says that it took.
double secondMilliseconds(const fs::path &folder, CivilDay to)
{
    const std::string command = std::string(MORROW_SECOND) + " " + folder.string() + " --as-of " + to.toString();
    const std::unique_ptr<FILE, int (*)(FILE *)> pipe(popen(command.c_str(), "r"), pclose);
    std::array<char, 64> text{};
    return pipe && std::fgets(text.data(), text.size(), pipe.get()) != nullptr ? std::stod(text.data()) * 1000 : 0;
}

} // namespace

int main()
{
    const fs::path folder = fs::temp_directory_path() / ("morrow-recompute-" + std::to_string(getpid()));
    double oneYear = 0;
    std::printf(
        "%9s %9s %9s %10s %9s %10s %7s %7s\n", "diary", "entries", "fold ms", "measure ms", "both ms", "second ms", "ratio", "growth");
    for (const auto &[name, days, everySecond] :
        {Length{"1 year", 365, 3}, {"12 weeks", 84, 3}, {"3 years", 1096, 3}, {"10 years", 3653, 3}, {"30 years", 10958, kRuns}}) {
        const CivilDay to = longDiaryStart() + (days - 1);
        if (!writeFolder(folder, longDiaryTo(to)))
            return 1;
        const auto read = readTables(folder);
        if (!read)
            return 1;
        std::vector<double> folded;
        std::vector<double> measured;
        std::vector<double> both;
        std::vector<double> second;
        std::vector<double> ratios;
        for (int i = 0; i <= kRuns; ++i) {
            std::optional<Diary> diary;
            std::vector<Entry> entries = read->entries;
            const double fold = milliseconds([&] { diary = Diary::from(std::move(entries)); });
            std::size_t complaints = 0;
            const double measures = milliseconds([&] { complaints = measure(*diary, to).value().size(); });
            if (complaints != 1)
                return 1;
            if (i == 0)
                continue; // warming up
            folded.push_back(fold);
            measured.push_back(measures);
            both.push_back(fold + measures);
            if (i % everySecond == 0) {
                second.push_back(secondMilliseconds(folder, to));
                ratios.push_back(second.back() / both.back());
            }
        }
        fs::remove_all(folder);
        if (days == 365)
            oneYear = bench::median(both);
        std::printf("%9s %9zu %9.2f %10.2f %9.2f %10.0f %7.0f %7.2f\n", name, read->entries.size(), bench::median(folded),
            bench::median(measured), bench::median(both), bench::median(second), bench::median(ratios), bench::median(both) / oneYear);
        std::fflush(stdout);
    }
    std::printf("Medians of %d runs. ratio: the second implementation against both; growth: of both against one year.\n"
                "Aims for both: 12 weeks 1 ms, 10 years 60 ms, growth no more than the years.\n",
        kRuns);
}
