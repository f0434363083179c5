// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "exchange/csv.h"
#include "support/typed_cells.h"
#include "support/typed_table.h"

#include <rapidcheck.h>

#include <optional>

using namespace morrow;
using namespace morrow::test;

namespace {

using Rows = std::vector<std::vector<std::string>>;

/// What a reader makes of \a bytes: the rows up to the end or an error.
struct Taken
{
    Rows rows;
    std::vector<std::vector<int>> lines;
    std::optional<CsvError> error;
    int errorLine;
    int errorColumn;
};

Taken take(std::string bytes)
{
    CsvReader reader(bytes);
    Taken taken{};
    while (const auto *const cells = reader.next()) {
        taken.rows.emplace_back();
        taken.lines.emplace_back();
        for (const CsvCell &cell : *cells) {
            taken.rows.back().emplace_back(cell.text);
            taken.lines.back().push_back(cell.line);
        }
    }
    taken.error = reader.error();
    taken.errorLine = reader.errorLine();
    taken.errorColumn = reader.errorColumn();
    return taken;
}

} // namespace

/// Tables come apart by RFC 4180, and nothing in a cell is run as a formula.
class tst_csv : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void rowsComeApartByRfc4180_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QList<QByteArrayList>>("rows");
        const auto row = [](std::initializer_list<const char *> cells) { return QByteArrayList(cells.begin(), cells.end()); };
        using Table = QList<QByteArrayList>;

        // RFC 4180, section 2, rules 1 to 7.
        QTest::newRow("1: each record on a line")
            << QByteArray("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") << Table({row({"aaa", "bbb", "ccc"}), row({"zzz", "yyy", "xxx"})});
        QTest::newRow("2: no break behind the last")
            << QByteArray("aaa,bbb\r\nzzz,yyy") << Table({row({"aaa", "bbb"}), row({"zzz", "yyy"})});
        QTest::newRow("4: spaces are part of a field") << QByteArray(" a , b ") << Table({row({" a ", " b "})});
        QTest::newRow("5: fields in quotes") << QByteArray("\"aaa\",\"bbb\",ccc") << Table({row({"aaa", "bbb", "ccc"})});
        QTest::newRow("6: breaks, quotes and commas in quotes")
            << QByteArray("\"aaa\",\"b\r\nb,b\",\"ccc\"\r\nzzz") << Table({row({"aaa", "b\r\nb,b", "ccc"}), row({"zzz"})});
        QTest::newRow("7: a quote is doubled") << QByteArray("\"aaa\",\"b\"\"bb\"") << Table({row({"aaa", "b\"bb"})});
        QTest::newRow("a quote alone") << QByteArray("\"\"\"\"") << Table({row({"\""})});
        QTest::newRow("an empty quoted field") << QByteArray("\"\",a") << Table({row({"", "a"})});
        QTest::newRow("empty fields") << QByteArray(",,") << Table({row({"", "", ""})});
        QTest::newRow("LF alone ends a line") << QByteArray("a\nb\n") << Table({row({"a"}), row({"b"})});
        QTest::newRow("a byte order mark is passed over") << QByteArray("\xef\xbb\xbf\"a\",b") << Table({row({"a", "b"})});
        QTest::newRow("a byte order mark further in is text") << QByteArray("a,\xef\xbb\xbf") << Table({row({"a", "\xef\xbb\xbf"})});
        QTest::newRow("an empty line is a row of one empty cell") << QByteArray("a\r\n\r\nb") << Table({row({"a"}), row({""}), row({"b"})});
        QTest::newRow("nothing") << QByteArray("") << QList<QByteArrayList>();
    }

    void rowsComeApartByRfc4180()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QList<QByteArrayList>, rows);

        const Taken taken = take(bytes.toStdString());

        QVERIFY(!taken.error);
        QList<QByteArrayList> found;
        for (const auto &row : taken.rows) {
            found.emplace_back();
            for (const std::string &cell : row)
                found.back().append(QByteArray::fromStdString(cell));
        }
        QCOMPARE(found, rows);
    }

    void aCellKnowsTheLineItBeginsOn()
    {
        const Taken taken = take("a,\"b\nb\r\nb\",c\nd,e,f");

        QCOMPARE(taken.lines, (std::vector<std::vector<int>>{{1, 1, 3}, {4, 4, 4}}));
    }

    void nothingElseIsForgiven_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<int>("error");
        QTest::addColumn<int>("line");
        QTest::addColumn<int>("column");
        const auto row = [](const char *name, const char *bytes, CsvError error, int line, int column) {
            QTest::newRow(name) << QByteArray(bytes) << static_cast<int>(error) << line << column;
        };

        row("an open quote, where it opens", "a,b\nc,\"d\ne\nf", CsvError::OpenQuote, 2, 2);
        row("an open quote at the end", "a,\"", CsvError::OpenQuote, 1, 2);
        row("an open quote behind a doubled one", "\"a\"\"", CsvError::OpenQuote, 1, 1);
        row("a quote in an unquoted cell", "a\nb,c\"d", CsvError::StrayQuote, 2, 2);
        row("text behind a quote", "\"a\"b", CsvError::StrayQuote, 1, 1);
        row("a space behind a quote", "\"a\" ,b", CsvError::StrayQuote, 1, 1);
        row("text behind a quote that closed further down", "\"a\nb\"c", CsvError::StrayQuote, 2, 1);
        row("a return alone", "a,b\rc", CsvError::LoneReturn, 1, 2);
        row("a return at the end", "a\r", CsvError::LoneReturn, 1, 1);
        row("a return alone behind a quote", "\"a\"\rb", CsvError::StrayQuote, 1, 1);
    }

    void nothingElseIsForgiven()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(int, error);
        QFETCH(int, line);
        QFETCH(int, column);

        const Taken taken = take(bytes.toStdString());

        QVERIFY(taken.error);
        QCOMPARE(static_cast<int>(*taken.error), error);
        QCOMPARE(taken.errorLine, line);
        QCOMPARE(taken.errorColumn, column);
    }

    void whatIsWrittenIsReadAgain()
    {
        const bool holds = rc::check("rows -> bytes -> rows", [] {
            const auto width = *rc::gen::inRange(1, 5);
            const auto rows = *rc::gen::container<Rows>(rc::gen::container<std::vector<std::string>>(static_cast<std::size_t>(width),
                rc::gen::container<std::string>(
                    rc::gen::oneOf(rc::gen::element('a', ',', '"', '\r', '\n', ' ', '\0'), rc::gen::arbitrary<char>()))));
            std::string bytes;
            for (const auto &row : rows) {
                for (std::size_t i = 0; i < row.size(); ++i) {
                    bytes += i > 0 ? "," : "";
                    appendCsvCell(bytes, row[i]);
                }
                bytes += "\r\n";
            }
            RC_PRE(!bytes.starts_with("\xef\xbb\xbf"));

            const Taken taken = take(bytes);

            RC_ASSERT(!taken.error);
            RC_ASSERT(taken.rows == rows);
        });
        QVERIFY(holds);
    }

    void i4_aFormulaIsWrittenAsText_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("cell");
        const auto row
            = [](const char *name, const char *text, const char *cell) { QTest::newRow(name) << QByteArray(text) << QByteArray(cell); };

        row("a formula", "=1+1", "'=1+1");
        row("a plus", "+49 30", "'+49 30");
        row("a minus", "-8 outside", "'-8 outside");
        row("an at", "@home", "'@home");
        row("a tab", "\tx", "'\tx");
        row("a return", "\rx", "'\rx");
        row("an apostrophe before one", "'=x", "''=x");
        row("apostrophes before one", "'''=x", "''''=x");
        row("an apostrophe before something else", "'t was late", "'t was late");
        row("an apostrophe alone", "'", "'");
        row("a formula further in", "a=1", "a=1");
        row("a line feed", "\n=1", "\n=1");
        row("nothing", "", "");
    }

    void i4_aFormulaIsWrittenAsText()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, cell);

        QCOMPARE(QByteArray::fromStdString(escapeFormula(text.toStdString())), cell);
        QCOMPARE(QByteArray::fromStdString(std::string(unescapeFormula(cell.toStdString()))), text);
    }

    void aCellTypedWithoutApostropheIsTakenAsItStands()
    {
        QCOMPARE(std::string(unescapeFormula("-8 outside")), std::string("-8 outside"));
        QCOMPARE(std::string(unescapeFormula("''")), std::string("''"));
    }

    void i4_escapingIsReversibleAndNoCellStartsLikeAFormula()
    {
        const bool holds = rc::check("escape, then unescape", [] {
            const auto text = *rc::gen::container<std::string>(
                rc::gen::oneOf(rc::gen::element('\'', '=', '+', '-', '@', '\t', '\r', 'a'), rc::gen::arbitrary<char>()));

            const std::string cell = escapeFormula(text);

            RC_ASSERT(unescapeFormula(cell) == text);
            RC_ASSERT(cell.empty() || std::string("=+-@\t\r").find(cell[0]) == std::string::npos);
            RC_ASSERT(meaningOf(cell) == text); // the same rule, told by the tests
        });
        QVERIFY(holds);
    }
};

MORROW_SUITE(tst_csv)

#include "tst_csv.moc"
