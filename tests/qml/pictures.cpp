// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Draws what the controls look like: pictures DIR [PAGE.qml]. A page higher than its window
/// becomes several files, each a window further down.

#include "qml/stage.h"

#include <QDir>
#include <QGuiApplication>
#include <QQuickItem>

#include <cstdio>

namespace {

using morrow::test::Look;
using morrow::test::Stage;

/// Saves the picture, or says why not.
bool save(const QImage &picture, const QString &path)
{
    if (picture.save(path)) {
        std::printf("%s\n", qPrintable(path));
        return true;
    }
    std::fprintf(stderr, "pictures: %s could not be written\n", qPrintable(path));
    return false;
}

/// The item of a page that scrolls, null if none does.
QQuickItem *scrolling(const Stage &stage)
{
    for (QQuickItem *item : morrow::test::visibleItems(stage.page())) {
        if (item->inherits("QQuickFlickable"))
            return item;
    }
    return nullptr;
}

bool draw(Stage &stage, const Look &look, const QString &folder)
{
    stage.show(look);
    QQuickItem *scroll = scrolling(stage);
    const double height = scroll == nullptr ? 0 : scroll->property("contentHeight").toDouble();
    const double step = scroll == nullptr ? 1 : scroll->height();
    int number = 1;
    bool saved = true;
    for (double top = 0; number == 1 || top < height; top += step, ++number) {
        if (scroll != nullptr)
            scroll->setProperty("contentY", qMax(0.0, qMin(top, height - step)));
        const QString file = QStringLiteral("gallery-%1-%2.png").arg(name(look)).arg(number);
        saved = save(stage.picture(), QDir(folder).filePath(file)) && saved;
    }
    if (scroll != nullptr)
        scroll->setProperty("contentY", 0);
    return saved;
}

bool drawDialog(Stage &stage, const Look &look, const QString &folder)
{
    stage.show(look);
    QObject *dialog = stage.find(QStringLiteral("dialog"));
    QMetaObject::invokeMethod(dialog, "open");
    const bool saved = save(stage.picture(), QDir(folder).filePath(QStringLiteral("dialog-%1.png").arg(name(look))));
    QMetaObject::invokeMethod(dialog, "close");
    stage.picture();
    return saved;
}

} // namespace

int main(int argc, char **argv)
{
    morrow::test::settleSurroundings();
    const QGuiApplication app(argc, argv);
    if (argc != 2 || !QDir().mkpath(QString::fromLocal8Bit(argv[1]))) {
        std::fputs("usage: pictures DIR\n", stderr);
        return 2;
    }
    const QString folder = QString::fromLocal8Bit(argv[1]);

    Stage stage(QStringLiteral("Gallery.qml"));
    if (stage.page() == nullptr)
        return 1;
    bool saved = true;
    for (const QSize size : {QSize(360, 740), QSize(1280, 800)}) {
        for (const int mode : {0, 1}) {
            for (const int percent : {100, 200}) {
                saved = draw(stage, {.size = size, .mode = mode, .textPercent = percent}, folder) && saved;
                saved = drawDialog(stage, {.size = size, .mode = mode, .textPercent = percent}, folder) && saved;
            }
        }
    }
    saved = draw(stage, {.direction = Qt::RightToLeft}, folder) && saved;
    saved = draw(stage, {.mode = 2}, folder) && saved;
    saved = draw(stage, {.size = {320, 640}, .textPercent = 200}, folder) && saved;
    return saved ? 0 : 1;
}
