// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/input.h"

#include "actions/open.h"
#include "base/file.h"
#include "batch/store_words.h"
#include "batch/words.h"
#include "exchange/fhir.h"

#include <filesystem>

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
    std::string ref = open->person();
    return InputDiary{{(*std::move(open)).takeEntries(), std::move(ref)}, damage.empty() ? Status::Done : Status::MachineFailed};
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

Result<TablesDiary, std::vector<Issue>> readOutside(const std::string &input)
{
    std::error_code error;
    const auto type = std::filesystem::status(input, error).type();
    if (type == std::filesystem::file_type::directory || type == std::filesystem::file_type::not_found || error)
        return readTables(input);
    const auto bytes = readFile(input, kMaxFhirBytes);
    if (!bytes)
        return failure(std::vector{Issue{.code = IssueCode::Unreadable, .fileError = bytes.error()}});
    auto diary = readFhir(*bytes);
    if (!diary)
        return failure(std::move(diary.error()));
    return TablesDiary{std::move(diary->entries), std::move(diary->person)};
}

Result<InputDiary, Status> readDiary(const std::string &input, const std::optional<std::string> &person)
{
    if (storeIsAt(input))
        return readStore(input, person);
    if (person) {
        complain("Only a store holds several persons; " + shown(input) + " is none.");
        return failure(Status::WrongUsage);
    }
    auto read = readOutside(input);
    if (read)
        return InputDiary{*std::move(read), Status::Done};
    for (const Issue &issue : read.error())
        complain(sentence(issue, input));
    return failure(statusOf(read.error()));
}

} // namespace morrow::batch
