// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"
#include "batch/input.h"
#include "batch/measures_json.h"
#include "batch/verbs.h"
#include "report/overview.h"

#include <algorithm>
#include <array>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{
    OptionRule{"--as-of", "DAY"}, OptionRule{"--from", "DAY"}, OptionRule{"--person", "REF"}, OptionRule{"--text", ""}};

/// The diary day before the present one: the last that is closed.
CivilDay yesterday(const Diary &diary)
{
    return diaryDay(systemClock()->now(), diary.dayStarts()) - 1;
}

} // namespace

Status measureDiary(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    if (arguments->operands().size() != 1)
        return wrongUsage("The verb measure needs one INPUT, a folder of tables or a store.");
    const auto asOf = arguments->day("--as-of");
    if (!asOf)
        return wrongUsage(asOf.error());
    const auto from = arguments->day("--from");
    if (!from)
        return wrongUsage(from.error());

    auto read = readDiary(arguments->operands().front(), arguments->value("--person"));
    if (!read)
        return read.error();
    const Diary diary = Diary::from(std::move(read->diary.entries));
    const CivilDay to = asOf->value_or(yesterday(diary));
    const auto measures = measure(diary, to, *from);
    if (!measures) // MeasureError::WindowEmpty, the only one
        return wrongUsage("The day of --from is after " + to.toString() + ", the last day that counts.");
    return std::max(read->status, print(arguments->has("--text") ? overview(diary, *measures, to) : toJson(*measures, to).toText()));
}

} // namespace morrow::batch
