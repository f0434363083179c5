// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The one place where the program learns what time it is.
///
/// Everything else takes the time as an argument, so that a test can say when
/// it is, and so that a wrong or travelling clock can be thought about in one place.

#include "base/civil_day.h"

#include <chrono>
#include <compare>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace morrow {

/// An instant as a device recorded it: when, and how far local time was from UTC.
struct Moment
{
    std::int64_t utcMs; ///< milliseconds since 1970-01-01T00:00:00Z
    int offsetMinutes; ///< local time minus UTC, -1439..1439

    friend constexpr auto operator<=>(const Moment &, const Moment &) noexcept = default;
};

/// Reads an RFC 3339 date-time with at most 3 digits of fraction, in 1900..2200
/// by its local date and by that in UTC; nullopt for anything else. A leap second is the second after it.
[[nodiscard]] std::optional<Moment> parseMoment(std::string_view text) noexcept;

/// `YYYY-MM-DDThh:mm:ss[.mmm]+hh:mm`, milliseconds only if they are not 0.
[[nodiscard]] std::string rfc3339(const Moment &moment);

/// The diary day of \a moment: the civil date, at the offset stored with it, of the
/// moment less \a dayStarts (a set done at 00:30 belongs to the evening before).
[[nodiscard]] CivilDay diaryDay(const Moment &moment, std::chrono::minutes dayStarts) noexcept;

/// Gives the present instant and offset. Tests replace it.
class Clock
{
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Moment now() const = 0;
};

/// The machine's clock and zone.
[[nodiscard]] std::unique_ptr<Clock> systemClock();

} // namespace morrow
