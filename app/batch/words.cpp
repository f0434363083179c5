// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/words.h"

#include "report/plain_text.h"

namespace morrow::batch {

namespace {

constexpr std::size_t kShownCharacters = 40;

/// `sets.csv, line 7, column 6 (reps)` or `diary.json, at /entry/3 (pain)`, as much of it as there is.
std::string place(const Issue &issue, std::string_view input)
{
    std::string text = visible(issue.file.empty() ? input : std::string_view(issue.file));
    if (issue.line > 0)
        text += ", line " + std::to_string(issue.line);
    if (issue.column > 0)
        text += ", column " + std::to_string(issue.column);
    if (!issue.pointer.empty())
        text += ", at " + visible(issue.pointer);
    if (!issue.columnName.empty())
        text += " (" + visible(issue.columnName) + ")";
    return text;
}

std::string bounds(const FieldRule &rule)
{
    static constexpr Decimal boundless = FieldRule{}.most;
    if (rule.least == rule.most)
        return "is not " + rule.least.toString();
    const std::string kind = rule.form == Form::Whole ? "is not a whole number" : "is not a number";
    const std::string range = rule.most == boundless ? " of " + rule.least.toString() + " or more"
                                                     : " from " + rule.least.toString() + " to " + rule.most.toString();
    return kind + range + (rule.form == Form::Number ? " with at most 3 decimals" : "");
}

std::string choices(const FieldRule &rule)
{
    std::string text = "is none of: ";
    for (std::size_t i = 0; i < rule.choices.size(); ++i)
        text += (i == 0 ? "" : ", ") + std::string(rule.choices[i]);
    return text;
}

/// What could not be done with a file that was to be read.
std::string_view reading(FileError error) noexcept
{
    switch (error) {
    case FileError::Missing:
        return "it is not there";
    case FileError::Exists:
        return "it is in the way";
    case FileError::NotRegular:
        return "it is no regular file";
    case FileError::TooLarge:
        return "it is larger than 128 MiB";
    case FileError::NoPermission:
        return "there is no permission to read it";
    case FileError::Full:
        return "there is no space left";
    case FileError::ReadOnly:
        return "the place cannot be written";
    case FileError::Io:
        return "the machine failed to read it";
    }
    return "the machine failed to read it";
}

/// `on line 3`; `in sets.csv, line 3` where \a place is `sets.csv:3`; `in plan.csv`.
std::string standing(std::string_view place)
{
    const std::size_t colon = place.find(':');
    if (colon != std::string_view::npos)
        return "in " + visible(place.substr(0, colon)) + ", line " + visible(place.substr(colon + 1));
    const bool isLine = place.find_first_not_of("0123456789") == std::string_view::npos;
    return (isLine ? "on line " : "in ") + visible(place);
}

std::string twice(const Issue &issue)
{
    if (issue.other.empty())
        return "stage " + shown(issue.value) + " of this item stands on an earlier row too";
    const std::string line = "line " + visible(issue.other) + " is about the same thing";
    return issue.columnName.empty() ? line + ", and both have neither id nor instant" : line;
}

std::string notAllowed(const Issue &issue)
{
    if (issue.columnName == "end_reason")
        return "a reason needs the day on which the complaint ended";
    if (issue.other == "complaints.csv")
        return "this value belongs into complaints.csv";
    return "nothing may stand here beside " + visible(issue.other);
}

std::string onDay(std::string_view day)
{
    return day.empty() ? std::string() : " on " + visible(day);
}

std::string reason(const Issue &issue)
{
    const std::string value = shown(issue.value);
    const std::string other = shown(issue.other);
    switch (issue.code) {
    case IssueCode::FolderMissing:
        return "there is no folder of tables here";
    case IssueCode::PlanMissing:
        return "the table plan.csv is missing; its header alone says that there is no plan";
    case IssueCode::Unreadable:
        return std::string(reading(issue.fileError));
    case IssueCode::NotUtf8:
        return "the text is not UTF-8";
    case IssueCode::OpenQuote:
        return "a quote opens here and never closes";
    case IssueCode::StrayQuote:
        return "a quote may only stand around a whole cell, or twice inside a quoted one";
    case IssueCode::ControlCharacter:
        return "a control character stands here";
    case IssueCode::NoHeader:
        return "the header row is missing";
    case IssueCode::UnknownFile:
        return "no table has this name";
    case IssueCode::UnknownColumn:
        return "this table has no column " + value;
    case IssueCode::ColumnMissing:
        return "this column is missing";
    case IssueCode::ColumnTwice:
        return "this column stands here a second time";
    case IssueCode::CellCount:
        return "this row has " + visible(issue.value) + " cells and the header " + visible(issue.other);
    case IssueCode::ValueMissing:
        return "a value is needed here";
    case IssueCode::ValueRefused:
        return value + " " + (issue.rule ? refusal(*issue.rule) : std::string("is refused"));
    case IssueCode::NotAllowedHere:
        return notAllowed(issue);
    case IssueCode::AuthorRefused:
        return (issue.pointer.empty() ? "rows of this table are not by " : "entries of this kind are not by ") + value;
    case IssueCode::UnknownComplaint:
        return issue.value.empty() ? "there is no complaint that this row could be about" : "there is no complaint " + value;
    case IssueCode::UnknownItem:
        return "the plan has no item " + value;
    case IssueCode::UnknownStage:
        return "there is no stage " + value + "; this item has " + visible(issue.other);
    case IssueCode::SameThingTwice:
        return twice(issue);
    case IssueCode::TwoContentsForOneId:
        return "the id " + value + " stands " + (issue.other.empty() ? "earlier" : standing(issue.other)) + " with another content";
    case IssueCode::ReplacesLoop:
        return "what " + value + " replaces leads back to itself";
    case IssueCode::ReplacesAnotherKind:
        return value + " is an entry of another kind and cannot be replaced from here";
    case IssueCode::ItemRowsDisagree:
        return value + " stands here and " + other + " on the first row of this item";
    case IssueCode::StageOrder:
        return "the stages of item " + value + " are not 1, 2, 3 and so on";
    case IssueCode::RhythmUnclear:
        return "an item needs either a rrule with slots or per_week, and not both";
    case IssueCode::ItemEndsBeforeStart:
        return "the item ends before it starts" + onDay(issue.other);
    case IssueCode::RestWithoutDays:
        return "the item rests after visits, but rest_days_after_visit is 0";
    case IssueCode::RepsMissing:
        return "reps are needed, because nothing is held in this stage";
    case IssueCode::PauseEndsBeforeStart:
        return "the pause ends before it starts" + onDay(issue.other);
    case IssueCode::UnknownSetting:
        return "there is no setting " + value;
    case IssueCode::PlanKeyWithoutItem:
        return value + " belongs to a plan, and this complaint has no item";
    case IssueCode::PersonMissing:
        return "no patient_ref says whose diary this is";
    case IssueCode::NotJson:
        return issue.pointer.empty() ? "this is no JSON text, as a FHIR file is" : "from here on it is no JSON text";
    case IssueCode::KeyTwice:
        return "this is said a second time";
    case IssueCode::TooDeep:
        return "this is nested deeper than 64 levels";
    case IssueCode::TooManyValues:
        return "there is more here than any file of ours holds";
    case IssueCode::NotABundle:
        return "this is no FHIR bundle of a diary, a plan or a visit";
    case IssueCode::ElementMissing:
        return "this element is missing";
    case IssueCode::ElementRefused:
        return issue.value.empty() ? "this element has not the form that it must have" : value + " cannot stand here";
    case IssueCode::UnitRefused:
        return "the unit is " + value + " and has to be " + other;
    case IssueCode::StatusRefused:
        return "the status " + value + " says otherwise than the entry";
    case IssueCode::ModifierRefused:
        return "this element could change the meaning of the others, and is not known here";
    case IssueCode::OfNewerProgram:
        return "this belongs to a newer version of the program";
    case IssueCode::AnotherPerson:
        return "this is about another person than the rest of the file";
    case IssueCode::SumDiffers:
        return "the entries are not those that the file was written with";
    }
    return "it is refused";
}

} // namespace

std::string shown(std::string_view text)
{
    return "'" + shortened(visible(text), kShownCharacters) + "'";
}

std::string refusal(const FieldRule &rule)
{
    switch (rule.form) {
    case Form::Text:
        return "is no text without control characters";
    case Form::Id:
        return "is no id, which has 1 to 64 letters, digits, dashes and full stops";
    case Form::Word:
        return "is not one word without spaces";
    case Form::Words:
        return "is no list of different words with one space between them";
    case Form::Number:
    case Form::Whole:
        return bounds(rule);
    case Form::Day:
        return "is no day of the calendar from 1900 to 2200, written as 2026-04-27";
    case Form::TimeOfDay:
        return "is no time of day, written as 04:00";
    case Form::Moment:
        return "is no instant from 1900 to 2200, written as 2026-04-27T07:14:05+01:00";
    case Form::Choice:
        return choices(rule);
    case Form::Rule:
        return "is no rule of days, written as FREQ=DAILY;INTERVAL=2 or FREQ=WEEKLY;BYDAY=MO,TH";
    case Form::Asks:
        return "is neither none nor a list of: stiffness, during, after, spare";
    case Form::List:
        return "is no list";
    }
    return "is refused";
}

std::string sentence(const Issue &issue, std::string_view input)
{
    return place(issue, input) + ": " + reason(issue) + ".";
}

std::string sentence(FileError error, std::string_view path)
{
    const std::string name = visible(path);
    switch (error) {
    case FileError::Missing:
        return name + " was not written: the folder that it belongs in is not there.";
    case FileError::Exists:
        return name + " was not written: there is something at that place already.";
    case FileError::NotRegular:
        return name + " was not written: something else stands in the way.";
    case FileError::TooLarge:
        return name + " was not written: it is too large.";
    case FileError::NoPermission:
        return name + " was not written: there is no permission to write there.";
    case FileError::Full:
        return name + " was not written: there is no space left.";
    case FileError::ReadOnly:
        return name + " was not written: the place is read-only.";
    case FileError::Io:
        break;
    }
    return name + " was not written: the machine failed to write it.";
}

std::string_view words(LeftOut what) noexcept
{
    switch (what) {
    case LeftOut::EarlierPlanRevisions:
        return "earlier revisions of plans";
    case LeftOut::EarlierComplaints:
        return "earlier descriptions of complaints";
    case LeftOut::EarlierSettings:
        return "earlier values of settings";
    case LeftOut::EarlierMemos:
        return "earlier notes about visits";
    case LeftOut::LaterClears:
        return "all but the earliest clearing of a sign";
    case LeftOut::EarlierClosings:
        return "earlier closings of complaints";
    case LeftOut::Handed:
        return "which files were handed over";
    case LeftOut::DeskOnly:
        return "what stays at the clinic's desk";
    case LeftOut::OriginOfDerived:
        return "id, instant and author of complaints, plans, settings, cleared signs, closings and notes about visits";
    }
    return "";
}

std::string_view codeName(IssueCode code) noexcept
{
    switch (code) {
    case IssueCode::FolderMissing:
        return "folder-missing";
    case IssueCode::PlanMissing:
        return "plan-missing";
    case IssueCode::Unreadable:
        return "unreadable";
    case IssueCode::NotUtf8:
        return "not-utf-8";
    case IssueCode::OpenQuote:
        return "open-quote";
    case IssueCode::StrayQuote:
        return "stray-quote";
    case IssueCode::ControlCharacter:
        return "control-character";
    case IssueCode::NoHeader:
        return "no-header";
    case IssueCode::UnknownFile:
        return "unknown-file";
    case IssueCode::UnknownColumn:
        return "unknown-column";
    case IssueCode::ColumnMissing:
        return "column-missing";
    case IssueCode::ColumnTwice:
        return "column-twice";
    case IssueCode::CellCount:
        return "cell-count";
    case IssueCode::ValueMissing:
        return "value-missing";
    case IssueCode::ValueRefused:
        return "value-refused";
    case IssueCode::NotAllowedHere:
        return "not-allowed-here";
    case IssueCode::AuthorRefused:
        return "author-refused";
    case IssueCode::UnknownComplaint:
        return "unknown-complaint";
    case IssueCode::UnknownItem:
        return "unknown-item";
    case IssueCode::UnknownStage:
        return "unknown-stage";
    case IssueCode::SameThingTwice:
        return "same-thing-twice";
    case IssueCode::TwoContentsForOneId:
        return "two-contents-for-one-id";
    case IssueCode::ReplacesLoop:
        return "replaces-loop";
    case IssueCode::ReplacesAnotherKind:
        return "replaces-another-kind";
    case IssueCode::ItemRowsDisagree:
        return "item-rows-disagree";
    case IssueCode::StageOrder:
        return "stage-order";
    case IssueCode::RhythmUnclear:
        return "rhythm-unclear";
    case IssueCode::ItemEndsBeforeStart:
        return "item-ends-before-start";
    case IssueCode::RestWithoutDays:
        return "rest-without-days";
    case IssueCode::RepsMissing:
        return "reps-missing";
    case IssueCode::PauseEndsBeforeStart:
        return "pause-ends-before-start";
    case IssueCode::UnknownSetting:
        return "unknown-setting";
    case IssueCode::PlanKeyWithoutItem:
        return "plan-key-without-item";
    case IssueCode::PersonMissing:
        return "person-missing";
    case IssueCode::NotJson:
        return "not-json";
    case IssueCode::KeyTwice:
        return "key-twice";
    case IssueCode::TooDeep:
        return "too-deep";
    case IssueCode::TooManyValues:
        return "too-many-values";
    case IssueCode::NotABundle:
        return "not-a-bundle";
    case IssueCode::ElementMissing:
        return "element-missing";
    case IssueCode::ElementRefused:
        return "element-refused";
    case IssueCode::UnitRefused:
        return "unit-refused";
    case IssueCode::StatusRefused:
        return "status-refused";
    case IssueCode::ModifierRefused:
        return "modifier-refused";
    case IssueCode::OfNewerProgram:
        return "of-newer-program";
    case IssueCode::AnotherPerson:
        return "another-person";
    case IssueCode::SumDiffers:
        return "sum-differs";
    }
    return "";
}

std::string_view codeName(LeftOut what) noexcept
{
    switch (what) {
    case LeftOut::EarlierPlanRevisions:
        return "earlier-plan-revisions";
    case LeftOut::EarlierComplaints:
        return "earlier-complaints";
    case LeftOut::EarlierSettings:
        return "earlier-settings";
    case LeftOut::EarlierMemos:
        return "earlier-memos";
    case LeftOut::LaterClears:
        return "later-clears";
    case LeftOut::EarlierClosings:
        return "earlier-closings";
    case LeftOut::Handed:
        return "handed";
    case LeftOut::DeskOnly:
        return "desk-only";
    case LeftOut::OriginOfDerived:
        return "origin-of-derived";
    }
    return "";
}

} // namespace morrow::batch
