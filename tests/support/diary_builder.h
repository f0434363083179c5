// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Diaries for tests, told fact by fact and made of entries as any other diary.
///
///     const Diary diary = DiaryBuilder()
///         .item(item("squat", "2026-03-02", {onDays(3, 15)}))
///         .sets("2026-03-02", "morning", "squat", 3, 15)
///         .check("2026-03-03", 4)
///         .diary();
///
/// Days, rules and numbers are written as text; one that cannot be read ends the program,
/// since it is a slip of the test.

#include "base/civil_day.h"
#include "base/decimal.h"
#include "model/body.h"
#include "model/diary.h"
#include "model/entry.h"
#include "model/plan.h"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace morrow::test {

/// A day, written out or given.
class Day
{
public:
    Day(CivilDay day)
        : m_day(day)
    {
    } // NOLINT: a day is a day
    Day(const char *text); // NOLINT
    operator CivilDay() const { return m_day; } // NOLINT

private:
    CivilDay m_day;
};

[[nodiscard]] CivilDay day(std::string_view text);
[[nodiscard]] Decimal number(std::string_view text);
[[nodiscard]] Body body(std::initializer_list<std::pair<Field, Body::Value>> fields);

/// A stage that is due on the days of \a rule in each of \a slots.
[[nodiscard]] Stage onDays(int sets, int reps, std::string_view rule = "FREQ=DAILY", std::vector<std::string> slots = {"morning"});
/// A stage that is due on \a sessions days of a week, in the slot "day".
[[nodiscard]] Stage perWeek(int sets, int reps, int sessions);
/// \a stage with \a holdSeconds, or with a load, or a share of body mass.
[[nodiscard]] Stage held(Stage stage, int holdSeconds);
[[nodiscard]] Stage loaded(Stage stage, std::string_view kg, std::string_view bodyShare = "0");

/// An item from \a start on, without end.
[[nodiscard]] Item item(std::string_view key, Day start, std::vector<Stage> stages);
[[nodiscard]] Item until(Item item, Day end);
[[nodiscard]] Item restingAfterVisits(Item item);

/// How an entry came about: by a patient, on paper, unless it says otherwise.
struct Origin
{
    std::string id{}; ///< made if empty
    std::string recorded{}; ///< RFC 3339; empty: typed in from paper
    std::string replaces{};
    bool withdraws = false;
};

/// What a set may say beside its reps.
struct SetParts
{
    std::optional<int> holdSeconds{};
    std::string loadKg{}; ///< empty: not recorded
};

class DiaryBuilder
{
public:
    /// Begins with a complaint called "main".
    DiaryBuilder();

    /// What follows is about the complaint \a key, which is made if it is new, or gets \a fields.
    DiaryBuilder &complaint(std::string_view key, const Body &fields = {});
    DiaryBuilder &item(Item item);
    /// A setting of the complaint's plan.
    DiaryBuilder &planSetting(Field field, Body::Value value);
    /// A setting of the person.
    DiaryBuilder &setting(std::string_view key, std::string_view value);

    DiaryBuilder &stage(Day day, std::string_view item, int stage, Origin origin = {});
    DiaryBuilder &set(
        Day day, std::string_view slot, std::string_view item, int set, int reps, const SetParts &parts = {}, Origin origin = {});
    /// The sets 1 .. \a count, alike.
    DiaryBuilder &sets(Day day, std::string_view slot, std::string_view item, int count, int reps, const SetParts &parts = {});
    DiaryBuilder &check(Day day, std::optional<int> pain, std::optional<int> stiffness = std::nullopt, Origin origin = {});
    /// Checks of the days from \a first on; a negative value leaves its day out.
    DiaryBuilder &checks(Day first, std::initializer_list<int> pain);
    DiaryBuilder &declined(Day day, Origin origin = {});
    /// The pain in and after a session, where it is known.
    DiaryBuilder &session(Day day, std::string_view slot, std::optional<int> during, std::optional<int> after, Origin origin = {});
    DiaryBuilder &skip(Day day, std::string_view slot, Origin origin = {});
    DiaryBuilder &easier(Day day, std::string_view slot, Origin origin = {});
    /// \a to is of no account in a version that withdraws.
    DiaryBuilder &pause(Day from, Day to, Origin origin = {});
    DiaryBuilder &visit(Day day, const Body &parts = {}, Origin origin = {});
    DiaryBuilder &outcome(
        Day day, std::string_view kind, std::string_view name, std::string_view side, std::string_view value, Origin origin = {});
    DiaryBuilder &putAside(Day day, Origin origin = {});

    /// Any fact as it stands; `withdrawn` is added if \a origin withdraws.
    DiaryBuilder &entry(Kind kind, Day day, Body body, Origin origin = {});

    [[nodiscard]] std::vector<Entry> entries() const;
    [[nodiscard]] Diary diary() const { return Diary::from(entries()); }

private:
    struct Told
    {
        std::string key;
        Body fields;
        Body planSettings;
        std::vector<Item> items;
    };

    [[nodiscard]] Body about() const;

    std::vector<Told> m_complaints;
    std::size_t m_current = 0;
    std::vector<Entry> m_entries;
};

} // namespace morrow::test
