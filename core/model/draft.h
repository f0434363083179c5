// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What somebody wants to have recorded, before it is an entry.

#include "base/civil_day.h"
#include "base/clock.h"
#include "model/body.h"
#include "model/kind.h"

#include <optional>
#include <string>

namespace morrow {

struct Draft
{
    Kind kind = Kind::Check;
    std::optional<CivilDay> day; ///< nullopt: the diary day of the recording
    Author author = Author::Patient;
    bool fromPaper = false; ///< without an instant
    std::optional<Moment> recorded; ///< nullopt: now, unless from paper
    std::optional<std::string> replaces;
    std::optional<std::string> id; ///< nullopt: a new one
    Body body;
};

} // namespace morrow
