// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "exchange/fhir.h"
#include "qml/home/stay.h"

#include <QFileInfo>

#include <algorithm>

namespace morrow::test {

/// Files that are opened at home.
class tst_adopting : public QObject
{
    Q_OBJECT

    static QString planFile(Stay &stay, const std::vector<Entry> &entries, const std::string &ref = "ref-home")
    {
        return stay.writeFile("plan.json", writeFhir(entries, ref, FhirFile::Plan).json);
    }

    static void openFile(Stay &stay, const QString &path) { stay.session().openFiles({QUrl::fromLocalFile(path)}); }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aPlanBeginsADiary()
    {
        Stay stay;
        stay.open();
        QCOMPARE(stay.session().state(), HomeSession::FirstRun);

        openFile(stay, planFile(stay, bakerBefore(kMorning)));

        QCOMPARE(stay.session().refusal(), QString());
        QCOMPARE(stay.session().state(), HomeSession::Open);
        QCOMPARE(stay.session().today()->progress(), QStringLiteral("0 of 6 sets"));
        QVERIFY2(stay.session().received().contains(QStringLiteral("1 version of the plan")), qPrintable(stay.session().received()));
    }

    void aRefusedFileBeginsNone()
    {
        Stay stay;
        stay.open();

        openFile(stay, stay.writeFile("letter.json", "{\"dear\":\"all\"}"));

        QCOMPARE(stay.session().refusal(), QStringLiteral("letter.json was not opened. It is no file from a clinic."));
        QCOMPARE(stay.session().state(), HomeSession::FirstRun);
        QVERIFY(!std::filesystem::exists(stay.folder()));
    }

    void aFileThatIsNotThereIsSaid()
    {
        Stay stay;
        stay.open();

        openFile(stay, stay.files() + QStringLiteral("/gone.json"));

        QCOMPARE(stay.session().refusal(), QStringLiteral("gone.json was not opened. The file or its folder is not there."));
    }

    void whatTheClinicAddsIsAdded()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        const QString file = planFile(stay, bakersDiary());

        openFile(stay, file);
        QCOMPARE(stay.session().today()->replyHead(), QStringLiteral("From your clinic, 13 April"));
        QVERIFY2(stay.session().received().startsWith(QStringLiteral("New from the file: ")), qPrintable(stay.session().received()));

        openFile(stay, file);
        QCOMPARE(stay.session().received(), QStringLiteral("Everything in this file was here already."));
    }

    void aFileForSomebodyElseChangesNothing()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        openFile(stay, planFile(stay, bakersDiary(), "ref-other"));

        QCOMPARE(stay.session().refusal(), QStringLiteral("plan.json was not opened. It is for somebody else."));
        QVERIFY(stay.fresh().empty());
    }

    void theDemoLeavesOnesOwnDiaryAlone()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();

        stay.session().openDemo();
        QVERIFY(stay.session().isDemo());
        auto complaints = stay.session().today()->complaints();
        stay.session().today()->check(complaints.at(&complaints, 0), 3);
        QCOMPARE(complaints.at(&complaints, 0)->check()->value(), 3);

        stay.session().leaveDemo();
        QVERIFY(!stay.session().isDemo());
        QCOMPARE(stay.session().state(), HomeSession::Open);
        QVERIFY(stay.fresh().empty());
        auto own = stay.session().today()->complaints();
        QCOMPARE(own.at(&own, 0)->check()->value(), -1);
    }

    void theDemoWithoutADiaryGoesBackToTheFirstPage()
    {
        Stay stay;
        stay.open();

        stay.session().openDemo();
        QCOMPARE(stay.session().state(), HomeSession::Open);
        stay.session().leaveDemo();

        QCOMPARE(stay.session().state(), HomeSession::FirstRun);
        QVERIFY(!std::filesystem::exists(stay.folder()));
    }
};

MORROW_SUITE(tst_adopting)

} // namespace morrow::test

#include "tst_adopting.moc"
