// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// How soon a tap on a set of today is seen: the frames and the time from letting go to the first
/// frame with the tick in it, which is saved by then, beside a bare check box of Qt Quick Controls
/// in the same run. It judges nothing; the aim stands beside the numbers.

#include "bench/child.h"
#include "qml/home/home_screens.h"

#include <QElapsedTimer>
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQuickItem>
#include <QTest>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

using namespace morrow;
using namespace morrow::test;

namespace {

constexpr int kTaps = 40;

struct Seen
{
    std::vector<double> frames;
    std::vector<double> milliseconds;
};

/// Taps \a item, whose \a property follows, until a frame shows that it did.
void tap(QQuickWindow &window, QQuickItem &item, const char *property, Seen &seen)
{
    const QPoint centre = item.mapToScene({item.width() / 2, item.height() / 2}).toPoint();
    const bool before = item.property(property).toBool();
    int frames = 0;
    bool isDrawn = false;
    QElapsedTimer since;
    const auto counting = QObject::connect(
        &window, &QQuickWindow::afterSynchronizing, &window,
        [&] {
            ++frames;
            isDrawn = item.property(property).toBool() != before;
        },
        Qt::DirectConnection);
    double milliseconds = 0;
    const auto swapped = QObject::connect(
        &window, &QQuickWindow::frameSwapped, &window,
        [&] {
            if (isDrawn && milliseconds == 0)
                milliseconds = static_cast<double>(since.nsecsElapsed()) / 1e6;
        },
        Qt::DirectConnection);
    QTest::mousePress(&window, Qt::LeftButton, Qt::NoModifier, centre);
    QTest::qWait(50); // a finger stays a moment; the frame of the press is over
    frames = 0;
    isDrawn = false;
    since.start();
    QTest::mouseRelease(&window, Qt::LeftButton, Qt::NoModifier, centre);
    if (!QTest::qWaitFor([&] { return milliseconds != 0; }, 2000)) {
        std::fputs("the tap was never seen\n", stderr);
        std::exit(1);
    }
    QObject::disconnect(counting);
    QObject::disconnect(swapped);
    seen.frames.push_back(frames);
    seen.milliseconds.push_back(milliseconds);
    QTest::qWait(200); // what fades has faded
}

Seen onToday()
{
    HomeScreen screen(QStringLiteral("today"));
    screen.stage().show({.size = {360, 1400}});
    const std::vector<QQuickItem *> items = visibleItems(screen.stage().page());
    const auto box = std::find_if(items.begin(), items.end(),
        [](const QQuickItem *item) { return QLatin1String(item->metaObject()->className()).startsWith(QLatin1String("TickBox")); });
    if (box == items.end()) {
        std::fputs("there is no set to tap\n", stderr);
        std::exit(1);
    }
    Seen seen;
    for (int i = 0; i < kTaps; ++i)
        tap(screen.stage().window(), **box, "done", seen);
    return seen;
}

Seen onABareBox()
{
    QQuickView view;
    QQmlComponent component(view.engine());
    component.setData("import QtQuick.Controls.Basic\nCheckBox { text: 'A box' }", QUrl());
    view.setContent(QUrl(), &component, component.create());
    view.resize(360, 1400);
    view.show();
    QTest::qWait(200);
    Seen seen;
    for (int i = 0; i < kTaps; ++i)
        tap(view, *view.rootObject(), "checked", seen);
    return seen;
}

void print(const char *name, Seen &seen, double than)
{
    const double middle = bench::median(seen.milliseconds);
    std::printf("%-14s %8.0f %8.0f %10.1f %8.2f\n", name, bench::median(seen.frames),
        *std::max_element(seen.frames.begin(), seen.frames.end()), middle, middle / than);
}

} // namespace

int main(int argc, char **argv)
{
    settleSurroundings();
    const QGuiApplication app(argc, argv);
    Seen bare = onABareBox();
    Seen today = onToday();
    const double than = bench::median(bare.milliseconds);
    std::printf("%-14s %8s %8s %10s %8s\n", "tap to frame", "frames", "most", "ms", "ratio");
    print("bare box", bare, than);
    print("set of today", today, than);
    std::printf("Medians of %d taps each; aim 2 frames.\n", kTaps);
    return 0;
}
