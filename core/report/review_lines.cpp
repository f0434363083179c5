// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/figures.h"
#include "report/review_parts.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace morrow {

namespace {

constexpr std::size_t kWordsOfSign = 7;
constexpr std::size_t kWordsOfText = 12;
constexpr std::size_t kWordsOfName = 9;
constexpr std::size_t kWordsOfReason = 4;
constexpr std::size_t kMostReasons = 2;

/// `1 question`, a number that opens what it counts.
Clause countedClause(std::vector<EntryIndex> entries, const char *one, const char *more, const char *after = "")
{
    const std::size_t count = entries.size();
    return {stated(std::to_string(count), std::move(entries)), words(std::string(" ") + (count == 1 ? one : more) + after)};
}

std::vector<EntryIndex> entriesOf(const std::vector<const Note *> &notes)
{
    std::vector<EntryIndex> entries;
    std::transform(notes.begin(), notes.end(), std::back_inserter(entries), [](const Note *note) { return note->entry; });
    return entries;
}

/// `2 exercises unsure since ...`: somebody may ask about one more than once.
Clause unsureClause(const std::vector<const Note *> &notes, const std::string &since)
{
    std::set<std::string_view> exercises;
    for (const Note *const note : notes)
        exercises.insert(note->item);
    return {stated(std::to_string(exercises.size()), entriesOf(notes)),
        words((exercises.size() == 1 ? " exercise unsure" : " exercises unsure") + since)};
}

void addGroup(Groups &groups, Saying &saying)
{
    auto sentences = saying.take();
    if (!sentences.empty())
        groups.push_back(std::move(sentences));
}

/// What was skipped, with up to two of the reasons that were given.
Clause skippedClause(const ReviewBasis &basis, const ItemDiary &item, const ItemMeasures &numbers)
{
    Clause clause{adherenceFigure(basis, item, numbers.adherence.skips, AdherenceFigure::Skips), words(" skipped")};
    const Trace trace = behindAdherence(basis.diary, basis.complaint, item, basis.window, AdherenceFigure::Skips);
    std::set<std::string> said;
    for (const SlotMark &skip : basis.complaint.skips) {
        const bool isCounted
            = std::any_of(trace.values.begin(), trace.values.end(), [&skip](const Behind &behind) { return behind.entry == skip.entry; });
        if (!isCounted || skip.reason.empty() || said.size() == kMostReasons || !said.insert(skip.reason).second)
            continue;
        clause.push_back(words(said.size() == 1 ? ": " : ", "));
        clause.push_back(quoted(skip.reason, kWordsOfReason, skip.entry));
    }
    return clause;
}

/// What \a set was done with: its own load, else that of its stage; nullopt where neither names one.
std::optional<Decimal> loadOf(const ItemDiary &item, const SetDone &set)
{
    const Decimal prescribed = item.item.stages[static_cast<std::size_t>(stageOn(item, set.day).number - 1)].dose.loadKg;
    return set.loadKg || prescribed == Decimal() ? set.loadKg : prescribed;
}

/// The load of the first and of the last set of the window that has one.
std::optional<Clause> loadClause(const ReviewBasis &basis, const ItemDiary &item)
{
    std::optional<Piece> first;
    std::optional<Piece> last;
    for (const SetDone &set : item.sets) {
        const auto load = set.reps >= 1 && basis.window.holds(set.day) ? loadOf(item, set) : std::nullopt;
        if (!load)
            continue;
        last = stated(load->toString(), {set.entry});
        first = first ? first : last;
    }
    if (!first)
        return std::nullopt;
    Clause clause{words("load "), *first};
    if (first->text != last->text) {
        clause.push_back(words(" to "));
        clause.push_back(*std::move(last));
    }
    clause.push_back(words(" kg"));
    return clause;
}

std::vector<Sentence> doneOf(const ReviewBasis &basis, const ItemDiary &item)
{
    Saying saying;
    const ItemMeasures &numbers = basis.numbersOf(item.item.key);
    const Adherence &adherence = numbers.adherence;
    const auto figure = [&](std::int64_t value, AdherenceFigure of) { return adherenceFigure(basis, item, value, of); };
    if (adherence.sessionsDue == 0) {
        saying.add({words("no session of " + exerciseName(item) + " was due")});
    } else {
        saying.add({words("did "), figure(adherence.sessionsAttended, AdherenceFigure::Done), words(" of "),
            figure(adherence.sessionsDue, AdherenceFigure::Due),
            words((adherence.sessionsDue == 1 ? " session of " : " sessions of ") + exerciseName(item))});
        saying.add({figure(adherence.setsDone, AdherenceFigure::Done), words(" of "), figure(adherence.setsDue, AdherenceFigure::Due),
            words(adherence.setsDue == 1 ? " set" : " sets")});
    }
    if (adherence.setsExtra > 0)
        saying.add({figure(adherence.setsExtra, AdherenceFigure::Done), words(adherence.setsExtra == 1 ? " extra set" : " extra sets")});
    if (adherence.easier > 0)
        saying.add({figure(adherence.easier, AdherenceFigure::Easier), words(" lighter")});
    if (adherence.skips > 0)
        saying.add(skippedClause(basis, item, numbers));
    if (adherence.away > 0)
        saying.add({words("away "), figure(adherence.away, AdherenceFigure::Away), words(adherence.away == 1 ? " day" : " days")});
    if (auto load = loadClause(basis, item))
        saying.add(std::move(*load));
    return saying.take();
}

/// Sessions attended of those that were due, as one number to sort by; what was not due is last.
double shareOf(const ReviewBasis &basis, const ItemDiary &item)
{
    return basis.numbersOf(item.item.key).adherence.sessionRatio.value_or(2);
}

/// Whether \a item was due or done in the window.
bool isShown(const ReviewBasis &basis, const ItemDiary &item)
{
    const Adherence &adherence = basis.numbersOf(item.item.key).adherence;
    return adherence.sessionsDue > 0 || adherence.setsExtra > 0 || adherence.setsDone > 0;
}

void addStretches(Saying &saying, const ReviewBasis &basis, const std::vector<const ItemDiary *> &stretches)
{
    std::int64_t attended = 0;
    std::int64_t due = 0;
    std::set<EntryIndex> doneBy;
    std::set<EntryIndex> dueBy; // pauses and visits shape the days of more than one
    for (const ItemDiary *const item : stretches) {
        const Adherence &adherence = basis.numbersOf(item->item.key).adherence;
        attended += adherence.sessionsAttended;
        due += adherence.sessionsDue;
        const auto behind
            = [&](AdherenceFigure figure) { return behindAdherence(basis.diary, basis.complaint, *item, basis.window, figure); };
        for (const Behind &value : behind(AdherenceFigure::Done).values)
            doneBy.insert(value.entry);
        const auto shaping = behind(AdherenceFigure::Due).entries();
        dueBy.insert(shaping.begin(), shaping.end());
    }
    if (stretches.empty())
        return;
    const auto opening = [&basis](std::int64_t count, const std::set<EntryIndex> &entries) {
        return stated(std::to_string(count), byDay(basis.diary, {entries.begin(), entries.end()}));
    };
    saying.add({words("stretches: "), opening(attended, doneBy), words(" of "), opening(due, dueBy), words(" sessions")});
    saying.stop();
}

void addPaperAndTicks(Saying &saying, const ReviewBasis &basis)
{
    std::vector<EntryIndex> paper = fromPaper(basis);
    TickedAtOnce ticked = tickedAtOnce(basis);
    if (!paper.empty())
        saying.add(countedClause(std::move(paper), "entry from paper", "entries from paper"));
    if (ticked.sessions > 0)
        saying.add({stated(std::to_string(ticked.sessions), std::move(ticked.sets)),
            words(ticked.sessions == 1 ? " session ticked at once" : " sessions ticked at once")});
}

void addGoals(Groups &groups, const ReviewBasis &basis)
{
    Saying saying;
    const char *called = "goal"; // the first is
    for (const OutcomeMeasures &series : basis.measures.outcomes) {
        if (series.kind != OutcomeKind::Activity)
            continue;
        std::vector<EntryIndex> entries;
        for (const Outcome &outcome : basis.complaint.outcomes) {
            if (outcome.kind == series.kind && outcome.name == series.name && outcome.side == series.side && outcome.day <= basis.window.to)
                entries.push_back(outcome.entry);
        }
        Clause clause{words(std::exchange(called, "activity")),
            words(series.name.empty() ? std::string(": ") : " '" + clipped(series.name, kWordsOfName) + "': ")};
        if (series.n > 1) {
            clause.push_back(stated(series.first.toString(), {entries.front()}));
            clause.push_back(words(" to "));
        }
        clause.push_back(stated(series.last.toString(), entries));
        clause.push_back(words(" of 10 on " + dated(series.lastDay)));
        saying.add(std::move(clause));
        saying.stop();
    }
    addGroup(groups, saying);
}

void addWorstPain(Saying &saying, const ReviewBasis &basis)
{
    std::optional<PainScore> worst;
    std::vector<EntryIndex> entries;
    for (const Session &session : basis.complaint.sessions) {
        if (!basis.window.holds(session.day) || !session.painDuring)
            continue;
        worst = std::max(worst, session.painDuring);
        entries.push_back(session.entry);
    }
    if (!worst && (!basis.complaint.plan || !basis.complaint.plan->asks.during))
        return;
    Clause clause{words("worst pain in exercise ")};
    clause.push_back(worst ? stated(std::to_string(worst->value()), std::move(entries)) : words("unknown"));
    clause.push_back(words(", limit " + basis.complaint.limits().during.toString()));
    saying.add(std::move(clause));
    saying.stop();
}

} // namespace

std::vector<const ReportedSign *> shownSigns(const ReviewBasis &basis)
{
    std::vector<const ReportedSign *> shown;
    for (const ReportedSign &sign : basis.diary.signs()) {
        const bool isAnswered = sign.clearedOn && *sign.clearedOn <= basis.today();
        if (sign.day <= basis.today() && (!isAnswered || basis.isNew(sign.day)))
            shown.push_back(&sign);
    }
    return shown;
}

Sentence signSentence(const ReviewBasis &basis, const ReportedSign &sign)
{
    const bool isAnswered = sign.clearedOn && *sign.clearedOn <= basis.today();
    Saying saying;
    saying.add({words("sign: "), stated(clipped(sign.sign, kWordsOfSign), {sign.entry}), words(" on " + dated(sign.day))});
    saying.add({words(std::string("clinic told: ") + (!sign.told ? "no answer" : *sign.told ? "yes" : "no"))}, "; ");
    if (isAnswered)
        saying.add({words("cleared "), stated(dated(*sign.clearedOn), {*sign.clearedBy})}, "; ");
    return saying.take().front();
}

std::vector<const Note *> newNotes(const ReviewBasis &basis, NoteKind kind)
{
    std::vector<const Note *> notes;
    for (const Note &note : basis.remarks.notes) {
        if (note.kind == kind && note.complaint == basis.complaint.complaint.key && basis.isNew(note.day))
            notes.push_back(&note);
    }
    return notes;
}

Sentence answerSentence(const Note &note)
{
    Saying saying;
    saying.add({words("new health answer on " + dated(note.day) + ": "), quoted(note.text, kWordsOfText, note.entry)});
    return saying.take().front();
}

Groups lookFirst(const ReviewBasis &basis)
{
    std::vector<Sentence> sentences;
    for (const ReportedSign *const sign : shownSigns(basis))
        sentences.push_back(signSentence(basis, *sign));
    for (const Note *const note : newNotes(basis, NoteKind::Answer))
        sentences.push_back(answerSentence(*note));
    const auto questions = newNotes(basis, NoteKind::Question);
    const auto unsure = newNotes(basis, NoteKind::Unsure);
    Saying saying;
    const std::string since = " since " + dated(basis.since);
    if (!questions.empty())
        saying.add(countedClause(entriesOf(questions), "question", "questions", unsure.empty() ? since.c_str() : ""));
    if (!unsure.empty())
        saying.add(unsureClause(unsure, since));
    if (sentences.empty() && questions.empty() && unsure.empty())
        saying.add({words("no sign, no new health answer, no question" + since)});
    const auto counts = saying.take();
    sentences.insert(sentences.end(), counts.begin(), counts.end());
    return {sentences};
}

Groups painAndGoal(const ReviewBasis &basis)
{
    const CheckMeasures &check = basis.measures.check;
    Saying saying;
    if (check.current) {
        saying.add({words(question(basis) + ": usually "), checkFigure(basis, check.current, CheckFigure::Current), words(" this week")});
    } else {
        const Trace week = behindCheck(basis.diary, basis.complaint, basis.window, CheckFigure::Current);
        // Not of the window, which may hold many: what is usual is said of this week.
        saying.add({words(question(basis) + ": too few entries this week to say ("),
            made(basis.diary, std::to_string(week.values.size()), week, listed(week)), words(", at least 3)")});
    }
    const char *const compared = basis.complaint.complaint.firstAssessmentPain ? " at first assessment" : " in the first week";
    saying.add({checkFigure(basis, check.reference, CheckFigure::Reference), words(compared)}, "; ");
    if (!basis.measures.visits.empty()) {
        const VisitMeasures &visit = basis.measures.visits.back();
        const Trace trace = behindVisit(basis.complaint, basis.window.to, visit.day, VisitFigure::Before);
        Piece before = visit.before ? made(basis.diary, figure(*visit.before), trace, "Median of " + listed(trace)) : words("unknown");
        saying.add({std::move(before), words(" before visit " + std::to_string(basis.measures.visits.size()))}, "; ");
    }
    saying.stop();
    Clause entries{checkFigure(basis, static_cast<double>(check.recorded), CheckFigure::Recorded)};
    if (check.recorded > check.expected)
        entries.push_back(words(" entries, asked on " + counted(check.expected, "day")));
    else
        entries.push_back(words(" of " + std::to_string(check.expected) + " entries"));
    saying.add(std::move(entries));
    saying.add({words("today "), todaysCheck(basis)}, "; ");
    Groups groups{saying.take()};
    addGoals(groups, basis);
    return groups;
}

Groups done(const ReviewBasis &basis)
{
    std::vector<const ItemDiary *> loading;
    std::vector<const ItemDiary *> stretches;
    for (const ItemDiary &item : basis.complaint.items) {
        if (isShown(basis, item))
            (item.item.loads ? loading : stretches).push_back(&item);
    }
    std::stable_sort(loading.begin(), loading.end(),
        [&basis](const ItemDiary *a, const ItemDiary *b) { return shareOf(basis, *a) < shareOf(basis, *b); });
    Groups groups;
    for (const ItemDiary *const item : loading)
        groups.push_back(doneOf(basis, *item));
    Saying saying;
    if (loading.empty() && stretches.empty())
        saying.add({words("no session was due, no set was done")});
    addStretches(saying, basis, stretches);
    addPaperAndTicks(saying, basis);
    addGroup(groups, saying);
    return groups;
}

Groups afterLoading(const ReviewBasis &basis)
{
    const ResponseMeasures &response = basis.measures.response;
    const Limits &limits = basis.complaint.limits();
    const int known = response.settled + response.unsettled;
    const auto behind = [&](std::string text, ResponseState state, const char *how) {
        const Trace trace = behindResponses(basis.complaint, basis.window.from, basis.window.to, state);
        return made(basis.diary, std::move(text), trace, how + (", " + listed(trace)));
    };
    Saying saying;
    if (known == 0) {
        saying.add({words("no loading day that can be judged yet")});
    } else {
        saying.add({words("next check stayed within " + limits.riseAllowed.toString() + " of usual"
                        + (limits.check ? " and at most " + limits.check->toString() : std::string()) + " after "),
            behind(std::to_string(response.settled), ResponseState::Settled, "Checks of the day after"), words(" of "),
            behind(std::to_string(known), ResponseState::Unsettled, "Checks of the day after that were above it"),
            words(known == 1 ? " loading day" : " loading days")});
    }
    if (known > 0 || response.unknown > 0) {
        const auto afterVisit = std::count_if(
            response.days.begin(), response.days.end(), [](const ResponseDay &day) { return day.reason == UnknownBecause::AfterVisit; });
        saying.add({behind(std::to_string(response.unknown), ResponseState::Unknown, "No check of the day after to judge by"),
            words(afterVisit > 0 ? " unknown (" + std::to_string(afterVisit) + " after a visit)" : " unknown")});
    }
    saying.stop();
    addWorstPain(saying, basis);
    Groups groups{saying.take()};
    for (const UnusualDay &day : basis.remarks.unusual) {
        if (!basis.isNew(day.day))
            continue;
        saying.add({words("unusual day: " + dated(day.day) + ", "), quoted(day.text, kWordsOfText, day.entry)});
        saying.stop();
    }
    addGroup(groups, saying);
    return groups;
}

} // namespace morrow
