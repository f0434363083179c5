// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/diary.h"

#include "model/fold_parts.h"
#include "model/rules.h"
#include "model/set_fold.h"

#include <algorithm>
#include <array>
#include <tuple>
#include <unordered_map>
#include <utility>

namespace morrow {

namespace {

/// An entry with its body read.
struct Read
{
    EntryIndex entry;
    Body body;

    [[nodiscard]] bool withdraws() const noexcept { return body.has(Field::Withdrawn); }
};

/// Whether a counts before b, by the instants and ids of their entries.
struct Newer
{
    const std::vector<Entry> &entries;

    bool operator()(const Read &a, const Read &b) const noexcept { return countsBefore(entries[a.entry], entries[b.entry]); }
};

std::optional<PainScore> painScore(const Body &body, Field field)
{
    const auto raw = body.whole(field);
    return raw ? PainScore::from(*raw) : std::nullopt;
}

OutcomeKind outcomeKind(std::string_view text) noexcept
{
    return text == "activity"  ? OutcomeKind::Activity
        : text == "overall"    ? OutcomeKind::Overall
        : text == "change"     ? OutcomeKind::Change
        : text == "acceptable" ? OutcomeKind::Acceptable
                               : OutcomeKind::Test;
}

std::chrono::minutes timeOfDay(std::string_view text) noexcept
{
    const auto digit = [text](std::size_t i) { return text[i] - '0'; };
    return std::chrono::minutes((digit(0) * 10 + digit(1)) * 60 + digit(3) * 10 + digit(4));
}

} // namespace

/// Folds entries into a diary: one pass that reads bodies, then each kind by itself.
class Fold
{
public:
    explicit Fold(std::vector<Entry> entries) { m_diary.m_entries = std::move(entries); }

    Diary run()
    {
        readBodies();
        dropReplaced();
        foldSettings();
        foldComplaints();
        foldPlans();
        m_sets.fold(m_diary.m_entries, m_itemNamed);
        foldPauses();
        foldByComplaint();
        foldSigns();
        return std::move(m_diary);
    }

private:
    std::vector<Read> &of(Kind kind) { return m_read[static_cast<std::size_t>(kind)]; }
    [[nodiscard]] const Entry &entryOf(const Read &read) const { return m_diary.m_entries[read.entry]; }

    void readBodies()
    {
        auto &entries = m_diary.m_entries;
        BodyReader reader;
        Body body;
        const std::vector<bool> isRepeated = repeatedIds(entries);
        for (EntryIndex i = 0; i < entries.size(); ++i) {
            if (isRepeated[i])
                continue;
            if (!reader.read(entries[i].body, body))
                ++m_diary.m_unreadable;
            else if (entries[i].kind == Kind::Set)
                m_sets.add(i, entries[i].day, body);
            else
                of(entries[i].kind).push_back({i, body});
        }
    }

    /// I2, first half. What pauses replaced is kept aside, since past days keep the version that stood.
    void dropReplaced()
    {
        for (std::vector<Read> &reads : m_read) {
            std::vector<Read> replaced = morrow::dropReplaced(reads, m_diary.m_entries);
            if (&reads == &of(Kind::Pause))
                m_replacedPauses = std::move(replaced);
        }
    }

    /// I2, second half: of the entries with one \a key those that count, in key order.
    template<class Key>
    std::vector<const Read *> counting(Kind kind, Key key)
    {
        std::vector<std::pair<decltype(key(std::declval<const Read &>())), const Read *>> keyed;
        keyed.reserve(of(kind).size());
        for (const Read &read : of(kind))
            keyed.emplace_back(key(read), &read);
        const Newer newer{m_diary.m_entries};
        std::sort(keyed.begin(), keyed.end(), [&](const auto &a, const auto &b) {
            if (a.first != b.first)
                return a.first < b.first;
            return newer(*a.second, *b.second);
        });
        std::vector<const Read *> result;
        for (std::size_t i = 0; i < keyed.size(); ++i) {
            const bool isNewest = i == 0 || keyed[i].first != keyed[i - 1].first;
            if (isNewest && !keyed[i].second->withdraws())
                result.push_back(keyed[i].second);
        }
        return result;
    }

    /// The entries of a kind whose things are their own, by day, recording, id.
    std::vector<const Read *> ownThings(Kind kind)
    {
        std::vector<const Read *> result;
        for (const Read &read : of(kind)) {
            if (!read.withdraws())
                result.push_back(&read);
        }
        std::sort(result.begin(), result.end(), [this](const Read *a, const Read *b) {
            const Entry &first = entryOf(*a);
            const Entry &second = entryOf(*b);
            return first.day != second.day ? first.day < second.day : countsBefore(second, first);
        });
        return result;
    }

    void foldSettings()
    {
        for (const Read *read : counting(Kind::Setting, [](const Read &r) { return r.body.textOr(Field::Key); })) {
            const std::string_view key = read->body.textOr(Field::Key);
            const FieldRule *const rule = settingRule(key);
            const auto value = rule ? readValue(*rule, read->body.textOr(Field::Value)) : std::nullopt;
            if (!value)
                continue;
            if (key == "day_starts")
                m_diary.m_dayStarts = timeOfDay(std::get<std::string>(*value));
            else if (key == "body_mass_kg")
                m_diary.m_bodyMassKg = std::get<Decimal>(*value);
        }
    }

    void foldComplaints()
    {
        struct Placed
        {
            int place;
            std::string started;
            ComplaintDiary diary;
        };
        std::vector<Placed> placed;
        for (const Read *read : counting(Kind::Complaint, [](const Read &r) { return r.body.textOr(Field::Complaint); })) {
            const Body &body = read->body;
            Complaint complaint{
                .key = std::string(body.textOr(Field::Complaint)),
                .region = std::string(body.textOr(Field::Region)),
                .side = sideNamed(body.textOr(Field::Side)),
                .question = std::string(body.textOr(Field::Question)),
                .checkRule = RecurrenceRule::parse(body.textOr(Field::Check)).value_or(RecurrenceRule()),
                .firstAssessmentPain = body.decimal(Field::FirstAssessmentPain),
            };
            placed.push_back({body.intOr(Field::Place, 1), std::string(body.textOr(Field::Started)), {}});
            placed.back().diary.complaint = std::move(complaint);
        }
        std::stable_sort(placed.begin(), placed.end(), [](const Placed &a, const Placed &b) {
            return std::tie(a.place, a.started, a.diary.complaint.key) < std::tie(b.place, b.started, b.diary.complaint.key);
        });
        for (Placed &one : placed)
            m_diary.m_complaints.push_back(std::move(one.diary));
        for (std::size_t i = 0; i < m_diary.m_complaints.size(); ++i)
            m_complaintAt.emplace(m_diary.m_complaints[i].complaint.key, i);
    }

    /// The newest revision (greatest number, recorded, id) of a complaint's plan is the plan for all days.
    void foldPlans()
    {
        std::unordered_map<std::string_view, const Read *> newest;
        const Newer newer{m_diary.m_entries};
        // A plan that a revision names in `replaces` was dropped above; the number decides between the rest.
        for (const Read &read : of(Kind::Plan)) {
            const Read *&best = newest[read.body.textOr(Field::Complaint)];
            const auto number = [](const Read &r) { return r.body.intOr(Field::Number, 1); };
            if (!best || number(read) > number(*best) || (number(read) == number(*best) && newer(read, *best)))
                best = &read;
        }
        for (ComplaintDiary &complaint : m_diary.m_complaints) {
            const auto found = newest.find(complaint.complaint.key);
            if (found == newest.end() || found->second->withdraws())
                continue;
            complaint.plan = Plan::read(found->second->body, entryOf(*found->second).day);
            if (!complaint.plan) {
                ++m_diary.m_unreadable;
                continue;
            }
            complaint.planEntry = found->second->entry;
            for (const Item &item : complaint.plan->items)
                complaint.items.push_back({item, {}, {}});
        }
        for (ComplaintDiary &complaint : m_diary.m_complaints) {
            for (ItemDiary &item : complaint.items)
                m_itemNamed.emplace(item.item.key, &item);
        }
        using DayItem = std::pair<CivilDay, std::string_view>;
        for (const Read *read :
            counting(Kind::Stage, [this](const Read &r) { return DayItem(entryOf(r).day, r.body.textOr(Field::Item)); })) {
            const auto item = m_itemNamed.find(read->body.textOr(Field::Item));
            if (item != m_itemNamed.end())
                item->second->stageChanges.push_back({read->entry, entryOf(*read).day, read->body.intOr(Field::Stage, 1)});
        }
    }

    PauseVersion pauseVersion(const Read &read) const
    {
        const Entry &entry = entryOf(read);
        const auto to = CivilDay::parse(read.body.textOr(Field::To));
        return {read.entry, entry.day, to.value_or(entry.day), read.withdraws(), m_diary.recordedOn(read.entry)};
    }

    void foldPauses()
    {
        std::unordered_map<std::string_view, const Read *> replaced;
        for (const Read &read : m_replacedPauses)
            replaced.emplace(entryOf(read).id, &read);
        std::vector<Read> newest = std::move(of(Kind::Pause));
        std::sort(newest.begin(), newest.end(), [this](const Read &a, const Read &b) {
            return std::tie(entryOf(a).day, entryOf(a).id) < std::tie(entryOf(b).day, entryOf(b).id);
        });
        for (const Read &read : newest) {
            Pause pause;
            pause.versions.push_back(pauseVersion(read));
            // Each version is met once, so that even a loop of corrections ends.
            for (const Entry *entry = &entryOf(read); entry->replaces && pause.versions.size() <= replaced.size();) {
                const auto older = replaced.find(*entry->replaces);
                if (older == replaced.end())
                    break;
                pause.versions.push_back(pauseVersion(*older->second));
                entry = &entryOf(*older->second);
            }
            m_diary.m_pauses.push_back(std::move(pause));
        }
    }

    ComplaintDiary *complaintOf(const Read &read)
    {
        const auto found = m_complaintAt.find(read.body.textOr(Field::Complaint));
        return found == m_complaintAt.end() ? nullptr : &m_diary.m_complaints[found->second];
    }

    void foldByComplaint()
    {
        using DayComplaint = std::pair<CivilDay, std::string_view>;
        using DaySlot = std::tuple<CivilDay, std::string_view, std::string_view>;
        const auto dayComplaint = [this](const Read &r) { return DayComplaint(entryOf(r).day, r.body.textOr(Field::Complaint)); };
        const auto daySlot
            = [this](const Read &r) { return DaySlot(entryOf(r).day, r.body.textOr(Field::Slot), r.body.textOr(Field::Complaint)); };

        for (const Read *read : counting(Kind::Check, dayComplaint)) {
            if (ComplaintDiary *const complaint = complaintOf(*read))
                complaint->checks.push_back({read->entry, entryOf(*read).day, painScore(read->body, Field::Pain),
                    read->body.whole(Field::StiffnessMin), read->body.intOr(Field::Declined, 0) == 1});
        }
        for (const Read *read : counting(Kind::Session, daySlot)) {
            if (ComplaintDiary *const complaint = complaintOf(*read))
                complaint->sessions.push_back({read->entry, entryOf(*read).day, std::string(read->body.textOr(Field::Slot)),
                    painScore(read->body, Field::PainDuring), painScore(read->body, Field::PainAfter)});
        }
        const auto foldMarks = [&](Kind kind, std::vector<SlotMark> ComplaintDiary::*marks) {
            for (const Read *read : counting(kind, daySlot)) {
                if (ComplaintDiary *const complaint = complaintOf(*read))
                    (complaint->*marks)
                        .push_back({read->entry, entryOf(*read).day, std::string(read->body.textOr(Field::Slot)),
                            std::string(read->body.textOr(Field::Reason))});
            }
        };
        foldMarks(Kind::Skip, &ComplaintDiary::skips);
        foldMarks(Kind::Easier, &ComplaintDiary::easier);
        for (const Read *read : ownThings(Kind::Visit)) {
            if (ComplaintDiary *const complaint = complaintOf(*read))
                complaint->visits.push_back(visit(*read));
        }
        for (const Read *read : ownThings(Kind::Outcome)) {
            if (ComplaintDiary *const complaint = complaintOf(*read))
                complaint->outcomes.push_back(outcome(*read));
        }
        for (const Read *read : ownThings(Kind::PutAside)) {
            ComplaintDiary *const complaint = complaintOf(*read);
            if (!complaint)
                continue;
            const CivilDay day = std::max(entryOf(*read).day, m_diary.recordedOn(read->entry).value_or(entryOf(*read).day));
            complaint->putAsideFrom = std::min(complaint->putAsideFrom.value_or(day), day);
            complaint->putAside.push_back(read->entry);
        }
    }

    /// A sign is answered for by name; a later correction of it is another entry, and open again.
    void foldSigns()
    {
        std::unordered_map<std::string_view, const Read *> cleared;
        for (const Read *read : ownThings(Kind::Cleared)) // by day: the first is the earliest
            cleared.emplace(read->body.textOr(Field::Flag), read);
        for (const Read *read : ownThings(Kind::Flag)) {
            const Entry &entry = entryOf(*read);
            const std::string_view told = read->body.textOr(Field::Told);
            ReportedSign sign{
                .entry = read->entry,
                .day = entry.day,
                .sign = std::string(read->body.textOr(Field::Sign)),
                .told = told.empty() ? std::nullopt : std::optional(told == "yes"),
            };
            if (const auto answered = cleared.find(entry.id); answered != cleared.end()) {
                sign.clearedOn = entryOf(*answered->second).day;
                sign.clearedBy = answered->second->entry;
            }
            m_diary.m_signs.push_back(std::move(sign));
        }
    }

    Visit visit(const Read &read) const
    {
        const Body &body = read.body;
        return {
            .entry = read.entry,
            .day = entryOf(read).day,
            .warmupImpulses = body.whole(Field::WarmupImpulses),
            .warmupBar = body.decimal(Field::WarmupBar),
            .warmupHz = body.decimal(Field::WarmupHz),
            .impulses = body.whole(Field::Impulses),
            .bar = body.decimal(Field::Bar),
            .hz = body.decimal(Field::Hz),
            .areaCm2 = body.decimal(Field::AreaCm2),
            .painDuring = painScore(body, Field::PainDuring),
        };
    }

    Outcome outcome(const Read &read) const
    {
        const Body &body = read.body;
        return {
            .entry = read.entry,
            .day = entryOf(read).day,
            .kind = outcomeKind(body.textOr(Field::Kind)),
            .name = std::string(body.textOr(Field::Name)),
            .side = sideNamed(body.textOr(Field::Side)),
            .value = body.decimal(Field::Value).value_or(Decimal()),
            .unit = std::string(body.textOr(Field::Unit)),
        };
    }

    Diary m_diary;
    std::array<std::vector<Read>, kKindCount> m_read;
    SetFold m_sets;
    std::vector<Read> m_replacedPauses;
    std::unordered_map<std::string_view, std::size_t> m_complaintAt;
    std::unordered_map<std::string_view, ItemDiary *> m_itemNamed;
};

Diary Diary::from(std::vector<Entry> entries)
{
    return Fold(std::move(entries)).run();
}

std::optional<CivilDay> Diary::recordedOn(EntryIndex entry) const noexcept
{
    const auto &recorded = m_entries[entry].recorded;
    return recorded ? std::optional(diaryDay(*recorded, m_dayStarts)) : std::nullopt;
}

} // namespace morrow
