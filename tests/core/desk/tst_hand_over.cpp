// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/hand_over.h"
#include "core/desk/clinic.h"

using namespace morrow;
using namespace morrow::test;

namespace {

Entry noteSaying(const std::string &id, const std::string &text, const std::string &replaces = {})
{
    Entry entry = fact(0);
    entry.id = id;
    entry.kind = Kind::Note;
    entry.body = body({{Field::Complaint, std::string("heel")}, {Field::Kind, std::string("note")}, {Field::Text, text}}).toJson();
    if (!replaces.empty())
        entry.replaces = replaces;
    return entry;
}

} // namespace

/// What a person hands over is what the preview says, and home remembers it.
class tst_hand_over : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        auto opened = OpenDiary::open(*m_folder / "home", kRef);
        QVERIFY(opened.has_value());
        m_diary.emplace(*std::move(opened));
        auto entries = diaryOf(0, 3);
        entries.push_back(noteSaying("old", "canary7431"));
        entries.push_back(noteSaying("new", "what was meant", "old"));
        QVERIFY(m_diary->add(entries).has_value());
    }

    void i1_thePreviewSaysWhatTheFileHolds()
    {
        const auto preview = previewHandOver(*m_diary);

        QVERIFY(preview.has_value());
        const std::map<Kind, int> counts{{Kind::Check, 4}, {Kind::Set, 4}, {Kind::Note, 1}, {Kind::Complaint, 1}, {Kind::Plan, 1}};
        QVERIFY(preview->counts == counts);
        QVERIFY(preview->from == day("2026-03-02"));
        QVERIFY(preview->to == day("2026-03-05"));
        QCOMPARE(preview->notesLeftOut, 1);
        QVERIFY(preview->bytes.find("canary7431") == std::string::npos);
        QVERIFY(preview->bytes.find("what was meant") != std::string::npos);
    }

    void previewingWritesNothing()
    {
        const auto before = m_diary->entries().size();

        QVERIFY(previewHandOver(*m_diary).has_value());

        QCOMPARE(m_diary->entries().size(), before);
        QCOMPARE(namesIn(m_folder->path()), std::string("home"));
    }

    void i2_theFileIsWrittenAndRemembered()
    {
        const auto preview = previewHandOver(*m_diary);

        const auto handed = handOver(*m_diary, *preview, *m_folder / "summary.json", "clinic", kNow);

        QVERIFY(handed.has_value());
        const auto written = readFile(*m_folder / "summary.json", kMaxFhirBytes);
        QVERIFY(written.has_value() && *written == preview->bytes);
        const Body said = *BodyReader().read(handed->body);
        QVERIFY(said.textOr(Field::File) == toHex(sha256(preview->bytes)));
        QVERIFY(said.textOr(Field::From) == "2026-03-02" && said.textOr(Field::To) == "2026-03-05");
        QVERIFY(said.textOr(Field::Addressee) == "clinic");
        m_diary.reset();
        QCOMPARE(kept(*m_folder / "home").entries.size(), std::size_t{13});
    }

    void whatWasHandedOverIsNotHandedOn()
    {
        const auto first = previewHandOver(*m_diary);
        QVERIFY(handOver(*m_diary, *first, *m_folder / "summary.json", "the other clinic", kNow).has_value());

        const auto second = previewHandOver(*m_diary);

        QCOMPARE(second->bytes, first->bytes);
        QCOMPARE(second->handedLeftOut, 1);
    }

    void aFileThatCannotBeWrittenIsNotRemembered()
    {
        const auto preview = previewHandOver(*m_diary);
        const auto before = m_diary->entries().size();

        const auto handed = handOver(*m_diary, *preview, *m_folder / "nowhere/summary.json", "clinic", kNow);

        QVERIFY(!handed.has_value());
        QVERIFY(handed.error() == HandOverError(FileError::Missing));
        QCOMPARE(m_diary->entries().size(), before);
    }

private:
    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<OpenDiary> m_diary;
};

MORROW_SUITE(tst_hand_over)
#include "tst_hand_over.moc"
