// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Desk/desk_session.h"
#include "Style/english_plurals.h"
#include "startup.h"

#include <QApplication>
#include <QQuickItem>
#include <QQuickView>

#include <filesystem>

namespace {

/// The reader lies beside this program.
std::filesystem::path readerProgram()
{
    std::error_code ignored;
    return std::filesystem::read_symlink("/proc/self/exe", ignored).replace_filename("morrow-reader");
}

} // namespace

int main(int argc, char **argv)
{
    morrow::prepareDrawing();
    const QApplication app(argc, argv); // Qt Charts needs widgets
    morrow::EnglishPlurals plurals;
    QApplication::installTranslator(&plurals);
    const morrow::StartOptions options = morrow::readOptions(
        {.name = QStringLiteral("morrow-desk"), .summary = QStringLiteral("What patients entered, for their clinic."), .hasPersons = true});

    morrow::DeskSession session(options.folder, morrow::clockFrom(options.now), readerProgram());
    QQuickView window;
    morrow::dress(*window.engine(), window, options);
    window.setTitle(QStringLiteral("Morrow desk"));
    window.setResizeMode(QQuickView::SizeRootObjectToView);
    window.setInitialProperties({{QStringLiteral("session"), QVariant::fromValue(&session)}});
    window.setMinimumSize({320, 480});
    window.resize(1280, 800);
    session.open();
    window.setSource(QUrl(QStringLiteral("qrc:/qt/qml/Morrow/Desk/DeskPage.qml")));
    if (window.status() != QQuickView::Ready)
        return 1;
    if (!options.person.isEmpty())
        QMetaObject::invokeMethod(window.rootObject(), "look", Q_ARG(QString, options.person));
    morrow::watch(window, options);
    window.show();
    session.takeInFiles(morrow::localFiles(options.files));
    return QApplication::exec();
}
