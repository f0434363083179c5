// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/stage.h"

#include <QGlyphRun>
#include <QImage>
#include <QQuickItem>
#include <QRawFont>
#include <QTextLayout>

#include <algorithm>

namespace morrow::test {

namespace {

bool isText(const QQuickItem *item)
{
    return item->inherits("QQuickText") && !item->property("text").toString().isEmpty();
}

bool isPressable(const QQuickItem *item)
{
    return item->inherits("QQuickAbstractButton") || item->inherits("QQuickTextField");
}

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

/// The breaches of the page, each in words; empty when there are none. Half a pixel is rounding.
QStringList breaches(Stage &stage, QQuickItem *from)
{
    constexpr double kRounding = 0.51;
    constexpr double kTarget = 48;
    constexpr double kGap = 8;
    QStringList found;
    const double width = stage.window().width();

    const std::vector<QQuickItem *> pressables = visibleThat(from, isPressable);
    const std::vector<QQuickItem *> texts = visibleThat(from, isText);
    if (pressables.empty() || texts.empty())
        found << QStringLiteral("nothing to be seen");
    for (const QQuickItem *item : pressables) {
        const QRectF place = placeOf(item);
        if (place.width() < kTarget || place.height() < kTarget)
            found << told(item) + QStringLiteral(" is under 48");
        if (place.left() < 0 || place.right() > width)
            found << told(item) + QStringLiteral(" is off the window");
        for (const QQuickItem *other : pressables) {
            const QRectF near = place.adjusted(-kGap + kRounding, -kGap + kRounding, kGap - kRounding, kGap - kRounding);
            if (other != item && near.intersects(placeOf(other)))
                found << told(item) + QStringLiteral(" is less than 8 from ") + told(other);
        }
    }
    for (const QQuickItem *text : texts) {
        const QRectF letters = lettersOf(text);
        if (text->property("truncated").toBool() || text->property("contentWidth").toDouble() > text->width() + kRounding
            || text->property("contentHeight").toDouble() > text->height() + kRounding)
            found << told(text) + QStringLiteral(" is cut");
        if (letters.left() < 0 || letters.right() > width)
            found << told(text) + QStringLiteral(" is off the window");
        for (const QQuickItem *item : pressables) {
            if (item->isAncestorOf(text) && !placeOf(item).adjusted(-kRounding, -kRounding, kRounding, kRounding).contains(letters))
                found << told(text) + QStringLiteral(" leaves ") + told(item);
            if (!isAround(item, text) && placeOf(item).intersects(letters))
                found << told(text) + QStringLiteral(" lies under ") + told(item);
        }
        for (const QQuickItem *other : texts) {
            const QRectF both = letters.intersected(lettersOf(other));
            if (other != text && both.width() > kRounding && both.height() > kRounding)
                found << told(text) + QStringLiteral(" overlaps ") + told(other);
        }
    }
    return found;
}

} // namespace

/// In every window, text size, mode and direction: nothing is cut, covered, off the window or too small to press.
class tst_geometry : public QObject
{
    Q_OBJECT

    static void addLooks()
    {
        QTest::addColumn<int>("look");
        const std::vector<Look> looks = everyLook();
        for (std::size_t number = 0; number < looks.size(); ++number)
            QTest::newRow(qPrintable(name(looks[number]))) << static_cast<int>(number);
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void nothingIsCutCoveredOrTooSmall_data() { addLooks(); }

    void nothingIsCutCoveredOrTooSmall()
    {
        QFETCH(int, look);
        Stage stage(QStringLiteral("Gallery.qml"));

        stage.show(everyLook()[static_cast<std::size_t>(look)]);

        QCOMPARE(breaches(stage, stage.page()).join(QLatin1Char('\n')), QString());
    }

    void aDialogFitsItsWindow_data() { addLooks(); }

    void aDialogFitsItsWindow()
    {
        QFETCH(int, look);
        Stage stage(QStringLiteral("Gallery.qml"));
        stage.show(everyLook()[static_cast<std::size_t>(look)]);

        QMetaObject::invokeMethod(stage.find(QStringLiteral("dialog")), "open");
        stage.picture();

        auto *words = stage.of(QStringLiteral("dialog"), "contentItem").value<QQuickItem *>();
        QVERIFY(words != nullptr);
        QCOMPARE(breaches(stage, words).join(QLatin1Char('\n')), QString());
        const QRectF place = placeOf(words->parentItem());
        QVERIFY2(QRectF(QPointF(), stage.window().size()).contains(place), "the dialog is higher or wider than its window");
    }

    void theScaleHasTwoRowsFrom360Wide()
    {
        Stage stage(QStringLiteral("Gallery.qml"));

        stage.show({.size = {360, 740}});
        QCOMPARE(stage.of(QStringLiteral("pain"), "rows").toInt(), 2);
        QCOMPARE(stage.of(QStringLiteral("pain"), "side").toInt(), 48);

        stage.show({.size = {420, 740}});
        QCOMPARE(stage.of(QStringLiteral("pain"), "rows").toInt(), 2);
        QVERIFY(stage.of(QStringLiteral("pain"), "side").toInt() >= 56);
    }

    void rightToLeftIsTheMirrorImage()
    {
        Stage stage(QStringLiteral("Gallery.qml"));
        const auto leftOf
            = [&stage](const char *named) { return placeOf(qobject_cast<QQuickItem *>(stage.find(QLatin1String(named)))).left(); };

        stage.show({});
        QVERIFY(leftOf("set 1") < leftOf("set 2"));

        stage.show({.direction = Qt::RightToLeft});
        QVERIFY(leftOf("set 1") > leftOf("set 2"));
    }

    void theSamePageIsTheSamePictureTwice()
    {
        Stage one(QStringLiteral("Gallery.qml"));
        one.show({});
        const QImage first = one.picture();
        Stage two(QStringLiteral("Gallery.qml"));
        two.show({});

        QCOMPARE(two.picture(), first);
    }

    void noLetterIsABoxForWantOfAFont()
    {
        Stage stage(QStringLiteral("Gallery.qml"));
        stage.show({});

        for (const QQuickItem *text : visibleThat(stage.page(), isText)) {
            QTextLayout layout(text->property("text").toString(), text->property("font").value<QFont>());
            layout.beginLayout();
            layout.createLine();
            layout.endLayout();
            for (const QGlyphRun &run : layout.glyphRuns()) {
                QVERIFY2(!run.glyphIndexes().contains(0), qPrintable(told(text)));
                QVERIFY2(run.rawFont().familyName().startsWith(QStringLiteral("Noto Sans")), qPrintable(run.rawFont().familyName()));
            }
        }
    }
};

MORROW_SUITE(tst_geometry)

} // namespace morrow::test

#include "tst_geometry.moc"
