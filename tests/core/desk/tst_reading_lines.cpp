// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/desk/clinic.h"
#include "exchange/reading_lines.h"

#include <rapidcheck.h>

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

namespace {

std::string linesOf(const FileReading &reading)
{
    std::string all;
    writeLines(reading, [&all](std::string_view part) { all += part; });
    return all;
}

/// Takes \a lines cut into parts of \a size.
ReadingLines::State take(ReadingLines &reading, std::string_view lines, std::size_t size)
{
    auto state = ReadingLines::State::More;
    while (!lines.empty() && state != ReadingLines::State::Garbled) {
        state = reading.take(lines.substr(0, size));
        lines.remove_prefix(std::min(size, lines.size()));
    }
    return state;
}

/// The lines of a reading of one entry, a check, with \a from in them told as \a to.
std::string changed(std::string_view from, std::string_view to)
{
    FhirDiary diary{.person = kRef};
    diary.entries = {fact(0)};
    std::string lines = linesOf({std::string(64, 'a'), diary});
    const std::size_t at = lines.find(from);
    if (at == std::string::npos)
        qFatal("the lines do not hold %s", std::string(from).c_str());
    return lines.replace(at, from.size(), to);
}

} // namespace

/// What the reader says arrives whole, however it is cut, and nothing else does.
class tst_reading_lines : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void anyCutOfTheLinesGivesTheSameReading()
    {
        QVERIFY(rc::check("cut", [] {
            const auto numbers = *rc::gen::unique<std::vector<int>>(rc::gen::inRange(0, 90));
            const auto size = *rc::gen::inRange<std::size_t>(1, 400);
            FhirDiary diary{.file = FhirFile::Visit, .person = kRef, .name = "Größe \"42\"\n"};
            for (const int number : numbers) {
                if (number % 4 == 0) // the one that its kind's rules take as it is
                    diary.entries.push_back(fact(number));
            }
            ReadingLines reading;

            RC_ASSERT(take(reading, linesOf({std::string(64, 'a'), diary}), size) == ReadingLines::State::Whole);
            const FileReading result = std::move(reading).result();

            RC_ASSERT(result.sha256 == std::string(64, 'a'));
            RC_ASSERT(result.diary->entries == diary.entries);
            RC_ASSERT(result.diary->file == diary.file);
            RC_ASSERT(result.diary->name == diary.name);
        }));
    }

    void issuesArriveWithTheirRules()
    {
        Issue issue{
            .code = IssueCode::ValueRefused, .columnName = "pain", .value = "11 \"x\"\t\xc3\xa4", .rule = ruleOf(Kind::Check, Field::Pain)};
        issue.pointer = "/entry/3/valueQuantity";
        ReadingLines reading;

        const auto state = take(reading, linesOf({std::string(64, 'a'), failure(std::vector<Issue>{issue, issue})}), 7);
        const FileReading result = std::move(reading).result();

        QVERIFY(state == ReadingLines::State::Whole);
        QCOMPARE(result.diary.error().size(), std::size_t{2});
        const Issue &read = result.diary.error()[1];
        QVERIFY(read.code == issue.code);
        QCOMPARE(read.pointer, issue.pointer);
        QCOMPARE(read.columnName, issue.columnName);
        QCOMPARE(read.value, issue.value);
        QVERIFY(read.rule == issue.rule);
    }

    void i1_whatNoReaderWritesIsRefused_data()
    {
        QTest::addColumn<QByteArray>("from");
        QTest::addColumn<QByteArray>("to");

        QTest::newRow("a score off the scale") << QByteArray("\"pain\":0") << QByteArray("\"pain\":11");
        QTest::newRow("another score, which the sum tells") << QByteArray("\"pain\":0") << QByteArray("\"pain\":1");
        QTest::newRow("a field that the kind does not have") << QByteArray("\"pain\":0") << QByteArray("\"reps\":1");
        QTest::newRow("a body in another form") << QByteArray("\"pain\":0") << QByteArray("\"pain\": 0");
        QTest::newRow("no complaint") << QByteArray("\"complaint\":\"heel\",") << QByteArray();
        QTest::newRow("an author who may not say it") << QByteArray("\"patient\"") << QByteArray("\"clinic\"");
        QTest::newRow("no kind of ours") << QByteArray("\"check\"") << QByteArray("\"cheque\"");
        QTest::newRow("a day that is none") << QByteArray("2026-03-02") << QByteArray("2026-02-30");
        QTest::newRow("an id that is none") << QByteArray("fact-000000") << QByteArray("fact 000000");
        QTest::newRow("an instant far from every day") << QByteArray("\"recorded\":1") << QByteArray("\"recorded\":1234567");
        QTest::newRow("an offset of two days") << QByteArray("\"offset\":120") << QByteArray("\"offset\":2880");
        QTest::newRow("fewer entries than announced") << QByteArray("\"count\":1") << QByteArray("\"count\":2");
        QTest::newRow("more entries than announced") << QByteArray("\"count\":1") << QByteArray("\"count\":0");
        QTest::newRow("a file of no kind") << QByteArray("\"summary\"") << QByteArray("\"letter\"");
        QTest::newRow("a person who is none") << QByteArray(kRef) << QByteArray("../p");
        QTest::newRow("something behind the end") << QByteArray("{\"end\"") << QByteArray("{}\n{\"end\"");
    }

    void i1_whatNoReaderWritesIsRefused()
    {
        QFETCH(QByteArray, from);
        QFETCH(QByteArray, to);
        ReadingLines untouched;
        ReadingLines reading;

        const auto good = take(untouched, changed(from.toStdString(), from.toStdString()), 1 << 20);
        const auto state = take(reading, changed(from.toStdString(), to.toStdString()), 1 << 20);

        QVERIFY(good == ReadingLines::State::Whole);
        QVERIFY(state == ReadingLines::State::Garbled);
    }

    void oneIdTwiceIsRefused()
    {
        FhirDiary diary{.person = kRef};
        diary.entries = {fact(0), fact(0)};
        ReadingLines reading;

        QVERIFY(take(reading, linesOf({std::string(64, 'a'), diary}), 1 << 20) == ReadingLines::State::Garbled);
    }
};

MORROW_SUITE(tst_reading_lines)
#include "tst_reading_lines.moc"
