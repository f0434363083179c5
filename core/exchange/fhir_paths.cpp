// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_paths.h"

#include "exchange/fhir_terms.h"

#include <algorithm>

namespace morrow::fhir {

using namespace std::string_view_literals;

std::optional<std::string_view> textAt(JsonValue value, std::string_view path)
{
    std::optional<JsonValue> at = value;
    while (at) {
        if (at->type() == JsonType::Array) {
            at = at->firstChild();
        } else if (path.empty()) {
            return at->type() == JsonType::String ? std::optional(at->text()) : std::nullopt;
        } else {
            const std::string_view step = path.substr(0, path.find('/'));
            path.remove_prefix(std::min(step.size() + 1, path.size()));
            at = at->find(step);
        }
    }
    return std::nullopt;
}

std::optional<std::string_view> identifierOf(JsonValue resource, std::string_view system)
{
    const auto list = resource.find("identifier");
    const std::string wanted = identifierSystem(system);
    for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next()) {
        if (textAt(*one, "system") == wanted)
            return textAt(*one, "value").value_or(std::string_view());
    }
    return std::nullopt;
}

bool claimsProfile(JsonValue resource, std::string_view name)
{
    const auto meta = resource.find("meta");
    const auto list = meta ? meta->find("profile") : std::nullopt;
    const std::string wanted = profile(name);
    for (auto one = list ? list->firstChild() : std::nullopt; one; one = one->next()) {
        if (one->type() == JsonType::String && one->text() == wanted)
            return true;
    }
    return false;
}

int checkExtensions(JsonValue value, std::string_view pointer, std::vector<Issue> &issues)
{
    int unknown = 0;
    std::size_t place = 0;
    for (auto child = value.firstChild(); child; child = child->next(), ++place) {
        if (child->type() != JsonType::Object && child->type() != JsonType::Array)
            continue;
        const std::string at = std::string(pointer) + '/' + (value.isObject() ? std::string(child->key()) : std::to_string(place));
        if (child->key() == "modifierExtension"sv)
            issues.push_back({.code = IssueCode::ModifierRefused, .columnName = "modifierExtension", .pointer = at});
        if (child->key() == "extension"sv) {
            for (auto one = child->firstChild(); one; one = one->next()) {
                const auto url = textAt(*one, "url");
                const bool isOurs = url && url->starts_with(kRoot);
                unknown += isOurs ? 0 : 1;
            }
            continue;
        }
        unknown += checkExtensions(*child, at, issues);
    }
    return unknown;
}

std::optional<std::string_view> codeIn(JsonValue codeable, std::string_view system)
{
    const auto codings = codeable.find("coding");
    for (auto coding = codings ? codings->firstChild() : std::nullopt; coding; coding = coding->next()) {
        if (textAt(*coding, "system") == system)
            return textAt(*coding, "code");
    }
    return std::nullopt;
}

} // namespace morrow::fhir
