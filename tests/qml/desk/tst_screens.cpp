// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "core/store/small_disk.h"
#include "qml/desk/screens.h"
#include "qml/geometry.h"
#include "qml/heard.h"

#include <memory>

namespace morrow::test {

/// Every screen of the desk, in every window, text size, mode and direction.
class tst_screens : public QObject
{
    Q_OBJECT

    static void addScreens()
    {
        QTest::addColumn<QString>("name");
        for (const QString &name : deskScreens())
            QTest::newRow(qPrintable(name)) << name;
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void nothingIsCutCoveredOrTooSmall_data() { addScreens(); }

    void nothingIsCutCoveredOrTooSmall()
    {
        QFETCH(QString, name);
        DeskScreen screen(name);
        QVERIFY(screen.stage().page() != nullptr);

        QCOMPARE(breachesInEveryLook(screen.stage()), QString());
    }

    void everythingThatActsHasANameAndAnAction_data() { addScreens(); }

    void everythingThatActsHasANameAndAnAction()
    {
        QFETCH(QString, name);
        DeskScreen screen(name);

        int acting = 0;
        QCOMPARE(unnamed(screen.stage().page(), acting), QStringList());
        QVERIFY(acting > 0);
        QVERIFY(!heardTexts(screen.stage().page()).contains(QString()));
    }

    void aScreenSaysOneClearThing_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("said");

        QTest::newRow("nobody yet") << QStringLiteral("first-run")
                                    << QStringLiteral("Drop the file that somebody handed over on this window, or choose it. Everything "
                                                      "stays on this computer.");
        QTest::newRow("a folder of other things")
            << QStringLiteral("not-open") << QStringLiteral("This folder holds other things, so it was left as it is.");
        QTest::newRow("no plan") << QStringLiteral("no-plan")
                                 << QStringLiteral("No plan has begun for this complaint, so there is nothing to count.");
        QTest::newRow("a file that is none of ours")
            << QStringLiteral("files") << QStringLiteral("Not taken in. It is no file of a diary, a plan or a visit.");
    }

    void aScreenSaysOneClearThing()
    {
        QFETCH(QString, name);
        QFETCH(QString, said);
        DeskScreen screen(name);

        QCOMPARE(heardTexts(screen.stage().page()).count(said), 1);
    }

    void aChartIsOneGraphicWithItsSentence()
    {
        DeskScreen screen(QStringLiteral("review"));

        QAccessibleInterface *const chart = heard(screen.stage(), QStringLiteral("chart"));
        QCOMPARE(chart->role(), QAccessible::Graphic);
        QVERIFY(chart->text(QAccessible::Name).startsWith(QStringLiteral("16 February 2026 to 26 April 2026, pain entered on 59 days")));
        int named = 0;
        for (QAccessibleInterface *node : walk(screen.stage().find(QStringLiteral("chart"))))
            named += node->text(QAccessible::Name).isEmpty() ? 0 : 1;
        QCOMPARE(named, 1);
    }

    void theTableSaysEveryDayThatTheChartDraws()
    {
        DeskScreen screen(QStringLiteral("table"));

        QStringList rows;
        for (QAccessibleInterface *node : withRole(walk(screen.stage().find(QStringLiteral("table"))), QAccessible::Button))
            rows << node->text(QAccessible::Name);
        QCOMPARE(rows.filter(QStringLiteral("pain ")).size(), 59);
        QVERIFY(rows.contains(QStringLiteral("11 April 2026: pain 2, from paper; confirmation cakes, stood from 4 till 17, clogs"))
            || rows.filter(QStringLiteral("confirmation cakes")).size() == 1);
    }

    void aSentenceOpensTheEntriesBehindItsFigures()
    {
        DeskScreen screen(QStringLiteral("figures"));

        QVERIFY(heardTexts(screen.stage().page()).contains(screen.sitting().session().review()->figuresOf()));
        QVERIFY(screen.sitting().session().review()->figures()->count() > 0);
    }

    void aRowOfTheTableOpensItsEntriesAndTheWayBackLeadsToIt()
    {
        DeskScreen screen(QStringLiteral("table"));
        Stage &stage = screen.stage();
        auto *const row = qobject_cast<QQuickItem *>(stage.find(QStringLiteral("day 1")));
        QCOMPARE(heard(stage, QStringLiteral("day 1"))->text(QAccessible::Description), QStringLiteral("Shows the entries"));
        row->forceActiveFocus(Qt::TabFocusReason);

        QTest::keyClick(&stage.window(), Qt::Key_Space);
        stage.picture();
        QCOMPARE(stage.page()->property("view").toInt(), 3);
        QVERIFY(heardTexts(stage.page()).contains(QStringLiteral("16 February 2026: pain 6, from paper; 5,848 of 9,792 kg × reps")));
        QStringList opened;
        for (const WordRow &figure : screen.sitting().session().review()->figures()->all())
            opened << QStringList{figure.lead, figure.text, figure.below}.join(QStringLiteral(" | "));
        QCOMPARE(opened,
            (QStringList{QStringLiteral("pain 6, from paper |  | 1 entry"),
                QStringLiteral("5,848 kg × reps done | 16 February 2026 to 22 February 2026 | 8 entries"),
                QStringLiteral("9,792 kg × reps prescribed | 16 February 2026 to 22 February 2026 | No entry stands behind it.")}));

        QTest::keyClick(&stage.window(), Qt::Key_Escape);
        stage.picture();
        QVERIFY(stage.window().activeFocusItem() == row);
    }

    void theNumberOfTheVisitOpensTheVisits()
    {
        DeskScreen screen(QStringLiteral("review"));
        ReviewModel &review = *screen.sitting().session().review();

        QMetaObject::invokeMethod(screen.stage().find(QStringLiteral("about")), "press");

        QCOMPARE(screen.stage().page()->property("view").toInt(), 3);
        QCOMPARE(review.figures()->count(), 1);
        const WordRow &opened = review.figures()->all().front();
        QCOMPARE(opened.lead, review.visits());
        QCOMPARE(opened.below, QStringLiteral("5 entries")); // rows of visits.csv
        for (const WordRow &entry : opened.rows->all())
            QVERIFY2(entry.text.startsWith(QStringLiteral("visit")), qPrintable(entry.text));
    }

    void rightToLeftThePeopleStandOnTheRight()
    {
        DeskScreen screen(QStringLiteral("review"));
        const auto left = [&screen](const char *named) {
            return placeOf(qobject_cast<QQuickItem *>(screen.stage().find(QLatin1String(named)))).left();
        };

        screen.stage().show({.size = {1280, 800}});
        QVERIFY(left("person 1") < left("chart"));

        screen.stage().show({.size = {1280, 800}, .direction = Qt::RightToLeft});
        QVERIFY(left("person 1") > left("chart"));
    }

    void theKeyboardAloneGoesFromTheListToFiguresAndBack()
    {
        DeskScreen screen(QStringLiteral("caseload"));
        Stage &stage = screen.stage();
        const auto press = [&stage](Qt::Key key) {
            QTest::keyClick(&stage.window(), key);
            stage.picture();
        };
        qobject_cast<QQuickItem *>(stage.find(QStringLiteral("person 1")))->forceActiveFocus(Qt::TabFocusReason);

        press(Qt::Key_Down);
        QCOMPARE(stage.window().activeFocusItem()->objectName(), QStringLiteral("person 2"));
        press(Qt::Key_Return);
        QVERIFY(stage.find(QStringLiteral("chart")) != nullptr);
        for (int steps = 0; steps < 8 && stage.window().activeFocusItem()->objectName() != QLatin1String("sentence 1"); ++steps)
            press(Qt::Key_Tab);
        QCOMPARE(stage.window().activeFocusItem()->objectName(), QStringLiteral("sentence 1"));
        press(Qt::Key_Space);
        QCOMPARE(stage.page()->property("view").toInt(), 3);
        press(Qt::Key_Escape);
        QCOMPARE(stage.page()->property("view").toInt(), 2);
        press(Qt::Key_Escape);
        QCOMPARE(stage.page()->property("view").toInt(), 0);
    }

    void onlyRowsThatAreSeenAreMade()
    {
        Sitting sitting;
        sitting.open();
        for (int number = 0; number < 5000; ++number)
            sitting.session().caseload()->put({.person = std::to_string(number), .known = {.label = "Person " + std::to_string(number)}});
        Stage stage(QStringLiteral("qrc:/qt/qml/Morrow/Desk/DeskPage.qml"), sitting.properties());

        stage.show({.size = {1280, 800}});

        const auto *const list = qobject_cast<QQuickItem *>(stage.find(QStringLiteral("caseload")));
        QCOMPARE(list->property("count").toInt(), 5000);
        const auto *const content = list->property("contentItem").value<QQuickItem *>();
        QVERIFY2(content->childItems().size() < 100, qPrintable(QString::number(content->childItems().size())));
    }

    void aDeskOnAFullDiskSaysSo()
    {
        SmallDisk disk(4 << 20);
        if (!disk.isMounted())
            QSKIP("needs a mount of its own, which only root gets");
        Sitting sitting(disk.path() / "desk");
        sitting.open();
        QCOMPARE(sitting.session().problem(), QString());
        disk.fill();

        sitting.takeIn({sitting.handOver("summary.json", "ref-new", bakersDiary())});
        QVERIFY(!sitting.session().takeIn()->takeAsNew(0, QStringLiteral("Ek, Tomas"), {}, 0));

        QCOMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Failed));
        QVERIFY2(
            sitting.ofFile(0, "failure").toString().contains(QStringLiteral("full")), qPrintable(sitting.ofFile(0, "failure").toString()));
        QCOMPARE(sitting.session().caseload()->persons(), 0);

        disk.emptyFiller();
        sitting.session().takeIn()->retry(0);
        QCOMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Taken));
    }

    void aDeskThatCannotBeWrittenSaysSo()
    {
        SmallDisk disk(8 << 20);
        if (!disk.isMounted())
            QSKIP("needs a mount of its own, which only root gets");
        {
            Sitting before(disk.path() / "desk");
            before.addPerson("ref-ek", {"Ek, Tomas", "", {}}, bakersDiary());
        }
        QVERIFY(disk.setReadOnly(true));
        Sitting sitting(disk.path() / "desk");
        sitting.open();

        const QString said = sitting.session().problem() + sitting.session().news();
        QVERIFY(disk.setReadOnly(false));
        QVERIFY2(said.contains(QStringLiteral("cannot be written")), qPrintable(said));
    }

    void aDeskThatIsOpenElsewhereSaysSo()
    {
        Sitting first;
        first.open();
        Sitting second(first.folder());
        second.open();

        QCOMPARE(second.session().problem(), QStringLiteral("Another program has this desk open. Close it and try again."));
    }
};

MORROW_SUITE(tst_screens)

} // namespace morrow::test

#include "tst_screens.moc"
