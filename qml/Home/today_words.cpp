// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/today_words.h"

#include "Entries/said.h"
#include "Home/home_words.h"

#include <QStringList>

#include <algorithm>
#include <functional>

namespace morrow {

namespace {

constexpr int kDaysInAWeek = 7;

struct Scores
{
    QStringList all; ///< newest last
    std::vector<EntryIndex> entries;

    [[nodiscard]] QString joined() const { return all.join(QStringLiteral(", ")); }
};

/// The scores of the last answers before \a day.
template<class Answer, class Score>
Scores lastScores(const std::vector<Answer> &answers, CivilDay day, Score score)
{
    Scores last;
    for (auto answer = answers.rbegin(); answer != answers.rend() && last.all.size() < kLastAnswers; ++answer) {
        const std::optional<PainScore> given = std::invoke(score, *answer);
        if (answer->day < day && given) {
            last.all.prepend(QString::number(given->value()));
            last.entries.insert(last.entries.begin(), answer->entry);
        }
    }
    return last;
}

QString sentences(const QStringList &all)
{
    return all.join(QLatin1Char(' '));
}

} // namespace

QString TodayWords::slot(std::string_view slot)
{
    if (slot == "morning")
        return tr("Morning");
    if (slot == "noon")
        return tr("Noon");
    if (slot == "afternoon")
        return tr("Afternoon");
    if (slot == "evening")
        return tr("Evening");
    if (slot == kPerWeekSlot)
        //: A session that can be at any time of the day.
        return tr("Any time today");
    QString other = plainText(slot);
    return other.left(1).toUpper() + other.mid(1);
}

QString TodayWords::question(const ComplaintDiary &complaint)
{
    if (!complaint.complaint.question.empty())
        return plainText(complaint.complaint.question);
    //: The daily question where the clinic wrote none of its own.
    return tr("Pain on your first steps or movements today");
}

QString TodayWords::checkLimit(const ComplaintDiary &complaint)
{
    const Limits &limits = complaint.limits();
    return limits.check ? tr("The limit for this question in your plan is %1.").arg(numberWords(*limits.check))
                        : tr("Your plan sets no limit for this question.");
}

QString TodayWords::duringLimit(const ComplaintDiary &complaint)
{
    return tr("The limit for pain in the exercise in your plan is %1.").arg(numberWords(complaint.limits().during));
}

QString TodayWords::afterLimit(const ComplaintDiary &complaint)
{
    return tr("The limit for pain after the exercise in your plan is %1.").arg(numberWords(complaint.limits().after));
}

LastAnswers TodayWords::lastChecks(const ComplaintDiary &complaint, CivilDay day)
{
    Scores last = lastScores(complaint.checks, day, &Check::pain);
    return {last.all.isEmpty() ? QString() : tr("Your last answers: %1.").arg(last.joined()), std::move(last.entries)};
}

LastAnswers TodayWords::lastDuring(const ComplaintDiary &complaint, CivilDay day)
{
    Scores last = lastScores(complaint.sessions, day, &Session::painDuring);
    return {last.all.isEmpty() ? QString() : tr("Your last sessions: %1.").arg(last.joined()), std::move(last.entries)};
}

LastAnswers TodayWords::lastAfter(const ComplaintDiary &complaint, CivilDay day)
{
    Scores last = lastScores(complaint.sessions, day, &Session::painAfter);
    return {last.all.isEmpty() ? QString() : tr("Your last sessions: %1.").arg(last.joined()), std::move(last.entries)};
}

QString TodayWords::quiet(const AskedComplaint &asked)
{
    if (!asked.quiet)
        return {};
    QStringList all;
    switch (*asked.quiet) {
    case QuietReason::NoPlan:
        return tr("There is no exercise plan yet. Open the file from your clinic on the page Visit.");
    case QuietReason::NotStarted:
        all << tr("Your exercises have not begun yet.");
        break;
    case QuietReason::Over:
        all << tr("This plan has ended.");
        break;
    case QuietReason::PutAside:
        all << tr("You put this plan aside.");
        break;
    case QuietReason::Paused:
        all << tr("A pause is entered for today.");
        break;
    case QuietReason::AfterVisit:
        all << tr("No exercise today: your plan rests after a treatment.");
        break;
    case QuietReason::NotToday:
        all << tr("No exercise is due today.");
        break;
    }
    if (asked.next)
        //: When the next exercise is due: weekday, day and month.
        all << tr("Next: %1, %2.").arg(HomeWords::weekday(*asked.next), HomeWords::date(*asked.next));
    return sentences(all);
}

QString TodayWords::week(const AskedItem &item)
{
    if (!item.daysAsked)
        return {};
    return tr("%1 of %2 days this week so far").arg(item.daysDone).arg(*item.daysAsked);
}

QString TodayWords::set(const QString &exercise, const QString &side, int number, int of)
{
    if (side.isEmpty())
        //: What a screen reader says of a set to tick: exercise, number, how many.
        return tr("%1, set %2 of %3").arg(exercise).arg(number).arg(of);
    //: What a screen reader says of a set to tick: exercise, side, number, how many.
    return tr("%1, %2, set %3 of %4").arg(exercise, side).arg(number).arg(of);
}

QString TodayWords::replyHead(CivilDay written, CivilDay today)
{
    //: Over what the clinic wrote: when.
    return tr("From your clinic, %1").arg(today - written < kDaysInAWeek ? HomeWords::weekday(written) : HomeWords::date(written));
}

QString TodayWords::progress(int done, int due)
{
    if (due == 0)
        return tr("No set is due");
    return tr("%1 of %n set(s)", nullptr, due).arg(done);
}

QString TodayWords::skipped(std::string_view reason)
{
    if (reason.empty())
        return tr("Not today");
    //: A session that was skipped, and why.
    return tr("Not today: %1").arg(plainText(reason));
}

} // namespace morrow
