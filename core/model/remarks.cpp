// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/remarks.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace morrow {

namespace {

/// The values that a correction may change or remove.
constexpr std::array kValues{Field::Pain, Field::StiffnessMin, Field::PainDuring, Field::PainAfter, Field::Reps, Field::HoldS,
    Field::LoadKg, Field::Spare, Field::Value};

bool isRemark(Kind kind) noexcept
{
    return kind == Kind::Note || kind == Kind::Unusual || kind == Kind::Memo;
}

bool hasValues(Kind kind) noexcept
{
    return kind == Kind::Check || kind == Kind::Set || kind == Kind::Session || kind == Kind::Outcome;
}

NoteKind noteKind(std::string_view text) noexcept
{
    return text == "question" ? NoteKind::Question
        : text == "answer"    ? NoteKind::Answer
        : text == "unsure"    ? NoteKind::Unsure
        : text == "reply"     ? NoteKind::Reply
                              : NoteKind::Note;
}

/// Whether \a after says a value of \a before in another way, or no longer.
bool changesValue(const Body &before, const Body &after)
{
    return std::any_of(kValues.begin(), kValues.end(), [&](Field field) {
        const Decimal *const old = before.number(field);
        const Decimal *const now = after.number(field);
        return old && (!now || *now != *old);
    });
}

/// The entries of one kind that somebody may have corrected.
class Chains
{
public:
    explicit Chains(const std::vector<Entry> &entries)
        : m_entries(entries)
    {
    }

    void add(EntryIndex index)
    {
        const Entry &entry = m_entries[index];
        if (!m_at.emplace(entry.id, index).second)
            return;
        m_order.push_back(index);
        if (entry.replaces && *entry.replaces != entry.id)
            m_replaced.insert(*entry.replaces);
    }

    /// What no other replaces, by day, recording, id.
    [[nodiscard]] std::vector<EntryIndex> last() const
    {
        std::vector<EntryIndex> result;
        std::copy_if(m_order.begin(), m_order.end(), std::back_inserter(result),
            [this](EntryIndex index) { return !m_replaced.contains(m_entries[index].id); });
        std::sort(result.begin(), result.end(), [this](EntryIndex a, EntryIndex b) {
            const Entry &first = m_entries[a];
            const Entry &second = m_entries[b];
            return first.day != second.day ? first.day < second.day : countsBefore(second, first);
        });
        return result;
    }

    /// What \a last corrects, newest first; a loop ends where it closes.
    [[nodiscard]] std::vector<EntryIndex> before(EntryIndex last) const
    {
        std::vector<EntryIndex> result;
        for (const Entry *entry = &m_entries[last]; entry->replaces && result.size() < m_order.size();) {
            const auto older = m_at.find(*entry->replaces);
            if (older == m_at.end() || older->second == last)
                break;
            result.push_back(older->second);
            entry = &m_entries[older->second];
        }
        return result;
    }

private:
    const std::vector<Entry> &m_entries;
    std::unordered_map<std::string_view, EntryIndex> m_at;
    std::vector<EntryIndex> m_order;
    std::unordered_set<std::string_view> m_replaced;
};

void addRemark(Remarks &remarks, EntryIndex index, const Entry &entry, const Body &body)
{
    const auto text = [&body](Field field) { return std::string(body.textOr(field)); };
    if (entry.kind == Kind::Note)
        remarks.notes.push_back({index, entry.day, noteKind(body.textOr(Field::Kind)), text(Field::Complaint), text(Field::Item),
            text(Field::Text), text(Field::About)});
    else if (entry.kind == Kind::Unusual)
        remarks.unusual.push_back({index, entry.day, text(Field::Text)});
    else
        remarks.memos.push_back({index, text(Field::Visit), text(Field::Note), text(Field::NextTime)});
}

} // namespace

Remarks Remarks::of(const Diary &diary)
{
    const std::vector<Entry> &entries = diary.entries();
    std::unordered_set<std::string_view> corrected;
    for (const Entry &entry : entries) {
        if (entry.replaces && hasValues(entry.kind))
            corrected.insert(*entry.replaces);
    }
    std::array<std::optional<Chains>, kKindCount> chains;
    for (EntryIndex i = 0; i < entries.size(); ++i) {
        const Entry &entry = entries[i];
        // Of sets and checks there are many, and few of them belong to a correction.
        const bool isIn = isRemark(entry.kind) || (hasValues(entry.kind) && (entry.replaces || corrected.contains(entry.id)));
        if (!isIn)
            continue;
        auto &own = chains[static_cast<std::size_t>(entry.kind)];
        if (!own)
            own.emplace(entries);
        own->add(i);
    }

    Remarks remarks;
    BodyReader reader;
    for (const auto &own : chains) {
        if (!own)
            continue;
        for (const EntryIndex index : own->last()) {
            const Entry &entry = entries[index];
            auto body = reader.read(entry.body);
            if (!body)
                continue;
            if (isRemark(entry.kind)) {
                if (!body->has(Field::Withdrawn))
                    addRemark(remarks, index, entry, *body);
                continue;
            }
            Correction correction{.entry = index,
                .kind = entry.kind,
                .day = entry.day,
                .about = std::string(body->textOr(entry.kind == Kind::Set ? Field::Item : Field::Complaint)),
                .before = own->before(index)};
            bool isChanged = false;
            for (const EntryIndex older : correction.before) {
                auto olderBody = reader.read(entries[older].body);
                if (!olderBody)
                    break;
                isChanged = isChanged || changesValue(*olderBody, *body);
                body = std::move(olderBody);
            }
            if (isChanged)
                remarks.corrections.push_back(std::move(correction));
        }
    }
    return remarks;
}

} // namespace morrow
