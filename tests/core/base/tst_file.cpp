// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "base/file.h"

#include <QTemporaryDir>

#include <sys/stat.h>

using namespace morrow;
namespace fs = std::filesystem;

/// A written file is whole or absent, and only regular files are read. Named after the invariants of file.h.
class tst_file : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<QTemporaryDir>();
        QVERIFY(m_folder->isValid());
    }

    void i1_writesAndReplacesWhole()
    {
        QVERIFY(writeFile(path("a"), "one").has_value());
        QVERIFY(writeFile(path("a"), "two, longer").has_value());

        QCOMPARE(readFile(path("a"), 100).value(), std::string("two, longer"));
        QCOMPARE(entries(), 1);
    }

    void i1_aFolderThatExistsIsNotTouched()
    {
        QVERIFY(writeFolder(path("out"), {{"a.csv", "1"}, {"b.csv", ""}}).has_value());

        const auto again = writeFolder(path("out"), {{"c.csv", "3"}});

        QCOMPARE(again.error(), FileError::Exists);
        QCOMPARE(readFile(path("out") / "a.csv", 100).value(), std::string("1"));
        QCOMPARE(readFile(path("out") / "b.csv", 100).value(), std::string());
        QVERIFY(!fs::exists(path("out") / "c.csv"));
        QCOMPARE(entries(), 1);
    }

    void i1_aFolderThatCannotBeFilledIsNotThere()
    {
        const auto written = writeFolder(path("out"), {{"a.csv", "1"}, {"no/such/folder.csv", "2"}});

        QCOMPARE(written.error(), FileError::Missing);
        QCOMPARE(entries(), 0);
    }

    void i2_whatCannotBeWrittenIsSaid()
    {
        QCOMPARE(writeFile(path("none") / "a", "x").error(), FileError::Missing);
        // /dev/full answers every write with ENOSPC, /proc refuses new files.
        QCOMPARE(writeFolder("/proc/out", {{"a", "1"}}).error(), FileError::Missing);
    }

    void i3_onlyRegularFilesAreRead()
    {
        QVERIFY(mkfifo(path("fifo").c_str(), 0600) == 0);

        QCOMPARE(readFile(path("fifo"), 100).error(), FileError::NotRegular);
        QCOMPARE(readFile("/dev/zero", 100).error(), FileError::NotRegular);
        QCOMPARE(readFile(path(""), 100).error(), FileError::NotRegular);
        QCOMPARE(readFile(path("missing"), 100).error(), FileError::Missing);
    }

    void i3_neverMoreThanAllowed()
    {
        QVERIFY(writeFile(path("a"), "12345").has_value());

        QCOMPARE(readFile(path("a"), 5).value(), std::string("12345"));
        QCOMPARE(readFile(path("a"), 4).error(), FileError::TooLarge);
        // A file that claims no size and yet has bytes is read to its end, within the limit.
        QVERIFY(readFile("/proc/self/status", 1 << 20).value().size() > 10);
        QCOMPARE(readFile("/proc/self/status", 10).error(), FileError::TooLarge);
    }

private:
    [[nodiscard]] fs::path path(const char *name) const { return fs::path(m_folder->path().toStdString()) / name; }
    [[nodiscard]] int entries() const
    {
        return static_cast<int>(std::distance(fs::directory_iterator(m_folder->path().toStdString()), fs::directory_iterator()));
    }

    std::unique_ptr<QTemporaryDir> m_folder;
};

MORROW_SUITE(tst_file)

#include "tst_file.moc"
