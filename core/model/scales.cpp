// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/scales.h"

namespace morrow {

std::optional<Side> sideNamed(std::string_view text) noexcept
{
    if (text == "left")
        return Side::Left;
    if (text == "right")
        return Side::Right;
    if (text == "both")
        return Side::Both;
    return std::nullopt;
}

std::string_view name(Side side) noexcept
{
    return side == Side::Left ? "left" : side == Side::Right ? "right" : "both";
}

std::optional<Side> otherSide(const std::optional<Side> &side) noexcept
{
    if (side == Side::Left)
        return Side::Right;
    if (side == Side::Right)
        return Side::Left;
    return std::nullopt;
}

} // namespace morrow
