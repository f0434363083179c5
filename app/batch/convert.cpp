// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/open.h"
#include "batch/arguments.h"
#include "batch/input.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"
#include "batch/words.h"
#include "batch/writing.h"
#include "exchange/fhir.h"

#include <algorithm>
#include <array>
#include <filesystem>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--to", "a format"}, OptionRule{"--person", "REF"}};

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

Status toTables(const TablesDiary &diary, const std::string &input, const std::string &out)
{
    const TablesFolder folder = writeTables(diary);
    if (const auto written = writeFolder(out, folder.files); !written)
        return refuseToWrite(written.error(), out);
    return print(toJson(folder, input, out).toText());
}

Status toStore(const TablesDiary &diary, const std::string &input, const std::string &out)
{
    if (!diary.person) {
        complain(sentence({.code = IssueCode::PersonMissing}, input));
        return Status::Refused;
    }
    const auto give = [&out](StoreError error) {
        complain(sentence(error, out));
        return statusOf(error);
    };
    auto store = OpenDiary::open(out, diary.person);
    if (!store)
        return give(store.error());
    const auto added = store->add(diary.entries);
    if (!added)
        return give(added.error());
    if (const auto backedUp = store->backUp(systemClock()->now()); !backedUp)
        return give(backedUp.error());
    return print(Json::object({{"input", input}, {"to", "store"}, {"out", out}, {"entries", added->added}}).toText());
}

struct FhirFormat
{
    std::string_view name;
    FhirFile file;
};
constexpr std::array kFhirFormats{
    FhirFormat{"summary", FhirFile::Summary}, FhirFormat{"plan", FhirFile::Plan}, FhirFormat{"visit", FhirFile::Visit}};

Status toFhir(const TablesDiary &diary, const FhirFormat &format, const std::string &input, const std::string &out)
{
    if (!diary.person) {
        complain(sentence({.code = IssueCode::PersonMissing}, input));
        return Status::Refused;
    }
    const FhirBundle bundle = writeFhir(diary.entries, *diary.person, format.file);
    if (const auto written = writeFile(out, bundle.json); !written)
        return refuseToWrite(written.error(), out);
    Json leftOut = Json::array();
    const auto add = [&leftOut](std::string_view what, int count, std::string_view message) {
        if (count > 0)
            leftOut.add(Json::object({{"what", what}, {"entries", count}, {"message", message}}));
    };
    add("notes", bundle.notesLeftOut, "notes that were replaced or withdrawn");
    add(codeName(LeftOut::Handed), bundle.handedLeftOut, words(LeftOut::Handed));
    add(codeName(LeftOut::DeskOnly), bundle.deskOnlyLeftOut, words(LeftOut::DeskOnly));
    add("not-the-clinics", bundle.othersLeftOut, "what the clinic did not say");
    return print(Json::object({
                                  {"input", input},
                                  {"to", format.name},
                                  {"out", out},
                                  {"person", diary.person},
                                  {"entries", bundle.entries},
                                  {"bytes", bundle.json.size()},
                                  {"sha256", toHex(sha256(bundle.json))},
                                  {"leftOut", std::move(leftOut)},
                              })
                     .toText());
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
    const auto *const fhir
        = std::find_if(kFhirFormats.begin(), kFhirFormats.end(), [&](const FhirFormat &one) { return one.name == *format; });
    const bool isFhir = fhir != kFhirFormats.end();
    if (*format != "tables" && *format != "store" && !isFhir)
        return wrongUsage("The format " + *format + " is not built yet; tables, store, summary, plan and visit are.");

    const std::string &input = arguments->operands()[0];
    const std::string &out = arguments->operands()[1];
    std::error_code ignored;
    if (std::filesystem::symlink_status(out, ignored).type() != std::filesystem::file_type::not_found && !ignored)
        return refuseToWrite(FileError::Exists, out);

    const auto read = readDiary(input, arguments->value("--person"));
    if (!read)
        return read.error();
    return std::max(read->status,
        isFhir                    ? toFhir(read->diary, *fhir, input, out)
            : *format == "tables" ? toTables(read->diary, input, out)
                                  : toStore(read->diary, input, out));
}

} // namespace morrow::batch
