// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "actions/adopt.h"
#include "base/file.h"
#include "core/store/small_disk.h"
#include "exchange/fhir.h"
#include "qml/home/stay.h"

#include <QDir>

namespace morrow::test {

/// What is handed over at a visit.
class tst_visit : public QObject
{
    Q_OBJECT

    static AskedQuestion &newest(VisitModel &visit)
    {
        auto questions = visit.questions();
        return *questions.at(&questions, 0);
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aQuestionIsWrittenAndTakenBack()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        visit.setShown(true);

        QVERIFY(!visit.ask(QStringLiteral("   ")));
        QVERIFY(visit.ask(QStringLiteral("  May I cycle again? ")));
        QCOMPARE(newest(visit).words, QStringLiteral("May I cycle again?"));
        QCOMPARE(stay.fresh().front().body, std::string(R"({"complaint":"heel","kind":"question","text":"May I cycle again?"})"));

        visit.takeBack(&newest(visit));
        QCOMPARE(newest(visit).words, QStringLiteral("Wedding on 9 May. Flat shoes or the ones with a small heel?"));
    }

    void aReplyStandsUnderItsQuestion()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        visit.setShown(true);

        auto questions = visit.questions();
        QCOMPARE(questions.count(&questions), 2);
        QCOMPARE(questions.at(&questions, 0)->reply, QString());
        QVERIFY(questions.at(&questions, 1)->reply.startsWith(QStringLiteral("They work the calf too.")));
    }

    void everyEntryOfTheFileCanBeRead()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        visit.setShown(true);
        QCOMPARE(visit.entries()->count(), 0);

        visit.setListed(true);

        QCOMPARE(visit.entries()->count(), 28);
        QCOMPARE(visit.entries()->all().front().text, QStringLiteral("22 April 2026"));
        QCOMPARE(visit.entries()->all().front().rows->all().front().text, QStringLiteral("pain 2, stiff for 5 min"));
        QVERIFY(visit.earlier() > 0);
        while (visit.earlier() > 0)
            visit.listEarlier();
        int listed = 0;
        for (const WordRow &day : visit.entries()->all())
            listed += day.rows->count();
        visit.save();
        const auto bytes = readFile((stay.files() + QStringLiteral("/morrow-summary-2026-04-23.json")).toStdString(), kMaxFhirBytes);
        QCOMPARE(listed, static_cast<int>(readFhir(*bytes)->entries.size()));

        visit.setListed(false);
        QCOMPARE(visit.entries()->count(), 0);
    }

    void theFileHoldsWhatThePreviewSays()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        visit.setShown(true);
        QCOMPARE(visit.days(), QStringLiteral("12 February 2026 to 22 April 2026"));
        const QString holds = visit.holds();
        visit.setName(QStringLiteral("Tomas E."));

        visit.save();

        QCOMPARE(visit.saveFailure(), QString());
        const QString path = stay.files() + QStringLiteral("/morrow-summary-2026-04-23.json");
        QCOMPARE(visit.saved(), QStringLiteral("Saved as ") + path);
        const auto bytes = readFile(path.toStdString(), kMaxFhirBytes);
        QVERIFY(bytes.has_value());
        const auto read = readFhir(*bytes);
        QVERIFY(read.has_value());
        QCOMPARE(read->person, std::string("ref-home"));
        QCOMPARE(read->name, std::string("Tomas E."));
        std::map<Kind, int> counts;
        for (const Entry &entry : read->entries)
            ++counts[entry.kind];
        QVERIFY2(holds.startsWith(QStringLiteral("%1 checks, ").arg(counts[Kind::Check])), qPrintable(holds));
        QCOMPARE(visit.handed(), QStringList{QStringLiteral("23 April 2026, with the days up to 22 April")});
    }

    void noFileIsEverWrittenOver()
    {
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        const QString first = stay.writeFile("morrow-summary-2026-04-23.json", "a letter");

        visit.save();
        visit.save();

        QCOMPARE(*readFile(first.toStdString(), 100), std::string("a letter"));
        QCOMPARE(QDir(stay.files()).entryList({QStringLiteral("morrow-summary*")}),
            (QStringList{QStringLiteral("morrow-summary-2026-04-23-2.json"), QStringLiteral("morrow-summary-2026-04-23-3.json"),
                QStringLiteral("morrow-summary-2026-04-23.json")}));
    }

    void whereThereIsNoRoomTheReasonIsSaid()
    {
        SmallDisk disk(1 << 20);
        if (!disk.isMounted())
            QSKIP("needs a mount of its own, which only root gets");
        Stay stay;
        stay.begin(bakerBefore(kMorning));
        stay.open();
        VisitModel &visit = *stay.session().visit();
        disk.fill();
        visit.setFolder(QString::fromStdString(disk.path().string()));

        visit.save();
        QCOMPARE(visit.saveFailure(), QStringLiteral("The summary was not saved. The disk is full. Free some space and try again."));
        QCOMPARE(visit.saved(), QString());
        QVERIFY(stay.fresh().empty());

        visit.setFolder(stay.files() + QStringLiteral("/nowhere"));
        visit.save();
        QCOMPARE(visit.saveFailure(), QStringLiteral("The summary was not saved. The file or its folder is not there."));
    }
};

MORROW_SUITE(tst_visit)

} // namespace morrow::test

#include "tst_visit.moc"
