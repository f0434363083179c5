// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"

#include "actions/record.h"

#include <algorithm>
#include <array>
#include <iostream>
#include <string>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--store", "DIR"}};

struct Answer
{
    Json json;
    Status status = Status::Done;
};

Answer refused(const std::string &why, Status status)
{
    return {Json::object({{"saved", false}, {"why", why}}), status};
}

/// Records what one line says; the answer is given when it is durable.
Answer recordLine(OpenDiary &diary, const std::string &line, const std::string &store)
{
    auto draft = readEntryLine(line);
    if (!draft)
        return refused(sentence(draft.error()), Status::Refused);
    const auto entry = record(diary, *std::move(draft), systemClock()->now());
    if (entry)
        return {Json::object({{"id", entry->id}, {"saved", true}}), Status::Done};
    if (const auto *const error = std::get_if<StoreError>(&entry.error()))
        return refused(sentence(*error, store), statusOf(*error));
    std::string why;
    for (const DraftProblem &problem : std::get<std::vector<DraftProblem>>(entry.error()))
        why += (why.empty() ? "" : " ") + sentence(problem);
    return refused(why, Status::Refused);
}

} // namespace

Status recordEntries(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto store = arguments->value("--store");
    if (!store || !arguments->operands().empty())
        return wrongUsage("The verb record needs --store with a folder, and nothing else.");

    auto diary = OpenDiary::open(*store);
    if (!diary) {
        complain(sentence(diary.error(), *store));
        return statusOf(diary.error());
    }
    Status status = Status::Done;
    for (std::string line; std::getline(std::cin, line);) {
        Answer answer = recordLine(*diary, line, *store);
        status = std::max(status, answer.status);
        if (const Status printed = print(answer.json.toLine()); printed != Status::Done)
            return printed;
    }
    if (const auto backedUp = diary->backUp(systemClock()->now()); !backedUp) {
        complain("What was saved is in the store, but no backup of it could be made.");
        status = Status::MachineFailed;
    }
    return status;
}

} // namespace morrow::batch
