// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/review.h"

#include "report/figures.h"
#include "report/plain_text.h"
#include "report/review_parts.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace morrow {

namespace {

constexpr std::size_t kWordsOfName = 8;
constexpr std::size_t kWordsOfQuestion = 8;

const ComplaintDiary &find(const Diary &diary, std::string_view key)
{
    const auto &all = diary.complaints();
    return *std::find_if(all.begin(), all.end(), [key](const ComplaintDiary &one) { return one.complaint.key == key; });
}

std::string withSide(std::string text, const std::optional<Side> &side)
{
    if (!side)
        return text;
    return text + ", " + (*side == Side::Both ? "both sides" : std::string(name(*side)));
}

ReviewBasis basisOf(const Diary &diary, const ComplaintMeasures &measures, CivilDay to)
{
    const ComplaintDiary &complaint = find(diary, measures.complaint);
    const CivilDay planStart = complaint.firstStart().value_or(measures.from);
    const std::vector<CivilDay> visits = visitDays(complaint, to);
    return {diary, complaint, measures, Remarks::of(diary), {planStart, measures.from, to}, visits.empty() ? planStart : visits.back()};
}

/// "2 of 5", or where there were more than planned, or nobody planned, what is so.
std::string visitNumber(const ReviewBasis &basis, std::size_t number)
{
    const std::string count = std::to_string(number);
    if (!basis.complaint.plan || !basis.complaint.plan->visitsPlanned)
        return count;
    const int planned = *basis.complaint.plan->visitsPlanned;
    if (std::cmp_greater(number, planned))
        return count + " (" + std::to_string(planned) + " planned)";
    return count + " of " + std::to_string(planned);
}

std::string ago(int days)
{
    return days == 0 ? "today" : counted(days, "day") + " ago";
}

Sentence visitSentence(const ReviewBasis &basis)
{
    Saying saying;
    if (basis.measures.visits.empty()) {
        saying.add({words("no visit yet")});
        if (basis.complaint.plan && basis.complaint.plan->visitsPlanned)
            saying.add({words(std::to_string(*basis.complaint.plan->visitsPlanned) + " planned")});
        saying.add({words("today "), todaysCheck(basis)}, "; ");
        return saying.take().front();
    }
    const VisitMeasures &visit = basis.measures.visits.back();
    std::vector<EntryIndex> entries;
    const Visit *last = nullptr;
    for (const Visit &one : basis.complaint.visits) {
        if (one.day == visit.day) {
            entries.push_back(one.entry);
            last = &one;
        }
    }
    saying.add({words("visit "), stated(visitNumber(basis, basis.measures.visits.size()), entries),
        words(", " + ago(basis.today() - visit.day) + ": ")});
    const auto part = [&](const std::string &text) { saying.add({stated(text, {last->entry})}, saying.isAfterColon() ? "" : ", "); };
    if (!visit.totalImpulses && !last->bar && !last->hz)
        part("settings unknown");
    if (visit.totalImpulses)
        part(std::to_string(*visit.totalImpulses) + " impulses");
    if (last->bar)
        part(last->bar->toString() + " bar");
    if (last->hz)
        part(last->hz->toString() + " Hz");
    part("pain " + (last->painDuring ? std::to_string(last->painDuring->value()) : std::string("unknown")));
    saying.add({words("today "), todaysCheck(basis)}, "; ");
    return saying.take().front();
}

/// How many values about days of the window were changed or removed later.
std::vector<EntryIndex> corrected(const ReviewBasis &basis)
{
    std::vector<EntryIndex> entries;
    for (const Correction &correction : basis.remarks.corrections) {
        const auto &items = basis.complaint.items;
        const bool isOwn = correction.about == basis.complaint.complaint.key
            || std::any_of(items.begin(), items.end(), [&](const ItemDiary &item) { return item.item.key == correction.about; });
        if (isOwn && basis.window.holds(correction.day))
            entries.push_back(correction.entry);
    }
    return byDay(basis.diary, std::move(entries));
}

/// Days of the window on which the check was asked and nobody answered it; "can't say" is an answer, and so is stiffness alone.
int missingChecks(const ReviewBasis &basis)
{
    int missing = 0;
    for (CivilDay day = basis.window.from; day <= basis.window.to; day = day + 1) {
        const auto checks = checksOf(basis.complaint.checks, day, day);
        const bool isAnswered = std::any_of(
            checks.begin(), checks.end(), [](const Check &check) { return check.pain || check.stiffnessMinutes || check.declined; });
        const bool isAsked = basis.complaint.complaint.checkRule.falls(day, basis.window.planStart)
            && !(basis.complaint.putAsideFrom && *basis.complaint.putAsideFrom <= day);
        missing += isAsked && !isAnswered ? 1 : 0;
    }
    return missing;
}

std::vector<Sentence> qualitySentences(const ReviewBasis &basis)
{
    const CheckMeasures &check = basis.measures.check;
    // A number that opens what it counts; of none there is nothing to open.
    const auto add
        = [](Saying &saying, std::size_t count, std::vector<EntryIndex> entries, const std::string &what, const std::string &none) {
              if (count == 0)
                  saying.add({words(none + what)});
              else
                  saying.add({stated(std::to_string(count), std::move(entries)), words(what)});
          };
    const auto checks = [&basis](CheckFigure figure) { return behindCheck(basis.diary, basis.complaint, basis.window, figure).entries(); };
    Saying saying;
    Clause days{checkFigure(basis, static_cast<double>(check.recorded), CheckFigure::Recorded)};
    days.push_back(words(check.recorded > check.expected ? " entries, asked on " + counted(check.expected, "day")
                                                         : " of " + counted(check.expected, "day")));
    saying.add(std::move(days));
    if (check.declined > 0)
        add(saying, static_cast<std::size_t>(check.declined), checks(CheckFigure::Declined), " can't say", {});
    const int missing = missingChecks(basis);
    saying.add({words((missing == 0 ? "none" : std::to_string(missing)) + " missing")});
    add(saying, static_cast<std::size_t>(check.late), checks(CheckFigure::Late), " entered late", "none");
    std::vector<EntryIndex> changed = corrected(basis);
    add(saying, changed.size(), changed, " corrected", "none");
    std::vector<EntryIndex> paper = fromPaper(basis);
    add(saying, paper.size(), paper, paper.size() == 1 ? " entry from paper" : " entries from paper", "no");
    TickedAtOnce ticked = tickedAtOnce(basis);
    add(saying, static_cast<std::size_t>(ticked.sessions), std::move(ticked.sets),
        ticked.sessions == 1 ? " session ticked at once" : " sessions ticked at once", "no");
    return saying.take();
}

std::vector<QuestionLine> questionLines(const ReviewBasis &basis)
{
    std::vector<QuestionLine> lines;
    for (const Note &note : basis.remarks.notes) {
        const bool isAsked = note.kind == NoteKind::Question || note.kind == NoteKind::Unsure || note.kind == NoteKind::Answer;
        if (!isAsked || note.complaint != basis.complaint.complaint.key || note.day > basis.today())
            continue;
        QuestionLine line{.kind = note.kind,
            .entry = note.entry,
            .day = note.day,
            .exercise = {},
            .text = note.text,
            .reply = std::nullopt,
            .replyText = {},
            .isNew = basis.isNew(note.day)};
        for (const ItemDiary &item : basis.complaint.items) {
            if (item.item.key == note.item)
                line.exercise = exerciseName(item);
        }
        for (const Note &reply : basis.remarks.notes) {
            if (reply.kind == NoteKind::Reply && reply.about == basis.diary.entries()[note.entry].id && reply.day <= basis.today()) {
                line.reply = reply.entry;
                line.replyText = reply.text;
            }
        }
        lines.push_back(std::move(line));
    }
    std::reverse(lines.begin(), lines.end());
    return lines;
}

/// At most two sentences of a group stand on a line.
void addLines(std::vector<ReviewLine> &lines, ReviewPart part, Groups groups)
{
    for (std::vector<Sentence> &sentences : groups) {
        for (std::size_t i = 0; i < sentences.size(); ++i) {
            if (i % 2 == 0)
                lines.push_back({part, {}});
            lines.back().sentences.push_back(std::move(sentences[i]));
        }
    }
}

} // namespace

const ItemDiary &ReviewBasis::item(std::string_view key) const
{
    return *std::find_if(complaint.items.begin(), complaint.items.end(), [key](const ItemDiary &one) { return one.item.key == key; });
}

const ItemMeasures &ReviewBasis::numbersOf(std::string_view key) const
{
    return *std::find_if(measures.items.begin(), measures.items.end(), [key](const ItemMeasures &one) { return one.item == key; });
}

std::string question(const ReviewBasis &basis)
{
    std::string asked = clipped(basis.complaint.complaint.question, kWordsOfQuestion);
    if (!asked.ends_with("..."))
        asked.resize(asked.find_last_not_of(" .:;,?") + 1); // a colon or a value follows
    return asked.empty() ? "check" : asked;
}

std::string exerciseName(const ItemDiary &item)
{
    return withSide(clipped(item.item.exercise.empty() ? item.item.key : item.item.exercise, kWordsOfName), item.item.side);
}

Piece adherenceFigure(const ReviewBasis &basis, const ItemDiary &item, std::int64_t value, AdherenceFigure figure)
{
    const Trace trace = behindAdherence(basis.diary, basis.complaint, item, basis.window, figure);
    return made(basis.diary, std::to_string(value), trace, datedSpan(basis.window.from, basis.window.to));
}

Piece checkFigure(const ReviewBasis &basis, const std::optional<double> &value, CheckFigure figure, std::string_view otherwise)
{
    if (!value)
        return words(std::string(otherwise));
    const Trace trace = behindCheck(basis.diary, basis.complaint, basis.window, figure);
    const bool isMedian = figure == CheckFigure::Current || figure == CheckFigure::Reference;
    const bool isGiven = figure == CheckFigure::Reference && basis.complaint.complaint.firstAssessmentPain;
    std::string how = isGiven ? std::string("As the plan says.") : (isMedian ? "Median of " : "") + listed(trace);
    return made(basis.diary, morrow::figure(*value), trace, std::move(how));
}

Piece todaysCheck(const ReviewBasis &basis)
{
    for (const Check &check : checksOf(basis.complaint.checks, basis.today(), basis.today())) {
        if (check.pain)
            return stated(std::to_string(check.pain->value()), {check.entry});
        if (check.declined)
            return stated("can't say", {check.entry});
    }
    return words("none");
}

std::vector<EntryIndex> fromPaper(const ReviewBasis &basis)
{
    std::vector<EntryIndex> paper;
    const auto add = [&](const auto &entered) {
        for (const auto &one : entered) {
            if (basis.window.holds(one.day) && !basis.diary.recordedOn(one.entry))
                paper.push_back(one.entry);
        }
    };
    for (const ItemDiary &item : basis.complaint.items)
        add(item.sets);
    add(basis.complaint.checks);
    add(basis.complaint.sessions);
    add(basis.complaint.skips);
    add(basis.complaint.easier);
    return byDay(basis.diary, std::move(paper));
}

TickedAtOnce tickedAtOnce(const ReviewBasis &basis)
{
    TickedAtOnce ticked;
    std::set<std::pair<CivilDay, std::string>> sessions;
    for (const ItemDiary &item : basis.complaint.items) {
        for (const SetDone &set : item.sets) {
            if (set.reps < 1 || set.how != SetHow::All || !basis.window.holds(set.day))
                continue;
            sessions.emplace(set.day, set.slot);
            ticked.sets.push_back(set.entry);
        }
    }
    ticked.sessions = static_cast<int>(sessions.size());
    ticked.sets = byDay(basis.diary, std::move(ticked.sets));
    return ticked;
}

std::string_view title(ReviewPart part) noexcept
{
    switch (part) {
    case ReviewPart::LookFirst:
        return "Look first";
    case ReviewPart::PainAndGoal:
        return "Pain and goal";
    case ReviewPart::Done:
        return "Done";
    case ReviewPart::AfterLoading:
        return "After loading";
    case ReviewPart::Next:
        return "Next";
    }
    return {};
}

std::string ReviewLine::text() const
{
    return joined(sentences).text();
}

Review review(const Diary &diary, const ComplaintMeasures &measures, CivilDay to)
{
    const ReviewBasis basis = basisOf(diary, measures, to);
    Review result{.complaint = measures.complaint,
        .name = withSide(clipped(measures.region.empty() ? measures.complaint : measures.region, kWordsOfName), measures.side),
        .from = measures.from,
        .to = to,
        .since = basis.since,
        .lines = {},
        .exceptions = exceptions(basis),
        .visit = visitSentence(basis),
        .quality = qualitySentences(basis),
        .rules = ruleLines(basis),
        .questions = questionLines(basis)};
    addLines(result.lines, ReviewPart::LookFirst, lookFirst(basis));
    addLines(result.lines, ReviewPart::PainAndGoal, painAndGoal(basis));
    addLines(result.lines, ReviewPart::Done, done(basis));
    addLines(result.lines, ReviewPart::AfterLoading, afterLoading(basis));
    addLines(result.lines, ReviewPart::Next, next(basis, result.rules));
    return result;
}

} // namespace morrow
