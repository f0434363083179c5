// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What is wrong with a file, as data: where, which rule, and the values that
/// broke it. The words are the programs' own.

#include "base/file.h"
#include "model/rules.h"

#include <string>

namespace morrow {

enum class IssueCode {
    FolderMissing, ///< nothing at the path, or no folder of tables
    PlanMissing, ///< a folder without plan.csv
    Unreadable, ///< `fileError` says why
    NotUtf8,
    OpenQuote,
    StrayQuote, ///< a quote inside an unquoted cell, or text behind a closing one
    ControlCharacter,
    NoHeader,
    UnknownFile, ///< a .csv of another name
    UnknownColumn,
    ColumnMissing,
    ColumnTwice,
    CellCount, ///< a row of more or fewer cells than the header
    ValueMissing,
    ValueRefused, ///< not of the form that `rule` asks for
    NotAllowedHere, ///< a value where another one (of column `other`) forbids it
    AuthorRefused, ///< this kind of row is not for that author to write
    UnknownComplaint,
    UnknownItem,
    UnknownStage, ///< a change to a stage that the item does not have; `other` is how many it has
    SameThingTwice, ///< two rows about one thing, both without instant and id; `other` is the earlier line
    TwoContentsForOneId, ///< `other` is the earlier line, or file:line in another file, or plan.csv for what the plan makes
    ReplacesLoop,
    ReplacesAnotherKind,
    ItemRowsDisagree, ///< a column that must be the same on every row of an item
    StageOrder, ///< stages are not 1, 2, 3, ...
    RhythmUnclear, ///< neither or both of rrule with slots and per_week
    ItemEndsBeforeStart,
    RestWithoutDays, ///< an item that rests after visits when the rest is 0 days
    RepsMissing, ///< no reps on a stage that is not held
    PauseEndsBeforeStart,
    UnknownSetting,
    PlanKeyWithoutItem, ///< a setting of the plan for a complaint without an item
    PersonMissing, ///< no patient_ref where one is needed
    NotJson, ///< no JSON, or a text in it that is none (a lone surrogate)
    KeyTwice,
    TooDeep, ///< nested deeper than anything of ours
    TooManyValues, ///< in one resource, or members of one object
    NotABundle, ///< JSON, but no bundle of one of our kinds
    ElementMissing, ///< `columnName` is the element
    ElementRefused, ///< an element of another type, or of a value that it cannot have here
    UnitRefused, ///< a quantity that is not in `other`
    StatusRefused, ///< a status that says otherwise than the resource
    ModifierRefused, ///< an element that could change the meaning of all others
    OfNewerProgram, ///< a kind of entry, or a part of one, that is not known here
    AnotherPerson, ///< a resource that is about somebody else than the file
    SumDiffers, ///< the entries are not those that the file was written with
};

struct Issue
{
    IssueCode code = IssueCode::Unreadable;
    std::string file{}; ///< a name within what was read
    int line = 0; ///< from 1; 0: the whole file
    int column = 0; ///< from 1; 0: the whole line
    std::string columnName{};
    std::string pointer{}; ///< in JSON: where (RFC 6901); empty: the whole file
    std::string value{}; ///< what stood there
    std::string other{}; ///< what it disagrees with
    const FieldRule *rule = nullptr; ///< the form that was asked for
    FileError fileError = FileError::Io;
};

} // namespace morrow
