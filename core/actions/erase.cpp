// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/erase.h"

namespace morrow {

Result<int, StoreError> eraseFrom(const std::filesystem::path &folder, std::string_view id, const Moment &now)
{
    // Opening to write would make a store where there is none.
    if (const auto there = DiaryStore::openToRead(folder, {}); !there)
        return failure(there.error());
    auto store = DiaryStore::open(folder, {});
    if (!store)
        return failure(store.error());
    const auto persons = store->persons();
    if (!persons)
        return failure(persons.error());
    int erased = 0;
    for (const std::string &ref : *persons) {
        auto some = eraseNote(*store, ref, id, now);
        if (!some)
            return some;
        erased += *some;
    }
    return erased;
}

} // namespace morrow
