// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/demo.h"

#include "batch/arguments.h"
#include "batch/json.h"
#include "batch/verbs.h"
#include "batch/writing.h"

#include <array>
#include <filesystem>
#include <system_error>

namespace morrow::batch {

namespace {

namespace fs = std::filesystem;

struct Person
{
    const char *folder;
    TablesDiary (*diary)();
};

constexpr std::array kPeople{Person{"runner", demoRunner}, Person{"two-complaints", demoTwoComplaints}};

FileError fromCode(const std::error_code &error) noexcept
{
    if (error == std::errc::no_such_file_or_directory)
        return FileError::Missing;
    if (error == std::errc::not_a_directory)
        return FileError::NotRegular;
    if (error == std::errc::permission_denied || error == std::errc::operation_not_permitted)
        return FileError::NoPermission;
    if (error == std::errc::read_only_file_system)
        return FileError::ReadOnly;
    if (error == std::errc::no_space_on_device)
        return FileError::Full;
    return error == std::errc::file_exists ? FileError::Exists : FileError::Io;
}

/// All of it or nothing: what was made is taken away again where the rest fails.
class Undo
{
public:
    Undo() = default;
    Undo(const Undo &) = delete;
    Undo &operator=(const Undo &) = delete;
    ~Undo()
    {
        std::error_code ignored;
        for (const fs::path &path : m_made)
            fs::remove_all(path, ignored);
    }
    void remember(fs::path path) { m_made.push_back(std::move(path)); }
    void forget() { m_made.clear(); }

private:
    std::vector<fs::path> m_made;
};

} // namespace

Status writeDemo(Words words)
{
    const auto arguments = Arguments::parse(words, {});
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().size() != 1)
        return wrongUsage("The verb demo needs one DIR, the folder to write into.");
    const fs::path folder = arguments->operands().front();

    std::error_code error;
    for (const Person &person : kPeople) {
        if (fs::exists(fs::symlink_status(folder / person.folder, error)))
            return refuseToWrite(FileError::Exists, (folder / person.folder).string());
    }
    Undo undo;
    if (fs::create_directory(folder, error))
        undo.remember(folder);
    else if (error)
        return refuseToWrite(fromCode(error), folder.string());

    Json written = Json::array();
    for (const Person &person : kPeople) {
        const fs::path path = folder / person.folder;
        const TablesDiary diary = person.diary();
        if (const auto done = writeFolder(path, writeTables(diary).files); !done)
            return refuseToWrite(done.error(), path.string());
        undo.remember(path);
        written.add(Json::object({{"folder", path.string()}, {"person", diary.person}, {"entries", diary.entries.size()}}));
    }
    undo.forget();
    return print(Json::object({{"written", std::move(written)}}).toText());
}

} // namespace morrow::batch
