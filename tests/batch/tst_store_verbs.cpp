// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "batch/program.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QTemporaryDir>

#include <fcntl.h>
#include <unistd.h>

using namespace morrow::test;

namespace {

const QString kPaper = QStringLiteral(MORROW_DEMO_DATA "/paper");

/// The answers of a verb that answers each line with a line.
QList<QJsonObject> lines(const QByteArray &out)
{
    QList<QJsonObject> answers;
    for (const QByteArray &line : out.split('\n')) {
        if (!line.isEmpty())
            answers.append(QJsonDocument::fromJson(line).object());
    }
    return answers;
}

} // namespace

/// A diary in a store is the diary that was put there, and what is lost is said.
class tst_store_verbs : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        m_folder = std::make_unique<QTemporaryDir>();
        QVERIFY(m_folder->isValid());
        QCOMPARE(run({QStringLiteral("convert"), kPaper, QStringLiteral("--to"), QStringLiteral("store"), store()}).status, 0);
    }

    void aStoreMeasuresAsTheTablesDo()
    {
        QCOMPARE(measure(store()).status, 0);
        QCOMPARE(measure(store()).out, measure(kPaper).out);
        QVERIFY(measure(store()).out.size() > 1000);
    }

    void aStoreComesBackAsTheSameTables()
    {
        const QString out = m_folder->filePath(QStringLiteral("tables"));
        QCOMPARE(run({QStringLiteral("convert"), store(), QStringLiteral("--to"), QStringLiteral("tables"), out}).status, 0);

        const Outcome again = run({QStringLiteral("measure"), out, QStringLiteral("--as-of"), QStringLiteral("2026-04-27")});

        QCOMPARE(again.out, measure(kPaper).out);
    }

    void eachLineGetsItsAnswer()
    {
        const Outcome outcome = record(R"({"kind":"check","day":"2026-04-28","author":"patient","body":{"pain":3}}
{"kind":"check","day":"2026-04-28","author":"patient","body":{"pain":13}}
not JSON
{"kind":"check","day":"2026-04-29","author":"patient","recorded":null,"body":{"pain":2},"id":"typed-1"}
{"kind":"check","author":"clinic","body":{"pain":2}}
{"kind":"set","author":"patient","body":{"item":"no-such","reps":3,"set":1,"slot":"a"}}
{"kind":"check","kind":"set","author":"patient","body":{}}
)");

        const auto answers = lines(outcome.out);
        QCOMPARE(outcome.status, 1);
        QCOMPARE(answers.size(), 7);
        for (int i = 0; i < answers.size(); ++i) {
            const bool saved = answers[i][QLatin1String("saved")].toBool();
            QCOMPARE(saved, i == 0 || i == 3);
            QVERIFY(!answers[i][QLatin1String(saved ? "id" : "why")].toString().isEmpty());
        }
        QCOMPARE(answers[3][QLatin1String("id")].toString(), QStringLiteral("typed-1"));
        const QJsonObject checked = run({QStringLiteral("check"), store()}).array()[0].toObject();
        QCOMPARE(checked[QLatin1String("entries")].toInt(), 301);
        QCOMPARE(checked[QLatin1String("lost")].toInt(-1), 0);
    }

    void theSameIdWithAnotherContentIsRefused()
    {
        QCOMPARE(
            record(R"({"kind":"unusual","day":"2026-04-28","author":"patient","recorded":null,"body":{"text":"a"},"id":"u"})").status, 0);
        QCOMPARE(
            record(R"({"kind":"unusual","day":"2026-04-28","author":"patient","recorded":null,"body":{"text":"a"},"id":"u"})").status, 0);
        QCOMPARE(
            record(R"({"kind":"unusual","day":"2026-04-28","author":"patient","recorded":null,"body":{"text":"b"},"id":"u"})").status, 1);
    }

    void aLostStoreIsRestoredFromItsBackup()
    {
        QVERIFY(QFile::remove(store() + QStringLiteral("/diary.db")));

        QCOMPARE(measure(store()).status, 3);
        const Outcome restored = run({QStringLiteral("restore"), QStringLiteral("--store"), store()});

        QCOMPARE(restored.status, 0);
        QCOMPARE(restored.object()[QLatin1String("back")].toInt(), 299);
        QVERIFY(restored.object()[QLatin1String("missing")].isNull()); // nobody can say what came after the backup
        QVERIFY(!restored.object()[QLatin1String("sinceBackup")].toString().isEmpty());
        QCOMPARE(measure(store()).out, measure(kPaper).out);
    }

    void anErasedEntryIsGoneForGood()
    {
        QCOMPARE(
            record(R"({"kind":"unusual","day":"2026-04-28","author":"patient","body":{"text":"canary7431"},"id":"secret"})").status, 0);

        const Outcome erased
            = run({QStringLiteral("erase"), QStringLiteral("--store"), store(), QStringLiteral("--id"), QStringLiteral("secret")});

        QCOMPARE(erased.status, 0);
        QCOMPARE(erased.object()[QLatin1String("erased")].toInt(), 1);
        QCOMPARE(run({QStringLiteral("restore"), QStringLiteral("--store"), store()}).status, 0);
        for (const QString &folder : {store(), store() + QStringLiteral("/backups"), store() + QStringLiteral("/kept")}) {
            for (const QFileInfo &info : QDir(folder).entryInfoList(QDir::Files | QDir::Hidden)) {
                QFile file(info.filePath());
                QVERIFY(file.open(QIODevice::ReadOnly));
                QVERIFY2(!file.readAll().contains("canary7431"), qPrintable(info.filePath()));
            }
        }
    }

    void whatIsNoStoreIsLeftAsItIs()
    {
        const QString folder = m_folder->filePath(QStringLiteral("letters"));
        QVERIFY(QDir().mkpath(folder));
        QFile letter(folder + QStringLiteral("/letter.txt"));
        QVERIFY(letter.open(QIODevice::WriteOnly));
        letter.close();

        const Outcome outcome = record("", folder);

        QCOMPARE(outcome.status, 1);
        QCOMPARE(outcome.sentences().size(), 1);
        QCOMPARE(QDir(folder).entryList(QDir::AllEntries | QDir::NoDotAndDotDot), QStringList{QStringLiteral("letter.txt")});
    }

private:
    [[nodiscard]] QString store() const { return m_folder->filePath(QStringLiteral("store")); }
    static Outcome measure(const QString &input)
    {
        return run({QStringLiteral("measure"), input, QStringLiteral("--as-of"), QStringLiteral("2026-04-27")});
    }
    [[nodiscard]] Outcome record(const QByteArray &input, const QString &folder = {}) const
    {
        QFile file(m_folder->filePath(QStringLiteral("input")));
        if (!file.open(QIODevice::WriteOnly))
            qFatal("no input file");
        file.write(input);
        file.close();
        const QByteArray path = file.fileName().toUtf8();
        Circumstances circumstances;
        circumstances.inChild = [path] { ::dup2(::open(path.constData(), O_RDONLY), STDIN_FILENO); };
        return run({QStringLiteral("record"), QStringLiteral("--store"), folder.isEmpty() ? store() : folder}, circumstances);
    }

    std::unique_ptr<QTemporaryDir> m_folder;
};

MORROW_SUITE(tst_store_verbs)

#include "tst_store_verbs.moc"
