// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/words.h"

#include <set>

using namespace morrow;
using namespace morrow::batch;

namespace {

constexpr int kLastCode = static_cast<int>(IssueCode::SumDiffers);
constexpr int kLastError = static_cast<int>(FileError::Io);
constexpr int kLastLeftOut = static_cast<int>(LeftOut::OriginOfDerived);

Issue someIssue(IssueCode code)
{
    return {.code = code, .file = "sets.csv", .line = 7, .column = 6, .columnName = "reps", .value = "-1", .other = "3", .rule = nullptr};
}

/// One sentence: one full stop, at its end; no line end, no two spaces.
bool isOneSentence(const QByteArray &text)
{
    return text.endsWith('.') && !text.contains('\n') && !text.contains("  ") && !text.contains(". ") && !text.contains("''");
}

} // namespace

/// Everything that can be wrong has one plain sentence and one name.
class tst_words : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void everyCodeHasOneSentenceThatSaysWhere()
    {
        for (int code = 0; code <= kLastCode; ++code) {
            const QByteArray text = QByteArray::fromStdString(sentence(someIssue(static_cast<IssueCode>(code)), "diary"));

            QVERIFY2(text.startsWith("sets.csv, line 7, column 6 (reps): "), text.constData());
            QVERIFY2(isOneSentence(text), text.constData());
            // At most 20 words behind the place.
            QVERIFY2(text.mid(text.indexOf(": ") + 2).split(' ').size() <= 20, text.constData());
            QVERIFY2(!text.contains("it is refused"), text.constData());
        }
    }

    void everyCodeHasAnotherSentenceAndName()
    {
        std::set<std::string> sentences;
        std::set<std::string_view> names;
        for (int code = 0; code <= kLastCode; ++code) {
            sentences.insert(sentence(someIssue(static_cast<IssueCode>(code)), "diary"));
            names.insert(codeName(static_cast<IssueCode>(code)));
        }

        QCOMPARE(sentences.size(), std::size_t{kLastCode + 1});
        QCOMPARE(names.size(), std::size_t{kLastCode + 1});
        QVERIFY(!names.contains(""));
    }

    void everyFileErrorHasASentenceForReadingAndForWriting()
    {
        std::set<std::string> reading;
        std::set<std::string> writing;
        for (int error = 0; error <= kLastError; ++error) {
            Issue issue{.code = IssueCode::Unreadable, .file = "sets.csv"};
            issue.fileError = static_cast<FileError>(error);
            const std::string read = sentence(issue, "diary");
            const std::string written = sentence(static_cast<FileError>(error), "out");
            QVERIFY2(isOneSentence(QByteArray::fromStdString(read)), read.c_str());
            QVERIFY2(isOneSentence(QByteArray::fromStdString(written)), written.c_str());
            QVERIFY2(read.starts_with("sets.csv: "), read.c_str());
            QVERIFY2(written.starts_with("out was not written: "), written.c_str());
            reading.insert(read);
            writing.insert(written);
        }

        QCOMPARE(reading.size(), std::size_t{kLastError + 1});
        QCOMPARE(writing.size(), std::size_t{kLastError + 1});
    }

    void whatIsLeftOutHasWordsAndAName()
    {
        std::set<std::string_view> all;
        for (int what = 0; what <= kLastLeftOut; ++what) {
            all.insert(words(static_cast<LeftOut>(what)));
            all.insert(codeName(static_cast<LeftOut>(what)));
        }

        QCOMPARE(all.size(), std::size_t{2 * (kLastLeftOut + 1)});
        QVERIFY(!all.contains(""));
    }

    void everyFormIsDescribed()
    {
        std::set<std::string> sentences;
        for (int form = 0; form <= static_cast<int>(Form::List); ++form) {
            const FieldRule rule{
                .field = Field::Reps, .form = static_cast<Form>(form), .least = Decimal::whole(1), .most = Decimal::whole(7)};
            Issue issue = someIssue(IssueCode::ValueRefused);
            issue.rule = &rule;
            const std::string text = sentence(issue, "diary");
            QVERIFY2(isOneSentence(QByteArray::fromStdString(text)) || rule.form == Form::Choice, text.c_str());
            QVERIFY2(text.starts_with("sets.csv, line 7, column 6 (reps): '-1' is "), text.c_str());
            sentences.insert(text);
        }

        QCOMPARE(sentences.size(), static_cast<std::size_t>(Form::List) + 1);
    }

    void boundsAreSaidAsTheyAre_data()
    {
        QTest::addColumn<int>("form");
        QTest::addColumn<int>("least");
        QTest::addColumn<int>("most");
        QTest::addColumn<QByteArray>("said");

        QTest::newRow("from, to") << static_cast<int>(Form::Whole) << 0 << 10 << QByteArray("is not a whole number from 0 to 10.");
        QTest::newRow("decimals") << static_cast<int>(Form::Number) << 0 << 1
                                  << QByteArray("is not a number from 0 to 1 with at most 3 decimals.");
        QTest::newRow("no bound above") << static_cast<int>(Form::Whole) << 1 << 999'999'999
                                        << QByteArray("is not a whole number of 1 or more.");
        QTest::newRow("one value") << static_cast<int>(Form::Whole) << 1 << 1 << QByteArray("is not 1.");
    }

    void boundsAreSaidAsTheyAre()
    {
        QFETCH(int, form);
        QFETCH(int, least);
        QFETCH(int, most);
        QFETCH(QByteArray, said);
        const FieldRule rule{
            .field = Field::Reps, .form = static_cast<Form>(form), .least = Decimal::whole(least), .most = Decimal::whole(most)};
        Issue issue = someIssue(IssueCode::ValueRefused);
        issue.rule = &rule;

        QVERIFY(QByteArray::fromStdString(sentence(issue, "diary")).endsWith("'-1' " + said));
    }

    void theOtherPlaceOfAnIdIsNamed()
    {
        Issue issue = someIssue(IssueCode::TwoContentsForOneId);
        const auto ending = [&issue](const char *other) {
            issue.other = other;
            return QByteArray::fromStdString(sentence(issue, "diary")).mid(35);
        };

        QCOMPARE(ending("3"), QByteArray("the id '-1' stands on line 3 with another content."));
        QCOMPARE(ending("mornings.csv:12"), QByteArray("the id '-1' stands in mornings.csv, line 12 with another content."));
        QCOMPARE(ending("plan.csv"), QByteArray("the id '-1' stands in plan.csv with another content."));
    }

    void anIssueAboutTheWholeInputNamesIt()
    {
        QCOMPARE(sentence(Issue{.code = IssueCode::FolderMissing}, "a diary"), std::string("a diary: there is no folder of tables here."));
    }

    void valuesAreShortenedAndCannotSteer_data()
    {
        QTest::addColumn<QByteArray>("value");
        QTest::addColumn<QByteArray>("text");

        QTest::newRow("short") << QByteArray("4.5") << QByteArray("'4.5'");
        QTest::newRow("40 characters") << QByteArray(40, 'x') << QByteArray("'" + QByteArray(40, 'x') + "'");
        QTest::newRow("41 characters") << QByteArray(41, 'x') << QByteArray("'" + QByteArray(37, 'x') + "...'");
        QTest::newRow("many words") << QByteArray("one two three four five six seven eight nine ten")
                                    << QByteArray("'one two three four five six seven eig...'");
        QTest::newRow("characters, not bytes") << QByteArray("ø").repeated(41) << QByteArray("'" + QByteArray("ø").repeated(37) + "...'");
        QTest::newRow("a line end") << QByteArray("a\nb") << QByteArray("'a<U+000A>b'");
        QTest::newRow("a direction mark") << QByteArray("\xe2\x80\x8f"
                                                        "b")
                                          << QByteArray("'<U+200F>b'");
        QTest::newRow("no text") << QByteArray("\xff") << QByteArray("'<xFF>'");
    }

    void valuesAreShortenedAndCannotSteer()
    {
        QFETCH(QByteArray, value);
        QFETCH(QByteArray, text);

        QCOMPARE(QByteArray::fromStdString(shown(value.toStdString())), text);
    }
};

MORROW_SUITE(tst_words)
#include "tst_words.moc"
