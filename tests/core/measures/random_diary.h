// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Diaries made up by RapidCheck: one complaint, two items, all that measures read.

#include "support/diary_builder.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow::test {

/// What happens, in days counted from the first start.
struct RandomDiary
{
    struct Work
    {
        int day;
        std::string slot;
        std::string item;
        int number;
        int reps;
    };
    struct Span
    {
        int first;
        int last;
        std::optional<int> recorded; ///< absent: on paper
        std::optional<int> extendedTo; ///< by a later version, recorded on the day of `extendedOn`
        int extendedOn;
    };
    struct Answer
    {
        int day;
        int pain;
        std::optional<int> recorded;
    };
    struct Change
    {
        int day;
        std::string item;
        int stage;
    };
    struct Result
    {
        int day;
        int value;
    };
    struct Rated
    {
        int day;
        std::string slot;
        std::optional<int> during;
        std::optional<int> after;
    };
    struct Sign
    {
        int day;
        std::optional<int> cleared; ///< how many days later
    };

    std::vector<Item> items; ///< on the days from test::kRandomStart on
    int restDays;
    int length; ///< how many days are measured
    std::vector<Work> work;
    std::vector<Span> pauses;
    std::vector<Answer> answers;
    std::vector<Change> changes;
    std::vector<int> visits;
    std::vector<int> skips;
    std::vector<Result> results;
    std::vector<Rated> sessions;
    std::vector<int> easier;
    std::vector<Sign> signs;
    std::optional<int> putAside;

    /// Told with every day \a shift days later.
    [[nodiscard]] DiaryBuilder told(int shift = 0) const;
};

inline constexpr const char *kRandomStart = "2026-03-02";

/// To be called inside a property.
[[nodiscard]] RandomDiary randomDiary();

} // namespace morrow::test
