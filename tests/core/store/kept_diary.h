// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Entries, stores and folders for tests of what is kept on disk.
///
/// The facts are told by number, so that a program that was killed and the one that looks
/// for what it left speak of the same ones.

#include "store/diary_store.h"

#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace morrow::test {

inline constexpr const char *kRef = "1f3c9a52-6d0e-4b7a-9f21-0c5d8e7b6a40";
inline constexpr const char *kOtherRef = "8a7b6c5d-4e3f-4a2b-8c1d-9e8f7a6b5c4d";
/// 2026-11-25T18:03:51Z, told at an offset of one hour.
inline constexpr Moment kNow{1795629831000, 60};

/// The fact \a number: a morning check, a set, an outcome from paper, ... in turn, each different.
[[nodiscard]] Entry fact(int number);
/// The facts \a first to \a first + \a count - 1.
[[nodiscard]] std::vector<Entry> facts(int first, int count);
/// A note that says \a text.
[[nodiscard]] Entry note(int number, const std::string &text);
/// The same fact told otherwise by a later entry.
[[nodiscard]] Entry correctionOf(const Entry &entry, int number, const std::string &body = {});

/// A folder of its own, in memory where the machine has such, gone at the end.
class ScratchFolder
{
public:
    ScratchFolder();
    ~ScratchFolder();
    ScratchFolder(const ScratchFolder &) = delete;
    ScratchFolder &operator=(const ScratchFolder &) = delete;

    [[nodiscard]] const std::filesystem::path &path() const noexcept { return m_path; }
    friend std::filesystem::path operator/(const ScratchFolder &folder, std::string_view name) { return folder.m_path / name; }

private:
    std::filesystem::path m_path;
};

/// The store in \a folder; ends the program if it cannot be opened, since that is a slip of the test.
[[nodiscard]] DiaryStore opened(const std::filesystem::path &folder);
/// Puts \a entries of \a ref into the store in \a folder and closes it; ends the program if that is refused.
void keep(const std::filesystem::path &folder, const std::vector<Entry> &entries, const char *ref = kRef);
/// A person's entries in the store in \a folder, opened to read; ends the program if it cannot be.
[[nodiscard]] PersonReading kept(const std::filesystem::path &folder, const char *ref = kRef);

/// How a call ended: "done", or the name of its error.
[[nodiscard]] const char *nameOf(StoreError error) noexcept;
template<class T>
[[nodiscard]] const char *outcome(const Result<T, StoreError> &result) noexcept
{
    return result ? "done" : nameOf(result.error());
}

/// Every file below \a folder with its bytes.
[[nodiscard]] std::map<std::string, std::string> bytesBelow(const std::filesystem::path &folder);
/// The names in \a folder, one line.
[[nodiscard]] std::string namesIn(const std::filesystem::path &folder);

/// Runs \a sql on the SQLite file at \a path with nothing of ours in the way: no guards, no pragmas.
void tamper(const std::filesystem::path &path, const std::string &sql);

/// Every row of every table of the store, as text, to tell whether anything changed.
[[nodiscard]] std::string dump(SQLite::Database &connection);

/// By id, as a reading is.
[[nodiscard]] std::vector<Entry> byId(std::vector<Entry> entries);

[[nodiscard]] Sum sumOf(const std::vector<Entry> &entries);

} // namespace morrow::test
