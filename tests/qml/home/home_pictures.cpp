// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Draws the screens of home: home_pictures DIR [SCREEN]. A page higher than its window becomes
/// several files, each a window further down.

#include "Style/english_plurals.h"
#include "qml/drawing.h"
#include "qml/home/home_screens.h"

#include <QDir>
#include <QGuiApplication>

#include <cstdio>

int main(int argc, char **argv)
{
    morrow::test::settleSurroundings();
    const QGuiApplication app(argc, argv);
    morrow::EnglishPlurals plurals;
    QGuiApplication::installTranslator(&plurals);
    if (argc < 2 || argc > 3 || !QDir().mkpath(QString::fromLocal8Bit(argv[1]))) {
        std::fputs("usage: home_pictures DIR [SCREEN]\n", stderr);
        return 2;
    }
    const QString folder = QString::fromLocal8Bit(argv[1]);
    bool saved = true;
    for (const QString &name : morrow::test::homeScreens()) {
        if (argc == 3 && name != QString::fromLocal8Bit(argv[2]))
            continue;
        morrow::test::HomeScreen screen(name);
        saved = morrow::test::drawPage(
                    screen.stage(), [&screen] { return screen.scrolling(); }, name, folder)
            && saved;
    }
    return saved ? 0 : 1;
}
