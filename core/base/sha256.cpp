// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/sha256.h"

#include <openssl/evp.h>

#include <QtGlobal>

namespace morrow {

struct Sha256::Context
{
    EVP_MD_CTX *evp = EVP_MD_CTX_new();
    EVP_MD *algorithm = EVP_MD_fetch(nullptr, "SHA256", nullptr);

    Context() = default;
    Context(const Context &) = delete;
    Context &operator=(const Context &) = delete;
    ~Context()
    {
        EVP_MD_free(algorithm);
        EVP_MD_CTX_free(evp);
    }
};

Sha256::Sha256()
    : m_context(std::make_unique<Context>())
{
}
Sha256::~Sha256() = default;

Digest Sha256::of(std::string_view message)
{
    Digest digest{};
    unsigned size = 0;
    const bool done = EVP_DigestInit_ex2(m_context->evp, m_context->algorithm, nullptr) == 1
        && EVP_DigestUpdate(m_context->evp, message.data(), message.size()) == 1
        && EVP_DigestFinal_ex(m_context->evp, digest.data(), &size) == 1;
    if (!done || size != digest.size())
        qFatal("SHA-256 is not available");
    return digest;
}

Digest sha256(std::string_view message)
{
    return Sha256().of(message);
}

std::string toHex(const Digest &digest)
{
    static constexpr char hex[] = "0123456789abcdef";
    std::string text;
    text.reserve(digest.size() * 2);
    for (const std::uint8_t byte : digest) {
        text += hex[byte >> 4];
        text += hex[byte & 15];
    }
    return text;
}

} // namespace morrow
