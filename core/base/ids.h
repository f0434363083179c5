// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The names of entries.
///
/// Ours are UUIDs of RFC 9562: version 7 where a program records something now,
/// version 8 where the id is derived from what the entry says, so that typing the
/// same paper twice adds nothing.

#include "base/sha256.h"

#include <array>
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

namespace morrow {

/// Whether \a text may name an entry: 1 to 64 of A-Z a-z 0-9 - and .
[[nodiscard]] bool isEntryId(std::string_view text) noexcept;

/// UUID version 8 of the first 16 bytes of \a digest, version and variant set.
[[nodiscard]] std::string uuidFromDigest(const Digest &digest);

/// Makes UUIDs of version 7 that never run backwards, whatever the clock does:
/// within one millisecond, or after the clock was set back, the last id is counted up.
class IdSource
{
public:
    using Random = std::function<std::uint64_t()>;

    /// \a random gives 64 fresh random bits a call; by default the system's source.
    explicit IdSource(Random random = {});

    /// An id for something recorded at \a utcMs, greater as text than every one before it.
    [[nodiscard]] std::string next(std::int64_t utcMs);

    /// Makes every id from now on greater than \a id, if that is a UUID of version 7.
    void startAfter(std::string_view id) noexcept;

private:
    Random m_random;
    std::uint64_t m_high = 0; ///< 48 bits of time, then 12 that count
    std::uint64_t m_low = 0; ///< 62 random bits
};

} // namespace morrow
