// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/remarks.h"
#include "support/json_text.h"

using namespace morrow;
using namespace morrow::test;

namespace {

Entry told(Kind kind, const char *day, const char *body, const char *id, const char *replaces = "")
{
    Entry entry{id, kind, *CivilDay::parse(day), {}, Author::Patient, {}, json(body)};
    if (*replaces != '\0')
        entry.replaces = replaces;
    return entry;
}

Entry check(const char *values, const char *id, const char *replaces = "")
{
    return told(Kind::Check, "2026-03-03", ("{'complaint':'heel'," + std::string(values) + "}").c_str(), id, replaces);
}

Remarks remarksOf(std::vector<Entry> entries)
{
    return Remarks::of(Diary::from(std::move(entries)));
}

std::size_t corrections(std::vector<Entry> entries)
{
    return remarksOf(std::move(entries)).corrections.size();
}

} // namespace

/// What people wrote is there once, and a value that was changed is known to have been.
class tst_remarks : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aNoteSaysWhatItIsAboutAndThoseOfADayStandInOrder()
    {
        const Remarks found = remarksOf({
            told(Kind::Note, "2026-03-04", "{'about':'q','complaint':'heel','kind':'reply','text':'Yes.'}", "r"),
            told(Kind::Note, "2026-03-03", "{'complaint':'heel','item':'raise','kind':'unsure'}", "u"),
            told(Kind::Note, "2026-03-03", "{'complaint':'heel','kind':'question','text':'May I run?'}", "q"),
        });

        QCOMPARE(found.notes.size(), 3U);
        QCOMPARE(found.notes[0].kind, NoteKind::Question);
        QCOMPARE(found.notes[0].text, std::string("May I run?"));
        QCOMPARE(found.notes[1].kind, NoteKind::Unsure);
        QCOMPARE(found.notes[1].item, std::string("raise"));
        QCOMPARE(found.notes[2].kind, NoteKind::Reply);
        QCOMPARE(found.notes[2].about, std::string("q"));
    }

    void aNoteThatWasReplacedOrWithdrawnIsGone()
    {
        const Remarks found = remarksOf({
            told(Kind::Note, "2026-03-03", "{'complaint':'heel','kind':'note','text':'old'}", "a"),
            told(Kind::Note, "2026-03-03", "{'complaint':'heel','kind':'note','text':'new'}", "b", "a"),
            told(Kind::Unusual, "2026-03-03", "{'text':'moved house'}", "c"),
            told(Kind::Unusual, "2026-03-03", "{'text':'gone','withdrawn':1}", "d", "c"),
            told(Kind::Memo, "2026-03-03", "{'next_time':'ask about shoes','visit':'v'}", "m"),
        });

        QCOMPARE(found.notes.size(), 1U);
        QCOMPARE(found.notes[0].text, std::string("new"));
        QVERIFY(found.unusual.empty());
        QCOMPARE(found.memos.size(), 1U);
        QCOMPARE(found.memos[0].nextTime, std::string("ask about shoes"));
        QCOMPARE(found.memos[0].visit, std::string("v"));
    }

    void aCorrectionIsOneThatChangesOrRemovesAValue_data()
    {
        QTest::addColumn<QString>("before");
        QTest::addColumn<QString>("after");
        QTest::addColumn<int>("count");

        QTest::newRow("another pain") << "'pain':3"
                                      << "'pain':4" << 1;
        QTest::newRow("the same pain") << "'pain':3"
                                       << "'pain':3" << 0;
        QTest::newRow("no pain any more") << "'pain':3"
                                          << "'declined':1" << 1;
        QTest::newRow("withdrawn") << "'pain':3"
                                   << "'withdrawn':1" << 1;
        QTest::newRow("a value where there was none") << "'declined':1"
                                                      << "'pain':3" << 0;
        QTest::newRow("minutes added, pain kept") << "'pain':3"
                                                  << "'pain':3,'stiffness_min':10" << 0;
    }

    void aCorrectionIsOneThatChangesOrRemovesAValue()
    {
        QFETCH(QString, before);
        QFETCH(QString, after);
        QFETCH(int, count);

        QCOMPARE(corrections({check(qPrintable(before), "a"), check(qPrintable(after), "b", "a")}), static_cast<std::size_t>(count));
    }

    void aChainOfCorrectionsIsOneWhereverTheValueChanged()
    {
        const Remarks found
            = remarksOf({check("'pain':3", "a"), check("'pain':4", "b", "a"), check("'pain':4", "c", "b"), check("'pain':9", "x")});

        QCOMPARE(found.corrections.size(), 1U);
        QCOMPARE(found.corrections[0].entry, 2U);
        QCOMPARE(found.corrections[0].before, (std::vector<EntryIndex>{1, 0}));
        QCOMPARE(found.corrections[0].about, std::string("heel"));
    }

    void aLoopOfCorrectionsEnds()
    {
        QCOMPARE(corrections({check("'pain':3", "a", "b"), check("'pain':4", "b", "a")}), 0U); // neither counts
        QCOMPARE(corrections({check("'pain':3", "a", "b"), check("'pain':4", "b", "a"), check("'pain':5", "c", "a")}), 1U);
    }

    void anotherKindCorrectsNothing()
    {
        QCOMPARE(corrections({check("'pain':3", "a"),
                     told(Kind::Session, "2026-03-03", "{'complaint':'heel','pain_after':4,'slot':'day'}", "b", "a")}),
            0U);
    }
};

MORROW_SUITE(tst_remarks)

#include "tst_remarks.moc"
