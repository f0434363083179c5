// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/desk/clinic.h"

#include <cstdio>
#include <cstdlib>

namespace morrow::test {

namespace {

[[noreturn]] void slip(const char *what)
{
    std::fprintf(stderr, "a test cannot go on: %s\n", what);
    std::_Exit(3);
}

const char *nameOf(TakeInProblem::Code code)
{
    switch (code) {
    case TakeInProblem::Code::Waits:
        return "waits";
    case TakeInProblem::Code::UnknownPerson:
        return "unknown person";
    case TakeInProblem::Code::AnotherPerson:
        return "another person";
    case TakeInProblem::Code::ErasedPerson:
        return "erased person";
    case TakeInProblem::Code::SetAside:
        return "set aside";
    case TakeInProblem::Code::OfADesk:
        return "of a desk";
    case TakeInProblem::Code::Clashes:
        return "clashes";
    }
    return "";
}

std::string said(const Clash &clash)
{
    switch (clash.code) {
    case Clash::Code::TwoContentsForOneId:
        return "two contents for " + clash.what;
    case Clash::Code::ComplaintOfAnotherPlan:
        return "another plan's complaint " + clash.what;
    case Clash::Code::ItemOfAnotherPlan:
        return "another plan's item " + clash.what;
    }
    return {};
}

} // namespace

Foreign foreign(const std::vector<Entry> &entries, const std::string &ref, FhirFile file)
{
    Foreign result;
    result.bytes = writeFhir(entries, ref, file).json;
    auto diary = readFhir(result.bytes);
    if (!diary)
        slip("a file of ours cannot be read");
    result.diary = *std::move(diary);
    return result;
}

Foreign summary(const std::vector<Entry> &entries, const std::string &ref)
{
    return foreign(entries, ref, FhirFile::Summary);
}

std::vector<Entry> diaryOf(int first, int last)
{
    DiaryBuilder builder;
    builder.complaint("heel").item(item("raise", "2026-03-02", {onDays(3, 15)}));
    for (int number = first; number <= last; ++number) {
        const CivilDay on = day("2026-03-02") + number;
        const auto origin = [&](const char *what) {
            const Moment evening{on.number() * 86'400'000LL + 64'800'000, 60};
            return Origin{.id = what + std::to_string(number), .recorded = rfc3339(evening)};
        };
        builder.check(on, number % 11, std::nullopt, origin("check-"));
        builder.set(on, "morning", "raise", 1, 15, {}, origin("set-"));
    }
    auto entries = builder.entries();
    // The builder begins with a complaint of its own.
    std::erase_if(entries, [](const Entry &entry) { return entry.id == "complaint-main"; });
    return entries;
}

OpenDesk openedDesk(const std::filesystem::path &folder)
{
    auto desk = OpenDesk::open(folder);
    if (!desk)
        slip("the desk cannot be opened");
    return *std::move(desk);
}

void makeDesk(const std::filesystem::path &folder, const std::filesystem::path &record)
{
    std::filesystem::create_directories(record);
    std::filesystem::create_directories(folder);
    std::filesystem::create_directory_symlink(record, folder / "record");
}

WhoseAnswer somebodyKnown(const std::string &ref)
{
    return {.isNew = false, .as = ref};
}

std::string takingIn(OpenDesk &desk, const Foreign &file, const WhoseAnswer &answer, Moment now)
{
    const auto taken = takeIn(desk, file.diary, file.bytes, answer, now);
    if (taken)
        return "added " + std::to_string(taken->added) + " known " + std::to_string(taken->known);
    const auto *const problems = std::get_if<std::vector<TakeInProblem>>(&taken.error());
    if (!problems)
        return "failed";
    std::string all;
    for (const TakeInProblem &problem : *problems)
        all += (all.empty() ? "" : ", ") + (problem.clash ? said(*problem.clash) : std::string(nameOf(problem.code)));
    return all;
}

std::string saying(OpenDesk &desk, const std::string &ref, Draft draft, Moment now)
{
    draft.author = Author::Clinic;
    const auto entry = recordAtDesk(desk, ref, std::move(draft), now);
    if (entry)
        return "said";
    if (const auto *const problem = std::get_if<DeskProblem>(&entry.error()))
        return *problem == DeskProblem::ErasedPerson ? "erased person" : *problem == DeskProblem::NotReadBack ? "not read back" : "refused";
    if (std::holds_alternative<std::vector<DraftProblem>>(entry.error()))
        return "no such draft";
    return std::holds_alternative<std::vector<PlanProblem>>(entry.error()) ? "no such plan" : "failed";
}

Draft visitOn(Day day)
{
    Draft draft{.kind = Kind::Visit, .day = CivilDay(day), .author = Author::Clinic};
    draft.body = body({{Field::Complaint, std::string("heel")}, {Field::Impulses, Decimal::whole(2000)}});
    return draft;
}

Draft named(const std::string &label)
{
    Draft draft{.kind = Kind::KnownAs, .author = Author::Clinic};
    draft.body.set(Field::Label, label);
    return draft;
}

Sums sumsOf(OpenDesk &desk)
{
    Sums sums;
    const auto persons = desk.store().persons();
    for (const std::string &person : *persons) {
        const auto reading = desk.store().read(person);
        sums[person]
            = std::to_string(reading->entries.size()) + (reading->isWhole() ? " " : " damaged ") + toHex(sumOf(reading->entries).value());
    }
    return sums;
}

} // namespace morrow::test
