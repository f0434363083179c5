// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/take_in.h"

#include "batch/arguments.h"
#include "batch/desk_words.h"
#include "batch/json.h"
#include "batch/verbs.h"

#include <algorithm>
#include <array>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--desk", "DIR"}};

} // namespace

Status undoTakingIn(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto folder = arguments->value("--desk");
    if (!folder || arguments->operands().size() != 1)
        return wrongUsage("The verb undo-take-in needs the SHA-256 of one file and --desk with a folder.");

    const std::string &file = arguments->operands()[0];
    auto desk = OpenDesk::open(*folder);
    if (!desk) {
        complain(sentence(desk.error(), *folder));
        return statusOf(desk.error());
    }
    for (const std::string &one : sentences(desk->news()))
        complain(one);
    const auto undone = undoTakeIn(*desk, file, systemClock()->now());
    if (undone) {
        return print(Json::object(
            {{"sha256", undone->file}, {"person", undone->person}, {"entriesBefore", undone->before}, {"entries", undone->after}})
                         .toText());
    }
    if (const auto error = deskErrorIn(undone.error())) {
        complain(sentence(*error, *folder));
        return statusOf(*error);
    }
    const UndoProblem problem = std::get<UndoProblem>(undone.error());
    complain(sentence(problem, file));
    return problem == UndoProblem::RecordDamaged ? Status::MachineFailed : Status::Refused;
}

} // namespace morrow::batch
