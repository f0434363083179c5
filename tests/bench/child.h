// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Whole commands as benchmarks see them: how long, and how much memory at most.

#include <string>
#include <vector>

namespace morrow::bench {

struct Cost
{
    double milliseconds;
    long peakKiB;
};

/// Runs a command with its output thrown away; ends the program if it fails.
[[nodiscard]] Cost run(const std::vector<std::string> &command);

[[nodiscard]] double median(std::vector<double> values);

} // namespace morrow::bench
