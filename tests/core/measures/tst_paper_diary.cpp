// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include "exchange/tables.h"

using namespace morrow;
using namespace morrow::test;

namespace {

/// The measures of demo-data/paper as of its last day.
ComplaintMeasures paper()
{
    const auto read = readTables(MORROW_DEMO_DATA "/paper");
    if (!read)
        qFatal("demo-data/paper cannot be read");
    return measure(Diary::from(read->entries), day("2026-04-27")).value().at(0);
}

} // namespace

/// The diary that was typed by hand comes to what its author counted from the rows,
/// without the program (demo-data/README.md).
class tst_paper_diary : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void itsExercisesComeToWhatWasCountedByHand_data()
    {
        QTest::addColumn<int>("place");
        QTest::addColumn<int>("setsDue");
        QTest::addColumn<int>("setsDone");
        QTest::addColumn<int>("setsExtra");
        QTest::addColumn<int>("sessionsDue");
        QTest::addColumn<int>("attended");
        QTest::addColumn<int>("complete");

        QTest::newRow("heel-raise") << 0 << 113 << 81 << 10 << 27 << 21 << 17;
        QTest::newRow("stretch") << 1 << 62 << 52 << 2 << 62 << 52 << 52;
    }

    void itsExercisesComeToWhatWasCountedByHand()
    {
        QFETCH(int, place);
        QFETCH(int, setsDue);
        QFETCH(int, setsDone);
        QFETCH(int, setsExtra);
        QFETCH(int, sessionsDue);
        QFETCH(int, attended);
        QFETCH(int, complete);

        const ItemMeasures item = paper().items.at(static_cast<std::size_t>(place));

        QCOMPARE(item.item, std::string(QTest::currentDataTag()));
        QCOMPARE(item.adherence.setsDue, setsDue);
        QCOMPARE(item.adherence.setsDone, setsDone);
        QCOMPARE(item.adherence.setsExtra, setsExtra);
        QCOMPARE(item.adherence.sessionsDue, sessionsDue);
        QCOMPARE(item.adherence.sessionsAttended, attended);
        QCOMPARE(item.adherence.sessionsComplete, complete);
    }

    void itsMorningsComeToWhatWasCountedByHand()
    {
        const CheckMeasures check = paper().check;

        QCOMPARE(check.expected, 71);
        QCOMPARE(check.recorded, 60);
        QCOMPARE(check.sameDay, 12);
        QCOMPARE(check.late, 2);
        QCOMPARE(check.paper, 46);
        QCOMPARE(check.declined, 1);
        QCOMPARE(check.firstWeek, std::optional(6.0));
        QCOMPARE(check.current, std::optional(2.0));
        QCOMPARE(check.change, std::optional(-4.0));
    }
};

MORROW_SUITE(tst_paper_diary)

#include "tst_paper_diary.moc"
