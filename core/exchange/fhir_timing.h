// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The rhythm of a stage as FHIR's Timing.repeat says it.
///
/// Twice a day is frequency 2, period 1 d; every other day frequency 1, period 2 d; Monday
/// and Thursday frequency 2, period 1 wk, dayOfWeek mon thu; any three days of a week
/// frequency 3, period 1 wk. Slots are names and have no place in it.

#include "model/body.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow::fhir {

struct Repeat
{
    int frequency = 1; ///< times in a period
    int period = 1;
    std::string unit; ///< "d" or "wk"
    std::vector<std::string> days; ///< mon .. sun, in that order; none: any

    friend bool operator==(const Repeat &, const Repeat &) = default;
};

/// How \a stage (a body with rrule and slots, or per_week) repeats; nullopt if it says neither.
[[nodiscard]] std::optional<Repeat> repeatOf(const Body &stage);

/// Adds to \a stage, which has its slots already, the rrule or per_week that \a repeat means.
/// False if it means none of ours.
[[nodiscard]] bool readRepeat(const Repeat &repeat, Body &stage);

/// Whether reading repeatOf(stage) gives back what \a stage says of its rhythm.
[[nodiscard]] bool isToldByRepeat(const Body &stage);

} // namespace morrow::fhir
