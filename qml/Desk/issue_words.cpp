// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/desk_words.h"

#include "Entries/said.h"
#include "report/plain_text.h"

namespace morrow {

namespace {

constexpr std::size_t kShownCharacters = 40;

QString quoted(const std::string &text)
{
    //: A value as it stands in a file, between quotes.
    return DeskWords::tr("“%1”").arg(plainText(shortened(text, kShownCharacters)));
}

/// Where in the file: "line 7, column 6", "at /entry/3"; empty: the whole file.
QString place(const Issue &issue)
{
    QStringList parts;
    if (!issue.file.empty())
        parts << plainText(issue.file);
    if (issue.line > 0)
        parts << DeskWords::tr("line %1").arg(issue.line);
    if (issue.column > 0)
        parts << DeskWords::tr("column %1").arg(issue.column);
    if (!issue.pointer.empty())
        //: Where in a file something is wrong: a JSON pointer.
        parts << DeskWords::tr("at %1").arg(plainText(issue.pointer));
    if (!issue.columnName.empty())
        parts << plainText(issue.columnName);
    return parts.join(QStringLiteral(", "));
}

QString unreadable(FileError error)
{
    switch (error) {
    case FileError::Missing:
        return DeskWords::tr("it is not there");
    case FileError::NotRegular:
        return DeskWords::tr("it is no regular file");
    case FileError::TooLarge:
        return DeskWords::tr("it is larger than 128 MiB");
    case FileError::NoPermission:
        return DeskWords::tr("there is no permission to read it");
    default:
        return DeskWords::tr("the machine failed to read it");
    }
}

QString reason(const Issue &issue)
{
    switch (issue.code) {
    case IssueCode::Unreadable:
        return unreadable(issue.fileError);
    case IssueCode::NotUtf8:
        return DeskWords::tr("the text is not UTF-8");
    case IssueCode::ControlCharacter:
        return DeskWords::tr("a control character stands here");
    case IssueCode::ValueMissing:
        return DeskWords::tr("a value is needed here");
    case IssueCode::ValueRefused:
        return DeskWords::tr("%1 cannot stand here").arg(quoted(issue.value));
    case IssueCode::NotAllowedHere:
        return DeskWords::tr("nothing may stand here");
    case IssueCode::AuthorRefused:
        return DeskWords::tr("this is not for %1 to say").arg(quoted(issue.value));
    case IssueCode::UnknownComplaint:
        return DeskWords::tr("this is about a complaint that the file does not hold");
    case IssueCode::UnknownItem:
        return DeskWords::tr("this is about an exercise that the plan does not hold");
    case IssueCode::UnknownStage:
        return DeskWords::tr("this names a stage that the exercise does not have");
    case IssueCode::SameThingTwice:
        return DeskWords::tr("two entries are about the same thing");
    case IssueCode::TwoContentsForOneId:
        return DeskWords::tr("the same entry stands here with two contents");
    case IssueCode::ReplacesLoop:
        return DeskWords::tr("corrections lead back to themselves");
    case IssueCode::ReplacesAnotherKind:
        return DeskWords::tr("an entry corrects one of another kind");
    case IssueCode::ItemRowsDisagree:
    case IssueCode::StageOrder:
    case IssueCode::RhythmUnclear:
    case IssueCode::ItemEndsBeforeStart:
    case IssueCode::RestWithoutDays:
    case IssueCode::RepsMissing:
        return DeskWords::tr("the plan contradicts itself here");
    case IssueCode::PauseEndsBeforeStart:
        return DeskWords::tr("the pause ends before it starts");
    case IssueCode::UnknownSetting:
        return DeskWords::tr("there is no setting %1").arg(quoted(issue.value));
    case IssueCode::PlanKeyWithoutItem:
        return DeskWords::tr("this belongs to a plan, and the complaint has none");
    case IssueCode::PersonMissing:
        return DeskWords::tr("the file does not say whose diary it is");
    case IssueCode::NotJson:
        return issue.pointer.empty() ? DeskWords::tr("it is no file of a diary") : DeskWords::tr("the file breaks off or is no JSON");
    case IssueCode::KeyTwice:
        return DeskWords::tr("this is said a second time");
    case IssueCode::TooDeep:
    case IssueCode::TooManyValues:
        return DeskWords::tr("there is more here than any file of ours holds");
    case IssueCode::NotABundle:
        return DeskWords::tr("it is no file of a diary, a plan or a visit");
    case IssueCode::ElementMissing:
        return DeskWords::tr("this element is missing");
    case IssueCode::ElementRefused:
        return issue.value.empty() ? DeskWords::tr("this has not the form that it must have")
                                   : DeskWords::tr("%1 cannot stand here").arg(quoted(issue.value));
    case IssueCode::UnitRefused:
        return DeskWords::tr("the unit is %1 and has to be %2").arg(quoted(issue.value), quoted(issue.other));
    case IssueCode::StatusRefused:
        return DeskWords::tr("the status %1 says otherwise than the entry").arg(quoted(issue.value));
    case IssueCode::ModifierRefused:
        return DeskWords::tr("this could change the meaning of the rest, and is not known here");
    case IssueCode::OfNewerProgram:
        return DeskWords::tr("this belongs to a newer version of the program");
    case IssueCode::AnotherPerson:
        return DeskWords::tr("this is about another person than the rest of the file");
    case IssueCode::SumDiffers:
        return DeskWords::tr("the entries are not those that the file was written with");
    // Of folders of tables, which the desk does not read.
    case IssueCode::FolderMissing:
    case IssueCode::PlanMissing:
    case IssueCode::OpenQuote:
    case IssueCode::StrayQuote:
    case IssueCode::NoHeader:
    case IssueCode::UnknownFile:
    case IssueCode::UnknownColumn:
    case IssueCode::ColumnMissing:
    case IssueCode::ColumnTwice:
    case IssueCode::CellCount:
        return DeskWords::tr("it is no file of a diary");
    }
    return DeskWords::tr("it is refused");
}

} // namespace

QString DeskWords::sentence(const Issue &issue)
{
    QString where = place(issue);
    QString why = reason(issue);
    if (!where.isEmpty()) {
        where[0] = where[0].toUpper();
        //: What is wrong with a file: where, and what.
        return tr("%1: %2.").arg(where, why);
    }
    why[0] = why[0].toUpper();
    //: What is wrong with a file as a whole.
    return tr("%1.").arg(why);
}

} // namespace morrow
