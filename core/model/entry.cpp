// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/entry.h"

#include "base/ids.h"

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
    std::string message;
    message.reserve(160 + entry.body.size());
    appendSized(message, "entry 1");
    appendSized(message, id);
    appendSized(message, name(entry.kind));
    appendSized(message, std::to_string(entry.day.number()));
    appendSized(message, entry.recorded ? std::to_string(entry.recorded->utcMs) : std::string());
    appendSized(message, entry.recorded ? std::to_string(entry.recorded->offsetMinutes) : std::string());
    appendSized(message, name(entry.author));
    appendSized(message, entry.replaces.value_or(std::string()));
    appendSized(message, entry.body);
    return hash.of(message);
}

} // namespace

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
