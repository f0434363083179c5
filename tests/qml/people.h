// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// People for tests and pictures of both programs: from the demo diaries, and made up.

#include "base/clock.h"
#include "model/entry.h"

#include <vector>

namespace morrow::test {

/// Ends the tests: what they need is not there.
[[noreturn]] void slip(const char *what);

/// The last day of the paper diary.
inline constexpr Moment kDeskNow{1'777'273'200'000, 120}; // 2026-04-27T09:00+02:00

class StandingClock final : public Clock
{
public:
    explicit StandingClock(const Moment &now = kDeskNow)
        : m_now(now)
    {
    }
    [[nodiscard]] Moment now() const override { return m_now; }

private:
    Moment m_now;
};

/// A diary of demo-data.
[[nodiscard]] std::vector<Entry> demoDiary(const char *folder);
/// The paper diary of demo-data up to \a lastDay.
[[nodiscard]] std::vector<Entry> bakersDiary(CivilDay lastDay = diaryDay(kDeskNow, std::chrono::minutes(0)));
/// Three complaints, the first with 12 exercises, the last without a plan.
[[nodiscard]] std::vector<Entry> diaryOfManyThings();
/// One exercise on any three days of a week, done on Monday and Wednesday of the week from 20 April 2026.
[[nodiscard]] std::vector<Entry> diaryOfAnyThreeDays();
/// One exercise, left and right, with a name and a key point of more than 40 characters.
[[nodiscard]] std::vector<Entry> diaryOfLongNames();

} // namespace morrow::test
