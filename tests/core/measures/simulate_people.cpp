// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Prints how often each decision comes up for people of an invented noise model
/// (simulated_people.h), and how often each condition does not hold, as the tables of
/// DEVELOPERS.md. The same numbers each time.

#include "core/measures/simulated_people.h"

#include <cstdio>
#include <span>
#include <string>
#include <vector>

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr int kPeople = 60;

struct Simulated
{
    std::string name;
    SimulatedDecisions found;
};

void printRow(const char *name, std::span<const int> counts)
{
    std::printf("| %s |", name);
    for (const int count : counts)
        std::printf(" %d |", count);
    std::printf("\n");
}

} // namespace

int main()
{
    std::vector<Simulated> all;
    for (const Course &course : {Course{"improve", 6.5, 2.5}, {"steady", 3, 3}, {"worsen", 1.5, 5}})
        all.push_back({course.name, simulate(course, kPeople, 20260302)});
    const auto print = [&all](const char *heads, auto counts) {
        std::printf("| %s |\n|---|", heads);
        for (std::size_t i = 0; i < counts(all.front().found).size(); ++i)
            std::printf("---|");
        std::printf("\n");
        for (const Simulated &one : all)
            printRow(one.name.c_str(), counts(one.found));
    };
    print("reviews | contact | step-down | step-up | hold", [](const SimulatedDecisions &found) { return found.reviews; });
    print("days | contact | step-down | step-up | hold", [](const SimulatedDecisions &found) { return found.days; });
    print("people who had it | contact | step-down | step-up | hold", [](const SimulatedDecisions &found) { return found.people; });
    print("stage at the end | 1 | 2 | 3", [](const SimulatedDecisions &found) { return found.lastStage; });
    print("did not hold | days | sessions | adherence | complete | during | after | settled | weekly | level | stage",
        [](const SimulatedDecisions &found) { return found.unmet; });
}
