// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// How much a set is: volume and time under tension (measures, section 3, last part).
///
/// Volume of a set = reps x (hold if the stage is held, else 1) x L, where
/// L = load + body_share x body mass. A recorded set without load or hold takes the
/// prescribed one. When the prescribed L is 0, L counts as 1, whatever load was recorded.
///
/// Tension of a set = reps x hold (held) or reps x (up + pause + down), a part that was
/// not prescribed 0 if another was; unknown if none was.
///
/// Volumes are added in millionths, which are whole numbers (a load has three decimals,
/// a share times a mass six): a sum is exact, so that a session done as prescribed is
/// never a rounding error short of what was due.

#include "model/diary.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace morrow {

/// What the volume of a set is counted in.
enum class VolumeUnit {
    Reps,
    Seconds,
    KgReps,
    KgSeconds
};

/// How the sets of one stage are counted.
class StageVolume
{
public:
    StageVolume(const Dose &dose, const std::optional<Decimal> &bodyMassKg);

    /// Nullopt if a share of an unknown body mass is moved: then no volume is known.
    [[nodiscard]] std::optional<VolumeUnit> unit() const noexcept { return m_unit; }

    /// The volume of one session as prescribed, in millionths.
    [[nodiscard]] double session() const noexcept;
    /// The volume of a recorded set, in millionths.
    [[nodiscard]] double of(const SetDone &set) const noexcept;
    /// The estimate of the greatest load for one repetition from a recorded set with s spare
    /// repetitions, L (1 + (r + s) / 30), r + s between 2 and 10 (Epley 1985, with repetitions
    /// in reserve); nullopt for others, of a held stage, or where L is 0 or unknown.
    [[nodiscard]] std::optional<double> strength(const SetDone &set) const noexcept;
    /// Seconds under tension in a recorded set.
    [[nodiscard]] std::optional<std::int64_t> tension(const SetDone &set) const noexcept;

private:
    [[nodiscard]] double millionths(std::int64_t reps, std::int64_t hold, Decimal loadKg) const noexcept;

    Dose m_dose;
    std::optional<VolumeUnit> m_unit;
    double m_bodyMillionths = 0; ///< body_share x body mass
    bool m_weighs; ///< the prescribed L is not 0
};

/// One for each stage of \a item.
[[nodiscard]] std::vector<StageVolume> stageVolumes(const Item &item, const std::optional<Decimal> &bodyMassKg);

/// Volumes added up, known as long as all of them are in one known unit.
class VolumeSum
{
public:
    void add(std::optional<VolumeUnit> unit, double millionths) noexcept;
    void add(const VolumeSum &other) noexcept;

    /// 0 if nothing was added; nullopt if something unknown, or of another unit, was.
    [[nodiscard]] std::optional<double> value() const noexcept;
    [[nodiscard]] std::optional<VolumeUnit> unit() const noexcept { return m_unknown ? std::nullopt : m_unit; }

private:
    double m_millionths = 0;
    std::optional<VolumeUnit> m_unit;
    bool m_unknown = false;
};

} // namespace morrow
