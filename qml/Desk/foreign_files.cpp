// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/foreign_files.h"

#include "base/file.h"
#include "base/sha256.h"

#include <QMetaType>

namespace morrow {

namespace {

std::shared_ptr<const ForeignFile> readWith(ReaderChild &child, const std::string &path)
{
    auto file = std::make_shared<ForeignFile>(ForeignFile{.path = path, .reading = child.read(path)});
    if (!file->reading || !file->reading->diary)
        return file;
    auto bytes = readFile(path, kMaxFhirBytes);
    if (bytes && toHex(sha256(*bytes)) == file->reading->sha256)
        file->bytes = *std::move(bytes);
    else
        file->changed = true;
    return file;
}

} // namespace

ForeignFiles::ForeignFiles(std::filesystem::path reader, QObject *parent)
    : QObject(parent)
    , m_worker(new QObject)
{
    qRegisterMetaType<std::shared_ptr<const ForeignFile>>();
    m_worker->moveToThread(&m_thread);
    connect(&m_thread, &QThread::finished, m_worker, &QObject::deleteLater);
    // The child ends with the thread that started it, so it is made and asked on this one only.
    const auto child = std::make_shared<ReaderChild>(std::move(reader));
    connect(this, &ForeignFiles::wanted, m_worker, [this, child](const std::string &path) { Q_EMIT wasRead(readWith(*child, path)); });
    m_thread.start();
}

ForeignFiles::~ForeignFiles()
{
    m_thread.quit();
    m_thread.wait();
}

void ForeignFiles::read(const std::string &path)
{
    Q_EMIT wanted(path);
}

} // namespace morrow
