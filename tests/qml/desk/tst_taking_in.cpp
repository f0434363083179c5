// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "qml/desk/screens.h"

#include <QDragEnterEvent>
#include <QMimeData>
#include <QQuickItem>

namespace morrow::test {

/// A file that comes to the desk is taken in, asked about or refused, and each can be taken back.
class tst_taking_in : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aFileDroppedOnTheWindowIsTakenIn()
    {
        DeskScreen screen(QStringLiteral("caseload"));
        Sitting &sitting = screen.sitting();
        QMimeData files;
        files.setUrls({QUrl::fromLocalFile(sitting.handOver("summary.json", "ref-ek", bakersDiary()))});
        QQuickView &window = screen.stage().window();

        QDragEnterEvent enter({100, 100}, Qt::CopyAction, &files, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&window, &enter);
        QVERIFY(enter.isAccepted());
        QDropEvent drop({100, 100}, Qt::CopyAction, &files, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&window, &drop);

        QTRY_COMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Taken));
        QCOMPARE(screen.stage().page()->property("view").toInt(), 1); // the files are shown
    }

    void aFileOfSomebodyKnownSaysWhatIsNew()
    {
        Sitting sitting;
        sitting.addPerson("ref-ek", {"Ek, Tomas", "2207", 1971}, bakersDiary(*CivilDay::parse("2026-04-20")));
        sitting.open();

        sitting.takeIn({sitting.handOver("summary.json", "ref-ek", bakersDiary())});
        QCOMPARE(sitting.ofFile(0, "words").toString(), QStringLiteral("36 new entries for Ek, Tomas. 260 known before."));

        sitting.takeIn({sitting.handOver("again.json", "ref-ek", bakersDiary())});
        QCOMPARE(sitting.ofFile(1, "words").toString(), QStringLiteral("Nothing new for Ek, Tomas: all of it was known."));
    }

    void aFileOfSomebodyUnknownWaitsUntilItIsSaidWhoseItIs()
    {
        Sitting sitting;
        sitting.open();

        sitting.takeIn({sitting.handOver("summary.json", "ref-new", bakersDiary())});

        QCOMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Asks));
        QCOMPARE(sitting.ofFile(0, "says").toString(),
            QStringLiteral(
                "It holds a diary of 296 entries, 12 February 2026 to 27 April 2026. It names nobody. Its plan says born 1971."));
        QCOMPARE(sitting.session().caseload()->persons(), 0);
        QVERIFY(sitting.session().takeIn()->takeAsNew(0, QStringLiteral(" Ek,  Tomas "), QStringLiteral("2207"), 1971));
        const CaseCard *const card = sitting.session().caseload()->find("ref-new");
        QVERIFY(card != nullptr);
        QCOMPARE(card->known, (KnownAs{"Ek, Tomas", "2207", 1971}));
    }

    void aFileCanBeOfSomebodyWhoIsKnownUnderAnotherRef()
    {
        Sitting sitting;
        sitting.addPerson("ref-ek", {"Ek, Tomas", "2207", 1971}, bakersDiary(*CivilDay::parse("2026-04-20")));
        sitting.open();
        sitting.takeIn({sitting.handOver("summary.json", "ref-new", bakersDiary())});

        sitting.session().find(QStringLiteral("2207"));
        QCOMPARE(sitting.session().candidates()->count(), 1);
        QVERIFY(sitting.session().takeIn()->takeAs(0, sitting.session().candidates()->all()[0].key));

        QCOMPARE(sitting.session().caseload()->persons(), 1);
        QCOMPARE(sitting.ofFile(0, "words").toString(), QStringLiteral("36 new entries for Ek, Tomas. 260 known before."));
    }

    void takingInCanBeUndone()
    {
        Sitting sitting;
        sitting.addPerson("ref-ek", {"Ek, Tomas", "", {}}, bakersDiary(*CivilDay::parse("2026-04-20")));
        sitting.open();
        sitting.session().look(QStringLiteral("ref-ek"));
        const QString before = sitting.session().review()->course()->sentence();
        sitting.takeIn({sitting.handOver("summary.json", "ref-ek", bakersDiary())});
        QVERIFY(sitting.session().review()->course()->sentence() != before);

        sitting.session().takeIn()->undo(0);

        QCOMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Undone));
        QCOMPARE(sitting.session().review()->course()->sentence(), before);
        // Asked for again, it is not taken in behind somebody's back.
        sitting.takeIn({sitting.handOver("again.json", "ref-ek", bakersDiary())});
        QCOMPARE(sitting.ofFile(1, "fileState").toInt(), static_cast<int>(TakeInModel::Asks));
    }

    void aRefusedFileSaysWhatIsWrongAndWhere_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("said");

        QTest::newRow("empty") << QByteArray() << QStringLiteral("Not taken in. It is no file of a diary.");
        QTest::newRow("no JSON") << QByteArray("Dear colleague")
                                 << QStringLiteral("Not taken in. It is no file of a diary, a plan or a visit.");
        QTest::newRow("another JSON") << QByteArray("{\"a\":1}")
                                      << QStringLiteral("Not taken in. It is no file of a diary, a plan or a visit.");
    }

    void aRefusedFileSaysWhatIsWrongAndWhere()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, said);
        Sitting sitting;
        sitting.open();

        sitting.takeIn({sitting.writeFile("file.json", bytes.toStdString())});

        QCOMPARE(sitting.ofFile(0, "fileState").toInt(), static_cast<int>(TakeInModel::Refused));
        QCOMPARE(sitting.ofFile(0, "words").toString(), said);
    }

    void aBrokenValueIsNamedWithItsPlace()
    {
        Sitting sitting;
        sitting.open();
        const QString path = sitting.handOver("summary.json", "ref-new", bakersDiary());
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QByteArray bytes = file.readAll();
        bytes.replace("\"valueQuantity\":{\"value\":10", "\"valueQuantity\":{\"value\":-10");

        sitting.takeIn({sitting.writeFile("broken.json", bytes.toStdString())});

        const QString words = sitting.ofFile(0, "words").toString();
        QVERIFY2(words.startsWith(QStringLiteral("Not taken in. At /entry/")), qPrintable(words));
    }

    void aFileThatIsGoneIsRefused()
    {
        Sitting sitting;
        sitting.open();

        sitting.takeIn({QStringLiteral("/nowhere/summary.json")});

        QCOMPARE(sitting.ofFile(0, "words").toString(), QStringLiteral("Not taken in. It is not there."));
    }

    void aFileNameCannotSteerTheScreen()
    {
        Sitting sitting;
        sitting.open();

        sitting.takeIn({sitting.writeFile("a\xE2\x80\xAEnosj.exe", "x")});

        QCOMPARE(sitting.ofFile(0, "file").toString(), QStringLiteral("a<U+202E>nosj.exe"));
    }
};

MORROW_SUITE(tst_taking_in)

} // namespace morrow::test

#include "tst_taking_in.moc"
