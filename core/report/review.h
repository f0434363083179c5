// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a clinician reads first about one complaint: five sentences, exceptions, the quality of
/// the entries, the rule with its conditions, and what the person asked.
///
/// Filled from measures and the diary; counts, no adjective, no verdict. What is not known is
/// said. Everything about the person's days is up to `to`; what is reported, asked and answered
/// counts up to today, the day after it.
///
/// `since` is the day of the last visit up to `to`, itself included (an answer twice is better
/// than one that is lost), else P: what is new is new since then.

#include "measures/measures.h"
#include "model/remarks.h"
#include "report/sentence.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

/// The five sentences, in order.
enum class ReviewPart {
    LookFirst, ///< signs, health answers, questions
    PainAndGoal,
    Done, ///< a clause for each loading exercise, least sessions first; stretches in one
    AfterLoading,
    Next ///< the rule, the note to self, the review point
};

/// `Look first`, `Pain and goal`, ...
[[nodiscard]] std::string_view title(ReviewPart part) noexcept;

/// One or two sentences. A part has one line or more.
struct ReviewLine
{
    ReviewPart part;
    std::vector<Sentence> sentences;

    [[nodiscard]] std::string text() const;
};

enum class ReviewException {
    AboveReference, ///< current is 2 or more above the reference
    Sign, ///< nobody of the clinic answered for it, or it is new
    HealthAnswer,
    BadDays, ///< the bad-day dose on two days in a row, since `since`
    NoSet, ///< 14 days or more without a set, in which one was due
    NoChange ///< the review point is reached and the pain is not 2 points lower
};

struct ExceptionLine
{
    ReviewException exception;
    Sentence sentence;
};

/// A condition of the rule: "21 days in stage 3, at least 14".
struct ConditionLine
{
    Condition condition;
    bool isMet;
    Sentence sentence; ///< no full stop
};

/// The rule of one item that it is computed for.
struct RuleLine
{
    std::string item; ///< key
    std::string exercise; ///< with its side
    Decision decision;
    std::optional<int> toStage;
    std::vector<WaitsFor> waitsFor;
    std::vector<Sentence> sentences; ///< what it says
    std::vector<ConditionLine> conditions; ///< of the next stage, in the rule's order
    std::vector<ConditionLine> because; ///< what made for contact or a step down
};

/// Something the person wrote to the clinic.
struct QuestionLine
{
    NoteKind kind; ///< Question, Unsure (of an exercise), Answer (to a since-last-visit question)
    EntryIndex entry;
    CivilDay day;
    std::string exercise; ///< with its side; empty if it is about none
    std::string text; ///< whole; may be empty of Unsure
    std::optional<EntryIndex> reply; ///< the clinic's latest about it
    std::string replyText;
    bool isNew = false; ///< since `since`
};

struct Review
{
    std::string complaint; ///< key
    std::string name; ///< region, side
    CivilDay from; ///< of the window that counts are over
    CivilDay to;
    CivilDay since;
    std::vector<ReviewLine> lines; ///< by part, each at least once
    std::vector<ExceptionLine> exceptions; ///< in the order above; empty if there is none
    Sentence visit; ///< "Visit 3 of 5, 6 days ago: 2200 impulses, 2.5 bar, 9 Hz, pain 4; today 3."
    std::vector<Sentence> quality; ///< "51 of 56 days, 1 can't say, 4 missing, 3 entered late, 1 corrected, none from paper. ..."
    std::vector<RuleLine> rules; ///< plan order
    std::vector<QuestionLine> questions; ///< newest first
};

/// The review of the complaint that \a measures, made from \a diary up to \a to, are about. Counts are over their window.
[[nodiscard]] Review review(const Diary &diary, const ComplaintMeasures &measures, CivilDay to);

/// \a review as lines of at most \a width characters.
[[nodiscard]] std::string reviewText(const Review &review, std::size_t width);

} // namespace morrow
