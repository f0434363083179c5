// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// Folders of tables from anybody: refused with a reason, or read, and then the same again
/// after they were written.
///
///     fuzz_tables -dict=tests/fuzz/tables.dict NEW_CORPUS tests/fuzz/corpus/tables
///
/// One input is a whole folder: U+001E and a name on a line of their own begin each file.

#include "exchange/tables.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <map>
#include <string>
#include <string_view>

namespace {

using Files = std::map<std::string, std::string, std::less<>>;

Files split(std::string_view input)
{
    Files files;
    for (std::size_t at = input.find('\x1e'); at != std::string_view::npos;) {
        const std::size_t next = input.find('\x1e', at + 1);
        const std::string_view file = input.substr(at + 1, next == std::string_view::npos ? next : next - at - 1);
        const std::size_t name = file.find('\n');
        if (name != std::string_view::npos)
            files.emplace(file.substr(0, name), file.substr(name + 1));
        at = next;
    }
    return files;
}

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
    const auto read = morrow::readTableFiles(split({reinterpret_cast<const char *>(data), size}));
    if (!read) {
        demand(!read.error().empty(), "refused without a reason");
        return 0;
    }
    const morrow::TablesFolder first = morrow::writeTables(*read);
    demand(first.leftOut.empty(), "what came from tables has no place in them");
    const auto again = morrow::readTableFiles({first.files.begin(), first.files.end()});
    demand(again.has_value(), "what was written is refused");
    demand(again->entries == read->entries && again->person == read->person, "another diary came back");
    demand(morrow::writeTables(*again).files == first.files, "other bytes the second time");
    return 0;
}
