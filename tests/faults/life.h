// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A diary's life told as steps, what a store should hold after each, and what it does hold.

#include "core/store/kept_diary.h"
#include "faults/disk_vfs.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace morrow::test {

struct Step
{
    enum class Kind {
        Add,
        Erase, ///< the chain of entries[0]
        Checkpoint,
        Reopen, ///< the program is closed and started again
    };

    Kind kind;
    const char *ref = kRef;
    std::vector<Entry> entries{};
};

/// Steps of every sort: single taps, whole files, two persons, notes over several pages,
/// corrections, erasing, quiet times, restarts; as many as \a length says, numbered facts from \a first on.
[[nodiscard]] std::vector<Step> lifeOf(int length, int first = 0);

/// What was told and acknowledged, kept beside the store and without its help.
class Told
{
public:
    void take(const Step &step);
    /// Each person's ref, count, sum and erased ids; equal exactly if the diaries are.
    [[nodiscard]] std::string fingerprint() const;

private:
    struct Person
    {
        std::map<std::string, Entry> entries;
        std::set<Digest> erased;
    };
    std::map<std::string, Person> m_persons;
};

/// The name that stands for the disk in memory.
inline constexpr const char *kVfs = "disk";

/// What a store that was opened holds, checked through and through: every digest, count and
/// sum, and the database's own integrity. As a fingerprint, or "broken: ..." if anything is wrong.
[[nodiscard]] std::string heldBy(DiaryStore &store);

/// The store on the disk that is mounted as \a vfs.
[[nodiscard]] Result<DiaryStore, StoreError> openOnDisk(std::span<const SchemaStep> steps = schemaSteps(), const char *vfs = kVfs);

/// What the store on the disk \a image holds when it is opened there, as heldBy says it.
[[nodiscard]] std::string heldOn(
    DiskVfs &vfs, const Image &image, std::span<const SchemaStep> steps = schemaSteps(), const char *name = kVfs);

/// Does \a step; the error if that failed. Reopening replaces \a store, which is empty after it failed.
[[nodiscard]] Result<void, StoreError> perform(const Step &step, std::optional<DiaryStore> &store);

} // namespace morrow::test
