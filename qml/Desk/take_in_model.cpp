// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/take_in_model.h"

#include "Desk/desk_words.h"
#include "Entries/said.h"
#include "actions/record_at_desk.h"
#include "actions/whose.h"

#include <algorithm>
#include <filesystem>

namespace morrow {

namespace {

constexpr std::size_t kMostReasons = 5; ///< that are told of one file; the rest is counted

/// What is the desk's own failing of \a error; empty: the file was refused.
template<class Error>
QString failureIn(const Error &error)
{
    if (const auto *const store = std::get_if<StoreError>(&error))
        return DeskWords::sentence(*store);
    if (const auto *const file = std::get_if<FileError>(&error))
        return DeskWords::sentence(*file);
    return {};
}

QString kindWords(FhirFile file)
{
    switch (file) {
    case FhirFile::Summary:
        return TakeInModel::tr("a diary");
    case FhirFile::Plan:
        return TakeInModel::tr("a plan of a clinic");
    case FhirFile::Visit:
        return TakeInModel::tr("a visit file of a clinic");
    case FhirFile::Record:
        break;
    }
    return TakeInModel::tr("a file of a desk");
}

/// "a diary of 812 entries, 16 February 2026 to 27 April 2026".
QString contentWords(const FhirDiary &diary)
{
    const auto count = static_cast<int>(diary.entries.size());
    if (diary.entries.empty())
        //: What a file holds: its kind, and nothing in it.
        return TakeInModel::tr("%1 without entries").arg(kindWords(diary.file));
    const auto [first, last] = std::minmax_element(
        diary.entries.begin(), diary.entries.end(), [](const Entry &one, const Entry &other) { return one.day < other.day; });
    //: What a file holds: its kind, the number of entries, the first and the last day.
    return TakeInModel::tr("%1 of %n entr(y/ies), %2 to %3", nullptr, count)
        .arg(kindWords(diary.file), fullDate(first->day), fullDate(last->day));
}

} // namespace

TakeInModel::TakeInModel(Desk desk, QObject *parent)
    : QAbstractListModel(parent)
    , m_desk(std::move(desk))
{
}

void TakeInModel::add(const std::string &path)
{
    const int row = files();
    beginInsertRows({}, row, row);
    m_rows.push_back({.path = path, .words = tr("Being read …")});
    endInsertRows();
    Q_EMIT filesChanged();
}

void TakeInModel::take(const std::shared_ptr<const ForeignFile> &file)
{
    const auto at = std::find_if(
        m_rows.begin(), m_rows.end(), [&file](const Row &row) { return row.state == Reading && !row.file && row.path == file->path; });
    if (at == m_rows.end())
        return;
    const auto row = static_cast<int>(at - m_rows.begin());
    at->file = file;
    if (!file->reading) {
        refuse(*at, {DeskWords::sentence(file->reading.error())});
    } else if (!file->reading->diary) {
        const std::vector<Issue> &issues = file->reading->diary.error();
        QStringList why;
        for (const Issue &issue : issues) {
            if (why.size() < static_cast<qsizetype>(kMostReasons))
                why << DeskWords::sentence(issue);
        }
        if (issues.size() > kMostReasons)
            why << tr("And %n more.", nullptr, static_cast<int>(issues.size() - kMostReasons));
        refuse(*at, why);
    } else if (file->changed) {
        refuse(*at, {tr("The file changed while it was read.")});
    } else {
        takeIn(row, {});
        return;
    }
    tell(row);
}

bool TakeInModel::takeIn(int row, const WhoseAnswer &answer)
{
    Row &each = m_rows[static_cast<std::size_t>(row)];
    each.failure.clear();
    each.answer = answer;
    OpenDesk *const desk = m_desk.desk();
    if (desk == nullptr || !each.file) {
        each.failure = tr("The desk is not open.");
        tell(row);
        return false;
    }
    const FhirDiary &diary = *each.file->reading->diary;
    const auto taken = morrow::takeIn(*desk, diary, each.file->bytes, answer, m_desk.now());
    if (!taken) {
        const QString failing = failureIn(taken.error());
        if (!failing.isEmpty()) {
            each.state = Failed;
            //: A file could not be kept; why follows.
            each.words = tr("Not taken in.");
            each.failure = failing;
            tell(row);
            return false;
        }
        const auto &problems = std::get<std::vector<TakeInProblem>>(taken.error());
        const bool canBeAnswered = std::all_of(problems.begin(), problems.end(), [](const TakeInProblem &problem) {
            return problem.code == TakeInProblem::Code::Waits || problem.code == TakeInProblem::Code::SetAside;
        });
        QStringList why;
        for (const TakeInProblem &problem : problems)
            why << DeskWords::sentence(problem);
        why.removeDuplicates();
        if (canBeAnswered)
            ask(each, why.join(QLatin1Char(' ')));
        else
            refuse(each, why);
        tell(row);
        return false;
    }
    each.state = Taken;
    each.person = taken->person;
    each.name = taken->file;
    m_desk.changed(taken->person);
    const QString name = DeskWords::nameOf(m_desk.knownAs(taken->person));
    QStringList words;
    if (taken->added == 0)
        //: A file was taken in and held nothing that was not known: the person's name.
        words << tr("Nothing new for %1: all of it was known.").arg(name);
    else
        //: A file was taken in: how many entries were new, and the person's name.
        words << tr("%n new entr(y/ies) for %1.", nullptr, taken->added).arg(name);
    if (taken->added > 0 && taken->known > 0)
        words << tr("%n known before.", nullptr, taken->known);
    if (taken->erased > 0)
        words << tr("%n left out, because they were erased here.", nullptr, taken->erased);
    if (diary.unknownResources + diary.unknownExtensions > 0)
        words << tr("%n part(s) of the file are not ours and were passed over.", nullptr, diary.unknownResources + diary.unknownExtensions);
    each.words = words.join(QLatin1Char(' '));
    tell(row);
    Q_EMIT this->taken(QString::fromStdString(taken->person));
    return true;
}

void TakeInModel::ask(Row &row, const QString &why)
{
    const FhirDiary &diary = *row.file->reading->diary;
    const OpenDesk *const desk = m_desk.desk();
    row.state = Asks;
    row.words = why;
    row.saidName = diary.name.empty() ? QString() : plainText(diary.name);
    QStringList says;
    //: What a file of somebody unknown says of itself, first part: what it holds.
    says << tr("It holds %1.").arg(contentWords(diary));
    //: What a file of somebody unknown says of itself: the name in it.
    says << (row.saidName.isEmpty() ? tr("It names nobody.") : tr("It names %1.").arg(row.saidName));
    if (desk != nullptr) {
        const Whose said = whose(*desk, diary);
        row.saidBirthYear = said.birthYear.value_or(0);
        //: What a file of somebody unknown says of itself: the birth year in its plan.
        says << (said.birthYear ? tr("Its plan says born %1.").arg(*said.birthYear) : tr("It says no birth year."));
    }
    row.says = says.join(QLatin1Char(' '));
}

void TakeInModel::refuse(Row &row, const QStringList &why)
{
    row.state = Refused;
    //: A file was not taken in; the reasons follow.
    row.words = tr("Not taken in. %1").arg(why.join(QLatin1Char(' ')));
}

bool TakeInModel::takeAsNew(int row, const QString &label, const QString &fileNumber, int birthYear)
{
    if (!takeIn(row, {.isNew = true, .as = {}}))
        return false;
    Row &each = m_rows[static_cast<std::size_t>(row)];
    Draft draft{.kind = Kind::KnownAs, .author = Author::Clinic};
    if (const QString typed = label.simplified(); !typed.isEmpty())
        draft.body.set(Field::Label, typed.toStdString());
    if (const QString typed = fileNumber.simplified(); !typed.isEmpty())
        draft.body.set(Field::FileNumber, typed.toStdString());
    if (birthYear > 0)
        draft.body.set(Field::BirthYear, Decimal::whole(birthYear));
    const auto known = recordAtDesk(*m_desk.desk(), each.person, std::move(draft), m_desk.now());
    if (!known) {
        const QString failing = failureIn(known.error());
        //: The file was taken in, and the name beside it was not kept.
        each.failure = failing.isEmpty() ? tr("The name was not kept.") : tr("The name was not kept. %1").arg(failing);
    } else {
        m_desk.changed(each.person);
        const QString name = DeskWords::nameOf(m_desk.knownAs(each.person));
        //: A file was taken in for somebody new: the name, and the number of entries.
        each.words
            = tr("%1 is new here, with %n entr(y/ies).", nullptr, static_cast<int>(each.file->reading->diary->entries.size())).arg(name);
    }
    tell(row);
    return true;
}

bool TakeInModel::takeAs(int row, const QString &ref)
{
    return takeIn(row, {.isNew = false, .as = ref.toStdString()});
}

void TakeInModel::leave(int row)
{
    Row &each = m_rows[static_cast<std::size_t>(row)];
    each.state = Left;
    each.failure.clear();
    //: A file whose person nobody named was left alone.
    each.words = tr("Not taken in. It can be opened again at any time.");
    tell(row);
}

void TakeInModel::retry(int row)
{
    takeIn(row, WhoseAnswer(m_rows[static_cast<std::size_t>(row)].answer));
}

void TakeInModel::undo(int row)
{
    Row &each = m_rows[static_cast<std::size_t>(row)];
    OpenDesk *const desk = m_desk.desk();
    if (desk == nullptr || each.state != Taken)
        return;
    const auto undone = undoTakeIn(*desk, each.name, m_desk.now());
    if (undone) {
        each.state = Undone;
        each.failure.clear();
        //: The taking in of a file was undone: what is left.
        each.words = tr("Undone. What this file brought is gone from the desk.");
        m_desk.changed(undone->person);
    } else {
        const QString failing = failureIn(undone.error());
        each.failure = failing.isEmpty() ? DeskWords::sentence(std::get<UndoProblem>(undone.error())) : failing;
    }
    tell(row);
}

int TakeInModel::finished() const
{
    return static_cast<int>(std::count_if(
        m_rows.begin(), m_rows.end(), [](const Row &row) { return row.state != Reading && row.state != Asks && row.state != Failed; }));
}

void TakeInModel::tell(int row)
{
    Q_EMIT dataChanged(index(row), index(row));
    Q_EMIT filesChanged();
}

int TakeInModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : files();
}

QVariant TakeInModel::data(const QModelIndex &index, int role) const
{
    const Row &row = m_rows[static_cast<std::size_t>(index.row())];
    switch (role) {
    case File:
        return plainText(std::filesystem::path(row.path).filename().string());
    case FileState:
        return row.state;
    case Words:
        return row.words;
    case Says:
        return row.says;
    case SaidName:
        return row.saidName;
    case SaidBirthYear:
        return row.saidBirthYear;
    case Person:
        return QString::fromStdString(row.person);
    case Failure:
        return row.failure;
    default:
        return {};
    }
}

QHash<int, QByteArray> TakeInModel::roleNames() const
{
    return {{File, "file"}, {FileState, "fileState"}, {Words, "words"}, {Says, "says"}, {SaidName, "saidName"},
        {SaidBirthYear, "saidBirthYear"}, {Person, "person"}, {Failure, "failure"}};
}

} // namespace morrow
