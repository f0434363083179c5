// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

#include "batch/program.h"
#include "batch/table_folder.h"

#include <QFile>

#include <cerrno>
#include <sched.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

using namespace morrow::test;

namespace {

constexpr uid_t kNobody = 65534;

/// Runs as somebody who owns nothing, since root may read everything. The program is copied to where
/// everybody may run it.
class AsNobody
{
public:
    AsNobody()
    {
        ::chmod(m_folder.path().toLocal8Bit().constData(), 0755);
        const QString copy = m_folder.path("morrow-batch");
        if (!QFile::copy(QStringLiteral(MORROW_BATCH), copy))
            qFatal("the program was not copied");
        ::chmod(copy.toLocal8Bit().constData(), 0755);
        m_circumstances.program = copy;
        m_circumstances.inChild = [] {
            if (::geteuid() == 0 && (::setgid(kNobody) != 0 || ::setuid(kNobody) != 0))
                ::_exit(99);
        };
    }

    [[nodiscard]] const Circumstances &circumstances() const { return m_circumstances; }

private:
    TableFolder m_folder;
    Circumstances m_circumstances;
};

void setMode(const QString &path, mode_t mode)
{
    QCOMPARE(::chmod(path.toLocal8Bit().constData(), mode), 0);
}

QStringList convert(const TableFolder &folder, const QString &out)
{
    return {QStringLiteral("convert"), folder.path(), QStringLiteral("--to"), QStringLiteral("tables"), out};
}

} // namespace

/// Where the machine fails the status is 3, one sentence says what, and nothing half-written stays.
class tst_machine_failures : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void anOutputWithoutSpaceIsNoticed_data()
    {
        QTest::addColumn<QStringList>("arguments");

        QTest::newRow("measure") << QStringList{QStringLiteral("measure"), QStringLiteral(MORROW_DEMO_DATA "/paper")};
        QTest::newRow("measure --text") << QStringList{
            QStringLiteral("measure"), QStringLiteral(MORROW_DEMO_DATA "/paper"), QStringLiteral("--text")};
        QTest::newRow("check") << QStringList{QStringLiteral("check"), QStringLiteral(MORROW_DEMO_DATA "/paper")};
        QTest::newRow("--help") << QStringList{QStringLiteral("--help")};
        QTest::newRow("--version") << QStringList{QStringLiteral("--version")};
    }

    void anOutputWithoutSpaceIsNoticed()
    {
        QFETCH(QStringList, arguments);

        const Outcome outcome = run(arguments, {.out = QStringLiteral("/dev/full")});

        QCOMPARE(outcome.status, 3);
        QCOMPARE(outcome.err, QByteArray("The result was not written whole: there is no space left for the output.\n"));
    }

    void aReaderThatWentAwayIsNoticed()
    {
        const Outcome outcome = run({QStringLiteral("measure"), QStringLiteral(MORROW_DEMO_DATA "/paper")}, {.inChild = [] {
            int ends[2];
            if (::pipe(ends) != 0 || ::dup2(ends[1], STDOUT_FILENO) < 0)
                ::_exit(99);
            ::close(ends[0]);
            ::close(ends[1]);
        }});

        QCOMPARE(outcome.status, 3);
        QCOMPARE(outcome.err, QByteArray("The result was not written whole: the output takes no more.\n"));
    }

    void aClosedOutputIsNoticed()
    {
        const Outcome outcome
            = run({QStringLiteral("measure"), QStringLiteral(MORROW_DEMO_DATA "/paper")}, {.inChild = [] { ::close(STDOUT_FILENO); }});

        QCOMPARE(outcome.status, 3);
        QCOMPARE(outcome.sentences().size(), 1);
    }

    void aTableThatMayNotBeReadIsNamed()
    {
        const AsNobody nobody;
        TableFolder folder;
        writeSmallDiary(folder);
        setMode(folder.path(), 0755);
        for (const char *name : {"complaints.csv", "settings.csv", "plan.csv", "stages.csv", "pauses.csv", "mornings.csv"})
            setMode(folder.path(name), 0644);
        setMode(folder.path("sets.csv"), 0000);

        for (const char *verb : {"measure", "check"}) {
            const Outcome outcome = run({QString::fromLatin1(verb), folder.path()}, nobody.circumstances());

            QCOMPARE(outcome.err, QByteArray("sets.csv: there is no permission to read it.\n"));
            QCOMPARE(outcome.status, 3);
        }
        setMode(folder.path("sets.csv"), 0644);
        QCOMPARE(run({QStringLiteral("check"), folder.path()}, nobody.circumstances()).status, 0);
    }

    void aFolderThatMayNotBeReadIsNamed()
    {
        const AsNobody nobody;
        TableFolder folder;
        writeSmallDiary(folder);
        setMode(folder.path(), 0000);

        const Outcome outcome = run({QStringLiteral("measure"), folder.path()}, nobody.circumstances());

        setMode(folder.path(), 0700);
        QCOMPARE(outcome.err, folder.path().toUtf8() + ": there is no permission to read it.\n");
        QCOMPARE(outcome.status, 3);
    }

    void aFolderThatMayNotBeWrittenStaysAsItIs()
    {
        const AsNobody nobody;
        TableFolder target;
        setMode(target.path(), 0555);
        TableFolder folder;
        writeSmallDiary(folder);
        setMode(folder.path(), 0755);

        const Outcome converted = run(convert(folder, target.path("out")), nobody.circumstances());
        const Outcome demo = run({QStringLiteral("demo"), target.path("demo")}, nobody.circumstances());

        QCOMPARE(converted.err, target.path("out").toUtf8() + " was not written: there is no permission to write there.\n");
        QCOMPARE(converted.status, 3);
        QCOMPARE(demo.err, target.path("demo").toUtf8() + " was not written: there is no permission to write there.\n");
        QCOMPARE(demo.status, 3);
        QCOMPARE(target.contents(), QByteArray());
        setMode(target.path(), 0755);
    }

    void aLimitOnTheSizeOfFilesLeavesNothing()
    {
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder target;
        const Circumstances limited{.inChild = [] {
            const rlimit limit{2000, 2000};
            if (::setrlimit(RLIMIT_FSIZE, &limit) != 0)
                ::_exit(99);
        }};

        const Outcome converted = run(convert(folder, target.path("out")), limited);
        const Outcome demo = run({QStringLiteral("demo"), target.path("demo")}, limited);

        QCOMPARE(converted.err, target.path("out").toUtf8() + " was not written: the machine failed to write it.\n");
        QCOMPARE(converted.status, 3);
        QCOMPARE(demo.err, target.path("demo/runner").toUtf8() + " was not written: the machine failed to write it.\n");
        QCOMPARE(demo.status, 3);
        QCOMPARE(target.contents(), QByteArray());
    }

    // Both need root, and the right to mount; without them they say that they were not tried.

    void aReadOnlyFileSystemIsSaid() { onMount("ro,size=1m", " was not written: the place is read-only.\n"); }

    void aFullFileSystemIsSaid() { onMount("size=16k", " was not written: there is no space left.\n"); }

private:
    /// Converts into a file system of its own, which only the child sees.
    void onMount(const char *options, const char *sentence)
    {
        static const char *mountOptions = nullptr;
        static QByteArray place;
        TableFolder folder;
        writeSmallDiary(folder);
        TableFolder target;
        mountOptions = options;
        place = target.path().toLocal8Bit();
        constexpr int cannotMount = 98;

        const Outcome outcome = run(convert(folder, target.path("out")), {.inChild = [] {
            const bool isReadOnly = mountOptions[0] == 'r';
            if (::unshare(CLONE_NEWNS) != 0 || ::mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0
                || ::mount("tmpfs", place.constData(), "tmpfs", isReadOnly ? MS_RDONLY : 0, isReadOnly ? mountOptions + 3 : mountOptions)
                    != 0)
                ::_exit(cannotMount);
        }});

        if (outcome.status == cannotMount) {
            qInfo("not tried: this needs root, and the right to mount a file system");
            return;
        }
        QCOMPARE(outcome.err, target.path("out").toUtf8() + sentence);
        QCOMPARE(outcome.status, 3);
        QCOMPARE(target.contents(), QByteArray());
    }
};

MORROW_SUITE(tst_machine_failures)
#include "tst_machine_failures.moc"
