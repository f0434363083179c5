// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/json.h"

#include "base/utf8.h"
#include "report/plain_text.h"

#include <array>
#include <charconv>
#include <cmath>

namespace morrow::batch {

namespace {

constexpr std::size_t kLine = 240;
constexpr std::size_t kStep = 2;

std::string quoted(std::string_view text)
{
    static constexpr std::string_view hex = "0123456789abcdef";
    std::string shown;
    if (firstInvalidUtf8(text)) {
        shown = visible(text);
        text = shown;
    }
    std::string out = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (c == '\n') {
            out += "\\n";
        } else if (c == '\r') {
            out += "\\r";
        } else if (c == '\t') {
            out += "\\t";
        } else if (byte < 0x20 || byte == 0x7F) {
            out += "\\u00";
            out += hex[byte >> 4U];
            out += hex[byte & 15U];
        } else {
            out += c;
        }
    }
    return out + '"';
}

} // namespace

Json::Json(double value)
    : m_scalar("null")
{
    if (!std::isfinite(value))
        return;
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value == 0 ? 0.0 : value);
    m_scalar.assign(buffer.data(), end.ptr);
}

Json::Json(std::string_view text)
    : m_scalar(quoted(text))
{
}

Json Json::object(std::initializer_list<std::pair<std::string_view, Json>> members)
{
    Json json;
    json.m_shape = Shape::Object;
    for (const auto &[key, value] : members)
        json.add(key, value);
    return json;
}

Json Json::array(std::vector<Json> elements)
{
    Json json;
    json.m_shape = Shape::Array;
    json.m_values = std::move(elements);
    return json;
}

void Json::add(std::string_view key, Json value)
{
    m_keys.push_back(quoted(key));
    m_values.push_back(std::move(value));
}

void Json::add(Json value)
{
    m_values.push_back(std::move(value));
}

bool Json::hasContainers() const noexcept
{
    for (const Json &value : m_values) {
        if (value.m_shape != Shape::Scalar)
            return true;
    }
    return false;
}

std::string Json::onOneLine() const
{
    if (m_shape == Shape::Scalar)
        return m_scalar;
    std::string out(1, m_shape == Shape::Object ? '{' : '[');
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        out += i == 0 ? "" : ", ";
        if (m_shape == Shape::Object)
            out += m_keys[i] + ": ";
        out += m_values[i].onOneLine();
    }
    return out + (m_shape == Shape::Object ? '}' : ']');
}

void Json::appendTo(std::string &out, std::size_t indent) const
{
    if (m_shape == Shape::Scalar || m_values.empty()) {
        out += onOneLine();
        return;
    }
    if (!hasContainers()) {
        if (const std::string line = onOneLine(); indent + line.size() <= kLine) {
            out += line;
            return;
        }
    }
    out += m_shape == Shape::Object ? '{' : '[';
    const std::string inner(indent + kStep, ' ');
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        out += i == 0 ? "\n" : ",\n";
        out += inner;
        if (m_shape == Shape::Object)
            out += m_keys[i] + ": ";
        m_values[i].appendTo(out, indent + kStep);
    }
    out += "\n" + std::string(indent, ' ') + (m_shape == Shape::Object ? '}' : ']');
}

std::string Json::toText() const
{
    std::string out;
    appendTo(out, 0);
    return out + "\n";
}

} // namespace morrow::batch
