// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/take_in.h"

#include "actions/whose.h"
#include "model/diary.h"

#include <algorithm>
#include <utility>

namespace morrow {

namespace {

using Code = TakeInProblem::Code;
using Problems = std::vector<TakeInProblem>;

auto refused(Code code, std::string what = {})
{
    return failure(TakeInError(Problems{{code, std::move(what), std::nullopt}}));
}

template<class Error>
auto of(const DeskError &error)
{
    return failure(std::visit([](auto one) { return Error(one); }, error));
}

/// The first kind in \a diary that only a desk, or a home about itself, may state.
std::optional<Kind> deskKind(const FhirDiary &diary)
{
    for (const Entry &entry : diary.entries) {
        if (!canBeHandedOver(entry.kind))
            return entry.kind;
    }
    return std::nullopt;
}

/// A decision of the clinic, made now.
Entry decision(OpenDesk &desk, Kind kind, const Body &body, const std::vector<Entry> &diary, const Moment &now)
{
    return {desk.nextId(now.utcMs), kind, diaryDay(now, Diary::from(diary).dayStarts()), now, Author::Clinic, std::nullopt, body.toJson()};
}

/// The decision that takes \a old back.
Entry withdrawalOf(OpenDesk &desk, const Entry &old, const std::vector<Entry> &diary, const Moment &now)
{
    Body body = BodyReader().read(old.body).value_or(Body());
    body.set(Field::Withdrawn, Decimal::whole(1));
    Entry entry = decision(desk, old.kind, body, diary, now);
    entry.day = old.day;
    entry.replaces = old.id;
    return entry;
}

/// The person whose \a diary is, whether known or said by \a answer.
Result<std::string, TakeInError> personFor(const OpenDesk &desk, const FhirDiary &diary, const WhoseAnswer &answer)
{
    const Whose said = whose(desk, diary);
    if (!answer.as.empty() && !desk.index().isKnown(answer.as))
        return refused(Code::UnknownPerson, answer.as);
    if (said.person) {
        if (!answer.as.empty() && desk.index().personOf(answer.as) != said.person)
            return refused(Code::AnotherPerson, answer.as);
        return *said.person;
    }
    if (!answer.as.empty())
        return *desk.index().personOf(answer.as);
    if (!answer.isNew)
        return refused(Code::Waits, diary.person);
    return desk.index().personOf(diary.person).value_or(diary.person);
}

} // namespace

Result<TakenIn, TakeInError> takeIn(
    OpenDesk &desk, const FhirDiary &diary, const std::string &bytes, const WhoseAnswer &answer, const Moment &now)
{
    if (diary.file == FhirFile::Record)
        return refused(Code::OfADesk);
    if (const auto kind = deskKind(diary))
        return refused(Code::OfADesk, std::string(name(*kind)));
    if (desk.record().isErased(diary.person))
        return refused(Code::ErasedPerson, diary.person);
    TakenIn report{.file = RecordFolder::nameOf(bytes)};
    const bool asks = answer.isNew || !answer.as.empty();
    const bool isSetAside = desk.index().isSetAside(report.file);
    if (isSetAside && !asks)
        return refused(Code::SetAside);
    auto person = personFor(desk, diary, answer);
    if (!person)
        return failure(person.error());
    report.person = *std::move(person);
    report.isNewPerson = !desk.index().isKnown(report.person);

    auto reading = desk.store().read(report.person);
    if (!reading || !reading->isWhole())
        return failure(TakeInError(reading ? StoreError::Damaged : reading.error()));
    const DiaryUnion there(std::move(reading->entries));
    Problems problems;
    for (Clash &clash : there.clashes(diary.entries, Source::Other))
        problems.push_back({Code::Clashes, {}, std::move(clash)});
    if (!problems.empty())
        return failure(TakeInError(std::move(problems)));
    report.known = there.known(diary.entries);
    if (!reading->erased.empty()) {
        report.erased = static_cast<int>(std::count_if(diary.entries.begin(), diary.entries.end(), [&](const Entry &entry) {
            return std::find(reading->erased.begin(), reading->erased.end(), sha256(entry.id)) != reading->erased.end();
        }));
    }
    report.added = static_cast<int>(diary.entries.size()) - report.known - report.erased;
    if (desk.index().holds(report.file) && !isSetAside)
        return report;

    std::vector<Entry> decisions;
    for (const Entry &old : desk.index().settingAside(report.file))
        decisions.push_back(withdrawalOf(desk, old, there.entries(), now));
    if (!answer.as.empty() && desk.index().personOf(diary.person) != report.person) {
        Body alias;
        alias.set(Field::Ref, diary.person);
        decisions.push_back(decision(desk, Kind::Alias, alias, there.entries(), now));
    }
    const auto kept = decisions.empty() ? desk.keep(bytes, diary) : desk.keepWithDecisions(report.person, decisions, bytes, diary);
    if (!kept)
        return of<TakeInError>(kept.error());
    report.person = desk.index().personOf(diary.person).value_or(report.person);
    return report;
}

Result<Undone, UndoError> undoTakeIn(OpenDesk &desk, const std::string &file, const Moment &now)
{
    const auto problem = [](UndoProblem one) { return failure(UndoError(one)); };
    const auto recorded = desk.index().files().find(file);
    if (recorded == desk.index().files().end() || recorded->second.sort != RecordedFile::Sort::Others)
        return problem(UndoProblem::UnknownFile);
    if (desk.index().isSetAside(file))
        return problem(UndoProblem::SetAside);
    const std::string ref = recorded->second.ref;
    Undone report{.file = file, .person = *desk.index().personOf(ref)};
    if (!desk.canBeMadeAgain(report.person))
        return problem(UndoProblem::RecordDamaged);
    const auto before = desk.entriesOf(report.person);
    if (!before)
        return failure(UndoError(before.error()));
    report.before = static_cast<int>(before->size());

    Body body;
    body.set(Field::File, file);
    std::vector<Entry> decisions{decision(desk, Kind::SetAside, body, *before, now)};
    const auto &files = desk.index().files();
    const bool hasOtherFiles = std::any_of(files.begin(), files.end(),
        [&](const auto &one) { return one.first != file && one.second.ref == ref && !desk.index().isSetAside(one.first); });
    if (!hasOtherFiles) {
        for (const Entry &old : desk.index().aliasing(ref))
            decisions.push_back(withdrawalOf(desk, old, *before, now));
    }
    if (auto kept = desk.keepWithDecisions(report.person, decisions, {}, {}); !kept)
        return of<UndoError>(kept.error());
    const auto after = desk.entriesOf(report.person);
    if (!after)
        return failure(UndoError(after.error()));
    report.after = static_cast<int>(after->size());
    return report;
}

} // namespace morrow
