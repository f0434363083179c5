// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "store/record_folder.h"

#include <zlib.h>

#include <rapidcheck.h>

#include <fstream>
#include <thread>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

const char *nameOf(RecordFault fault)
{
    switch (fault) {
    case RecordFault::Missing:
        return "missing";
    case RecordFault::Damaged:
        return "damaged";
    case RecordFault::TooLarge:
        return "too large";
    case RecordFault::Unreadable:
        return "unreadable";
    }
    return "";
}

std::string reading(const RecordFolder &record, const std::string &name)
{
    const auto bytes = record.read(name);
    return bytes ? "read" : nameOf(bytes.error());
}

RecordFolder openedRecord(const fs::path &path)
{
    auto record = RecordFolder::open(path);
    if (!record)
        qFatal("no record");
    return *std::move(record);
}

void put(const fs::path &path, std::string_view bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

std::string deflated(const std::string &bytes)
{
    uLongf size = compressBound(bytes.size());
    std::string out(size, '\0');
    if (compress2(reinterpret_cast<Bytef *>(out.data()), &size, reinterpret_cast<const Bytef *>(bytes.data()), bytes.size(), 9) != Z_OK)
        qFatal("nothing deflated");
    out.resize(size);
    return out;
}

} // namespace

/// What lies in the record is what its name says, or is refused.
class tst_record_folder : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_record.emplace(openedRecord(*m_folder / "record"));
    }

    void i1_whatIsAddedIsReadBackUnderItsSha256()
    {
        QVERIFY(rc::check("read back", [this] {
            const auto bytes = *rc::gen::arbitrary<std::string>();

            const auto name = m_record->add(bytes);

            RC_ASSERT(name.value() == toHex(sha256(bytes)));
            RC_ASSERT(m_record->read(*name).value() == bytes);
        }));
    }

    void i1_addingAgainChangesNothing()
    {
        const std::string name = *m_record->add("a diary");
        const auto before = fs::last_write_time(file(name));

        QVERIFY(m_record->add("a diary").has_value());

        QCOMPARE(m_record->names()->size(), std::size_t{1});
        QVERIFY(fs::last_write_time(file(name)) == before);
    }

    void i1_aDamagedFileIsMendedByAddingItAgain()
    {
        const std::string name = *m_record->add("a diary");
        put(file(name), "half");

        QVERIFY(m_record->add("a diary").has_value());

        QCOMPARE(reading(*m_record, name), std::string("read"));
    }

    void i2_whatTheNameDoesNotSayIsRefused_data()
    {
        QTest::addColumn<QByteArray>("bytes");
        QTest::addColumn<QString>("fault");
        const std::string other = deflated("another diary");
        const std::string same = deflated("a diary");
        const auto row = [](const char *name, const std::string &bytes, const char *fault) {
            QTest::newRow(name) << QByteArray::fromStdString(bytes) << QString::fromLatin1(fault);
        };

        row("other bytes", other, "damaged");
        row("cut", same.substr(0, same.size() - 3), "damaged");
        row("something behind it", same + "x", "damaged");
        row("not deflated", "a diary", "damaged");
        row("empty", "", "damaged");
        row("inflates to more than 100 times its size", deflated(std::string(1 << 20, 'x')), "too large");
    }

    void i2_whatTheNameDoesNotSayIsRefused()
    {
        QFETCH(QByteArray, bytes);
        QFETCH(QString, fault);
        const std::string name = RecordFolder::nameOf("a diary");
        put(file(name), bytes.toStdString());

        QCOMPARE(QString::fromStdString(reading(*m_record, name)), fault);
    }

    void i2_aDiaryThatShrinksTooWellIsStillReadBack()
    {
        const std::string bytes(1 << 20, 'x'); // deflate alone makes a thousandth of it

        const auto name = m_record->add(bytes);
        const auto read = m_record->read(*name);

        QVERIFY(read.has_value() && *read == bytes);
    }

    void whatIsNotThereIsMissing() { QCOMPARE(reading(*m_record, RecordFolder::nameOf("never added")), std::string("missing")); }

    void whatHasNoSuchNameIsPassedOver()
    {
        const std::string name = *m_record->add("a diary");
        put(*m_folder / "record/notes.txt", "x");
        put(*m_folder / ("record/." + name + ".1.part"), "x");
        put(*m_folder / ("record/" + name.substr(1)), "x");

        QCOMPARE(*m_record->names(), std::vector<std::string>{name});
    }

    void i3_aMarkIsSeenByEveryDesk()
    {
        const RecordFolder other = openedRecord(*m_folder / "record");

        QVERIFY(m_record->markErased(kRef).has_value());

        QVERIFY(other.isErased(kRef));
        QVERIFY(!other.isErased(kOtherRef));
        QCOMPARE(fs::file_size(*m_folder / ("record/erased/" + toHex(sha256(kRef)))), std::uintmax_t{0});
        QVERIFY(other.names()->empty());
    }

    void i4_twoThatWriteTheSameFileAtOnceBothHaveIt()
    {
        const auto write = [this](int first) {
            RecordFolder record = openedRecord(*m_folder / "record");
            for (int i = 0; i < 60; ++i) {
                const std::string bytes = "diary " + std::to_string((i + first) % 60) + std::string(5000, 'x');
                const auto name = record.add(bytes);
                if (!name || record.read(*name).value_or("") != bytes)
                    return false;
            }
            return true;
        };
        bool left = false;
        bool right = false;

        std::thread one([&] { left = write(0); });
        std::thread two([&] { right = write(1); });
        one.join();
        two.join();

        QVERIFY(left && right);
        QCOMPARE(m_record->names()->size(), std::size_t{60});
        const auto names = m_record->names();
        for (const std::string &name : *names)
            QCOMPARE(reading(*m_record, name), std::string("read"));
    }

    void aLinkToADriveThatIsNotThereIsNoNewRecord()
    {
        fs::create_directory_symlink(*m_folder / "drive", *m_folder / "link");

        const auto record = RecordFolder::open(*m_folder / "link");

        QVERIFY(!record.has_value() && record.error() == FileError::Missing);
        QVERIFY(!fs::exists(*m_folder / "drive"));
    }

private:
    [[nodiscard]] fs::path file(const std::string &name) const { return *m_folder / ("record/" + name); }

    std::unique_ptr<ScratchFolder> m_folder;
    std::optional<RecordFolder> m_record;
};

MORROW_SUITE(tst_record_folder)
#include "tst_record_folder.moc"
