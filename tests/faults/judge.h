// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Lives a diary's life on a disk, takes the power away at every moment of it, and judges what
/// is there when the store is opened again.

#include "faults/life.h"

#include <functional>
#include <memory>
#include <string>
#include <unordered_set>
#include <vector>

namespace morrow::test {

/// How much a harness does: MORROW_FULL=1 in the environment asks for \a full, MORROW_QUICK=1
/// for \a quick.
[[nodiscard]] int amount(int quick, int usual, int full);

/// How a life is lived.
struct Circumstances
{
    Image start{}; ///< what the disk holds when the program is started
    Told told{}; ///< and what of it was told
    std::span<const SchemaStep> steps = schemaSteps();
    const char *weakenedBy = nullptr; ///< a pragma that makes the connection lose, for the harness to see
};

/// A life that was lived, and after which operation each of its steps was acknowledged.
struct Lived
{
    Disk disk;
    Circumstances circumstances;
    std::vector<Told> told; ///< before the first step, after the first, ...
    std::vector<std::string> held; ///< their fingerprints
    std::vector<std::size_t> acknowledged; ///< by operations done; the first is 0
};

/// Opens the store, does \a steps and closes it; ends the program if any of it fails.
[[nodiscard]] std::unique_ptr<Lived> live(DiskVfs &vfs, const std::vector<Step> &steps, Circumstances circumstances);

/// What was seen after so many power cuts.
struct Tally
{
    int states = 0;
    int lost = 0; ///< something acknowledged is not there
    int broken = 0; ///< cannot be opened, or is not whole
    int half = 0; ///< whole, but what no step ever made
    int rounds = 0; ///< how often every moment was gone through
    std::string example{}; ///< the first bad one

    void add(const Tally &other);
    void print(const char *what) const;
};

class Judge
{
public:
    /// \a step: how many steps were acknowledged before the cut; \a isNext: the one after is there, too.
    using Good = std::function<void(const Image &left, std::size_t step, bool isNext)>;

    Judge(DiskVfs &vfs, const Lived &lived)
        : m_vfs(vfs)
        , m_lived(lived)
    {
    }

    /// Goes through every moment again and again, until \a count different states were seen or
    /// there are no more; \a good hears of each one that was good.
    [[nodiscard]] Tally judge(int count, std::uint64_t seed, const Good &good = {});

private:
    void judgeOne(const Image &left, std::size_t step, Tally &tally, const Good &good);

    DiskVfs &m_vfs;
    const Lived &m_lived;
    std::unordered_set<std::size_t> m_seen;
};

} // namespace morrow::test
