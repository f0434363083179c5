// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A disk in memory that remembers everything that was done to it, and what of it could be
/// left after the power went at any moment.
///
/// A write counts from the next sync of its file on; making, renaming or removing a file or folder
/// counts from the next sync of the folder that it lies in on. Until then each of them may have reached the disk or not, a write
/// also in part, sector by sector, and in any order.

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace morrow::test {

/// What lies on a disk: name to bytes. A folder ends in a slash, and so do the names of what lies in it begin.
using Image = std::map<std::string, std::string>;

struct Operation
{
    enum class Kind {
        Create,
        MakeFolder,
        Rename, ///< within its folder
        Write,
        Resize,
        Remove,
        Sync, ///< of one file
        SyncFolder, ///< `file` says which
        Forget, ///< a sync failed and the machine will not try those writes again
    };

    Kind kind;
    int file; ///< told apart by number, since a name may be given anew; 0: the outermost folder
    std::string name{};
    std::size_t offset = 0; ///< of a write; the size of a resize
    std::string bytes{};
    int folder = 0; ///< in which the name lies
    std::string to{}; ///< the new name
};

/// A disk as the program sees it, with the log of what the program did.
class Disk
{
public:
    struct File
    {
        int number;
        std::string bytes;
    };

    Disk() = default;
    explicit Disk(const Image &image);

    [[nodiscard]] std::shared_ptr<File> find(const std::string &name) const;
    std::shared_ptr<File> create(const std::string &name);
    void remove(const std::string &name);
    void write(File &file, std::size_t offset, std::string bytes);
    void resize(File &file, std::size_t size);
    void sync(const File &file);
    void forget(const File &file);
    void syncFolder();

    [[nodiscard]] const std::vector<Operation> &log() const noexcept { return m_log; }
    /// What a program that was killed would find: everything that was written.
    [[nodiscard]] Image image() const;

private:
    std::map<std::string, std::shared_ptr<File>> m_files;
    std::vector<Operation> m_log;
    int m_last = 0;
};

/// Follows a log and tells what may be left of it.
class PowerCut
{
public:
    using Random = std::mt19937_64;

    explicit PowerCut(const Image &start);

    /// The program did \a operation before the power went.
    void follow(const Operation &operation);
    /// Whether everything that was done is safe, so that there is one outcome only.
    [[nodiscard]] bool isCertain() const noexcept { return m_writes.empty() && m_names.empty(); }
    /// One of the things that may be left; \a random chooses.
    [[nodiscard]] Image outcome(Random &random) const;
    /// What is left if nothing is that was not synced.
    [[nodiscard]] Image leastOutcome() const;
    /// What is left if everything is that was done: as if only the program had been killed.
    [[nodiscard]] Image mostOutcome() const;

private:
    enum class Fate {
        Kept,
        Dropped,
        Torn
    };

    /// What a folder, by number, calls a file or folder.
    using Name = std::pair<int, std::string>;

    static void apply(const Operation &operation, std::string &bytes, Fate fate, Random *random);
    static void rename(const Operation &operation, std::map<Name, int> &names);
    [[nodiscard]] Image outcome(const std::vector<Fate> &names, const std::vector<Fate> &writes, Random *random) const;

    std::map<int, std::string> m_bytes; ///< what is safe of each file
    std::map<Name, int> m_safeNames;
    std::set<int> m_folders;
    std::vector<Operation> m_writes; ///< not safe yet
    std::vector<Operation> m_names; ///< not safe yet
};

} // namespace morrow::test
