// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Home's words for days, doses and what is wrong: one sentence for each code.

#include <QCoreApplication> // Qt first, for moc
#include <QString>

#include "actions/adopt.h"
#include "actions/record.h"
#include "model/diary.h"

#include <map>
#include <string_view>

namespace morrow {

class HomeWords
{
    Q_DECLARE_TR_FUNCTIONS(HomeWords)

public:
    /// "Wednesday".
    [[nodiscard]] static QString weekday(CivilDay day);
    /// "4 March".
    [[nodiscard]] static QString date(CivilDay day);
    /// "Saved 07:12", by the clock on the wall where \a moment was.
    [[nodiscard]] static QString saved(const Moment &moment);
    /// "plantar heel, right".
    [[nodiscard]] static QString name(const Complaint &complaint);
    /// "3 sets of 12 with 2 kg. Seconds: up in 3, down in 3."
    [[nodiscard]] static QString sentence(const Dose &dose);

    /// "12 checks, 30 sets, 1 version of the plan".
    [[nodiscard]] static QString counts(const std::map<Kind, int> &counts);

    /// Why the diary could not be opened, or something was not kept, and what to do.
    [[nodiscard]] static QString sentence(StoreError error);
    [[nodiscard]] static QString sentence(FileError error);
    [[nodiscard]] static QString sentence(const RecordError &error);
    [[nodiscard]] static QString sentence(const AdoptProblem &problem);
};

} // namespace morrow
