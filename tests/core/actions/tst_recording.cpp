// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/record.h"
#include "core/store/kept_diary.h"
#include "support/diary_builder.h"

using namespace morrow;
using namespace morrow::test;
using Code = DraftProblem::Code;

namespace {

/// 2026-11-26 00:30 at an offset of one hour: half an hour after midnight.
constexpr Moment kNight{kNow.utcMs + 19'569'000, 60};

Body pain(int score)
{
    return body({{Field::Pain, Decimal::whole(score)}});
}

Body set(const char *item, int number, int reps)
{
    return body({{Field::Slot, std::string("morning")}, {Field::Item, std::string(item)}, {Field::Set, Decimal::whole(number)},
        {Field::Reps, Decimal::whole(reps)}});
}

/// How recording ended: "done", a store's error or the first problem's number.
QString ending(const Result<Entry, RecordError> &result)
{
    if (result)
        return QStringLiteral("done");
    if (const auto *const error = std::get_if<StoreError>(&result.error()))
        return QString::fromLatin1(nameOf(*error));
    return QStringLiteral("problem %1").arg(static_cast<int>(std::get<std::vector<DraftProblem>>(result.error()).front().code));
}

QString problem(Code code)
{
    return QStringLiteral("problem %1").arg(static_cast<int>(code));
}

} // namespace

/// What is recorded was checked, filled in and is durable; what is refused leaves the diary as it was.
class tst_recording : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_diary.reset();
        m_folder = std::make_unique<ScratchFolder>();
        m_diary.emplace(OpenDiary::open(path()).value());
        QCOMPARE(outcome(m_diary->add(DiaryBuilder().item(item("raise", "2026-03-02", {onDays(3, 15), onDays(3, 12)})).entries())), "done");
    }

    void anEntryIsInTheStoreWhenItIsAcknowledged()
    {
        const auto entry = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow);

        QCOMPARE(ending(entry), QStringLiteral("done"));
        const std::string ref = m_diary->person();
        m_diary.reset();
        const auto entries = kept(path(), ref.c_str()).entries;
        QVERIFY(std::find(entries.begin(), entries.end(), *entry) != entries.end());
    }

    void whatFollowsIsFilledIn()
    {
        const auto entry = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow).value();

        QCOMPARE(entry.body, std::string(R"({"complaint":"main","pain":3})"));
        QVERIFY(entry.recorded == kNow);
        QCOMPARE(entry.day.toString(), std::string("2026-11-25"));
        QVERIFY(isEntryId(entry.id));
        QVERIFY(!entry.replaces);
    }

    void theDayIsThatOfTheDiarysDayStart()
    {
        const auto before = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNight).value();
        QVERIFY(record(*m_diary,
            {.kind = Kind::Setting, .body = body({{Field::Key, std::string("day_starts")}, {Field::Value, std::string("00:00")}})}, kNow)
                    .has_value());

        const auto after = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNight).value();

        QCOMPARE(before.day.toString(), std::string("2026-11-25")); // the day starts at 4 where nothing is set
        QCOMPARE(after.day.toString(), std::string("2026-11-26"));
    }

    void anEntryFromPaperHasNoInstantAndNamesItsDay()
    {
        QCOMPARE(ending(record(*m_diary, {.kind = Kind::Check, .fromPaper = true, .body = pain(3)}, kNow)), problem(Code::DayMissing));

        const auto entry = record(*m_diary, {.kind = Kind::Check, .day = day("2026-03-04"), .fromPaper = true, .body = pain(3)}, kNow);

        QCOMPARE(ending(entry), QStringLiteral("done"));
        QVERIFY(!entry->recorded);
        QCOMPARE(entry->day.toString(), std::string("2026-03-04"));
    }

    void whatIsWrongIsRefusedAndNothingChanges_data()
    {
        QTest::addColumn<Draft>("draft");
        QTest::addColumn<int>("code");

        const auto row
            = [](const char *name, Draft draft, Code code) { QTest::newRow(name) << std::move(draft) << static_cast<int>(code); };
        row("off the scale", {.kind = Kind::Check, .body = pain(11)}, Code::Body);
        row("a value of another kind", {.kind = Kind::Check, .body = body({{Field::Reps, Decimal::whole(3)}})}, Code::Body);
        row("a set without reps", {.kind = Kind::Set, .body = body({{Field::Item, std::string("raise")}})}, Code::Body);
        row("a pain that the clinic states", {.kind = Kind::Check, .author = Author::Clinic, .body = pain(3)}, Code::AuthorRefused);
        row("a plan that the patient states", {.kind = Kind::Closed, .body = body({{Field::Complaint, std::string("main")}})},
            Code::AuthorRefused);
        row("another complaint",
            {.kind = Kind::Check, .body = body({{Field::Complaint, std::string("knee")}, {Field::Pain, Decimal::whole(3)}})},
            Code::UnknownComplaint);
        row("another item", {.kind = Kind::Set, .body = set("squat", 1, 10)}, Code::UnknownItem);
        row("a stage too many",
            {.kind = Kind::Stage, .body = body({{Field::Item, std::string("raise")}, {Field::Stage, Decimal::whole(3)}})},
            Code::UnknownStage);
        row("no id", {.kind = Kind::Check, .id = "two words", .body = pain(3)}, Code::IdRefused);
        row("an entry that replaces itself", {.kind = Kind::Check, .replaces = "one", .id = "one", .body = pain(3)}, Code::ReplacesLoop);
    }

    void whatIsWrongIsRefusedAndNothingChanges()
    {
        QFETCH(Draft, draft);
        QFETCH(int, code);
        const auto before = m_diary->entries();

        QCOMPARE(ending(record(*m_diary, draft, kNow)), problem(static_cast<Code>(code)));

        QCOMPARE(m_diary->entries(), before);
        QCOMPARE(m_diary->store().read(m_diary->person())->entries.size(), before.size());
    }

    void anotherKindIsNotReplaced()
    {
        const auto check = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow).value();

        QCOMPARE(ending(record(*m_diary, {.kind = Kind::Set, .replaces = check.id, .body = set("raise", 1, 10)}, kNow)),
            problem(Code::ReplacesAnotherKind));
    }

    void theSameIdIsKnownWithTheSameContentAndRefusedWithAnother()
    {
        const Draft draft{.kind = Kind::Check, .day = day("2026-03-04"), .fromPaper = true, .id = "typed-1", .body = pain(3)};
        QCOMPARE(ending(record(*m_diary, draft, kNow)), QStringLiteral("done"));
        const auto count = m_diary->entries().size();

        QCOMPARE(ending(record(*m_diary, draft, kNow)), QStringLiteral("done"));
        Draft other = draft;
        other.body = pain(4);
        QCOMPARE(ending(record(*m_diary, other, kNow)), QStringLiteral("Refused"));

        QCOMPARE(m_diary->entries().size(), count);
    }

    void aCorrectionStandsInThePlaceOfTheEntryAndBothAreKept()
    {
        const auto first = record(*m_diary, {.kind = Kind::Check, .day = day("2026-11-20"), .body = pain(3)}, kNow).value();
        const auto count = m_diary->entries().size();

        const auto second = correct(*m_diary, first.id, pain(5), Author::Helper, kNight).value();

        QVERIFY(second.replaces == first.id);
        QVERIFY(second.kind == Kind::Check);
        QCOMPARE(second.day.toString(), std::string("2026-11-20")); // not that of the correction
        QVERIFY(second.recorded == kNight);
        QVERIFY(second.author == Author::Helper);
        QCOMPARE(m_diary->entries().size(), count + 1);
    }

    void whatIsCorrectedIsCheckedAsAnyOther()
    {
        const auto first = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow).value();

        QCOMPARE(ending(correct(*m_diary, first.id, pain(11), Author::Patient, kNight)), problem(Code::Body));
        QCOMPARE(ending(correct(*m_diary, first.id, pain(5), Author::Clinic, kNight)), problem(Code::AuthorRefused));
        QCOMPARE(ending(correct(*m_diary, "nothing-of-that-name", pain(5), Author::Patient, kNight)), problem(Code::IdRefused));
    }

    void aWithdrawalSaysWhatItIsAboutAndNothingElse()
    {
        const auto first = record(*m_diary, {.kind = Kind::Set, .body = set("raise", 2, 10)}, kNow).value();

        const auto taken = withdraw(*m_diary, first.id, Author::Patient, kNight).value();

        QCOMPARE(taken.body, std::string(R"({"item":"raise","set":2,"slot":"morning","withdrawn":1})"));
        QVERIFY(taken.replaces == first.id);
        QCOMPARE(taken.day, first.day);
        const auto &entries = m_diary->entries();
        QVERIFY(std::find(entries.begin(), entries.end(), first) != entries.end());
    }

    void whatIsWithdrawnCountsNoLongerAndWhatIsNotThereCannotBe()
    {
        const auto first = record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow).value();
        QCOMPARE(m_diary->diary().complaints().front().checks.size(), std::size_t(1));

        QCOMPARE(ending(withdraw(*m_diary, first.id, Author::Patient, kNight)), QStringLiteral("done"));

        QCOMPARE(m_diary->diary().complaints().front().checks.size(), std::size_t(0));
        QCOMPARE(ending(withdraw(*m_diary, "nothing-of-that-name", Author::Patient, kNight)), problem(Code::IdRefused));
    }

    void nothingIsRecordedInADiaryThatIsOnlyRead()
    {
        QVERIFY(record(*m_diary, {.kind = Kind::Check, .body = pain(3)}, kNow).has_value());
        m_diary.reset();
        auto reading = OpenDiary::openToRead(path()).value();
        const auto before = reading.entries();

        QCOMPARE(ending(record(reading, {.kind = Kind::Check, .body = pain(4)}, kNow)), QStringLiteral("ReadOnly"));

        QCOMPARE(reading.entries(), before);
    }

    void severalAreRecordedTogetherOrNotAtAll()
    {
        const auto sets = record(*m_diary,
            std::vector<Draft>{{.kind = Kind::Set, .body = set("raise", 1, 15)}, {.kind = Kind::Set, .body = set("raise", 2, 15)}}, kNow);
        QVERIFY(sets.has_value());
        QCOMPARE(sets->size(), std::size_t(2));
        QVERIFY((*sets)[0].id < (*sets)[1].id);
        const auto before = m_diary->entries();

        const auto refused = record(*m_diary,
            std::vector<Draft>{{.kind = Kind::Set, .body = set("raise", 3, 15)}, {.kind = Kind::Set, .body = set("no such item", 1, 15)}},
            kNow);

        QVERIFY(!refused.has_value());
        QCOMPARE(m_diary->entries(), before);
    }

    void theRecentPartLacksOldDaysAndNothingElse()
    {
        QVERIFY(record(*m_diary, {.kind = Kind::Check, .day = day("2026-03-03"), .body = pain(9)}, kNow).has_value());
        QVERIFY(record(*m_diary, {.kind = Kind::Check, .day = day("2026-11-20"), .body = pain(4)}, kNow).has_value());
        QVERIFY(record(*m_diary,
            {.kind = Kind::Stage,
                .day = day("2026-03-20"),
                .author = Author::Clinic,
                .body = body({{Field::Item, std::string("raise")}, {Field::Stage, Decimal::whole(2)}})},
            kNow)
                    .has_value());

        const ComplaintDiary &recent = m_diary->recent(kNow).complaints().front();

        QCOMPARE(recent.checks.size(), std::size_t(1));
        QCOMPARE(recent.checks.front().day.toString(), std::string("2026-11-20"));
        QCOMPARE(recent.items.front().stageChanges.size(), std::size_t(1));
        QCOMPARE(m_diary->diary().complaints().front().checks.size(), std::size_t(2));
    }

    void theRecentPartKnowsThatARecentAnswerWasMovedToAnOldDay()
    {
        const auto wrong = record(*m_diary, {.kind = Kind::Check, .day = day("2026-11-20"), .body = pain(4)}, kNow).value();
        QVERIFY(record(*m_diary, {.kind = Kind::Check, .day = day("2026-03-20"), .replaces = wrong.id, .body = pain(4)}, kNow).has_value());

        for (const Check &check : m_diary->recent(kNow).complaints().front().checks)
            QVERIFY(check.day != day("2026-11-20"));
    }

private:
    [[nodiscard]] std::filesystem::path path() const { return *m_folder / "diary"; }

    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<OpenDiary> m_diary;
};

MORROW_SUITE(tst_recording)
#include "tst_recording.moc"
