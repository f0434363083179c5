// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/heard.h"

#include <algorithm>
#include <string_view>
#include <unordered_set>

namespace morrow {

namespace {

ClinicSaid said(std::string_view answer) noexcept
{
    return answer == "go-on" ? ClinicSaid::GoOn : answer == "lighter" ? ClinicSaid::Lighter : ClinicSaid::Wait;
}

/// The entry of \a sign and, through \c replaces, all that it corrects.
std::unordered_set<std::string_view> namesOf(const std::vector<Entry> &entries, const ReportedSign &sign)
{
    std::unordered_set<std::string_view> names{entries[sign.entry].id};
    for (const Entry *at = &entries[sign.entry]; at && at->replaces && names.insert(*at->replaces).second;) {
        const auto older = std::ranges::find(entries, *at->replaces, &Entry::id);
        at = older == entries.end() ? nullptr : &*older;
    }
    return names;
}

} // namespace

std::optional<Heard> heardAbout(const Diary &diary, const ReportedSign &sign)
{
    const std::vector<Entry> &entries = diary.entries();
    std::unordered_set<std::string_view> replaced;
    for (const Entry &entry : entries) {
        if (entry.kind == Kind::Heard && entry.replaces)
            replaced.insert(*entry.replaces);
    }
    const std::unordered_set<std::string_view> names = namesOf(entries, sign);
    BodyReader reader;
    std::optional<Heard> last;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Entry &entry = entries[i];
        if (entry.kind != Kind::Heard || replaced.contains(entry.id))
            continue;
        const auto body = reader.read(entry.body);
        if (!body || body->has(Field::Withdrawn) || !names.contains(body->textOr(Field::Flag)))
            continue;
        if (last && (last->day > entry.day || (last->day == entry.day && countsBefore(entries[last->entry], entry))))
            continue;
        last = Heard{static_cast<EntryIndex>(i), entry.day, said(body->textOr(Field::Answer))};
    }
    return last;
}

bool asksToWait(const Diary &diary, const ReportedSign &sign)
{
    if (sign.clearedOn)
        return false;
    const auto heard = heardAbout(diary, sign);
    return !heard || heard->said == ClinicSaid::Wait;
}

} // namespace morrow
