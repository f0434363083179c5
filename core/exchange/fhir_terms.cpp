// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_terms.h"

#include "base/ids.h"
#include "base/sha256.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

constexpr std::array kStiffness{Component{Field::StiffnessMin, "stiffness"}};
constexpr std::array kSetParts{Component{Field::HoldS, "hold"}, Component{Field::LoadKg, "load"}, Component{Field::Spare, "spare"}};
constexpr std::array kSessionPain{Component{Field::PainDuring, "pain-during", true}, Component{Field::PainAfter, "pain-after", true}};
constexpr std::array kOutcomePain{Component{Field::Pain, "", true}};

constexpr std::array kObservations{
    ObservationShape{.kind = Kind::Check, .code = "", .value = Field::Pain, .components = kStiffness},
    ObservationShape{.kind = Kind::Set, .code = "repetitions", .value = Field::Reps, .components = kSetParts},
    ObservationShape{.kind = Kind::Session, .code = "session-pain", .value = std::nullopt, .components = kSessionPain},
    ObservationShape{.kind = Kind::Flag, .code = "sign", .value = Field::Sign},
    ObservationShape{.kind = Kind::Outcome, .code = "", .value = Field::Value, .components = kOutcomePain},
};

struct OutcomeUnit
{
    std::string_view ours;
    std::string_view ucum;
};
constexpr std::array kOutcomeUnits{
    OutcomeUnit{"count", "{count}"}, OutcomeUnit{"s", "s"}, OutcomeUnit{"cm", "cm"}, OutcomeUnit{"kg", "kg"}};

bool isUuid(std::string_view text) noexcept
{
    if (text.size() != 36)
        return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool isDash = i == 8 || i == 13 || i == 18 || i == 23;
        const bool isHex = (text[i] >= '0' && text[i] <= '9') || (text[i] >= 'a' && text[i] <= 'f');
        if (isDash ? text[i] != '-' : !isHex)
            return false;
    }
    return true;
}

} // namespace

std::string profile(std::string_view name)
{
    return std::string(kRoot) + "StructureDefinition/" + std::string(name);
}

std::string codeSystem(std::string_view name)
{
    return std::string(kRoot) + "CodeSystem/" + std::string(name);
}

std::string identifierSystem(std::string_view name)
{
    return std::string(kRoot) + std::string(name);
}

std::string_view resourceOf(Kind kind) noexcept
{
    switch (kind) {
    case Kind::Visit:
        return "Procedure";
    case Kind::Plan:
        return "CarePlan";
    case Kind::Complaint:
        return "Condition";
    case Kind::Note:
        return "Communication";
    default:
        return observationShape(kind) ? "Observation" : "Basic";
    }
}

std::string dashed(std::string_view name)
{
    std::string code(name);
    std::replace(code.begin(), code.end(), '_', '-');
    return code;
}

std::optional<Field> fieldOfUrl(std::string_view url) noexcept
{
    if (url.find('_') != std::string_view::npos)
        return std::nullopt;
    std::string field(url);
    std::replace(field.begin(), field.end(), '-', '_');
    return fieldNamed(field);
}

std::optional<Kind> kindOfCode(std::string_view code) noexcept
{
    if (code.find('_') != std::string_view::npos)
        return std::nullopt;
    std::string kind(code);
    std::replace(kind.begin(), kind.end(), '-', '_');
    return kindNamed(kind);
}

std::string_view unitOf(Field field) noexcept
{
    switch (field) {
    case Field::UpS:
    case Field::PauseS:
    case Field::DownS:
    case Field::RestS:
    case Field::HoldS:
    case Field::EasierHoldS:
        return "s";
    case Field::LoadKg:
    case Field::LoadStepKg:
    case Field::EasierLoadKg:
        return "kg";
    case Field::Bar:
    case Field::WarmupBar:
        return "bar";
    case Field::Hz:
    case Field::WarmupHz:
        return "Hz";
    case Field::AreaCm2:
        return "cm2";
    case Field::Impulses:
    case Field::WarmupImpulses:
        return "{impulses}";
    case Field::Reps:
    case Field::EasierReps:
    case Field::Spare:
    case Field::SpareReps:
        return "{repetitions}";
    case Field::Sets:
    case Field::EasierSets:
        return "{sets}";
    case Field::StiffnessMin:
        return "min";
    case Field::Pain:
    case Field::PainDuring:
    case Field::PainAfter:
    case Field::FirstAssessmentPain:
        return "{score}";
    default:
        return {};
    }
}

std::string_view valueNameOf(const FieldRule &rule) noexcept
{
    if (!unitOf(rule.field).empty())
        return "valueQuantity";
    switch (rule.form) {
    case Form::Whole:
        return "valueInteger";
    case Form::Number:
        return "valueDecimal";
    case Form::Day:
        return "valueDate";
    case Form::Choice:
        return "valueCode";
    default:
        return "valueString";
    }
}

const ObservationShape *observationShape(Kind kind) noexcept
{
    const auto *const found
        = std::find_if(kObservations.begin(), kObservations.end(), [kind](const ObservationShape &shape) { return shape.kind == kind; });
    return found == kObservations.end() ? nullptr : found;
}

std::string_view ucumOfOutcome(std::string_view unit) noexcept
{
    for (const OutcomeUnit &one : kOutcomeUnits) {
        if (one.ours == unit)
            return one.ucum;
    }
    return {};
}

std::string_view outcomeOfUcum(std::string_view code) noexcept
{
    for (const OutcomeUnit &one : kOutcomeUnits) {
        if (one.ucum == code)
            return one.ours;
    }
    return {};
}

bool isFhirOffset(int offsetMinutes) noexcept
{
    return std::abs(offsetMinutes) <= 14 * 60;
}

std::string instantOf(const Moment &moment)
{
    return isFhirOffset(moment.offsetMinutes) ? rfc3339(moment) : utcInstantOf(moment.utcMs);
}

std::string utcInstantOf(std::int64_t utcMs)
{
    std::string text = rfc3339({utcMs, 0});
    text.resize(text.size() - "+00:00"sv.size());
    return text + 'Z';
}

std::string fullUrlOf(std::string_view id)
{
    return "urn:uuid:" + (isUuid(id) ? std::string(id) : uuidFromDigest(sha256(id)));
}

std::string fullUrlOf(std::string_view what, std::string_view whom)
{
    return "urn:uuid:" + uuidFromDigest(sha256(std::string(what) + '\x1f' + std::string(whom)));
}

} // namespace morrow::fhir
