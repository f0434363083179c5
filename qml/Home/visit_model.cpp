// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/visit_model.h"

#include "Entries/entry_words.h"
#include "Entries/said.h"
#include "Entries/sentence_rows.h"
#include "Home/home_session.h"
#include "Home/home_words.h"
#include "Home/today_words.h"
#include "actions/hand_over.h"
#include "model/remarks.h"

#include <QDir>
#include <QFile>
#include <QStandardPaths>

#include <algorithm>
#include <functional>
#include <iterator>
#include <map>
#include <set>
#include <string_view>

namespace morrow {

namespace {

constexpr int kMostCopies = 1000;
constexpr int kDaysAtATime = 28;

} // namespace

VisitModel::VisitModel(HomeSession &session)
    : m_session(session)
    , m_folder(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation))
{
    connect(&session, &HomeSession::changed, this, &VisitModel::read);
    connect(&session, &HomeSession::stateChanged, this, [this] {
        m_saved.clear();
        m_saveFailure.clear();
        m_questionFailure.clear();
        m_name.clear();
        read();
    });
}

void VisitModel::setShown(bool shown)
{
    m_isShown = shown;
    m_saved.clear();
    m_saveFailure.clear();
    m_daysListed = 0;
    m_file.reset();
    read();
}

void VisitModel::setListed(bool listed)
{
    m_daysListed = listed ? kDaysAtATime : 0;
    list();
    Q_EMIT changed();
}

void VisitModel::listEarlier()
{
    m_daysListed += kDaysAtATime;
    list();
    Q_EMIT changed();
}

void VisitModel::setName(const QString &name)
{
    if (m_name == name)
        return;
    m_name = name;
    Q_EMIT changed();
}

void VisitModel::read()
{
    if (!m_isShown || !m_session.diary())
        return;
    m_days.clear();
    m_holds.clear();
    m_leftOut.clear();
    if (auto file = previewHandOver(*m_session.diary())) {
        if (file->from && file->to)
            //: The days that a file is about: the first and the last.
            m_days = tr("%1 to %2").arg(fullDate(*file->from), fullDate(*file->to));
        m_holds = HomeWords::counts(file->counts);
        if (file->notesLeftOut > 0)
            m_leftOut = tr("Left out: %n note(s) that you changed or took back.", nullptr, file->notesLeftOut);
        m_file = Diary::from(std::move(file->entries));
    } else {
        m_saveFailure = tr("The summary cannot be made from this diary. Ask your clinic for help.");
    }
    list();
    readQuestions();
    readHanded();
    Q_EMIT changed();
}

void VisitModel::list()
{
    std::map<CivilDay, std::vector<WordRow>, std::greater<>> days;
    if (isListed() && m_file) {
        for (const Entry &entry : m_file->entries())
            days[entry.day];
    }
    m_earlier = std::max(0, static_cast<int>(days.size()) - m_daysListed);
    days.erase(std::prev(days.end(), m_earlier), days.end());
    for (EntryIndex i = 0; !days.empty() && i < m_file->entries().size(); ++i) {
        if (const auto day = days.find(m_file->entries()[i].day); day != days.end()) {
            const EntryWords words = entryWords(*m_file, i);
            day->second.push_back({.text = words.what, .below = words.how});
        }
    }
    std::vector<WordRow> rows;
    for (auto &[day, those] : days) {
        std::ranges::stable_sort(those, {}, &WordRow::text); // the sets of an exercise by their number
        rows.push_back({.text = fullDate(day), .rows = std::make_shared<WordRows>(std::move(those))});
    }
    m_entries.set(std::move(rows));
}

void VisitModel::openLeftOut()
{
    if (!m_file || !m_session.diary())
        return;
    std::set<std::string_view> inFile;
    for (const Entry &entry : m_file->entries())
        inFile.insert(entry.id);
    const Diary &diary = m_session.diary()->recent(m_session.now());
    std::vector<EntryIndex> notes;
    for (EntryIndex i = 0; i < diary.entries().size(); ++i) {
        if (diary.entries()[i].kind == Kind::Note && !inFile.contains(diary.entries()[i].id))
            notes.push_back(i);
    }
    //: Over the notes that are not in the file for the clinic.
    m_session.figures()->show(tr("Not in the file"), {openedRow(diary, m_leftOut, {}, std::move(notes))});
}

void VisitModel::readQuestions()
{
    for (AskedQuestion *old : m_questions)
        old->deleteLater(); // the page may be inside a call about one of them
    m_questions.clear();
    const Diary &diary = m_session.diary()->recent(m_session.now());
    const Remarks remarks = Remarks::of(diary);
    for (auto note = remarks.notes.rbegin(); note != remarks.notes.rend(); ++note) {
        if (note->kind != NoteKind::Question)
            continue;
        auto *const question = new AskedQuestion(this);
        question->words = plainText(note->text);
        question->when = HomeWords::date(note->day);
        question->entry = diary.entries()[note->entry].id;
        for (const Note &reply : remarks.notes) { // by day: the last is the newest
            if (reply.kind == NoteKind::Reply && reply.about == question->entry) {
                question->reply = plainText(reply.text);
                question->replyHead = TodayWords::replyHead(reply.day, m_session.day());
            }
        }
        m_questions << question;
    }
}

void VisitModel::readHanded()
{
    m_handed.clear();
    BodyReader reader;
    std::vector<const Entry *> entries;
    for (const Entry &entry : m_session.diary()->entries()) {
        if (entry.kind == Kind::Handed)
            entries.push_back(&entry);
    }
    std::ranges::sort(entries, [](const Entry *one, const Entry *other) { return countsBefore(*one, *other); });
    for (const Entry *entry : entries) {
        const auto body = reader.read(entry->body);
        const auto to = body ? CivilDay::parse(body->textOr(Field::To)) : std::nullopt;
        //: A file that was saved before: the day it was saved, and the last day in it.
        m_handed << (to ? tr("%1, with the days up to %2").arg(fullDate(entry->day), HomeWords::date(*to)) : fullDate(entry->day));
    }
}

bool VisitModel::ask(const QString &question)
{
    const QString text = question.trimmed();
    if (text.isEmpty())
        return false;
    Draft draft{.kind = Kind::Note, .author = Author::Patient};
    draft.body.set(Field::Kind, std::string("question"));
    draft.body.set(Field::Text, text.toStdString());
    // A note is about a complaint; a question to the clinic goes with the first.
    if (const auto &complaints = m_session.diary()->recent(m_session.now()).complaints(); complaints.size() > 1)
        draft.body.set(Field::Complaint, complaints.front().complaint.key);
    m_questionFailure = m_session.record({std::move(draft)}).failure;
    Q_EMIT changed();
    return m_questionFailure.isEmpty();
}

void VisitModel::takeBack(AskedQuestion *question)
{
    const auto &entries = m_session.diary()->entries();
    const auto entry = std::ranges::find(entries, question->entry, &Entry::id);
    if (entry == entries.end())
        return;
    m_questionFailure = m_session.takeBack({*entry}).failure;
    Q_EMIT changed();
}

QString VisitModel::fileName(int copy) const
{
    const QString day = QString::fromStdString(m_session.day().toString());
    if (copy == 1)
        return QStringLiteral("morrow-summary-%1.json").arg(day);
    return QStringLiteral("morrow-summary-%1-%2.json").arg(day).arg(copy);
}

void VisitModel::save()
{
    const QDir folder(m_folder);
    int copy = 1;
    while (copy < kMostCopies && QFile::exists(folder.filePath(fileName(copy))))
        ++copy;
    write(folder.filePath(fileName(copy)));
}

void VisitModel::saveAs(const QUrl &file)
{
    write(file.toLocalFile());
}

void VisitModel::write(const QString &path)
{
    m_saved.clear();
    const auto file = m_session.diary() ? previewHandOver(*m_session.diary(), m_name.trimmed().toStdString()) : std::nullopt;
    if (!file) {
        m_saveFailure = tr("The summary cannot be made from this diary. Ask your clinic for help.");
        Q_EMIT changed();
        return;
    }
    const auto written = handOver(*m_session.diary(), *file, QFile::encodeName(path).toStdString(), {}, m_session.now());
    const bool isThere = written || std::holds_alternative<StoreError>(written.error());
    m_saveFailure.clear();
    if (isThere)
        //: After the summary was saved: where.
        m_saved = tr("Saved as %1").arg(QDir::toNativeSeparators(path));
    else
        //: The summary could not be saved: why.
        m_saveFailure = tr("The summary was not saved. %1").arg(HomeWords::sentence(std::get<FileError>(written.error())));
    m_session.reread();
}

} // namespace morrow
