// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Draws the screens of the desk: desk_pictures DIR [SCREEN]. A page higher than its window becomes
/// several files, each a window further down.

#include "Style/english_plurals.h"
#include "qml/desk/screens.h"
#include "qml/drawing.h"

#include <QApplication>
#include <QDir>

#include <cstdio>

int main(int argc, char **argv)
{
    morrow::test::settleSurroundings();
    const QApplication app(argc, argv);
    morrow::EnglishPlurals plurals;
    QApplication::installTranslator(&plurals);
    if (argc < 2 || argc > 3 || !QDir().mkpath(QString::fromLocal8Bit(argv[1]))) {
        std::fputs("usage: desk_pictures DIR [SCREEN]\n", stderr);
        return 2;
    }
    const QString folder = QString::fromLocal8Bit(argv[1]);
    bool saved = true;
    for (const QString &name : morrow::test::deskScreens()) {
        if (argc == 3 && name != QString::fromLocal8Bit(argv[2]))
            continue;
        morrow::test::DeskScreen screen(name);
        saved = morrow::test::drawPage(
                    screen.stage(), [&screen] { return screen.scrolling(); }, name, folder)
            && saved;
    }
    return saved ? 0 : 1;
}
