// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The fields of a body as elements and extensions hold them, and the items of a plan.

#include "exchange/fhir_terms.h"
#include "exchange/issue.h"
#include "exchange/json_tree.h"
#include "model/body.h"
#include "model/rules.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace morrow::fhir {

/// An extension that holds others.
struct ComplexExtension
{
    JsonValue value;
    std::string path; ///< from its element on
};

/// Our extension \a name of \a element; nullopt if it has none, or several.
[[nodiscard]] std::optional<ComplexExtension> soleExtension(JsonValue element, std::string_view name);

/// Puts values into a body, each once and in the form that its rule asks for.
class FieldReader
{
public:
    FieldReader(std::span<const FieldRule> rules, std::string_view pointer, std::vector<Issue> &issues, Body &body)
        : m_rules(rules)
        , m_pointer(pointer)
        , m_issues(issues)
        , m_body(body)
    {
    }

    /// The same for another body, of \a rules, that lies at \a path.
    [[nodiscard]] FieldReader inside(std::span<const FieldRule> rules, std::string_view path, Body &body) const
    {
        return {rules, m_pointer + std::string(path), m_issues, body};
    }

    void refuse(IssueCode code, std::string_view path, std::string_view element, std::string_view value = {}) const;
    void refuse(const BodyProblem &problem) const;

    void text(Field field, std::string_view text, std::string_view path);
    void number(Field field, const std::optional<JsonValue> &value, std::string_view path);
    /// A quantity in the unit of \a field, and in no other.
    void quantity(Field field, JsonValue quantity, std::string_view path);
    /// A whole number that is no field.
    [[nodiscard]] std::optional<int> whole(const std::optional<JsonValue> &value, int least, int most, std::string_view path) const;

    /// The field that \a extension, called \a url, holds.
    void takeExtension(std::string_view url, JsonValue extension, std::string_view path);
    /// Reads the extensions inside \a complex, each url once: what \a takes does not take
    /// is a field, or of a newer program.
    using Takes = std::function<bool(std::string_view url, JsonValue extension, std::string_view path)>;
    void eachExtension(const ComplexExtension &complex, const Takes &takes);

private:
    [[nodiscard]] const FieldRule *ruleOf(Field field) const noexcept;

    std::span<const FieldRule> m_rules;
    std::string m_pointer;
    std::vector<Issue> &m_issues;
    Body &m_body;
};

/// The items in a plan's \a activities (none: nullopt), what is wrong told through \a plan.
[[nodiscard]] std::vector<Body> readActivities(const std::optional<JsonValue> &activities, const FieldReader &plan);

} // namespace morrow::fhir
