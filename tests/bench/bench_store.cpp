// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// The store against its floors, in one run: a tap until it is durable against a bare
/// insert into the same table with the same pragmas, on stores of 0 to 100 000 entries;
/// reading and checking five years against a plain SELECT of the same rows with their
/// bodies parsed. It prints and judges nothing; the aims stand beside the numbers.

#include "base/ids.h"
#include "model/body.h"
#include "store/diary_store.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <unistd.h>

#include <string>
#include <vector>

using namespace morrow;
namespace fs = std::filesystem;

namespace {

constexpr int kTaps = 400;
constexpr int kReads = 7;

double milliseconds(std::chrono::steady_clock::time_point began)
{
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
}

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

[[noreturn]] void giveUp(const char *what)
{
    std::fprintf(stderr, "%s failed\n", what);
    std::exit(1);
}

/// The set number \a i of a diary with 23 entries a day.
Entry entry(int i, IdSource &ids)
{
    static const CivilDay start = *CivilDay::from(2020, 1, 1);
    const std::int64_t ms = 1'577'836'800'000 + std::int64_t{i} * 3'600'000 / 23 * 24;
    return {ids.next(ms), Kind::Set, start + i / 23, Moment{ms, 60}, Author::Patient, {},
        "{\"how\":\"tick\",\"item\":\"heel-raise\",\"load_kg\":5,\"reps\":12,\"set\":" + std::to_string(i % 23 + 1)
            + ",\"slot\":\"evening\"}"};
}

std::vector<Entry> entries(int count)
{
    IdSource ids;
    std::vector<Entry> all;
    for (int i = 0; i < count; ++i)
        all.push_back(entry(i, ids));
    return all;
}

DiaryStore filled(const fs::path &folder, const std::vector<Entry> &all)
{
    fs::remove_all(folder);
    auto store = DiaryStore::open(folder, {});
    if (!store || !store->add("bench", all) || !store->checkpoint())
        giveUp("filling a store");
    return *std::move(store);
}

/// One row in, durable, with neither digest nor sum nor a look at what is there.
class BareInsert
{
public:
    explicit BareInsert(Database database)
        : m_database(std::move(database))
        , m_insert(m_database.connection(), kInsertEntry)
    {
    }

    void add(const Entry &one)
    {
        SQLite::Transaction transaction(m_database.connection(), SQLite::TransactionBehavior::IMMEDIATE);
        insertEntry(m_insert, 1, one, Digest{});
        m_insert.reset();
        transaction.commit();
    }

private:
    Database m_database;
    SQLite::Statement m_insert;
};

void taps(const fs::path &folder, int before, double &first)
{
    IdSource ids;
    const auto there = entries(before);
    {
        const DiaryStore bare = filled(folder / "bare", there);
    }
    auto opened = Database::openToWrite(storeFile(folder / "bare"), {});
    if (!opened)
        giveUp("opening the bare store");
    BareInsert bare(*std::move(opened));
    DiaryStore store = filled(folder / "ours", there);

    std::vector<double> tap;
    std::vector<double> floor;
    std::vector<double> ratio;
    for (int i = 0; i < kTaps; ++i) {
        const Entry one = entry(before + i, ids);
        auto began = std::chrono::steady_clock::now();
        if (!store.add("bench", {&one, 1}))
            giveUp("a tap");
        tap.push_back(milliseconds(began));
        began = std::chrono::steady_clock::now();
        bare.add(one);
        floor.push_back(milliseconds(began));
        ratio.push_back(tap.back() / floor.back());
    }
    if (before == 0)
        first = median(tap);
    std::printf("%8d %10.3f %10.3f %8.2f %8.2f\n", before, median(tap), median(floor), median(ratio), median(tap) / first);
}

void reading(const fs::path &folder)
{
    const auto all = entries(42'000);
    DiaryStore store = filled(folder / "read", all);
    std::vector<double> ours;
    std::vector<double> plain;
    std::vector<double> ratio;
    for (int i = 0; i <= kReads; ++i) {
        auto began = std::chrono::steady_clock::now();
        const auto read = store.read("bench");
        const double checked = milliseconds(began);
        if (!read || !read->isWhole() || read->entries.size() != all.size())
            giveUp("reading");

        began = std::chrono::steady_clock::now();
        BodyReader bodies;
        std::size_t fields = 0;
        SQLite::Statement rows(store.database()->connection(),
            "SELECT id, kind, day, recorded, utc_offset, author, replaces, body, digest FROM entry WHERE person = 1");
        while (rows.executeStep()) {
            const SQLite::Column body = rows.getColumn(7);
            fields += bodies.read({body.getText(), static_cast<std::size_t>(body.getBytes())})->fields().size();
        }
        const double selected = milliseconds(began);
        if (fields == 0)
            giveUp("selecting");
        if (i == 0)
            continue; // warming up
        ours.push_back(checked);
        plain.push_back(selected);
        ratio.push_back(checked / selected);
    }
    std::printf("\nreading and checking 42 000 entries: %.1f ms; plain SELECT with bodies parsed: %.1f ms; ratio %.2f (aim 2)\n",
        median(ours), median(plain), median(ratio));
}

} // namespace

int main(int argc, char **argv)
{
    // Next to the program by default, because a temporary folder may lie in memory, where syncing costs nothing.
    const fs::path folder = fs::path(argc > 1 ? argv[1] : argv[0]).parent_path() / ("bench-store-" + std::to_string(getpid()));
    fs::create_directories(folder);
    double first = 0;
    std::printf("%8s %10s %10s %8s %8s\n", "entries", "tap ms", "bare ms", "ratio", "growth");
    for (const int before : {0, 1'000, 10'000, 100'000})
        taps(folder, before, first);
    std::printf("Medians of %d taps, each beside a bare insert. Aim: ratio 1.5, growth 1.\n", kTaps);
    reading(folder);
    fs::remove_all(folder);
}
