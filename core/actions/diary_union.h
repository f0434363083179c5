// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One person's entries put together from several files.
///
///  I1  A file is taken whole or not at all.
///  I2  It is the union by id: files that do not clash give the same in any order, any of them twice.

#include "model/entry.h"

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace morrow {

/// Why a file cannot be joined with what is there.
struct Clash
{
    enum class Code {
        TwoContentsForOneId, ///< `what` is the id
        ComplaintOfAnotherPlan, ///< `what` is the complaint's key
        ItemOfAnotherPlan, ///< `what` is the item's key
    };

    Code code;
    std::string what;

    friend bool operator==(const Clash &, const Clash &) = default;
};

/// Who a file is by: the clinic's own files say whose a key is, those of others must agree.
enum class Source {
    Own,
    Other
};

class DiaryUnion
{
public:
    DiaryUnion() = default;
    explicit DiaryUnion(std::vector<Entry> entries);

    /// What stands against joining \a entries, each thing once; none: they can be added.
    [[nodiscard]] std::vector<Clash> clashes(std::span<const Entry> entries, Source source) const;
    /// How many of \a entries are there already.
    [[nodiscard]] int known(std::span<const Entry> entries) const;
    /// Adds those of \a entries, which do not clash, that are not there.
    void add(std::span<const Entry> entries);

    [[nodiscard]] bool holds(std::string_view id) const { return m_byId.contains(std::string(id)); }
    [[nodiscard]] const std::vector<Entry> &entries() const noexcept { return m_entries; }
    [[nodiscard]] std::vector<Entry> take() && { return std::move(m_entries); }

private:
    /// The plans that a key was named by; at a desk there can be several, written at once in two rooms.
    using Plans = std::unordered_map<std::string, std::set<std::string>>;

    void learn(const Entry &entry);

    std::vector<Entry> m_entries;
    std::unordered_map<std::string, std::size_t> m_byId;
    Plans m_complaints;
    Plans m_items;
};

} // namespace morrow
