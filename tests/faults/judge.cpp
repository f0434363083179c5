// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/judge.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace morrow::test {

namespace {

/// How many outcomes of one moment are looked at before the next.
constexpr int kTries = 8;

[[noreturn]] void slip(const char *what, StoreError error)
{
    std::fprintf(stderr, "a test cannot go on: %s: %s\n", what, nameOf(error));
    std::_Exit(3); // QtTest would go round and round over an abort
}

/// A long run is no hang: QtTest's own limit on a test is for those that wait for something.
[[maybe_unused]] const bool isUnlimited = ::setenv("QTEST_FUNCTION_TIMEOUT", "2147483647", 1) == 0;

bool isAsked(const char *variable)
{
    const char *const value = std::getenv(variable);
    return value && *value && *value != '0';
}

} // namespace

int amount(int quick, int usual, int full)
{
    return isAsked("MORROW_FULL") ? full : isAsked("MORROW_QUICK") ? quick : usual;
}

std::unique_ptr<Lived> live(DiskVfs &vfs, const std::vector<Step> &steps, Circumstances circumstances)
{
    auto lived = std::make_unique<Lived>(Lived{Disk(circumstances.start), std::move(circumstances), {}, {}, {}});
    const auto note = [&lived](const Told &told, std::size_t done) {
        lived->told.push_back(told);
        lived->held.push_back(told.fingerprint());
        lived->acknowledged.push_back(done);
    };
    Told told = lived->circumstances.told;
    note(told, 0);
    vfs.mount(&lived->disk);
    std::optional<DiaryStore> store;
    const auto open = [&] {
        store.reset();
        auto opened = openOnDisk(lived->circumstances.steps);
        if (!opened)
            slip("the store cannot be opened", opened.error());
        store.emplace(*std::move(opened));
        if (lived->circumstances.weakenedBy)
            store->database()->connection().exec(lived->circumstances.weakenedBy);
    };
    open();
    for (const Step &step : steps) {
        if (step.kind == Step::Kind::Reopen)
            open();
        else if (auto done = perform(step, store); !done)
            slip("a step failed", done.error());
        told.take(step);
        note(told, lived->disk.log().size());
    }
    return lived;
}

void Tally::add(const Tally &other)
{
    states += other.states;
    lost += other.lost;
    broken += other.broken;
    half += other.half;
    if (example.empty())
        example = other.example;
}

void Tally::print(const char *what) const
{
    std::printf("%s: %d states, %d lost, %d broken, %d half done\n", what, states, lost, broken, half);
    std::fflush(stdout);
}

Tally Judge::judge(int count, std::uint64_t seed, const Good &good)
{
    PowerCut::Random random(seed);
    Tally tally;
    const auto &log = m_lived.disk.log();
    for (int before = -1; tally.states < count && tally.states != before; ++tally.rounds) {
        before = tally.states;
        PowerCut cut(m_lived.circumstances.start);
        std::size_t step = 0;
        for (std::size_t done = 0; done <= log.size() && (tally.rounds == 0 || tally.states < count); ++done) {
            if (done > 0)
                cut.follow(log[done - 1]);
            while (step + 1 < m_lived.acknowledged.size() && m_lived.acknowledged[step + 1] <= done)
                ++step;
            // A small count is spread over all moments, not spent on the first.
            if (done < log.size() && random() % ((log.size() + 1) * kTries) >= static_cast<std::size_t>(count))
                continue;
            if (tally.rounds == 0)
                judgeOne(cut.leastOutcome(), step, tally, good);
            for (int i = 0; i < kTries && !cut.isCertain(); ++i)
                judgeOne(cut.outcome(random), step, tally, good);
        }
    }
    return tally;
}

void Judge::judgeOne(const Image &left, std::size_t step, Tally &tally, const Good &good)
{
    std::string key = std::to_string(step);
    for (const auto &[name, bytes] : left)
        key += name + bytes;
    if (!m_seen.insert(std::hash<std::string>()(key)).second)
        return;
    ++tally.states;
    const auto &held = m_lived.held;
    const std::string found = heldOn(m_vfs, left, m_lived.circumstances.steps);
    // The step that was being done may be there, as a whole.
    const bool isNext = step + 1 < held.size() && found == held[step + 1];
    if (found == held[step] || isNext) {
        if (good)
            good(left, step, isNext);
        return;
    }
    const auto earlier = held.begin() + static_cast<std::ptrdiff_t>(step);
    const bool isEarlier = std::find(held.begin(), earlier, found) != earlier;
    ++(found.starts_with("broken") ? tally.broken : isEarlier ? tally.lost : tally.half);
    if (tally.example.empty())
        tally.example = "after step " + std::to_string(step) + ": " + found;
}

} // namespace morrow::test
