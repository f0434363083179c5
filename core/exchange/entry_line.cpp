// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/entry_line.h"

#include "model/rules.h"

#include <simdjson.h>

#include <set>
#include <utility>

namespace morrow {

namespace {

namespace ondemand = simdjson::ondemand;
using Code = LineProblem::Code;

/// Thrown and caught in this file only, where a reader deep inside a line gives up.
struct Refusal
{
    LineProblem problem;
};

[[noreturn]] void refuse(Code code, std::string where)
{
    throw Refusal{{code, std::move(where)}};
}

template<class T>
T need(simdjson::simdjson_result<T> result, Code code, const std::string &where)
{
    T value;
    if (std::move(result).get(value) != simdjson::SUCCESS)
        refuse(code, where);
    return value;
}

constexpr int kMaxDepth = 64;

/// Calls \a take with each key and value of \a object; a key that comes twice is refused.
template<class Take>
void eachMember(ondemand::object object, const std::string &where, Take take)
{
    std::set<std::string, std::less<>> seen;
    for (auto member : object) {
        ondemand::field field;
        std::string_view raw;
        if (std::move(member).get(field) != simdjson::SUCCESS || field.unescaped_key().get(raw) != simdjson::SUCCESS)
            refuse(Code::NotJson, where);
        const auto [key, isNew] = seen.emplace(raw);
        const std::string at = where + '/' + *key;
        if (!isNew)
            refuse(Code::KeyTwice, at);
        take(*key, field.value(), at);
    }
}

Body readBody(ondemand::object object, const std::string &where, int depth);

Body::Value readValue(ondemand::value value, const std::string &where, int depth)
{
    switch (need(value.type(), Code::NotJson, where)) {
    case ondemand::json_type::number: {
        std::string_view token = value.raw_json_token();
        token = token.substr(0, token.find_last_not_of(" \t\r\n") + 1);
        const auto number = Decimal::parse(token);
        (void)need(value.get_double(), Code::NotJson, where);
        if (!number)
            refuse(Code::TypeRefused, where);
        return *number;
    }
    case ondemand::json_type::string:
        return std::string(need(value.get_string(), Code::NotJson, where));
    case ondemand::json_type::array: {
        if (depth >= kMaxDepth)
            refuse(Code::NotJson, where);
        std::vector<Body> list;
        for (auto element : need(value.get_array(), Code::NotJson, where)) {
            const std::string at = where + '/' + std::to_string(list.size());
            list.push_back(readBody(need(element.get_object(), Code::TypeRefused, at), at, depth + 1));
        }
        return list;
    }
    default:
        refuse(Code::TypeRefused, where);
    }
}

Body readBody(ondemand::object object, const std::string &where, int depth)
{
    Body body;
    eachMember(object, where, [&](const std::string &key, ondemand::value value, const std::string &at) {
        const auto field = fieldNamed(key);
        if (!field)
            refuse(Code::KeyUnknown, at);
        body.set(*field, readValue(value, at, depth));
    });
    return body;
}

std::string readText(ondemand::value value, const std::string &where)
{
    return std::string(need(value.get_string(), Code::TypeRefused, where));
}

Draft readDraft(ondemand::object object)
{
    Draft draft;
    std::optional<Kind> kind;
    std::optional<Author> author;
    bool hasBody = false;
    eachMember(object, {}, [&](const std::string &key, ondemand::value value, const std::string &at) {
        if (key == "body") {
            draft.body = readBody(need(value.get_object(), Code::TypeRefused, at), at, 2);
            hasBody = true;
            return;
        }
        if (key == "recorded" && need(value.type(), Code::NotJson, at) == ondemand::json_type::null) {
            if (!need(value.is_null(), Code::NotJson, at))
                refuse(Code::NotJson, at);
            draft.fromPaper = true;
            return;
        }
        const bool isKnown = key == "kind" || key == "day" || key == "author" || key == "recorded" || key == "replaces" || key == "id";
        if (!isKnown)
            refuse(Code::KeyUnknown, at);
        const std::string text = readText(value, at);
        bool isGood = true;
        if (key == "kind")
            isGood = (kind = kindNamed(text)).has_value();
        else if (key == "day")
            isGood = (draft.day = CivilDay::parse(text)).has_value();
        else if (key == "recorded")
            isGood = (draft.recorded = parseMoment(text)).has_value();
        else if (key == "author")
            isGood = (author = authorNamed(text)).has_value();
        else if (key == "replaces")
            draft.replaces = text;
        else
            draft.id = text;
        if (!isGood)
            refuse(Code::ValueRefused, at);
    });
    if (!kind)
        refuse(Code::KeyMissing, "/kind");
    if (!author)
        refuse(Code::KeyMissing, "/author");
    if (!hasBody)
        refuse(Code::KeyMissing, "/body");
    draft.kind = *kind;
    draft.author = *author;
    return draft;
}

} // namespace

Result<Draft, LineProblem> readEntryLine(std::string_view line)
{
    try {
        const simdjson::padded_string padded(line);
        ondemand::parser parser;
        auto document = need(parser.iterate(padded), Code::NotJson, {});
        auto draft = readDraft(need(document.get_object(), Code::NotJson, {}));
        if (document.current_location().error() != simdjson::OUT_OF_BOUNDS)
            refuse(Code::NotJson, {});
        return draft;
    } catch (const Refusal &refusal) {
        return failure(refusal.problem);
    }
}

} // namespace morrow
