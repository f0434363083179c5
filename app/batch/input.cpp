// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/input.h"

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

} // namespace

Status statusOf(const std::vector<Issue> &issues) noexcept
{
    for (const Issue &issue : issues) {
        if (isOfTheMachine(issue))
            return Status::MachineFailed;
    }
    return Status::Refused;
}

Result<TablesDiary, Status> readDiary(const std::string &input)
{
    auto read = readTables(input);
    if (read)
        return *std::move(read);
    for (const Issue &issue : read.error())
        complain(sentence(issue, input));
    return failure(statusOf(read.error()));
}

} // namespace morrow::batch
