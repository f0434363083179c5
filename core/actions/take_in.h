// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A file of somebody else comes into the desk, and goes out again.
///
///  I1  It is taken in whole or not at all, and a file that is refused changes nothing.
///  I2  The same file twice, or files that overlap, in any order, give the same store.
///  I3  A file of somebody unknown here is taken in only once a person has said whose it is.
///  I4  Nothing that only the desk itself may say comes in with a file.

#include "actions/desk.h"
#include "actions/diary_union.h"
#include "base/clock.h"
#include "exchange/fhir.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace morrow {

/// What a person said about whose a file is. Any answer also asks for a file that was set aside.
struct WhoseAnswer
{
    bool isNew = false; ///< somebody new
    std::string as; ///< a ref known here; empty: not said
};

struct TakenIn
{
    std::string file; ///< the SHA-256 that names it in the record
    std::string person; ///< by the ref of the store
    bool isNewPerson = false;
    int added = 0;
    int known = 0; ///< there already
    int erased = 0; ///< passed over, because they were erased here
};

/// Why a file was not taken in.
struct TakeInProblem
{
    enum class Code {
        Waits, ///< its person is not known here, and nobody said whose it is
        UnknownPerson, ///< it was to be somebody's who is not known here; `what` is the ref
        AnotherPerson, ///< it was to be `what`'s, and is known to be somebody else's
        ErasedPerson, ///< its person was erased here
        SetAside, ///< its taking in was undone
        OfADesk, ///< it claims to be out of a desk's record, or holds what only a desk says; `what` is the kind
        Clashes, ///< `clash` says how
    };

    Code code;
    std::string what{};
    std::optional<Clash> clash{};
};

using TakeInError = std::variant<StoreError, FileError, std::vector<TakeInProblem>>;

/// Takes in \a diary, which was read from \a bytes.
[[nodiscard]] Result<TakenIn, TakeInError> takeIn(
    OpenDesk &desk, const FhirDiary &diary, const std::string &bytes, const WhoseAnswer &answer, const Moment &now);

struct Undone
{
    std::string file;
    std::string person;
    int before = 0; ///< entries of the person
    int after = 0; ///< the decision itself is one of them
};

/// Why a taking in was not undone.
enum class UndoProblem {
    UnknownFile, ///< no file of that name was taken in
    SetAside, ///< it was undone before
    RecordDamaged, ///< not every file of that person can be read, so the person cannot be made again without it
};

using UndoError = std::variant<StoreError, FileError, UndoProblem>;

/// Undoes the taking in of the file that the record names \a file: a decision is written, and its
/// person made again without it. What said that its ref is that person goes with the ref's last file.
[[nodiscard]] Result<Undone, UndoError> undoTakeIn(OpenDesk &desk, const std::string &file, const Moment &now);

} // namespace morrow
