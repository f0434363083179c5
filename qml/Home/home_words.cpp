// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/home_words.h"

#include "Entries/said.h"

#include <QDate>
#include <QLocale>

#include <algorithm>

namespace morrow {

namespace {

QDate dateOf(CivilDay day)
{
    return QDate(1970, 1, 1).addDays(day.number());
}

} // namespace

QString HomeWords::weekday(CivilDay day)
{
    return QLocale().standaloneDayName(day.weekday() + 1);
}

QString HomeWords::date(CivilDay day)
{
    //: A day beside its weekday: day of the month and month (Qt date format).
    return QLocale().toString(dateOf(day), tr("d MMMM"));
}

QString HomeWords::saved(const Moment &moment)
{
    const auto minutes = (moment.utcMs / 60'000 + moment.offsetMinutes) % (24 * 60);
    const QTime time(static_cast<int>(minutes / 60), static_cast<int>(minutes % 60));
    //: Beside an answer: the time of day at which it was kept.
    return tr("Saved %1").arg(time.toString(QStringLiteral("HH:mm")));
}

QString HomeWords::name(const Complaint &complaint)
{
    //: A complaint of which the clinic did not say where it is.
    const QString where = complaint.region.empty() ? tr("Complaint") : plainText(complaint.region);
    if (!complaint.side)
        return where;
    //: Where a complaint is: the part of the body and the side.
    return tr("%1, %2").arg(where, sideWords(*complaint.side));
}

QString HomeWords::sentence(const Dose &dose)
{
    QString what;
    if (!dose.isHeld())
        what = tr("%n set(s) of %1", nullptr, dose.sets).arg(dose.reps);
    else if (dose.reps > 1)
        what = tr("%n set(s) of %1, each held for %2 seconds", nullptr, dose.sets).arg(dose.reps).arg(dose.holdSeconds);
    else
        what = tr("%n set(s), held for %1 seconds", nullptr, dose.sets).arg(dose.holdSeconds);
    if (dose.loadKg.thousandths() > 0)
        //: A dose and the weight that is moved: "3 sets of 12 with 2 kg".
        what = tr("%1 with %2 kg").arg(what, numberWords(dose.loadKg));

    QStringList tempo;
    if (dose.upSeconds)
        tempo << tr("up in %1").arg(*dose.upSeconds);
    if (dose.pauseSeconds && *dose.pauseSeconds > 0)
        tempo << tr("wait %1").arg(*dose.pauseSeconds);
    if (dose.downSeconds)
        tempo << tr("down in %1").arg(*dose.downSeconds);
    if (tempo.isEmpty())
        //: A dose as a sentence.
        return tr("%1.").arg(what);
    //: A dose, and how fast one repetition goes: "3 sets of 12. Seconds: up in 3, wait 2, down in 3."
    return tr("%1. Seconds: %2.").arg(what, tempo.join(tr(", ")));
}

QString HomeWords::counts(const std::map<Kind, int> &counts)
{
    // What people would not count, such as a change of a setting, is counted as other entries.
    int other = 0;
    QStringList words;
    for (const auto &[kind, count] : counts) {
        switch (kind) {
        case Kind::Check:
            words << tr("%n check(s)", nullptr, count);
            break;
        case Kind::Set:
            words << tr("%n set(s)", nullptr, count);
            break;
        case Kind::Session:
            words << tr("pain of %n session(s)", nullptr, count);
            break;
        case Kind::Skip:
            words << tr("%n skipped session(s)", nullptr, count);
            break;
        case Kind::Note:
            words << tr("%n note(s) or question(s)", nullptr, count);
            break;
        case Kind::Flag:
            words << tr("%n sign(s)", nullptr, count);
            break;
        case Kind::Visit:
            words << tr("%n visit(s)", nullptr, count);
            break;
        case Kind::Plan:
            words << tr("%n version(s) of the plan", nullptr, count);
            break;
        case Kind::Outcome:
            words << tr("%n answer(s) about activities and tests", nullptr, count);
            break;
        case Kind::Unusual:
            words << tr("%n unusual day(s)", nullptr, count);
            break;
        default:
            other += count;
        }
    }
    if (other > 0)
        words << tr("%n other entr(y/ies)", nullptr, other);
    return words.join(tr(", "));
}

QString HomeWords::sentence(StoreError error)
{
    switch (error) {
    case StoreError::Missing:
        return tr("There is no diary here. Nothing was kept.");
    case StoreError::NotADiary:
        return tr("The folder of the diary holds something else. It was left as it is.");
    case StoreError::Newer:
        return tr("A newer version of this program wrote this diary. You can read it, and nothing can be added.");
    case StoreError::Busy:
        return tr("The diary is open in another window. Close that one and try again.");
    case StoreError::Full:
        return tr("The disk is full. This was not kept. Free some space and try again.");
    case StoreError::ReadOnly:
        return tr("The diary cannot be written here. You can read it, and nothing is kept.");
    case StoreError::Io:
        return tr("The computer could not write. This was not kept. Please try again.");
    case StoreError::Damaged:
        return tr("Part of this diary is damaged. Ask your clinic to help you restore it; nothing is deleted.");
    case StoreError::Refused:
        return tr("This does not fit what the diary holds. Nothing was changed.");
    }
    return tr("The diary cannot be used.");
}

QString HomeWords::sentence(FileError error)
{
    switch (error) {
    case FileError::Missing:
        return tr("The file or its folder is not there.");
    case FileError::Exists:
        return tr("There is a file of that name already.");
    case FileError::NotRegular:
        return tr("This is not a file.");
    case FileError::TooLarge:
        return tr("The file is too large.");
    case FileError::NoPermission:
        return tr("You have no permission to use this file or folder.");
    case FileError::Full:
        return tr("The disk is full. Free some space and try again.");
    case FileError::ReadOnly:
        return tr("This place cannot be written. Choose another one.");
    case FileError::Io:
        return tr("The computer could not read or write the file.");
    }
    return tr("The file cannot be used.");
}

QString HomeWords::sentence(const RecordError &error)
{
    if (const auto *const store = std::get_if<StoreError>(&error))
        return sentence(*store);
    return tr("This does not fit what the diary holds. Nothing was changed.");
}

QString HomeWords::sentence(const AdoptProblem &problem)
{
    struct Say
    {
        QString operator()(FileError error) const { return sentence(error); }
        QString operator()(StoreError error) const { return sentence(error); }
        QString operator()(AdoptRefusal refusal) const
        {
            if (refusal == AdoptRefusal::OtherPerson)
                return tr("It is for somebody else.");
            return tr("It holds what only a clinic keeps. Ask your clinic for the file with your plan.");
        }
        QString operator()(const std::vector<Clash> &) const { return tr("It disagrees with the plan that is here. Ask your clinic."); }
        QString operator()(const std::vector<Issue> &issues) const
        {
            const bool isNewer = std::ranges::any_of(issues, [](const Issue &issue) { return issue.code == IssueCode::OfNewerProgram; });
            if (isNewer)
                return tr("A newer version of this program is needed to read it.");
            const bool isChanged = std::ranges::any_of(issues, [](const Issue &issue) { return issue.code == IssueCode::SumDiffers; });
            if (isChanged)
                return tr("It was damaged or changed on its way. Ask your clinic for it again.");
            const bool isOther = std::ranges::any_of(issues, [](const Issue &issue) {
                return issue.code == IssueCode::NotJson || issue.code == IssueCode::NotABundle || issue.code == IssueCode::NotUtf8;
            });
            if (isOther)
                return tr("It is no file from a clinic.");
            return tr("It has a mistake in it. Ask your clinic for it again.");
        }
    };
    return std::visit(Say{}, problem);
}

} // namespace morrow
