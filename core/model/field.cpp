// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/field.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace morrow {

namespace {

using namespace std::string_view_literals;

constexpr std::array kNames{
    "about"sv,
    "addressee"sv,
    "after_limit"sv,
    "answer"sv,
    "applicator"sv,
    "area_cm2"sv,
    "asks"sv,
    "authority"sv,
    "bar"sv,
    "birth_year"sv,
    "body_share"sv,
    "by"sv,
    "check"sv,
    "check_limit"sv,
    "complaint"sv,
    "consent"sv,
    "contact_level"sv,
    "contact_rise"sv,
    "continues"sv,
    "declined"sv,
    "down_s"sv,
    "during_limit"sv,
    "easier_hold_s"sv,
    "easier_load_kg"sv,
    "easier_reps"sv,
    "easier_sets"sv,
    "end"sv,
    "end_reason"sv,
    "exercise"sv,
    "file"sv,
    "file_number"sv,
    "first_assessment_pain"sv,
    "flag"sv,
    "from"sv,
    "hold_s"sv,
    "how"sv,
    "hz"sv,
    "impulses"sv,
    "item"sv,
    "items"sv,
    "key"sv,
    "key_point"sv,
    "kind"sv,
    "label"sv,
    "level_rise_allowed"sv,
    "load_kg"sv,
    "load_step_kg"sv,
    "loads"sv,
    "min_days"sv,
    "min_sessions"sv,
    "name"sv,
    "next_time"sv,
    "next_visit"sv,
    "note"sv,
    "number"sv,
    "pain"sv,
    "pain_after"sv,
    "pain_during"sv,
    "pause_s"sv,
    "per_week"sv,
    "place"sv,
    "plan"sv,
    "point"sv,
    "question"sv,
    "range"sv,
    "reaction"sv,
    "reason"sv,
    "ref"sv,
    "region"sv,
    "reps"sv,
    "rest_days_after_visit"sv,
    "rest_s"sv,
    "rests_after_visit"sv,
    "review_day"sv,
    "review_text"sv,
    "rise_allowed"sv,
    "rrule"sv,
    "set"sv,
    "sets"sv,
    "side"sv,
    "sign"sv,
    "slot"sv,
    "slots"sv,
    "soreness_days"sv,
    "spare"sv,
    "spare_reps"sv,
    "stage"sv,
    "stages"sv,
    "start"sv,
    "started"sv,
    "step_adherence"sv,
    "step_sessions"sv,
    "step_spacing_days"sv,
    "step_window_days"sv,
    "stiffness_min"sv,
    "text"sv,
    "to"sv,
    "told"sv,
    "unit"sv,
    "up_s"sv,
    "value"sv,
    "visit"sv,
    "visits_planned"sv,
    "warmup_bar"sv,
    "warmup_hz"sv,
    "warmup_impulses"sv,
    "weekly_rise_allowed"sv,
    "weekly_stiffness_allowed"sv,
    "withdrawn"sv,
};

static_assert(kNames.size() == static_cast<std::size_t>(Field::Withdrawn) + 1);
static_assert(std::is_sorted(kNames.begin(), kNames.end()));

/// The first eight bytes of \a text as a number that sorts as they do.
constexpr std::uint64_t headOf(std::string_view text) noexcept
{
    std::uint64_t head = 0;
    for (std::size_t i = 0; i < sizeof(head); ++i)
        head = head << 8 | (i < text.size() ? static_cast<unsigned char>(text[i]) : 0);
    return head;
}

constexpr auto kHeads = [] {
    std::array<std::uint64_t, kNames.size()> heads{};
    std::transform(kNames.begin(), kNames.end(), heads.begin(), headOf);
    return heads;
}();

} // namespace

std::string_view name(Field field) noexcept
{
    return kNames[static_cast<std::size_t>(field)];
}

std::optional<Field> fieldNamed(std::string_view text) noexcept
{
    // By numbers, since a diary is read a name at a time; few names share the first eight bytes.
    const std::uint64_t head = headOf(text);
    auto place = static_cast<std::size_t>(std::lower_bound(kHeads.begin(), kHeads.end(), head) - kHeads.begin());
    for (; place < kHeads.size() && kHeads[place] == head; ++place) {
        if (kNames[place] == text)
            return static_cast<Field>(place);
    }
    return std::nullopt;
}

} // namespace morrow
