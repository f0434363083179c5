// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/entry_tables.h"
#include "exchange/plan_tables.h"
#include "exchange/table_layout.h"
#include "exchange/tables.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace morrow {

namespace {

namespace fs = std::filesystem;

using Files = std::map<std::string, std::string, std::less<>>;

bool isTable(std::string_view name)
{
    const auto &tables = entryTables();
    return name == kSettingsFile || name == kComplaintsFile || name == kPlanFile
        || std::any_of(tables.begin(), tables.end(), [name](const EntryTable &table) { return table.file == name; });
}

FileError fileError(const std::error_code &error)
{
    return error == std::errc::permission_denied ? FileError::NoPermission : FileError::Io;
}

/// Whether \a name has to be a table. Files that do not end in .csv are nobody's business.
bool endsLikeTable(const fs::path &name)
{
    return name.extension() == ".csv";
}

/// Every table in \a folder by its name; one that has no place among them without its bytes.
Files load(const fs::path &folder, std::vector<Issue> &issues)
{
    Files files;
    std::error_code error;
    const bool isFolder = fs::is_directory(folder, error);
    if (!isFolder && (!error || error == std::errc::no_such_file_or_directory || error == std::errc::not_a_directory)) {
        issues.push_back({.code = IssueCode::FolderMissing});
        return files;
    }
    std::vector<std::string> names;
    fs::directory_iterator at(folder, error);
    for (; !error && at != fs::directory_iterator(); at.increment(error)) {
        if (endsLikeTable(at->path()))
            names.push_back(at->path().filename().string());
    }
    if (error) {
        issues.push_back({.code = IssueCode::Unreadable, .fileError = fileError(error)});
        return files;
    }
    std::sort(names.begin(), names.end());
    for (const std::string &name : names) {
        auto bytes = isTable(name) ? readFile(folder / name, kMaxTableBytes) : std::string();
        if (bytes)
            files.emplace(name, *std::move(bytes));
        else
            issues.push_back({.code = IssueCode::Unreadable, .file = name, .fileError = bytes.error()});
    }
    return files;
}

/// Reads \a files, unless there are \a issues already.
Result<TablesDiary, std::vector<Issue>> read(Files files, std::vector<Issue> issues)
{
    for (const auto &[name, bytes] : files) {
        if (endsLikeTable(name) && !isTable(name))
            issues.push_back({.code = IssueCode::UnknownFile, .file = name});
    }
    if (issues.empty() && !files.contains(kPlanFile))
        issues.push_back({.code = IssueCode::PlanMissing});
    if (!issues.empty())
        return failure(std::move(issues));

    Sha256 hash;
    const PlanTables plan(files, issues);
    EntryTables tables(files, plan, hash, issues);
    if (!issues.empty())
        return failure(std::move(issues));

    static const CivilDay epoch = *CivilDay::fromNumber(0);
    const auto own = plan.earliestDay();
    const auto rows = tables.earliestDay();
    std::vector<Entry> ofPlan = plan.entries(std::min(own.value_or(rows.value_or(epoch)), rows.value_or(own.value_or(epoch))), hash);
    tables.checkTogether(ofPlan);
    if (!issues.empty())
        return failure(std::move(issues));

    TablesDiary diary{tables.take(), plan.person()};
    std::move(ofPlan.begin(), ofPlan.end(), std::back_inserter(diary.entries));
    std::sort(diary.entries.begin(), diary.entries.end(), [](const Entry &a, const Entry &b) {
        return std::tuple(a.day, name(a.kind), std::string_view(a.id)) < std::tuple(b.day, name(b.kind), std::string_view(b.id));
    });
    return diary;
}

} // namespace

Result<TablesDiary, std::vector<Issue>> readTables(const fs::path &folder)
{
    std::vector<Issue> issues;
    Files files = load(folder, issues);
    return read(std::move(files), std::move(issues));
}

Result<TablesDiary, std::vector<Issue>> readTableFiles(std::map<std::string, std::string, std::less<>> files)
{
    return read(std::move(files), {});
}

} // namespace morrow
