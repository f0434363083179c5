// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/json_tree_reader.h"

#include <algorithm>
#include <utility>

namespace morrow {

namespace {

namespace ondemand = simdjson::ondemand;

/// Thrown and caught in this file only, where reading gives up deep inside a value.
struct Refusal
{
    JsonError error;
    std::string pointer;
};

template<class T>
T need(simdjson::simdjson_result<T> result)
{
    T value;
    if (std::move(result).get(value) != simdjson::SUCCESS)
        throw Refusal{JsonError::NotJson, {}};
    return value;
}

} // namespace

std::string pointerStep(std::string_view token)
{
    std::string step = "/";
    for (const char c : token)
        step += c == '~' ? std::string("~0") : c == '/' ? std::string("~1") : std::string(1, c);
    return step;
}

JsonValue JsonTree::root() const noexcept
{
    return {this, 0};
}

std::optional<JsonValue> JsonValue::find(std::string_view key) const noexcept
{
    for (auto child = isObject() ? firstChild() : std::nullopt; child; child = child->next()) {
        if (child->key() == key)
            return child;
    }
    return std::nullopt;
}

std::optional<JsonTreeReader::Fault> JsonTreeReader::read(ondemand::value value, int depth)
{
    m_tree.m_nodes.clear();
    try {
        readValue(value, depth);
        return std::nullopt;
    } catch (Refusal &refusal) {
        return Fault{refusal.error, std::move(refusal.pointer)};
    }
}

void JsonTreeReader::link(std::uint32_t parent, std::uint32_t &last, std::uint32_t child) noexcept
{
    (last == JsonTree::kNone ? m_tree.m_nodes[parent].child : m_tree.m_nodes[last].next) = child;
    last = child;
}

std::uint32_t JsonTreeReader::readValue(ondemand::value value, int depth)
{
    std::vector<JsonTree::Node> &nodes = m_tree.m_nodes;
    if (nodes.size() >= JsonTree::kMaxValues)
        throw Refusal{JsonError::TooLarge, {}};
    const auto index = static_cast<std::uint32_t>(nodes.size());
    nodes.emplace_back();
    switch (need(value.type())) {
    case ondemand::json_type::object:
        nodes[index].type = JsonType::Object;
        readObject(need(value.get_object()), index, depth + 1);
        break;
    case ondemand::json_type::array:
        nodes[index].type = JsonType::Array;
        readArray(need(value.get_array()), index, depth + 1);
        break;
    case ondemand::json_type::string:
        nodes[index].type = JsonType::String;
        nodes[index].text = need(value.get_string());
        break;
    case ondemand::json_type::number: {
        const std::string_view token = value.raw_json_token();
        nodes[index].type = JsonType::Number;
        nodes[index].text = token.substr(0, token.find_last_not_of(" \t\r\n") + 1);
        (void)need(value.get_double());
        break;
    }
    case ondemand::json_type::boolean:
        nodes[index].text = need(value.get_bool()) ? "true" : "false";
        break;
    case ondemand::json_type::null:
        if (!need(value.is_null()))
            throw Refusal{JsonError::NotJson, {}};
        nodes[index].text = "null";
        break;
    }
    return index;
}

void JsonTreeReader::readObject(ondemand::object object, std::uint32_t parent, int depth)
{
    if (depth > JsonTree::kMaxDepth)
        throw Refusal{JsonError::TooDeep, {}};
    // Objects of ours are small; only a wide one is worth a set.
    constexpr std::size_t kSmall = 24;
    std::unordered_set<std::string_view> seen;
    std::size_t count = 0;
    std::uint32_t last = JsonTree::kNone;
    for (auto member : object) {
        ondemand::field field = need(std::move(member));
        const std::string_view key = need(field.unescaped_key());
        const auto isTwice = [&] {
            if (count < kSmall) {
                for (std::uint32_t at = m_tree.m_nodes[parent].child; at != JsonTree::kNone; at = m_tree.m_nodes[at].next) {
                    if (m_tree.m_nodes[at].key == key)
                        return true;
                }
                return false;
            }
            if (seen.empty()) {
                for (std::uint32_t at = m_tree.m_nodes[parent].child; at != JsonTree::kNone; at = m_tree.m_nodes[at].next)
                    seen.insert(m_tree.m_nodes[at].key);
            }
            return !seen.insert(key).second;
        };
        if (count >= JsonTree::kMaxMembers)
            throw Refusal{JsonError::TooLarge, pointerStep(key)};
        if (isTwice())
            throw Refusal{JsonError::KeyTwice, pointerStep(key)};
        try {
            const std::uint32_t child = readValue(field.value(), depth);
            m_tree.m_nodes[child].key = key;
            link(parent, last, child);
        } catch (Refusal &refusal) {
            refusal.pointer.insert(0, pointerStep(key));
            throw;
        }
        ++count;
    }
}

void JsonTreeReader::readArray(ondemand::array array, std::uint32_t parent, int depth)
{
    if (depth > JsonTree::kMaxDepth)
        throw Refusal{JsonError::TooDeep, {}};
    std::uint32_t last = JsonTree::kNone;
    std::size_t count = 0;
    for (auto element : array) {
        try {
            link(parent, last, readValue(need(std::move(element)), depth));
        } catch (Refusal &refusal) {
            refusal.pointer.insert(0, pointerStep(std::to_string(count)));
            throw;
        }
        ++count;
    }
}

} // namespace morrow
