// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"

#include "actions/restore.h"

#include <array>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--store", "DIR"}};

} // namespace

Status restoreStore(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto store = arguments->value("--store");
    if (!store || !arguments->operands().empty())
        return wrongUsage("The verb restore needs --store with a folder, and nothing else.");

    const auto report = restoreDiary(*store, systemClock()->now());
    if (!report) {
        complain(sentence(report.error(), *store));
        return statusOf(report.error());
    }
    return print(Json::object({
                                  {"back", report->back},
                                  {"missing", report->missing},
                                  {"sinceBackup", report->sinceBackup.empty() ? Json() : Json(report->sinceBackup)},
                                  {"sources", report->sources},
                              })
                     .toText());
}

} // namespace morrow::batch
