// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A part of a JSON document (RFC 8259), read strictly: no key twice, no lone surrogate,
/// nothing deeper than allowed, every number a number, also in what nobody asks for.
///
/// One tree is used for one resource after another, so that a file costs the memory of
/// its largest resource.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

enum class JsonType : std::uint8_t {
    Object,
    Array,
    String,
    Number,
    Other ///< true, false, null
};

enum class JsonError {
    NotJson, ///< or not UTF-8, or a lone surrogate
    KeyTwice,
    TooDeep,
    TooLarge, ///< more values than a resource of ours could have
};

/// A value in a tree; cheap to copy. It lives as long as the tree holds it, its text as long as the document.
class JsonValue;

class JsonTree
{
public:
    /// Levels of arrays and objects in a document, values in a tree, and members of one object.
    static constexpr int kMaxDepth = 64;
    static constexpr std::size_t kMaxValues = 1'000'000;
    static constexpr std::size_t kMaxMembers = 1'000;

    [[nodiscard]] JsonValue root() const noexcept;

private:
    friend class JsonValue;
    friend class JsonTreeReader;

    static constexpr std::uint32_t kNone = 0xffff'ffff;

    struct Node
    {
        JsonType type = JsonType::Other;
        std::uint32_t child = kNone; ///< the first
        std::uint32_t next = kNone; ///< of the same parent
        std::string_view key; ///< in an object
        std::string_view text; ///< of a string; else as it is written
    };

    std::vector<Node> m_nodes;
};

class JsonValue
{
public:
    [[nodiscard]] JsonType type() const noexcept { return node().type; }
    [[nodiscard]] bool isObject() const noexcept { return type() == JsonType::Object; }
    /// The text of a string, the token of a number.
    [[nodiscard]] std::string_view text() const noexcept { return node().text; }
    [[nodiscard]] std::string_view key() const noexcept { return node().key; }

    /// The first child of an object or array, and the one after this; nullopt: none.
    [[nodiscard]] std::optional<JsonValue> firstChild() const noexcept { return at(node().child); }
    [[nodiscard]] std::optional<JsonValue> next() const noexcept { return at(node().next); }
    /// The member \a key; nullopt if there is none, or this is no object.
    [[nodiscard]] std::optional<JsonValue> find(std::string_view key) const noexcept;

private:
    friend class JsonTree;
    JsonValue(const JsonTree *tree, std::uint32_t index) noexcept
        : m_tree(tree)
        , m_index(index)
    {
    }
    [[nodiscard]] const JsonTree::Node &node() const noexcept { return m_tree->m_nodes[m_index]; }
    [[nodiscard]] std::optional<JsonValue> at(std::uint32_t index) const noexcept
    {
        return index == JsonTree::kNone ? std::nullopt : std::optional(JsonValue(m_tree, index));
    }

    const JsonTree *m_tree;
    std::uint32_t m_index;
};

} // namespace morrow
