// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// JSON as it is printed: keys in the order they were said in, numbers with every
/// digit that a double holds.
///
/// Qt's own writer sorts keys, and the order is part of what the batch tool promises.

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace morrow::batch {

class Json
{
public:
    Json(std::nullptr_t = nullptr)
        : m_scalar("null")
    {
    }
    Json(bool value)
        : m_scalar(value ? "true" : "false")
    {
    }
    Json(int value)
        : m_scalar(std::to_string(value))
    {
    }
    Json(std::int64_t value)
        : m_scalar(std::to_string(value))
    {
    }
    Json(std::size_t value)
        : m_scalar(std::to_string(value))
    {
    }
    /// The shortest digits that read back as \a value; null if it is no finite number.
    Json(double value);
    /// Bytes that are not UTF-8 are written as `<xFF>`.
    Json(std::string_view text);
    Json(const std::string &text)
        : Json(std::string_view(text))
    {
    }
    Json(const char *text)
        : Json(std::string_view(text))
    {
    }

    template<class T>
    Json(const std::optional<T> &value)
        : Json()
    {
        if (value)
            *this = Json(*value);
    }

    [[nodiscard]] static Json object(std::initializer_list<std::pair<std::string_view, Json>> members = {});
    [[nodiscard]] static Json array(std::vector<Json> elements = {});

    /// Adds a member after the others; \a key is not there yet.
    void add(std::string_view key, Json value);
    /// Adds an element after the others.
    void add(Json value);

    /// The text, a line end last. An object or array of plain values stands on one line where
    /// it fits, every other one has a line for each member.
    [[nodiscard]] std::string toText() const;
    /// All of it on one line, the line end last.
    [[nodiscard]] std::string toLine() const { return onOneLine() + "\n"; }

private:
    enum class Shape {
        Scalar,
        Array,
        Object
    };

    void appendTo(std::string &out, std::size_t indent) const;
    /// The whole of it on one line.
    [[nodiscard]] std::string onOneLine() const;
    [[nodiscard]] bool hasContainers() const noexcept;

    Shape m_shape = Shape::Scalar;
    std::string m_scalar;
    std::vector<std::string> m_keys; ///< written as JSON; of an object only
    std::vector<Json> m_values;
};

} // namespace morrow::batch
