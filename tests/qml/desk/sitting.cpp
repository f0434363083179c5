// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/desk/sitting.h"

#include "actions/record_at_desk.h"
#include "actions/take_in.h"
#include "base/file.h"
#include "exchange/fhir.h"

#include <QCoreApplication>

#include <algorithm>

namespace morrow::test {

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
