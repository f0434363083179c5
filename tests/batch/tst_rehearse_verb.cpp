// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/program.h"
#include "batch/table_folder.h"

#include <QDate>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

using namespace morrow::test;

namespace {

Outcome rehearse(const TableFolder &folder, const QStringList &more)
{
    return run(QStringList{QStringLiteral("rehearse"), folder.path(), QStringLiteral("--as-of"), QStringLiteral("2026-03-08")} + more);
}

/// The spans of the first item.
QJsonArray spansIn(const QByteArray &out)
{
    const QJsonObject complaint = QJsonDocument::fromJson(out)[QStringLiteral("complaints")][0].toObject();
    return complaint[QStringLiteral("items")][0][QStringLiteral("spans")].toArray();
}

/// What the rule compares \a condition with in the first of \a spans.
QJsonValue limitOf(const QJsonArray &spans, const char *condition)
{
    for (const QJsonValue &reason : spans[0][QStringLiteral("progression")][QStringLiteral("reasons")].toArray()) {
        if (reason[QStringLiteral("condition")] == QLatin1String(condition))
            return reason[QStringLiteral("limit")];
    }
    return {};
}

} // namespace

/// A rule is tried on a folder that nobody changes.
class tst_rehearse_verb : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void spansReachFromTheFirstDayToTheLast()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        const QByteArray before = folder.contents();

        const Outcome outcome = rehearse(folder, {});
        const QJsonArray spans = spansIn(outcome.out);

        QCOMPARE(outcome.status, 0);
        QCOMPARE(outcome.err, QByteArray());
        QCOMPARE(spans.first()[QStringLiteral("from")].toString(), QStringLiteral("2026-03-02"));
        QCOMPARE(spans.last()[QStringLiteral("to")].toString(), QStringLiteral("2026-03-08"));
        QCOMPARE(spans.last()[QStringLiteral("progression")][QStringLiteral("decision")].toString(), QStringLiteral("hold"));
        QCOMPARE(folder.contents(), before);
    }

    void eachDayOfASpanHasItsValues()
    {
        TableFolder folder;
        writeSmallDiary(folder);

        const QJsonArray spans = spansIn(rehearse(folder, {}).out);
        QDate day(2026, 3, 2);
        for (const QJsonValue &span : spans) {
            for (const QJsonValue &one : span[QStringLiteral("days")].toArray()) {
                QCOMPARE(one[QStringLiteral("day")].toString(), day.toString(Qt::ISODate));
                const QJsonValue first = one[QStringLiteral("reasons")][0];
                QCOMPARE(first[QStringLiteral("condition")].toString(), QStringLiteral("days-in-stage"));
                QCOMPARE(first[QStringLiteral("value")].toInt(), static_cast<int>(QDate(2026, 3, 1).daysTo(day)));
                day = day.addDays(1);
            }
        }
        QCOMPARE(day, QDate(2026, 3, 9)); // one after the last
    }

    void anOfferThatWaitsSaysForWhat()
    {
        const Outcome outcome = run({QStringLiteral("rehearse"), QStringLiteral(MORROW_DEMO_DATA "/runner"), QStringLiteral("--as-of"),
            QStringLiteral("2026-05-03")});
        const QJsonValue last = spansIn(outcome.out).last();

        QVERIFY(last[QStringLiteral("progression")][QStringLiteral("waits")].toBool());
        const QJsonValue other = last[QStringLiteral("waitsFor")][0];
        QCOMPARE(other[QStringLiteral("item")].toString(), QStringLiteral("leg-press"));
        QCOMPARE(other[QStringLiteral("because")].toString(), QStringLiteral("stepped-up"));
        QCOMPARE(other[QStringLiteral("changed")].toString(), QStringLiteral("2026-04-27"));
    }

    void aPlanThatWouldContradictItselfIsRefused()
    {
        TableFolder folder;
        writeSmallDiary(folder);

        const Outcome outcome = rehearse(folder, {QStringLiteral("--set"), QStringLiteral("rest_days_after_visit=0")});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.out, QByteArray());
        QCOMPARE(outcome.err,
            QByteArray("That plan would contradict itself: its rest_days_after_visit does not go with its rests_after_visit.\n"));
    }

    void everySettingThatIsGivenCounts()
    {
        TableFolder folder;
        writeSmallDiary(folder);

        const QJsonArray spans = spansIn(rehearse(folder,
            {QStringLiteral("--set"), QStringLiteral("during_limit=3"), QStringLiteral("--set"), QStringLiteral("step_adherence=0.5")})
                                             .out);

        QCOMPARE(limitOf(spans, "pain-during"), QJsonValue(3));
        QCOMPARE(limitOf(spans, "adherence"), QJsonValue(0.5));
        QCOMPARE(limitOf(spansIn(rehearse(folder, {}).out), "pain-during"), QJsonValue(5));
    }

    void aProposedPlanTakesThePlaceOfTheOneThatIsThere()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder plan;
        writeSmallDiary(plan);
        plan.write("settings.csv", "key,value\npatient_ref,p-1\nrest_days_after_visit,1\nafter_limit,2\n");

        const Outcome outcome = rehearse(folder, {QStringLiteral("--plan"), plan.path()});

        QCOMPARE(outcome.status, 0);
        QCOMPARE(limitOf(spansIn(outcome.out), "pain-after"), QJsonValue(2));
    }

    void aPlanOfSomethingElseIsRefused()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder plan;
        writeSmallDiary(plan);
        plan.write("plan.csv", QByteArray(kPlanHeader) + "\nother,lunge,right,1,3,12,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,,,,1\n");
        for (const char *const name : {"stages.csv", "sets.csv"})
            QVERIFY(QFile::remove(plan.path(name)));

        const Outcome outcome = rehearse(folder, {QStringLiteral("--plan"), plan.path()});

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.out, QByteArray());
        QVERIFY2(outcome.err.contains(" holds no plan for a complaint of "), outcome.err.constData());
    }

    void aDiaryWithoutAPlanIsRefused()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        folder.write("plan.csv", QByteArray(kPlanHeader) + "\n");
        folder.write("settings.csv", "key,value\npatient_ref,p-1\n");
        for (const char *const name : {"stages.csv", "sets.csv"})
            QVERIFY(QFile::remove(folder.path(name)));

        const Outcome outcome = rehearse(folder, {});

        QCOMPARE(outcome.status, 1);
        QVERIFY2(outcome.err.contains(" holds no plan whose rule could be rehearsed."), outcome.err.constData());
    }

    void aPlanThatIsNotThereIsRefused()
    {
        TableFolder folder;
        writeSmallDiary(folder);

        QCOMPARE(rehearse(folder, {QStringLiteral("--plan"), folder.path("nowhere")}).status, 1);
    }
};

MORROW_SUITE(tst_rehearse_verb)

#include "tst_rehearse_verb.moc"
