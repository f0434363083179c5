// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "batch/program.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QTemporaryDir>

#include <fcntl.h>
#include <unistd.h>

using namespace morrow::test;

namespace {

const QString kPaper = QStringLiteral(MORROW_DEMO_DATA "/paper");
const QString kRunner = QStringLiteral(MORROW_DEMO_DATA "/runner");
const QString kPaperRef = QStringLiteral("29c14bc4-1b05-473c-8442-050118c64670");

QByteArray bytesOf(const QString &path)
{
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

} // namespace

/// A clinic works with files: taken in, taken out, added to, made again.
class tst_desk_verbs : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<QTemporaryDir>();
        QVERIFY(m_folder->isValid());
        QCOMPARE(run({QStringLiteral("convert"), kPaper, QStringLiteral("--to"), QStringLiteral("summary"), path("paper.json")}).status, 0);
        QCOMPARE(
            run({QStringLiteral("convert"), kRunner, QStringLiteral("--to"), QStringLiteral("summary"), path("runner.json")}).status, 0);
    }

    void aFileOfSomebodyUnknownIsNamedAsWaiting()
    {
        const Outcome outcome = takeIn({path("paper.json")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.sentences().size(), 1);
        QVERIFY(!file(outcome)[QLatin1String("takenIn")].toBool());
        QCOMPARE(issue(outcome), QStringLiteral("waits"));
        QVERIFY(QDir(path("desk/record")).isEmpty());
    }

    void whatIsTakenInMeasuresAsAtHome()
    {
        const Outcome outcome = takeIn({path("paper.json"), path("runner.json"), path("paper.json"), QStringLiteral("--new")});

        QCOMPARE(outcome.status, 0);
        QCOMPARE(file(outcome)[QLatin1String("person")].toString(), kPaperRef);
        QCOMPARE(file(outcome)[QLatin1String("added")].toInt(), 296);
        QCOMPARE(file(outcome, 2)[QLatin1String("added")].toInt(), 0);
        QCOMPARE(file(outcome, 2)[QLatin1String("known")].toInt(), 296);
        QCOMPARE(measure().out, run({QStringLiteral("measure"), kPaper, QStringLiteral("--as-of"), QStringLiteral("2026-04-27")}).out);
        QVERIFY(measure().out.size() > 1000);
    }

    void aFileThatIsNoDiaryDoesNotKeepTheNextOneOut()
    {
        const Outcome outcome
            = takeIn({QStringLiteral("/dev/zero"), kPaper + QStringLiteral("/sets.csv"), path("paper.json"), QStringLiteral("--new")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.sentences().size(), 2);
        QVERIFY(!file(outcome, 0)[QLatin1String("takenIn")].toBool());
        QVERIFY(!file(outcome, 1)[QLatin1String("takenIn")].toBool());
        QVERIFY(file(outcome, 2)[QLatin1String("takenIn")].toBool());
    }

    void aFileBesideAFolderIsNamedFromWhereOneStands()
    {
        Circumstances inFolder;
        inFolder.folder = m_folder->path();

        const Outcome outcome = run({QStringLiteral("take-in"), QStringLiteral("paper.json"), QStringLiteral("--desk"),
                                        QStringLiteral("desk"), QStringLiteral("--new")},
            inFolder);

        QCOMPARE(outcome.status, 0);
        QCOMPARE(file(outcome)[QLatin1String("sha256")].toString(), sha(path("paper.json")));
    }

    void whatTheClinicSaysIsInTheRecordAndInARebuild()
    {
        QCOMPARE(takeIn({path("paper.json"), QStringLiteral("--new")}).status, 0);

        const Outcome outcome = record(R"({"kind":"visit","day":"2026-05-04","author":"clinic","body":{"impulses":2000}}
{"kind":"known_as","author":"clinic","body":{"label":"canary7431"}}
{"kind":"check","day":"2026-05-04","author":"patient","body":{"pain":3}}
)");
        QVERIFY(QDir(path("desk/store")).removeRecursively());
        const Outcome rebuilt = run({QStringLiteral("rebuild"), QStringLiteral("--desk"), path("desk")});

        QCOMPARE(outcome.status, 1); // the check is not the clinic's to say
        QCOMPARE(outcome.out.count("\"saved\": true"), 2);
        QCOMPARE(QDir(path("desk/record")).entryList(QDir::Files).size(), 3);
        QCOMPARE(rebuilt.status, 0);
        QCOMPARE(rebuilt.object()[QLatin1String("entries")].toInt(), 298);
    }

    void aPlanThatChangesWhatHasPassedIsNotRecorded()
    {
        QCOMPARE(takeIn({path("paper.json"), QStringLiteral("--new")}).status, 0);

        const Outcome outcome = record(
            R"({"kind":"plan","author":"clinic","body":{"complaint":"heel","items":[{"item":"x","exercise":"x","start":"2026-01-01","stages":[{"stage":1,"sets":1,"reps":1,"per_week":2}]}]}}
)");

        QCOMPARE(outcome.status, 1);
        QVERIFY2(outcome.out.contains("\"saved\": false"), outcome.out.constData());
        QCOMPARE(QDir(path("desk/record")).entryList(QDir::Files).size(), 1);
    }

    void aTakingInIsUndoneAndDoneAgain()
    {
        QCOMPARE(takeIn({path("paper.json"), QStringLiteral("--new")}).status, 0);
        const QString file = sha(path("paper.json"));

        const Outcome undone = run({QStringLiteral("undo-take-in"), file, QStringLiteral("--desk"), path("desk")});
        const Outcome twice = run({QStringLiteral("undo-take-in"), file, QStringLiteral("--desk"), path("desk")});
        const Outcome unasked = takeIn({path("paper.json")});
        const Outcome asked = takeIn({path("paper.json"), QStringLiteral("--new")});

        QCOMPARE(undone.status, 0);
        QCOMPARE(undone.object()[QLatin1String("entriesBefore")].toInt(), 296);
        QCOMPARE(undone.object()[QLatin1String("entries")].toInt(), 1);
        QCOMPARE(twice.status, 1);
        QCOMPARE(issue(unasked), QStringLiteral("set-aside"));
        QCOMPARE(asked.status, 0);
        QCOMPARE(measure().out, run({QStringLiteral("measure"), kPaper, QStringLiteral("--as-of"), QStringLiteral("2026-04-27")}).out);
    }

    void whatIsNoDeskIsLeftAsItIs()
    {
        QVERIFY(QDir().mkpath(path("letters/2026")));

        const Outcome outcome = run({QStringLiteral("take-in"), path("paper.json"), QStringLiteral("--desk"), path("letters")});
        const Outcome rebuilt = run({QStringLiteral("rebuild"), QStringLiteral("--desk"), path("letters")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.sentences().size(), 1);
        QVERIFY(rebuilt.status != 0);
        QCOMPARE(QDir(path("letters")).entryList(QDir::AllEntries | QDir::NoDotAndDotDot), QStringList{QStringLiteral("2026")});
    }

    void withoutItsReaderNoFileIsTakenIn()
    {
        QVERIFY(QFile::copy(QStringLiteral(MORROW_BATCH), path("morrow-batch")));
        Circumstances alone;
        alone.program = path("morrow-batch");

        const Outcome outcome
            = run({QStringLiteral("take-in"), path("paper.json"), QStringLiteral("--desk"), path("desk"), QStringLiteral("--new")}, alone);

        QCOMPARE(outcome.status, 3);
        QCOMPARE(issue(outcome), QStringLiteral("reader-not-started"));
    }

    void mergingADiaryWithItselfIsThatDiary()
    {
        const Outcome outcome = run({QStringLiteral("merge"), kPaper, path("paper.json"), kPaper, path("merged.json")});

        QCOMPARE(outcome.status, 0);
        QCOMPARE(bytesOf(path("merged.json")), bytesOf(path("paper.json")));
    }

    void diariesOfTwoPersonsAreNotMerged()
    {
        const Outcome outcome = run({QStringLiteral("merge"), path("paper.json"), path("runner.json"), path("merged.json")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.sentences().size(), 1);
        QVERIFY(!QFile::exists(path("merged.json")));
    }

    void whatExistsIsNotMergedOver() { QCOMPARE(run({QStringLiteral("merge"), kPaper, path("runner.json")}).status, 2); }

    void wrongUsageIsSaid_data()
    {
        QTest::addColumn<QStringList>("words");
        const auto row = [](const char *name, std::initializer_list<const char *> words) {
            QStringList all;
            for (const char *word : words)
                all.append(QString::fromLatin1(word));
            QTest::newRow(name) << all;
        };
        row("take-in without a desk", {"take-in", "a.json"});
        row("take-in without a file", {"take-in", "--desk", "d"});
        row("take-in as somebody and as somebody new", {"take-in", "a.json", "--desk", "d", "--new", "--as", "r"});
        row("undo-take-in without a file", {"undo-take-in", "--desk", "d"});
        row("rebuild with a file", {"rebuild", "a.json", "--desk", "d"});
        row("record at a desk about nobody", {"record", "--desk", "d"});
        row("record at a desk and at home", {"record", "--desk", "d", "--person", "p", "--store", "s"});
        row("record at home about somebody", {"record", "--store", "s", "--person", "p"});
        row("merge without an output", {"merge", "a.json"});
    }

    void wrongUsageIsSaid()
    {
        QFETCH(QStringList, words);
        Circumstances inFolder;
        inFolder.folder = m_folder->path();

        const Outcome outcome = run(words, inFolder);

        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.sentences().size(), 1);
        QVERIFY(!QFile::exists(path("d")) && !QFile::exists(path("s")));
    }

private:
    [[nodiscard]] QString path(const char *name) const { return m_folder->filePath(QString::fromLatin1(name)); }
    [[nodiscard]] static QString sha(const QString &file)
    {
        return QString::fromLatin1(QCryptographicHash::hash(bytesOf(file), QCryptographicHash::Sha256).toHex());
    }
    [[nodiscard]] static QJsonObject file(const Outcome &outcome, int number = 0) { return outcome.array()[number].toObject(); }
    [[nodiscard]] static QString issue(const Outcome &outcome)
    {
        return file(outcome)[QLatin1String("issues")].toArray()[0].toObject()[QLatin1String("code")].toString();
    }
    [[nodiscard]] Outcome takeIn(const QStringList &words) const
    {
        return run(QStringList{QStringLiteral("take-in"), QStringLiteral("--desk"), path("desk")} + words);
    }
    [[nodiscard]] Outcome measure() const
    {
        return run({QStringLiteral("measure"), path("desk/store"), QStringLiteral("--person"), kPaperRef, QStringLiteral("--as-of"),
            QStringLiteral("2026-04-27")});
    }
    [[nodiscard]] Outcome record(const QByteArray &input) const
    {
        QFile file(path("input"));
        if (!file.open(QIODevice::WriteOnly))
            qFatal("no input file");
        file.write(input);
        file.close();
        const QByteArray name = file.fileName().toUtf8();
        Circumstances circumstances;
        circumstances.inChild = [name] { ::dup2(::open(name.constData(), O_RDONLY), STDIN_FILENO); };
        return run(
            {QStringLiteral("record"), QStringLiteral("--desk"), path("desk"), QStringLiteral("--person"), kPaperRef}, circumstances);
    }

    std::unique_ptr<QTemporaryDir> m_folder;
};

MORROW_SUITE(tst_desk_verbs)

#include "tst_desk_verbs.moc"
