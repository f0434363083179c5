// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/file.h"

#include <QRandomGenerator>

#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <utility>

namespace morrow {

namespace {

namespace fs = std::filesystem;

FileError fromErrno(int error) noexcept
{
    switch (error) {
    case ENOENT:
    case ENOTDIR:
        return FileError::Missing;
    case EEXIST:
    case ENOTEMPTY:
        return FileError::Exists;
    case EACCES:
    case EPERM:
        return FileError::NoPermission;
    case ENOSPC:
    case EDQUOT:
        return FileError::Full;
    case EROFS:
        return FileError::ReadOnly;
    case ENXIO:
    case EISDIR:
        return FileError::NotRegular;
    default:
        return FileError::Io;
    }
}

/// Owns a file descriptor.
class Descriptor
{
public:
    explicit Descriptor(int number) noexcept
        : m_number(number)
    {
    }
    Descriptor(const Descriptor &) = delete;
    Descriptor &operator=(const Descriptor &) = delete;
    ~Descriptor() { close(); }

    [[nodiscard]] bool isOpen() const noexcept { return m_number >= 0; }
    [[nodiscard]] int number() const noexcept { return m_number; }

    /// False if the close itself reports that earlier writes were lost.
    bool close() noexcept
    {
        const int number = std::exchange(m_number, -1);
        return number < 0 || ::close(number) == 0;
    }

private:
    int m_number;
};

bool writeAll(int file, std::string_view bytes) noexcept
{
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0) {
            if (errno == EINTR)
                continue;
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

Result<void, FileError> syncFolder(const fs::path &folder)
{
    const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (!descriptor.isOpen() || ::fsync(descriptor.number()) != 0)
        return failure(fromErrno(errno));
    return {};
}

/// Whether the file at \a path reads as \a bytes, a piece at a time: a copy of a large file
/// would be the largest thing in memory.
bool holds(const fs::path &path, std::string_view bytes) noexcept
{
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW));
    std::array<char, 65536> piece{};
    while (file.isOpen()) {
        const ssize_t got = ::read(file.number(), piece.data(), piece.size());
        if (got < 0 && errno == EINTR)
            continue;
        const auto size = static_cast<std::size_t>(std::max<ssize_t>(got, 0));
        if (size == 0)
            return got == 0 && bytes.empty();
        if (!bytes.starts_with(std::string_view(piece.data(), size)))
            return false;
        bytes.remove_prefix(size);
    }
    return false;
}

/// Writes and syncs a file that must not exist, and reads it back.
Result<void, FileError> writeDurably(const fs::path &path, std::string_view bytes)
{
    Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600));
    if (!file.isOpen() || !writeAll(file.number(), bytes) || ::fsync(file.number()) != 0 || !file.close())
        return failure(fromErrno(errno));
    if (!holds(path, bytes))
        return failure(FileError::Io);
    return {};
}

fs::path folderOf(const fs::path &path)
{
    return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

/// A name beside \a path that only this call uses: on a shared drive another machine may have
/// a process of the same number.
fs::path besides(const fs::path &path)
{
    const std::uint64_t random = QRandomGenerator::system()->generate64();
    return folderOf(path) / ("." + path.filename().string() + "." + std::to_string(random) + ".part");
}

/// \a path without a slash at its end, so that it has a file name.
fs::path named(const fs::path &path)
{
    return path.has_filename() ? path : path.parent_path();
}

} // namespace

Result<std::string, FileError> readFile(const fs::path &path, std::size_t limit)
{
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY));
    if (!file.isOpen())
        return failure(fromErrno(errno));
    struct stat status
    {
    };
    if (::fstat(file.number(), &status) != 0)
        return failure(fromErrno(errno));
    if (!S_ISREG(status.st_mode))
        return failure(FileError::NotRegular);
    if (static_cast<std::size_t>(status.st_size) > limit)
        return failure(FileError::TooLarge);

    // One byte of room beyond the size tells a file that grew from one that ended.
    std::string bytes(static_cast<std::size_t>(status.st_size) + 1, '\0');
    std::size_t size = 0;
    for (;;) {
        const ssize_t got = ::read(file.number(), bytes.data() + size, bytes.size() - size);
        if (got < 0) {
            if (errno == EINTR)
                continue;
            return failure(fromErrno(errno));
        }
        if (got == 0)
            break;
        size += static_cast<std::size_t>(got);
        if (size > limit)
            return failure(FileError::TooLarge);
        if (size == bytes.size())
            bytes.resize(size * 2);
    }
    bytes.resize(size);
    return bytes;
}

Result<void, FileError> writeFile(const fs::path &path, std::string_view bytes)
{
    const fs::path part = besides(path);
    if (auto written = writeDurably(part, bytes); !written) {
        ::unlink(part.c_str());
        return written;
    }
    auto renamed = renameDurably(part, path);
    if (!renamed)
        ::unlink(part.c_str());
    return renamed;
}

Result<void, FileError> writeFolder(const fs::path &path, const std::map<std::string, std::string> &files)
{
    const fs::path target = named(path);
    struct stat status
    {
    };
    if (::lstat(target.c_str(), &status) == 0)
        return failure(FileError::Exists);

    const fs::path part = besides(target);
    const auto fill = [&]() -> Result<void, FileError> {
        if (::mkdir(part.c_str(), 0700) != 0)
            return failure(fromErrno(errno));
        for (const auto &[name, bytes] : files) {
            if (auto written = writeDurably(part / name, bytes); !written)
                return written;
        }
        if (auto synced = syncFolder(part); !synced)
            return synced;
        if (::renameat2(AT_FDCWD, part.c_str(), AT_FDCWD, target.c_str(), RENAME_NOREPLACE) != 0)
            return failure(fromErrno(errno));
        return syncFolder(folderOf(target));
    };
    auto done = fill();
    if (!done) {
        std::error_code ignored;
        fs::remove_all(part, ignored);
    }
    return done;
}

Result<void, FileError> syncFile(const fs::path &path)
{
    const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.isOpen() || ::fsync(file.number()) != 0)
        return failure(fromErrno(errno));
    return {};
}

Result<void, FileError> renameDurably(const fs::path &from, const fs::path &to)
{
    if (::rename(from.c_str(), to.c_str()) != 0)
        return failure(fromErrno(errno));
    return syncFolder(folderOf(to));
}

} // namespace morrow
