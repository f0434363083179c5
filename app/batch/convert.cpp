// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"
#include "batch/input.h"
#include "batch/json.h"
#include "batch/verbs.h"
#include "batch/words.h"
#include "batch/writing.h"

#include <algorithm>
#include <array>
#include <filesystem>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--to", "a format"}};

/// Every format that there is to be; those that are not built are told apart from slips.
constexpr std::array<std::string_view, 12> kFormats{
    "store", "tables", "summary", "plan", "visit", "calendar", "sheet", "handout", "review", "discharge", "transaction", "code"};

Json toJson(const TablesFolder &folder, const std::string &input, const std::string &out)
{
    Json files = Json::array();
    for (const auto &[file, bytes] : folder.files)
        files.add(Json::object({{"file", file}, {"bytes", bytes.size()}}));
    Json leftOut = Json::array();
    for (const auto &[what, count] : folder.leftOut)
        leftOut.add(Json::object({{"what", codeName(what)}, {"entries", count}, {"message", words(what)}}));
    return Json::object({
        {"input", input},
        {"to", "tables"},
        {"out", out},
        {"files", std::move(files)},
        {"leftOut", std::move(leftOut)},
    });
}

} // namespace

Status convertDiary(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().size() != 2)
        return wrongUsage("The verb convert needs one INPUT and one OUT.");
    const auto format = arguments->value("--to");
    if (!format)
        return wrongUsage("The verb convert needs --to with a format.");
    if (std::find(kFormats.begin(), kFormats.end(), *format) == kFormats.end())
        return wrongUsage("There is no format " + shown(*format) + ".");
    if (*format != "tables")
        return wrongUsage("The format " + *format + " is not built yet; tables is.");

    const std::string &input = arguments->operands()[0];
    const std::string &out = arguments->operands()[1];
    std::error_code ignored;
    if (std::filesystem::symlink_status(out, ignored).type() != std::filesystem::file_type::not_found && !ignored)
        return refuseToWrite(FileError::Exists, out);

    const auto read = readDiary(input);
    if (!read)
        return read.error();
    const TablesFolder folder = writeTables(*read);
    if (const auto written = writeFolder(out, folder.files); !written)
        return refuseToWrite(written.error(), out);
    return print(toJson(folder, input, out).toText());
}

} // namespace morrow::batch
