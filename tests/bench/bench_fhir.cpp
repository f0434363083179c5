// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// A summary of five years, 42 000 entries: how long writing it takes, and how much memory
/// the whole command needs, beside a bare program that only reads the bytes of the summary,
/// and reading it back beside parsing the same bytes with simdjson alone. It judges
/// nothing; the aims stand beside the numbers.

#include "base/file.h"
#include "bench/child.h"
#include "bench/long_diary.h"
#include "exchange/fhir.h"
#include "exchange/tables.h"

#include <simdjson.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <unistd.h>

using namespace morrow;
using namespace morrow::bench;
namespace fs = std::filesystem;

namespace {

constexpr int kYears = 5;
constexpr int kRuns = 7;

template<class Work>
double timed(Work work)
{
    const auto began = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
}

void need(bool holds, const char *what)
{
    if (holds)
        return;
    std::fprintf(stderr, "%s\n", what);
    std::exit(1);
}

} // namespace

int main()
{
    const fs::path folder = fs::temp_directory_path() / ("morrow-bench-fhir-" + std::to_string(getpid()));
    fs::create_directories(folder / "out");
    need(writeFolder(folder / "tables", longDiary(kYears)).has_value(), "the tables were not written");
    // First, while this process is small: a child begins with the memory peak of its parent.
    std::vector<double> whole;
    std::vector<double> bare;
    long peak = 0;
    const std::string store = (folder / "store").string();
    (void)run({MORROW_BATCH, "convert", (folder / "tables").string(), "--to", "store", store});
    for (int i = 0; i <= kRuns; ++i) {
        const fs::path out = folder / "out" / "summary.json";
        fs::remove(out);
        const Cost cost = run({MORROW_BATCH, "convert", store, "--to", "summary", out.string()});
        const Cost read = run({MORROW_BARE_READ, (folder / "out").string()});
        if (i == 0)
            continue;
        whole.push_back(cost.milliseconds);
        bare.push_back(read.milliseconds);
        peak = std::max(peak, cost.peakKiB);
    }
    std::printf("the command, from a store%8.1f ms, %.1f times reading the bytes (%.1f ms); aim 1000 ms\n", median(whole),
        median(whole) / median(bare), median(bare));
    std::printf("its memory at most       %8.1f MiB; aim 120 MB\n", static_cast<double>(peak) / 1024.0);

    const auto diary = readTables(folder / "tables");
    need(diary.has_value(), "the tables were not read");

    std::vector<double> writing;
    std::vector<double> readingBack;
    std::vector<double> parsing;
    std::string json;
    for (int i = 0; i <= kRuns; ++i) {
        const double wrote = timed([&] { json = writeFhir(diary->entries, *diary->person, FhirFile::Summary).json; });
        const double parsed = timed([&] {
            simdjson::dom::parser parser;
            need(parser.parse(simdjson::padded_string(json)).error() == simdjson::SUCCESS, "the summary is no JSON");
        });
        const double read = timed([&] { need(readFhir(json).has_value(), "the summary was not read"); });
        if (i == 0)
            continue; // warming up
        writing.push_back(wrote);
        parsing.push_back(parsed);
        readingBack.push_back(read);
    }
    std::printf("%zu entries, %.1f MiB\n", diary->entries.size(), static_cast<double>(json.size()) / 1048576.0);
    std::printf("writing in memory        %8.1f ms\n", median(writing));
    std::printf("reading and checking     %8.1f ms, %.1f times parsing alone (%.1f ms)\n", median(readingBack),
        median(readingBack) / median(parsing), median(parsing));
    fs::remove_all(folder);
}
