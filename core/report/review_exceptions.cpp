// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/figures.h"
#include "report/review_parts.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr double kMarkedChange = 2; ///< points
constexpr int kDaysWithoutSet = 14;

Sentence sentenceOf(Clause clause)
{
    Saying saying;
    saying.add(std::move(clause));
    return saying.take().front();
}

void addLevel(std::vector<ExceptionLine> &lines, const ReviewBasis &basis)
{
    const CheckMeasures &check = basis.measures.check;
    if (!check.current || !check.reference || *check.current - *check.reference < kMarkedChange)
        return;
    lines.push_back({ReviewException::AboveReference,
        sentenceOf({words(question(basis) + ": usually "), checkFigure(basis, check.current, CheckFigure::Current), words(" this week, "),
            checkFigure(basis, check.reference, CheckFigure::Reference),
            words(basis.complaint.complaint.firstAssessmentPain ? " at first assessment" : " in the first week")})});
}

void addBadDays(std::vector<ExceptionLine> &lines, const ReviewBasis &basis)
{
    const auto &marks = basis.complaint.easier;
    for (auto first = marks.begin(); first != marks.end();) {
        auto end = first;
        CivilDay last = first->day;
        std::vector<EntryIndex> entries;
        for (; end != marks.end() && end->day <= last + 1; ++end) {
            last = end->day;
            entries.push_back(end->entry);
        }
        const int days = last - first->day + 1;
        if (days > 1 && basis.isNew(last)) {
            lines.push_back({ReviewException::BadDays,
                sentenceOf({words("bad-day dose on "), stated(std::to_string(days), std::move(entries)),
                    words(" days in a row, " + datedSpan(first->day, last))})});
        }
        first = end;
    }
}

/// A gap is as long as it is, whatever window the counts are over.
void addNoSet(std::vector<ExceptionLine> &lines, const ReviewBasis &basis)
{
    const Window window{basis.window.planStart, basis.window.planStart, basis.window.to};
    const auto interrupted = interruptions(basis.diary.pauses(), basis.complaint, window);
    std::vector<bool> isDone(window.length());
    std::vector<bool> isDue(window.length());
    for (const ItemDiary &item : basis.complaint.items) {
        const auto days = itemDays(item, interrupted, window);
        for (std::size_t i = 0; i < days.size(); ++i)
            isDue[i] = isDue[i] || days[i].due;
        for (const SetDone &set : item.sets) {
            if (set.reps >= 1 && window.holds(set.day))
                isDone[window.place(set.day)] = true;
        }
    }
    for (std::size_t first = 0; first < isDone.size();) {
        std::size_t end = first;
        bool wasDue = false;
        for (; end < isDone.size() && !isDone[end]; ++end)
            wasDue = wasDue || isDue[end];
        const int length = static_cast<int>(end - first);
        if (wasDue && length >= kDaysWithoutSet && window.day(end - 1) >= basis.since) {
            lines.push_back({ReviewException::NoSet,
                sentenceOf(
                    {words("no set for " + std::to_string(length) + " days, " + datedSpan(window.day(first), window.day(end - 1)))})});
        }
        first = end + 1;
    }
}

void addNoChange(std::vector<ExceptionLine> &lines, const ReviewBasis &basis)
{
    const CheckMeasures &check = basis.measures.check;
    const auto point = basis.complaint.plan ? basis.complaint.plan->reviewDay : std::nullopt;
    if (!point || *point > basis.today())
        return;
    if (check.current && check.reference && *check.current - *check.reference <= -kMarkedChange)
        return;
    lines.push_back({ReviewException::NoChange,
        sentenceOf({words("review point " + dated(*point) + " reached: usually "), checkFigure(basis, check.current, CheckFigure::Current),
            words(" this week, "), checkFigure(basis, check.reference, CheckFigure::Reference),
            words(basis.complaint.complaint.firstAssessmentPain ? " at first assessment" : " in the first week")})});
}

} // namespace

std::vector<ExceptionLine> exceptions(const ReviewBasis &basis)
{
    std::vector<ExceptionLine> lines;
    addLevel(lines, basis);
    for (const ReportedSign *const sign : shownSigns(basis))
        lines.push_back({ReviewException::Sign, signSentence(basis, *sign)});
    for (const Note *const note : newNotes(basis, NoteKind::Answer))
        lines.push_back({ReviewException::HealthAnswer, answerSentence(*note)});
    addBadDays(lines, basis);
    addNoSet(lines, basis);
    addNoChange(lines, basis);
    return lines;
}

} // namespace morrow
