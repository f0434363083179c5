// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A home for tests and pictures: a folder of its own and a clock that stands still.

#include "Home/home_session.h"
#include "qml/people.h"

#include <QTemporaryDir>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace morrow::test {

/// A morning on which the baker's exercises are due.
inline constexpr Moment kMorning{1'776'921'000'000, 120}; // 2026-04-23T07:10+02:00
/// The first day of the baker's plan.
inline constexpr Moment kFirstMorning{1'771'218'600'000, 60}; // 2026-02-16T06:10+01:00

/// The baker's diary as far as it has come in the morning of \a now: what the clinic said, and the days before.
[[nodiscard]] std::vector<Entry> bakerBefore(const Moment &now);

class Stay
{
public:
    /// In a folder of its own, or in \a folder.
    explicit Stay(const Moment &now = kMorning, std::filesystem::path folder = {});

    /// Begins the diary, before the session is opened.
    void begin(const std::vector<Entry> &entries);
    void open() { m_session->open(); }

    [[nodiscard]] HomeSession &session() { return *m_session; }
    [[nodiscard]] const std::filesystem::path &folder() const { return m_folder; }
    /// Where files of others and summaries lie.
    [[nodiscard]] QString files() const { return m_temporary.path(); }
    [[nodiscard]] QString writeFile(const std::string &name, const std::string &bytes);
    /// What the page takes.
    [[nodiscard]] QVariantMap properties();

    /// The entries of the diary that were not there when it was begun, as they are on the disk, by id.
    [[nodiscard]] std::vector<Entry> fresh();

private:
    QTemporaryDir m_temporary;
    std::filesystem::path m_folder;
    std::unique_ptr<HomeSession> m_session;
    std::vector<std::string> m_before;
};

} // namespace morrow::test
