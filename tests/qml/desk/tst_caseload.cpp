// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "Desk/caseload_model.h"
#include "Desk/desk_words.h"
#include "qml/desk/sitting.h"
#include "support/diary_builder.h"

#include <QAbstractItemModelTester>

namespace morrow::test {

namespace {

constexpr Moment kMorning{1'772'434'800'000, 60}; // 2026-03-02T08:00+01:00

CaseCard card(const std::string &person, const std::string &label, std::vector<Look> looks = {})
{
    return {.person = person, .known = {.label = label}, .looks = std::move(looks)};
}

QString shown(const CaseloadModel &model)
{
    QStringList names;
    for (int row = 0; row < model.rowCount(); ++row)
        names << model.data(model.index(row), model.roleNames().key("label")).toString();
    return names.join(QStringLiteral("; "));
}

} // namespace

/// Who needs a look stands first, with the reason in words.
class tst_caseload : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aSignThatNobodyAnsweredForIsTheReason()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "2026-02-01", {onDays(1, 10)})).check("2026-03-01", 2);
        builder.entry(Kind::Flag, "2026-03-01", body({{Field::Sign, std::string("numb foot")}}), {.id = "sign"});
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)), QStringLiteral("Sign not cleared"));

        std::vector<Entry> entries = builder.entry(Kind::Cleared, "2026-03-02", body({{Field::Flag, std::string("sign")}})).entries();
        for (Entry &entry : entries)
            entry.author = entry.kind == Kind::Cleared ? Author::Clinic : entry.author;
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", entries, kMorning)), QStringLiteral("Last entry 1 March 2026"));
    }

    void aWeekWithoutAnEntryIsAReasonWhileAPlanRuns()
    {
        DiaryBuilder builder;
        builder.item(until(item("raise", "2026-02-01", {onDays(1, 10)}), "2026-03-01")).check("2026-02-22", 2);
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)), QStringLiteral("No entry for 7 days"));

        builder.check("2026-02-23", 2);
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)), QStringLiteral("Last entry 23 February 2026"));

        const Moment later{kMorning.utcMs + 30 * 86'400'000LL, 60};
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", builder.entries(), later)), QStringLiteral("Last entry 23 February 2026"));
    }

    void anUnsettledDayIsAReasonAndTwoInARowAnother()
    {
        DiaryBuilder builder;
        builder.item(item("raise", "2026-02-01", {onDays(1, 10)}));
        builder.checks("2026-02-18", {2, 2, 2, 2, 2, 2, 2, 2, 2, 5});
        builder.sets("2026-02-26", "morning", "raise", 1, 10);
        QVERIFY(DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)).startsWith(QStringLiteral("Response unsettled")));
        QVERIFY(!DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)).contains(QStringLiteral("twice")));

        builder.check("2026-02-28", 6).sets("2026-02-27", "morning", "raise", 1, 10);
        QCOMPARE(DeskWords::reasonsOf(cardOf("ref", builder.entries(), kMorning)), QStringLiteral("Response unsettled twice"));
    }

    void theMorePressingReasonStandsFirstThenTheName()
    {
        CaseloadModel model;
        const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
        model.put(card("1", "Zoe"));
        model.put(card("2", "Anna"));
        model.put(card("3", "Mia", {{LookReason::RuleMet, 3}}));
        model.put(card("4", "Yves", {{LookReason::SignOpen}}));
        model.put(card("5", "Bea", {{LookReason::Silent, 9}, {LookReason::RuleMet, 2}}));
        model.put(card("6", ""));

        QCOMPARE(shown(model), QStringLiteral("Yves; Bea; Mia; Anna; Zoe; No name yet"));

        model.put(card("4", "Yves"));
        QCOMPARE(shown(model), QStringLiteral("Bea; Mia; Anna; Yves; Zoe; No name yet"));
        model.remove("5");
        QCOMPARE(shown(model), QStringLiteral("Mia; Anna; Yves; Zoe; No name yet"));
    }

    void searchFindsEveryWordInNameYearOrFileNumber()
    {
        CaseloadModel model;
        const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
        model.put({.person = "1", .known = {"Ek, Tomas", "2207", 1968}});
        model.put({.person = "2", .known = {"Ek, Anna", "1180", 1968}});

        model.setSearch(QStringLiteral("ek"));
        QCOMPARE(model.rowCount(), 2);
        model.setSearch(QStringLiteral(" 1968  tomas "));
        QCOMPARE(shown(model), QStringLiteral("Ek, Tomas"));
        model.setSearch(QStringLiteral("1180"));
        QCOMPARE(shown(model), QStringLiteral("Ek, Anna"));
        // Whoever comes while a search stands is shown only if it finds them.
        model.put({.person = "3", .known = {"Lund, Per", "2340", 1990}});
        QCOMPARE(model.rowCount(), 1);
        model.remove("2");
        QCOMPARE(model.rowCount(), 0);
        model.setSearch({});
        QCOMPARE(model.rowCount(), 2);
    }
};

MORROW_SUITE(tst_caseload)

} // namespace morrow::test

#include "tst_caseload.moc"
