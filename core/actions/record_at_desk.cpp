// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/record_at_desk.h"

#include "base/ids.h"

#include <QUuid>

#include <algorithm>
#include <set>
#include <utility>

namespace morrow {

namespace {

auto refused(DeskRecordError error)
{
    return failure(std::move(error));
}

template<class... Errors>
auto of(const std::variant<Errors...> &error)
{
    return failure(std::visit([](auto one) { return DeskRecordError(std::move(one)); }, error));
}

/// The entries of \a diary that \a entry names: its complaint, and every revision of the plan that has its item.
std::vector<Entry> namedBy(const Entry &entry, const std::vector<Entry> &diary)
{
    BodyReader reader;
    const auto said = reader.read(entry.body);
    std::set<std::string, std::less<>> complaints;
    std::set<std::string, std::less<>> plans;
    if (entry.kind != Kind::Complaint && said->has(Field::Complaint))
        complaints.emplace(said->textOr(Field::Complaint));
    std::vector<std::pair<const Entry *, Body>> all;
    for (const Entry &one : diary) {
        if (one.kind == Kind::Plan || one.kind == Kind::Complaint) {
            if (auto body = reader.read(one.body))
                all.emplace_back(&one, *std::move(body));
        }
    }
    if (const std::string *const key = entry.kind == Kind::Plan ? nullptr : said->text(Field::Item)) {
        for (const auto &[one, body] : all) {
            const auto *const items = body.list(Field::Items);
            if (!items || std::none_of(items->begin(), items->end(), [key](const Body &item) { return item.textOr(Field::Item) == *key; }))
                continue;
            plans.emplace(body.textOr(Field::Plan));
            complaints.emplace(body.textOr(Field::Complaint));
        }
    }
    std::vector<Entry> named;
    for (const auto &[one, body] : all) {
        const bool isNamed
            = one->kind == Kind::Plan ? plans.contains(body.textOr(Field::Plan)) : complaints.contains(body.textOr(Field::Complaint));
        if (isNamed && one->id != entry.id)
            named.push_back(*one);
    }
    return named;
}

} // namespace

Result<Entry, DeskRecordError> recordAtDesk(OpenDesk &desk, const std::string &ref, Draft draft, const Moment &now)
{
    if (!isEntryId(ref))
        return refused(DeskProblem::RefRefused);
    if (desk.record().isErased(ref))
        return refused(DeskProblem::ErasedPerson);
    if (draft.author != Author::Clinic)
        return refused(std::vector<DraftProblem>{{.code = DraftProblem::Code::AuthorRefused}});
    const std::string person = desk.index().personOf(ref).value_or(ref);
    auto entries = desk.entriesOf(person);
    if (!entries)
        return refused(entries.error());
    const DiaryUnion there(*entries);
    const Diary diary = Diary::from(*std::move(entries));
    if (draft.kind == Kind::Plan) {
        auto revision = nextRevision(diary, std::move(draft), now, QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString());
        if (!revision)
            return refused(std::move(revision.error()));
        draft = *std::move(revision);
    }
    if (draft.kind == Kind::SetAside && !desk.index().holds(std::string(draft.body.textOr(Field::File))))
        return refused(DeskProblem::UnknownFile);
    auto entry = entryFrom(diary, diary.entries(), std::move(draft), now);
    if (!entry)
        return refused(std::move(entry.error()));
    if (entry->id.empty())
        entry->id = desk.nextId(entry->recorded.value_or(now).utcMs);
    if (!there.clashes({&*entry, 1}, Source::Own).empty())
        return refused(std::vector<DraftProblem>{{.code = DraftProblem::Code::IdRefused}});

    if (entry->kind == Kind::Alias || entry->kind == Kind::SetAside) {
        if (auto kept = desk.keepWithDecisions(person, {&*entry, 1}, {}, {}); !kept)
            return of(kept.error());
        return *std::move(entry);
    }
    std::vector<Entry> bundle = namedBy(*entry, there.entries());
    bundle.push_back(*entry);
    const FhirBundle written = writeFhir(bundle, person, FhirFile::Record);
    const auto read = readFhir(written.json);
    if (!read || read->entries.size() != bundle.size()
        || std::find(read->entries.begin(), read->entries.end(), *entry) == read->entries.end())
        return refused(DeskProblem::NotReadBack);
    if (auto kept = desk.keep(written.json, *read); !kept)
        return of(kept.error());
    return *std::move(entry);
}

Result<FhirBundle, StoreError> fileForPatient(OpenDesk &desk, const std::string &ref, FhirFile file)
{
    const auto person = desk.index().personOf(ref);
    if (!person)
        return failure(StoreError::Missing);
    const auto entries = desk.entriesOf(*person);
    if (!entries)
        return failure(entries.error());
    return writeFhir(*entries, desk.index().refForPatient(*person), file);
}

} // namespace morrow
