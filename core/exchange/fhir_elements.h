// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The data types of FHIR that our resources are made of, as the next value of a writer.

#include "exchange/json_writer.h"
#include "model/body.h"
#include "model/rules.h"

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

namespace morrow::fhir {

struct Coding
{
    std::string system;
    std::string_view code;
    std::string_view display{}; ///< empty: none
};

/// \a code of our code system \a system.
[[nodiscard]] Coding ourCoding(std::string_view system, std::string_view code);
/// The LOINC code of pain from 0 to 10.
[[nodiscard]] Coding painCoding();

/// A CodeableConcept.
void writeConcept(JsonWriter &json, std::initializer_list<Coding> codings, std::string_view text = {});

/// The member \a key with a Quantity in \a unit (UCUM; empty: without unit).
void writeQuantity(JsonWriter &json, std::string_view key, Decimal value, std::string_view unit);

/// An Identifier of our \a system.
void writeIdentifier(JsonWriter &json, std::string_view system, std::string_view value);

/// A Reference to the resource of the bundle at \a url.
void writeReference(JsonWriter &json, std::string_view url);

/// A Reference to the thing of \a type that our \a system calls \a value, wherever it is.
void writeLogicalReference(JsonWriter &json, std::string_view type, std::string_view system, std::string_view value);

/// The member meta, which claims our profile \a name.
void writeProfile(JsonWriter &json, std::string_view name);

/// The member \a key: an array of one object whose only member is \a text.
void writeSole(JsonWriter &json, std::string_view key, std::string_view member, std::string_view text);

/// A nested extension \a url with a text.
void writeNested(JsonWriter &json, std::string_view url, std::string_view valueName, std::string_view value);

/// The nested extension that \a field of a body, one of \a rules, has.
void writeNestedField(JsonWriter &json, std::span<const FieldRule> rules, Field field, const Body::Value &value);

} // namespace morrow::fhir
