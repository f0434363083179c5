// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "Entries/entry_words.h"

#include <QLocale>

namespace morrow::test {

/// An entry reads as the rest of a screen does.
class tst_entry_words : public QObject
{
    Q_OBJECT

    static QString said(Kind kind, const char *body)
    {
        return entryWords(Diary::from({Entry{"one", kind, *CivilDay::parse("2026-03-02"), {}, Author::Patient, {}, body}}), 0).what;
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void aDayIsSaidInWords()
    {
        QCOMPARE(said(Kind::Pause, R"({"reason":"travel","to":"2026-03-09"})"), QStringLiteral("pause, to 9 March 2026, travel"));
        QCOMPARE(said(Kind::Pause, R"({"withdrawn":1})"), QStringLiteral("taken back"));
    }

    void aNumberHasTheDecimalPointOfTheLanguage()
    {
        const QLocale before;
        QLocale::setDefault(QLocale::German);
        const QString german = said(Kind::Set, R"({"item":"squat","load_kg":2.5,"reps":8,"set":1,"slot":"morning"})");
        QLocale::setDefault(before);

        QCOMPARE(german, QStringLiteral("squat, set 1, 8 reps, 2,5 kg, morning"));
    }
};

MORROW_SUITE(tst_entry_words)

} // namespace morrow::test

#include "tst_entry_words.moc"
