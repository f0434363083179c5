// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/program.h"
#include "batch/table_folder.h"

#include <QFile>
#include <QJsonValue>

#include <sys/stat.h>

using namespace morrow::test;

namespace {

constexpr const char *kMornings = "id,day,pain,stiffness_min,recorded_at,declined,replaces\n";
constexpr const char *kSets = "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\n";

QByteArray plan(const char *rows)
{
    return QByteArray(kPlanHeader) + "\n" + rows;
}

} // namespace

/// A small diary that is good but for one thing is refused with status 1 and one sentence, which says
/// where, and nothing is written by any verb.
class tst_bad_input : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theSmallDiaryIsGood()
    {
        TableFolder folder;
        writeSmallDiary(folder);

        QCOMPARE(run({QStringLiteral("check"), folder.path()}).err, QByteArray());
        QCOMPARE(run({QStringLiteral("check"), folder.path()}).status, 0);
    }

    void isRefusedWithOneSentence_data()
    {
        QTest::addColumn<QByteArray>("file");
        QTest::addColumn<QByteArray>("rows");
        QTest::addColumn<QByteArray>("sentence");

        const auto row = [](const char *name, const char *file, const QByteArray &rows, const char *sentence) {
            QTest::newRow(name) << QByteArray(file) << rows << QByteArray(sentence);
        };
        row("wrong header", "pauses.csv", "from;to;reason\n2026-03-09;2026-03-10;away\n",
            "pauses.csv, line 1, column 1: the header row is missing.");
        row("no header", "pauses.csv", "2026-03-09,2026-03-10,away\n", "pauses.csv, line 1, column 1: the header row is missing.");
        row("unknown column", "pauses.csv", "from,to,reason,hotel\n2026-03-09,2026-03-10,away,\n",
            "pauses.csv, line 1, column 4: this table has no column 'hotel'.");
        row("missing column", "pauses.csv", "from,to\n2026-03-09,2026-03-10\n", "pauses.csv, line 1 (reason): this column is missing.");
        row("pain 11", "mornings.csv", QByteArray(kMornings) + ",2026-03-03,11,,,,\n",
            "mornings.csv, line 2, column 3 (pain): '11' is not a whole number from 0 to 10.");
        row("reps -1", "sets.csv", QByteArray(kSets) + ",2026-03-02,morning,raise,1,-1,,,\n",
            "sets.csv, line 2, column 6 (reps): '-1' is not a whole number from 0 to 100000.");
        row("30 February", "mornings.csv", QByteArray(kMornings) + ",2026-03-03,4,,,,\n,2026-02-30,4,,,,\n",
            "mornings.csv, line 3, column 2 (day): '2026-02-30' is no day of the calendar from 1900 to 2200, written as 2026-04-27.");
        row("unknown item", "sets.csv", QByteArray(kSets) + ",2026-03-02,morning,lunge,1,12,,,\n",
            "sets.csv, line 2, column 4 (item): the plan has no item 'lunge'.");
        row("unknown complaint", "sessions.csv",
            "id,day,slot,pain_during,pain_after,recorded_at,complaint\n,2026-03-02,morning,4,3,,elbow\n",
            "sessions.csv, line 2, column 7 (complaint): there is no complaint 'elbow'.");
        row("two plan rows that disagree", "plan.csv",
            plan("raise,heel raise,right,1,3,12,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
                 "raise,heel raise,left,2,4,10,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
                 "hold,wall sit,right,1,2,1,30,,,,,,,,,3,2026-03-02,2026-03-29,,,0\n"),
            "plan.csv, line 3, column 3 (side): 'left' stands here and 'right' on the first row of this item.");
        row("rest without days", "settings.csv", "key,value\npatient_ref,p-1\n",
            "plan.csv, line 2, column 21 (rests_after_visit): the item rests after visits, but rest_days_after_visit is 0.");
        row("a pause without end", "pauses.csv", "from,to,reason\n2026-03-09,,away\n",
            "pauses.csv, line 2, column 2 (to): a value is needed here.");
        row("an item that ends before it starts", "plan.csv",
            plan("raise,heel raise,right,1,3,12,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
                 "raise,heel raise,right,2,4,10,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
                 "hold,wall sit,right,1,2,1,30,,,,,,,,,3,2026-03-02,2026-03-01,,,0\n"),
            "plan.csv, line 4, column 18 (end): the item ends before it starts on 2026-03-02.");
        row("a loop of replaces", "mornings.csv",
            QByteArray(kMornings) + "m-1,2026-03-02,6,,2026-03-02T07:00:00+01:00,,m-2\nm-2,2026-03-02,5,,2026-03-02T08:00:00+01:00,,m-1\n",
            "mornings.csv, line 2, column 7 (replaces): what 'm-1' replaces leads back to itself.");
        row("two contents for one id", "mornings.csv",
            QByteArray(kMornings) + "m-1,2026-03-02,6,,2026-03-02T07:00:00+01:00,,\nm-1,2026-03-03,5,,2026-03-03T07:00:00+01:00,,\n",
            "mornings.csv, line 3, column 1 (id): the id 'm-1' stands on line 2 with another content.");
        row("invalid UTF-8", "unusual.csv", "id,day,text,recorded_at\n,2026-03-03,Arres\xf8,\n",
            "unusual.csv, line 2, column 3 (text): the text is not UTF-8.");
        row("an open quote", "unusual.csv", "id,day,text,recorded_at\n,2026-03-03,\"long walk,\n,2026-03-04,rest,\n",
            "unusual.csv, line 2, column 3: a quote opens here and never closes.");
        row("NaN", "sets.csv", QByteArray(kSets) + ",2026-03-02,morning,raise,1,12,,NaN,\n",
            "sets.csv, line 2, column 8 (load_kg): 'NaN' is not a number from 0 to 10000 with at most 3 decimals.");
        row("infinity", "sets.csv", QByteArray(kSets) + ",2026-03-02,morning,raise,1,12,,1e999,\n",
            "sets.csv, line 2, column 8 (load_kg): '1e999' is not a number from 0 to 10000 with at most 3 decimals.");
        row("a table that nobody knows", "paint.csv", "id\n", "paint.csv: no table has this name.");
        row("a steering text in a number", "mornings.csv",
            QByteArray(kMornings)
                + ",2026-03-03,\xe2\x80\xae"
                  "4,,,,\n",
            "mornings.csv, line 2, column 3 (pain): '<U+202E>4' is not a whole number from 0 to 10.");
        row("a long text in a number", "mornings.csv", QByteArray(kMornings) + ",2026-03-03," + QByteArray(5000, '7') + ",,,,\n",
            "mornings.csv, line 2, column 3 (pain): '7777777777777777777777777777777777777...' is not a whole number from 0 to 10.");
        row("an escape sequence", "unusual.csv", "id,day,text,recorded_at\n,2026-03-03,\x1b[2J,\n",
            "unusual.csv, line 2, column 3 (text): a control character stands here.");
    }

    void isRefusedWithOneSentence()
    {
        QFETCH(QByteArray, file);
        QFETCH(QByteArray, rows);
        QFETCH(QByteArray, sentence);
        TableFolder folder;
        writeSmallDiary(folder);
        folder.write(file.constData(), rows);

        refuses(folder, 1, sentence);
    }

    void aTableOver128MiBIsRefused()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        QFile file(folder.path("sets.csv"));
        QVERIFY(file.open(QIODevice::Append));
        QVERIFY(file.resize(129 * 1024 * 1024)); // sparse: takes no room on the disk

        refuses(folder, 1, "sets.csv: it is larger than 128 MiB.");
    }

    void anEmptyFolderIsRefused()
    {
        const TableFolder folder;

        refuses(folder, 1, folder.path().toUtf8() + ": the table plan.csv is missing; its header alone says that there is no plan.");
    }

    void aFolderThatIsNotThereIsRefused()
    {
        const TableFolder folder;
        const QString missing = folder.path("none");

        const Outcome outcome = run({QStringLiteral("measure"), missing});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.err, missing.toUtf8() + ": there is no folder of tables here.\n");
    }

    void aTableInPlaceOfItsFolderIsRefused()
    {
        TableFolder folder;
        folder.write("plan.csv", QByteArray(kPlanHeader) + "\n");

        const Outcome outcome = run({QStringLiteral("measure"), folder.path("plan.csv")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.err, folder.path("plan.csv").toUtf8() + ": this is no FHIR bundle of a diary, a plan or a visit.\n");
    }

    void aFifoIsRefusedAndNotWaitedFor()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        QVERIFY(QFile::remove(folder.path("sets.csv")));
        QCOMPARE(::mkfifo(folder.path("sets.csv").toLocal8Bit().constData(), 0600), 0);

        refuses(folder, 1, "sets.csv: it is no regular file.");
    }

private:
    /// Every verb that reads refuses \a folder with \a sentence, and nothing is written.
    void refuses(const TableFolder &folder, int status, const QByteArray &sentence)
    {
        const QByteArray before = folder.contents();
        const TableFolder elsewhere;
        const Circumstances there{.folder = elsewhere.path()};

        const Outcome check = run({QStringLiteral("check"), folder.path()}, there);
        const Outcome measure = run({QStringLiteral("measure"), folder.path()}, there);
        const Outcome convert = run(
            {QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QStringLiteral("tables"), QStringLiteral("out")}, there);

        QCOMPARE(check.err, sentence + '\n');
        QCOMPARE(check.status, status);
        QCOMPARE(check.array()[0][QLatin1String("issues")][0][QLatin1String("message")].toString().toUtf8(), sentence);
        QCOMPARE(measure.err, sentence + '\n');
        QCOMPARE(measure.status, status);
        QCOMPARE(measure.out, QByteArray());
        QCOMPARE(convert.err, sentence + '\n');
        QCOMPARE(convert.status, status);
        QCOMPARE(convert.out, QByteArray());
        QCOMPARE(folder.contents(), before);
        QCOMPARE(elsewhere.contents(), QByteArray());
    }
};

MORROW_SUITE(tst_bad_input)
#include "tst_bad_input.moc"
