// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/overview.h"

#include "base/utf8.h"
#include "report/figures.h"
#include "report/plain_text.h"
#include "report/review.h"

#include <algorithm>

namespace morrow {

namespace {

constexpr int kClosedDays = 7; ///< days that `current` looks back on
constexpr int kFirstChangeDay = 13; ///< change is shown from P + 13 on

/// Lines as they come, indented and wrapped.
class Page
{
public:
    void blank() { m_text += '\n'; }

    void line(std::string_view text, std::size_t indent = 0)
    {
        for (const std::string &part : wrapped(text, kPageWidth - indent))
            put(part, indent);
    }

    /// `label  text`, further lines of the text below its first.
    void labelled(std::string_view label, std::string_view text, std::size_t indent, std::size_t width)
    {
        std::string before = std::string(indent, ' ') + std::string(label);
        before.resize(indent + width, ' ');
        for (const std::string &part : wrapped(text, kPageWidth - before.size())) {
            m_text += before + part + "\n";
            before.assign(before.size(), ' ');
        }
    }

    void heading(std::string_view text, char underline)
    {
        const auto parts = wrapped(text, kPageWidth);
        std::size_t widest = 0;
        for (const std::string &part : parts) {
            widest = std::max(widest, codePoints(part));
            put(part, 0);
        }
        put(std::string(widest, underline), 0);
    }

    /// Lines as they are, and an empty one.
    void block(std::string_view lines, std::size_t indent)
    {
        for (std::size_t at = 0; at < lines.size();) {
            const std::size_t end = std::min(lines.find('\n', at), lines.size());
            put(lines.substr(at, end - at), indent);
            at = end + 1;
        }
        blank();
    }

    void table(const PlainTable &table, std::size_t indent)
    {
        for (const std::string &row : table.lines(kPageWidth - indent))
            put(row, indent);
    }

    [[nodiscard]] std::string take() { return std::move(m_text); }

private:
    void put(std::string_view text, std::size_t indent)
    {
        m_text += std::string(text.empty() ? 0 : indent, ' ') + std::string(text) + "\n";
    }

    std::string m_text;
};

constexpr std::size_t kIndent = 2;
constexpr std::size_t kLabel = 10;

std::string withSide(std::string text, std::optional<Side> side)
{
    if (!side)
        return text;
    return text + ", " + (*side == Side::Both ? "both sides" : std::string(name(*side)));
}

std::string nameOf(std::string_view wanted, std::string_view otherwise)
{
    return visible(wanted.empty() ? otherwise : wanted);
}

std::string dayCount(CivilDay from, CivilDay to)
{
    return datedSpan(from, to) + ", " + counted(to - from + 1, "day");
}

std::string knownOr(std::optional<double> value, const char *otherwise)
{
    return value ? figure(*value) : otherwise;
}

std::string volumeSentence(const Adherence &adherence)
{
    if (!adherence.volumeDue || !adherence.volumeDone)
        return "not known: body mass is missing, or units differ between stages";
    std::string text = figure(*adherence.volumeDone) + " of " + volume(*adherence.volumeDue, adherence.volumeUnit);
    if (adherence.volumeRatio)
        text += " (" + share(*adherence.volumeRatio) + ")";
    return text;
}

void addItem(Page &page, const ItemMeasures &item)
{
    const Adherence &adherence = item.adherence;
    page.line(withSide(nameOf(item.exercise, item.item), item.side) + ": stage " + std::to_string(item.stage) + " since "
            + dated(item.stageBegan),
        kIndent);
    const auto say = [&page](const char *label, const std::string &text) { page.labelled(label, text, 2 * kIndent, kLabel); };
    say("sets", part(adherence.setsDone, adherence.setsDue) + ", " + std::to_string(adherence.setsExtra) + " extra");
    say("sessions",
        part(adherence.sessionsAttended, adherence.sessionsDue) + ", " + std::to_string(adherence.sessionsComplete) + " with every set");
    say("volume", volumeSentence(adherence));
    say("noted",
        "skipped " + std::to_string(adherence.skips) + ", easier dose " + std::to_string(adherence.easier) + ", due although away "
            + std::to_string(adherence.away));
}

void addDue(Page &page, const ComplaintMeasures &complaint)
{
    page.heading("Due and done", '-');
    if (complaint.items.empty())
        page.line("No exercise is planned.", kIndent);
    for (const ItemMeasures &item : complaint.items)
        addItem(page, item);
    if (complaint.items.size() > 1) {
        const AdherenceOfAll &all = complaint.all;
        page.line("all " + std::to_string(complaint.items.size()) + " together", kIndent);
        page.labelled("sets", part(all.setsDone, all.setsDue) + ", " + std::to_string(all.setsExtra) + " extra", 2 * kIndent, kLabel);
        page.labelled("sessions",
            part(all.sessionsAttended, all.sessionsDue) + ", " + std::to_string(all.sessionsComplete) + " with every set", 2 * kIndent,
            kLabel);
    }
    page.blank();
}

void addLoad(Page &page, const ComplaintMeasures &complaint)
{
    using Align = PlainTable::Align;
    if (complaint.items.empty())
        return;
    page.heading("Load by week", '-');
    page.line(
        "Sets, reps and volume count every set that is recorded, extra ones too. A dash: not known, or no week to compare with.", kIndent);
    for (const ItemMeasures &item : complaint.items) {
        page.blank();
        page.line(withSide(nameOf(item.exercise, item.item), item.side), kIndent);
        if (item.weeks.empty()) {
            page.line("no week in these days", 2 * kIndent);
            continue;
        }
        PlainTable table({{"week", Align::Right}, {"from", Align::Left}, {"due", Align::Right}, {"done", Align::Right},
            {"sets", Align::Right}, {"reps", Align::Right}, {"volume", Align::Right}, {"change", Align::Right}});
        for (const ItemWeek &week : item.weeks) {
            table.add({std::to_string(week.week + 1), week.start.toString(), std::to_string(week.setsDue), std::to_string(week.setsDone),
                std::to_string(week.sets), std::to_string(week.reps), week.volume ? volume(*week.volume, week.volumeUnit) : "-",
                week.volumeChange ? signedShare(*week.volumeChange) : "-"});
        }
        page.table(table, 2 * kIndent);
    }
    page.blank();
}

/// `7 of 7 days`, or what was due where more was answered than asked.
std::string answered(const CheckWeek &week)
{
    if (week.recorded > week.expected)
        return std::to_string(week.recorded) + ", due on " + std::to_string(week.expected);
    return std::to_string(week.recorded) + " of " + std::to_string(week.expected);
}

std::string referenceSentence(const ComplaintDiary *complaint, const CheckMeasures &check)
{
    if (!check.reference)
        return "To compare with: nothing. No first value is recorded, and the first week has too few entries to say.";
    const bool given = complaint && complaint->complaint.firstAssessmentPain;
    return "To compare with: " + figure(*check.reference)
        + (given ? ", recorded at the first assessment." : ", the median of the first week.");
}

std::string changeSentence(const ComplaintMeasures &complaint, CivilDay planStart, CivilDay to)
{
    const CheckMeasures &check = complaint.check;
    if (!check.change)
        return to - planStart < kFirstChangeDay ? "Change: not shown before the 14th day." : "Change: too few entries to say.";
    std::string text = "Change: " + signedFigure(*check.change);
    if (check.changeRatio)
        text += " (" + signedShare(*check.changeRatio) + ")";
    text += ".";
    if (check.clearChange && *check.clearChange)
        text += " That is as large as people in studies called a clear change (Farrar 2001).";
    return text;
}

void addCheck(Page &page, const ComplaintDiary *diary, const ComplaintMeasures &complaint, CivilDay to)
{
    using Align = PlainTable::Align;
    const CheckMeasures &check = complaint.check;
    page.heading("Check by week", '-');
    if (diary && !diary->complaint.question.empty())
        page.line("\"" + visible(diary->complaint.question) + "\", 0 (none) to 10", kIndent);
    page.line("Due on " + counted(check.expected, "day") + ", " + counted(check.recorded, "value")
            + " recorded: " + std::to_string(check.sameDay) + " on the day, " + std::to_string(check.late) + " on another, "
            + std::to_string(check.paper) + " from paper. \"Can't say\": " + std::to_string(check.declined) + ".",
        kIndent);
    page.blank();
    PlainTable table({{"week", Align::Right}, {"from", Align::Left}, {"median", Align::Right}, {"values", Align::Left}});
    for (const CheckWeek &week : complaint.checkWeeks) {
        table.add({std::to_string(week.week + 1), week.start.toString(), week.median ? figure(*week.median) : "-",
            week.median ? answered(week) : "too few entries to say (" + answered(week) + ")"});
    }
    page.table(table, 2 * kIndent);
    page.blank();
    page.line(referenceSentence(diary, check), kIndent);
    page.line("Last 7 days, " + datedSpan(to - (kClosedDays - 1), to) + ": "
            + (check.current ? "median " + figure(*check.current) + "." : "too few entries to say."),
        kIndent);
    page.line(changeSentence(complaint, diary ? diary->firstStart().value_or(complaint.from) : complaint.from, to), kIndent);
    if (complaint.stiffness.recorded > 0) {
        const StiffnessMeasures &stiffness = complaint.stiffness;
        page.line("Stiffness: " + counted(stiffness.recorded, "value") + " recorded, median of the last 7 days "
                + (stiffness.current ? figure(*stiffness.current) + " minutes." : "not known: too few entries to say."),
            kIndent);
    }
    page.blank();
}

std::string treatment(const VisitMeasures &visit)
{
    if (!visit.totalImpulses && !visit.seconds && !visit.perCm2)
        return "impulses, seconds and impulses per cm2 not known";
    return (visit.totalImpulses ? std::to_string(*visit.totalImpulses) : "not known")
        + " impulses, seconds: " + knownOr(visit.seconds, "not known") + ", per cm2: " + knownOr(visit.perCm2, "not known");
}

void addVisits(Page &page, const ComplaintMeasures &complaint)
{
    page.heading("Visits", '-');
    if (complaint.visits.empty()) {
        page.line("None recorded.", kIndent);
    } else {
        page.line("Medians of the check in the 7 days before, and in the weeks after until the next visit. This shows what came after, "
                  "not what came of it.",
            kIndent);
    }
    for (const VisitMeasures &visit : complaint.visits) {
        std::string after;
        for (const auto &week : visit.afterWeeks)
            after += (after.empty() ? "" : ", ") + knownOr(week, "too few entries");
        page.line(dated(visit.day), kIndent);
        page.labelled("check",
            "before: " + knownOr(visit.before, "too few entries") + "; weeks after: " + (after.empty() ? "none" : after)
                + "; change: " + (visit.change ? signedFigure(*visit.change) : "not known"),
            2 * kIndent, kLabel);
        page.labelled("given", treatment(visit), 2 * kIndent, kLabel);
    }
    page.blank();
}

struct OutcomeWords
{
    const char *label;
    const char *scale;
};

OutcomeWords wordsOf(OutcomeKind kind) noexcept
{
    switch (kind) {
    case OutcomeKind::Activity:
        return {"activity", "0 cannot do it, 10 as before"};
    case OutcomeKind::Overall:
        return {"overall", "0 to 100, 100 as before"};
    case OutcomeKind::Change:
        return {"change since the first assessment", "-5 to +5"};
    case OutcomeKind::Acceptable:
        return {"acceptable as it is", "yes or no"};
    case OutcomeKind::Test:
        return {"test", ""};
    }
    return {"", ""};
}

std::string valueOf(OutcomeKind kind, Decimal value)
{
    if (kind == OutcomeKind::Acceptable)
        return value == Decimal() ? "no" : "yes";
    return kind == OutcomeKind::Change && value > Decimal() ? "+" + value.toString() : value.toString();
}

/// The unit of a series stands in its entries only; the last one's is said.
std::string unitOf(const ComplaintDiary *complaint, const OutcomeMeasures &series)
{
    std::string unit;
    if (complaint && series.kind == OutcomeKind::Test) {
        for (const Outcome &outcome : complaint->outcomes) {
            if (outcome.kind == series.kind && outcome.name == series.name && outcome.side == series.side)
                unit = outcome.unit;
        }
    }
    return visible(unit);
}

void addOutcomes(Page &page, const ComplaintDiary *diary, const ComplaintMeasures &complaint)
{
    page.heading("Outcomes", '-');
    if (complaint.outcomes.empty())
        page.line("None recorded.", kIndent);
    for (const OutcomeMeasures &series : complaint.outcomes) {
        const OutcomeWords words = wordsOf(series.kind);
        const std::string unit = unitOf(diary, series);
        std::string title = words.label;
        if (!series.name.empty())
            title += ": " + visible(series.name);
        title = withSide(std::move(title), series.side);
        const std::string scale = unit.empty() ? words.scale : unit;
        if (!scale.empty())
            title.append(" (").append(scale).append(")");
        page.line(title, kIndent);
        std::string text = valueOf(series.kind, series.first) + " on " + dated(series.firstDay);
        if (series.n > 1)
            text += ", " + valueOf(series.kind, series.last) + " on " + dated(series.lastDay);
        if (series.change && series.kind != OutcomeKind::Acceptable)
            text += ", change " + signedFigure(series.change->toDouble());
        if (series.n > 2)
            text += " (" + std::to_string(series.n) + " entries)";
        if (series.ratio)
            text += "; " + share(*series.ratio) + " of the other side that day";
        page.line(text, 2 * kIndent);
    }
    page.blank();
}

const ComplaintDiary *find(const Diary &diary, std::string_view key)
{
    for (const ComplaintDiary &complaint : diary.complaints()) {
        if (complaint.complaint.key == key)
            return &complaint;
    }
    return nullptr;
}

} // namespace

std::string overview(const Diary &diary, const std::vector<ComplaintMeasures> &measures, CivilDay to)
{
    Page page;
    page.line("This adds up what was recorded. It gives no advice.");
    page.line("It counts the days up to and including " + dated(to) + ".");
    page.blank();
    for (const ComplaintMeasures &complaint : measures) {
        const ComplaintDiary *const own = find(diary, complaint.complaint);
        page.heading(withSide(nameOf(complaint.region, complaint.complaint), complaint.side), '=');
        page.line(dayCount(complaint.from, to));
        page.blank();
        if (own)
            page.block(reviewText(review(diary, complaint, to), kPageWidth - kIndent), kIndent);
        addDue(page, complaint);
        addLoad(page, complaint);
        addCheck(page, own, complaint, to);
        addVisits(page, complaint);
        addOutcomes(page, own, complaint);
    }
    const auto isShown = [&measures](const ComplaintDiary &complaint) {
        return std::any_of(measures.begin(), measures.end(), [&](const auto &shown) { return shown.complaint == complaint.complaint.key; });
    };
    for (const ComplaintDiary &complaint : diary.complaints()) {
        if (!isShown(complaint))
            page.line("Not started by then: " + nameOf(complaint.complaint.region, complaint.complaint.key) + ".");
    }
    if (diary.complaints().empty())
        page.line("No complaint is recorded.");
    if (diary.unreadable() > 0)
        page.line("Left out, because they cannot be read: " + std::to_string(diary.unreadable()) + " entries.");
    return page.take();
}

} // namespace morrow
