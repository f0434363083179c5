// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The names of everything that an entry can say.
///
/// The order is that of the names as bytes, which is the order in which the
/// canonical form of a body (RFC 8785) lists them; a static check holds it.

#include <cstdint>
#include <optional>
#include <string_view>

namespace morrow {

enum class Field : std::uint8_t {
    About,
    Addressee,
    AfterLimit,
    Answer,
    Applicator,
    AreaCm2,
    Asks,
    Authority,
    Bar,
    BirthYear,
    BodyShare,
    By,
    Check,
    CheckLimit,
    Complaint,
    Consent,
    ContactLevel,
    ContactRise,
    Continues,
    Declined,
    DownS,
    DuringLimit,
    EasierHoldS,
    EasierLoadKg,
    EasierReps,
    EasierSets,
    End,
    EndReason,
    Exercise,
    File,
    FileNumber,
    FirstAssessmentPain,
    Flag,
    From,
    HoldS,
    How,
    Hz,
    Impulses,
    Item,
    Items,
    Key,
    KeyPoint,
    Kind,
    Label,
    LevelRiseAllowed,
    LoadKg,
    LoadStepKg,
    Loads,
    MinDays,
    MinSessions,
    Name,
    NextTime,
    NextVisit,
    Note,
    Number,
    Pain,
    PainAfter,
    PainDuring,
    PauseS,
    PerWeek,
    Place,
    Plan,
    Point,
    Question,
    Range,
    Reaction,
    Reason,
    Ref,
    Region,
    Reps,
    RestDaysAfterVisit,
    RestS,
    RestsAfterVisit,
    ReviewDay,
    ReviewText,
    RiseAllowed,
    Rrule,
    Set,
    Sets,
    Side,
    Sign,
    Slot,
    Slots,
    SorenessDays,
    Spare,
    SpareReps,
    Stage,
    Stages,
    Start,
    Started,
    StepAdherence,
    StepSessions,
    StepSpacingDays,
    StepWindowDays,
    StiffnessMin,
    Text,
    To,
    Told,
    Unit,
    UpS,
    Value,
    Visit,
    VisitsPlanned,
    WarmupBar,
    WarmupHz,
    WarmupImpulses,
    WeeklyRiseAllowed,
    WeeklyStiffnessAllowed,
    Withdrawn,
};

/// The name of \a field, as a column of a table or a key of a body.
[[nodiscard]] std::string_view name(Field field) noexcept;

/// The field called \a text; nullopt if there is none.
[[nodiscard]] std::optional<Field> fieldNamed(std::string_view text) noexcept;

} // namespace morrow
