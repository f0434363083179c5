// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/open.h"
#include "batch/arguments.h"
#include "batch/input.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"
#include "batch/words.h"
#include "model/diary.h"

#include <algorithm>

namespace morrow::batch {

namespace {

Json textOrNull(const std::string &text)
{
    return text.empty() ? Json() : Json(text);
}

Json numberOrNull(int number)
{
    return number > 0 ? Json(number) : Json();
}

Json toJson(const Issue &issue, const std::string &input)
{
    return Json::object({
        {"file", textOrNull(issue.file)},
        {"line", numberOrNull(issue.line)},
        {"column", numberOrNull(issue.column)},
        {"columnName", textOrNull(issue.columnName)},
        {"pointer", textOrNull(issue.pointer)},
        {"code", codeName(issue.code)},
        {"message", sentence(issue, input)},
    });
}

struct Checked
{
    Json answer;
    Status status = Status::Done;
};

/// A store is accepted if all of it can be read.
Checked checkStore(const std::string &input)
{
    std::vector<std::string> damage;
    Status status = Status::Done;
    Json person;
    Json entries;
    Json lost;
    // Where there are several persons each is read by the verb that is given one.
    if (auto open = OpenDiary::openToRead(input)) {
        damage = sentences(open->reading());
        person = open->person();
        entries = open->entries().size();
        if (const auto gone = open->store().lost())
            lost = Json(*gone);
        status = damage.empty() ? Status::Done : Status::MachineFailed;
    } else {
        damage.push_back(sentence(open.error(), input));
        status = statusOf(open.error());
    }
    Json issues = Json::array();
    for (const std::string &one : damage) {
        complain(one);
        issues.add(Json::object({{"message", one}}));
    }
    return {Json::object({
                {"input", input},
                {"accepted", damage.empty()},
                {"person", std::move(person)},
                {"entries", std::move(entries)},
                {"lost", std::move(lost)},
                {"issues", std::move(issues)},
            }),
        status};
}

Checked check(const std::string &input, bool isAlone)
{
    if (storeIsAt(input))
        return checkStore(input);
    const auto read = readOutside(input);
    if (read) {
        return {Json::object({
                    {"input", input},
                    {"accepted", true},
                    {"person", read->person},
                    {"entries", read->entries.size()},
                    {"issues", Json::array()},
                }),
            Status::Done};
    }
    Json issues = Json::array();
    for (const Issue &issue : read.error()) {
        issues.add(toJson(issue, input));
        const bool namesInput = isAlone || issue.file.empty();
        complain((namesInput ? std::string() : shown(input) + ", ") + sentence(issue, input));
    }
    return {Json::object({
                {"input", input},
                {"accepted", false},
                {"person", nullptr},
                {"entries", nullptr},
                {"issues", std::move(issues)},
            }),
        statusOf(read.error())};
}

} // namespace

Status checkInputs(Words words)
{
    const auto arguments = Arguments::parse(words, {});
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().empty())
        return wrongUsage("The verb check needs at least one INPUT, a folder of tables or a store.");

    Json answers = Json::array();
    Status status = Status::Done;
    for (const std::string &input : arguments->operands()) {
        Checked checked = check(input, arguments->operands().size() == 1);
        answers.add(std::move(checked.answer));
        status = std::max(status, checked.status);
    }
    return std::max(status, print(answers.toText()));
}

} // namespace morrow::batch
