// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Files of others, read one after another on a thread of their own, so that the window answers
/// while a file takes its 5 seconds.

#include <QObject> // Qt first, for moc
#include <QThread>

#include "actions/reader_child.h"

#include <filesystem>
#include <memory>
#include <string>

namespace morrow {

/// A file as it was read.
struct ForeignFile
{
    std::string path;
    std::string bytes; ///< those that the reader read; empty unless `reading` holds a diary
    Result<FileReading, ReaderFault> reading;
    bool changed = false; ///< the file became another one while it was read
};

class ForeignFiles : public QObject
{
    Q_OBJECT

public:
    /// Reads with the program at \a reader.
    explicit ForeignFiles(std::filesystem::path reader, QObject *parent = nullptr);
    ~ForeignFiles() override;

    /// Reads the file at \a path after those that were asked for before.
    void read(const std::string &path);

Q_SIGNALS:
    void wanted(const std::string &path);
    /// In the order in which they were asked for.
    void wasRead(std::shared_ptr<const morrow::ForeignFile> file);

private:
    QThread m_thread;
    QObject *m_worker; ///< lives on that thread
};

} // namespace morrow
