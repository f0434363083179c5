// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/geometry.h"

#include <QGlyphRun>
#include <QImage>
#include <QQuickItem>
#include <QRawFont>
#include <QTextLayout>

namespace morrow::test {

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
