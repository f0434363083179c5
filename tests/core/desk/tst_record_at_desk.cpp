// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/desk/clinic.h"

#include <algorithm>

using namespace morrow;
using namespace morrow::test;

/// What the clinic says is in the record first, can be read alone, and stays where it belongs.
class tst_record_at_desk : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_desk.emplace(openedDesk(*m_folder / "desk"));
        QCOMPARE(takingIn(*m_desk, summary(diaryOf(0, 3)), kSomebodyNew), std::string("added 10 known 0"));
    }

    void i1_eachBundleHoldsWhatItsEntryNames()
    {
        const auto visit = recordAtDesk(*m_desk, kRef, visitOn("2026-03-04"), kNow);
        Draft stage{.kind = Kind::Stage, .author = Author::Clinic};
        stage.body = body({{Field::Item, std::string("raise")}, {Field::Stage, Decimal::whole(1)}});
        const auto change = recordAtDesk(*m_desk, kRef, stage, kNow);

        QVERIFY(visit.has_value() && change.has_value());
        QCOMPARE(kindsBeside(visit->id), std::string("complaint visit"));
        QCOMPARE(kindsBeside(change->id), std::string("complaint plan stage"));
    }

    void i2_whatAPatientSaysIsNotSaidHere()
    {
        Draft check{.kind = Kind::Check, .author = Author::Patient};
        check.body = body({{Field::Complaint, std::string("heel")}, {Field::Pain, Decimal::whole(3)}});

        const auto entry = recordAtDesk(*m_desk, kRef, check, kNow);

        QVERIFY(!entry.has_value());
        QVERIFY(std::get<std::vector<DraftProblem>>(entry.error())[0].code == DraftProblem::Code::AuthorRefused);
        QCOMPARE(m_desk->record().names()->size(), std::size_t{1});
    }

    void anUnknownRefIsSomebodyNew()
    {
        Draft complaint{.kind = Kind::Complaint, .day = day("2026-03-02"), .author = Author::Clinic};
        complaint.body = body({{Field::Complaint, std::string("shoulder")}, {Field::Place, Decimal::whole(1)}});

        QCOMPARE(saying(*m_desk, kOtherRef, complaint), std::string("said"));

        QVERIFY(m_desk->index().isKnown(kOtherRef));
    }

    void aRefThatIsNoneIsRefused() { QCOMPARE(saying(*m_desk, "../../etc", named("x")), std::string("refused")); }

    void theSameIdWithAnotherContentIsRefused()
    {
        Draft draft = named("one");
        draft.id = "label";
        QCOMPARE(saying(*m_desk, kRef, draft), std::string("said"));
        draft.body.set(Field::Label, std::string("other"));

        QCOMPARE(saying(*m_desk, kRef, draft), std::string("no such draft"));

        QCOMPARE(m_desk->record().names()->size(), std::size_t{2});
    }

    void whatStaysAtTheDeskIsInNoFileForThePatient_data()
    {
        QTest::addColumn<int>("file");
        QTest::newRow("plan") << static_cast<int>(FhirFile::Plan);
        QTest::newRow("visit") << static_cast<int>(FhirFile::Visit);
        QTest::newRow("summary") << static_cast<int>(FhirFile::Summary);
    }

    void whatStaysAtTheDeskIsInNoFileForThePatient()
    {
        QFETCH(int, file);
        const auto visit = recordAtDesk(*m_desk, kRef, visitOn("2026-03-04"), kNow);
        Draft memo{.kind = Kind::Memo, .author = Author::Clinic};
        memo.body
            = body({{Field::Visit, visit->id}, {Field::Note, std::string("canary-note")}, {Field::NextTime, std::string("canary-next")}});
        QCOMPARE(saying(*m_desk, kRef, memo), std::string("said"));
        Draft label = named("canary-label");
        label.body.set(Field::FileNumber, std::string("canary-number"));
        QCOMPARE(saying(*m_desk, kRef, label), std::string("said"));
        const Foreign other = summary(diaryOf(2, 5), kOtherRef);
        QCOMPARE(takingIn(*m_desk, other, somebodyKnown(kRef)), std::string("added 4 known 6"));
        QVERIFY(undoTakeIn(*m_desk, RecordFolder::nameOf(other.bytes), kNow).has_value());

        const auto bundle = fileForPatient(*m_desk, kRef, static_cast<FhirFile>(file));

        QVERIFY(bundle->json.find("canary") == std::string::npos);
        QVERIFY(bundle->json.find(kOtherRef) == std::string::npos);
        QVERIFY(bundle->json.find(RecordFolder::nameOf(other.bytes)) == std::string::npos);
        for (const char *kind : {"memo", "known-as", "known_as", "alias", "set-aside", "set_aside"})
            QVERIFY2(bundle->json.find(kind) == std::string::npos, kind);
        const auto read = readFhir(bundle->json);
        QVERIFY(std::any_of(read->entries.begin(), read->entries.end(), [](const Entry &entry) { return entry.kind == Kind::Visit; }));
    }

    void aFileForThePatientHoldsNothingOfThePatient()
    {
        const auto bundle = fileForPatient(*m_desk, kRef, FhirFile::Plan);

        const auto read = readFhir(bundle->json);
        for (const Entry &entry : read->entries)
            QVERIFY(entry.author == Author::Clinic);
    }

private:
    /// The kinds in the bundle of the record whose newest entry is \a id.
    [[nodiscard]] std::string kindsBeside(const std::string &id) const
    {
        const auto names = m_desk->record().names();
        for (const std::string &name : *names) {
            const auto diary = readFhir(*m_desk->record().read(name));
            const auto &entries = diary->entries;
            if (std::none_of(entries.begin(), entries.end(), [&id](const Entry &entry) { return entry.id == id; }))
                continue;
            std::set<std::string> kinds;
            for (const Entry &entry : entries)
                kinds.emplace(morrow::name(entry.kind));
            std::string all;
            for (const std::string &kind : kinds)
                all += (all.empty() ? "" : " ") + kind;
            return all;
        }
        return {};
    }

    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<OpenDesk> m_desk;
};

MORROW_SUITE(tst_record_at_desk)
#include "tst_record_at_desk.moc"
