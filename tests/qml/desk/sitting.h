// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A desk for tests and pictures: a folder of its own, a clock that stands still, and people from
/// the demo diaries.

#include "Desk/desk_session.h"
#include "qml/people.h"

#include <QQuickView>
#include <QTemporaryDir>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace morrow::test {

class Sitting
{
public:
    /// At a desk in a folder of its own, or in \a folder.
    explicit Sitting(std::filesystem::path folder = {});

    /// Somebody of the desk, before it is opened.
    void addPerson(const std::string &ref, const KnownAs &known, const std::vector<Entry> &entries);
    /// Several people as a clinic has them, one with the whole paper diary ("Ek, Tomas").
    void addCaseload();

    /// Opens the desk and reads the whole caseload.
    void open();
    /// Takes in \a paths and waits for what the reader says of each.
    void takeIn(const QStringList &paths);
    /// What row \a row of the files says, by the name of its role.
    [[nodiscard]] QVariant ofFile(int row, const char *role);
    /// A file of \a ref in the folder of handed-over files; gives its path.
    [[nodiscard]] QString handOver(const std::string &name, const std::string &ref, const std::vector<Entry> &entries);
    /// Any file there.
    [[nodiscard]] QString writeFile(const std::string &name, const std::string &bytes);

    [[nodiscard]] DeskSession &session() { return *m_session; }
    [[nodiscard]] const std::filesystem::path &folder() const { return m_folder; }
    /// What the page takes.
    [[nodiscard]] QVariantMap properties();

private:
    QTemporaryDir m_temporary;
    std::filesystem::path m_folder;
    std::unique_ptr<DeskSession> m_session;
};

} // namespace morrow::test
