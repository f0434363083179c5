// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/home_session.h"
#include "Style/english_plurals.h"
#include "startup.h"

#include <QDir>
#include <QGuiApplication>
#include <QQuickView>

int main(int argc, char **argv)
{
    morrow::prepareDrawing();
    const QGuiApplication app(argc, argv);
    morrow::EnglishPlurals plurals;
    QGuiApplication::installTranslator(&plurals);
    const morrow::StartOptions options = morrow::readOptions({.name = QStringLiteral("morrow"),
        .summary = QStringLiteral("A diary of home exercise between visits for shockwave treatment."),
        .hasDemo = true});

    morrow::HomeSession session(options.folder, morrow::clockFrom(options.now));
    session.open();
    if (options.isDemo)
        session.openDemo();
    QQuickView window;
    morrow::dress(*window.engine(), window, options);
    window.setTitle(QStringLiteral("Morrow"));
    window.setResizeMode(QQuickView::SizeRootObjectToView);
    window.setInitialProperties({{QStringLiteral("session"), QVariant::fromValue(&session)}});
    window.setMinimumSize({320, 480});
    window.resize(360, 740);
    window.setSource(QUrl(QStringLiteral("qrc:/qt/qml/Morrow/Home/HomePage.qml")));
    if (window.status() != QQuickView::Ready)
        return 1;
    if (!options.files.isEmpty())
        session.openFiles(morrow::localFiles(options.files));
    morrow::watch(window, options);
    window.show();
    return QGuiApplication::exec();
}
