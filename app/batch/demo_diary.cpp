// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/demo_diary.h"

#include "base/ids.h"

#include <algorithm>
#include <tuple>

namespace morrow::batch {

namespace {

constexpr std::int64_t kMsPerMinute = 60'000;
constexpr int kSummerMinutes = 60;

/// 01:00 UTC on the last Sunday of \a month, which has 31 days, in the year of \a day.
std::int64_t turnOfClocks(CivilDay day, unsigned month)
{
    const int year = std::stoi(day.toString().substr(0, 4));
    const CivilDay last = *CivilDay::from(year, month, 31);
    return ((last - (last.weekday() + 1) % 7).number() * std::int64_t{24} + 1) * 60 * kMsPerMinute;
}

} // namespace

std::uint64_t Chance::next() noexcept
{
    m_state += 0x9E3779B97F4A7C15U;
    std::uint64_t mixed = m_state;
    mixed = (mixed ^ (mixed >> 30U)) * 0xBF58476D1CE4E5B9U;
    mixed = (mixed ^ (mixed >> 27U)) * 0x94D049BB133111EBU;
    return mixed ^ (mixed >> 31U);
}

int Chance::below(int count) noexcept
{
    return static_cast<int>(next() % static_cast<std::uint64_t>(count));
}

Moment Zone::at(CivilDay day, int hour, int minute, int second, int millisecond) const noexcept
{
    const std::int64_t wall = ((day.number() * std::int64_t{24} + hour) * 60 + minute) * kMsPerMinute + second * 1000 + millisecond;
    const std::int64_t winter = wall - winterMinutes * kMsPerMinute;
    const std::int64_t summer = winter - kSummerMinutes * kMsPerMinute;
    // In the hour that comes twice this is the first of the two.
    const bool isSummer = summer >= turnOfClocks(day, 3) && summer < turnOfClocks(day, 10);
    return isSummer ? Moment{summer, winterMinutes + kSummerMinutes} : Moment{winter, winterMinutes};
}

Body bodyOf(std::initializer_list<Said> said)
{
    Body body;
    for (const Said &one : said) {
        const auto *const text = std::get_if<std::string>(&one.value);
        if (!text || !text->empty())
            body.set(one.field, one.value);
    }
    return body;
}

CivilDay on(std::string_view text)
{
    return CivilDay::parse(text).value();
}

DemoDiary::DemoDiary(std::string person, Zone zone, std::uint64_t seed)
    : m_person(std::move(person))
    , m_zone(zone)
    , m_chance(seed)
{
}

Moment DemoDiary::at(CivilDay day, int hour, int minute)
{
    const int second = m_chance.below(60);
    return m_zone.at(day, hour, minute, second, m_chance.below(1000));
}

DemoDiary::Ref DemoDiary::onPaper(Kind kind, CivilDay day, Author author, Body body)
{
    m_drafts.push_back({Entry{"", kind, day, std::nullopt, author, std::nullopt, ""}, std::move(body), std::nullopt, {}});
    return m_drafts.size() - 1;
}

DemoDiary::Ref DemoDiary::recorded(Kind kind, CivilDay day, Moment moment, Author author, Body body)
{
    const Ref ref = onPaper(kind, day, author, std::move(body));
    m_drafts[ref].entry.recorded = moment;
    return ref;
}

DemoDiary::Ref DemoDiary::corrected(Ref old, Moment moment, Body body)
{
    const Entry before = m_drafts[old].entry;
    const Ref ref = recorded(before.kind, before.day, moment, before.author, std::move(body));
    m_drafts[ref].replaces = old;
    return ref;
}

void DemoDiary::pointAt(Ref from, Field field, Ref to)
{
    m_drafts[from].pointers.push_back({field, to});
}

void DemoDiary::complete(Draft &draft)
{
    for (const Pointer &pointer : draft.pointers)
        draft.body.set(pointer.field, m_drafts[pointer.to].entry.id);
    if (draft.replaces)
        draft.entry.replaces = m_drafts[*draft.replaces].entry.id;
    draft.entry.body = draft.body.toJson();
}

TablesDiary DemoDiary::finish()
{
    std::vector<Draft *> onDevice;
    for (Draft &draft : m_drafts) {
        if (draft.entry.recorded)
            onDevice.push_back(&draft);
    }
    std::stable_sort(onDevice.begin(), onDevice.end(),
        [](const Draft *a, const Draft *b) { return a->entry.recorded->utcMs < b->entry.recorded->utcMs; });
    IdSource ids([this] { return m_chance.next(); });
    for (Draft *const draft : onDevice)
        draft->entry.id = ids.next(draft->entry.recorded->utcMs);

    // An id that is derived needs the whole body, so whoever is pointed at comes first.
    Sha256 hash;
    for (Draft &draft : m_drafts) {
        complete(draft);
        if (!draft.entry.recorded)
            draft.entry.id = derivedId(draft.entry, hash);
    }

    TablesDiary diary{.entries = {}, .person = m_person};
    for (const Draft &draft : m_drafts)
        diary.entries.push_back(draft.entry);
    std::sort(diary.entries.begin(), diary.entries.end(), [](const Entry &a, const Entry &b) {
        return std::tuple(a.day, name(a.kind), std::string_view(a.id)) < std::tuple(b.day, name(b.kind), std::string_view(b.id));
    });
    return diary;
}

} // namespace morrow::batch
