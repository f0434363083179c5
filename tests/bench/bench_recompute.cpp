// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Every measure of a diary with 20 sets and a check a day, in the core alone: 12 weeks,
/// and 1, 3, 10 and 30 years; how it grows, and how it compares with the second
/// implementation (tests/reference/second), run in turn with it on the same folder. Neither
/// counts the reading of files. It prints and judges nothing; the aims stand below the numbers.

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
constexpr int kYearsWithSecond = 10; // more than that takes it minutes

struct Length
{
    const char *name;
    int years; ///< of the folder
    int days; ///< that are measured
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
    const CivilDay start = *CivilDay::from(2015, 1, 1);
    double oneYear = 0;
    std::printf("%9s %9s %10s %10s %12s %8s %8s\n", "diary", "entries", "fold ms", "measure ms", "second ms", "ratio", "growth");
    for (const auto &[name, years, days] :
        {Length{"1 year", 1, 365}, {"12 weeks", 1, 84}, {"3 years", 3, 1096}, {"10 years", 10, 3653}, {"30 years", 30, 10958}}) {
        const CivilDay to = start + (days - 1);
        if (!writeFolder(folder, longDiary(years)))
            return 1;
        const auto read = readTables(folder);
        if (!read)
            return 1;
        std::vector<Entry> entries = read->entries;
        std::erase_if(entries, [to](const Entry &entry) { return entry.day > to; });
        std::vector<double> folded;
        std::vector<double> measured;
        std::vector<double> second;
        std::vector<double> ratios;
        for (int i = 0; i <= kRuns; ++i) {
            std::optional<Diary> diary;
            std::vector<Entry> copy = entries;
            const double fold = milliseconds([&] { diary = Diary::from(std::move(copy)); });
            std::size_t complaints = 0;
            const double whole = milliseconds([&] { complaints = measure(*diary, to).value().size(); });
            if (complaints != 1)
                return 1;
            // One in three, since it is so much slower.
            const double other = years <= kYearsWithSecond && i % 3 == 0 ? secondMilliseconds(folder, to) : 0;
            if (i == 0)
                continue; // warming up
            folded.push_back(fold);
            measured.push_back(whole);
            if (other > 0) {
                second.push_back(other);
                ratios.push_back(other / whole);
            }
        }
        fs::remove_all(folder);
        if (days == 365)
            oneYear = bench::median(measured);
        std::printf("%9s %9zu %10.2f %10.2f", name, entries.size(), bench::median(folded), bench::median(measured));
        if (second.empty())
            std::printf(" %12s %8s", "-", "-");
        else
            std::printf(" %12.0f %8.0f", bench::median(second), bench::median(ratios));
        std::printf(" %8.2f\n", bench::median(measured) / oneYear);
        std::fflush(stdout);
    }
    std::printf("Medians of %d runs. ratio: the second implementation against the core; growth: against one year.\n"
                "Aims for measure: 12 weeks 1 ms, 10 years 60 ms, growth no more than the years.\n",
        kRuns);
}
