// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/volume.h"

namespace morrow {

namespace {

constexpr double kMillion = 1e6;

/// 40.8 as 40800000: whole, and exact as a double below 9e15.
double millionthsOf(Decimal load) noexcept
{
    return static_cast<double>(load.thousandths()) * 1000;
}

} // namespace

StageVolume::StageVolume(const Dose &dose, const std::optional<Decimal> &bodyMassKg)
    : m_dose(dose)
    , m_weighs(dose.loadKg != Decimal())
{
    if (dose.bodyShare != Decimal()) {
        if (!bodyMassKg)
            return;
        m_bodyMillionths = static_cast<double>(dose.bodyShare.thousandths()) * static_cast<double>(bodyMassKg->thousandths());
        m_weighs = true;
    }
    if (m_weighs)
        m_unit = dose.isHeld() ? VolumeUnit::KgSeconds : VolumeUnit::KgReps;
    else
        m_unit = dose.isHeld() ? VolumeUnit::Seconds : VolumeUnit::Reps;
}

double StageVolume::millionths(std::int64_t reps, std::int64_t hold, Decimal loadKg) const noexcept
{
    const double load = m_weighs ? millionthsOf(loadKg) + m_bodyMillionths : kMillion;
    return static_cast<double>(reps * (m_dose.isHeld() ? hold : 1)) * load;
}

double StageVolume::session() const noexcept
{
    return m_dose.sets * millionths(m_dose.reps, m_dose.holdSeconds, m_dose.loadKg);
}

double StageVolume::of(const SetDone &set) const noexcept
{
    return millionths(set.reps, set.holdSeconds.value_or(m_dose.holdSeconds), set.loadKg.value_or(m_dose.loadKg));
}

std::optional<double> StageVolume::strength(const SetDone &set) const noexcept
{
    constexpr int kLeast = 2;
    constexpr int kMost = 10;
    if (!set.spareReps || set.reps < 1 || m_dose.isHeld() || !m_unit)
        return std::nullopt;
    const std::int64_t possible = std::int64_t{set.reps} + *set.spareReps;
    const double load = (millionthsOf(set.loadKg.value_or(m_dose.loadKg)) + m_bodyMillionths) / kMillion;
    if (possible < kLeast || possible > kMost || load <= 0)
        return std::nullopt;
    return load * (1 + static_cast<double>(possible) / 30);
}

std::optional<std::int64_t> StageVolume::tension(const SetDone &set) const noexcept
{
    const std::int64_t reps = set.reps;
    if (m_dose.isHeld())
        return reps * set.holdSeconds.value_or(m_dose.holdSeconds);
    if (!m_dose.upSeconds && !m_dose.pauseSeconds && !m_dose.downSeconds)
        return std::nullopt;
    const std::int64_t rep = std::int64_t{m_dose.upSeconds.value_or(0)} + m_dose.pauseSeconds.value_or(0) + m_dose.downSeconds.value_or(0);
    return reps * rep;
}

std::vector<StageVolume> stageVolumes(const Item &item, const std::optional<Decimal> &bodyMassKg)
{
    std::vector<StageVolume> volumes;
    volumes.reserve(item.stages.size());
    for (const Stage &stage : item.stages)
        volumes.emplace_back(stage.dose, bodyMassKg);
    return volumes;
}

void VolumeSum::add(std::optional<VolumeUnit> unit, double millionths) noexcept
{
    if (!unit || (m_unit && *m_unit != *unit)) {
        m_unknown = true;
        return;
    }
    m_unit = unit;
    m_millionths += millionths;
}

void VolumeSum::add(const VolumeSum &other) noexcept
{
    if (other.m_unknown)
        m_unknown = true;
    else if (other.m_unit)
        add(other.m_unit, other.m_millionths);
}

std::optional<double> VolumeSum::value() const noexcept
{
    if (m_unknown)
        return std::nullopt;
    return m_millionths / kMillion;
}

} // namespace morrow
