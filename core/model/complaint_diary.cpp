// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/diary.h"

#include <algorithm>

namespace morrow {

const Limits &ComplaintDiary::limits() const noexcept
{
    static const Limits defaults;
    return plan ? plan->limits : defaults;
}

std::optional<CivilDay> ComplaintDiary::firstStart() const noexcept
{
    std::optional<CivilDay> first;
    for (const ItemDiary &item : items)
        first = std::min(first.value_or(item.item.start), item.item.start);
    return first;
}

} // namespace morrow
