// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Stands in the place of morrow-reader: a file called crash, hang, hunger, garble, lie, flood or
/// chatter is met as its name says, every other one is read.

#include "exchange/reading_lines.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <new>
#include <string>
#include <sys/resource.h>
#include <unistd.h>
#include <vector>

using namespace morrow;

namespace {

void say(std::string_view text)
{
    if (::write(STDOUT_FILENO, text.data(), text.size()) < 0)
        std::_Exit(1);
}

[[noreturn]] void beHungry()
{
    try {
        const rlimit limit{64 << 20, 64 << 20};
        ::setrlimit(RLIMIT_DATA, &limit);
        std::vector<std::vector<char>> all;
        for (;;)
            all.emplace_back(1 << 20, 'x');
    } catch (const std::bad_alloc &) {
        std::_Exit(3);
    }
}

/// An answer that is whole but for one thing.
void lie()
{
    say("{\"file\":\"0\",\"kind\":\"summary\",\"person\":\"p\",\"name\":\"\",\"count\":1,\"unknownResources\":0,\"unknownExtensions\":0}\n"
        "{\"id\":\"a\",\"kind\":\"check\",\"day\":\"2026-03-02\",\"author\":\"patient\",\"body\":{\"complaint\":\"heel\",\"pain\":3}}\n"
        "{\"end\":\"0000000000000000000000000000000000000000000000000000000000000000\"}\n");
}

} // namespace

int main()
{
    std::string path;
    for (int c = std::getchar(); c != EOF; c = std::getchar()) {
        if (c != '\0') {
            path += static_cast<char>(c);
            continue;
        }
        const std::string name = path.substr(path.rfind('/') + 1);
        if (name == "crash")
            std::raise(SIGSEGV);
        if (name == "hang")
            ::pause();
        if (name == "hunger")
            beHungry();
        if (name == "garble")
            say("{\"file\":\n");
        if (name == "lie")
            lie();
        while (name == "flood")
            say(std::string(1 << 16, ' '));
        if (name == "chatter") // whole, and something behind it
            writeLines(readForeignFile(path), [](std::string_view part) { say(std::string(part) + "{}\n"); });
        else
            writeLines(readForeignFile(path), say);
        path.clear();
    }
    return 0;
}
