// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/stage.h"

#include <QCoreApplication>
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQmlIncubationController>
#include <QQuickItem>
#include <QTemporaryDir>

#include <array>
#include <memory>

namespace morrow::test {

void settleSurroundings()
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    qputenv("QSG_RENDER_LOOP", "basic");
    qputenv("FONTCONFIG_FILE", MORROW_FONTS_CONF);
    qputenv("LC_ALL", "C.UTF-8");
    qputenv("TZ", "UTC");
    for (const char *meddling : {"QT_SCALE_FACTOR", "QT_FONT_DPI", "QT_STYLE_OVERRIDE", "QT_QUICK_CONTROLS_STYLE"})
        qunsetenv(meddling);
    static const QTemporaryDir runtime; // Qt warns where there is none
    if (qEnvironmentVariableIsEmpty("XDG_RUNTIME_DIR"))
        qputenv("XDG_RUNTIME_DIR", runtime.path().toLocal8Bit());
}

QString name(const Look &look)
{
    static const std::array modes{QStringLiteral("light"), QStringLiteral("dark"), QStringLiteral("contrast")};
    QString result = QStringLiteral("%1x%2-%3-%4")
                         .arg(QString::number(look.size.width()), QString::number(look.size.height()),
                             modes[static_cast<std::size_t>(look.mode)], QString::number(look.textPercent));
    if (look.turned)
        result += QStringLiteral("-turned");
    if (look.direction == Qt::RightToLeft)
        result += QStringLiteral("-rtl");
    return result;
}

std::vector<Look> everyLook()
{
    std::vector<Look> looks;
    for (const QSize size : {QSize(320, 640), QSize(360, 740), QSize(1280, 800)}) {
        for (const int percent : {100, 200}) {
            for (const int mode : {0, 1, 2}) {
                for (const auto direction : {Qt::LeftToRight, Qt::RightToLeft})
                    looks.push_back({size, mode, percent, direction});
            }
        }
    }
    return looks;
}

Stage::Stage(const QString &page, const QVariantMap &properties)
{
    QQmlEngine *engine = m_view.engine();
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
    m_view.setResizeMode(QQuickView::SizeRootObjectToView);
    m_view.setInitialProperties(properties);
    m_view.setSource(QUrl(page.startsWith(QLatin1String("qrc:")) ? page : QStringLiteral("qrc:/morrow/tests/") + page));
    QQmlComponent asking(engine);
    asking.setData("import QtQml\nimport Morrow.Style\nQtObject { readonly property QtObject theme: Theme }", QUrl());
    const std::unique_ptr<QObject> asked(asking.create());
    m_theme = asked->property("theme").value<QObject *>();
    m_theme->setProperty("lessMotion", true); // nothing is seen half way
}

void Stage::show(const Look &look)
{
    QGuiApplication::setLayoutDirection(look.direction);
    m_theme->setProperty("mode", look.mode);
    m_theme->setProperty("textPercent", look.textPercent);
    if (look.turned != m_isTurned) // a page may turn itself
        m_theme->setProperty("turned", look.turned);
    m_isTurned = look.turned;
    m_view.resize(look.size);
    m_view.show();
    m_view.requestActivate();
    picture();
}

QImage Stage::picture()
{
    // A text that wraps changes the height of what it stands in, which moves what is below:
    // each round of laying out may ask for one more.
    // A list makes its rows beside the scrolled ones when there is time for it.
    const QQmlIncubationController *const making = m_view.engine()->incubationController();
    for (int round = 0; round < 8 || (making && making->incubatingObjectCount() > 0); ++round) {
        QCoreApplication::processEvents();
        m_view.grabWindow();
    }
    return m_view.grabWindow();
}

QVariant Stage::token(const char *name) const
{
    return m_theme->property(name);
}

QObject *Stage::find(const QString &objectName) const
{
    if (page()->objectName() == objectName)
        return page();
    // Delegates of a Repeater are children by place, not by ownership.
    for (QQuickItem *item : visibleItems(m_view.contentItem())) {
        if (item->objectName() == objectName)
            return item;
    }
    return page()->findChild<QObject *>(objectName);
}

QVariant Stage::of(const QString &objectName, const char *property) const
{
    const QObject *found = find(objectName);
    return found == nullptr ? QVariant() : found->property(property);
}

std::vector<QQuickItem *> visibleItems(QQuickItem *item)
{
    std::vector<QQuickItem *> found;
    if (!item->isVisible() || item->opacity() <= 0)
        return found;
    found.push_back(item);
    for (QQuickItem *child : item->childItems()) {
        const std::vector<QQuickItem *> below = visibleItems(child);
        found.insert(found.end(), below.begin(), below.end());
    }
    return found;
}

QRectF placeOf(const QQuickItem *item)
{
    return item->mapRectToScene({0, 0, item->width(), item->height()});
}

} // namespace morrow::test
