// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The desk's words for what people are called, and for what is wrong: one sentence for each code.

#include <QCoreApplication> // Qt first, for moc
#include <QString>

#include "Desk/caseload.h"
#include "actions/desk.h"
#include "actions/reader_child.h"
#include "actions/record_at_desk.h"
#include "actions/take_in.h"

#include <optional>

namespace morrow {

class DeskWords
{
    Q_DECLARE_TR_FUNCTIONS(DeskWords)

public:
    /// The name that was typed, else that there is none.
    [[nodiscard]] static QString nameOf(const KnownAs &known);
    /// What stands beside it: "1968, file 2207"; empty if neither is known.
    [[nodiscard]] static QString besideName(const KnownAs &known);
    /// Why to look, in short sentences; the last entry where nothing presses.
    [[nodiscard]] static QString reasonsOf(const CaseCard &card);

    /// Why the desk could not be opened or could not keep something.
    [[nodiscard]] static QString sentence(StoreError error);
    [[nodiscard]] static QString sentence(FileError error);
    [[nodiscard]] static QString sentence(const DeskError &error);
    /// What is not right with the record folder; empty if all of it could be read.
    [[nodiscard]] static QString sentence(const TookNew &news);

    /// Why a file was not taken in.
    [[nodiscard]] static QString sentence(ReaderFault fault);
    [[nodiscard]] static QString sentence(const Issue &issue);
    [[nodiscard]] static QString sentence(const TakeInProblem &problem);
    [[nodiscard]] static QString sentence(UndoProblem problem);
    [[nodiscard]] static QString sentence(DeskProblem problem);
};

} // namespace morrow
