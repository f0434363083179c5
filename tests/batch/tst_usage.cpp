// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/program.h"
#include "batch/table_folder.h"

#include <QJsonValue>

using namespace morrow::test;

/// Wrong usage has status 2, one sentence, no output, and nothing is written.
class tst_usage : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void helpAndVersionGoToStandardOutput()
    {
        const Outcome help = run({QStringLiteral("--help")});
        const Outcome helpOfVerb = run({QStringLiteral("measure"), QStringLiteral("--help")});
        const Outcome version = run({QStringLiteral("--version")});

        QCOMPARE(help.status, 0);
        QVERIFY(help.out.startsWith("usage: morrow-batch VERB"));
        QCOMPARE(help.err, QByteArray());
        QCOMPARE(helpOfVerb.status, 0);
        QCOMPARE(helpOfVerb.out, help.out);
        QCOMPARE(version.status, 0);
        QVERIFY(QRegularExpression(QStringLiteral("^morrow-batch \\d+\\.\\d+\\.\\d+\n$")).match(QString::fromUtf8(version.out)).hasMatch());
    }

    void helpNamesEveryVerbAndOption()
    {
        const QByteArray help = run({QStringLiteral("--help")}).out;

        for (const char *name : {"measure", "check", "convert", "rehearse", "demo", "--set", "--plan", "--as-of", "--from", "--text",
                 "--to", "--help", "--version"})
            QVERIFY2(help.contains(name), name);
    }

    void noVerbIsAnsweredWithTheUsage()
    {
        const Outcome outcome = run({});

        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.out, QByteArray());
        QVERIFY(outcome.err.startsWith("usage: "));
    }

    void wrongUsageIsSaidInOneSentence_data()
    {
        QTest::addColumn<QStringList>("arguments");
        QTest::addColumn<QByteArray>("sentence");

        const auto row = [](const char *name, const QString &arguments, const char *sentence) {
            QTest::newRow(name) << arguments.split(QLatin1Char(' '), Qt::SkipEmptyParts) << QByteArray(sentence);
        };
        row("unknown verb", QStringLiteral("mesure IN"), "There is no verb 'mesure'; see morrow-batch --help.");
        row("measure of nothing", QStringLiteral("measure"), "The verb measure needs one INPUT, a folder of tables or a store.");
        row("measure of two", QStringLiteral("measure IN IN"), "The verb measure needs one INPUT, a folder of tables or a store.");
        row("unknown option", QStringLiteral("measure IN --asof 2026-03-29"), "There is no option '--asof' here.");
        row("a day without value", QStringLiteral("measure IN --as-of"), "The option --as-of needs a value: DAY.");
        row("an option for a value", QStringLiteral("measure IN --as-of --text"), "The option --as-of needs a value: DAY.");
        row("no day", QStringLiteral("measure IN --as-of 2026-02-30"),
            "The option --as-of needs a day such as 2026-04-27, and '2026-02-30' is none.");
        row("no day to begin with", QStringLiteral("measure IN --from=monday"),
            "The option --from needs a day such as 2026-04-27, and 'monday' is none.");
        row("an option twice", QStringLiteral("measure IN --text --text"), "The option --text is given twice.");
        row("a value too many", QStringLiteral("measure IN --text=yes"), "The option --text takes no value.");
        row("from after to", QStringLiteral("measure IN --from 2026-03-30 --as-of 2026-03-29"),
            "The day of --from is after 2026-03-29, the last day that counts.");
        row("check of nothing", QStringLiteral("check"), "The verb check needs at least one INPUT, a folder of tables or a store.");
        row("convert to nowhere", QStringLiteral("convert IN --to tables"), "The verb convert needs one INPUT and one OUT.");
        row("convert to nothing", QStringLiteral("convert IN OUT"), "The verb convert needs --to with a format.");
        row("convert to an unknown format", QStringLiteral("convert IN --to xml OUT"), "There is no format 'xml'.");
        row("convert to what is not built", QStringLiteral("convert IN --to calendar OUT"),
            "The format calendar is not built yet; tables, store, summary, plan and visit are.");
        row("rehearse of nothing", QStringLiteral("rehearse"), "The verb rehearse needs one INPUT, a folder of tables, a file or a store.");
        row("a setting without value", QStringLiteral("rehearse IN --set during_limit"),
            "The option --set needs KEY=VALUE, and 'during_limit' is none.");
        row("a setting that no plan has", QStringLiteral("rehearse IN --set during=4"), "There is no setting 'during' of a plan.");
        row("a setting out of bounds", QStringLiteral("rehearse IN --set during_limit=11"), "The setting during_limit cannot be '11'.");
        row("a second setting out of bounds", QStringLiteral("rehearse IN --set during_limit=1 --set check_limit=x"),
            "The setting check_limit cannot be 'x'.");
        row("demo nowhere", QStringLiteral("demo"), "The verb demo needs one DIR, the folder to write into.");
    }

    void wrongUsageIsSaidInOneSentence()
    {
        QFETCH(QStringList, arguments);
        QFETCH(QByteArray, sentence);
        TableFolder folder;
        writeSmallDiary(folder);
        const QByteArray before = folder.contents();
        arguments.replaceInStrings(QRegularExpression(QStringLiteral("^IN$")), folder.path());
        arguments.replaceInStrings(QRegularExpression(QStringLiteral("^OUT$")), folder.path("out"));

        const Outcome outcome = run(arguments);

        QCOMPARE(outcome.err, sentence + '\n');
        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.out, QByteArray());
        QCOMPARE(folder.contents(), before);
    }

    void aFormatThatIsNotBuiltIsSaid()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        for (const char *format : {"calendar", "sheet", "handout", "review", "discharge", "transaction", "code"}) {
            const Outcome outcome
                = run({QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QString::fromLatin1(format), folder.path("out")});

            QCOMPARE(outcome.status, 2);
            QCOMPARE(outcome.err, QByteArray("The format ") + format + " is not built yet; tables, store, summary, plan and visit are.\n");
        }
    }

    void aPathThatBeginsWithADashComesAfterTwo()
    {
        const Outcome outcome = run({QStringLiteral("measure"), QStringLiteral("--"), QStringLiteral("--help")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.err, QByteArray("--help: there is no folder of tables here.\n"));
    }

    void convertRefusesAnOutThatExists()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder out;
        out.write("kept", "as it was");

        const Outcome outcome
            = run({QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QStringLiteral("tables"), out.path()});

        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.err, out.path().toUtf8() + " was not written: there is something at that place already.\n");
        QCOMPARE(outcome.out, QByteArray());
        QVERIFY(out.contents().endsWith("/kept\nas it was\n"));
    }

    void convertIntoAFolderThatIsNotThereIsWrongUsage()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        const QByteArray before = folder.contents();

        const Outcome outcome
            = run({QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QStringLiteral("tables"), folder.path("no/such/out")});

        QCOMPARE(outcome.status, 2);
        QCOMPARE(outcome.sentences().size(), 1);
        QCOMPARE(folder.contents(), before);
    }

    void demoIntoWhatIsNoFolderIsWrongUsage()
    {
        TableFolder folder;
        folder.write("file", "as it was");
        const QByteArray before = folder.contents();

        const Outcome inFile = run({QStringLiteral("demo"), folder.path("file")});
        const Outcome inMissing = run({QStringLiteral("demo"), folder.path("no/such")});

        QCOMPARE(inFile.err, folder.path("file").toUtf8() + " was not written: there is something at that place already.\n");
        QCOMPARE(inFile.status, 2);
        QCOMPARE(inMissing.err, folder.path("no/such").toUtf8() + " was not written: the folder that it belongs in is not there.\n");
        QCOMPARE(inMissing.status, 2);
        QCOMPARE(folder.contents(), before);
    }

    void convertWritesTheSameDiaryAndSaysWhatItWrote()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder out;
        const QString once = out.path("once");
        const QString again = out.path("again");

        const Outcome first = run({QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QStringLiteral("tables"), once});
        const Outcome second = run({QStringLiteral("convert"), once, QStringLiteral("--to"), QStringLiteral("tables"), again});

        QCOMPARE(first.err, QByteArray());
        QCOMPARE(first.status, 0);
        QCOMPARE(first.object()[QLatin1String("out")].toString(), once);
        QCOMPARE(first.object()[QLatin1String("leftOut")].toArray().size(), 0);
        QCOMPARE(second.status, 0);
        const QJsonArray files = first.object()[QLatin1String("files")].toArray();
        QCOMPARE(files.size(), 8); // the seven tables and csv-metadata.json
        for (const QJsonValue &file : files) {
            const QString name = file[QLatin1String("file")].toString();
            QFile a(QDir(once).filePath(name));
            QFile b(QDir(again).filePath(name));
            QVERIFY2(a.open(QIODevice::ReadOnly) && b.open(QIODevice::ReadOnly), qPrintable(name));
            const QByteArray bytes = a.readAll();
            QCOMPARE(bytes.size(), file[QLatin1String("bytes")].toInt());
            QCOMPARE(b.readAll(), bytes);
        }
        const auto measured = [](const QString &path) {
            return run({QStringLiteral("measure"), path, QStringLiteral("--as-of"), QStringLiteral("2026-03-29")}).out;
        };
        QCOMPARE(measured(once), measured(folder.path()));
    }
};

MORROW_SUITE(tst_usage)
#include "tst_usage.moc"
