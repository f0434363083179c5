// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "Desk/desk_words.h"

#include <array>

namespace morrow::test {

namespace {

template<class Code, std::size_t count>
QStringList sentencesOf(const std::array<Code, count> &codes)
{
    QStringList all;
    for (const Code code : codes)
        all << DeskWords::sentence(code);
    return all;
}

/// What is wrong with \a sentences: one that is empty, two alike, one of more than 20 words.
QString faults(const QStringList &sentences)
{
    QStringList seen;
    for (const QString &sentence : sentences) {
        if (!sentence.endsWith(QLatin1Char('.')) && !sentence.endsWith(QLatin1Char('?')))
            return QStringLiteral("no sentence: ") + sentence;
        for (const QString &part : sentence.split(QRegularExpression(QStringLiteral("[.?] ?")), Qt::SkipEmptyParts)) {
            if (part.split(QLatin1Char(' ')).size() > 20)
                return QStringLiteral("too long: ") + part;
        }
        if (seen.contains(sentence))
            return QStringLiteral("said twice: ") + sentence;
        seen << sentence;
    }
    return {};
}

} // namespace

/// Each code has one message of its own, in short sentences.
class tst_desk_words : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void everyStoreErrorHasASentenceOfItsOwn()
    {
        using enum StoreError;
        QCOMPARE(faults(sentencesOf(std::array{Missing, NotADiary, Newer, Busy, Full, ReadOnly, Io, Damaged, Refused})), QString());
    }

    void everyFileErrorHasASentenceOfItsOwn()
    {
        using enum FileError;
        QCOMPARE(faults(sentencesOf(std::array{Missing, Exists, NotRegular, TooLarge, NoPermission, Full, ReadOnly, Io})), QString());
    }

    void everyReaderFaultHasASentenceOfItsOwn()
    {
        using enum ReaderFault;
        QCOMPARE(faults(sentencesOf(std::array{NotStarted, Crashed, Hung, Hungry, Garbled})), QString());
    }

    void everyReasonAgainstAFileHasASentenceOfItsOwn()
    {
        QStringList all;
        for (const auto code : {TakeInProblem::Code::Waits, TakeInProblem::Code::UnknownPerson, TakeInProblem::Code::AnotherPerson,
                 TakeInProblem::Code::ErasedPerson, TakeInProblem::Code::SetAside, TakeInProblem::Code::OfADesk})
            all << DeskWords::sentence(TakeInProblem{.code = code});
        for (const auto code : {Clash::Code::TwoContentsForOneId, Clash::Code::ComplaintOfAnotherPlan, Clash::Code::ItemOfAnotherPlan})
            all << DeskWords::sentence(TakeInProblem{.code = TakeInProblem::Code::Clashes, .clash = Clash{code, "x"}});
        QCOMPARE(faults(all), QString());
    }

    void anIssueIsSaidWithItsPlace()
    {
        const Issue issue{.code = IssueCode::ElementRefused, .pointer = "/entry/3/resource", .value = "66"};
        QCOMPARE(DeskWords::sentence(issue), QStringLiteral("At /entry/3/resource: “66” cannot stand here."));
    }

    void everyIssueIsASentence()
    {
        for (int code = 0; code <= static_cast<int>(IssueCode::SumDiffers); ++code)
            QCOMPARE(faults({DeskWords::sentence(Issue{.code = static_cast<IssueCode>(code)})}), QString());
    }

    void oneAndManyAreSaidApart()
    {
        const auto silent = [](int days) { return DeskWords::reasonsOf({.looks = {{LookReason::Silent, days}}}); };
        QCOMPARE(silent(1), QStringLiteral("No entry for 1 day"));
        QCOMPARE(silent(9), QStringLiteral("No entry for 9 days"));
    }
};

MORROW_SUITE(tst_desk_words)

} // namespace morrow::test

#include "tst_desk_words.moc"
