// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/desk/sitting.h"

#include "actions/record_at_desk.h"
#include "actions/take_in.h"
#include "base/file.h"
#include "exchange/fhir.h"
#include "exchange/tables.h"
#include "support/diary_builder.h"

#include <QCoreApplication>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace morrow::test {

namespace {

[[noreturn]] void slip(const char *what)
{
    std::fprintf(stderr, "a test cannot go on: %s\n", what);
    std::_Exit(3);
}

} // namespace

std::vector<Entry> demoDiary(const char *folder)
{
    const auto tables = readTables(std::filesystem::path(MORROW_DEMO_DATA) / folder);
    if (!tables)
        slip("the demo diary cannot be read");
    return tables->entries;
}

std::vector<Entry> bakersDiary(CivilDay lastDay)
{
    std::vector<Entry> entries = demoDiary("paper");
    std::erase_if(entries, [lastDay](const Entry &entry) { return entry.day > lastDay; });
    return entries;
}

std::vector<Entry> diaryOfManyThings()
{
    DiaryBuilder builder;
    builder.complaint("shoulder", body({{Field::Region, std::string("shoulder")}, {Field::Side, std::string("right")}}));
    for (int number = 1; number <= 12; ++number) {
        const std::string key = "exercise-" + std::to_string(number);
        builder.item(item(key, "2026-03-02", {onDays(3, 15), onDays(3, 12)})).sets("2026-04-20", "morning", key, number % 4, 15);
    }
    builder.checks("2026-03-02", {6, 6, 5, -1, 5, 6, 4, 4, -1, -1, 3, 4});
    builder.complaint("heel", body({{Field::Region, std::string("plantar heel")}, {Field::Side, std::string("left")}}))
        .item(item("raise", "2026-04-01", {onDays(3, 15)}))
        .checks("2026-04-01", {2, 2, 3});
    builder.complaint("elbow", body({{Field::Region, std::string("outer elbow")}, {Field::Side, std::string("left")}}));
    auto entries = builder.entries();
    // The builder begins with a complaint of its own.
    std::erase_if(entries, [](const Entry &entry) { return entry.id == "complaint-main"; });
    return entries;
}

Sitting::Sitting(std::filesystem::path folder)
    : m_folder(std::move(folder))
{
    if (m_folder.empty())
        m_folder = std::filesystem::path(m_temporary.path().toStdString()) / "desk";
    m_session = std::make_unique<DeskSession>(m_folder, std::make_unique<StandingClock>(), MORROW_READER);
}

void Sitting::addPerson(const std::string &ref, const KnownAs &known, const std::vector<Entry> &entries)
{
    auto desk = OpenDesk::open(m_folder);
    if (!desk)
        slip("the desk cannot be opened");
    const std::string bytes = writeFhir(entries, ref, FhirFile::Summary).json;
    const auto diary = readFhir(bytes);
    if (!diary)
        slip("a file of ours cannot be read");
    if (!morrow::takeIn(*desk, *diary, bytes, {.isNew = true, .as = {}}, kDeskNow))
        slip("a file of ours was not taken in");
    Draft draft{.kind = Kind::KnownAs, .author = Author::Clinic};
    draft.body.set(Field::Label, known.label);
    if (!known.fileNumber.empty())
        draft.body.set(Field::FileNumber, known.fileNumber);
    if (known.birthYear)
        draft.body.set(Field::BirthYear, Decimal::whole(*known.birthYear));
    if (!recordAtDesk(*desk, ref, std::move(draft), kDeskNow))
        slip("a name was not kept");
}

void Sitting::addCaseload()
{
    const auto day = [](const char *text) { return *CivilDay::parse(text); };
    std::vector<Entry> withSign = bakersDiary();
    std::erase_if(withSign, [](const Entry &entry) { return entry.kind == Kind::Cleared; });
    addPerson("ref-haug", {"Haug, Marit", "1180", 1951}, withSign);
    addPerson("ref-ek", {"Ek, Tomas", "2207", 1971}, bakersDiary());
    addPerson("ref-ozturk", {"Ozturk, Deniz", "", 1979}, bakersDiary(day("2026-04-18")));
    addPerson("ref-lund", {"Lund, Per", "2340", 1990}, bakersDiary(day("2026-03-08")));
    addPerson("ref-sato", {"Aleksandropoulou-Wintermantel, Konstantina", "0031-77/26", 1984}, demoDiary("runner"));
    addPerson("ref-two", {"Berg, Anne", "2091", 1972}, demoDiary("two-complaints"));
}

void Sitting::open()
{
    m_session->open();
    while (m_session->caseload()->toRead() > 0)
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

void Sitting::takeIn(const QStringList &paths)
{
    QList<QUrl> urls;
    for (const QString &path : paths)
        urls << QUrl::fromLocalFile(path);
    m_session->takeInFiles(urls);
    for (int row = 0; row < m_session->takeIn()->files(); ++row) {
        while (ofFile(row, "fileState").toInt() == TakeInModel::Reading)
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
}

QVariant Sitting::ofFile(int row, const char *role)
{
    TakeInModel *const model = m_session->takeIn();
    return model->data(model->index(row), model->roleNames().key(role));
}

QString Sitting::handOver(const std::string &name, const std::string &ref, const std::vector<Entry> &entries)
{
    return writeFile(name, writeFhir(entries, ref, FhirFile::Summary).json);
}

QString Sitting::writeFile(const std::string &name, const std::string &bytes)
{
    const std::filesystem::path path = std::filesystem::path(m_temporary.path().toStdString()) / name;
    if (!morrow::writeFile(path, bytes))
        slip("a file cannot be written");
    return QString::fromStdString(path.string());
}

QVariantMap Sitting::properties()
{
    return {{QStringLiteral("session"), QVariant::fromValue(m_session.get())}};
}

} // namespace morrow::test
