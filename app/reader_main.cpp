// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// \file
/// morrow-reader: reads files that somebody else wrote, for the program that started it, so that
/// a file which crashes, hangs or bloats its reader harms nothing else. Paths come on standard
/// input, each ended by NUL; what was read goes to standard output, see reading_lines.h.

#include "exchange/reading_lines.h"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <new>
#include <string>

namespace {

/// What the program that asked takes for "too little memory"; see actions/reader_child.h.
constexpr int kHungry = 3;

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
constexpr bool kIsSanitized = true; // whose shadow memory is larger than any limit
#else
constexpr bool kIsSanitized = false;
#endif

bool limit(int resource, rlim_t most)
{
    const rlimit both{most, most};
    return ::setrlimit(static_cast<__rlimit_resource>(resource), &both) == 0;
}

/// Gives up what reading does not need: to outlive who asked, to write a file, to leave the
/// diary in a core, to take all memory.
bool confine()
{
    // Who ended before this leaves an input without a writer, which ends the reader as well.
    if (::prctl(PR_SET_PDEATHSIG, SIGKILL) != 0)
        return false;
    constexpr rlim_t memory = rlim_t{1536} * 1024 * 1024;
    return limit(RLIMIT_CORE, 0) && limit(RLIMIT_FSIZE, 0) && (kIsSanitized || limit(RLIMIT_AS, memory));
}

void writeAll(std::string_view bytes)
{
    while (!bytes.empty()) {
        const ssize_t written = ::write(STDOUT_FILENO, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0)
            std::_Exit(EXIT_FAILURE); // nobody listens any more
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
}

/// The next path; false at the end of them.
bool nextPath(std::string &path)
{
    path.clear();
    for (int c = std::getchar(); c != EOF; c = std::getchar()) {
        if (c == '\0')
            return true;
        path += static_cast<char>(c);
    }
    return false;
}

} // namespace

int main()
{
    if (!confine())
        return EXIT_FAILURE;
    try {
        for (std::string path; nextPath(path);)
            morrow::writeLines(morrow::readForeignFile(path), writeAll);
    } catch (const std::bad_alloc &) {
        std::_Exit(kHungry);
    }
    return EXIT_SUCCESS;
}
