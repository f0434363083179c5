// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "batch/program.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QTemporaryDir>

using namespace morrow::test;

namespace {

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

} // namespace

/// A diary as a FHIR file is the diary that was written into it.
class tst_fhir_verbs : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<QTemporaryDir>();
        QVERIFY(m_folder->isValid());
    }

    void aSummaryMeasuresAsTheTablesDo_data()
    {
        QTest::addColumn<QString>("person");
        for (const char *person : {"paper", "runner", "two-complaints"})
            QTest::newRow(person) << QString::fromLatin1(person);
    }

    void aSummaryMeasuresAsTheTablesDo()
    {
        QFETCH(QString, person);
        const QString tables = diaryOf(person);
        const Outcome tablesMeasured = run({QStringLiteral("measure"), tables});
        QCOMPARE(tablesMeasured.status, 0);

        QCOMPARE(convert(tables, "summary", path("summary.json")).status, 0);
        const Outcome measured = run({QStringLiteral("measure"), path("summary.json")});

        QCOMPARE(measured.err, QByteArray());
        QCOMPARE(measured.status, 0);
        QVERIFY(measured.out.size() > 1000);
        QCOMPARE(measured.out, tablesMeasured.out);
    }

    void aSecondFileHasTheSameBytesWhateverItIsWrittenFrom()
    {
        QCOMPARE(convert(diaryOf(QStringLiteral("paper")), "summary", path("a.json")).status, 0);
        QCOMPARE(convert(path("a.json"), "store", path("store")).status, 0);
        QCOMPARE(convert(path("store"), "summary", path("b.json")).status, 0);
        QCOMPARE(convert(path("b.json"), "summary", path("c.json")).status, 0);

        QVERIFY(!bytesOf(path("a.json")).isEmpty());
        QCOMPARE(bytesOf(path("b.json")), bytesOf(path("a.json")));
        QCOMPARE(bytesOf(path("c.json")), bytesOf(path("a.json")));
    }

    void whatWasWrittenIsToldWithItsSum()
    {
        const Outcome outcome = convert(diaryOf(QStringLiteral("runner")), "summary", path("a.json"));

        const QJsonObject told = QJsonDocument::fromJson(outcome.out).object();
        const QByteArray bytes = bytesOf(path("a.json"));
        QCOMPARE(told[QStringLiteral("bytes")].toInt(), static_cast<int>(bytes.size()));
        QCOMPARE(told[QStringLiteral("sha256")].toString().toLatin1(), QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex());
        const QJsonObject checked = QJsonDocument::fromJson(run({QStringLiteral("check"), path("a.json")}).out).array().first().toObject();
        QCOMPARE(checked[QStringLiteral("accepted")].toBool(), true);
        QCOMPARE(checked[QStringLiteral("entries")], told[QStringLiteral("entries")]);
        // The notes about visits stay at the desk.
        QStringList leftOut;
        for (const QJsonValue &one : told[QStringLiteral("leftOut")].toArray())
            leftOut.append(one[QStringLiteral("what")].toString());
        QCOMPARE(leftOut, QStringList{QStringLiteral("desk-only")});
    }

    void aFileForThePatientHoldsNothingThatStaysAtTheDesk()
    {
        const QString tables = diaryOf(QStringLiteral("paper"));
        const QByteArray visits = bytesOf(tables + QStringLiteral("/visits.csv"));
        QVERIFY(visits.contains("note"));

        for (const char *format : {"plan", "visit", "summary"}) {
            QCOMPARE(convert(tables, format, path(format)).status, 0);
            const QByteArray bytes = bytesOf(path(format));
            QVERIFY(bytes.size() > 1000);
            QVERIFY2(!bytes.contains("\"memo\"") && !bytes.contains("StructureDefinition/memo"), format);
        }
    }

    void aFileThatIsThereIsNotWrittenOver()
    {
        const QString tables = diaryOf(QStringLiteral("paper"));
        QFile there(path("a.json"));
        QVERIFY(there.open(QIODevice::WriteOnly));
        there.write("mine");
        there.close();

        const Outcome outcome = convert(tables, "summary", path("a.json"));

        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.err.count('\n'), 1);
        QCOMPARE(bytesOf(path("a.json")), QByteArray("mine"));
    }

    void aFolderThatNamesNobodyMakesNoSummary()
    {
        QVERIFY(QDir().mkpath(path("t")));
        QFile plan(path("t/plan.csv"));
        QVERIFY(plan.open(QIODevice::WriteOnly));
        plan.write(bytesOf(diaryOf(QStringLiteral("paper")) + QStringLiteral("/plan.csv")).split('\n').first() + "\n");
        plan.close();

        const Outcome outcome = convert(path("t"), "summary", path("a.json"));

        QCOMPARE(outcome.status, 1);
        QVERIFY(outcome.err.contains("no patient_ref says whose diary this is"));
        QVERIFY(!QFile::exists(path("a.json")));
    }

    void aChangedFileIsRefusedWithThePlace()
    {
        QCOMPARE(convert(diaryOf(QStringLiteral("paper")), "summary", path("a.json")).status, 0);
        QByteArray bytes = bytesOf(path("a.json"));
        const auto at = bytes.indexOf("\"valueQuantity\":{\"value\":");
        QVERIFY(at > 0);
        bytes.insert(at + 25, "1"); // pain 3 becomes 13
        QFile file(path("b.json"));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        file.close();

        const Outcome outcome = run({QStringLiteral("measure"), path("b.json")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.out, QByteArray());
        QVERIFY2(outcome.err.contains(", at /entry/") && outcome.err.contains("/resource/"), outcome.err.constData());
        QCOMPARE(outcome.err.count('\n'), 1);
    }

private:
    [[nodiscard]] QString path(const char *name) const { return m_folder->filePath(QString::fromLatin1(name)); }

    /// The tables of \a person: typed by hand, or written by demo.
    [[nodiscard]] QString diaryOf(const QString &person)
    {
        if (person == QLatin1String("paper"))
            return QStringLiteral(MORROW_DEMO_DATA "/paper");
        const QString demo = path("demo");
        if (!QDir(demo).exists())
            (void)run({QStringLiteral("demo"), demo});
        return demo + QLatin1Char('/') + person;
    }

    [[nodiscard]] static Outcome convert(const QString &from, const char *format, const QString &to)
    {
        return run({QStringLiteral("convert"), from, QStringLiteral("--to"), QString::fromLatin1(format), to});
    }

    std::unique_ptr<QTemporaryDir> m_folder;
};

MORROW_SUITE(tst_fhir_verbs)

#include "tst_fhir_verbs.moc"
