// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "faults/judge.h"

#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>

#include <chrono>
#include <random>
#include <set>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// A kill that came between two taps or within one; never before the program was started.
struct Kills
{
    int killed = 0;
    int acknowledged = 0;
    int lost = 0; ///< acknowledged and not there
    int untold = 0; ///< there and not acknowledged: the tap in flight
    int damaged = 0; ///< stores that could not be opened or were not whole
};

/// Lets a program record into one store again and again, and kills it somewhere each time.
class KillLoop
{
public:
    enum class Program {
        Batch, ///< morrow-batch record, a line a tap
        Live, ///< quiet times, backups and restarts beside the taps
        Late, ///< says that it saved what it did not save: the control
    };

    KillLoop(Program program, std::uint64_t seed)
        : m_program(program)
        , m_random(seed)
    {
    }

    [[nodiscard]] Kills run(int count)
    {
        while (m_kills.killed < count) {
            // A new store now and then, so that reading it back stays quick, and the first start is met, too.
            if (m_kills.killed % 30 == 0)
                beginStore();
            killOnce();
        }
        return m_kills;
    }

private:
    void beginStore()
    {
        m_folder = std::make_unique<ScratchFolder>();
        m_told.clear();
        m_next = 0;
        m_inFlight = 0;
        if (m_program != Program::Batch)
            return;
        QFile lines(linesFile());
        if (!lines.open(QIODevice::WriteOnly))
            qFatal("no input file");
        for (int number = 0; number < 400; ++number)
            lines.write(R"({"kind":"unusual","day":"2026-04-28","author":"patient","body":{"text":"nothing of note"}})"
                        "\n");
    }

    [[nodiscard]] QString linesFile() const { return QString::fromStdString((*m_folder / "lines").string()); }
    [[nodiscard]] fs::path diary() const { return *m_folder / "diary"; }

    void start(QProcess &program)
    {
        const QString folder = QString::fromStdString(diary().string());
        if (m_program == Program::Batch) {
            program.setStandardInputFile(linesFile());
            program.start(QStringLiteral(MORROW_BATCH), {QStringLiteral("record"), QStringLiteral("--store"), folder});
        } else {
            const QString verb = m_program == Program::Live ? QStringLiteral("live") : QStringLiteral("late");
            program.start(QStringLiteral(MORROW_STORE_PROGRAM), {verb, folder, QString::number(m_next)});
        }
        if (!program.waitForStarted(-1))
            qFatal("the program does not start");
    }

    /// Passes up to so many microseconds, to hit another place each time.
    void linger(int microseconds)
    {
        const auto end = std::chrono::steady_clock::now() + std::chrono::microseconds(m_random() % static_cast<unsigned>(microseconds));
        while (std::chrono::steady_clock::now() < end) { }
    }

    void killOnce()
    {
        QProcess program;
        start(program);
        QByteArray said;
        const int taps = static_cast<int>(m_random() % 40);
        while (said.count('\n') < taps && program.waitForReadyRead(-1))
            said += program.readAllStandardOutput();
        linger(taps == 0 ? 30'000 : 2'000);
        program.kill();
        program.waitForFinished(-1);
        said += program.readAllStandardOutput();
        m_kills.killed += program.exitStatus() == QProcess::CrashExit ? 1 : 0;
        if (program.exitStatus() != QProcess::CrashExit && program.exitCode() != 0)
            qFatal("the program failed: %s", program.readAllStandardError().constData());
        take(said);
        check();
    }

    /// Every whole line is an acknowledgement.
    void take(const QByteArray &said)
    {
        const auto lines = said.left(said.lastIndexOf('\n') + 1).split('\n');
        for (const QByteArray &line : lines) {
            if (line.isEmpty())
                continue;
            ++m_kills.acknowledged;
            if (m_program == Program::Batch) {
                const QJsonObject answer = QJsonDocument::fromJson(line).object();
                if (!answer[QLatin1String("saved")].toBool())
                    qFatal("not saved: %s", line.constData());
                m_told.insert(answer[QLatin1String("id")].toString().toStdString());
            } else {
                m_told.insert(line.toStdString());
                m_next = line.mid(5).toInt() + 1;
            }
        }
    }

    void check()
    {
        ++m_inFlight; // one tap of each program may be there without an answer
        std::set<std::string> held;
        if (fs::exists(diary() / "diary.db")) {
            auto store = DiaryStore::open(diary(), {});
            const auto persons = store ? store->persons() : Result<std::vector<std::string>, StoreError>();
            for (const std::string &ref : store &&persons ? *persons : std::vector<std::string>()) {
                const auto reading = store->read(ref);
                if (!reading || !reading->isWhole())
                    ++m_kills.damaged;
                for (const Entry &entry : reading ? reading->entries : std::vector<Entry>())
                    held.insert(entry.id);
            }
            m_kills.damaged += store && persons ? 0 : 1;
        }
        int known = 0;
        for (const std::string &id : m_told)
            known += held.contains(id) ? 1 : 0;
        const int lost = static_cast<int>(m_told.size()) - known;
        m_kills.lost += lost;
        if (static_cast<int>(held.size()) - known > m_inFlight)
            ++m_kills.untold;
    }

    Program m_program;
    std::mt19937_64 m_random;
    std::unique_ptr<ScratchFolder> m_folder;
    std::set<std::string> m_told;
    int m_next = 0;
    int m_inFlight = 0;
    Kills m_kills;
};

void print(const char *what, const Kills &kills)
{
    std::printf("%s: killed %d times, %d acknowledged, %d lost, %d times not whole\n", what, kills.killed, kills.acknowledged, kills.lost,
        kills.damaged);
    std::fflush(stdout);
}

} // namespace

/// The program is killed at any moment: what it acknowledged is there, and at most the tap in flight is
/// not. This says nothing of power cuts, for the machine goes on.
class tst_killed : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void nothingAcknowledgedIsLostByTheProgram()
    {
        const int count = amount(30, 300, 1000);

        const Kills kills = KillLoop(KillLoop::Program::Batch, 1).run(count);

        print("morrow-batch record", kills);
        QVERIFY(kills.killed >= count);
        QVERIFY(kills.acknowledged > count);
        QCOMPARE(kills.lost, 0);
        QCOMPARE(kills.damaged, 0);
        QCOMPARE(kills.untold, 0);
    }

    void nothingAcknowledgedIsLostWithBackupsAndRestarts()
    {
        const int count = amount(15, 150, 1000);

        const Kills kills = KillLoop(KillLoop::Program::Live, 2).run(count);

        print("a program with backups and restarts", kills);
        QVERIFY(kills.killed >= count);
        QVERIFY(kills.acknowledged > count);
        QCOMPARE(kills.lost, 0);
        QCOMPARE(kills.damaged, 0);
        QCOMPARE(kills.untold, 0);
    }

    void aProgramThatSpeaksTooEarlyIsSeenToLose()
    {
        const Kills kills = KillLoop(KillLoop::Program::Late, 3).run(10);

        print("control, a program that speaks too early", kills);
        QVERIFY(kills.lost > 0);
    }
};

MORROW_SUITE(tst_killed)
#include "tst_killed.moc"
