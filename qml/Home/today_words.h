// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The words of the day's page: questions, limits, and why nothing is asked.

#include <QCoreApplication> // Qt first, for moc
#include <QString>

#include "measures/today.h"

#include <string_view>
#include <vector>

namespace morrow {

inline constexpr int kLastAnswers = 3;

/// The last answers before a day, and the entries that they stand in.
struct LastAnswers
{
    QString words; ///< "Your last answers: 2, 3, 2."; empty if there are none
    std::vector<EntryIndex> entries;
};

class TodayWords
{
    Q_DECLARE_TR_FUNCTIONS(TodayWords)

public:
    /// "Morning".
    [[nodiscard]] static QString slot(std::string_view slot);
    /// The question of the check.
    [[nodiscard]] static QString question(const ComplaintDiary &complaint);
    /// The limit of the plan for the check, for pain in the exercise or after it.
    [[nodiscard]] static QString checkLimit(const ComplaintDiary &complaint);
    [[nodiscard]] static QString duringLimit(const ComplaintDiary &complaint);
    [[nodiscard]] static QString afterLimit(const ComplaintDiary &complaint);
    /// The last answers to each of them before \a day.
    [[nodiscard]] static LastAnswers lastChecks(const ComplaintDiary &complaint, CivilDay day);
    [[nodiscard]] static LastAnswers lastDuring(const ComplaintDiary &complaint, CivilDay day);
    [[nodiscard]] static LastAnswers lastAfter(const ComplaintDiary &complaint, CivilDay day);
    /// Why no exercise is asked, and when the next one is; empty where one is.
    [[nodiscard]] static QString quiet(const AskedComplaint &asked);
    /// "1 of 3 days this week so far".
    [[nodiscard]] static QString week(const AskedItem &item);
    /// "Heel raise, right, set 2 of 3".
    [[nodiscard]] static QString set(const QString &exercise, const QString &side, int number, int of);
    /// "From your clinic, Monday".
    [[nodiscard]] static QString replyHead(CivilDay written, CivilDay today);
    /// "2 of 6 sets".
    [[nodiscard]] static QString progress(int done, int due);
    /// "Not today: too sore".
    [[nodiscard]] static QString skipped(std::string_view reason);
};

} // namespace morrow
