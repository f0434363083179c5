// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// A program beside the test that works on the same store, or dies while it does.
///
///     store_program open|read|restore FOLDER         says how that ended
///     store_program record FOLDER FIRST COUNT        records facts one by one, says each id
///                                                    once it is saved, then dies by SIGKILL
///     store_program live FOLDER FIRST               records facts from FIRST on for ever, and does
///                                                    what a program does beside: quiet times, backups, restarts
///     store_program late FOLDER FIRST               says each id before it is saved, and saves it only
///                                                    when it tells the next: one that lies
///     store_program golden FOLDER                    writes a golden store, see golden.h

#include "core/store/golden.h"
#include "store/backup.h"
#include "store/restore.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <string>

using namespace morrow;
using namespace morrow::test;

namespace {

int record(const std::string &folder, int first, int count)
{
    DiaryStore store = opened(folder);
    for (int number = first; number < first + count; ++number) {
        const Entry entry = fact(number);
        if (!store.add(kRef, {&entry, 1}))
            return 1;
        std::printf("%s\n", entry.id.c_str());
        std::fflush(stdout);
    }
    return std::raise(SIGKILL);
}

[[noreturn]] void live(const std::string &folder, int first)
{
    std::optional<DiaryStore> store(opened(folder));
    for (int number = first;; ++number) {
        const Entry entry = fact(number);
        if (!store->add(kRef, {&entry, 1}))
            std::_Exit(1);
        std::printf("%s\n", entry.id.c_str());
        std::fflush(stdout);
        if (number % 7 == 3 && !store->checkpoint())
            std::_Exit(1);
        if (number % 23 == 11) {
            if (!makeBackup(store->database()->connection(), folder, {kNow.utcMs + number * 1000LL, 60}))
                std::_Exit(1);
            rotateBackups(folder);
        }
        if (number % 17 == 5) {
            store.reset();
            store.emplace(opened(folder));
        }
    }
}

[[noreturn]] void late(const std::string &folder, int first)
{
    DiaryStore store = opened(folder);
    for (int number = first;; ++number) {
        const Entry entry = fact(number);
        std::printf("%s\n", entry.id.c_str());
        std::fflush(stdout);
        const Entry last = fact(number - 1);
        if (number > first && !store.add(kRef, {&last, 1}))
            std::_Exit(1);
    }
}

} // namespace

int main(int argc, char **argv)
{
    const std::string verb = argc > 2 ? argv[1] : "";
    if (verb == "record" && argc == 5)
        return record(argv[2], std::atoi(argv[3]), std::atoi(argv[4]));
    if (verb == "live" && argc == 4)
        live(argv[2], std::atoi(argv[3]));
    if (verb == "late" && argc == 4)
        late(argv[2], std::atoi(argv[3]));
    if (verb == "open")
        std::puts(outcome(DiaryStore::open(argv[2], {})));
    else if (verb == "read")
        std::puts(outcome(DiaryStore::openToRead(argv[2], {})));
    else if (verb == "restore")
        std::puts(outcome(restore(argv[2], kNow)));
    else if (verb == "golden")
        writeGolden(argv[2]);
    else
        return 2;
    return 0;
}
