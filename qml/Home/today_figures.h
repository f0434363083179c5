// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the numbers of the day's page open: a row a number, with the entries behind it.

#include <QCoreApplication> // Qt first, for moc
#include <QString>

#include "Entries/word_rows.h"
#include "Home/today_words.h"
#include "measures/today.h"

#include <vector>

namespace morrow {

class TodayFigures
{
    Q_DECLARE_TR_FUNCTIONS(TodayFigures)

public:
    /// "2 of 6 sets".
    [[nodiscard]] static std::vector<WordRow> sets(const Diary &diary, const Today &today);
    /// "1 of 3 days this week so far".
    [[nodiscard]] static std::vector<WordRow> week(
        const Diary &diary, const ComplaintDiary &complaint, const AskedItem &item, CivilDay day);
    /// "Your last answers: 2, 3, 2."
    [[nodiscard]] static std::vector<WordRow> last(const Diary &diary, const LastAnswers &last);
};

} // namespace morrow
