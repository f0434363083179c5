// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Draws the screens of the desk: desk_pictures DIR [SCREEN]. A page higher than its window becomes
/// several files, each a window further down.

#include "Style/english_plurals.h"
#include "qml/desk/screens.h"

#include <QApplication>
#include <QDir>
#include <QQuickItem>

#include <cstdio>

namespace {

using morrow::test::DeskScreen;
using morrow::test::Look;

bool save(const QImage &picture, const QString &path)
{
    if (picture.save(path)) {
        std::printf("%s\n", qPrintable(path));
        return true;
    }
    std::fprintf(stderr, "desk_pictures: %s could not be written\n", qPrintable(path));
    return false;
}

bool draw(DeskScreen &screen, const QString &name, const Look &look, const QString &folder)
{
    screen.stage().show(look);
    QQuickItem *const scroll = screen.scrolling();
    const double height = scroll == nullptr ? 0 : scroll->property("contentHeight").toDouble();
    const double step = scroll == nullptr ? 1 : qMax(1.0, scroll->height());
    int number = 1;
    bool saved = true;
    for (double top = 0; number == 1 || top < height; top += step, ++number) {
        if (scroll != nullptr)
            scroll->setProperty("contentY", qMax(0.0, qMin(top, height - step)));
        const QString file = QStringLiteral("%1-%2-%3.png").arg(name, morrow::test::name(look)).arg(number);
        saved = save(screen.stage().picture(), QDir(folder).filePath(file)) && saved;
    }
    if (scroll != nullptr)
        scroll->setProperty("contentY", 0);
    return saved;
}

} // namespace

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
        DeskScreen screen(name);
        for (const QSize size : {QSize(360, 740), QSize(1280, 800)}) {
            for (const int mode : {0, 1}) {
                for (const int percent : {100, 200})
                    saved = draw(screen, name, {.size = size, .mode = mode, .textPercent = percent}, folder) && saved;
            }
        }
    }
    return saved ? 0 : 1;
}
