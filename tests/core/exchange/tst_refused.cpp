// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "exchange/bad_folders.h"
#include "exchange/folders.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <sys/stat.h>

#include <set>

using namespace morrow;
using namespace morrow::test;

/// A folder is read whole or not at all, and what is wrong is said once, with its place.
class tst_refused : public QObject
{
    Q_OBJECT

private:
    static bool put(const QString &path, const std::string &bytes)
    {
        QFile file(path);
        return file.open(QIODevice::WriteOnly)
            && file.write(bytes.data(), static_cast<qint64>(bytes.size())) == static_cast<qint64>(bytes.size());
    }

    static std::vector<Issue> issuesAt(const QString &path)
    {
        auto read = readTables(path.toStdString());
        return read ? std::vector<Issue>() : std::move(read).error();
    }

    /// What the machine has against the folder at \a path; the fileError of another issue counts for nothing.
    static void refusesOnce(const QString &path, IssueCode code, const std::string &file, FileError error = FileError::Io)
    {
        const auto issues = issuesAt(path);
        QCOMPARE(issues.size(), std::size_t{1});
        QVERIFY2(issues[0].code == code, shown(issues[0]).c_str());
        QCOMPARE(issues[0].file, file);
        QVERIFY(code != IssueCode::Unreadable || issues[0].fileError == error);
    }

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theSmallFolderIsGood()
    {
        std::string why;

        const auto diary = diaryIn(smallFolder(), &why);

        QVERIFY2(diary, why.c_str());
        QCOMPARE(diary->entries.size(), std::size_t{2});
    }

    void i1_oneMistakeIsOneIssueInItsPlace_data()
    {
        QTest::addColumn<int>("index");

        int index = 0;
        for (const BadFolder &folder : badFolders())
            QTest::newRow(folder.name) << index++;
    }

    void i1_oneMistakeIsOneIssueInItsPlace()
    {
        QFETCH(int, index);
        const BadFolder bad = badFolders()[static_cast<std::size_t>(index)];

        const auto issues = issuesOf(smallFolder(bad.files));

        std::string all;
        for (const Issue &issue : issues)
            all += shown(issue) + "; ";
        QVERIFY2(issues.size() == 1, all.c_str());
        QVERIFY2(issues[0].code == bad.code, all.c_str());
        QCOMPARE(issues[0].file, bad.file);
        QCOMPARE(issues[0].line, bad.line);
        QCOMPARE(issues[0].column, bad.column);
        QCOMPARE(issues[0].columnName, bad.columnName);
        QCOMPARE(issues[0].value, bad.value);
        QCOMPARE(issues[0].other, bad.other);
        QVERIFY(bad.code != IssueCode::ValueRefused || issues[0].rule);
    }

    void everyCodeIsMetSomewhere()
    {
        // PersonMissing is what programs say where they need one; the three others come from the disk, below.
        std::set<IssueCode> met{IssueCode::PersonMissing, IssueCode::FolderMissing, IssueCode::PlanMissing, IssueCode::Unreadable};
        for (const BadFolder &folder : badFolders())
            met.insert(folder.code);

        for (int code = 0; code <= static_cast<int>(IssueCode::PersonMissing); ++code)
            QVERIFY2(met.contains(static_cast<IssueCode>(code)), std::to_string(code).c_str());
    }

    void i1_everyReasonIsTold()
    {
        const auto issues = issuesOf(smallFolder({
            {"mornings.csv", "id,day,pain,stiffness_min,recorded_at\n,2026-02-30,11,,\n,2026-03-04,4,-1,\n"},
            {"visits.csv",
                "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note\n,,,,,,,,,,,\a\n"},
            {"steps.csv", ""},
        }));
        const auto withoutSteps = issuesOf(smallFolder({
            {"mornings.csv", "id,day,pain,stiffness_min,recorded_at\n,2026-02-30,11,,\n,2026-03-04,4,-1,\n"},
            {"visits.csv",
                "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note\n,,,,,,,,,,,\a\n"},
        }));

        QCOMPARE(issues.size(), std::size_t{1}); // a file of another name is said before anything is read
        QCOMPARE(withoutSteps.size(), std::size_t{5});
    }

    void anIdThatThePlanAlreadyHasIsRefused()
    {
        const auto diary = diaryIn(smallFolder());
        QVERIFY(diary);
        for (const Entry &entry : diary->entries) {
            const auto asId
                = issuesOf(smallFolder({{"mornings.csv", "id,day,pain,stiffness_min,recorded_at\n" + entry.id + ",2026-03-03,4,,\n"}}));
            const auto asReplaced = issuesOf(
                smallFolder({{"mornings.csv", "id,day,pain,stiffness_min,recorded_at,replaces\n,2026-03-03,4,,," + entry.id + "\n"}}));

            QCOMPARE(asId.size(), std::size_t{1});
            QVERIFY2(asId[0].code == IssueCode::TwoContentsForOneId, shown(asId[0]).c_str());
            QCOMPARE(asId[0].line, 2);
            QCOMPARE(asReplaced.size(), std::size_t{1});
            QVERIFY2(asReplaced[0].code == IssueCode::ReplacesAnotherKind, shown(asReplaced[0]).c_str());
        }
    }

    void whatIsNoFolderOfTablesIsRefused()
    {
        QTemporaryDir folder;
        QVERIFY(folder.isValid());

        refusesOnce(folder.filePath(QStringLiteral("nowhere")), IssueCode::FolderMissing, "");
        refusesOnce(folder.path(), IssueCode::PlanMissing, "");
        QVERIFY(put(folder.filePath(QStringLiteral("file")), "item\n"));
        refusesOnce(folder.filePath(QStringLiteral("file")), IssueCode::FolderMissing, "");
    }

    void whatIsNoRegularFileIsRefusedWithoutWaiting()
    {
        QTemporaryDir folder;
        QVERIFY(folder.isValid());
        const std::string fifo = folder.filePath(QStringLiteral("plan.csv")).toStdString();

        QCOMPARE(mkfifo(fifo.c_str(), 0600), 0);
        refusesOnce(folder.path(), IssueCode::Unreadable, "plan.csv", FileError::NotRegular);
        QVERIFY(QFile::remove(QString::fromStdString(fifo)));
        QVERIFY(QDir().mkdir(QString::fromStdString(fifo)));
        refusesOnce(folder.path(), IssueCode::Unreadable, "plan.csv", FileError::NotRegular);
    }

    void aFileOf129MebibytesIsRefused()
    {
        QTemporaryDir folder;
        QVERIFY(folder.isValid());
        QFile file(folder.filePath(QStringLiteral("plan.csv")));
        QVERIFY(file.open(QIODevice::WriteOnly));
        QVERIFY(file.resize(129LL * 1024 * 1024)); // holds no blocks
        file.close();

        refusesOnce(folder.path(), IssueCode::Unreadable, "plan.csv", FileError::TooLarge);
    }

    void otherFilesInAFolderAreNobodysBusiness()
    {
        QTemporaryDir folder;
        QVERIFY(folder.isValid());
        for (const auto &[name, bytes] : smallFolder({{"csv-metadata.json", "{"}, {"notes.txt", "\xff"}, {"plan.csv~", ""}}))
            QVERIFY(put(folder.filePath(QString::fromStdString(name)), bytes));

        const auto fromDisk = readTables(folder.path().toStdString());

        QVERIFY(fromDisk);
        QVERIFY(fromDisk->entries == diaryIn(smallFolder())->entries);
    }

    /// Whatever is missing of a file, it is refused with a reason, or read as far as it goes and written again.
    void aFileThatBreaksOffAnywhereIsRefusedOrRead()
    {
        const Files whole = smallFolder({
            {"settings.csv", "key,value,complaint\r\npatient_ref,q1,\r\nreview_text,\"x\r\ny\",heel\r\n"},
            {"mornings.csv",
                "\xef\xbb\xbfid,day,pain,stiffness_min,recorded_at,replaces\r\nq1,2026-03-03,4,10,2026-03-03T07:00:00.5+01:00,\r\n,2026-03-"
                "04,5,,,q1\r\n"},
            {"unusual.csv", "id,day,text,recorded_at\n,2026-03-03,\"\"\"r\xc3\xa4in\"\", \xf0\x9f\x98\x80\n'-8\",\n"},
        });
        int read = 0;
        int refused = 0;
        for (const auto &[name, bytes] : whole) {
            for (std::size_t size = 0; size <= bytes.size(); ++size) {
                Files cut = whole;
                cut.find(name)->second = bytes.substr(0, size);

                const auto diary = readTableFiles(cut);

                if (diary) {
                    ++read;
                    const auto again = diaryIn(written(*diary));
                    QVERIFY2(again && again->entries == diary->entries, (name + " cut at " + std::to_string(size)).c_str());
                } else {
                    ++refused;
                    // What the plan loses is missed elsewhere too.
                    const std::string said = diary.error().empty() ? "nothing" : shown(diary.error().front());
                    QVERIFY2(said.find(name) != std::string::npos || name == "plan.csv" || name == "complaints.csv", said.c_str());
                }
            }
        }
        QVERIFY2(read > 20, std::to_string(read).c_str());
        QVERIFY2(refused > 500, std::to_string(refused).c_str());
    }
};

MORROW_SUITE(tst_refused)

#include "tst_refused.moc"
