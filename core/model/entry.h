// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One immutable fact about one civil day.
///
///  I1  An entry is never changed; a correction is a new entry that names, in
///      `replaces`, the one it corrects.
///  I2  The day was set once, when the entry was made; nothing computes it again.
///  I3  Equal entries have equal digests on every machine: the digest is over the
///      canonical body and the other columns, each after its length.
///  I4  The sum of a set of entries does not depend on the order they came in.

#include "base/civil_day.h"
#include "base/clock.h"
#include "base/sha256.h"
#include "model/body.h"
#include "model/kind.h"

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

struct Entry
{
    std::string id; ///< 1 to 64 of A-Z a-z 0-9 - .
    Kind kind = Kind::Check;
    CivilDay day;
    std::optional<Moment> recorded; ///< absent: typed in from paper
    Author author = Author::Patient;
    std::optional<std::string> replaces; ///< the id of the entry that this one corrects
    std::string body; ///< canonical JSON, see body.h

    friend bool operator==(const Entry &, const Entry &) = default;
};

/// SHA-256 over "entry 1", id, kind, day (days since 1970-01-01), recorded (UTC
/// milliseconds), offset (minutes), author, replaces, body: each as UTF-8 text, numbers
/// decimal, absent as empty, after its length as 4 bytes big-endian.
[[nodiscard]] Digest digestOf(const Entry &entry, Sha256 &hash);

/// SHA-256 over \a columns, each as UTF-8 text after its length as 4 bytes big-endian: how
/// an entry and the other rows of a store are digested. The first one names what it is.
[[nodiscard]] Digest digestOfColumns(std::initializer_list<std::string_view> columns, Sha256 &hash);

/// The id of an entry that came without one: UUID version 8 of its digest taken with an empty id.
[[nodiscard]] std::string derivedId(const Entry &entry, Sha256 &hash);

/// The digests of a set of entries added as 256-bit big-endian numbers, modulo 2^256.
/// It finds accidents, not forgers.
class Sum
{
public:
    void add(const Digest &digest) noexcept;
    /// Takes back an add.
    void subtract(const Digest &digest) noexcept;
    [[nodiscard]] const Digest &value() const noexcept { return m_value; }

    friend bool operator==(const Sum &, const Sum &) = default;

private:
    Digest m_value{};
};

/// The entry \a id of \a entries with everything that it corrects and that corrects it,
/// directly or through others; empty if it is not there.
[[nodiscard]] std::vector<const Entry *> chainOf(std::span<const Entry> entries, std::string_view id);

/// Whether \a later counts before \a earlier among entries about the same thing: the
/// later recorded, an absent instant first, ties by the greater id as bytes.
[[nodiscard]] bool countsBefore(const Entry &later, const Entry &earlier) noexcept;

} // namespace morrow
