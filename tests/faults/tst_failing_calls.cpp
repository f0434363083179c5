// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "faults/judge.h"

#include <algorithm>
#include <array>

using namespace morrow;
using namespace morrow::test;

namespace {

enum class Cause {
    Io, ///< EIO
    Full, ///< ENOSPC
    ReadOnly, ///< EROFS
};

/// What SQLite hears from a machine whose \a call fails; SQLITE_OK where it cannot for that cause.
int answer(Call call, Cause cause)
{
    static constexpr std::array<std::array<int, 3>, 9> kAnswers{{
        {SQLITE_CANTOPEN, SQLITE_CANTOPEN, SQLITE_CANTOPEN}, // Open
        {SQLITE_IOERR_DELETE, SQLITE_OK, SQLITE_IOERR_DELETE},
        {SQLITE_IOERR_ACCESS, SQLITE_OK, SQLITE_OK},
        {SQLITE_IOERR_READ, SQLITE_OK, SQLITE_OK},
        {SQLITE_IOERR_WRITE, SQLITE_FULL, SQLITE_READONLY},
        {SQLITE_IOERR_TRUNCATE, SQLITE_OK, SQLITE_READONLY},
        {SQLITE_IOERR_FSYNC, SQLITE_IOERR_FSYNC, SQLITE_IOERR_FSYNC},
        {SQLITE_IOERR_FSTAT, SQLITE_OK, SQLITE_OK},
        {SQLITE_IOERR_LOCK, SQLITE_OK, SQLITE_OK},
    }};
    return kAnswers[static_cast<std::size_t>(call)][static_cast<std::size_t>(cause)];
}

/// A life that meets one failure: of the call that is the \a number-th to be able to fail so, and, if
/// \a isForGood, of all after it.
class Trial
{
public:
    Trial(const std::vector<Step> &steps, Cause cause, bool isForGood, bool forgets)
        : m_vfs(kVfs)
        , m_steps(steps)
        , m_cause(cause)
        , m_isForGood(isForGood)
    {
        m_vfs.setForgetful(forgets);
    }

    /// False if the life was over before the \a number-th call.
    bool run(int number)
    {
        m_random.seed(static_cast<std::uint64_t>(number));
        m_disk = Disk();
        m_vfs.mount(&m_disk);
        m_told = {Told().fingerprint()};
        Told told;
        for (const Step &step : m_steps) {
            told.take(step);
            m_told.push_back(told.fingerprint());
        }
        int met = 0;
        m_vfs.setFault([&, number](Call call) {
            const int failed = answer(call, m_cause);
            if (failed == SQLITE_OK)
                return SQLITE_OK;
            ++met;
            return met == number || (m_isForGood && met > number) ? failed : SQLITE_OK;
        });
        m_isForGood ? endInFailure() : goOnAfterIt();
        m_vfs.setFault({});
        return met >= number;
    }

    /// What was acknowledged falsely, read wrongly or did not work again; empty if nothing.
    [[nodiscard]] const std::string &wrong() const noexcept { return m_wrong; }
    [[nodiscard]] int cuts() const noexcept { return m_cuts; }

private:
    void expect(bool holds, const std::string &otherwise)
    {
        if (!holds && m_wrong.empty())
            m_wrong = otherwise;
    }

    /// Every step is asked for again where it failed, which one failure allows once.
    void goOnAfterIt()
    {
        {
            std::optional<DiaryStore> store;
            for (std::size_t step = 0; step < m_steps.size(); ++step) {
                if (!perform(m_steps[step], store)) {
                    expect(perform(m_steps[step], store).has_value(), "step " + std::to_string(step) + " does not work again");
                    expect(
                        !store || readsRightly(*store, step + 1), "step " + std::to_string(step) + ": what is read is not what was told");
                }
            }
            // Before the store is closed, which would make safe what was not.
            expectAfterCuts(m_told.size() - 1, m_told.size() - 1);
        }
        expectAfterCuts(m_told.size() - 1, m_told.size() - 1);
    }

    /// Nothing works any more; then the power goes, or the program is started again and told the rest.
    void endInFailure()
    {
        std::size_t done = 0;
        {
            std::optional<DiaryStore> store;
            while (done < m_steps.size() && perform(m_steps[done], store))
                ++done;
            for (std::size_t more = done; more < m_steps.size() && m_isForGood; ++more) {
                // A quiet time or a tap that is known asks nothing of the machine.
                const bool acknowledged = perform(m_steps[more], store).has_value();
                expect(!acknowledged || m_told[more + 1] == m_told[done],
                    "step " + std::to_string(more) + " was acknowledged after the failure");
                if (store)
                    expect(readsRightly(*store, done) || readsRightly(*store, done + 1),
                        "after the failure what is read is not what was told");
            }
            expectAfterCuts(done, std::min(done + 1, m_steps.size()));
        }
        expectAfterCuts(done, std::min(done + 1, m_steps.size()));

        // Started again without a power cut, the program finds what never reached the disk.
        m_vfs.setFault({});
        const std::size_t again = m_disk.log().size();
        std::vector<std::size_t> acknowledged;
        {
            std::optional<DiaryStore> store;
            for (std::size_t step = done; step < m_steps.size(); ++step) {
                expect(
                    perform(m_steps[step], store).has_value(), "step " + std::to_string(step) + " fails although the machine works again");
                acknowledged.push_back(m_disk.log().size());
            }
        }
        for (int i = 0; i < 4 && done < m_steps.size(); ++i) {
            const std::size_t when = i == 0 ? m_disk.log().size() : again + m_random() % (m_disk.log().size() - again + 1);
            const auto safe
                = done + static_cast<std::size_t>(std::upper_bound(acknowledged.begin(), acknowledged.end(), when) - acknowledged.begin());
            expectAfterCuts(safe, std::min(safe + 1, m_steps.size()), when);
        }
    }

    /// Either what \a step steps told, or an error, or said not to be whole.
    bool readsRightly(DiaryStore &store, std::size_t step)
    {
        const std::string held = store.database() ? heldBy(store) : "broken: not open";
        return held.starts_with("broken") || held == m_told[step];
    }

    /// After a power cut, here or after operation \a when, there is what the first \a least steps told, at most that of \a most.
    void expectAfterCuts(std::size_t least, std::size_t most, std::optional<std::size_t> when = {})
    {
        PowerCut cut({});
        for (std::size_t done = 0; done < when.value_or(m_disk.log().size()); ++done)
            cut.follow(m_disk.log()[done]);
        DiskVfs other("cut");
        for (int i = 0; i < (cut.isCertain() ? 1 : 3); ++i) {
            ++m_cuts;
            const std::string held = heldOn(other, i == 0 ? cut.leastOutcome() : cut.outcome(m_random), schemaSteps(), "cut");
            expect(held == m_told[least] || held == m_told[most],
                "after a power cut there is not what was acknowledged in " + std::to_string(least) + " steps but " + told(held));
        }
    }

    /// Which steps made \a held.
    [[nodiscard]] std::string told(const std::string &held) const
    {
        const auto found = std::find(m_told.begin(), m_told.end(), held);
        return found == m_told.end() ? held : std::to_string(found - m_told.begin());
    }

    DiskVfs m_vfs;
    const std::vector<Step> &m_steps;
    Cause m_cause;
    bool m_isForGood;
    Disk m_disk;
    std::vector<std::string> m_told;
    std::string m_wrong;
    PowerCut::Random m_random{1};
    int m_cuts = 0;
};

} // namespace

/// Every call on the machine fails in turn, once or for good: nothing is acknowledged that is not safe
/// (diary_store.h I5), and what failed once works again.
class tst_failing_calls : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i5_nothingIsAcknowledgedThatIsNotSafe_data()
    {
        QTest::addColumn<int>("cause");
        QTest::addColumn<bool>("isForGood");
        QTest::addColumn<bool>("forgets");

        const char *const causes[] = {"EIO", "ENOSPC", "EROFS"};
        for (int cause = 0; cause < 3; ++cause) {
            for (const bool isForGood : {false, true}) {
                QTest::addRow("%s %s", causes[cause], isForGood ? "for good" : "once") << cause << isForGood << false;
                QTest::addRow("%s %s, a failed sync not being tried again", causes[cause], isForGood ? "for good" : "once")
                    << cause << isForGood << true;
            }
        }
    }

    void i5_nothingIsAcknowledgedThatIsNotSafe()
    {
        QFETCH(int, cause);
        QFETCH(bool, isForGood);
        QFETCH(bool, forgets);
        const auto steps = lifeOf(18);

        int faults = 0;
        int wrong = 0;
        int cuts = 0;
        std::string example;
        for (bool isMet = true; isMet; ++faults) {
            Trial trial(steps, static_cast<Cause>(cause), isForGood, forgets);
            isMet = trial.run(faults + 1);
            cuts += trial.cuts();
            wrong += trial.wrong().empty() ? 0 : 1;
            if (example.empty() && !trial.wrong().empty())
                example = "call " + std::to_string(faults + 1) + ": " + trial.wrong();
        }

        std::printf("failing calls, %s: %d faults, each with power cuts after it (%d), %d wrong\n", QTest::currentDataTag(), faults - 1,
            cuts, wrong);
        std::fflush(stdout);
        QCOMPARE(example.c_str(), "");
        QVERIFY(faults > 50);
    }
};

MORROW_SUITE(tst_failing_calls)
#include "tst_failing_calls.moc"
