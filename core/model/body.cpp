// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/body.h"

#include "base/json_string.h"

#include <simdjson.h>

#include <algorithm>

namespace morrow {

namespace {

namespace ondemand = simdjson::ondemand;

/// A plan holds items, an item stages; nothing of ours is deeper.
constexpr int kMaxDepth = 3;

bool readObject(ondemand::object object, int depth, Body &body);

std::optional<Body::Value> readValue(ondemand::value value, int depth)
{
    ondemand::json_type type{};
    if (value.type().get(type) != simdjson::SUCCESS)
        return std::nullopt;
    if (type == ondemand::json_type::number) {
        std::string_view token = value.raw_json_token();
        token = token.substr(0, token.find_last_not_of(" \t\r\n") + 1);
        const auto number = Decimal::parse(token);
        double checked{};
        if (!number || value.get_double().get(checked) != simdjson::SUCCESS)
            return std::nullopt;
        return *number;
    }
    if (type == ondemand::json_type::string) {
        std::string_view text;
        if (value.get_string().get(text) != simdjson::SUCCESS)
            return std::nullopt;
        return std::string(text);
    }
    ondemand::array array;
    if (type != ondemand::json_type::array || depth == kMaxDepth || value.get_array().get(array) != simdjson::SUCCESS)
        return std::nullopt;
    std::vector<Body> list;
    for (auto element : array) {
        ondemand::object object;
        if (element.get_object().get(object) != simdjson::SUCCESS)
            return std::nullopt;
        if (!readObject(object, depth + 1, list.emplace_back()))
            return std::nullopt;
    }
    return list;
}

/// Adds to \a body, which is empty.
bool readObject(ondemand::object object, int depth, Body &body)
{
    std::string_view last; // the parser keeps unescaped keys until it reads the next document
    bool first = true;
    for (auto pair : object) {
        ondemand::field field;
        std::string_view key;
        if (std::move(pair).get(field) != simdjson::SUCCESS || field.unescaped_key().get(key) != simdjson::SUCCESS)
            return false;
        if (!first && key <= last)
            return false;
        first = false;
        last = key;
        const auto known = fieldNamed(key);
        if (!known)
            continue;
        auto value = readValue(field.value(), depth);
        if (!value)
            return false;
        body.set(*known, std::move(*value));
    }
    return true;
}

} // namespace

void Body::set(Field field, Value value)
{
    // Fields mostly come in order, so that the place is mostly the end.
    auto at = m_fields.end();
    while (at != m_fields.begin() && std::prev(at)->first >= field)
        --at;
    if (at != m_fields.end() && at->first == field)
        at->second = std::move(value);
    else
        m_fields.emplace(at, field, std::move(value));
}

void Body::remove(Field field)
{
    std::erase_if(m_fields, [field](const auto &entry) { return entry.first == field; });
}

const Body::Value *Body::find(Field field) const noexcept
{
    for (const auto &[name, value] : m_fields) {
        if (name == field)
            return &value;
    }
    return nullptr;
}

const Decimal *Body::number(Field field) const noexcept
{
    const Value *const value = find(field);
    return value ? std::get_if<Decimal>(value) : nullptr;
}

const std::string *Body::text(Field field) const noexcept
{
    const Value *const value = find(field);
    return value ? std::get_if<std::string>(value) : nullptr;
}

const std::vector<Body> *Body::list(Field field) const noexcept
{
    const Value *const value = find(field);
    return value ? std::get_if<std::vector<Body>>(value) : nullptr;
}

std::string_view Body::textOr(Field field, std::string_view otherwise) const noexcept
{
    const std::string *const found = text(field);
    return found ? std::string_view(*found) : otherwise;
}

std::optional<Decimal> Body::decimal(Field field) const noexcept
{
    const Decimal *const found = number(field);
    return found ? std::optional(*found) : std::nullopt;
}

std::optional<int> Body::whole(Field field) const noexcept
{
    const Decimal *const found = number(field);
    return found ? std::optional(found->toInt()) : std::nullopt;
}

int Body::intOr(Field field, int otherwise) const noexcept
{
    const Decimal *const found = number(field);
    return found ? found->toInt() : otherwise;
}

std::string Body::toJson() const
{
    std::string out;
    out.reserve(32 * m_fields.size() + 2);
    appendTo(out);
    return out;
}

void Body::appendTo(std::string &out) const
{
    char separator = '{';
    for (const auto &[field, value] : m_fields) {
        out += separator;
        separator = ',';
        out += '"';
        out += name(field);
        out += "\":";
        if (const auto *number = std::get_if<Decimal>(&value)) {
            out += number->toString();
        } else if (const auto *text = std::get_if<std::string>(&value)) {
            appendJsonString(out, *text);
        } else {
            char before = '[';
            for (const Body &body : std::get<std::vector<Body>>(value)) {
                out += before;
                before = ',';
                body.appendTo(out);
            }
            if (before == '[')
                out += '[';
            out += ']';
        }
    }
    if (separator == '{')
        out += '{';
    out += '}';
}

struct BodyReader::Parser
{
    ondemand::parser parser;
    std::string buffer;
};

BodyReader::BodyReader()
    : m_parser(std::make_unique<Parser>())
{
}
BodyReader::~BodyReader() = default;

std::optional<Body> BodyReader::read(std::string_view json)
{
    Body body;
    return read(json, body) ? std::optional(std::move(body)) : std::nullopt;
}

bool BodyReader::read(std::string_view json, Body &body)
{
    body.clear();
    std::string &buffer = m_parser->buffer;
    buffer.assign(json);
    buffer.reserve(json.size() + simdjson::SIMDJSON_PADDING);
    ondemand::document document;
    ondemand::object object;
    if (m_parser->parser.iterate(buffer.data(), buffer.size(), buffer.capacity()).get(document) != simdjson::SUCCESS
        || document.get_object().get(object) != simdjson::SUCCESS || !readObject(object, 1, body))
        return false;
    return document.current_location().error() == simdjson::OUT_OF_BOUNDS; // nothing follows the object
}

} // namespace morrow
