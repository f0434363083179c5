// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/desk_words.h"

#include "batch/store_words.h"
#include "batch/words.h"
#include "report/plain_text.h"

namespace morrow::batch {

namespace {

std::string counted(std::size_t number, std::string_view one, std::string_view many)
{
    return std::to_string(number) + " " + std::string(number == 1 ? one : many);
}

std::string recordSentence(FileError error, std::string_view path)
{
    const std::string name = visible(path);
    switch (error) {
    case FileError::Missing:
        return name + ": the record of this desk is not there, or none of its files is; is the drive there?";
    case FileError::Exists:
    case FileError::NotRegular:
        return name + ": something else lies in the place of the record.";
    case FileError::TooLarge:
        return name + ": the file is too large for the record.";
    case FileError::NoPermission:
        return name + ": there is no permission to write the record.";
    case FileError::Full:
        return name + ": there is no space left for the record.";
    case FileError::ReadOnly:
        return name + ": the record cannot be written there.";
    case FileError::Io:
        break;
    }
    return name + ": the machine failed to read or write the record.";
}

} // namespace

std::string sentence(const DeskError &error, std::string_view path)
{
    if (const auto *const file = std::get_if<FileError>(&error))
        return recordSentence(*file, path);
    const StoreError store = std::get<StoreError>(error);
    if (store == StoreError::NotADiary)
        return visible(path) + ": this is no desk, and it was left as it is.";
    if (store == StoreError::Damaged)
        return visible(path) + ": the store of this desk is damaged; the verb rebuild makes it again from its record.";
    return sentence(store, path);
}

Status statusOf(const DeskError &error) noexcept
{
    if (const auto *const store = std::get_if<StoreError>(&error))
        return statusOf(*store);
    const FileError file = std::get<FileError>(error);
    return file == FileError::NotRegular || file == FileError::TooLarge ? Status::Refused : Status::MachineFailed;
}

std::vector<std::string> sentences(const TookNew &news)
{
    std::vector<std::string> all;
    if (!news.unread.empty())
        all.push_back("Of the record " + counted(news.unread.size(), "file", "files") + " cannot be read: it may still be on its way.");
    if (!news.missing.empty())
        all.push_back("Of the record " + counted(news.missing.size(), "file is", "files are") + " gone that this desk knew.");
    if (!news.clashing.empty())
        all.push_back("Of the record " + counted(news.clashing.size(), "file is", "files are")
            + " left out, because it says otherwise than another one.");
    return all;
}

std::string sentence(ReaderFault fault, std::string_view file)
{
    const std::string name = visible(file);
    switch (fault) {
    case ReaderFault::NotStarted:
        return name + ": the program morrow-reader, which reads files of others, could not be started.";
    case ReaderFault::Crashed:
        return name + ": reading this file ended the program that read it.";
    case ReaderFault::Hung:
        return name + ": reading this file took longer than 5 seconds.";
    case ReaderFault::Hungry:
        return name + ": reading this file took too much memory.";
    case ReaderFault::Garbled:
        return name + ": what was read of this file is no diary.";
    }
    return name + ": the file could not be read.";
}

std::string sentence(const Clash &clash)
{
    switch (clash.code) {
    case Clash::Code::TwoContentsForOneId:
        return "the entry " + shown(clash.what) + " is known with another content";
    case Clash::Code::ComplaintOfAnotherPlan:
        return "the complaint " + shown(clash.what) + " belongs to another plan here";
    case Clash::Code::ItemOfAnotherPlan:
        return "the item " + shown(clash.what) + " belongs to another plan here";
    }
    return "it contradicts what is known";
}

std::string sentence(const TakeInProblem &problem, std::string_view file)
{
    const std::string name = visible(file);
    switch (problem.code) {
    case TakeInProblem::Code::Waits:
        return name + ": the file waits, because nobody here is known as " + shown(problem.what) + "; --new or --as REF says whose it is.";
    case TakeInProblem::Code::UnknownPerson:
        return name + ": nobody here is known as " + shown(problem.what) + ".";
    case TakeInProblem::Code::AnotherPerson:
        return name + ": the file is known to be of somebody else than " + shown(problem.what) + ".";
    case TakeInProblem::Code::ErasedPerson:
        return name + ": the file is of a person who was erased here.";
    case TakeInProblem::Code::SetAside:
        return name + ": the taking in of this file was undone; --new or --as REF takes it in again.";
    case TakeInProblem::Code::OfADesk:
        return name + ": the file holds what only a desk says about itself" + (problem.what.empty() ? "" : ", " + shown(problem.what))
            + ".";
    case TakeInProblem::Code::Clashes:
        return name + ": " + (problem.clash ? sentence(*problem.clash) : std::string("it contradicts what is known")) + ".";
    }
    return name + ": the file is refused.";
}

std::string sentence(UndoProblem problem, std::string_view file)
{
    switch (problem) {
    case UndoProblem::UnknownFile:
        return "No file " + shown(file) + " was taken in here.";
    case UndoProblem::SetAside:
        return "The taking in of " + shown(file) + " was undone before.";
    case UndoProblem::RecordDamaged:
        return "The other files of this person cannot all be read, so nothing was changed.";
    }
    return "The taking in was not undone.";
}

std::string sentence(DeskProblem problem)
{
    switch (problem) {
    case DeskProblem::RefRefused:
        return "A person is named by 1 to 64 letters, digits, dashes and full stops.";
    case DeskProblem::ErasedPerson:
        return "This person was erased here.";
    case DeskProblem::UnknownFile:
        return "No file of that name was taken in here.";
    case DeskProblem::NotReadBack:
        return "The entry names something that the diary does not hold, so it could not be read back.";
    }
    return "The entry is refused.";
}

std::string sentence(const PlanProblem &problem)
{
    const std::string item = shown(problem.item);
    const std::string day = problem.day ? problem.day->toString() : std::string("that day");
    switch (problem.code) {
    case PlanProblem::Code::Unreadable:
        return "The plan lacks what a plan needs.";
    case PlanProblem::Code::Withdraws:
        return "A plan is not taken back; its items are ended in the next revision.";
    case PlanProblem::Code::ComplaintUnknown:
        return "There is no such complaint in the diary.";
    case PlanProblem::Code::AnotherPlan:
        return "The complaint has another plan, and one complaint has one plan.";
    case PlanProblem::Code::NumberRefused:
        return "The number of a revision is one more than that of the last one.";
    case PlanProblem::Code::FromTooEarly:
        return "The plan can be in force from " + day + ", not from the day that it says.";
    case PlanProblem::Code::PastChanges:
        return "The plan would change what was due of " + item + " on " + day + ", which is before it is in force.";
    case PlanProblem::Code::BegunItemChanges:
        return "The item " + item + " was begun, so it is ended and another one continues it.";
    case PlanProblem::Code::NewItemTooEarly:
        return "The item " + item + " is new and starts before the plan is in force.";
    case PlanProblem::Code::ContinuesUnknown:
        return "The item " + item + " continues one that the plan does not hold.";
    case PlanProblem::Code::ContinuesOverlaps:
        return "The item " + item + " starts before the one that it continues has ended.";
    case PlanProblem::Code::ItemTwice:
        return "The item " + item + " stands twice in the plan.";
    case PlanProblem::Code::ItemOfAnotherPlan:
        return "The item " + item + " belongs to another plan of this person.";
    }
    return "The plan is refused.";
}

std::string_view codeName(ReaderFault fault) noexcept
{
    switch (fault) {
    case ReaderFault::NotStarted:
        return "reader-not-started";
    case ReaderFault::Crashed:
        return "reader-crashed";
    case ReaderFault::Hung:
        return "reader-hung";
    case ReaderFault::Hungry:
        return "reader-hungry";
    case ReaderFault::Garbled:
        return "reader-garbled";
    }
    return "reader-crashed";
}

std::string_view codeName(const TakeInProblem &problem) noexcept
{
    switch (problem.code) {
    case TakeInProblem::Code::Waits:
        return "waits";
    case TakeInProblem::Code::UnknownPerson:
        return "unknown-person";
    case TakeInProblem::Code::AnotherPerson:
        return "another-person";
    case TakeInProblem::Code::ErasedPerson:
        return "erased-person";
    case TakeInProblem::Code::SetAside:
        return "set-aside";
    case TakeInProblem::Code::OfADesk:
        return "of-a-desk";
    case TakeInProblem::Code::Clashes:
        break;
    }
    switch (problem.clash ? problem.clash->code : Clash::Code::TwoContentsForOneId) {
    case Clash::Code::TwoContentsForOneId:
        return "two-contents-for-one-id";
    case Clash::Code::ComplaintOfAnotherPlan:
        return "complaint-of-another-plan";
    case Clash::Code::ItemOfAnotherPlan:
        return "item-of-another-plan";
    }
    return "two-contents-for-one-id";
}

} // namespace morrow::batch
