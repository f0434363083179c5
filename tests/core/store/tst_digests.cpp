// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"

using namespace morrow;
using namespace morrow::test;

/// The rows in the file carry the digests that anybody can compute from what the format says:
/// the expected ones come from digests.py (Python's hashlib), beside this file.
class tst_digests : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        DiaryStore store = opened(*m_folder / "diary");
        const std::vector<Entry> entries{
            {"whole", Kind::Check, *CivilDay::fromNumber(20782), Moment{1795629831000, -210}, Author::Patient, "bare",
                "{\"complaint\":\"heel\",\"pain\":4}"},
            {"bare", Kind::Note, *CivilDay::fromNumber(-1), {}, Author::Clinic, {}, "{\"text\":\"Größe 42, dağ 🦶\"}"},
            {"long", Kind::Unusual, *CivilDay::fromNumber(0), Moment{0, 0}, Author::Helper, {},
                "{\"text\":\"" + std::string(70000, 'x') + "\"}"},
        };
        QVERIFY(store.add(kRef, entries).has_value());
        QVERIFY(store.add(kRef, {{note(1, "gone")}}).has_value());
        m_file = storeFile(*m_folder / "diary");
    }

    void anEntrysDigest_data()
    {
        QTest::addColumn<QString>("id");
        QTest::addColumn<QString>("digest");

        QTest::newRow("every column") << "whole"
                                      << "f14b18e862b163bf42fac865a1d1e7d94cd9c2cdf31f6e777b8528c34cfa08fa";
        QTest::newRow("absent ones, before 1970, not ASCII") << "bare"
                                                             << "8d0f82c18ab2166f4e44eee3262321e9d994bbfdf960d9a7cf4d7c0c415e7f46";
        QTest::newRow("zeros, over several pages") << "long"
                                                   << "8c492830da5a721146074219d1fb50bf78037c33ed59275d8cbc338f0f207ad7";
    }

    void anEntrysDigest()
    {
        QFETCH(QString, id);
        QFETCH(QString, digest);

        QCOMPARE(hex("SELECT digest FROM entry WHERE id = '" + id.toStdString() + "'"), digest);
    }

    void aPersonsDigestAndSum()
    {
        erase("note-000001");

        QCOMPARE(hex("SELECT digest FROM person"), QStringLiteral("e09c8d30fc4a183775bd18d5a8197738e9d4f7ae0c993ba6c22cf3a0cdd2801b"));
        QCOMPARE(hex("SELECT sum FROM person"), QStringLiteral("0aa3c3dac7bdec3fd746f96299f05a829e71faffd9d96f7cd78ed85e9d790317"));
        QCOMPARE(hex("SELECT CAST(entries AS TEXT) FROM person"), QString::fromLatin1(QByteArray("3").toHex()));
    }

    void anErasedRowsDigest()
    {
        DiaryStore store = opened(*m_folder / "diary");
        Entry gone = note(2, "gone");
        gone.id = "gone";
        QVERIFY(store.add(kRef, {&gone, 1}).has_value());
        QCOMPARE(store.eraseChain(kRef, "gone").value(), 1);
        store = opened(*m_folder / "other"); // closes the first

        QCOMPARE(hex("SELECT digest FROM erased"), QStringLiteral("b51763cd24e7e94e841c7abe252759087243cdd74e4b994841ebb8ff81aa98be"));
    }

private:
    QString hex(const std::string &sql)
    {
        SQLite::Database connection(m_file.string(), SQLite::OPEN_READONLY);
        SQLite::Statement read(connection, sql);
        if (!read.executeStep())
            return {};
        const auto column = read.getColumn(0);
        return QString::fromLatin1(QByteArray(static_cast<const char *>(column.getBlob()), column.getBytes()).toHex());
    }

    void erase(const char *id) { QCOMPARE(opened(*m_folder / "diary").eraseChain(kRef, id).value(), 1); }

    std::unique_ptr<ScratchFolder> m_folder;
    std::filesystem::path m_file;
};

MORROW_SUITE(tst_digests)
#include "tst_digests.moc"
