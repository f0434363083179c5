// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a program does to the folder of a store, played on real files, and what of it is there after a
/// power cut at any moment.

#include "faults/file_calls.h"

#include <functional>
#include <string>
#include <vector>

namespace morrow::test {

/// Does something to the store in a folder; true: it was acknowledged.
using Act = std::function<bool(const std::filesystem::path &)>;

struct Scene
{
    Image start;
    std::function<std::vector<Act>()> acts; ///< anew for each time it is played
    /// What is wrong with what a cut left after \a done acts were acknowledged; empty: nothing.
    std::function<std::string(const std::filesystem::path &, std::size_t done)> verdict;
    /// How many acts may have been acknowledged for the scene to be played again from its beginning.
    std::size_t untilAgain = 0;
};

/// The scenes of a store that are more than SQLite's own doing.
[[nodiscard]] Scene firstStart();
[[nodiscard]] Scene backingUp();
[[nodiscard]] Scene restoring();
[[nodiscard]] Scene erasingANote();
[[nodiscard]] Scene erasingEverything();
[[nodiscard]] Scene steppingUp();

struct Cuts
{
    int states = 0;
    int bad = 0;
    int rounds = 0; ///< how often every moment was gone through
    std::string example{}; ///< the first bad one

    void add(const Cuts &other);
    void print(const std::string &what) const;
};

/// Plays \a scene from \a start on, then goes through every moment again and again, until \a count
/// different states were seen or there are no more. \a ignores tells what the machine takes for done
/// without doing it; \a good hears of each state that was good, and says whether to go on.
[[nodiscard]] Cuts cutEverywhere(const Scene &scene, const Image &start, int count, std::uint64_t seed,
    const std::function<bool(const Operation &)> &ignores = {}, const std::function<bool(const Image &left, std::size_t done)> &good = {});

} // namespace morrow::test
