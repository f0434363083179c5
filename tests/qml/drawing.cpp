// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/drawing.h"

#include <QDir>
#include <QQuickItem>

#include <cstdio>

namespace morrow::test {

namespace {

bool save(const QImage &picture, const QString &path)
{
    if (picture.save(path)) {
        std::printf("%s\n", qPrintable(path));
        return true;
    }
    std::fprintf(stderr, "%s could not be written\n", qPrintable(path));
    return false;
}

/// As many files as the page is windows high.
bool draw(Stage &stage, QQuickItem *scroll, const QString &name, const Look &look, const QString &folder)
{
    const double height = scroll == nullptr ? 0 : scroll->property("contentHeight").toDouble();
    const double step = scroll == nullptr ? 1 : qMax(1.0, scroll->height());
    int number = 1;
    bool saved = true;
    for (double top = 0; number == 1 || top < height; top += step, ++number) {
        if (scroll != nullptr)
            scroll->setProperty("contentY", qMax(0.0, qMin(top, height - step)));
        const QString file = QStringLiteral("%1-%2-%3.png").arg(name, test::name(look)).arg(number);
        saved = save(stage.picture(), QDir(folder).filePath(file)) && saved;
    }
    if (scroll != nullptr)
        scroll->setProperty("contentY", 0);
    return saved;
}

} // namespace

bool drawPage(Stage &stage, const std::function<QQuickItem *()> &scrolling, const QString &name, const QString &folder)
{
    bool saved = true;
    for (const QSize size : {QSize(360, 740), QSize(1280, 800)}) {
        for (const int mode : {0, 1}) {
            for (const int percent : {100, 200}) {
                const Look look{.size = size, .mode = mode, .textPercent = percent};
                stage.show(look);
                saved = draw(stage, scrolling(), name, look, folder) && saved;
            }
        }
    }
    return saved;
}

} // namespace morrow::test
