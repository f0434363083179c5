// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "core/store/small_disk.h"
#include "qml/geometry.h"
#include "qml/heard.h"
#include "qml/home/home_screens.h"

#include <QQuickItem>

namespace morrow::test {

/// Every screen of home, in every window, text size, mode and direction.
class tst_home_pages : public QObject
{
    Q_OBJECT

    static void addScreens()
    {
        QTest::addColumn<QString>("name");
        for (const QString &name : homeScreens())
            QTest::newRow(qPrintable(name)) << name;
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void nothingIsCutCoveredOrTooSmall_data() { addScreens(); }

    void nothingIsCutCoveredOrTooSmall()
    {
        QFETCH(QString, name);
        HomeScreen screen(name);
        QVERIFY(screen.stage().page() != nullptr);

        QCOMPARE(breachesInEveryLook(screen.stage()), QString());
    }

    void everythingThatActsHasANameAndAnAction_data() { addScreens(); }

    void everythingThatActsHasANameAndAnAction()
    {
        QFETCH(QString, name);
        HomeScreen screen(name);

        int acting = 0;
        QCOMPARE(unnamed(screen.stage().page(), acting), QStringList());
        QVERIFY(acting > 0);
        QVERIFY(!heardTexts(screen.stage().page()).contains(QString()));
    }

    void aScreenSaysOneClearThing_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("said");

        QTest::newRow("first run") << QStringLiteral(
            "first-run") << QStringLiteral("Your clinic gave you a file with your plan. Open it here, or drop it on this window.");
        QTest::newRow("a file that is none of ours")
            << QStringLiteral("first-run-refused")
            << QStringLiteral("a-letter-about-the-holiday-house-in-july.json was not opened. It is no file from a clinic.");
        QTest::newRow("a file in the way") << QStringLiteral("not-open")
                                           << QStringLiteral("The folder of the diary holds something else. It was left as it is.");
        QTest::newRow("no plan") << QStringLiteral("no-plan") << QStringLiteral("Open the file from your clinic on the page Visit.");
        QTest::newRow("a complaint without a plan") << QStringLiteral(
            "many-things") << QStringLiteral("There is no exercise plan yet. Open the file from your clinic on the page Visit.");
        QTest::newRow("skipped") << QStringLiteral("skipped") << QStringLiteral("Not today: too sore");
        QTest::newRow("after a sign") << QStringLiteral("waiting")
                                      << QStringLiteral("You wrote down a sign. Wait with the exercises until your clinic has answered.");
        QTest::newRow("stop") << QStringLiteral("stop") << QStringLiteral("This diary tells nobody. Please call.");
        QTest::newRow("demo") << QStringLiteral("demo") << QStringLiteral("An example, invented.");
    }

    void aScreenSaysOneClearThing()
    {
        QFETCH(QString, name);
        QFETCH(QString, said);
        HomeScreen screen(name);

        const QStringList heard = heardTexts(screen.stage().page());
        QVERIFY2(heard.contains(said), qPrintable(heard.join(QLatin1Char('\n'))));
    }

    void theHorizonSaysHowFarTheDayHasCome_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("said");
        QTest::newRow("nothing yet") << QStringLiteral("today") << QStringLiteral("0 of 6 sets");
        QTest::newRow("yesterday, nothing done") << QStringLiteral("all-missed") << QStringLiteral("0 of 1 set");
        QTest::newRow("all done") << QStringLiteral("all-done") << QStringLiteral("6 of 6 sets");
    }

    void theHorizonSaysHowFarTheDayHasCome()
    {
        QFETCH(QString, name);
        QFETCH(QString, said);
        HomeScreen screen(name);

        const auto graphics = withRole(walk(screen.stage().page()), QAccessible::Graphic);
        QCOMPARE(graphics.size(), std::size_t(1));
        QCOMPARE(graphics.front()->text(QAccessible::Name), said);
    }

    void nobodyReadsStandsWhereSomethingIsEntered_data()
    {
        QTest::addColumn<QString>("name");
        for (const char *name : {"today", "visit", "signs"})
            QTest::newRow(name) << QString::fromLatin1(name);
    }

    void nobodyReadsStandsWhereSomethingIsEntered()
    {
        QFETCH(QString, name);
        HomeScreen screen(name);

        QCOMPARE(
            heardTexts(screen.stage().page()).count(QStringLiteral("This diary records what you enter. Nobody reads it between visits.")),
            1);
    }

    void afterASignTheCheckStaysAndTheSetsAreFolded()
    {
        HomeScreen before(QStringLiteral("today"));
        HomeScreen after(QStringLiteral("waiting"));
        const auto boxes = [](HomeScreen &screen) { return withRole(walk(screen.stage().page()), QAccessible::CheckBox).size(); };
        const auto scale = [](HomeScreen &screen) { return withRole(walk(screen.stage().page()), QAccessible::RadioButton).size(); };

        QCOMPARE(scale(after), scale(before));
        QVERIFY(boxes(after) < boxes(before));
        QVERIFY(heardTexts(before.stage().page()).contains(QStringLiteral("heel raise on one leg")));
        QVERIFY(!heardTexts(after.stage().page()).contains(QStringLiteral("heel raise on one leg")));
    }

    void leftAndRightStandOnOneCard()
    {
        HomeScreen screen(QStringLiteral("long-names"));

        const QStringList heard = heardTexts(screen.stage().page());
        QCOMPARE(heard.count(QStringLiteral("Heel raise on one leg over a rolled-up towel")), 1);
        QCOMPARE(heard.count(QStringLiteral("left")), 1);
        QCOMPARE(heard.count(QStringLiteral("right")), 1);
    }

    void theKeyboardAloneGoesBetweenThePages()
    {
        HomeScreen screen(QStringLiteral("today"));
        const auto press = [&screen](Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
            QTest::keyClick(&screen.stage().window(), key, with);
            screen.stage().picture();
            return screen.stage().page()->property("view").toInt();
        };

        QCOMPARE(press(Qt::Key_2, Qt::AltModifier), 1);
        QCOMPARE(press(Qt::Key_3, Qt::AltModifier), 2);
        QCOMPARE(press(Qt::Key_Escape), 0);
    }

    void aTapKeepsTheKeyboardWhereItIs()
    {
        HomeScreen screen(QStringLiteral("today"));
        Stage &stage = screen.stage();
        QQuickItem *box = nullptr;
        for (QQuickItem *item : visibleItems(stage.page())) {
            if (item->inherits("QQuickAbstractButton") && item->property("spoken").toString().contains(QStringLiteral("set 2 of")))
                box = item;
        }
        QVERIFY(box != nullptr);
        box->forceActiveFocus(Qt::TabFocusReason);

        QTest::keyClick(&stage.window(), Qt::Key_Space);
        stage.picture();

        QVERIFY(stage.window().activeFocusItem() == box); // QCOMPARE would print it, and Qt 6.4 crashes on that
        QVERIFY(box->property("done").toBool());
    }

    void aHomeThatIsOpenElsewhereSaysSo()
    {
        Stay first;
        first.begin(bakerBefore(kMorning));
        first.open();
        Stay second(kMorning, first.folder());
        second.open();

        QCOMPARE(second.session().state(), HomeSession::CannotOpen);
        QCOMPARE(second.session().problem(), QStringLiteral("The diary is open in another window. Close that one and try again."));
    }

    void aDiaryThatCannotBeWrittenIsShownAndSaysSo()
    {
        SmallDisk disk(8 << 20);
        if (!disk.isMounted())
            QSKIP("needs a mount of its own, which only root gets");
        {
            Stay before(kMorning, disk.path() / "home");
            before.begin(bakerBefore(kMorning));
        }
        QVERIFY(disk.setReadOnly(true));
        Stay stay(kMorning, disk.path() / "home");
        stay.open();

        const QString said = stay.session().problem() + stay.session().news();
        const auto state = stay.session().state();
        auto complaints = stay.session().today()->complaints();
        QString failure;
        if (complaints.count(&complaints) > 0) {
            stay.session().today()->check(complaints.at(&complaints, 0), 3);
            failure = complaints.at(&complaints, 0)->check()->failure();
        }
        QVERIFY(disk.setReadOnly(false));
        QVERIFY2(said.contains(QStringLiteral("cannot be written")), qPrintable(said));
        QCOMPARE(state, HomeSession::Open);
        QVERIFY2(failure.contains(QStringLiteral("cannot be written")), qPrintable(failure));
    }

    void aTapOnAFullDiskSaysThatItIsNotKept()
    {
        SmallDisk disk(4 << 20);
        if (!disk.isMounted())
            QSKIP("needs a mount of its own, which only root gets");
        Stay stay(kMorning, disk.path() / "home");
        stay.begin(bakerBefore(kMorning));
        stay.open();
        auto complaints = stay.session().today()->complaints();
        TodayComplaint &complaint = *complaints.at(&complaints, 0);
        disk.fill();

        // The journal has some room of its own, so not the first tap must fail; the first that does says so.
        int kept = 0;
        while (complaint.check()->failure().isEmpty() && kept < 2000) {
            stay.session().today()->check(&complaint, kept % 11);
            ++kept;
        }
        QVERIFY2(complaint.check()->failure().contains(QStringLiteral("full")), qPrintable(complaint.check()->failure()));

        disk.emptyFiller();
        stay.session().today()->check(&complaint, 7);
        QCOMPARE(complaint.check()->failure(), QString());
        QCOMPARE(complaint.check()->value(), 7);
    }
};

MORROW_SUITE(tst_home_pages)

} // namespace morrow::test

#include "tst_home_pages.moc"
