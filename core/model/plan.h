// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What was prescribed: items in stages, each with a dose and a rhythm, and the
/// clinician's limits.

#include "base/decimal.h"
#include "model/body.h"
#include "model/rhythm.h"
#include "model/scales.h"

#include <optional>
#include <string>
#include <vector>

namespace morrow {

struct Dose
{
    int sets = 1; ///< a session
    int reps = 1; ///< a set; of a held stage 1 unless prescribed
    int holdSeconds = 0; ///< a rep; above 0: the stage is held
    Decimal loadKg;
    Decimal bodyShare; ///< of body mass that is moved, 0..1
    std::optional<int> upSeconds; ///< tempo of a rep, each part absent if it was not prescribed
    std::optional<int> pauseSeconds;
    std::optional<int> downSeconds;

    [[nodiscard]] bool isHeld() const noexcept { return holdSeconds > 0; }

    friend bool operator==(const Dose &, const Dose &) = default;
};

struct Stage
{
    Dose dose;
    Rhythm rhythm;
    int minDays = 0; ///< before the next stage may be offered
    int minSessions = 0;
    std::string keyPoint{}; ///< what to mind, in the clinician's words
};

struct Item
{
    std::string key;
    std::string exercise;
    std::optional<Side> side;
    CivilDay start;
    std::optional<CivilDay> end; ///< the last day
    bool loads = true; ///< a stretch does not
    bool restsAfterVisit = false;
    std::string continues; ///< the item that this one follows, empty if none
    std::vector<Stage> stages; ///< stage 1 first; never empty
};

/// What a clinician set for one complaint. The defaults follow published loading
/// programmes as reported in secondary sources (Silbernagel 2007, Holmgren 2012) or
/// are our choice: settings for a clinician to change, not facts.
struct Limits
{
    int restDaysAfterVisit = 0;
    int sorenessDays = 2;
    Decimal during = Decimal::whole(5);
    Decimal after = Decimal::whole(5);
    std::optional<Decimal> check;
    Decimal riseAllowed = Decimal::whole(1);
    Decimal weeklyRiseAllowed = *Decimal::fromThousandths(500);
    Decimal weeklyStiffnessAllowed = Decimal::whole(10);
    Decimal levelRiseAllowed = Decimal::whole(1);
    Decimal contactLevel = Decimal::whole(8);
    Decimal contactRise = Decimal::whole(3);
    int stepSessions = 3;
    int stepWindowDays = 14;
    int stepSpacingDays = 7;
    Decimal stepAdherence = *Decimal::fromThousandths(800);
};

/// Who may go to the next stage when the rule's conditions hold.
enum class Authority {
    Off,
    Clinic,
    Patient
};

/// What is asked beside the check.
struct Asks
{
    bool stiffness = true;
    bool during = true;
    bool after = true;
    bool spare = true;
};

struct Plan
{
    std::string id;
    std::string complaint;
    int number = 1;
    CivilDay from; ///< the first day it is in force; no revision changes a day before it
    std::string by{}; ///< who issued it, as they wrote it
    std::vector<Item> items; ///< in the clinician's order
    Limits limits;
    Authority authority = Authority::Clinic;
    Asks asks;
    std::optional<int> visitsPlanned{};
    std::optional<CivilDay> reviewDay{}; ///< the review point
    std::string reviewText{};

    /// The plan that \a body, of an entry of kind plan about \a from, describes;
    /// nullopt if it lacks what a plan needs.
    [[nodiscard]] static std::optional<Plan> read(const Body &body, CivilDay from);
};

} // namespace morrow
