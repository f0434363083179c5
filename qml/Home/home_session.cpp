// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/home_session.h"

#include "Entries/said.h"
#include "Home/home_words.h"
#include "actions/adopt.h"
#include "actions/record.h"

#include <QDir>
#include <QFile>

namespace morrow {

namespace {

using namespace std::chrono_literals;

constexpr auto kQuietBeforeBackup = 30s;

/// The demo begins on a morning on which sets are due.
constexpr Moment kDemoMorning{1'776'921'000'000, 120}; // 2026-04-23T07:10+02:00

/// Begins at the demo's morning and runs as fast as the clock \a beside.
class DemoClock final : public Clock
{
public:
    explicit DemoClock(const Clock &beside)
        : m_beside(beside)
        , m_began(beside.now().utcMs)
    {
    }

    [[nodiscard]] Moment now() const override { return {kDemoMorning.utcMs + m_beside.now().utcMs - m_began, kDemoMorning.offsetMinutes}; }

private:
    const Clock &m_beside;
    std::int64_t m_began;
};

/// The demo diary as far as it has come on its morning.
Result<Offered, AdoptProblem> demoDiary()
{
    std::map<std::string, std::string, std::less<>> tables;
    const QDir folder(QStringLiteral(":/morrow/demo"));
    for (const QString &name : folder.entryList()) {
        QFile file(folder.filePath(name));
        if (file.open(QIODevice::ReadOnly))
            tables[name.toStdString()] = file.readAll().toStdString();
    }
    auto offered = readOffered(std::move(tables));
    if (offered)
        std::erase_if(offered->entries, [morning = diaryDay(kDemoMorning, {})](const Entry &entry) { return entry.day >= morning; });
    return offered;
}

} // namespace

HomeSession::HomeSession(std::filesystem::path folder, std::unique_ptr<Clock> clock, QObject *parent)
    : QObject(parent)
    , m_own(std::move(folder))
    , m_ownClock(std::move(clock))
    , m_clock(m_ownClock.get())
    , m_today(*this)
    , m_visit(*this)
    , m_safety(*this)
{
    connect(this, &HomeSession::changed, &m_figures, &OpenFigures::close);
    connect(this, &HomeSession::stateChanged, &m_figures, &OpenFigures::close);
    m_quiet.setSingleShot(true);
    m_quiet.setInterval(kQuietBeforeBackup);
    connect(&m_quiet, &QTimer::timeout, this, &HomeSession::backUp);
    m_minute.setInterval(1min);
    connect(&m_minute, &QTimer::timeout, this, [this] {
        if (m_diary && m_day != day())
            reread();
    });
    m_minute.start();
}

HomeSession::~HomeSession()
{
    backUp();
}

void HomeSession::open()
{
    showIn(m_own);
}

void HomeSession::showIn(const std::filesystem::path &folder)
{
    m_diary.reset();
    m_news.clear();
    m_problem.clear();
    if (!storeIsAt(folder)) {
        m_state = FirstRun;
        Q_EMIT stateChanged();
        return;
    }
    auto diary = OpenDiary::open(folder);
    QString news;
    if (!diary && (diary.error() == StoreError::Newer || diary.error() == StoreError::ReadOnly)) {
        news = HomeWords::sentence(diary.error());
        diary = OpenDiary::openToRead(folder);
    }
    if (!diary) {
        m_state = CannotOpen;
        m_problem = HomeWords::sentence(diary.error());
        Q_EMIT stateChanged();
        return;
    }
    m_news = news;
    show(*std::move(diary));
}

void HomeSession::show(OpenDiary diary)
{
    m_diary.emplace(std::move(diary));
    m_state = Open;
    if (m_news.isEmpty() && !m_diary->reading().isWhole())
        m_news = HomeWords::sentence(StoreError::Damaged);
    Q_EMIT stateChanged();
    reread();
}

void HomeSession::openFiles(const QList<QUrl> &files)
{
    m_received.clear();
    m_refusal.clear();
    leaveDemo();
    std::map<Kind, int> fresh;
    for (const QUrl &file : files) {
        const QString name = plainText(file.fileName().toStdString());
        auto offered = readOffered(QFile::encodeName(file.toLocalFile()).toStdString());
        Result<Adopted, AdoptProblem> adopted{Adopted{}};
        if (!offered) {
            adopted = failure(std::move(offered.error()));
        } else if (m_diary) {
            adopted = adopt(*m_diary, *std::move(offered));
        } else if (m_state == FirstRun) {
            for (const Entry &entry : offered->entries)
                ++adopted->counts[entry.kind];
            auto begun = beginWith(m_own, *std::move(offered));
            if (begun)
                show(*std::move(begun));
            else
                adopted = failure(std::move(begun.error()));
        }
        if (!adopted) {
            //: Why a file was not opened: its name, and the reason in one sentence.
            m_refusal = tr("%1 was not opened. %2").arg(name, HomeWords::sentence(adopted.error()));
            break;
        }
        for (const auto &[kind, count] : adopted->counts)
            fresh[kind] += count;
    }
    if (!fresh.empty())
        //: After a file was opened: what it brought, "1 plan, 2 replies".
        m_received = tr("New from the file: %1.").arg(HomeWords::counts(fresh));
    else if (m_refusal.isEmpty())
        //: After a file was opened that brought nothing.
        m_received = tr("Everything in this file was here already.");
    Q_EMIT receivedChanged();
    if (m_diary)
        reread();
}

void HomeSession::forgetReceived()
{
    m_received.clear();
    m_refusal.clear();
    Q_EMIT receivedChanged();
}

void HomeSession::openDemo()
{
    auto folder = std::make_unique<QTemporaryDir>();
    auto offered = demoDiary();
    if (!offered || !folder->isValid()) {
        m_refusal = offered ? HomeWords::sentence(FileError::Io) : HomeWords::sentence(offered.error());
        Q_EMIT receivedChanged();
        return;
    }
    auto diary = beginWith(folder->filePath(QStringLiteral("diary")).toStdString(), *std::move(offered));
    if (!diary) {
        m_refusal = HomeWords::sentence(diary.error());
        Q_EMIT receivedChanged();
        return;
    }
    forgetReceived();
    m_demoFolder = std::move(folder);
    m_demoClock = std::make_unique<DemoClock>(*m_ownClock);
    m_clock = m_demoClock.get();
    m_news.clear();
    show(*std::move(diary));
}

void HomeSession::leaveDemo()
{
    if (!m_demoFolder)
        return;
    m_diary.reset();
    m_demoFolder.reset();
    m_clock = m_ownClock.get();
    m_demoClock.reset();
    open();
}

CivilDay HomeSession::day()
{
    return diaryDay(now(), m_diary ? m_diary->recent(now()).dayStarts() : std::chrono::minutes(0));
}

Kept HomeSession::record(std::vector<Draft> drafts)
{
    if (!m_diary)
        return {.said = {}, .failure = HomeWords::sentence(StoreError::Missing)};
    const Moment now = this->now();
    const auto entries = morrow::record(*m_diary, std::move(drafts), now);
    if (!entries)
        return {.said = {}, .failure = HomeWords::sentence(entries.error())};
    m_quiet.start();
    reread();
    return {.said = HomeWords::saved(now), .failure = {}};
}

Kept HomeSession::takeBack(const std::vector<Entry> &entries)
{
    std::vector<Draft> drafts;
    for (const Entry &entry : entries) {
        if (auto draft = withdrawal(entry, Author::Patient))
            drafts.push_back(*std::move(draft));
    }
    return record(std::move(drafts));
}

void HomeSession::reread()
{
    m_day = day();
    Q_EMIT changed();
}

void HomeSession::backUp()
{
    // A backup that fails is made after the next change; the diary itself is durable.
    if (m_diary && !m_demoFolder)
        static_cast<void>(m_diary->backUp(now()));
}

} // namespace morrow
