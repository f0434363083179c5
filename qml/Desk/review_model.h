// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The review of one person: one complaint at a time, over the whole plan or since the last visit.
///
/// Every sentence with figures, and every row of the table beside the chart, opens them: how each was made, and the entries that it was made of.

#include <QObject> // Qt first, for moc
#include <QtQml/qqmlregistration.h>

#include "Charts/course_model.h"
#include "Desk/caseload.h"
#include "Entries/word_rows.h"
#include "measures/measures.h"
#include "report/review.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

class ReviewModel : public QObject
{
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A session makes it.")

    Q_PROPERTY(QString person READ person NOTIFY changed)
    Q_PROPERTY(QString label READ label NOTIFY changed)
    Q_PROPERTY(QString beside READ beside NOTIFY changed)
    Q_PROPERTY(QString problem READ problem NOTIFY changed)
    Q_PROPERTY(QString complaint READ complaint NOTIFY changed)
    Q_PROPERTY(QString visits READ visits NOTIFY changed)
    Q_PROPERTY(bool visited READ wasVisited NOTIFY changed)
    Q_PROPERTY(double fraction READ fraction NOTIFY changed)
    Q_PROPERTY(QString days READ days NOTIFY changed)
    Q_PROPERTY(bool hasVisit READ hasVisit NOTIFY changed)
    Q_PROPERTY(bool sinceVisit READ sinceVisit WRITE setSinceVisit NOTIFY changed)
    Q_PROPERTY(int complaintIndex READ complaintIndex WRITE setComplaintIndex NOTIFY changed)
    Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY changed)
    Q_PROPERTY(morrow::WordRows *complaints READ complaints CONSTANT)
    Q_PROPERTY(morrow::WordRows *exceptions READ exceptions CONSTANT)
    Q_PROPERTY(morrow::WordRows *sentences READ sentences CONSTANT)
    Q_PROPERTY(morrow::WordRows *quality READ quality CONSTANT)
    Q_PROPERTY(morrow::WordRows *rules READ rules CONSTANT)
    Q_PROPERTY(morrow::WordRows *questions READ questions CONSTANT)
    Q_PROPERTY(morrow::WordRows *figures READ figures CONSTANT)
    Q_PROPERTY(QString figuresOf READ figuresOf NOTIFY figuresChanged)
    Q_PROPERTY(morrow::CourseModel *course READ course CONSTANT)

public:
    explicit ReviewModel(QObject *parent = nullptr);

    /// Shows \a person, whose entries are \a entries as of \a now. The same person keeps complaint and window.
    void show(const std::string &person, const KnownAs &known, std::vector<Entry> entries, const Moment &now);
    /// Says why that person's entries cannot be had.
    void fail(const std::string &person, const KnownAs &known, const QString &why);
    void clear();

    /// Fills \l figures with what the sentence \a key opens.
    Q_INVOKABLE void openFigures(const QString &key);
    /// The same for a row of the table beside the chart.
    Q_INVOKABLE void openDay(int row);
    /// The same for the number of the visit.
    Q_INVOKABLE void openVisits();

    [[nodiscard]] QString person() const { return QString::fromStdString(m_person); }
    [[nodiscard]] QString label() const { return m_label; }
    [[nodiscard]] QString beside() const { return m_beside; }
    [[nodiscard]] QString problem() const { return m_problem; }
    [[nodiscard]] QString complaint() const { return m_complaint; }
    [[nodiscard]] QString visits() const { return m_visits; }
    /// Whether there was a visit up to today.
    [[nodiscard]] bool wasVisited() const { return !m_visitEntries.empty(); }
    /// How far the course has come: visits given of those planned.
    [[nodiscard]] double fraction() const { return m_fraction; }
    [[nodiscard]] QString days() const { return m_days; }
    [[nodiscard]] bool hasVisit() const { return m_hasVisit; }
    [[nodiscard]] bool sinceVisit() const { return m_sinceVisit; }
    void setSinceVisit(bool since);
    [[nodiscard]] int complaintIndex() const { return m_index; }
    void setComplaintIndex(int index);
    [[nodiscard]] bool hasPlan() const { return m_hasPlan; }
    [[nodiscard]] WordRows *complaints() { return &m_complaints; }
    [[nodiscard]] WordRows *exceptions() { return &m_exceptions; }
    [[nodiscard]] WordRows *sentences() { return &m_sentences; }
    [[nodiscard]] WordRows *quality() { return &m_quality; }
    [[nodiscard]] WordRows *rules() { return &m_rules; }
    [[nodiscard]] WordRows *questions() { return &m_questions; }
    [[nodiscard]] WordRows *figures() { return &m_figures; }
    [[nodiscard]] QString figuresOf() const { return m_figuresOf; }
    [[nodiscard]] CourseModel *course() { return &m_course; }

Q_SIGNALS:
    void changed();
    void figuresChanged();

private:
    void fill();
    void fillHead(const ComplaintDiary &complaint);
    void fillReview(const Review &review);
    void empty();
    /// A row that draws \a sentence and opens its figures.
    [[nodiscard]] WordRow rowOf(const Sentence &sentence);

    std::string m_person;
    QString m_label;
    QString m_beside;
    QString m_problem;
    std::optional<Diary> m_diary;
    CivilDay m_today = *CivilDay::fromNumber(0);
    int m_index = 0;
    bool m_sinceVisit = false;

    QString m_complaint;
    QString m_visits;
    std::vector<EntryIndex> m_visitEntries;
    double m_fraction = 0;
    QString m_days;
    bool m_hasVisit = false;
    bool m_hasPlan = false;
    std::vector<Sentence> m_openable; ///< by the key of the row that draws it
    WordRows m_complaints;
    WordRows m_exceptions;
    WordRows m_sentences;
    WordRows m_quality;
    WordRows m_rules;
    WordRows m_questions;
    WordRows m_figures;
    QString m_figuresOf;
    CourseModel m_course;
};

} // namespace morrow
