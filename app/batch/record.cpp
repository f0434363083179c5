// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/record.h"
#include "actions/record_at_desk.h"
#include "batch/arguments.h"
#include "batch/desk_words.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"

#include <algorithm>
#include <array>
#include <functional>
#include <iostream>
#include <string>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--store", "DIR"}, OptionRule{"--desk", "DIR"}, OptionRule{"--person", "REF"}};

struct Answer
{
    Json json;
    Status status = Status::Done;
};

Answer refused(const std::string &why, Status status)
{
    return {Json::object({{"saved", false}, {"why", why}}), status};
}

Answer saved(const Entry &entry)
{
    return {Json::object({{"id", entry.id}, {"saved", true}}), Status::Done};
}

template<class Problem>
Answer refusedFor(const std::vector<Problem> &problems)
{
    std::string why;
    for (const Problem &problem : problems)
        why += (why.empty() ? "" : " ") + sentence(problem);
    return refused(why, Status::Refused);
}

/// Records what one line says; the answer is given when it is durable.
Answer recordLine(OpenDiary &diary, Draft draft, const std::string &store)
{
    const auto entry = record(diary, std::move(draft), systemClock()->now());
    if (entry)
        return saved(*entry);
    if (const auto *const error = std::get_if<StoreError>(&entry.error()))
        return refused(sentence(*error, store), statusOf(*error));
    return refusedFor(std::get<std::vector<DraftProblem>>(entry.error()));
}

Answer recordLine(OpenDesk &desk, const std::string &person, Draft draft, const std::string &folder)
{
    const auto entry = recordAtDesk(desk, person, std::move(draft), systemClock()->now());
    if (entry)
        return saved(*entry);
    if (const auto error = deskErrorIn(entry.error()))
        return refused(sentence(*error, folder), statusOf(*error));
    if (const auto *const problem = std::get_if<DeskProblem>(&entry.error()))
        return refused(sentence(*problem), Status::Refused);
    if (const auto *const problems = std::get_if<std::vector<PlanProblem>>(&entry.error()))
        return refusedFor(*problems);
    return refusedFor(std::get<std::vector<DraftProblem>>(entry.error()));
}

/// Answers each line of standard input with what \a recordDraft says of it.
Status answerLines(const std::function<Answer(Draft)> &recordDraft)
{
    Status status = Status::Done;
    for (std::string line; std::getline(std::cin, line);) {
        auto draft = readEntryLine(line);
        const Answer answer = draft ? recordDraft(*std::move(draft)) : refused(sentence(draft.error()), Status::Refused);
        status = std::max(status, answer.status);
        if (const Status printed = print(answer.json.toLine()); printed != Status::Done)
            return printed;
    }
    return status;
}

Status recordAtHome(const std::string &store)
{
    auto diary = OpenDiary::open(store);
    if (!diary) {
        complain(sentence(diary.error(), store));
        return statusOf(diary.error());
    }
    const Status status = answerLines([&](Draft draft) { return recordLine(*diary, std::move(draft), store); });
    if (const auto backedUp = diary->backUp(systemClock()->now()); !backedUp) {
        complain("What was saved is in the store, but no backup of it could be made.");
        return Status::MachineFailed;
    }
    return status;
}

Status recordForClinic(const std::string &folder, const std::string &person)
{
    auto desk = OpenDesk::open(folder);
    if (!desk) {
        complain(sentence(desk.error(), folder));
        return statusOf(desk.error());
    }
    for (const std::string &one : sentences(desk->news()))
        complain(one);
    return answerLines([&](Draft draft) { return recordLine(*desk, person, std::move(draft), folder); });
}

} // namespace

Status recordEntries(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto store = arguments->value("--store");
    const auto desk = arguments->value("--desk");
    const auto person = arguments->value("--person");
    if (store.has_value() == desk.has_value() || desk.has_value() != person.has_value() || !arguments->operands().empty())
        return wrongUsage(
            "The verb record needs --store with a folder, or --desk with a folder and --person with a ref, and nothing else.");
    return store ? recordAtHome(*store) : recordForClinic(*desk, *person);
}

} // namespace morrow::batch
