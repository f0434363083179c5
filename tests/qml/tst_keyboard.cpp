// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/stage.h"

#include <QQuickItem>

#include <memory>

namespace morrow::test {

/// Whoever has no mouse reaches every control, sees where they are, and can do all of it.
class tst_keyboard : public QObject
{
    Q_OBJECT

    std::unique_ptr<Stage> m_stage;

    QVariant page(const char *property) const { return m_stage->of(QStringLiteral("page"), property); }
    void key(Qt::Key key, Qt::KeyboardModifiers with = {}) { QTest::keyClick(&m_stage->window(), key, with); }
    QQuickItem *focused() const { return m_stage->window().activeFocusItem(); }

    QQuickItem *item(const char *named) const { return qobject_cast<QQuickItem *>(m_stage->find(QLatin1String(named))); }
    void focus(const char *named) { item(named)->forceActiveFocus(Qt::TabFocusReason); }

    /// The scale's box for \a answer.
    QQuickItem *box(int answer) const
    {
        for (QQuickItem *each : visibleItems(item("pain"))) {
            if (each->property("text").toString() == QString::number(answer) && each->inherits("QQuickAbstractButton"))
                return each;
        }
        return nullptr;
    }

    QQuickItem *input() const
    {
        for (QQuickItem *each : visibleItems(item("load"))) {
            if (each->inherits("QQuickTextField"))
                return each;
        }
        return nullptr;
    }

    void type(const QString &text)
    {
        input()->forceActiveFocus(Qt::TabFocusReason);
        key(Qt::Key_A, Qt::ControlModifier);
        key(Qt::Key_Delete);
        for (const QChar letter : text)
            QTest::keyClick(&m_stage->window(), letter.toLatin1());
    }

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_stage = std::make_unique<Stage>(QStringLiteral("Gallery.qml"));
        m_stage->show({});
        QVERIFY(QTest::qWaitForWindowActive(&m_stage->window()));
    }

    void tabReachesEveryControlOnceAndShowsIt()
    {
        QList<QQuickItem *> reached;
        for (int press = 0; press < 100; ++press) {
            key(Qt::Key_Tab);
            QQuickItem *now = focused();
            if (reached.contains(now))
                break;
            reached << now;
            m_stage->picture();
            QVERIFY2(now->property("visualFocus").toBool() || now->inherits("QQuickTextField"), now->metaObject()->className());
            const QRectF place = placeOf(now);
            QVERIFY2(place.top() >= 0 && place.bottom() <= m_stage->window().height(),
                qPrintable(now->property("text").toString() + QStringLiteral(" has the keyboard out of sight")));
        }
        // One box of the scale, can't say, six sets, all as planned, less, the number, more, four rows, two buttons.
        QCOMPARE(reached.size(), 1 + 1 + 6 + 1 + 3 + 4 + 2);
    }

    void arrowsWalkTheScaleWithoutAnswering()
    {
        box(3)->forceActiveFocus(Qt::TabFocusReason);

        key(Qt::Key_Right);

        QCOMPARE(focused(), box(4));
        QCOMPARE(page("pain").toInt(), 3);
        key(Qt::Key_Space);
        QCOMPARE(page("pain").toInt(), 4);
    }

    void arrowsStayOnTheScale()
    {
        box(3)->forceActiveFocus(Qt::TabFocusReason);

        key(Qt::Key_Home);
        key(Qt::Key_Left);
        QCOMPARE(focused(), box(0));
        key(Qt::Key_End);
        key(Qt::Key_Right);
        QCOMPARE(focused(), box(10));
        key(Qt::Key_Up);
        QCOMPARE(focused(), box(4)); // the box above it in two rows of six
    }

    void arrowsOfAMirroredScaleFollowTheEye()
    {
        m_stage->show({.direction = Qt::RightToLeft});
        box(3)->forceActiveFocus(Qt::TabFocusReason);

        key(Qt::Key_Left);

        QCOMPARE(focused(), box(4));
    }

    void enterIsAsGoodAsSpace()
    {
        focus("main");

        key(Qt::Key_Return);
        key(Qt::Key_Enter);
        key(Qt::Key_Space);

        QCOMPARE(page("pressed").toInt(), 3);
    }

    void spaceTicksASetAndTakesTheTickBack()
    {
        focus("set 3");

        key(Qt::Key_Space);
        QCOMPARE(page("setsDone").toInt(), 3);
        key(Qt::Key_Space);
        QCOMPARE(page("setsDone").toInt(), 2);
    }

    void theRingShowsForKeysOnly()
    {
        QTest::mouseClick(&m_stage->window(), Qt::LeftButton, {}, placeOf(item("set 3")).center().toPoint());
        QCOMPARE(page("setsDone").toInt(), 3);
        QVERIFY(!item("set 3")->property("visualFocus").toBool());

        focus("set 4");
        QVERIFY(item("set 4")->property("visualFocus").toBool());
    }

    void aPressIsTakenBackByLeavingBeforeRelease()
    {
        const QPoint place = placeOf(item("set 3")).center().toPoint();
        QTest::mousePress(&m_stage->window(), Qt::LeftButton, {}, place);
        QCOMPARE(page("setsDone").toInt(), 2);
        QTest::mouseMove(&m_stage->window(), QPoint(5, 5));
        QTest::mouseRelease(&m_stage->window(), Qt::LeftButton, {}, QPoint(5, 5));

        QCOMPARE(page("setsDone").toInt(), 2);
    }

    void aTypedNumberIsToldInThousandths_data()
    {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<int>("told");

        QTest::newRow("whole") << QStringLiteral("12") << 12000;
        QTest::newRow("point") << QStringLiteral("2.75") << 2750;
        QTest::newRow("comma") << QStringLiteral("0,125") << 125;
        QTest::newRow("the greatest") << QStringLiteral("40") << 40000;
        QTest::newRow("over the greatest") << QStringLiteral("40.001") << 2500;
        QTest::newRow("four places") << QStringLiteral("1.2345") << 2500;
        QTest::newRow("two points") << QStringLiteral("1.2.3") << 2500;
        QTest::newRow("no number") << QStringLiteral("-1") << 2500;
        QTest::newRow("nothing") << QString() << -1;
    }

    void aTypedNumberIsToldInThousandths()
    {
        QFETCH(QString, typed);
        QFETCH(int, told);

        type(typed);
        key(Qt::Key_Return);

        QCOMPARE(page("load").toInt(), told);
    }

    void aNumberOutsideItsLimitsStaysAndTheLimitsAreSaid()
    {
        type(QStringLiteral("400"));
        key(Qt::Key_Return);

        QCOMPARE(input()->property("text").toString(), QStringLiteral("400"));
        QVERIFY(!m_stage->of(QStringLiteral("load"), "acceptable").toBool());
    }

    void arrowsStepANumberWithinItsLimits()
    {
        type(QStringLiteral("39.8"));
        key(Qt::Key_Return);

        key(Qt::Key_Up);
        QCOMPARE(page("load").toInt(), 40000);
        key(Qt::Key_Up);
        QCOMPARE(page("load").toInt(), 40000);
        key(Qt::Key_Down);
        QCOMPARE(page("load").toInt(), 39500);
        QCOMPARE(input()->property("text").toString(), QStringLiteral("39.5"));
    }

    void escapeLeavesEverythingAndGivesTheKeyboardBack()
    {
        focus("worded");
        key(Qt::Key_Space);
        m_stage->picture();
        QVERIFY(m_stage->of(QStringLiteral("dialog"), "opened").toBool());
        QCOMPARE(focused()->property("text").toString(), QStringLiteral("Leave it"));

        key(Qt::Key_Escape);

        QTRY_VERIFY(!m_stage->of(QStringLiteral("dialog"), "visible").toBool());
        QVERIFY(!page("erased").toBool());
        QCOMPARE(focused(), item("worded"));
    }

    void aDialogKeepsTheKeyboardUntilItIsAnswered()
    {
        focus("worded");
        key(Qt::Key_Space);
        m_stage->picture();

        key(Qt::Key_Tab);
        QCOMPARE(focused()->property("text").toString(), QStringLiteral("Erase everything"));
        QVERIFY(focused() != item("worded"));
        key(Qt::Key_Tab);
        QCOMPARE(focused()->property("text").toString(), QStringLiteral("Leave it"));
        key(Qt::Key_Tab);
        key(Qt::Key_Return);

        QTRY_VERIFY(!m_stage->of(QStringLiteral("dialog"), "visible").toBool());
        QVERIFY(page("erased").toBool());
    }
};

MORROW_SUITE(tst_keyboard)

} // namespace morrow::test

#include "tst_keyboard.moc"
