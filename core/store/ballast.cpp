// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/ballast.h"

#include "store/diary_store.h"

#include <fcntl.h>
#include <unistd.h>

namespace morrow {

namespace {

constexpr off_t kBallastBytes = off_t{1024} * 1024;

} // namespace

void keepBallast(const std::filesystem::path &folder)
{
    const auto path = ballastFile(folder);
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (file < 0)
        return;
    // Space that is really taken, not a hole.
    const bool taken = ::posix_fallocate(file, 0, kBallastBytes) == 0;
    ::close(file);
    if (!taken)
        ::unlink(path.c_str());
}

bool releaseBallast(const std::filesystem::path &folder)
{
    return ::unlink(ballastFile(folder).c_str()) == 0;
}

} // namespace morrow
