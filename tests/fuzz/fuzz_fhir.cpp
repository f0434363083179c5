// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// FHIR files from anybody: refused with a reason, or read, and then the same again after
/// they were written.
///
///     fuzz_fhir -dict=tests/fuzz/fhir.dict NEW_CORPUS tests/fuzz/corpus/fhir
///
/// A file whose sum is not that of its entries is refused last of all, so that nearly every
/// input goes all the way through the reader.

#include "exchange/fhir.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace {

void demand(bool holds, const char *what)
{
    if (holds)
        return;
    std::fprintf(stderr, "%s\n", what);
    std::abort();
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) // NOLINT: the fuzzer's name
{
    const auto read = morrow::readFhir({reinterpret_cast<const char *>(data), size});
    if (!read) {
        demand(!read.error().empty(), "refused without a reason");
        return 0;
    }
    const morrow::FhirBundle first = morrow::writeFhir(read->entries, read->person, morrow::FhirFile::Record, read->name);
    const auto again = morrow::readFhir(first.json);
    demand(again.has_value(), "what was written is refused");
    demand(again->entries == read->entries && again->person == read->person && again->name == read->name, "another diary came back");
    demand(morrow::writeFhir(again->entries, again->person, morrow::FhirFile::Record, again->name).json == first.json,
        "other bytes the second time");
    return 0;
}
