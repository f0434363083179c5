// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/store/small_disk.h"

#include <algorithm>
#include <fcntl.h>
#include <sched.h>
#include <string>
#include <sys/mount.h>
#include <unistd.h>
#include <vector>

namespace morrow::test {

namespace fs = std::filesystem;

namespace {

/// A namespace of mounts of this process's own, so that none is left whatever happens.
bool mountsAreOurs()
{
    static const bool areOurs = ::unshare(CLONE_NEWNS) == 0 && ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
    return areOurs;
}

std::string options(std::uintmax_t bytes)
{
    return "mode=0700,size=" + std::to_string(bytes);
}

} // namespace

SmallDisk::SmallDisk(std::uintmax_t bytes)
    : m_bytes(bytes)
{
    std::string name = fs::temp_directory_path().string() + "/morrow-disk-XXXXXX";
    if (!::mkdtemp(name.data()))
        return;
    m_path = name;
    m_isMounted = mountsAreOurs() && ::mount("tmpfs", m_path.c_str(), "tmpfs", 0, options(bytes).c_str()) == 0;
}

SmallDisk::~SmallDisk()
{
    if (m_isMounted)
        ::umount2(m_path.c_str(), MNT_DETACH);
    if (!m_path.empty())
        ::rmdir(m_path.c_str());
}

bool SmallDisk::setReadOnly(bool isReadOnly)
{
    return ::mount("tmpfs", m_path.c_str(), "tmpfs", MS_REMOUNT | (isReadOnly ? MS_RDONLY : 0), options(m_bytes).c_str()) == 0;
}

void SmallDisk::fill()
{
    const int file = ::open((m_path / "filler").c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
    const std::vector<char> block(1 << 16);
    for (std::size_t size = block.size(); size > 0; size /= 2) {
        while (::write(file, block.data(), size) > 0) { }
    }
    ::close(file);
}

void SmallDisk::fillBut(std::uintmax_t bytes)
{
    fill();
    const fs::path filler = m_path / "filler";
    fs::resize_file(filler, fs::file_size(filler) - std::min(bytes, fs::file_size(filler)));
}

void SmallDisk::emptyFiller()
{
    std::error_code ignored;
    fs::remove(m_path / "filler", ignored);
}

} // namespace morrow::test
