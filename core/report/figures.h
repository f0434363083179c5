// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Numbers as a person reads them on a page: rounded, with their unit, and never
/// rounded into saying something that is not so; and days.

#include "base/civil_day.h"
#include "measures/adherence.h"

#include <cstdint>
#include <optional>
#include <string>

namespace morrow {

/// At most one decimal, none if it is 0: `6`, `5.5`, `12345`.
[[nodiscard]] std::string figure(double value);

/// The same with its sign: `+1.5`, `-4`, `0`.
[[nodiscard]] std::string signedFigure(double value);

/// Whole per cent. `100 %` is said of all and `0 %` of none only: what rounds there
/// from elsewhere is `99 %` or `1 %`.
[[nodiscard]] std::string share(double ratio);

/// Whole per cent with its sign: `+24 %`, `-3 %`, `0 %`.
[[nodiscard]] std::string signedShare(double ratio);

/// `81 of 113 (72 %)`: the counts come first, because a share hides how few they are.
[[nodiscard]] std::string part(std::int64_t done, std::int64_t due);

/// `1 day`, `2 days`: \a one is the word for one.
[[nodiscard]] std::string counted(int count, const char *one);

/// `8432 kg x reps`; \a value alone where there is no unit.
[[nodiscard]] std::string volume(double value, std::optional<VolumeUnit> unit);

/// `3 March 2026`.
[[nodiscard]] std::string dated(CivilDay day);

/// `2 to 8 March 2026`, `16 February to 1 March 2026`; \a first alone if \a last is not after it.
[[nodiscard]] std::string datedSpan(CivilDay first, CivilDay last);

} // namespace morrow
