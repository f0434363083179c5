// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/diary_union.h"
#include "batch/arguments.h"
#include "batch/desk_words.h"
#include "batch/input.h"
#include "batch/json.h"
#include "batch/verbs.h"
#include "batch/words.h"
#include "batch/writing.h"
#include "exchange/fhir.h"

#include <algorithm>
#include <array>
#include <filesystem>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--person", "REF"}};

} // namespace

Status mergeDiaries(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().size() < 2)
        return wrongUsage("The verb merge needs at least one INPUT and one OUT.");
    const std::span<const std::string> inputs(arguments->operands().data(), arguments->operands().size() - 1);
    const std::string &out = arguments->operands().back();
    std::error_code ignored;
    if (std::filesystem::symlink_status(out, ignored).type() != std::filesystem::file_type::not_found && !ignored)
        return refuseToWrite(FileError::Exists, out);

    DiaryUnion all;
    std::string person;
    Status status = Status::Done;
    for (const std::string &input : inputs) {
        const auto read = readDiary(input, arguments->value("--person"));
        if (!read)
            return read.error();
        status = std::max(status, read->status);
        if (!read->diary.person) {
            complain(sentence(Issue{.code = IssueCode::PersonMissing}, input));
            return Status::Refused;
        }
        if (!person.empty() && person != *read->diary.person) {
            complain(shown(input) + " is the diary of another person than " + shown(inputs.front()) + ".");
            return Status::Refused;
        }
        person = *read->diary.person;
        const auto clashes = all.clashes(read->diary.entries, Source::Other);
        for (const Clash &clash : clashes)
            complain(shown(input) + ": " + sentence(clash) + ".");
        if (!clashes.empty())
            return Status::Refused;
        all.add(read->diary.entries);
    }
    const FhirBundle bundle = writeFhir(all.entries(), person, FhirFile::Summary);
    if (const auto written = writeFile(out, bundle.json); !written)
        return refuseToWrite(written.error(), out);
    return std::max(status,
        print(Json::object({
                               {"out", out},
                               {"entries", bundle.entries},
                               {"notesLeftOut", bundle.notesLeftOut},
                               {"handedLeftOut", bundle.handedLeftOut},
                               {"deskOnlyLeftOut", bundle.deskOnlyLeftOut},
                           })
                  .toText()));
}

} // namespace morrow::batch
