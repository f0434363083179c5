// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Taking in 1 000 summaries of twelve weeks, each of somebody new, as the desk does it (the
/// reader, every check, the record folder, the store) against a loop that parses the same bytes
/// with simdjson and inserts the same rows into the same tables with the same pragmas, and nothing
/// else; each file by one and then by the other. It prints and judges nothing; the aim stands
/// beside the number.

#include "actions/reader_child.h"
#include "actions/take_in.h"
#include "base/file.h"
#include "store/folder.h"
#include "store/rows.h"

#include <simdjson.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <unistd.h>

#include <string>
#include <vector>

using namespace morrow;
namespace fs = std::filesystem;

namespace {

constexpr int kDays = 84;
constexpr int kSetsADay = 20;

double milliseconds(std::chrono::steady_clock::time_point began)
{
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - began).count();
}

[[noreturn]] void giveUp(const char *what)
{
    std::fprintf(stderr, "%s failed\n", what);
    std::exit(1);
}

/// The person \a number with a plan of two items, a check and twenty sets a day.
std::vector<Entry> diary(int number)
{
    static const CivilDay start = *CivilDay::from(2026, 3, 2);
    const std::string at = "-" + std::to_string(number);
    std::vector<Entry> all;
    all.push_back({"complaint" + at, Kind::Complaint, start, {}, Author::Clinic, {}, R"({"complaint":"heel","place":1})"});
    const auto item = [](const char *key) {
        return std::string(R"({"exercise":"raise","item":")") + key
            + R"(","stages":[{"reps":15,"rrule":"FREQ=DAILY","sets":5,"slots":"morning evening","stage":1}],"start":"2026-03-02"})";
    };
    all.push_back({"plan" + at, Kind::Plan, start, {}, Author::Clinic, {},
        R"({"complaint":"heel","items":[)" + item("left") + "," + item("right") + R"(],"number":1,"plan":"plan)" + at + "\"}"});
    IdSource ids([seed = std::uint64_t(number)]() mutable { return seed += 0x9e3779b97f4a7c15; });
    for (int day = 0; day < kDays; ++day) {
        const std::int64_t morning = (start + day).number() * std::int64_t{86'400'000} + 25'200'000;
        const auto add = [&](Kind kind, std::int64_t ms, std::string body) {
            all.push_back({ids.next(ms), kind, start + day, Moment{ms, 60}, Author::Patient, {}, std::move(body)});
        };
        add(Kind::Check, morning, R"({"complaint":"heel","pain":)" + std::to_string(day % 7) + "}");
        for (int set = 0; set < kSetsADay; ++set) {
            add(Kind::Set, morning + set * 60'000,
                std::string(R"({"how":"tick","item":")") + (set % 2 == 0 ? "left" : "right") + R"(","load_kg":2.5,"reps":15,"set":)"
                    + std::to_string(set % 10 / 2 + 1) + R"(,"slot":")" + (set < 10 ? "morning" : "evening") + "\"}");
        }
    }
    return all;
}

/// Parses, and inserts rows that are there already.
class Bare
{
public:
    explicit Bare(const fs::path &folder)
        : m_database(opened(folder))
        , m_insert(m_database.connection(), kInsertEntry)
    {
    }

    void take(const fs::path &file, int number, const std::vector<Entry> &entries, const std::vector<Digest> &digests)
    {
        const auto bytes = readFile(file, kMaxFhirBytes);
        simdjson::dom::element document;
        if (!bytes || m_parser.parse(*bytes).get(document) != simdjson::SUCCESS)
            giveUp("parsing");
        SQLite::Database &connection = m_database.connection();
        SQLite::Transaction transaction(connection, SQLite::TransactionBehavior::IMMEDIATE);
        const std::int64_t person = addPerson(connection, "person-" + std::to_string(number), m_hash);
        for (std::size_t i = 0; i < entries.size(); ++i)
            insertEntry(m_insert, person, entries[i], digests[i]);
        m_insert.reset();
        transaction.commit();
    }

private:
    static Database opened(const fs::path &folder)
    {
        fs::create_directories(folder);
        auto database = Database::openToWrite(storeFile(folder), {});
        if (!database)
            giveUp("opening the bare store");
        return *std::move(database);
    }

    Database m_database;
    SQLite::Statement m_insert;
    simdjson::dom::parser m_parser;
    Sha256 m_hash;
};

} // namespace

int main(int argc, char **argv)
{
    const int count = argc > 1 ? std::atoi(argv[1]) : 1000;
    // Next to the program, because a temporary folder may lie in memory, where syncing costs nothing.
    const fs::path folder = fs::path(argv[0]).parent_path() / ("bench-take-in-" + std::to_string(getpid()));
    fs::create_directories(folder);
    auto desk = OpenDesk::open(folder / "desk");
    if (!desk)
        giveUp("opening the desk");
    ReaderChild reader(MORROW_READER);
    Bare bare(folder / "bare");
    Sha256 hash;
    const fs::path file = folder / "summary.json";
    double ours = 0;
    double reading = 0;
    double floor = 0;
    std::size_t size = 0;
    std::size_t rows = 0;
    for (int number = 0; number < count; ++number) {
        const std::string ref = "person-" + std::to_string(number);
        const auto entries = diary(number);
        std::vector<Digest> digests;
        for (const Entry &entry : entries)
            digests.push_back(digestOf(entry, hash));
        const std::string json = writeFhir(entries, ref, FhirFile::Summary).json;
        if (!writeFile(file, json))
            giveUp("writing a summary");
        size += json.size();
        rows += entries.size();

        auto began = std::chrono::steady_clock::now();
        const auto read = reader.read(file);
        reading += milliseconds(began);
        const auto bytes = readFile(file, kMaxFhirBytes);
        if (!read || !read->diary || !bytes || read->sha256 != RecordFolder::nameOf(*bytes))
            giveUp("reading a summary");
        const auto taken = takeIn(*desk, *read->diary, *bytes, {.isNew = true, .as = {}}, Moment{1'780'000'000'000, 0});
        ours += milliseconds(began);
        if (!taken || taken->added != static_cast<int>(entries.size()))
            giveUp("taking in a summary");

        began = std::chrono::steady_clock::now();
        bare.take(file, number, entries, digests);
        floor += milliseconds(began);
    }
    std::printf("%d summaries of %.2f MB and %zu entries: %.1f ms each (%.1f ms of it in the reader), the bare loop %.1f ms; "
                "%.2f of its rate (aim 0.6)\n",
        count, static_cast<double>(size) / count / 1e6, rows / static_cast<std::size_t>(count), ours / count, reading / count,
        floor / count, floor / ours);
    fs::remove_all(folder);
}
