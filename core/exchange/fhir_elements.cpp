// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_elements.h"

#include "exchange/fhir_terms.h"

#include <algorithm>

namespace morrow::fhir {

Coding ourCoding(std::string_view system, std::string_view code)
{
    return {codeSystem(system), code};
}

Coding painCoding()
{
    return {std::string(kLoinc), kPainCode, kPainDisplay};
}

void writeConcept(JsonWriter &json, std::initializer_list<Coding> codings, std::string_view text)
{
    json.beginObject();
    if (codings.size() > 0) {
        json.key("coding");
        json.beginArray();
        for (const Coding &coding : codings) {
            json.beginObject();
            json.member("system", coding.system);
            json.member("code", coding.code);
            if (!coding.display.empty())
                json.member("display", coding.display);
            json.endObject();
        }
        json.endArray();
    }
    if (!text.empty())
        json.member("text", text);
    json.endObject();
}

void writeQuantity(JsonWriter &json, std::string_view key, Decimal value, std::string_view unit)
{
    json.key(key);
    json.beginObject();
    json.member("value", value);
    if (!unit.empty()) {
        json.member("unit", unit);
        json.member("system", kUcum);
        json.member("code", unit);
    }
    json.endObject();
}

void writeIdentifier(JsonWriter &json, std::string_view system, std::string_view value)
{
    json.beginObject();
    json.member("system", identifierSystem(system));
    json.member("value", value);
    json.endObject();
}

void writeReference(JsonWriter &json, std::string_view url)
{
    json.beginObject();
    json.member("reference", url);
    json.endObject();
}

void writeLogicalReference(JsonWriter &json, std::string_view type, std::string_view system, std::string_view value)
{
    json.beginObject();
    json.member("type", type);
    json.key("identifier");
    writeIdentifier(json, system, value);
    json.endObject();
}

void writeProfile(JsonWriter &json, std::string_view name)
{
    json.key("meta");
    json.beginObject();
    json.key("profile");
    json.beginArray();
    json.text(profile(name));
    json.endArray();
    json.endObject();
}

void writeSole(JsonWriter &json, std::string_view key, std::string_view member, std::string_view text)
{
    json.key(key);
    json.beginArray();
    json.beginObject();
    json.member(member, text);
    json.endObject();
    json.endArray();
}

void writeNested(JsonWriter &json, std::string_view url, std::string_view valueName, std::string_view value)
{
    json.beginObject();
    json.member("url", url);
    json.member(valueName, value);
    json.endObject();
}

void writeNestedField(JsonWriter &json, std::span<const FieldRule> rules, Field field, const Body::Value &value)
{
    const auto rule = std::find_if(rules.begin(), rules.end(), [field](const FieldRule &one) { return one.field == field; });
    if (rule == rules.end())
        return;
    json.beginObject();
    json.member("url", dashed(name(field)));
    const std::string_view valueName = valueNameOf(*rule);
    if (const auto *const number = std::get_if<Decimal>(&value)) {
        if (valueName == "valueQuantity")
            writeQuantity(json, valueName, *number, unitOf(field));
        else
            json.member(valueName, *number);
    } else if (const auto *const text = std::get_if<std::string>(&value)) {
        json.member(valueName, *text);
    }
    json.endObject();
}

} // namespace morrow::fhir
