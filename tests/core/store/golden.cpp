// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/store/golden.h"

namespace morrow::test {

std::vector<Entry> goldenEntries()
{
    std::vector<Entry> entries = facts(0, 120);
    entries.push_back(correctionOf(fact(4), 200, R"({"complaint":"heel","pain":3})"));
    entries.push_back(correctionOf(fact(8), 201, R"({"complaint":"heel","withdrawn":1})"));
    entries.push_back(note(202, std::string(10000, 'w')));
    return entries;
}

std::vector<Entry> otherGoldenEntries()
{
    return facts(1000, 5);
}

void writeGolden(const std::filesystem::path &folder)
{
    keep(folder, goldenEntries());
    keep(folder, otherGoldenEntries(), kOtherRef);
    keep(folder, {note(203, "erased")});
    (void)opened(folder).eraseChain(kRef, note(203, {}).id);
}

} // namespace morrow::test
