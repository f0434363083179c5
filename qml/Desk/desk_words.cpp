// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/desk_words.h"

#include "Entries/said.h"
#include "report/plain_text.h"

namespace morrow {

QString DeskWords::nameOf(const KnownAs &known)
{
    //: Stands for a person's name where none was typed.
    return known.label.empty() ? tr("No name yet") : plainText(known.label);
}

QString DeskWords::besideName(const KnownAs &known)
{
    const QString year = known.birthYear ? QString::number(*known.birthYear) : QString();
    if (known.fileNumber.empty())
        return year;
    const QString file = plainText(known.fileNumber);
    if (year.isEmpty())
        //: Beside a person's name: the number of their file at the clinic.
        return tr("file %1").arg(file);
    //: Beside a person's name: the birth year and the number of their file at the clinic.
    return tr("%1, file %2").arg(year, file);
}

QString DeskWords::reasonsOf(const CaseCard &card)
{
    QStringList all;
    for (const Look &look : card.looks) {
        switch (look.reason) {
        case LookReason::SignOpen:
            all << tr("Sign not cleared");
            break;
        case LookReason::RuleContact:
            all << tr("Your rule says: contact");
            break;
        case LookReason::UnsettledTwice:
            all << tr("Response unsettled twice");
            break;
        case LookReason::Unsettled:
            all << tr("Response unsettled");
            break;
        case LookReason::Silent:
            all << tr("No entry for %n day(s)", nullptr, look.number);
            break;
        case LookReason::RuleMet:
            all << tr("Rule met for stage %1").arg(look.number);
            break;
        }
    }
    if (!all.isEmpty())
        //: Between two reasons to look at a person's diary.
        return all.join(tr(". "));
    //: In the caseload, of somebody whose diary gives no reason to look at it now.
    return card.lastEntry ? tr("Last entry %1").arg(fullDate(*card.lastEntry)) : tr("No entry yet");
}

QString DeskWords::sentence(StoreError error)
{
    switch (error) {
    case StoreError::Missing:
        return tr("There is no desk in this folder.");
    case StoreError::NotADiary:
        return tr("This folder holds other things, so it was left as it is.");
    case StoreError::Newer:
        return tr("A newer version of this program wrote here. What it wrote can be read, and nothing can be added.");
    case StoreError::Busy:
        return tr("Another program has this desk open. Close it and try again.");
    case StoreError::Full:
        return tr("The disk is full. Nothing was kept. Free some space and try again.");
    case StoreError::ReadOnly:
        return tr("This place cannot be written. Nothing was kept.");
    case StoreError::Io:
        return tr("The machine failed to read or write. Nothing was kept.");
    case StoreError::Damaged:
        return tr("What the desk keeps is damaged. The command morrow-batch rebuild makes it again from the record.");
    case StoreError::Refused:
        return tr("Something else is kept under the same name. Nothing was changed.");
    }
    return tr("The desk cannot be used.");
}

QString DeskWords::sentence(FileError error)
{
    switch (error) {
    case FileError::Missing:
        return tr("The record folder is not there. Is the shared drive connected?");
    case FileError::Exists:
        return tr("Something else stands in the record folder under the same name.");
    case FileError::NotRegular:
        return tr("Something that is no file stands in the way.");
    case FileError::TooLarge:
        return tr("A file is larger than 128 MiB.");
    case FileError::NoPermission:
        return tr("There is no permission to use this folder.");
    case FileError::Full:
        return tr("The disk of the record is full. Nothing was kept. Free some space and try again.");
    case FileError::ReadOnly:
        return tr("The record cannot be written. Nothing was kept.");
    case FileError::Io:
        return tr("The machine failed to read or write the record. Nothing was kept.");
    }
    return tr("The record cannot be used.");
}

QString DeskWords::sentence(const DeskError &error)
{
    return std::visit([](const auto &each) { return sentence(each); }, error);
}

QString DeskWords::sentence(const TookNew &news)
{
    QStringList all;
    if (!news.unread.empty())
        all << tr("%n file(s) of the record cannot be read, or not yet.", nullptr, static_cast<int>(news.unread.size()));
    if (!news.missing.empty())
        all << tr("%n file(s) of the record (is/are) gone that this desk knew.", nullptr, static_cast<int>(news.missing.size()));
    if (!news.clashing.empty())
        all << tr("%n file(s) of the record (contradicts/contradict) another one and (is/are) left out.", nullptr,
            static_cast<int>(news.clashing.size()));
    return all.join(QLatin1Char(' '));
}

QString DeskWords::sentence(ReaderFault fault)
{
    switch (fault) {
    case ReaderFault::NotStarted:
        return tr("The program morrow-reader, which reads files of others, could not be started.");
    case ReaderFault::Crashed:
        return tr("Reading this file ended the program that read it.");
    case ReaderFault::Hung:
        return tr("Reading this file took longer than 5 seconds.");
    case ReaderFault::Hungry:
        return tr("Reading this file took too much memory.");
    case ReaderFault::Garbled:
        return tr("What was read of this file is no diary.");
    }
    return tr("The file could not be read.");
}

QString DeskWords::sentence(const TakeInProblem &problem)
{
    const QString what = plainText(shortened(problem.what, 40));
    switch (problem.code) {
    case TakeInProblem::Code::Waits:
        return tr("Nobody here is known by this file yet.");
    case TakeInProblem::Code::UnknownPerson:
        return tr("The person that was chosen is not known here any more.");
    case TakeInProblem::Code::AnotherPerson:
        return tr("This file is known to be somebody else's.");
    case TakeInProblem::Code::ErasedPerson:
        return tr("This file is of a person who was erased here.");
    case TakeInProblem::Code::SetAside:
        return tr("Taking in this file was undone before.");
    case TakeInProblem::Code::OfADesk:
        return tr("This file holds what only a desk says of itself.");
    case TakeInProblem::Code::Clashes:
        break;
    }
    switch (problem.clash ? problem.clash->code : Clash::Code::TwoContentsForOneId) {
    case Clash::Code::TwoContentsForOneId:
        return tr("An entry in it is known here with another content.");
    case Clash::Code::ComplaintOfAnotherPlan:
        return tr("A complaint in it belongs to another plan here.");
    case Clash::Code::ItemOfAnotherPlan:
        return tr("An exercise in it belongs to another plan here.");
    }
    return tr("It says otherwise than what is known here.");
}

QString DeskWords::sentence(UndoProblem problem)
{
    switch (problem) {
    case UndoProblem::UnknownFile:
        return tr("This file was not taken in here.");
    case UndoProblem::SetAside:
        return tr("Taking in this file was undone before.");
    case UndoProblem::RecordDamaged:
        return tr("The other files of this person cannot all be read, so nothing was changed.");
    }
    return tr("It could not be undone.");
}

QString DeskWords::sentence(DeskProblem problem)
{
    switch (problem) {
    case DeskProblem::RefRefused:
        return tr("The file names its person in a way that cannot be used.");
    case DeskProblem::ErasedPerson:
        return tr("This person was erased here.");
    case DeskProblem::UnknownFile:
        return tr("This file was not taken in here.");
    case DeskProblem::NotReadBack:
        return tr("What was typed could not be read back, so it was not kept.");
    }
    return tr("What was typed was not kept.");
}

} // namespace morrow
