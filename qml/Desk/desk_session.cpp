// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/desk_session.h"

#include "Desk/desk_words.h"

#include <QElapsedTimer>
#include <QFile>
#include <QTimer>

#include <algorithm>

namespace morrow {

namespace {

constexpr int kTurnMs = 8; ///< what reading the caseload takes of the window at a time: half a frame
constexpr std::size_t kMostCandidates = 5;

} // namespace

DeskSession::DeskSession(std::filesystem::path folder, std::unique_ptr<Clock> clock, std::filesystem::path reader, QObject *parent)
    : QObject(parent)
    , m_folder(std::move(folder))
    , m_clock(std::move(clock))
    , m_takeIn({.desk = [this] { return m_desk ? &*m_desk : nullptr; },
          .now = [this] { return m_clock->now(); },
          .knownAs =
              [this](const std::string &person) {
                  const CaseCard *const card = m_caseload.find(person);
                  return card == nullptr ? KnownAs{} : card->known;
              },
          .changed = [this](const std::string &person) { personChanged(person); }})
    , m_files(std::move(reader))
{
    connect(&m_files, &ForeignFiles::wasRead, this, [this](const std::shared_ptr<const ForeignFile> &file) { m_takeIn.take(file); });
}

DeskSession::~DeskSession() = default;

void DeskSession::open()
{
    m_desk.reset();
    m_problem.clear();
    m_news.clear();
    m_toRead.clear();
    m_caseload.clear();
    auto desk = OpenDesk::open(m_folder);
    if (desk) {
        m_desk.emplace(*std::move(desk));
        m_news = DeskWords::sentence(m_desk->news());
        if (m_desk->store().isReadOnly())
            m_news = DeskWords::sentence(m_desk->store().isNewer() ? StoreError::Newer : StoreError::ReadOnly);
        const auto persons = m_desk->store().persons();
        if (persons)
            m_toRead.assign(persons->begin(), persons->end());
        else
            m_problem = DeskWords::sentence(persons.error());
    } else {
        m_problem = DeskWords::sentence(desk.error());
    }
    m_caseload.setToRead(static_cast<int>(m_toRead.size()));
    Q_EMIT stateChanged();
    readSome();
}

void DeskSession::readSome()
{
    QElapsedTimer timer;
    timer.start();
    while (!m_toRead.empty() && timer.elapsed() < kTurnMs) {
        const std::string person = std::move(m_toRead.front());
        m_toRead.pop_front();
        readPerson(person);
    }
    m_caseload.setToRead(static_cast<int>(m_toRead.size()));
    if (!m_toRead.empty())
        QTimer::singleShot(0, this, &DeskSession::readSome);
}

void DeskSession::readPerson(const std::string &person)
{
    if (!m_desk)
        return;
    auto entries = m_desk->entriesOf(person);
    if (!entries) {
        // It stands in the list, so that somebody opens it and is told why.
        m_caseload.put({.person = person});
        return;
    }
    if (entries->empty())
        m_caseload.remove(person);
    else
        m_caseload.put(cardOf(person, *std::move(entries), m_clock->now()));
}

void DeskSession::personChanged(const std::string &person)
{
    readPerson(person);
    if (m_review.person().toStdString() == person)
        look(m_review.person());
}

void DeskSession::look(const QString &person)
{
    const std::string ref = person.toStdString();
    const CaseCard *const card = m_caseload.find(ref);
    if (!m_desk || card == nullptr) {
        m_review.clear();
        return;
    }
    auto entries = m_desk->entriesOf(ref);
    if (entries)
        m_review.show(ref, card->known, *std::move(entries), m_clock->now());
    else
        m_review.fail(ref, card->known, DeskWords::sentence(entries.error()));
}

void DeskSession::takeInFiles(const QList<QUrl> &files)
{
    if (!m_desk)
        return;
    bool came = false;
    for (const QUrl &file : files) {
        if (!file.isLocalFile())
            continue;
        const std::string path = QFile::encodeName(file.toLocalFile()).toStdString();
        m_takeIn.add(path);
        m_files.read(path);
        came = true;
    }
    if (came)
        Q_EMIT filesCame();
}

void DeskSession::find(const QString &search)
{
    std::vector<WordRow> rows;
    for (const CaseCard *const card : m_caseload.found(search, kMostCandidates)) {
        rows.push_back({.text = DeskWords::nameOf(card->known),
            .below = DeskWords::besideName(card->known),
            .key = QString::fromStdString(card->person)});
    }
    m_candidates.set(std::move(rows));
}

} // namespace morrow
