// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a person heard from the clinic about a sign that they reported.
///
/// Read when somebody asks, since measures need none of it.

#include "model/diary.h"

#include <optional>

namespace morrow {

enum class ClinicSaid {
    GoOn,
    Lighter,
    Wait
};

struct Heard
{
    EntryIndex entry;
    CivilDay day;
    ClinicSaid said;
};

/// The latest that \a diary holds about \a sign, or about what that corrects; nullopt if
/// nothing was heard.
[[nodiscard]] std::optional<Heard> heardAbout(const Diary &diary, const ReportedSign &sign);

/// Whether the exercises wait: the clinic has not answered for \a sign, and the person heard
/// nothing from it yet, or to wait.
[[nodiscard]] bool asksToWait(const Diary &diary, const ReportedSign &sign);

} // namespace morrow
