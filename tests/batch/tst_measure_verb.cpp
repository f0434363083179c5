// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/program.h"
#include "batch/table_folder.h"

#include <QDateTime>
#include <QJsonValue>

using namespace morrow::test;

namespace {

/// The small diary with a visit and an outcome, so that every list has a member.
void writeDiary(TableFolder &folder)
{
    writeSmallDiary(folder);
    folder.write("visits.csv",
        "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note\n"
        "2026-03-04,plantar heel,right,,,,1800,2,10,30,5,\n");
    folder.write("outcomes.csv", "id,day,kind,name,side,value,unit,pain,by,recorded_at\n,2026-03-01,activity,stairs,,4,,,,\n");
}

Outcome measure(const TableFolder &folder, const QStringList &more)
{
    return run(QStringList{QStringLiteral("measure"), folder.path()} + more);
}

/// Everything of the week 2 to 8 March, added up by hand: the item rests on the 4th, after the visit;
/// the check after the one loading day is 5, where 6 was usual at the first assessment.
constexpr const char *kWholeObject = R"({
  "asOf": "2026-03-08",
  "to": "2026-03-08",
  "complaints": [
    {
      "complaint": "heel",
      "region": "plantar heel",
      "side": "right",
      "from": "2026-03-02",
      "items": [
        {
          "item": "raise",
          "exercise": "heel raise",
          "side": "right",
          "stage": 1,
          "stageBegan": "2026-03-02",
          "adherence": {
            "setsDue": 18,
            "setsDone": 2,
            "setsExtra": 0,
            "sessionsDue": 6,
            "sessionsAttended": 1,
            "sessionsComplete": 0,
            "volumeDue": 216,
            "volumeDone": 22,
            "volumeUnit": "reps",
            "setRatio": 0.1111111111111111,
            "sessionRatio": 0.16666666666666666,
            "volumeRatio": 0.10185185185185185,
            "sessionInterval": [%1, %2],
            "skips": 0,
            "easier": 0,
            "away": 0
          },
          "weeks": [
            {"week": 0, "start": "2026-03-02", "setsDue": 18, "setsDone": 2, "sets": 2, "reps": 22, "volume": 22, "volumeUnit": "reps", "tensionSeconds": 176, "volumeChange": null, "strength": null}
          ],
          "progression": {
            "decision": "hold",
            "toStage": null,
            "waits": false,
            "unmet": ["adherence", "sets-complete", "pain-during", "pain-after", "weekly-rise", "level"],
            "reasons": [
              {"condition": "days-in-stage", "text": "condition.days-in-stage", "met": true, "value": 7, "limit": 0},
              {"condition": "sessions-in-stage", "text": "condition.sessions-in-stage", "met": true, "value": 1, "limit": 0},
              {"condition": "adherence", "text": "condition.adherence", "met": false, "value": 0.1111111111111111, "limit": 0.8},
              {"condition": "sets-complete", "text": "condition.sets-complete", "met": false, "value": 0, "limit": 3},
              {"condition": "pain-during", "text": "condition.pain-during", "met": false, "value": null, "limit": 5},
              {"condition": "pain-after", "text": "condition.pain-after", "met": false, "value": null, "limit": 5},
              {"condition": "settled", "text": "condition.settled", "met": true, "value": 1, "limit": 1},
              {"condition": "weekly-rise", "text": "condition.weekly-rise", "met": false, "value": null, "limit": 0.5},
              {"condition": "level", "text": "condition.level", "met": false, "value": null, "limit": 7},
              {"condition": "next-stage", "text": "condition.next-stage", "met": true, "value": 1, "limit": 2}
            ]
          }
        },
        {
          "item": "hold",
          "exercise": "wall sit",
          "side": "right",
          "stage": 1,
          "stageBegan": "2026-03-02",
          "adherence": {
            "setsDue": 6,
            "setsDone": 1,
            "setsExtra": 0,
            "sessionsDue": 3,
            "sessionsAttended": 1,
            "sessionsComplete": 0,
            "volumeDue": 180,
            "volumeDone": 25,
            "volumeUnit": "s",
            "setRatio": 0.16666666666666666,
            "sessionRatio": 0.3333333333333333,
            "volumeRatio": 0.1388888888888889,
            "sessionInterval": [%3, %4],
            "skips": 0,
            "easier": 0,
            "away": 0
          },
          "weeks": [
            {"week": 0, "start": "2026-03-02", "setsDue": 6, "setsDone": 1, "sets": 1, "reps": 1, "volume": 25, "volumeUnit": "s", "tensionSeconds": 25, "volumeChange": null, "strength": null}
          ],
          "progression": {
            "decision": "hold",
            "toStage": null,
            "waits": false,
            "unmet": ["adherence", "sets-complete", "pain-during", "pain-after", "weekly-rise", "level", "next-stage"],
            "reasons": [
              {"condition": "days-in-stage", "text": "condition.days-in-stage", "met": true, "value": 7, "limit": 0},
              {"condition": "sessions-in-stage", "text": "condition.sessions-in-stage", "met": true, "value": 1, "limit": 0},
              {"condition": "adherence", "text": "condition.adherence", "met": false, "value": 0.16666666666666666, "limit": 0.8},
              {"condition": "sets-complete", "text": "condition.sets-complete", "met": false, "value": 0, "limit": 3},
              {"condition": "pain-during", "text": "condition.pain-during", "met": false, "value": null, "limit": 5},
              {"condition": "pain-after", "text": "condition.pain-after", "met": false, "value": null, "limit": 5},
              {"condition": "settled", "text": "condition.settled", "met": true, "value": 1, "limit": 1},
              {"condition": "weekly-rise", "text": "condition.weekly-rise", "met": false, "value": null, "limit": 0.5},
              {"condition": "level", "text": "condition.level", "met": false, "value": null, "limit": 7},
              {"condition": "next-stage", "text": "condition.next-stage", "met": false, "value": 1, "limit": 1}
            ]
          }
        }
      ],
      "all": {"setsDue": 24, "setsDone": 3, "setsExtra": 0, "sessionsDue": 9, "sessionsAttended": 2, "sessionsComplete": 0, "setRatio": 0.125, "sessionRatio": 0.2222222222222222},
      "check": {"expected": 7, "recorded": 2, "sameDay": 1, "late": 0, "paper": 1, "declined": 0, "firstWeek": null, "reference": 6, "current": null, "change": null, "changeRatio": null, "clearChange": null, "trend": null, "limits": null},
      "stiffness": {"recorded": 1, "current": null, "trend": null},
      "response": {
        "days": [
          {"day": "2026-03-02", "rise": -1, "state": "settled", "reason": null}
        ],
        "settled": 1,
        "unsettled": 0,
        "unknown": 0
      },
      "rules": [
        {"rule": "during", "state": "unknown", "value": null, "limit": 5},
        {"rule": "after", "state": "unknown", "value": null, "limit": 5},
        {"rule": "check", "state": "unknown", "value": 5, "limit": null},
        {"rule": "settled", "state": "ok", "value": 0, "limit": 0},
        {"rule": "weekly", "state": "unknown", "value": null, "limit": 0.5},
        {"rule": "stiffness", "state": "unknown", "value": null, "limit": 10}
      ],
      "visits": [
        {
          "day": "2026-03-04",
          "before": null,
          "afterWeeks": [null],
          "change": null,
          "seconds": 180,
          "perCm2": 60,
          "totalImpulses": 1800
        }
      ],
      "outcomes": [
        {"kind": "activity", "name": "stairs", "side": null, "n": 1, "firstDay": "2026-03-01", "first": 4, "lastDay": "2026-03-01", "last": 4, "change": null, "ratio": null}
      ]
    }
  ]
}
)";

} // namespace

/// What `measure` and `check` print, and that they write nothing.
class tst_measure_verb : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void everyFieldStandsInItsPlace()
    {
        TableFolder folder;
        writeDiary(folder);

        const Outcome outcome = measure(folder, {QStringLiteral("--as-of"), QStringLiteral("2026-03-08")});

        QCOMPARE(outcome.err, QByteArray());
        QCOMPARE(outcome.status, 0);
        // Wilson 95 % of 1/6 and 1/3 by the formula of Newcombe 1998; the last digits are the machine's.
        const QJsonArray items = outcome.object()[QLatin1String("complaints")][0][QLatin1String("items")].toArray();
        QString expected = QString::fromUtf8(kWholeObject);
        const double known[] = {0.03005337486, 0.56350282, 0.06149194472, 0.7923403992};
        for (int i = 0; i < 4; ++i) {
            const double bound = items[i / 2][QLatin1String("adherence")][QLatin1String("sessionInterval")][i % 2].toDouble();
            QVERIFY2(std::abs(bound - known[i]) < 1e-8, QByteArray::number(bound, 'g', 17).constData());
            expected = expected.arg(QString::number(bound, 'g', QLocale::FloatingPointShortest));
        }
        QCOMPARE(QString::fromUtf8(outcome.out), expected);
    }

    void theWindowBeginsOnTheAskedDay()
    {
        TableFolder folder;
        writeDiary(folder);
        const auto from = [&folder](const char *day) {
            return measure(folder, {QStringLiteral("--as-of=2026-03-08"), QStringLiteral("--from"), QString::fromLatin1(day)})
                .object()[QLatin1String("complaints")][0]
                .toObject();
        };

        QCOMPARE(from("2026-03-03")[QLatin1String("from")].toString(), QStringLiteral("2026-03-03"));
        QCOMPARE(from("2026-03-03")[QLatin1String("all")][QLatin1String("setsDone")].toInt(), 0);
        QCOMPARE(from("2026-01-01")[QLatin1String("from")].toString(), QStringLiteral("2026-03-02"));
        QCOMPARE(from("2026-01-01")[QLatin1String("all")][QLatin1String("setsDone")].toInt(), 3);
    }

    void aComplaintThatHasNotStartedIsLeftOut()
    {
        TableFolder folder;
        writeDiary(folder);

        const Outcome outcome = measure(folder, {QStringLiteral("--as-of"), QStringLiteral("2026-03-01")});

        QCOMPARE(outcome.status, 0);
        QCOMPARE(outcome.object()[QLatin1String("complaints")].toArray().size(), 0);
    }

    void theLastDayIsYesterdayByTheDiarysDay_data()
    {
        QTest::addColumn<QByteArray>("zone");
        QTest::addColumn<int>("hours");
        QTest::addColumn<QByteArray>("dayStarts");
        QTest::addColumn<int>("minutes");

        QTest::newRow("default start of the day") << QByteArray("UTC") << 0 << QByteArray() << 240;
        QTest::newRow("midnight") << QByteArray("UTC") << 0 << QByteArray("00:00") << 0;
        QTest::newRow("late start") << QByteArray("UTC") << 0 << QByteArray("23:59") << 1439;
        QTest::newRow("far east") << QByteArray("EAST-14") << 14 << QByteArray("00:00") << 0;
        QTest::newRow("far west") << QByteArray("WEST12") << -12 << QByteArray("00:00") << 0;
    }

    void theLastDayIsYesterdayByTheDiarysDay()
    {
        QFETCH(QByteArray, zone);
        QFETCH(int, hours);
        QFETCH(QByteArray, dayStarts);
        QFETCH(int, minutes);
        TableFolder folder;
        writeDiary(folder);
        if (!dayStarts.isEmpty())
            folder.write("settings.csv", "key,value\nrest_days_after_visit,1\nday_starts," + dayStarts + "\n");
        const auto yesterday = [&] {
            const qint64 seconds = QDateTime::currentSecsSinceEpoch() + hours * 3600 - minutes * 60;
            return QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC).date().addDays(-1).toString(Qt::ISODate);
        };

        const QString before = yesterday();
        const QString asOf = run({QStringLiteral("measure"), folder.path()}, {.zone = zone}).object()[QLatin1String("asOf")].toString();
        const QString after = yesterday();

        QVERIFY2(asOf == before || asOf == after, qPrintable(asOf));
    }

    void measureAndCheckWriteNothing()
    {
        TableFolder folder;
        writeDiary(folder);
        TableFolder elsewhere;
        const QByteArray before = folder.contents();

        QCOMPARE(run({QStringLiteral("measure"), folder.path(), QStringLiteral("--text")}, {.folder = elsewhere.path()}).status, 0);
        QCOMPARE(run({QStringLiteral("check"), folder.path()}, {.folder = elsewhere.path()}).status, 0);

        QCOMPARE(folder.contents(), before);
        QCOMPARE(elsewhere.contents(), QByteArray());
    }

    void textIsAPageForPeople()
    {
        TableFolder folder;
        writeDiary(folder);

        const Outcome outcome = measure(folder, {QStringLiteral("--as-of"), QStringLiteral("2026-03-08"), QStringLiteral("--text")});

        QCOMPARE(outcome.status, 0);
        QVERIFY(outcome.out.startsWith("This adds up what was recorded. It gives no advice.\n"));
        QVERIFY(outcome.out.contains("\n  heel raise, right: stage 1 since 2 March 2026\n    sets      2 of 18 (11 %), 0 extra\n"));
        QVERIFY(outcome.out.contains("too few entries to say (2 of 7)"));
        QVERIFY(outcome.out.contains("  \"Pain this morning\", 0 (none) to 10\n"));
    }

    void checkAnswersForEveryInput()
    {
        TableFolder good;
        writeDiary(good);
        TableFolder bad;
        writeDiary(bad);
        bad.write("unusual.csv", "id,day,text,recorded_at\n,2026-13-01,x,\n");

        const Outcome outcome = run({QStringLiteral("check"), bad.path(), good.path()});

        QCOMPARE(outcome.status, 1);
        const QJsonArray answers = outcome.array();
        QCOMPARE(answers.size(), 2);
        QCOMPARE(answers[1][QLatin1String("input")].toString(), good.path());
        QCOMPARE(answers[1][QLatin1String("accepted")].toBool(), true);
        QCOMPARE(answers[1][QLatin1String("person")].toString(), QStringLiteral("p-1"));
        QCOMPARE(answers[1][QLatin1String("issues")].toArray().size(), 0);
        QCOMPARE(answers[0][QLatin1String("accepted")].toBool(true), false);
        const QJsonObject issue = answers[0][QLatin1String("issues")][0].toObject();
        QCOMPARE(issue[QLatin1String("file")].toString(), QStringLiteral("unusual.csv"));
        QCOMPARE(issue[QLatin1String("line")].toInt(), 2);
        QCOMPARE(issue[QLatin1String("column")].toInt(), 2);
        QCOMPARE(issue[QLatin1String("columnName")].toString(), QStringLiteral("day"));
        QCOMPARE(issue[QLatin1String("code")].toString(), QStringLiteral("value-refused"));
        QVERIFY(issue[QLatin1String("message")].toString().startsWith(
            QStringLiteral("unusual.csv, line 2, column 2 (day): '2026-13-01' is no day")));
        // With several inputs the sentence says which.
        QCOMPARE(outcome.sentences().size(), 1);
        QVERIFY(outcome.err.startsWith("'" + bad.path().toUtf8().left(36)));
    }

    void everyReasonIsListed()
    {
        TableFolder folder;
        writeDiary(folder);
        folder.write("mornings.csv", "id,day,pain,stiffness_min,recorded_at\n,2026-03-03,11,,\n,2026-03-04,4,-5,\n");
        folder.write("sets.csv", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\n,2026-03-02,morning,lunge,1,12,,,\n");

        const Outcome outcome = measure(folder, {});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.out, QByteArray());
        QCOMPARE(outcome.sentences().size(), 3);
    }
};

MORROW_SUITE(tst_measure_verb)
#include "tst_measure_verb.moc"
