// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/whose.h"

#include <algorithm>
#include <string_view>
#include <unordered_set>

namespace morrow {

namespace {

std::optional<int> wholeNumber(const Body &body, Field field)
{
    const Decimal *const number = body.number(field);
    return number ? std::optional(number->toInt()) : std::nullopt;
}

} // namespace

Whose whose(const OpenDesk &desk, const FhirDiary &diary)
{
    Whose result{.ref = diary.person};
    if (desk.index().isKnown(diary.person))
        result.person = desk.index().personOf(diary.person);
    BodyReader reader;
    int newest = 0;
    for (const Entry &entry : diary.entries) {
        const auto body = entry.kind == Kind::Plan ? reader.read(entry.body) : std::nullopt;
        if (!body)
            continue;
        const std::string plan(body->textOr(Field::Plan));
        if (std::find(result.plans.begin(), result.plans.end(), plan) == result.plans.end())
            result.plans.push_back(plan);
        const auto year = wholeNumber(*body, Field::BirthYear);
        if (year && body->intOr(Field::Number, 1) >= newest) {
            newest = body->intOr(Field::Number, 1);
            result.birthYear = year;
        }
    }
    return result;
}

std::optional<KnownAs> knownAs(const std::vector<Entry> &entries)
{
    std::unordered_set<std::string_view> replaced;
    for (const Entry &entry : entries) {
        if (entry.kind == Kind::KnownAs && entry.replaces)
            replaced.insert(*entry.replaces);
    }
    const Entry *newest = nullptr;
    for (const Entry &entry : entries) {
        const bool counts = entry.kind == Kind::KnownAs && !replaced.contains(entry.id);
        if (counts && (!newest || countsBefore(entry, *newest)))
            newest = &entry;
    }
    const auto body = newest ? BodyReader().read(newest->body) : std::nullopt;
    if (!body || body->has(Field::Withdrawn))
        return std::nullopt;
    return KnownAs{
        std::string(body->textOr(Field::Label)), std::string(body->textOr(Field::FileNumber)), wholeNumber(*body, Field::BirthYear)};
}

} // namespace morrow
