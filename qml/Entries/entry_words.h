// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One entry in words, as it stands: what a number was made of, what a file holds.

#include "model/diary.h"

#include <QString>

namespace morrow {

struct EntryWords
{
    QString day;
    QString what; ///< "pain 3, stiff 10 min"
    QString how; ///< who entered it and when: "by the person, a day late"
};

[[nodiscard]] EntryWords entryWords(const Diary &diary, EntryIndex entry);

} // namespace morrow
