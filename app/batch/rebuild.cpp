// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/desk.h"

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

Status rebuildDesk(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto folder = arguments->value("--desk");
    if (!folder || !arguments->operands().empty())
        return wrongUsage("The verb rebuild needs --desk with a folder, and nothing else.");

    const auto rebuilt = OpenDesk::rebuild(*folder);
    if (!rebuilt) {
        complain(sentence(rebuilt.error(), *folder));
        return statusOf(rebuilt.error());
    }
    for (const std::string &one : sentences(rebuilt->record))
        complain(one);
    if (rebuilt->keepsOld)
        complain("The store that was there is kept as store.old.");
    const auto names = [](const std::vector<std::string> &files) {
        Json all = Json::array();
        for (const std::string &file : files)
            all.add(file);
        return all;
    };
    const bool isWhole = rebuilt->record.unread.empty() && rebuilt->record.missing.empty();
    return std::max(isWhole ? Status::Done : Status::MachineFailed,
        print(Json::object({
                               {"persons", rebuilt->persons},
                               {"entries", rebuilt->entries},
                               {"files", rebuilt->record.files},
                               {"unread", names(rebuilt->record.unread)},
                               {"missing", names(rebuilt->record.missing)},
                               {"clashing", names(rebuilt->record.clashing)},
                           })
                  .toText()));
}

} // namespace morrow::batch
