// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// When a dose is due: on the days of a recurrence rule, or on any k days of a week.

#include "base/civil_day.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace morrow {

/// A recurrence rule of RFC 5545, as far as plans use it: FREQ=DAILY or WEEKLY,
/// INTERVAL, BYDAY without ordinals; weeks start on Monday. DTSTART is given by
/// whoever asks, so that a rule can be kept without a day.
class RecurrenceRule
{
public:
    enum class Frequency : std::uint8_t {
        Daily,
        Weekly
    };

    /// Every day.
    constexpr RecurrenceRule() noexcept = default;

    /// Reads \a text in any order of its parts and any case; nullopt for every part
    /// or value that is not named above, or one given twice.
    [[nodiscard]] static std::optional<RecurrenceRule> parse(std::string_view text);

    /// The rule of these parts, \a weekdays one bit each from Monday on (none: not filtered);
    /// nullopt where parse would refuse the interval.
    [[nodiscard]] static std::optional<RecurrenceRule> from(Frequency frequency, int interval, std::uint8_t weekdays) noexcept;

    [[nodiscard]] constexpr Frequency frequency() const noexcept { return m_frequency; }
    [[nodiscard]] constexpr int interval() const noexcept { return m_interval; }
    [[nodiscard]] constexpr std::uint8_t weekdays() const noexcept { return m_weekdays; }

    /// Whether \a day is an instance when the rule starts on \a start. A start that
    /// does not match is no instance; nothing before it is.
    [[nodiscard]] bool falls(CivilDay day, CivilDay start) const noexcept;

    /// The same rule with the weekday of \a start written out where WEEKLY left it open.
    [[nodiscard]] RecurrenceRule startingOn(CivilDay start) const noexcept;

    /// The one form: FREQ, INTERVAL above 1, BYDAY from MO on.
    [[nodiscard]] std::string toString() const;

    friend constexpr bool operator==(const RecurrenceRule &, const RecurrenceRule &) noexcept = default;

private:
    Frequency m_frequency = Frequency::Daily;
    int m_interval = 1;
    std::uint8_t m_weekdays = 0; ///< bit 0 Monday .. bit 6 Sunday; none: not filtered
};

/// Due on the days of a rule, once in each named slot.
struct OnDays
{
    RecurrenceRule rule;
    std::vector<std::string> slots; ///< at least one, each once

    friend bool operator==(const OnDays &, const OnDays &) = default;
};

/// Due on any `sessions` days of a week, in the slot "day".
struct PerWeek
{
    int sessions; ///< 1..7

    friend bool operator==(const PerWeek &, const PerWeek &) = default;
};

using Rhythm = std::variant<OnDays, PerWeek>;

} // namespace morrow
