// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/store/kept_diary.h"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <unistd.h>

namespace morrow::test {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void slip(const std::string &what)
{
    std::fprintf(stderr, "a test cannot go on: %s\n", what.c_str());
    std::_Exit(3); // QtTest would go round and round over an abort
}

std::string numbered(const char *prefix, int number)
{
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%s%06d", prefix, number);
    return text.data();
}

CivilDay dayOf(int number)
{
    return *CivilDay::from(2026, 3, 2) + number / 4;
}

/// An instant in the evening of the fact's day, later for a greater number.
Moment evening(int number)
{
    return {dayOf(number).number() * 86'400'000LL + 64'800'000 + (number % 4) * 60'000LL + number % 1000, 120};
}

} // namespace

Entry fact(int number)
{
    const std::string n = std::to_string(number);
    Entry entry{.id = numbered("fact-", number),
        .kind = Kind::Check,
        .day = dayOf(number),
        .recorded = evening(number),
        .author = Author::Patient,
        .replaces = {},
        .body = {}};
    switch (number % 4) {
    case 0:
        entry.body = R"({"complaint":"heel","pain":)" + std::to_string(number % 11) + "}";
        break;
    case 1:
        entry.kind = Kind::Set;
        entry.body = R"({"hold_s":2.5,"item":"raise","reps":15,"set":)" + n + R"(,"slot":"evening"})";
        break;
    case 2:
        entry.kind = Kind::Outcome;
        entry.recorded.reset();
        entry.author = Author::Clinic;
        entry.body = R"({"kind":"test","name":"heel raises","side":"left","value":)" + n + "}";
        break;
    default:
        entry.kind = Kind::Note;
        entry.author = Author::Helper;
        entry.body = R"({"kind":"note","text":"Größe 42, dağ )" + n + R"("})";
        break;
    }
    return entry;
}

std::vector<Entry> facts(int first, int count)
{
    std::vector<Entry> all;
    for (int number = first; number < first + count; ++number)
        all.push_back(fact(number));
    return all;
}

Entry note(int number, const std::string &text)
{
    Entry entry = fact(number);
    entry.id = numbered("note-", number);
    entry.kind = Kind::Note;
    entry.author = Author::Patient;
    entry.body = R"({"kind":"note","text":")" + text + R"("})";
    return entry;
}

Entry correctionOf(const Entry &entry, int number, const std::string &body)
{
    Entry correction = entry;
    correction.id = numbered("correction-", number);
    correction.recorded = evening(number);
    correction.replaces = entry.id;
    if (!body.empty())
        correction.body = body;
    return correction;
}

ScratchFolder::ScratchFolder()
{
    std::error_code error;
    std::string name
        = (fs::is_directory("/dev/shm", error) ? std::string("/dev/shm") : fs::temp_directory_path().string()) + "/morrow-test-XXXXXX";
    if (!::mkdtemp(name.data()))
        slip("no folder can be made");
    m_path = name;
}

ScratchFolder::~ScratchFolder()
{
    std::error_code ignored;
    fs::remove_all(m_path, ignored);
}

DiaryStore opened(const fs::path &folder)
{
    auto store = DiaryStore::open(folder, {});
    if (!store)
        slip(std::string("the store cannot be opened: ") + nameOf(store.error()));
    return *std::move(store);
}

void keep(const fs::path &folder, const std::vector<Entry> &entries, const char *ref)
{
    DiaryStore store = opened(folder);
    if (auto added = store.add(ref, entries); !added)
        slip(std::string("the store takes no entries: ") + nameOf(added.error()));
}

PersonReading kept(const fs::path &folder, const char *ref)
{
    auto store = DiaryStore::openToRead(folder, {});
    if (!store)
        slip(std::string("the store cannot be opened to read: ") + nameOf(store.error()));
    auto reading = store->read(ref);
    if (!reading)
        slip(std::string("the store cannot be read: ") + nameOf(reading.error()));
    return *std::move(reading);
}

const char *nameOf(StoreError error) noexcept
{
    switch (error) {
    case StoreError::Missing:
        return "Missing";
    case StoreError::NotADiary:
        return "NotADiary";
    case StoreError::Newer:
        return "Newer";
    case StoreError::Busy:
        return "Busy";
    case StoreError::Full:
        return "Full";
    case StoreError::ReadOnly:
        return "ReadOnly";
    case StoreError::Io:
        return "Io";
    case StoreError::Damaged:
        return "Damaged";
    case StoreError::Refused:
        return "Refused";
    }
    return "no error of ours";
}

std::map<std::string, std::string> bytesBelow(const fs::path &folder)
{
    std::map<std::string, std::string> files;
    for (const auto &file : fs::recursive_directory_iterator(folder)) {
        if (!file.is_regular_file())
            continue;
        std::ifstream in(file.path(), std::ios::binary);
        files[fs::relative(file.path(), folder).string()] = std::string(std::istreambuf_iterator<char>(in), {});
    }
    return files;
}

std::string namesIn(const fs::path &folder)
{
    std::vector<std::string> names;
    for (const auto &file : fs::directory_iterator(folder))
        names.push_back(file.path().filename().string());
    std::sort(names.begin(), names.end());
    std::string line;
    for (const std::string &name : names)
        line += (line.empty() ? "" : " ") + name;
    return line;
}

void tamper(const fs::path &path, const std::string &sql)
{
    sqlite3 *connection = nullptr;
    char *message = nullptr;
    if (sqlite3_open_v2(path.c_str(), &connection, SQLITE_OPEN_READWRITE, nullptr) != SQLITE_OK
        || sqlite3_exec(connection, sql.c_str(), nullptr, nullptr, &message) != SQLITE_OK)
        slip("tampering failed: " + sql + ": " + (message ? message : ""));
    sqlite3_close(connection);
}

std::string dump(SQLite::Database &connection)
{
    std::string all;
    for (const char *table : {"meta", "person", "entry", "erased", "card", "nobody", "erasing"}) {
        all += std::string("-- ") + table + '\n';
        SQLite::Statement rows(connection, std::string("SELECT * FROM ") + table + " ORDER BY 1");
        while (rows.executeStep()) {
            for (int column = 0; column < rows.getColumnCount(); ++column) {
                const auto value = rows.getColumn(column);
                all += std::string(static_cast<const char *>(value.getBlob()), static_cast<std::size_t>(value.getBytes())) + '|';
            }
            all += '\n';
        }
    }
    return all;
}

std::vector<Entry> byId(std::vector<Entry> entries)
{
    std::sort(entries.begin(), entries.end(), [](const Entry &a, const Entry &b) { return a.id < b.id; });
    return entries;
}

Sum sumOf(const std::vector<Entry> &entries)
{
    Sha256 hash;
    Sum sum;
    for (const Entry &entry : entries)
        sum.add(digestOf(entry, hash));
    return sum;
}

} // namespace morrow::test
