// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The words that our bundles and resources are told in: what the writer writes and the
/// reader looks for, from one place.

#include "base/clock.h"
#include "model/field.h"
#include "model/kind.h"
#include "model/rules.h"

#include <optional>
#include <string>
#include <string_view>

namespace morrow::fhir {

/// Where our canonical addresses start: a domain that nobody can own (RFC 6761).
inline constexpr std::string_view kRoot = "https://morrow.invalid/fhir/";

inline constexpr std::string_view kUcum = "http://unitsofmeasure.org";
inline constexpr std::string_view kLoinc = "http://loinc.org";
inline constexpr std::string_view kPainCode = "72514-3";
inline constexpr std::string_view kPainDisplay = "Pain severity - 0-10 verbal numeric rating [Score] - Reported";
inline constexpr std::string_view kAbsentSystem = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
inline constexpr std::string_view kAskedDeclined = "asked-declined";
inline constexpr std::string_view kVerificationSystem = "http://terminology.hl7.org/CodeSystem/condition-ver-status";
inline constexpr std::string_view kInError = "entered-in-error";

[[nodiscard]] std::string profile(std::string_view name);
[[nodiscard]] std::string codeSystem(std::string_view name);
[[nodiscard]] std::string identifierSystem(std::string_view name);

/// The type of the resource that an entry of \a kind is.
[[nodiscard]] std::string_view resourceOf(Kind kind) noexcept;

/// A name of ours as codes and urls have it: with `-` where it has `_`, and back.
[[nodiscard]] std::string dashed(std::string_view name);
[[nodiscard]] std::optional<Field> fieldOfUrl(std::string_view url) noexcept;
[[nodiscard]] std::optional<Kind> kindOfCode(std::string_view code) noexcept;

/// The UCUM unit of \a field; empty if its value is no quantity.
[[nodiscard]] std::string_view unitOf(Field field) noexcept;

/// The name of the value[x] that a field of \a rule has in an extension.
[[nodiscard]] std::string_view valueNameOf(const FieldRule &rule) noexcept;

/// A value that stands in an Observation's component, and the code of the component.
struct Component
{
    Field field;
    std::string_view code; ///< of our measurements; empty: the pain code alone
    bool isPain = false; ///< also coded as pain
};

/// What is special about a kind that is told as an Observation.
struct ObservationShape
{
    Kind kind;
    std::string_view code; ///< of our measurements; empty: pain, or the outcome's own
    std::optional<Field> value; ///< valueQuantity, or valueString of a sign
    std::span<const Component> components{};
};
/// nullptr: \a kind is no Observation.
[[nodiscard]] const ObservationShape *observationShape(Kind kind) noexcept;

/// The UCUM unit of an outcome in \a unit (count, s, cm, kg), and back; empty if there is none.
[[nodiscard]] std::string_view ucumOfOutcome(std::string_view unit) noexcept;
[[nodiscard]] std::string_view outcomeOfUcum(std::string_view code) noexcept;

/// Whether \a offsetMinutes is one that FHIR's instants can have (14:00 at most, as zones do).
[[nodiscard]] bool isFhirOffset(int offsetMinutes) noexcept;
/// \a moment as a FHIR instant, in UTC where its offset is none for FHIR.
[[nodiscard]] std::string instantOf(const Moment &moment);
/// The instant \a utcMs as `YYYY-MM-DDThh:mm:ss[.mmm]Z`.
[[nodiscard]] std::string utcInstantOf(std::int64_t utcMs);

/// "urn:uuid:" and \a id, or the UUID made of it where it is none.
[[nodiscard]] std::string fullUrlOf(std::string_view id);
/// "urn:uuid:" and the UUID of a thing that is no entry: \a what it is, of \a whom.
[[nodiscard]] std::string fullUrlOf(std::string_view what, std::string_view whom);

} // namespace morrow::fhir
