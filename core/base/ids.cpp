// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/ids.h"

#include <QRandomGenerator>

#include <algorithm>

namespace morrow {

namespace {

std::string uuidText(const std::array<std::uint8_t, 16> &bytes)
{
    static constexpr char hex[] = "0123456789abcdef";
    std::string text;
    text.reserve(36);
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (i == 4 || i == 6 || i == 8 || i == 10)
            text += '-';
        text += hex[bytes[i] >> 4];
        text += hex[bytes[i] & 15];
    }
    return text;
}

void setVersion(std::array<std::uint8_t, 16> &bytes, std::uint8_t version)
{
    bytes[6] = static_cast<std::uint8_t>((bytes[6] & 0x0f) | (version << 4));
    bytes[8] = static_cast<std::uint8_t>((bytes[8] & 0x3f) | 0x80);
}

} // namespace

bool isEntryId(std::string_view text) noexcept
{
    if (text.empty() || text.size() > 64)
        return false;
    return std::all_of(text.begin(), text.end(),
        [](char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.'; });
}

std::string uuidFromDigest(const Digest &digest)
{
    std::array<std::uint8_t, 16> bytes{};
    std::copy_n(digest.begin(), bytes.size(), bytes.begin());
    setVersion(bytes, 8);
    return uuidText(bytes);
}

IdSource::IdSource(Random random)
    : m_random(random ? std::move(random) : [] { return QRandomGenerator::system()->generate64(); })
{
}

std::string IdSource::next(std::int64_t utcMs)
{
    static constexpr std::uint64_t lowMask = (std::uint64_t{1} << 62) - 1;
    const std::uint64_t now = static_cast<std::uint64_t>(std::max<std::int64_t>(utcMs, 0)) << 12;
    if (now > m_high) {
        m_high = now;
        m_low = m_random() & lowMask;
    } else if (++m_low > lowMask) {
        m_low = 0;
        ++m_high;
    }
    std::array<std::uint8_t, 16> bytes{};
    for (std::size_t i = 0; i < 6; ++i)
        bytes[i] = static_cast<std::uint8_t>(m_high >> (52 - 8 * i));
    bytes[6] = static_cast<std::uint8_t>(m_high >> 8 & 0x0f);
    bytes[7] = static_cast<std::uint8_t>(m_high);
    for (std::size_t i = 0; i < 8; ++i)
        bytes[8 + i] = static_cast<std::uint8_t>(m_low >> (56 - 8 * i));
    setVersion(bytes, 7);
    return uuidText(bytes);
}

void IdSource::startAfter(std::string_view id) noexcept
{
    if (id.size() != 36 || id[14] != '7' || id[8] != '-' || id[13] != '-' || id[18] != '-' || id[23] != '-')
        return;
    std::array<std::uint64_t, 2> halves{};
    std::size_t digits = 0;
    for (const char c : id) {
        const int value = c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
        if (value < 0)
            continue;
        std::uint64_t &half = halves[digits++ < 16 ? 0 : 1];
        half = half << 4 | static_cast<std::uint64_t>(value);
    }
    if (digits != 32)
        return;
    const std::uint64_t high = (halves[0] >> 16) << 12 | (halves[0] & 0xfff);
    const std::uint64_t low = halves[1] & ((std::uint64_t{1} << 62) - 1);
    if (high > m_high || (high == m_high && low > m_low)) {
        m_high = high;
        m_low = low;
    }
}

} // namespace morrow
