// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"

#include "actions/erase.h"

#include <array>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--store", "DIR"}, OptionRule{"--id", "ID"}};

} // namespace

Status eraseEntry(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto store = arguments->value("--store");
    const auto id = arguments->value("--id");
    if (!store || !id || !arguments->operands().empty())
        return wrongUsage("The verb erase needs --store with a folder and --id with an id, and nothing else.");

    const auto erased = eraseFrom(*store, *id, systemClock()->now());
    if (!erased) {
        complain(sentence(erased.error(), *store));
        return statusOf(erased.error());
    }
    if (*erased == 0)
        complain("The diary has no entry of that id; its backups were made anew.");
    return std::max(*erased == 0 ? Status::Refused : Status::Done, print(Json::object({{"erased", *erased}}).toText()));
}

} // namespace morrow::batch
