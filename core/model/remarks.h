// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What people wrote beside the numbers of a diary, and which numbers were changed later.
///
/// Read when somebody asks, since measures need none of it. Of each chain of corrections the
/// last one counts; one that withdraws leaves nothing.

#include "model/diary.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

enum class NoteKind {
    Question,
    Answer, ///< to a since-last-visit question; both in `text`
    Note,
    Unsure, ///< how an exercise is done
    Reply ///< the clinic's
};

struct Note
{
    EntryIndex entry;
    CivilDay day;
    NoteKind kind;
    std::string complaint; ///< key
    std::string item; ///< key; empty if it is about none
    std::string text; ///< may be empty
    std::string about; ///< the id of the note that it replies to; empty if none
};

struct UnusualDay
{
    EntryIndex entry;
    CivilDay day;
    std::string text;
};

/// The clinic's note to self about a visit.
struct Memo
{
    EntryIndex entry;
    std::string visit; ///< the id of its entry
    std::string note;
    std::string nextTime;
};

/// A value that was changed or removed later: of a check, a set, a session or an outcome.
struct Correction
{
    EntryIndex entry; ///< the last of the chain
    Kind kind;
    CivilDay day; ///< that it is about
    std::string about; ///< the key of the complaint; of a set that of the item
    std::vector<EntryIndex> before; ///< what it corrects, directly or through others, newest first
};

struct Remarks
{
    std::vector<Note> notes; ///< by day, recording (absent first), id; so are the rest
    std::vector<UnusualDay> unusual;
    std::vector<Memo> memos;
    std::vector<Correction> corrections;

    [[nodiscard]] static Remarks of(const Diary &diary);
};

} // namespace morrow
