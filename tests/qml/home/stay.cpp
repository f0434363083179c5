// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/home/stay.h"

#include "actions/open.h"
#include "base/file.h"

#include <algorithm>

namespace morrow::test {

std::vector<Entry> bakerBefore(const Moment &now)
{
    const CivilDay today = diaryDay(now, std::chrono::minutes(0));
    std::vector<Entry> entries = bakersDiary(today);
    std::erase_if(entries, [today](const Entry &entry) { return entry.day == today && entry.author != Author::Clinic; });
    return entries;
}

Stay::Stay(const Moment &now, std::filesystem::path folder)
    : m_folder(std::move(folder))
{
    if (m_folder.empty())
        m_folder = std::filesystem::path(m_temporary.path().toStdString()) / "home";
    m_session = std::make_unique<HomeSession>(m_folder, std::make_unique<StandingClock>(now));
    m_session->visit()->setFolder(m_temporary.path());
}

void Stay::begin(const std::vector<Entry> &entries)
{
    auto diary = OpenDiary::open(m_folder, "ref-home");
    if (!diary || !diary->add(entries))
        slip("the diary could not be begun");
    for (const Entry &entry : entries)
        m_before.push_back(entry.id);
}

QString Stay::writeFile(const std::string &name, const std::string &bytes)
{
    const std::filesystem::path path = std::filesystem::path(m_temporary.path().toStdString()) / name;
    if (!morrow::writeFile(path, bytes))
        slip("a file cannot be written");
    return QString::fromStdString(path.string());
}

QVariantMap Stay::properties()
{
    return {{QStringLiteral("session"), QVariant::fromValue(m_session.get())}};
}

std::vector<Entry> Stay::fresh()
{
    std::vector<Entry> entries;
    if (OpenDiary *const open = m_session->isDemo() ? nullptr : m_session->diary()) {
        if (!open->reload())
            slip("the diary cannot be read again");
        entries = open->entries();
    } else {
        const auto closed = OpenDiary::openToRead(m_folder);
        if (!closed)
            slip("the diary cannot be read");
        entries = closed->entries();
    }
    std::erase_if(entries, [this](const Entry &entry) { return std::ranges::find(m_before, entry.id) != m_before.end(); });
    return entries;
}

} // namespace morrow::test
