// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// From what a day asks to the parts of its page.

#include <QList>
#include <QObject> // Qt first, for moc

#include "Home/today_parts.h"
#include "measures/today.h"

#include <string>

namespace morrow {

/// Thousandths of a minute, as a number field counts.
inline constexpr int kThousandths = 1000;

[[nodiscard]] bool isDone(const SetDone *set);

/// What decides whether the parts have to be made again: two days of the same shape have the same parts.
[[nodiscard]] std::string shapeOf(const Today &today);

/// The parts of \a today, one a complaint, with nothing answered; \a parent owns them.
[[nodiscard]] QList<TodayComplaint *> partsOf(const Today &today, QObject *parent);

/// Says in \a part, which was made of a day of this shape, what was answered.
void fill(TodayComplaint &part, const AskedComplaint &asked, const Diary &diary, CivilDay day);

} // namespace morrow
