// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Prints how often each decision comes up for people of an invented noise model
/// (simulated_people.h). The same numbers each time.

#include "core/measures/simulated_people.h"

#include <cstdio>

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr int kPeople = 60;
constexpr std::array kDecisions{Decision::Contact, Decision::StepDown, Decision::StepUp, Decision::Hold};

int of(const std::array<int, 4> &counts, Decision decision)
{
    return counts.at(static_cast<std::size_t>(decision));
}

} // namespace

int main()
{
    std::printf("%-22s %-10s %9s %9s %9s %9s   %s\n", "60 people of 12 weeks", "counted", "contact", "step-down", "step-up", "hold",
        "in stage 1, 2, 3 at the end");
    for (const Course &course : {Course{"improve, 6.5 to 2.5", 6.5, 2.5}, {"steady at 3", 3, 3}, {"worsen, 1.5 to 5", 1.5, 5}}) {
        const SimulatedDecisions found = simulate(course, kPeople, 20260302);
        const auto row = [](const char *name, const char *counted, const std::array<int, 4> &counts) {
            std::printf("%-22s %-10s", name, counted);
            for (const Decision decision : kDecisions)
                std::printf(" %9d", of(counts, decision));
        };
        row(course.name.c_str(), "days", found.days);
        std::printf("\n");
        row("", "reviews", found.reviews);
        std::printf("\n");
        row("", "people", found.people);
        std::printf("   %d, %d, %d\n", found.lastStage[0], found.lastStage[1], found.lastStage[2]);
    }
}
