// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/scene.h"

#include "core/store/kept_diary.h"

#include <cstdio>
#include <unordered_set>

namespace morrow::test {

namespace {

namespace fs = std::filesystem;

/// How many outcomes of one moment are looked at before the next.
constexpr int kTries = 4;

struct Played
{
    std::vector<Operation> log;
    std::vector<std::size_t> acknowledged; ///< by operations done
    std::string failed{}; ///< an act was not, or the harness did not hear everything
};

Image withoutIndexes(Image image)
{
    std::erase_if(image, [](const auto &file) { return file.first.ends_with("-shm"); });
    return image;
}

Played play(const Scene &scene, const Image &start, const fs::path &folder)
{
    lay(start, folder);
    FileCalls calls(folder);
    Played played;
    auto acts = scene.acts();
    for (const Act &act : acts) {
        if (!act(folder)) {
            played.failed = "act " + std::to_string(played.acknowledged.size() + 1) + " failed";
            break;
        }
        played.acknowledged.push_back(calls.log().size());
    }
    acts.clear(); // closes what they have open
    played.log = calls.log();
    PowerCut all(start);
    for (const Operation &operation : played.log)
        all.follow(operation);
    if (played.failed.empty() && withoutIndexes(all.mostOutcome()) != withoutIndexes(imageOf(folder)))
        played.failed = "not every call was heard";
    return played;
}

std::size_t fingerprint(const Image &image, std::size_t done)
{
    std::size_t all = done;
    for (const auto &[name, bytes] : image) {
        for (const std::string &part : {std::cref(name), std::cref(bytes)})
            all = all * 1'000'003 + std::hash<std::string>()(part);
    }
    return all;
}

} // namespace

void Cuts::add(const Cuts &other)
{
    states += other.states;
    bad += other.bad;
    if (example.empty())
        example = other.example;
}

void Cuts::print(const std::string &what) const
{
    std::printf("%s: %d states, %d bad\n", what.c_str(), states, bad);
    std::fflush(stdout);
}

Cuts cutEverywhere(const Scene &scene, const Image &start, int count, std::uint64_t seed,
    const std::function<bool(const Operation &)> &ignores, const std::function<bool(const Image &left, std::size_t done)> &good)
{
    const ScratchFolder scratch;
    const fs::path folder = fs::canonical(scratch.path());
    const Played played = play(scene, start, folder / "played");
    Cuts cuts;
    if (!played.failed.empty())
        return {.states = 0, .bad = 1, .rounds = 0, .example = played.failed};

    PowerCut::Random random(seed);
    std::unordered_set<std::size_t> seen;
    bool isEnough = false;
    const auto look = [&](const Image &left, std::size_t done, std::size_t at) {
        if (isEnough || !seen.insert(fingerprint(left, done)).second)
            return;
        ++cuts.states;
        lay(left, folder / "left");
        const std::string wrong = scene.verdict(folder / "left", done);
        if (wrong.empty()) {
            isEnough = isEnough || (good && !good(left, done));
            return;
        }
        ++cuts.bad;
        if (cuts.example.empty()) {
            cuts.example = "cut at call " + std::to_string(at) + " with " + std::to_string(done) + " acknowledged: " + wrong + "; left:";
            for (const auto &[name, bytes] : left)
                cuts.example += ' ' + name + '(' + std::to_string(bytes.size()) + ')';
        }
    };
    // A small count is spread over all moments, not spent on the first.
    const std::size_t moments = played.log.size() + 1;
    const auto isSkipped = [&](std::size_t at) { return at + 1 < moments && random() % (moments * 4) >= static_cast<std::size_t>(count); };
    for (int before = -1; !isEnough && cuts.states < count && cuts.states != before; ++cuts.rounds) {
        before = cuts.states;
        PowerCut cut(start);
        std::size_t done = 0;
        for (std::size_t at = 0; at < moments && (cuts.rounds == 0 || cuts.states < count); ++at) {
            if (at > 0 && !(ignores && ignores(played.log[at - 1])))
                cut.follow(played.log[at - 1]);
            while (done < played.acknowledged.size() && played.acknowledged[done] <= at)
                ++done;
            if (isSkipped(at))
                continue;
            if (cuts.rounds == 0) {
                look(cut.mostOutcome(), done, at);
                look(cut.leastOutcome(), done, at);
            }
            for (int i = 0; i < kTries && !cut.isCertain(); ++i)
                look(cut.outcome(random), done, at);
        }
    }
    return cuts;
}

} // namespace morrow::test
