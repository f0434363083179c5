// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// The least that a window of Qt Quick Controls can be: what the first frame of home is held against.

#include "startup.h"

#include <QGuiApplication>
#include <QQmlApplicationEngine>

int main(int argc, char **argv)
{
    morrow::prepareDrawing();
    const QGuiApplication app(argc, argv);
    const morrow::StartOptions options
        = morrow::readOptions({.name = QStringLiteral("bare-window"), .summary = QStringLiteral("A window with a button.")});
    QQmlApplicationEngine engine;
    engine.loadData("import QtQuick.Controls.Basic\n"
                    "ApplicationWindow { visible: true; width: 360; height: 740; Button { text: 'A button' } }");
    auto *const window = engine.rootObjects().isEmpty() ? nullptr : qobject_cast<QQuickWindow *>(engine.rootObjects().constFirst());
    if (!window)
        return 1;
    morrow::watch(*window, options);
    return QGuiApplication::exec();
}
