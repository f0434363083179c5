// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/stage.h"

#include <QColor>

#include <algorithm>
#include <cmath>

namespace morrow::test {

namespace {

/// Relative luminance and contrast ratio as WCAG 2.2 defines them
/// (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance, #dfn-contrast-ratio).
double luminance(const QColor &colour)
{
    const auto linear = [](double channel) { return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4); };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
}

double contrast(const QColor &one, const QColor &other)
{
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

constexpr double kText = 7;
constexpr double kLine = 4.5;
constexpr double kEdge = 3;

struct Pair
{
    const char *front;
    const char *back;
    double least;
};

constexpr Pair kPairs[] = {
    {"ink", "paper", kText},
    {"ink", "sheet", kText},
    {"ink", "accentSoft", kText},
    {"inkSoft", "paper", 8}, // the table promises more than the floor
    {"inkSoft", "sheet", 8},
    {"accent", "paper", kText}, // words that are a button
    {"accent", "sheet", kText},
    {"inkOnAccent", "accent", kText},
    {"visit", "sheet", kText},
    {"visit", "paper", kLine},
    {"loadEdge", "sheet", kLine},
    {"accent", "accentSoft", kEdge}, // the stroke of a pen in a box that is done
    {"loadEdge", "load", kEdge},
    {"line", "paper", kEdge},
    {"line", "sheet", kEdge},
};

} // namespace

/// Every pair of colours that meet keeps the contrast that the table of the look promises.
class tst_contrast : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theFormulaGivesThePublishedExtremes()
    {
        QCOMPARE(contrast(Qt::white, Qt::black), 21.0); // "contrast ratios can range from 1 to 21"
        QCOMPARE(contrast(Qt::white, Qt::white), 1.0);
    }

    void everyPairKeepsItsContrast_data()
    {
        QTest::addColumn<int>("mode");
        QTest::addColumn<bool>("turned");

        for (const int mode : {0, 1, 2}) {
            for (const bool turned : {false, true})
                QTest::newRow(qPrintable(name({.mode = mode, .turned = turned}))) << mode << turned;
        }
    }

    void everyPairKeepsItsContrast()
    {
        QFETCH(int, mode);
        QFETCH(bool, turned);
        Stage stage(QStringLiteral("Gallery.qml"));
        stage.show({.mode = mode, .turned = turned});

        for (const auto &[front, back, least] : kPairs) {
            const double found = contrast(stage.token(front).value<QColor>(), stage.token(back).value<QColor>());
            QVERIFY2(found >= least,
                qPrintable(QStringLiteral("%1 on %2 is %3, not %4").arg(QLatin1String(front), QLatin1String(back)).arg(found).arg(least)));
        }
    }

    void aStopPageIsInTheOtherColumn()
    {
        Stage stage(QStringLiteral("Gallery.qml"));
        stage.show({.mode = 1});
        const QVariant dark = stage.token("paper");

        stage.show({.mode = 0, .turned = true});

        QCOMPARE(stage.token("paper"), dark);
    }

    void textSizeStaysBetween100And200Percent_data()
    {
        QTest::addColumn<int>("percent");
        QTest::addColumn<int>("bodySize");

        QTest::newRow("half") << 50 << 17;
        QTest::newRow("as it is") << 100 << 17;
        QTest::newRow("half as much again") << 150 << 26;
        QTest::newRow("double") << 200 << 34;
        QTest::newRow("four times") << 400 << 34;
    }

    void textSizeStaysBetween100And200Percent()
    {
        QFETCH(int, percent);
        QFETCH(int, bodySize);
        Stage stage(QStringLiteral("Gallery.qml"));

        stage.show({.textPercent = percent});

        QCOMPARE(stage.token("bodySize").toInt(), bodySize);
    }

    void nothingMovesWithLessMotion()
    {
        Stage stage(QStringLiteral("Gallery.qml"));

        QCOMPARE(stage.token("motion").toInt(), 0); // a stage asks for less motion
    }
};

MORROW_SUITE(tst_contrast)

} // namespace morrow::test

#include "tst_contrast.moc"
