// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/measures/measured.h"

#include "measures/volume.h"

using namespace morrow;
using namespace morrow::test;

namespace {

SetDone recorded(int reps, std::optional<int> hold, const std::string &load)
{
    return {
        .entry = 0,
        .day = day("2026-03-02"),
        .slot = "morning",
        .number = 1,
        .reps = reps,
        .holdSeconds = hold,
        .loadKg = load.empty() ? std::nullopt : std::optional(number(load)),
        .spareReps = std::nullopt,
    };
}

std::optional<double> volumeOf(const StageVolume &stage, const SetDone &set)
{
    VolumeSum sum;
    sum.add(stage.unit(), stage.of(set));
    return sum.value();
}

Dose withTempo(std::optional<int> up, std::optional<int> pause, std::optional<int> down)
{
    Dose dose = onDays(3, 15).dose;
    dose.upSeconds = up;
    dose.pauseSeconds = pause;
    dose.downSeconds = down;
    return dose;
}

} // namespace

/// How much a set is.
class tst_volume : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void volumeIsRepsTimesHoldTimesWhatIsMoved_data()
    {
        QTest::addColumn<Dose>("dose");
        QTest::addColumn<SetDone>("set");
        QTest::addColumn<double>("volume");
        QTest::addColumn<VolumeUnit>("unit");

        // The body weighs 68 kg.
        QTest::newRow("nothing is moved: reps") << onDays(3, 15).dose << recorded(12, {}, "") << 12.0 << VolumeUnit::Reps;
        QTest::newRow("a recorded load of a dose without one is of no account")
            << onDays(3, 15).dose << recorded(12, {}, "5") << 12.0 << VolumeUnit::Reps;
        QTest::newRow("a load") << loaded(onDays(3, 15), "2.5").dose << recorded(12, {}, "4") << 48.0 << VolumeUnit::KgReps;
        QTest::newRow("an empty load is the prescribed one")
            << loaded(onDays(3, 15), "2.5").dose << recorded(12, {}, "") << 30.0 << VolumeUnit::KgReps;
        QTest::newRow("a recorded load of 0 is 0")
            << loaded(onDays(3, 15), "2.5").dose << recorded(12, {}, "0") << 0.0 << VolumeUnit::KgReps;
        QTest::newRow("a share of body mass") << loaded(onDays(3, 15), "0", "0.6").dose << recorded(10, {}, "") << 408.0
                                              << VolumeUnit::KgReps;
        QTest::newRow("a share and a recorded load")
            << loaded(onDays(3, 15), "4", "1").dose << recorded(10, {}, "7") << 750.0 << VolumeUnit::KgReps;
        QTest::newRow("a share, and a load only recorded")
            << loaded(onDays(3, 15), "0", "1").dose << recorded(10, {}, "2") << 700.0 << VolumeUnit::KgReps;
        QTest::newRow("held: seconds") << held(onDays(1, 10), 30).dose << recorded(8, 20, "") << 160.0 << VolumeUnit::Seconds;
        QTest::newRow("an empty hold is the prescribed one")
            << held(onDays(1, 10), 30).dose << recorded(8, {}, "") << 240.0 << VolumeUnit::Seconds;
        QTest::newRow("a recorded hold of 0 is 0") << held(onDays(1, 10), 30).dose << recorded(8, 0, "") << 0.0 << VolumeUnit::Seconds;
        QTest::newRow("a hold of a stage that is not held is of no account")
            << onDays(3, 15).dose << recorded(12, 30, "") << 12.0 << VolumeUnit::Reps;
        QTest::newRow("held with a load") << loaded(held(onDays(1, 10), 30), "2").dose << recorded(3, {}, "") << 180.0
                                          << VolumeUnit::KgSeconds;
    }

    void volumeIsRepsTimesHoldTimesWhatIsMoved()
    {
        QFETCH(Dose, dose);
        QFETCH(SetDone, set);
        QFETCH(double, volume);
        QFETCH(VolumeUnit, unit);

        const StageVolume stage(dose, number("68"));

        QCOMPARE(volumeOf(stage, set), std::optional(volume));
        QVERIFY(stage.unit() == unit);
    }

    void aShareOfAnUnknownBodyMassHasNoVolume()
    {
        const StageVolume stage(loaded(onDays(3, 15), "4", "0.5").dose, std::nullopt);

        QVERIFY(!stage.unit());
        QCOMPARE(volumeOf(stage, recorded(10, {}, "")), kNone);
    }

    void aSessionDoneAsPrescribedIsExactlyWhatWasDue()
    {
        // 0.1 + 0.1 + 0.1 is not 0.3 in binary.
        const StageVolume stage(loaded(onDays(3, 1), "0.1").dose, std::nullopt);
        double done = 0;
        for (int set = 1; set <= 3; ++set)
            done += stage.of(recorded(1, {}, ""));

        QVERIFY(done == stage.session());
    }

    void volumesOfTwoUnitsHaveNoSum()
    {
        VolumeSum sum;
        QCOMPARE(sum.value(), std::optional(0.0));
        QVERIFY(!sum.unit());

        sum.add(VolumeUnit::Reps, 2e6);
        sum.add(VolumeUnit::Reps, 3e6);
        QCOMPARE(sum.value(), std::optional(5.0));
        QVERIFY(sum.unit() == VolumeUnit::Reps);

        sum.add(VolumeUnit::Seconds, 1e6);
        QCOMPARE(sum.value(), kNone);
        QVERIFY(!sum.unit());

        VolumeSum other;
        other.add(VolumeUnit::Reps, 1e6);
        other.add(sum);
        QCOMPARE(other.value(), kNone);
    }

    void tensionIsRepsTimesHoldOrTempo_data()
    {
        QTest::addColumn<Dose>("dose");
        QTest::addColumn<SetDone>("set");
        QTest::addColumn<qint64>("seconds"); // -1: unknown

        QTest::newRow("held, as recorded") << held(onDays(1, 10), 30).dose << recorded(8, 20, "") << qint64{160};
        QTest::newRow("held, as prescribed") << held(onDays(1, 10), 30).dose << recorded(8, {}, "") << qint64{240};
        QTest::newRow("tempo") << withTempo(3, 2, 3) << recorded(10, {}, "") << qint64{80};
        QTest::newRow("an empty part is 0 if another is given") << withTempo(3, {}, {}) << recorded(10, {}, "") << qint64{30};
        QTest::newRow("no part is given") << withTempo({}, {}, {}) << recorded(10, {}, "") << qint64{-1};
        QTest::newRow("all parts are 0") << withTempo(0, 0, 0) << recorded(10, {}, "") << qint64{0};
    }

    void tensionIsRepsTimesHoldOrTempo()
    {
        QFETCH(Dose, dose);
        QFETCH(SetDone, set);
        QFETCH(qint64, seconds);

        QCOMPARE(qint64{StageVolume(dose, std::nullopt).tension(set).value_or(-1)}, seconds);
    }
};

MORROW_SUITE(tst_volume)

#include "tst_volume.moc"
