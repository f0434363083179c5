// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/record.h"

#include "base/ids.h"

#include <algorithm>
#include <unordered_set>

namespace morrow {

namespace {

using Problems = std::vector<DraftProblem>;

const Entry *entryNamed(std::span<const Entry> entries, std::string_view id)
{
    const auto found = std::find_if(entries.begin(), entries.end(), [id](const Entry &entry) { return entry.id == id; });
    return found == entries.end() ? nullptr : &*found;
}

const ComplaintDiary *complaintNamed(const Diary &diary, std::string_view key)
{
    const auto found = std::find_if(
        diary.complaints().begin(), diary.complaints().end(), [key](const ComplaintDiary &one) { return one.complaint.key == key; });
    return found == diary.complaints().end() ? nullptr : &*found;
}

const Item *itemNamed(const Diary &diary, std::string_view key)
{
    for (const ComplaintDiary &complaint : diary.complaints()) {
        for (const ItemDiary &item : complaint.items) {
            if (item.item.key == key)
                return &item.item;
        }
    }
    return nullptr;
}

/// A plan and a complaint bring what they name; everything else names what is there.
void checkNames(const Diary &diary, const Draft &draft, Problems &problems)
{
    if (draft.kind == Kind::Complaint || draft.kind == Kind::Plan)
        return;
    const std::string *const complaint = draft.body.text(Field::Complaint);
    if (complaint && !complaintNamed(diary, *complaint))
        problems.push_back({.code = DraftProblem::Code::UnknownComplaint});
    const std::string *const key = draft.body.text(Field::Item);
    const Item *const item = key ? itemNamed(diary, *key) : nullptr;
    if (key && !item)
        problems.push_back({.code = DraftProblem::Code::UnknownItem});
    if (item && draft.kind == Kind::Stage && draft.body.intOr(Field::Stage, 1) > static_cast<int>(item->stages.size()))
        problems.push_back({.code = DraftProblem::Code::UnknownStage});
}

/// What \a replaces names waits if it is not known, and must not lead back to \a id.
void checkReplaces(std::span<const Entry> entries, const Draft &draft, Problems &problems)
{
    std::unordered_set<std::string> met;
    for (std::optional<std::string> at = draft.replaces; at;) {
        if (draft.id == at || !met.insert(*at).second) {
            problems.push_back({.code = DraftProblem::Code::ReplacesLoop});
            return;
        }
        const Entry *const replaced = entryNamed(entries, *at);
        if (!replaced)
            return;
        if (replaced->kind != draft.kind) {
            problems.push_back({.code = DraftProblem::Code::ReplacesAnotherKind});
            return;
        }
        at = replaced->replaces;
    }
}

Problems problemsOf(const Diary &diary, std::span<const Entry> entries, const Draft &draft, std::optional<CivilDay> day)
{
    Problems problems;
    for (const BodyProblem &problem : formProblemsOf(draft.kind, draft.body))
        problems.push_back({.body = problem});
    if (problems.empty()) {
        for (const BodyProblem &problem : morrow::problemsOf(draft.kind, draft.body, day))
            problems.push_back({.body = problem});
    }
    const KindRule &rule = ruleOf(draft.kind);
    if (draft.author == Author::Clinic ? !rule.clinic : !rule.patient)
        problems.push_back({.code = DraftProblem::Code::AuthorRefused});
    if (!day)
        problems.push_back({.code = DraftProblem::Code::DayMissing});
    if (draft.id && !isEntryId(*draft.id))
        problems.push_back({.code = DraftProblem::Code::IdRefused});
    if (problems.empty()) {
        checkNames(diary, draft, problems);
        checkReplaces(entries, draft, problems);
    }
    return problems;
}

} // namespace

Result<Entry, std::vector<DraftProblem>> entryFrom(const Diary &diary, std::span<const Entry> entries, Draft draft, const Moment &now)
{
    const bool namesComplaint = ruleOf(draft.kind, Field::Complaint) && draft.kind != Kind::Complaint && draft.kind != Kind::Plan;
    if (namesComplaint && !draft.body.has(Field::Complaint) && !diary.complaints().empty())
        draft.body.set(Field::Complaint, diary.complaints().front().complaint.key);
    if (!draft.recorded && !draft.fromPaper)
        draft.recorded = now;
    if (!draft.day && draft.recorded)
        draft.day = diaryDay(*draft.recorded, diary.dayStarts());
    if (auto problems = problemsOf(diary, entries, draft, draft.day); !problems.empty())
        return failure(std::move(problems));
    return Entry{draft.id.value_or(std::string()), draft.kind, *draft.day, draft.recorded, draft.author, std::move(draft.replaces),
        draft.body.toJson()};
}

Result<std::vector<Entry>, RecordError> record(OpenDiary &diary, std::vector<Draft> drafts, const Moment &now)
{
    std::vector<Entry> entries;
    for (Draft &draft : drafts) {
        auto entry = entryFrom(diary.recent(now), diary.entries(), std::move(draft), now);
        if (!entry)
            return failure(RecordError(std::move(entry.error())));
        if (entry->id.empty())
            entry->id = diary.nextId(entry->recorded.value_or(now).utcMs);
        entries.push_back(*std::move(entry));
    }
    if (auto added = diary.add(entries); !added)
        return failure(RecordError(added.error()));
    return entries;
}

Result<Entry, RecordError> record(OpenDiary &diary, Draft draft, const Moment &now)
{
    auto entries = record(diary, std::vector{std::move(draft)}, now);
    if (!entries)
        return failure(std::move(entries.error()));
    return std::move(entries->front());
}

Result<Entry, RecordError> correct(OpenDiary &diary, std::string_view id, Body body, Author author, const Moment &now)
{
    const Entry *const old = entryNamed(diary.entries(), id);
    if (!old)
        return failure(RecordError(Problems{{.code = DraftProblem::Code::IdRefused}}));
    return record(diary, {.kind = old->kind, .day = old->day, .author = author, .replaces = old->id, .body = std::move(body)}, now);
}

std::optional<Draft> withdrawal(const Entry &entry, Author author)
{
    const auto said = BodyReader().read(entry.body);
    if (!said)
        return std::nullopt;
    Body body;
    for (const auto &[field, value] : said->fields()) {
        const FieldRule *const rule = ruleOf(entry.kind, field);
        if (rule && rule->names)
            body.set(field, value);
    }
    body.set(Field::Withdrawn, Decimal::whole(1));
    return Draft{.kind = entry.kind, .day = entry.day, .author = author, .replaces = entry.id, .body = std::move(body)};
}

Result<Entry, RecordError> withdraw(OpenDiary &diary, std::string_view id, Author author, const Moment &now)
{
    const Entry *const old = entryNamed(diary.entries(), id);
    auto draft = old ? withdrawal(*old, author) : std::nullopt;
    if (!draft)
        return failure(RecordError(Problems{{.code = DraftProblem::Code::IdRefused}}));
    return record(diary, *std::move(draft), now);
}

} // namespace morrow
