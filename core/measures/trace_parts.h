// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What the traces of several sections have in common (trace.h).

#include "measures/trace.h"

namespace morrow {

/// Brings what shaped \a trace to its form: by place, each entry once, none that is among the values.
void finish(Trace &trace);

/// The visits on the days \a first .. \a last.
void addVisits(Trace &trace, const ComplaintDiary &complaint, CivilDay first, CivilDay last);

/// Every version of the pauses that touch \a window in any of them.
void addPauses(Trace &trace, const Diary &diary, const Window &window);

/// The done sets of \a item on the days \a first .. \a last, with their reps.
void addDoneSets(Trace &trace, const ItemDiary &item, CivilDay first, CivilDay last);

/// The stage changes that decide on the stage of \a item on the days \a first .. \a last.
void addStageChanges(Trace &trace, const ItemDiary &item, CivilDay first, CivilDay last);

/// What decides on which days of \a window \a item is due.
void addShape(Trace &trace, const Diary &diary, const ComplaintDiary &complaint, const ItemDiary &item, const Window &window);

} // namespace morrow
