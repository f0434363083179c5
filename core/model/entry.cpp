// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/entry.h"

#include "base/ids.h"

#include <unordered_map>
#include <unordered_set>

namespace morrow {

namespace {

void appendSized(std::string &out, std::string_view text)
{
    const std::size_t size = text.size();
    out += static_cast<char>(size >> 24 & 0xff);
    out += static_cast<char>(size >> 16 & 0xff);
    out += static_cast<char>(size >> 8 & 0xff);
    out += static_cast<char>(size & 0xff);
    out += text;
}

Digest digestWithId(const Entry &entry, std::string_view id, Sha256 &hash)
{
    return digestOfColumns({"entry 1", id, name(entry.kind), std::to_string(entry.day.number()),
                               entry.recorded ? std::to_string(entry.recorded->utcMs) : std::string(),
                               entry.recorded ? std::to_string(entry.recorded->offsetMinutes) : std::string(), name(entry.author),
                               entry.replaces ? std::string_view(*entry.replaces) : std::string_view(), entry.body},
        hash);
}

} // namespace

Digest digestOfColumns(std::initializer_list<std::string_view> columns, Sha256 &hash)
{
    std::string message;
    message.reserve(256);
    for (const std::string_view column : columns)
        appendSized(message, column);
    return hash.of(message);
}

Digest digestOf(const Entry &entry, Sha256 &hash)
{
    return digestWithId(entry, entry.id, hash);
}

std::string derivedId(const Entry &entry, Sha256 &hash)
{
    return uuidFromDigest(digestWithId(entry, {}, hash));
}

void Sum::add(const Digest &digest) noexcept
{
    unsigned carry = 0;
    for (std::size_t i = m_value.size(); i-- > 0;) {
        carry += m_value[i] + 0U + digest[i];
        m_value[i] = static_cast<std::uint8_t>(carry);
        carry >>= 8;
    }
}

void Sum::subtract(const Digest &digest) noexcept
{
    int borrow = 0;
    for (std::size_t i = m_value.size(); i-- > 0;) {
        const int difference = m_value[i] - digest[i] - borrow;
        m_value[i] = static_cast<std::uint8_t>(difference);
        borrow = difference < 0 ? 1 : 0;
    }
}

std::vector<const Entry *> chainOf(std::span<const Entry> entries, std::string_view id)
{
    std::unordered_map<std::string_view, const Entry *> byId;
    std::unordered_multimap<std::string_view, const Entry *> corrections;
    for (const Entry &entry : entries) {
        byId.emplace(entry.id, &entry);
        if (entry.replaces)
            corrections.emplace(*entry.replaces, &entry);
    }
    std::vector<const Entry *> chain;
    std::unordered_set<std::string_view> met;
    const auto meet = [&](std::string_view one) {
        const auto found = byId.find(one);
        if (found != byId.end() && met.insert(found->second->id).second)
            chain.push_back(found->second);
    };
    meet(id);
    for (std::size_t i = 0; i < chain.size(); ++i) {
        if (chain[i]->replaces)
            meet(*chain[i]->replaces);
        const auto [first, last] = corrections.equal_range(chain[i]->id);
        for (auto at = first; at != last; ++at)
            meet(at->second->id);
    }
    return chain;
}

bool countsBefore(const Entry &later, const Entry &earlier) noexcept
{
    // An absent instant sorts before every instant, as std::optional compares; the
    // offset is where, not when, so it decides nothing.
    const auto instant = [](const Entry &entry) { return entry.recorded ? std::optional(entry.recorded->utcMs) : std::nullopt; };
    if (instant(later) != instant(earlier))
        return instant(later) > instant(earlier);
    return later.id > earlier.id;
}

} // namespace morrow
