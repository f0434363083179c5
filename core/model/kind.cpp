// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/kind.h"

#include <algorithm>
#include <array>

namespace morrow {

namespace {

using namespace std::string_view_literals;

constexpr std::array kKinds{
    "check"sv,
    "set"sv,
    "session"sv,
    "skip"sv,
    "easier"sv,
    "stage"sv,
    "setting"sv,
    "unusual"sv,
    "note"sv,
    "flag"sv,
    "outcome"sv,
    "pause"sv,
    "visit"sv,
    "heard"sv,
    "put_aside"sv,
    "handed"sv,
    "complaint"sv,
    "plan"sv,
    "cleared"sv,
    "closed"sv,
    "memo"sv,
    "known_as"sv,
    "alias"sv,
    "set_aside"sv,
};
static_assert(kKinds.size() == kKindCount && static_cast<int>(Kind::SetAside) + 1 == kKindCount);

constexpr std::array kAuthors{"patient"sv, "helper"sv, "clinic"sv};

template<class Enum, std::size_t N>
std::optional<Enum> named(const std::array<std::string_view, N> &names, std::string_view text) noexcept
{
    const auto *const found = std::find(names.begin(), names.end(), text);
    if (found == names.end())
        return std::nullopt;
    return static_cast<Enum>(found - names.begin());
}

} // namespace

std::string_view name(Kind kind) noexcept
{
    return kKinds[static_cast<std::size_t>(kind)];
}

std::optional<Kind> kindNamed(std::string_view text) noexcept
{
    return named<Kind>(kKinds, text);
}

std::string_view name(Author author) noexcept
{
    return kAuthors[static_cast<std::size_t>(author)];
}

std::optional<Author> authorNamed(std::string_view text) noexcept
{
    return named<Author>(kAuthors, text);
}

} // namespace morrow
