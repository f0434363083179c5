// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A person or a clinic says something: one entry, checked, then durable.

#include "actions/open.h"
#include "base/clock.h"
#include "base/result.h"
#include "model/draft.h"
#include "model/rules.h"

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace morrow {

/// Why a draft was not recorded.
struct DraftProblem
{
    enum class Code {
        Body, ///< `body` says which field and why
        DayMissing, ///< from paper, an entry has to name its day
        AuthorRefused, ///< this kind is not for that author to state
        UnknownComplaint,
        UnknownItem,
        UnknownStage,
        ReplacesAnotherKind,
        ReplacesLoop,
        IdRefused,
    };

    Code code = Code::Body;
    BodyProblem body{};
};

/// What \a draft is as an entry of \a diary: checked, and filled in with what follows (a complaint
/// where there is one only, the day from the clock and the diary's day start). Nothing is recorded;
/// the id is empty where the draft has none.
/// \a diary may lack old entries (OpenDiary::recent); \a entries are all of them, in which what is replaced is looked for.
[[nodiscard]] Result<Entry, std::vector<DraftProblem>> entryFrom(
    const Diary &diary, std::span<const Entry> entries, Draft draft, const Moment &now);

using RecordError = std::variant<StoreError, std::vector<DraftProblem>>;

/// Records \a draft, see entryFrom, under a new id where it has none. When it returns, the entry is durable.
[[nodiscard]] Result<Entry, RecordError> record(OpenDiary &diary, Draft draft, const Moment &now);

/// Records \a drafts, all or none, in one step of the store.
[[nodiscard]] Result<std::vector<Entry>, RecordError> record(OpenDiary &diary, std::vector<Draft> drafts, const Moment &now);

/// Records \a body in the place of the entry \a id. Refused if there is no such entry.
[[nodiscard]] Result<Entry, RecordError> correct(OpenDiary &diary, std::string_view id, Body body, Author author, const Moment &now);

/// What takes \a entry back: it says what the entry was about, and that it is withdrawn. nullopt if its body cannot be read.
[[nodiscard]] std::optional<Draft> withdrawal(const Entry &entry, Author author);

/// Takes the entry \a id back: records its withdrawal.
[[nodiscard]] Result<Entry, RecordError> withdraw(OpenDiary &diary, std::string_view id, Author author, const Moment &now);

} // namespace morrow
