// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Writes random diaries as FHIR files, for validators that are not ours:
///     random_bundles FOLDER DIARIES MOST_ENTRIES
/// Each diary becomes a summary, a plan and a visit file, until so many entries are written.

#include "exchange/fhir.h"
#include "exchange/tables.h"
#include "support/diary_generator.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>

using namespace morrow;
using namespace morrow::test;

namespace {

/// What the run wrote, so that whoever reads it can see what was among it.
struct Written
{
    int diaries = 0;
    int entries = 0;
    int paperOnly = 0; ///< diaries
    int corrections = 0;
    int notesTakenBack = 0;
};

bool write(const std::filesystem::path &path, const std::string &bytes)
{
    std::ofstream out(path, std::ios::binary);
    out << bytes;
    return out.good();
}

bool writeDiary(const std::filesystem::path &folder, const std::vector<Entry> &entries, Written &written)
{
    bool hasInstant = false;
    for (const Entry &entry : entries) {
        hasInstant |= entry.recorded.has_value();
        written.corrections += entry.replaces ? 1 : 0;
    }
    written.paperOnly += hasInstant ? 0 : 1;
    const std::map<std::string, FhirFile> files{{"summary", FhirFile::Summary}, {"plan", FhirFile::Plan}, {"visit", FhirFile::Visit}};
    for (const auto &[name, file] : files) {
        const FhirBundle bundle = writeFhir(entries, "6f1c2a54-0d3e-4b8f-9a67-1c2d3e4f5a6b", file);
        written.entries += bundle.entries;
        written.notesTakenBack += file == FhirFile::Summary ? bundle.notesLeftOut : 0;
        if (!write(folder / (std::to_string(written.diaries) + "-" + name + ".json"), bundle.json))
            return false;
    }
    ++written.diaries;
    return true;
}

} // namespace

int main(int argc, char **argv)
{
    if (argc != 4)
        return 2;
    const std::filesystem::path folder = argv[1];
    const int diaries = std::atoi(argv[2]);
    const int mostEntries = std::atoi(argv[3]);
    std::filesystem::create_directories(folder);
    Written written;
    const bool isWritten = rc::check("diaries are written as files", [&] {
        for (int i = 0; i < (diaries + 99) / 100; ++i) { // RapidCheck tries a property a hundred times
            std::map<std::string, std::string, std::less<>> files;
            for (auto &[name, bytes] : filesOf(*typedFolders()))
                files.emplace(name, bytes);
            const auto diary = readTableFiles(std::move(files));
            RC_ASSERT(diary.has_value());
            std::vector<Entry> entries = diary->entries;
            if (written.diaries % 4 == 0) { // some that came from paper alone
                for (Entry &entry : entries)
                    entry.recorded.reset();
            }
            if (written.diaries < diaries && written.entries < mostEntries)
                RC_ASSERT(writeDiary(folder, entries, written));
        }
    });
    std::printf("%d diaries, %d entries, %d from paper alone, %d corrections, %d notes taken back\n", written.diaries, written.entries,
        written.paperOnly, written.corrections, written.notesTakenBack);
    return isWritten && written.diaries == diaries && written.paperOnly > 0 && written.corrections > 0 && written.notesTakenBack > 0 ? 0
                                                                                                                                     : 1;
}
