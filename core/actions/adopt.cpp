// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/adopt.h"

#include "exchange/fhir.h"
#include "exchange/tables.h"

#include <algorithm>

namespace morrow {

Result<Offered, AdoptProblem> readOffered(const std::filesystem::path &path)
{
    auto bytes = readFile(path, kMaxFhirBytes);
    if (!bytes)
        return failure(AdoptProblem(bytes.error()));
    auto diary = readFhir(*bytes);
    if (!diary)
        return failure(AdoptProblem(std::move(diary.error())));
    if (!std::ranges::all_of(diary->entries, canBeHandedOver, &Entry::kind))
        return failure(AdoptProblem(AdoptRefusal::NotToBeHandedOver));
    return Offered{std::move(diary->person), std::move(diary->entries)};
}

Result<Offered, AdoptProblem> readOffered(std::map<std::string, std::string, std::less<>> tables)
{
    auto diary = readTableFiles(std::move(tables));
    if (!diary)
        return failure(AdoptProblem(std::move(diary.error())));
    return Offered{diary->person.value_or("demo"), std::move(diary->entries)};
}

Result<Adopted, AdoptProblem> adopt(OpenDiary &diary, Offered offered)
{
    if (offered.person != diary.person())
        return failure(AdoptProblem(AdoptRefusal::OtherPerson));
    const DiaryUnion here(diary.entries());
    if (auto clashes = here.clashes(offered.entries, Source::Other); !clashes.empty())
        return failure(AdoptProblem(std::move(clashes)));
    Adopted adopted;
    std::vector<Entry> fresh;
    for (Entry &entry : offered.entries) {
        if (here.holds(entry.id)) {
            ++adopted.known;
            continue;
        }
        ++adopted.counts[entry.kind];
        fresh.push_back(std::move(entry));
    }
    if (fresh.empty())
        return adopted;
    if (auto added = diary.add(std::move(fresh)); !added)
        return failure(AdoptProblem(added.error()));
    return adopted;
}

Result<OpenDiary, AdoptProblem> beginWith(const std::filesystem::path &folder, Offered offered)
{
    const DiaryUnion nothing;
    if (auto clashes = nothing.clashes(offered.entries, Source::Other); !clashes.empty())
        return failure(AdoptProblem(std::move(clashes)));
    auto diary = OpenDiary::open(folder, offered.person);
    if (!diary)
        return failure(AdoptProblem(diary.error()));
    if (auto added = diary->add(std::move(offered.entries)); !added)
        return failure(AdoptProblem(added.error()));
    return *std::move(diary);
}

} // namespace morrow
