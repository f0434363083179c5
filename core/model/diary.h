// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One person's entries, folded into what measures read.
///
///  I1  The diary depends on the set of entries only, never on their order.
///  I2  An entry that another of its kind names in `replaces` does not count; of the
///      rest about the same thing one counts: the later recorded, an absent instant
///      first, ties by the greater id; if that one withdraws, none does.
///  I3  Nothing else looks into entries: what a measure needs stands here, with the
///      index of the entry it came from.

#include "base/civil_day.h"
#include "base/clock.h"
#include "base/decimal.h"
#include "model/entry.h"
#include "model/plan.h"
#include "model/scales.h"

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace morrow {

/// The place of an entry in Diary::entries().
using EntryIndex = std::uint32_t;

struct Check
{
    EntryIndex entry;
    CivilDay day;
    std::optional<PainScore> pain;
    std::optional<int> stiffnessMinutes;
    bool declined = false; ///< answered "can't say"
};

/// How a set came to be recorded.
enum class SetHow {
    Tick,
    All, ///< with all sets of its session, by one tap
    Timer
};

struct SetDone
{
    EntryIndex entry;
    CivilDay day;
    std::string slot;
    int number; ///< from 1
    int reps; ///< 0 takes a set back
    std::optional<int> holdSeconds;
    std::optional<Decimal> loadKg;
    std::optional<int> spareReps;
    std::optional<SetHow> how{};
};

struct Session
{
    EntryIndex entry;
    CivilDay day;
    std::string slot;
    std::optional<PainScore> painDuring;
    std::optional<PainScore> painAfter;
};

/// A session that was skipped, or taken at the bad-day dose.
struct SlotMark
{
    EntryIndex entry;
    CivilDay day;
    std::string slot;
    std::string reason;
};

struct StageChange
{
    EntryIndex entry;
    CivilDay day;
    int stage; ///< from 1
};

struct Visit
{
    EntryIndex entry;
    CivilDay day;
    std::optional<int> warmupImpulses;
    std::optional<Decimal> warmupBar;
    std::optional<Decimal> warmupHz;
    std::optional<int> impulses;
    std::optional<Decimal> bar;
    std::optional<Decimal> hz;
    std::optional<Decimal> areaCm2;
    std::optional<PainScore> painDuring;
};

enum class OutcomeKind {
    Activity,
    Overall,
    Change,
    Acceptable,
    Test
};

struct Outcome
{
    EntryIndex entry;
    CivilDay day;
    OutcomeKind kind;
    std::string name;
    std::optional<Side> side;
    Decimal value;
    std::string unit;
};

/// A stop-and-ask sign that somebody reported.
struct ReportedSign
{
    EntryIndex entry;
    CivilDay day;
    std::string sign;
    std::optional<CivilDay> clearedOn; ///< the earliest day on which the clinic answered for it
    std::optional<EntryIndex> clearedBy{}; ///< the entry that says so
    std::optional<bool> told{}; ///< whether the person told the clinic; absent: no answer
};

/// A pause in one of its versions. The version that stood on a day decides whether
/// that day was away, so all of them are kept.
struct PauseVersion
{
    EntryIndex entry;
    CivilDay from;
    CivilDay to;
    bool withdrawn = false;
    std::optional<CivilDay> since; ///< diary day of its recording; absent: typed in from paper
};

struct Pause
{
    std::vector<PauseVersion> versions; ///< the one that counts first, then what it corrects
};

struct Complaint
{
    std::string key;
    std::string region;
    std::optional<Side> side;
    std::string question;
    RecurrenceRule checkRule;
    std::optional<Decimal> firstAssessmentPain;
};

/// An item with what was done of it.
struct ItemDiary
{
    Item item;
    std::vector<StageChange> stageChanges; ///< by day, one a day
    std::vector<SetDone> sets; ///< by day, slot, number; each once
};

/// Everything about one complaint, as if nothing else stood in the diary.
struct ComplaintDiary
{
    Complaint complaint;
    std::optional<Plan> plan; ///< the newest revision; its items stand in `items`
    std::optional<EntryIndex> planEntry; ///< the entry that says so
    std::vector<ItemDiary> items; ///< plan order
    std::vector<Check> checks; ///< by day, one a day
    std::vector<Session> sessions; ///< by day, slot
    std::vector<SlotMark> skips; ///< by day, slot
    std::vector<SlotMark> easier; ///< by day, slot
    std::vector<Visit> visits; ///< by day, recording (absent first), id
    std::vector<Outcome> outcomes; ///< by day, recording (absent first), id
    std::optional<CivilDay> putAsideFrom; ///< the first day on which its plan is no longer followed
    std::vector<EntryIndex> putAside; ///< the entries that say so

    /// What the clinician set, else the defaults.
    [[nodiscard]] const Limits &limits() const noexcept;
    /// P: the earliest start of an item; nullopt without a plan.
    [[nodiscard]] std::optional<CivilDay> firstStart() const noexcept;
};

class Diary
{
public:
    /// Folds a set of entries, one id each; ids given twice are taken once.
    [[nodiscard]] static Diary from(std::vector<Entry> entries);

    [[nodiscard]] const std::vector<Entry> &entries() const noexcept { return m_entries; }
    [[nodiscard]] const std::vector<ComplaintDiary> &complaints() const noexcept { return m_complaints; } ///< by place, started, key
    [[nodiscard]] const std::vector<Pause> &pauses() const noexcept { return m_pauses; }
    [[nodiscard]] const std::vector<ReportedSign> &signs() const noexcept { return m_signs; } ///< by day, recording (absent first), id
    [[nodiscard]] std::chrono::minutes dayStarts() const noexcept { return m_dayStarts; }
    [[nodiscard]] std::optional<Decimal> bodyMassKg() const noexcept { return m_bodyMassKg; }

    /// The diary day on which \a entry was recorded; nullopt if it was typed in from paper.
    [[nodiscard]] std::optional<CivilDay> recordedOn(EntryIndex entry) const noexcept;

    /// How many entries have a body that cannot be read; they reach no measure.
    [[nodiscard]] int unreadable() const noexcept { return m_unreadable; }

private:
    friend class Fold;

    std::vector<Entry> m_entries;
    std::vector<ComplaintDiary> m_complaints;
    std::vector<Pause> m_pauses;
    std::vector<ReportedSign> m_signs;
    std::chrono::minutes m_dayStarts{240};
    std::optional<Decimal> m_bodyMassKg;
    int m_unreadable = 0;
};

} // namespace morrow
