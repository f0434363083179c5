// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The diaries of two people who do not exist.
///
/// They come out the same on every machine and every day: no clock, no zone of the
/// machine and no chance but our own is used. Every name, load, treatment setting and
/// pain value is invented; sets, repetitions and rhythm are those of published programmes,
/// named beside each plan.

#include "exchange/tables.h"

namespace morrow::batch {

/// Both patellar tendons, after Kongsgaard 2009.
[[nodiscard]] TablesDiary demoRunner();

/// A right shoulder after Holmgren 2012 and a left Achilles tendon after Alfredson 1998.
[[nodiscard]] TablesDiary demoTwoComplaints();

} // namespace morrow::batch
