// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/output.h"

#include <cerrno>
#include <cstdio>
#include <string>
#include <unistd.h>

namespace morrow::batch {

Status print(std::string_view text)
{
    while (!text.empty()) {
        const ssize_t written = ::write(STDOUT_FILENO, text.data(), text.size());
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0) {
            complain(errno == ENOSPC ? "The result was not written whole: there is no space left for the output."
                                     : "The result was not written whole: the output takes no more.");
            return Status::MachineFailed;
        }
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return Status::Done;
}

void complain(std::string_view sentence)
{
    const std::string line = std::string(sentence) + "\n";
    std::fwrite(line.data(), 1, line.size(), stderr);
}

Status wrongUsage(std::string_view sentence)
{
    complain(sentence);
    return Status::WrongUsage;
}

} // namespace morrow::batch
