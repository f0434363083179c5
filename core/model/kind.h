// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The kinds of facts that a diary is made of, and who states them.

#include <cstdint>
#include <optional>
#include <string_view>

namespace morrow {

enum class Kind : std::uint8_t {
    Check, ///< the daily question: pain, stiffness
    Set,
    Session, ///< pain in and after one session
    Skip,
    Easier, ///< the bad-day dose was taken
    Stage, ///< an item goes to a stage
    Setting, ///< of the person: day start, body mass, time zone
    Unusual,
    Note,
    Flag, ///< a stop-and-ask sign
    Outcome,
    Pause,
    Visit,
    Heard, ///< what the clinic said about a flag
    PutAside, ///< a complaint's plan is no longer followed
    Handed, ///< a file was handed over; stays at home
    Complaint,
    Plan, ///< one whole revision
    Cleared, ///< a flag is answered for by the clinic
    Closed, ///< an episode has ended
    Memo, ///< note to self; stays at the desk, as all that follow
    KnownAs,
    Alias,
    SetAside,
};

inline constexpr int kKindCount = 24;

enum class Author : std::uint8_t {
    Patient,
    Helper,
    Clinic
};

/// Whether entries of \a kind are the desk's own and in no file but those of its record.
[[nodiscard]] constexpr bool staysAtDesk(Kind kind) noexcept
{
    return kind == Kind::Memo || kind == Kind::KnownAs || kind == Kind::Alias || kind == Kind::SetAside;
}

/// Whether entries of \a kind can come in a file from outside.
[[nodiscard]] constexpr bool canBeHandedOver(Kind kind) noexcept
{
    return !staysAtDesk(kind) && kind != Kind::Handed;
}

[[nodiscard]] std::string_view name(Kind kind) noexcept;
[[nodiscard]] std::optional<Kind> kindNamed(std::string_view text) noexcept;
[[nodiscard]] std::string_view name(Author author) noexcept;
[[nodiscard]] std::optional<Author> authorNamed(std::string_view text) noexcept;

} // namespace morrow
