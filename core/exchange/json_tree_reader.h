// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

#include "exchange/json_tree.h"

#include <simdjson.h>

#include <unordered_set>

namespace morrow {

/// Reads values of an open document into a tree.
class JsonTreeReader
{
public:
    struct Fault
    {
        JsonError error;
        std::string pointer; ///< from the value on (RFC 6901)
    };

    explicit JsonTreeReader(JsonTree &tree) noexcept
        : m_tree(tree)
    {
    }

    /// Puts \a value, which lies \a depth levels deep, in the place of what the tree held.
    [[nodiscard]] std::optional<Fault> read(simdjson::ondemand::value value, int depth);

private:
    std::uint32_t readValue(simdjson::ondemand::value value, int depth);
    void readObject(simdjson::ondemand::object object, std::uint32_t parent, int depth);
    void readArray(simdjson::ondemand::array array, std::uint32_t parent, int depth);
    void link(std::uint32_t parent, std::uint32_t &last, std::uint32_t child) noexcept;

    JsonTree &m_tree;
};

/// \a token with `~` and `/` escaped as RFC 6901 asks, after a `/`.
[[nodiscard]] std::string pointerStep(std::string_view token);

} // namespace morrow
