// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "Style/english_plurals.h"
#include "qml/stage.h"

#ifdef QT_WIDGETS_LIB // Qt Charts needs widgets
#include <QApplication>
using Application = QApplication;
#else
#include <QGuiApplication>
using Application = QGuiApplication;
#endif

// What an assistive program switches on when it starts, and nothing public does.
#include <private/qguiapplication_p.h>
#include <qpa/qplatformaccessibility.h>
#include <qpa/qplatformintegration.h>

int main(int argc, char **argv)
{
    morrow::test::settleSurroundings();
    const Application app(argc, argv);
    morrow::EnglishPlurals plurals;
    Application::installTranslator(&plurals);
    QGuiApplicationPrivate::platformIntegration()->accessibility()->setActive(true);
    return morrow::test::runSuites(argc, argv);
}
