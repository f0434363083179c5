// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/geometry.h"

#include <algorithm>
#include <iterator>

namespace morrow::test {

namespace {

bool isAround(const QQuickItem *outer, const QQuickItem *item)
{
    return outer == item || outer->isAncestorOf(item);
}

/// Where the letters of a text stand, which may be less than the place it was given.
QRectF lettersOf(const QQuickItem *text)
{
    const double width = text->property("contentWidth").toDouble();
    const double height = text->property("contentHeight").toDouble();
    const int across = text->property("effectiveHorizontalAlignment").toInt();
    const int along = text->property("verticalAlignment").toInt();
    const double left = across == Qt::AlignRight ? text->width() - width : across == Qt::AlignHCenter ? (text->width() - width) / 2 : 0;
    const double top = along == Qt::AlignVCenter ? (text->height() - height) / 2 : 0;
    return text->mapRectToScene({left, top, width, height});
}

/// Whether it stands in a row of a list that is not, or not all, inside the list.
bool isScrolledAway(const QQuickItem *item)
{
    const QQuickItem *row = item;
    for (const QQuickItem *around = item->parentItem(); around != nullptr; around = around->parentItem()) {
        if (around->inherits("QQuickListView"))
            return !placeOf(around).contains(placeOf(row));
        if (around->parentItem() == nullptr || !around->parentItem()->inherits("QQuickListView"))
            row = around;
    }
    return false;
}

const QQuickItem *scrollOf(const QQuickItem *item)
{
    const QQuickItem *around = item->parentItem();
    while (around != nullptr && !around->inherits("QQuickFlickable"))
        around = around->parentItem();
    return around;
}

/// Whether \a item lies in a part of the page that scrolls without \a other, and not wholly, with
/// a gap around it, in what is seen of that part: then where they stand says nothing.
bool scrollsUnder(const QQuickItem *item, const QQuickItem *other)
{
    constexpr double kGap = 8;
    const QQuickItem *const scroll = scrollOf(item);
    return scroll != nullptr && !scroll->isAncestorOf(other) && !placeOf(scroll).adjusted(0, kGap, 0, -kGap).contains(placeOf(item));
}

bool standStill(const QQuickItem *item, const QQuickItem *other)
{
    return !scrollsUnder(item, other) && !scrollsUnder(other, item);
}

} // namespace

bool isText(const QQuickItem *item)
{
    return item->inherits("QQuickText") && !item->property("text").toString().isEmpty();
}

bool isPressable(const QQuickItem *item)
{
    return item->inherits("QQuickAbstractButton") || item->inherits("QQuickTextField");
}

QString told(const QQuickItem *item)
{
    const QRectF place = placeOf(item);
    return QStringLiteral("%1 \"%2\" at %3,%4 %5x%6")
        .arg(QString::fromLatin1(item->metaObject()->className()), item->property("text").toString())
        .arg(place.x())
        .arg(place.y())
        .arg(place.width())
        .arg(place.height());
}

std::vector<QQuickItem *> visibleThat(QQuickItem *item, bool (*are)(const QQuickItem *))
{
    std::vector<QQuickItem *> found = visibleItems(item);
    found.erase(std::remove_if(found.begin(), found.end(), [are](const QQuickItem *each) { return !are(each); }), found.end());
    return found;
}

QStringList breaches(Stage &stage, QQuickItem *from)
{
    constexpr double kRounding = 0.51;
    constexpr double kTarget = 48;
    constexpr double kGap = 8;
    QStringList found;
    const double width = stage.window().width();

    std::vector<QQuickItem *> pressables = visibleThat(from, isPressable);
    std::vector<QQuickItem *> texts = visibleThat(from, isText);
    std::erase_if(pressables, isScrolledAway);
    std::erase_if(texts, isScrolledAway);
    if (pressables.empty() || texts.empty())
        found << QStringLiteral("nothing to be seen");
    // Where each of them stands is asked once: every pair is looked at.
    std::vector<QRectF> places;
    std::vector<QRectF> lettersOfAll;
    std::transform(pressables.begin(), pressables.end(), std::back_inserter(places), placeOf);
    std::transform(texts.begin(), texts.end(), std::back_inserter(lettersOfAll), lettersOf);
    for (std::size_t i = 0; i < pressables.size(); ++i) {
        const QQuickItem *const item = pressables[i];
        const QRectF place = places[i];
        if (place.width() < kTarget || place.height() < kTarget)
            found << told(item) + QStringLiteral(" is under 48");
        if (place.left() < 0 || place.right() > width)
            found << told(item) + QStringLiteral(" is off the window");
        const QRectF near = place.adjusted(-kGap + kRounding, -kGap + kRounding, kGap - kRounding, kGap - kRounding);
        for (std::size_t j = 0; j < pressables.size(); ++j) {
            if (i != j && near.intersects(places[j]) && standStill(item, pressables[j]))
                found << told(item) + QStringLiteral(" is less than 8 from ") + told(pressables[j]);
        }
    }
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const QQuickItem *const text = texts[i];
        const QRectF letters = lettersOfAll[i];
        if (text->property("truncated").toBool() || text->property("contentWidth").toDouble() > text->width() + kRounding
            || text->property("contentHeight").toDouble() > text->height() + kRounding)
            found << told(text) + QStringLiteral(" is cut");
        if (letters.left() < 0 || letters.right() > width)
            found << told(text) + QStringLiteral(" is off the window");
        for (std::size_t j = 0; j < pressables.size(); ++j) {
            const QQuickItem *const item = pressables[j];
            if (item->isAncestorOf(text) && !places[j].adjusted(-kRounding, -kRounding, kRounding, kRounding).contains(letters))
                found << told(text) + QStringLiteral(" leaves ") + told(item);
            if (places[j].intersects(letters) && !isAround(item, text) && standStill(item, text))
                found << told(text) + QStringLiteral(" lies under ") + told(item);
        }
        for (std::size_t j = 0; j < texts.size(); ++j) {
            const QRectF both = letters.intersected(lettersOfAll[j]);
            if (i != j && both.width() > kRounding && both.height() > kRounding && standStill(texts[j], text))
                found << told(text) + QStringLiteral(" overlaps ") + told(texts[j]);
        }
    }
    return found;
}

QString breachesInEveryLook(Stage &stage)
{
    QStringList found;
    for (const Look &look : everyLook()) {
        stage.show(look);
        for (const QString &breach : breaches(stage, stage.page()))
            found << name(look) + QStringLiteral(": ") + breach;
    }
    return found.mid(0, 12).join(QLatin1Char('\n'));
}

} // namespace morrow::test
