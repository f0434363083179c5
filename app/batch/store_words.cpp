// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/store_words.h"

#include "batch/words.h"
#include "report/plain_text.h"

#include <set>

namespace morrow::batch {

std::string sentence(StoreError error, std::string_view path)
{
    const std::string name = visible(path);
    switch (error) {
    case StoreError::Missing:
        return name + ": there is no store here.";
    case StoreError::NotADiary:
        return name + ": this is no store of a diary, and it was left as it is.";
    case StoreError::Newer:
        return name + ": the store was written by a newer program; it can be read and not be written.";
    case StoreError::Busy:
        return name + ": another program has this store open.";
    case StoreError::Full:
        return name + ": there is no space left.";
    case StoreError::ReadOnly:
        return name + ": the store cannot be written there.";
    case StoreError::Io:
        return name + ": the machine failed to read or write the store.";
    case StoreError::Damaged:
        return name + ": the store is damaged; the verb restore puts together what can be read.";
    case StoreError::Refused:
        return name + ": the store holds something else under the same name.";
    }
    return name + ": the store cannot be used.";
}

Status statusOf(StoreError error) noexcept
{
    const bool isInput = error == StoreError::Missing || error == StoreError::NotADiary || error == StoreError::Refused;
    return isInput ? Status::Refused : Status::MachineFailed;
}

std::vector<std::string> sentences(const PersonReading &reading)
{
    std::vector<std::string> all;
    std::set<std::string> days;
    for (const DamagedRow &row : reading.damaged)
        days.insert(row.day ? row.day->toString() : "a day that cannot be read");
    if (!days.empty()) {
        std::string text = std::to_string(reading.damaged.size())
            + (reading.damaged.size() == 1 ? " entry is damaged and left out, about: " : " entries are damaged and left out, about: ");
        for (const std::string &day : days)
            text += (day == *days.begin() ? "" : ", ") + day;
        all.push_back(text + ".");
    }
    const bool isSaid = !all.empty();
    if (reading.cutShort)
        all.emplace_back("Part of the store cannot be read at all.");
    if (reading.personDamaged)
        all.emplace_back("The row that says whose diary this is, or what was erased from it, is damaged.");
    if (reading.countDiffers)
        all.push_back("The store says that it holds " + std::to_string(reading.counted) + " entries and shows another number.");
    if (reading.sumDiffers && !isSaid && !reading.countDiffers)
        all.emplace_back("The entries in the store are not those that were recorded.");
    if (!all.empty())
        all.emplace_back("The verb restore puts together what the store and its backups hold.");
    return all;
}

std::string sentence(const LineProblem &problem)
{
    const std::string where = problem.where.empty() ? std::string() : shown(problem.where) + ": ";
    switch (problem.code) {
    case LineProblem::Code::NotJson:
        return where + "the line is not one object of JSON.";
    case LineProblem::Code::KeyTwice:
        return where + "this key stands here twice.";
    case LineProblem::Code::KeyUnknown:
        return where + "there is no such key.";
    case LineProblem::Code::KeyMissing:
        return where + "this key is missing.";
    case LineProblem::Code::TypeRefused:
        return where + "the value is of another type, or a number with more than 3 decimals.";
    case LineProblem::Code::ValueRefused:
        return where + "the value is not one of those that can stand here.";
    }
    return where + "the line is refused.";
}

std::string sentence(const DraftProblem &problem)
{
    switch (problem.code) {
    case DraftProblem::Code::Body:
        break;
    case DraftProblem::Code::DayMissing:
        return "From paper, an entry needs the day that it is about.";
    case DraftProblem::Code::AuthorRefused:
        return "This kind of entry is not for that author to state.";
    case DraftProblem::Code::UnknownComplaint:
        return "There is no such complaint in the diary.";
    case DraftProblem::Code::UnknownItem:
        return "The plan has no such item.";
    case DraftProblem::Code::UnknownStage:
        return "The item has no such stage.";
    case DraftProblem::Code::ReplacesAnotherKind:
        return "An entry of another kind cannot be replaced.";
    case DraftProblem::Code::ReplacesLoop:
        return "What the entry replaces leads back to itself.";
    case DraftProblem::Code::IdRefused:
        return "The id is no id, which has 1 to 64 letters, digits, dashes and full stops.";
    }
    const std::string field = "/body/" + std::string(name(problem.body.field)) + ": ";
    switch (problem.body.code) {
    case BodyProblem::Code::Missing:
        return field + "a value is needed here.";
    case BodyProblem::Code::NotAllowed:
        return field + "nothing may stand here beside " + std::string(name(problem.body.other)) + ".";
    case BodyProblem::Code::Unknown:
        return field + "this kind of entry has no such value.";
    case BodyProblem::Code::OutOfBounds:
    case BodyProblem::Code::Form:
        break;
    }
    return field + (problem.body.rule ? "the value " + refusal(*problem.body.rule) + "." : "the value is out of bounds.");
}

} // namespace morrow::batch
