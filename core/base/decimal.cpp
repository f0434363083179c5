// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/decimal.h"

namespace morrow {

std::optional<Decimal> Decimal::parse(std::string_view text) noexcept
{
    const bool negative = text.starts_with('-');
    if (negative)
        text.remove_prefix(1);

    std::size_t at = 0;
    std::int64_t value = 0;
    for (; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
        value = value * 10 + (text[at] - '0');
        if (value >= kLimit / 1000)
            return std::nullopt;
    }
    if (at == 0 || (at > 1 && text[0] == '0'))
        return std::nullopt;

    std::size_t decimals = 0;
    if (at < text.size()) {
        if (text[at] != '.')
            return std::nullopt;
        for (++at; at < text.size(); ++at, ++decimals) {
            if (text[at] < '0' || text[at] > '9' || decimals == 3)
                return std::nullopt;
            value = value * 10 + (text[at] - '0');
        }
        if (decimals == 0)
            return std::nullopt;
    }
    for (; decimals < 3; ++decimals)
        value *= 10;
    return Decimal(negative ? -value : value);
}

std::string Decimal::toString() const
{
    const std::int64_t size = m_thousandths < 0 ? -m_thousandths : m_thousandths;
    std::string text = m_thousandths < 0 ? "-" : "";
    text += std::to_string(size / 1000);
    if (const std::int64_t rest = size % 1000; rest != 0) {
        std::string decimals = std::to_string(1000 + rest);
        decimals[0] = '.';
        while (decimals.back() == '0')
            decimals.pop_back();
        text += decimals;
    }
    return text;
}

} // namespace morrow
