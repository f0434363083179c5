// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What each kind of entry may say: the one schema that tables, files and
/// screens are checked against.

#include "base/civil_day.h"
#include "model/body.h"
#include "model/kind.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace morrow {

/// The form a value has.
enum class Form : std::uint8_t {
    Text, ///< any text without control characters other than tab, CR, LF
    Id, ///< 1 to 64 of A-Z a-z 0-9 - .
    Word, ///< a slot: text without white space
    Words, ///< slots: words separated by single spaces, each once
    Number, ///< within bounds, at most 3 decimals
    Whole, ///< within bounds
    Day,
    TimeOfDay, ///< hh:mm
    Moment, ///< RFC 3339; not a field of a body
    Choice, ///< one of `choices`
    Rule, ///< a recurrence rule
    Asks, ///< none, or any of stiffness during after spare
    List, ///< of bodies; in a plan only
};

struct FieldRule
{
    Field field;
    Form form = Form::Text;
    bool required = false;
    bool names = false; ///< says what the entry is about, so a withdrawal keeps it
    Decimal least{};
    Decimal most = Decimal::whole(999'999'999);
    std::span<const std::string_view> choices{};
};

/// What makes two entries of a kind be about the same thing: the day if `byDay`, and
/// the values of `fields`. Neither: each entry is a thing of its own.
struct AboutRule
{
    bool byDay = false;
    std::span<const Field> fields{};

    [[nodiscard]] bool isOwnThing() const noexcept { return !byDay && fields.empty(); }
};

struct KindRule
{
    Kind kind;
    std::span<const FieldRule> fields;
    AboutRule about;
    bool patient = true; ///< a patient or helper may state it
    bool clinic = true;
};

[[nodiscard]] const KindRule &ruleOf(Kind kind) noexcept;
[[nodiscard]] const FieldRule *ruleOf(Kind kind, Field field) noexcept; ///< nullptr: not a field of it

/// The fields of an item and of a stage inside a plan, and the settings of a plan.
[[nodiscard]] std::span<const FieldRule> itemRules() noexcept;
[[nodiscard]] std::span<const FieldRule> stageRules() noexcept;
[[nodiscard]] std::span<const FieldRule> planSettingRules() noexcept;
/// The form of the value of a setting entry by its key; nullptr: no such key.
[[nodiscard]] const FieldRule *settingRule(std::string_view key) noexcept;

/// Reads \a text as \a rule asks; nullopt if it has another form or lies out of bounds.
[[nodiscard]] std::optional<Body::Value> readValue(const FieldRule &rule, std::string_view text);

/// What is wrong with a body beyond the form of its fields.
struct BodyProblem
{
    enum class Code : std::uint8_t {
        Missing, ///< `field` is needed
        NotAllowed, ///< `field` may not stand beside `other`
        OutOfBounds, ///< `field` is out of the bounds that `other` sets; `rule` holds them
        Unknown, ///< `field` is no field of this kind
        Form, ///< the value of `field` has not the form that `rule` asks for
    };

    Code code = Code::Missing;
    Field field = Field::About;
    Field other = Field::About;
    const FieldRule *rule = nullptr;
};

/// Every problem of \a body as an entry of \a kind about \a day: required fields, what a
/// withdrawal may hold, and values that contradict each other.
[[nodiscard]] std::vector<BodyProblem> problemsOf(Kind kind, const Body &body, std::optional<CivilDay> day);

/// Fields of \a body that an entry of \a kind does not have, or whose value has another form
/// than it must; in a plan also those of its items and stages. What tables read a cell at
/// a time, whoever is handed a whole body has to ask for.
[[nodiscard]] std::vector<BodyProblem> formProblemsOf(Kind kind, const Body &body);

} // namespace morrow
