// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// SHA-256 (FIPS 180-4), by OpenSSL.

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace morrow {

/// 32 bytes, most significant first.
using Digest = std::array<std::uint8_t, 32>;

/// Hashes one message after another with one context, because making a context
/// costs more than hashing an entry.
class Sha256
{
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256 &) = delete;
    Sha256 &operator=(const Sha256 &) = delete;

    /// The digest of \a message. Ends the program if OpenSSL cannot hash: going on
    /// without digests would store entries that can never be checked.
    [[nodiscard]] Digest of(std::string_view message);

private:
    struct Context;
    std::unique_ptr<Context> m_context;
};

/// The digest of one message.
[[nodiscard]] Digest sha256(std::string_view message);

/// Lower-case hexadecimal, 64 characters.
[[nodiscard]] std::string toHex(const Digest &digest);

} // namespace morrow
