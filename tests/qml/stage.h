// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// A page in a window nobody sees, drawn the same on every machine: offscreen, by the
/// software renderer, in our fonts alone.

#include <QQuickView>
#include <QRectF>
#include <QString>

#include <vector>

namespace morrow::test {

/// Sets the environment that pictures depend on; to be called before the application is made.
void settleSurroundings();

/// How a page is shown.
struct Look
{
    QSize size = {360, 740};
    int mode = 0; ///< Light, Dark, HighContrast of Theme
    int textPercent = 100;
    Qt::LayoutDirection direction = Qt::LeftToRight;
    bool turned = false;
};

/// "360x740-dark-200-rtl": fit for the name of a test row or a file.
QString name(const Look &look);

/// The looks that every page is checked in: 320, 360 and 1280 wide, 100 and 200 %, three
/// modes, both directions.
std::vector<Look> everyLook();

class Stage
{
public:
    /// Loads \a page, a file of this folder or a whole address in the resources, with \a
    /// properties; \c page() is null if it could not be.
    explicit Stage(const QString &page, const QVariantMap &properties = {});

    /// Shows the page so, with nothing left to lay out.
    void show(const Look &look);

    /// What is to be seen, after everything that waits has been laid out.
    QImage picture();

    /// A property of Theme, a colour token say.
    QVariant token(const char *name) const;

    QQuickView &window() { return m_view; }
    QQuickItem *page() const { return m_view.rootObject(); }

    /// The item or object of that objectName, null if there is none.
    QObject *find(const QString &objectName) const;
    /// Its property of that name.
    QVariant of(const QString &objectName, const char *property) const;

private:
    QQuickView m_view;
    QObject *m_theme = nullptr;
    bool m_isTurned = false;
};

/// Everything to be seen below \a item, itself included, in the order of drawing.
std::vector<QQuickItem *> visibleItems(QQuickItem *item);

/// Where it stands in its window.
QRectF placeOf(const QQuickItem *item);

} // namespace morrow::test
