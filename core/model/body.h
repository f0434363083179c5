// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What an entry says, in the one form that it is stored, hashed and sent in.
///
/// The canonical form is JSON by RFC 8785: keys in order, no space, numbers in
/// their shortest form, text in UTF-8 with the fewest escapes. An empty cell is an
/// absent key; there is no null, no boolean, and no number with a fourth decimal.

#include "base/decimal.h"
#include "model/field.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace morrow {

class Body
{
public:
    /// A number, a text, or (in a plan only) a list of bodies.
    using Value = std::variant<Decimal, std::string, std::vector<Body>>;

    /// The canonical form.
    [[nodiscard]] std::string toJson() const;

    /// Says \a value about \a field, in the place of what was said before.
    void set(Field field, Value value);
    void remove(Field field);
    void clear() noexcept { m_fields.clear(); }

    [[nodiscard]] bool has(Field field) const noexcept { return find(field) != nullptr; }
    /// What is said about \a field, or nullptr; the typed ones also where it is of another type.
    [[nodiscard]] const Value *find(Field field) const noexcept;
    [[nodiscard]] const Decimal *number(Field field) const noexcept;
    [[nodiscard]] const std::string *text(Field field) const noexcept;
    [[nodiscard]] const std::vector<Body> *list(Field field) const noexcept;

    /// The text of \a field, \a otherwise if there is none.
    [[nodiscard]] std::string_view textOr(Field field, std::string_view otherwise = {}) const noexcept;
    /// The number of \a field, if there is one.
    [[nodiscard]] std::optional<Decimal> decimal(Field field) const noexcept;
    /// The whole part of it.
    [[nodiscard]] std::optional<int> whole(Field field) const noexcept;
    /// The whole number of \a field, \a otherwise if there is none.
    [[nodiscard]] int intOr(Field field, int otherwise) const noexcept;

    [[nodiscard]] const std::vector<std::pair<Field, Value>> &fields() const noexcept { return m_fields; }

    friend bool operator==(const Body &, const Body &) = default;

private:
    void appendTo(std::string &out) const;

    std::vector<std::pair<Field, Value>> m_fields; ///< by field, each once
};

/// Reads bodies one after another with one buffer.
class BodyReader
{
public:
    BodyReader();
    ~BodyReader();
    BodyReader(const BodyReader &) = delete;
    BodyReader &operator=(const BodyReader &) = delete;

    /// The body in \a json; nullopt if it is none (bad UTF-8, keys out of order or
    /// twice, another type, a fourth decimal). Keys that are not known here, of a newer
    /// program, are passed over.
    [[nodiscard]] std::optional<Body> read(std::string_view json);
    /// The same into \a body, whose room is used again; false: it is none, and \a body anything.
    [[nodiscard]] bool read(std::string_view json, Body &body);

private:
    struct Parser;
    std::unique_ptr<Parser> m_parser;
};

} // namespace morrow
