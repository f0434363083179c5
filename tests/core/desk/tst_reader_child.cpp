// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "actions/reader_child.h"
#include "core/desk/clinic.h"

#include <QFile>

#include <sys/stat.h>
#include <unistd.h>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

const char *nameOf(ReaderFault fault)
{
    switch (fault) {
    case ReaderFault::NotStarted:
        return "not started";
    case ReaderFault::Crashed:
        return "crashed";
    case ReaderFault::Hung:
        return "hung";
    case ReaderFault::Hungry:
        return "hungry";
    case ReaderFault::Garbled:
        return "garbled";
    }
    return "";
}

} // namespace

/// A file that ends, holds or starves its reader is one refused file, and the next one is read.
class tst_reader_child : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<ScratchFolder>();
        m_summary = summary(diaryOf(0, 5));
        write("summary", m_summary.bytes);
    }

    void aFileIsReadAsItWasWritten()
    {
        ReaderChild reader(MORROW_READER);

        const auto read = reader.read(*m_folder / "summary");

        QVERIFY2(read.has_value(), read ? "" : nameOf(read.error()));
        QCOMPARE(read->sha256, RecordFolder::nameOf(m_summary.bytes));
        QVERIFY(read->diary.has_value());
        QCOMPARE(read->diary->person, std::string(kRef));
        QVERIFY(read->diary->entries == m_summary.diary.entries);
    }

    void oneReaderReadsFileAfterFile()
    {
        ReaderChild reader(MORROW_READER);
        QVERIFY(reader.read(*m_folder / "summary").has_value());
        const auto first = reader.process();

        QVERIFY(reader.read(*m_folder / "summary").has_value());

        QVERIFY(first.has_value());
        QVERIFY(reader.process() == first);
    }

    void i1_anOddFileIsRefusedAndTheNextOneIsRead_data()
    {
        QTest::addColumn<QString>("file");
        QTest::addColumn<ReaderFault>("fault");

        QTest::newRow("crashes") << QStringLiteral("crash") << ReaderFault::Crashed;
        QTest::newRow("hangs") << QStringLiteral("hang") << ReaderFault::Hung;
        QTest::newRow("takes all memory") << QStringLiteral("hunger") << ReaderFault::Hungry;
        QTest::newRow("is answered with no JSON") << QStringLiteral("garble") << ReaderFault::Garbled;
        QTest::newRow("is answered with entries of another sum") << QStringLiteral("lie") << ReaderFault::Garbled;
        QTest::newRow("is answered without an end") << QStringLiteral("flood") << ReaderFault::Garbled;
        QTest::newRow("is answered with more than an answer") << QStringLiteral("chatter") << ReaderFault::Garbled;
    }

    void i1_anOddFileIsRefusedAndTheNextOneIsRead()
    {
        QFETCH(QString, file);
        QFETCH(ReaderFault, fault);
        // What floods is refused for its size; only what hangs has to wait this long.
        ReaderChild reader(MORROW_ODD_READER, std::chrono::seconds(file == QLatin1String("hang") ? 1 : 60));
        write(file.toStdString(), m_summary.bytes);

        const auto odd = reader.read(*m_folder / file.toStdString());
        const auto next = reader.read(*m_folder / "summary");

        QVERIFY(!odd.has_value());
        QCOMPARE(nameOf(odd.error()), nameOf(fault));
        QVERIFY2(next.has_value(), next ? "" : nameOf(next.error()));
        QVERIFY(next->diary->entries == m_summary.diary.entries);
    }

    void aReaderThatIsNotThereIsSaid()
    {
        ReaderChild reader(*m_folder / "no-reader");

        const auto read = reader.read(*m_folder / "summary");

        QVERIFY(!read.has_value());
        QCOMPARE(nameOf(read.error()), "not started");
    }

    void whatIsNoRegularFileIsRefusedAndNotWaitedFor_data()
    {
        QTest::addColumn<QString>("file");

        QTest::newRow("a FIFO that nobody writes") << QStringLiteral("fifo");
        QTest::newRow("a device") << QStringLiteral("device");
        QTest::newRow("a folder") << QStringLiteral("folder");
    }

    void whatIsNoRegularFileIsRefusedAndNotWaitedFor()
    {
        QFETCH(QString, file);
        QCOMPARE(::mkfifo((*m_folder / "fifo").c_str(), 0600), 0);
        fs::create_symlink("/dev/zero", *m_folder / "device");
        fs::create_directory(*m_folder / "folder");
        ReaderChild reader(MORROW_READER);

        const auto read = reader.read(*m_folder / file.toStdString());

        QVERIFY(read.has_value());
        QVERIFY(!read->diary.has_value());
        QCOMPARE(read->diary.error().size(), std::size_t{1});
        QVERIFY(read->diary.error()[0].fileError == FileError::NotRegular);
    }

    void theReaderLivesWithinItsLimits()
    {
        ReaderChild reader(MORROW_READER);
        QVERIFY(reader.read(*m_folder / "summary").has_value());

        QFile limits(QStringLiteral("/proc/%1/limits").arg(*reader.process()));
        QVERIFY(limits.open(QIODevice::ReadOnly));
        const QByteArray all = limits.readAll().simplified();

        QVERIFY2(all.contains("Max core file size 0 0"), all.constData());
        QVERIFY2(all.contains("Max file size 0 0"), all.constData());
#if !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
        QVERIFY2(all.contains("Max address space 1610612736 1610612736"), all.constData());
#endif
    }

    void theReaderHasNothingOpenButItsStreams()
    {
        QFile secret(QString::fromStdString((*m_folder / "summary").string()));
        QVERIFY(secret.open(QIODevice::ReadOnly));
        const int leaked = ::dup(secret.handle()); // without close-on-exec
        ReaderChild reader(MORROW_READER);
        QVERIFY(reader.read(*m_folder / "summary").has_value());

        std::size_t open = 0;
        for ([[maybe_unused]] const auto &one : fs::directory_iterator("/proc/" + std::to_string(*reader.process()) + "/fd"))
            ++open;

        ::close(leaked);
        QCOMPARE(open, std::size_t{3});
    }

    void i3_theReaderEndsWithWhoStartedIt()
    {
        pid_t process = 0;
        {
            ReaderChild reader(MORROW_READER);
            QVERIFY(reader.read(*m_folder / "summary").has_value());
            process = *reader.process();
            QVERIFY(fs::exists("/proc/" + std::to_string(process)));
        }

        QVERIFY(!fs::exists("/proc/" + std::to_string(process)));
    }

private:
    void write(const std::string &name, const std::string &bytes)
    {
        if (!writeFile(*m_folder / name, bytes))
            qFatal("no file");
    }

    std::unique_ptr<ScratchFolder> m_folder;
    Foreign m_summary;
};

MORROW_SUITE(tst_reader_child)
#include "tst_reader_child.moc"
