// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The parts that a review (review.h) is put together of.

#include "measures/days.h"
#include "report/review.h"
#include "report/saying.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

/// What every part reads.
struct ReviewBasis
{
    const Diary &diary;
    const ComplaintDiary &complaint;
    const ComplaintMeasures &measures;
    Remarks remarks;
    Window window;
    CivilDay since;

    [[nodiscard]] CivilDay today() const noexcept { return window.to + 1; }
    [[nodiscard]] bool isNew(CivilDay day) const noexcept { return since <= day && day <= today(); }
    /// Of the item \a key; it is one of the complaint.
    [[nodiscard]] const ItemDiary &item(std::string_view key) const;
    [[nodiscard]] const ItemMeasures &numbersOf(std::string_view key) const;
};

/// `Worst pain last night`: what the person is asked each day, its first eight words; `check` where nobody wrote it.
[[nodiscard]] std::string question(const ReviewBasis &basis);

/// `heel raise, left`, of a name at most its first eight words.
[[nodiscard]] std::string exerciseName(const ItemDiary &item);

/// `2` that opens what \a figure counts.
[[nodiscard]] Piece adherenceFigure(const ReviewBasis &basis, const ItemDiary &item, std::int64_t value, AdherenceFigure figure);

/// `3`, or \a otherwise where it is not known.
[[nodiscard]] Piece checkFigure(
    const ReviewBasis &basis, const std::optional<double> &value, CheckFigure figure, std::string_view otherwise = "unknown");

/// The pain of today, or `none`.
[[nodiscard]] Piece todaysCheck(const ReviewBasis &basis);

/// Signs that nobody answered for by today, and new ones.
[[nodiscard]] std::vector<const ReportedSign *> shownSigns(const ReviewBasis &basis);
[[nodiscard]] Sentence signSentence(const ReviewBasis &basis, const ReportedSign &sign);
[[nodiscard]] std::vector<const Note *> newNotes(const ReviewBasis &basis, NoteKind kind);
[[nodiscard]] Sentence answerSentence(const Note &note);

/// Sentences that stand together, such as those about one exercise.
using Groups = std::vector<std::vector<Sentence>>;

[[nodiscard]] Groups lookFirst(const ReviewBasis &basis);
[[nodiscard]] Groups painAndGoal(const ReviewBasis &basis);
[[nodiscard]] Groups done(const ReviewBasis &basis);
[[nodiscard]] Groups afterLoading(const ReviewBasis &basis);
[[nodiscard]] Groups next(const ReviewBasis &basis, const std::vector<RuleLine> &rules);

[[nodiscard]] std::vector<RuleLine> ruleLines(const ReviewBasis &basis);
[[nodiscard]] std::vector<ExceptionLine> exceptions(const ReviewBasis &basis);

/// What was typed in from paper of the days of the window: checks, sets, sessions, skips and bad-day doses, by day.
[[nodiscard]] std::vector<EntryIndex> fromPaper(const ReviewBasis &basis);

/// Sessions of the window whose sets were recorded by one tap.
struct TickedAtOnce
{
    int sessions = 0;
    std::vector<EntryIndex> sets;
};
[[nodiscard]] TickedAtOnce tickedAtOnce(const ReviewBasis &basis);

} // namespace morrow
