// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/review_model.h"

#include "Desk/desk_words.h"
#include "Entries/said.h"
#include "Entries/sentence_rows.h"
#include "measures/days.h"

#include <algorithm>

namespace morrow {

namespace {

/// The complaint as it is called: "right outer elbow".
QString nameOf(const ComplaintDiary &complaint)
{
    const std::string &region = complaint.complaint.region;
    QString name = plainText(region.empty() ? complaint.complaint.key : region);
    name[0] = name[0].toUpper();
    const QString side = sideWords(complaint.complaint.side);
    //: A complaint: the part of the body and its side.
    return side.isEmpty() ? name : ReviewModel::tr("%1, %2").arg(name, side);
}

} // namespace

ReviewModel::ReviewModel(QObject *parent)
    : QObject(parent)
{
}

void ReviewModel::show(const std::string &person, const KnownAs &known, std::vector<Entry> entries, const Moment &now)
{
    if (person != m_person) {
        m_index = 0;
        m_sinceVisit = false;
    }
    m_person = person;
    m_label = DeskWords::nameOf(known);
    m_beside = DeskWords::besideName(known);
    m_problem.clear();
    m_diary = Diary::from(std::move(entries));
    m_today = diaryDay(now, m_diary->dayStarts());
    fill();
}

void ReviewModel::fail(const std::string &person, const KnownAs &known, const QString &why)
{
    m_person = person;
    m_label = DeskWords::nameOf(known);
    m_beside = DeskWords::besideName(known);
    m_problem = why;
    m_diary.reset();
    fill();
}

void ReviewModel::clear()
{
    m_person.clear();
    m_label.clear();
    m_beside.clear();
    m_problem.clear();
    m_diary.reset();
    fill();
}

void ReviewModel::setSinceVisit(bool since)
{
    if (since == m_sinceVisit)
        return;
    m_sinceVisit = since;
    fill();
}

void ReviewModel::setComplaintIndex(int index)
{
    if (index == m_index)
        return;
    m_index = index;
    m_sinceVisit = false;
    fill();
}

void ReviewModel::empty()
{
    m_complaint.clear();
    m_visits.clear();
    m_visitEntries.clear();
    m_fraction = 0;
    m_days.clear();
    m_hasVisit = false;
    m_hasPlan = false;
    m_openable.clear();
    for (WordRows *rows : {&m_complaints, &m_exceptions, &m_sentences, &m_quality, &m_rules, &m_questions, &m_figures})
        rows->set({});
    m_figuresOf.clear();
    m_course.setCourse(std::nullopt);
}

void ReviewModel::fill()
{
    empty();
    if (m_diary && !m_diary->complaints().empty()) {
        const auto &complaints = m_diary->complaints();
        m_index = std::clamp(m_index, 0, static_cast<int>(complaints.size()) - 1);
        std::vector<WordRow> rows;
        for (std::size_t number = 0; number < complaints.size(); ++number)
            rows.push_back({.text = nameOf(complaints[number]), .marked = static_cast<int>(number) == m_index});
        m_complaints.set(std::move(rows));

        const ComplaintDiary &complaint = complaints[static_cast<std::size_t>(m_index)];
        fillHead(complaint);
        const CivilDay to = m_today - 1;
        const std::vector<CivilDay> visits = visitDays(complaint, to);
        const std::optional<CivilDay> asked = m_sinceVisit && !visits.empty() ? std::optional(visits.back()) : std::nullopt;
        const auto all = measure(*m_diary, to, asked);
        const auto found = std::find_if(all->begin(), all->end(),
            [&complaint](const ComplaintMeasures &measures) { return measures.complaint == complaint.complaint.key; });
        m_hasPlan = found != all->end();
        if (m_hasPlan) {
            //: The days that the figures of a review are about.
            m_days = tr("%1 to %2").arg(fullDate(found->from), fullDate(to));
            fillReview(review(*m_diary, *found, to));
            m_course.setCourse(courseOf(*m_diary, complaint, found->from, to), QString::fromStdString(complaint.complaint.question));
        }
    }
    Q_EMIT changed();
    Q_EMIT figuresChanged();
}

void ReviewModel::fillHead(const ComplaintDiary &complaint)
{
    m_complaint = nameOf(complaint);
    for (const Visit &visit : complaint.visits) {
        if (visit.day <= m_today)
            m_visitEntries.push_back(visit.entry);
    }
    const std::vector<CivilDay> days = visitDays(complaint, m_today);
    m_hasVisit = !days.empty() && days.back() < m_today;
    const auto given = static_cast<int>(days.size());
    const auto planned = complaint.plan ? complaint.plan->visitsPlanned : std::nullopt;
    if (planned && *planned > 0)
        m_fraction = std::min(1.0, static_cast<double>(given) / *planned);
    if (days.empty()) {
        //: How many visits there were.
        m_visits = planned ? tr("No visit yet, %n planned", nullptr, *planned) : tr("No visit yet");
        return;
    }
    const QString count = [&planned, given] {
        if (!planned)
            return tr("Visit %1").arg(given);
        if (given > *planned)
            //: More visits than were planned.
            return tr("Visit %1, %2 planned").arg(given).arg(*planned);
        //: How many visits there were, of those that are planned.
        return tr("Visit %1 of %2").arg(given).arg(*planned);
    }();
    const int since = m_today - days.back();
    //: After "Visit 4 of 5": how long ago that was.
    const QString ago = since == 0 ? tr("today") : tr("%n day(s) ago", nullptr, since);
    m_visits = tr("%1, %2").arg(count, ago);
}

WordRow ReviewModel::rowOf(const Sentence &sentence)
{
    const bool opens
        = std::any_of(sentence.pieces.begin(), sentence.pieces.end(), [](const Piece &piece) { return piece.opens.has_value(); });
    WordRow row{.text = QString::fromStdString(sentence.text()), .rows = std::make_shared<WordRows>(tokensOf(sentence))};
    if (opens) {
        row.key = QString::number(m_openable.size());
        m_openable.push_back(sentence);
    }
    return row;
}

void ReviewModel::fillReview(const Review &review)
{
    std::vector<WordRow> rows;
    for (const ExceptionLine &line : review.exceptions)
        rows.push_back(rowOf(line.sentence));
    m_exceptions.set(std::move(rows));

    rows.clear();
    for (const ReviewLine &line : review.lines) {
        // Sentences of one line stand on it together, and are opened together.
        if (!line.sentences.empty())
            rows.push_back(rowOf(joined(line.sentences)));
    }
    m_sentences.set(std::move(rows));

    rows.clear();
    rows.push_back(rowOf(joined(review.quality)));
    m_quality.set(std::move(rows));

    rows.clear();
    for (const RuleLine &rule : review.rules) {
        WordRow row = rowOf(joined(rule.sentences));
        row.lead = QString::fromStdString(rule.exercise);
        std::vector<WordRow> conditions;
        for (const ConditionLine &line : rule.because) {
            WordRow condition = rowOf(line.sentence);
            condition.marked = line.isMet;
            conditions.push_back(std::move(condition));
        }
        for (const ConditionLine &line : rule.conditions) {
            WordRow condition = rowOf(line.sentence);
            condition.marked = line.isMet;
            conditions.push_back(std::move(condition));
        }
        row.below = row.text;
        row.rows = std::make_shared<WordRows>(std::move(conditions));
        rows.push_back(std::move(row));
    }
    m_rules.set(std::move(rows));

    rows.clear();
    for (const QuestionLine &question : review.questions) {
        WordRow row{.lead = fullDate(question.day), .text = plainText(question.text)};
        if (row.text.isEmpty())
            //: The person was not sure how an exercise is done, and wrote nothing more.
            row.text = tr("Not sure how");
        if (!question.exercise.empty())
            //: What a person asks about an exercise: the exercise, and the question.
            row.text = tr("%1: %2").arg(QString::fromStdString(question.exercise), row.text);
        if (question.reply)
            //: The clinic's reply to a question.
            row.below = tr("Answered: %1").arg(plainText(question.replyText));
        row.marked = question.isNew;
        rows.push_back(std::move(row));
    }
    m_questions.set(std::move(rows));
}

void ReviewModel::openFigures(const QString &key)
{
    bool isNumber = false;
    const std::size_t place = key.toULongLong(&isNumber);
    if (!isNumber || place >= m_openable.size() || !m_diary)
        return;
    const Sentence &sentence = m_openable[place];
    m_figuresOf = QString::fromStdString(sentence.text());
    std::vector<WordRow> rows;
    for (const Piece &piece : sentence.pieces) {
        if (!piece.opens)
            continue;
        rows.push_back(openedRow(
            *m_diary, QString::fromStdString(piece.text).trimmed(), QString::fromStdString(piece.opens->how), piece.opens->entries));
    }
    m_figures.set(std::move(rows));
    Q_EMIT figuresChanged();
}

void ReviewModel::openDay(int row)
{
    const CourseRows::Row *const opened = m_course.rows()->row(row);
    if (opened == nullptr || !m_diary)
        return;
    m_figuresOf = opened->whole;
    std::vector<WordRow> rows;
    for (const CourseRows::Said &said : opened->said)
        rows.push_back(openedRow(*m_diary, said.words, {}, said.entries));
    if (opened->week) {
        const WorkInWeek &week = *opened->week;
        BehindWork behind = behindWork(*m_diary, m_diary->complaints()[static_cast<std::size_t>(m_index)], week);
        const QString days = tr("%1 to %2").arg(fullDate(week.first), fullDate(week.last));
        //: Work that was opened: what was done in a week. Then come the days of the week.
        rows.push_back(openedRow(*m_diary, tr("%1 done").arg(m_course.workWords(week.done)), days, std::move(behind.done)));
        //: Work that was opened: what was prescribed for a week. Then come the days of the week.
        rows.push_back(openedRow(*m_diary, tr("%1 prescribed").arg(m_course.workWords(week.due)), days, std::move(behind.due)));
    }
    m_figures.set(std::move(rows));
    Q_EMIT figuresChanged();
}

void ReviewModel::openVisits()
{
    if (!m_diary || !wasVisited())
        return;
    m_figuresOf = m_complaint;
    m_figures.set({openedRow(*m_diary, m_visits, {}, m_visitEntries)});
    Q_EMIT figuresChanged();
}

} // namespace morrow
