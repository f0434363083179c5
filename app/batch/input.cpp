// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/input.h"

#include "actions/open.h"
#include "batch/store_words.h"
#include "batch/words.h"

namespace morrow::batch {

namespace {

bool isOfTheMachine(const Issue &issue) noexcept
{
    if (issue.code != IssueCode::Unreadable)
        return false;
    switch (issue.fileError) {
    case FileError::Missing:
    case FileError::Exists:
    case FileError::NotRegular:
    case FileError::TooLarge:
        return false;
    case FileError::NoPermission:
    case FileError::Full:
    case FileError::ReadOnly:
    case FileError::Io:
        return true;
    }
    return true;
}

Result<InputDiary, Status> readStore(const std::string &input, const std::optional<std::string> &person)
{
    const auto give = [&input](StoreError error) {
        complain(error == StoreError::Refused ? shown(input) + " holds the diaries of several persons; --person says whose."
                                              : sentence(error, input));
        return failure(error == StoreError::Refused ? Status::WrongUsage : statusOf(error));
    };
    auto open = OpenDiary::openToRead(input, person);
    if (!open)
        return give(open.error());
    const std::vector<std::string> damage = sentences(open->reading());
    for (const std::string &one : damage)
        complain(one);
    return InputDiary{{open->entries(), open->person()}, damage.empty() ? Status::Done : Status::MachineFailed};
}

} // namespace

Status statusOf(const std::vector<Issue> &issues) noexcept
{
    for (const Issue &issue : issues) {
        if (isOfTheMachine(issue))
            return Status::MachineFailed;
    }
    return Status::Refused;
}

Result<InputDiary, Status> readDiary(const std::string &input, const std::optional<std::string> &person)
{
    if (storeIsAt(input))
        return readStore(input, person);
    if (person) {
        complain("Only a store holds several persons; " + shown(input) + " is none.");
        return failure(Status::WrongUsage);
    }
    auto read = readTables(input);
    if (read)
        return InputDiary{*std::move(read), Status::Done};
    for (const Issue &issue : read.error())
        complain(sentence(issue, input));
    return failure(statusOf(read.error()));
}

} // namespace morrow::batch
