// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What both programs with a window do before they show it: read the command line, dress the
/// theme, and say when the first frame was seen.

#include "base/clock.h"

#include <QList>
#include <QQmlEngine>
#include <QQuickWindow>
#include <QSize>
#include <QString>
#include <QStringList>
#include <QUrl>

#include <filesystem>
#include <memory>
#include <optional>

namespace morrow {

struct StartOptions
{
    std::filesystem::path folder; ///< of the store or the desk
    QStringList files; ///< to open or take in
    bool isDemo = false;
    std::optional<Moment> now; ///< what the program takes for the present at its start
    std::optional<std::int64_t> since; ///< milliseconds of CLOCK_MONOTONIC at which the caller started it
    std::optional<int> mode; ///< Light, Dark, HighContrast of Theme; nullopt: as the desktop is
    int textPercent = 100;
    bool lessMotion = false;
    std::optional<QSize> size; ///< of the window
    QString picture; ///< a file: the first frame is drawn into it, and the program ends
    QString person; ///< whose review is opened
};

/// Which folder is a program's own: below $XDG_DATA_HOME.
struct Program
{
    QString name; ///< "morrow", "morrow-desk": also the folder
    QString summary; ///< for --help
    bool hasDemo = false;
    bool hasPersons = false;
};

/// What must be so before the application object is made.
void prepareDrawing();

/// Reads the command line of the application that is running; a wrong one ends the program with
/// one sentence and status 2.
[[nodiscard]] StartOptions readOptions(const Program &program);

/// \a files of the command line, as addresses.
[[nodiscard]] QList<QUrl> localFiles(const QStringList &files);

/// The machine's clock, or one that began at \a start when it was made and runs on.
[[nodiscard]] std::unique_ptr<Clock> clockFrom(const std::optional<Moment> &start);

/// Makes the modules of \a engine known, and Theme look as \a options say, on the screen that
/// \a window is on.
void dress(QQmlEngine &engine, QQuickWindow &window, const StartOptions &options);

/// Gives \a window the size that was asked for, and prints "first frame N ms" once it was drawn, if
/// the caller said when it started the program. A picture that was asked for ends the program,
/// with status 1 if it cannot be written.
void watch(QQuickWindow &window, const StartOptions &options);

} // namespace morrow
