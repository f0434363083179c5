// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/file_calls.h"

#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <fstream>
#include <iterator>
#include <sys/sendfile.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>
#include <utility>

namespace morrow::test {

namespace fs = std::filesystem;

namespace {

FileCalls *listener = nullptr;

/// Lets no call be heard as long as it lives: what is done to find out is not what the program did.
class Deaf
{
public:
    Deaf()
        : m_listener(std::exchange(listener, nullptr))
    {
    }
    ~Deaf() { listener = m_listener; }
    Deaf(const Deaf &) = delete;
    Deaf &operator=(const Deaf &) = delete;

private:
    FileCalls *m_listener;
};

[[noreturn]] void slip(const std::string &what)
{
    std::fprintf(stderr, "a test cannot go on: %s\n", what.c_str());
    std::_Exit(3); // QtTest would go round and round over an abort
}

std::string bytesOf(const fs::path &path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace

Image imageOf(const fs::path &folder)
{
    Image image;
    for (const auto &file : fs::recursive_directory_iterator(folder)) {
        const std::string name = file.path().lexically_relative(folder).string();
        if (file.is_directory())
            image[name + '/'];
        else
            image[name] = bytesOf(file.path());
    }
    return image;
}

void lay(const Image &image, const fs::path &folder)
{
    std::error_code ignored;
    fs::remove_all(folder, ignored);
    fs::create_directories(folder);
    for (const auto &[name, bytes] : image) {
        if (name.ends_with('/')) {
            fs::create_directory(folder / name.substr(0, name.size() - 1));
            continue;
        }
        // A tail of zeros, as of the ballast, is left out as a hole.
        const std::size_t end = bytes.find_last_not_of('\0') + 1;
        std::ofstream(folder / name, std::ios::binary) << std::string_view(bytes).substr(0, end);
        fs::resize_file(folder / name, bytes.size());
    }
}

FileCalls::FileCalls(fs::path folder)
    : m_folder(std::move(folder))
    , m_start(imageOf(m_folder))
{
    struct stat status
    {
    };
    ::stat(m_folder.c_str(), &status);
    m_numbers[status.st_ino] = 0;
    for (const auto &[name, bytes] : m_start) { // numbered as PowerCut does
        ::stat((m_folder / (name.ends_with('/') ? name.substr(0, name.size() - 1) : name)).c_str(), &status);
        m_numbers[status.st_ino] = ++m_last;
    }
    listener = this;
}

FileCalls::~FileCalls()
{
    listener = nullptr;
}

bool FileCalls::covers(const fs::path &path) const
{
    return path.native().starts_with(m_folder.native() + '/');
}

int FileCalls::numberAt(const fs::path &path) const
{
    struct stat status
    {
    };
    const auto found = ::lstat(path.c_str(), &status) == 0 ? m_numbers.find(status.st_ino) : m_numbers.end();
    return found == m_numbers.end() ? -1 : found->second;
}

int FileCalls::numberOf(int descriptor) const
{
    struct stat status
    {
    };
    const auto found = ::fstat(descriptor, &status) == 0 ? m_numbers.find(status.st_ino) : m_numbers.end();
    // A pipe or socket may have the same number.
    const bool isFile = S_ISREG(status.st_mode) || S_ISDIR(status.st_mode);
    return found == m_numbers.end() || !isFile ? -1 : found->second;
}

int FileCalls::folderOf(const fs::path &path) const
{
    const int number = numberAt(path.parent_path());
    if (number < 0)
        slip("a call was not heard: nobody made " + path.parent_path().string());
    return number;
}

void FileCalls::made(const fs::path &path, bool isFolder)
{
    struct stat status
    {
    };
    ::lstat(path.c_str(), &status);
    m_numbers[status.st_ino] = ++m_last;
    m_log.push_back({.kind = isFolder ? Operation::Kind::MakeFolder : Operation::Kind::Create,
        .file = m_last,
        .name = path.filename().string(),
        .folder = folderOf(path)});
}

void FileCalls::removed(const fs::path &path, int file)
{
    m_log.push_back({.kind = Operation::Kind::Remove, .file = file, .name = path.filename().string(), .folder = folderOf(path)});
}

void FileCalls::renamed(const fs::path &from, const fs::path &to)
{
    if (from.parent_path() != to.parent_path())
        slip("a file was moved from one folder to another, which this disk does not know");
    m_log.push_back({.kind = Operation::Kind::Rename,
        .file = numberAt(to),
        .name = from.filename().string(),
        .folder = folderOf(to),
        .to = to.filename().string()});
}

void FileCalls::wrote(int descriptor, std::size_t offset, std::string bytes)
{
    if (const int file = numberOf(descriptor); file > 0)
        m_log.push_back({.kind = Operation::Kind::Write, .file = file, .offset = offset, .bytes = std::move(bytes)});
}

void FileCalls::resized(int descriptor, std::size_t size)
{
    if (const int file = numberOf(descriptor); file > 0)
        m_log.push_back({.kind = Operation::Kind::Resize, .file = file, .offset = size});
}

void FileCalls::synced(int descriptor)
{
    struct stat status
    {
    };
    const int file = numberOf(descriptor);
    if (file >= 0 && ::fstat(descriptor, &status) == 0)
        m_log.push_back({.kind = S_ISDIR(status.st_mode) ? Operation::Kind::SyncFolder : Operation::Kind::Sync, .file = file});
}

namespace {

/// \a path, seen from the folder that is open as \a folder.
fs::path absolute(int folder, const char *path)
{
    if (path[0] == '/' || folder == AT_FDCWD)
        return path;
    const Deaf deaf;
    std::error_code error;
    return fs::read_symlink("/proc/self/fd/" + std::to_string(folder), error) / path;
}

std::size_t sizeOf(int descriptor)
{
    struct stat status
    {
    };
    return ::fstat(descriptor, &status) == 0 ? static_cast<std::size_t>(status.st_size) : 0;
}

int openFile(int folder, const char *path, int flags, mode_t mode)
{
    const auto call = [&] { return static_cast<int>(::syscall(SYS_openat, folder, path, flags, mode)); };
    if (!listener || (flags & (O_CREAT | O_TRUNC)) == 0)
        return call();
    const fs::path where = absolute(folder, path);
    struct stat status
    {
    };
    const bool isThere = ::lstat(where.c_str(), &status) == 0;
    const int file = call();
    if (file >= 0 && listener->covers(where)) {
        if (!isThere)
            listener->made(where, false);
        else if ((flags & O_TRUNC) != 0)
            listener->resized(file, 0);
    }
    return file;
}

int makeFolder(int folder, const char *path, mode_t mode)
{
    const int result = static_cast<int>(::syscall(SYS_mkdirat, folder, path, mode));
    if (result == 0 && listener && listener->covers(absolute(folder, path)))
        listener->made(absolute(folder, path), true);
    return result;
}

int removeName(int folder, const char *path, int flags)
{
    const fs::path where = listener ? absolute(folder, path) : fs::path();
    const int file = listener && listener->covers(where) ? listener->numberAt(where) : -1;
    const int result = static_cast<int>(::syscall(SYS_unlinkat, folder, path, flags));
    if (result == 0 && file > 0)
        listener->removed(where, file);
    return result;
}

int renameName(int fromFolder, const char *from, int toFolder, const char *to, unsigned flags)
{
    const int result = static_cast<int>(::syscall(SYS_renameat2, fromFolder, from, toFolder, to, flags));
    if (result == 0 && listener && listener->covers(absolute(fromFolder, from)))
        listener->renamed(absolute(fromFolder, from), absolute(toFolder, to));
    return result;
}

ssize_t writeAt(int descriptor, const void *bytes, std::size_t count, off_t offset)
{
    const auto written = static_cast<ssize_t>(::syscall(SYS_pwrite64, descriptor, bytes, count, offset));
    if (written > 0 && listener)
        listener->wrote(
            descriptor, static_cast<std::size_t>(offset), {static_cast<const char *>(bytes), static_cast<std::size_t>(written)});
    return written;
}

int resize(int descriptor, off_t size)
{
    const int result = static_cast<int>(::syscall(SYS_ftruncate, descriptor, size));
    if (result == 0 && listener)
        listener->resized(descriptor, static_cast<std::size_t>(size));
    return result;
}

int allocate(int descriptor, off_t offset, off_t count)
{
    const bool isDone = ::syscall(SYS_fallocate, descriptor, 0, offset, count) == 0;
    if (isDone && listener)
        listener->resized(descriptor, std::max(sizeOf(descriptor), static_cast<std::size_t>(offset + count)));
    return isDone ? 0 : errno;
}

int syncNow(long call, int descriptor)
{
    const int result = static_cast<int>(::syscall(call, descriptor));
    if (result == 0 && listener)
        listener->synced(descriptor);
    return result;
}

} // namespace

} // namespace morrow::test

// The names are libc's, and what each does is libc's, too.
using namespace morrow::test;

extern "C" {

int open(const char *path, int flags, ...)
{
    va_list more;
    va_start(more, flags);
    const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
    va_end(more);
    return openFile(AT_FDCWD, path, flags, mode);
}

int open64(const char *path, int flags, ...)
{
    va_list more;
    va_start(more, flags);
    const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
    va_end(more);
    return openFile(AT_FDCWD, path, flags, mode);
}

int openat(int folder, const char *path, int flags, ...)
{
    va_list more;
    va_start(more, flags);
    const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : 0;
    va_end(more);
    return openFile(folder, path, flags, mode);
}

ssize_t write(int descriptor, const void *bytes, size_t count)
{
    const auto written = static_cast<ssize_t>(::syscall(SYS_write, descriptor, bytes, count));
    if (written > 0 && listener) {
        const off_t end = ::lseek(descriptor, 0, SEEK_CUR);
        if (end >= written)
            listener->wrote(
                descriptor, static_cast<std::size_t>(end - written), {static_cast<const char *>(bytes), static_cast<std::size_t>(written)});
    }
    return written;
}

ssize_t pwrite(int descriptor, const void *bytes, size_t count, off_t offset)
{
    return writeAt(descriptor, bytes, count, offset);
}

ssize_t pwrite64(int descriptor, const void *bytes, size_t count, off64_t offset)
{
    return writeAt(descriptor, bytes, count, offset);
}

// Copied by reading and writing, so that what is written is heard.
ssize_t sendfile(int to, int from, off_t *offset, size_t count) noexcept
{
    std::string block(std::min<std::size_t>(count, 1 << 16), '\0');
    const ssize_t got = offset ? ::pread(from, block.data(), block.size(), *offset) : ::read(from, block.data(), block.size());
    if (got <= 0)
        return got;
    const ssize_t written = write(to, block.data(), static_cast<std::size_t>(got));
    if (written > 0 && offset)
        *offset += written;
    return written;
}

int ftruncate(int descriptor, off_t size) noexcept
{
    return resize(descriptor, size);
}

int ftruncate64(int descriptor, off64_t size) noexcept
{
    return resize(descriptor, size);
}

int posix_fallocate(int descriptor, off_t offset, off_t count)
{
    return allocate(descriptor, offset, count);
}

int fsync(int descriptor)
{
    return syncNow(SYS_fsync, descriptor);
}

int fdatasync(int descriptor)
{
    return syncNow(SYS_fdatasync, descriptor);
}

int mkdir(const char *path, mode_t mode) noexcept
{
    return makeFolder(AT_FDCWD, path, mode);
}

int unlink(const char *path) noexcept
{
    return removeName(AT_FDCWD, path, 0);
}

int unlinkat(int folder, const char *path, int flags) noexcept
{
    return removeName(folder, path, flags);
}

int rmdir(const char *path) noexcept
{
    return removeName(AT_FDCWD, path, AT_REMOVEDIR);
}

int remove(const char *path) noexcept
{
    const int result = removeName(AT_FDCWD, path, 0);
    return result != 0 && errno == EISDIR ? removeName(AT_FDCWD, path, AT_REMOVEDIR) : result;
}

int rename(const char *from, const char *to) noexcept
{
    return renameName(AT_FDCWD, from, AT_FDCWD, to, 0);
}

int renameat2(int fromFolder, const char *from, int toFolder, const char *to, unsigned flags) noexcept
{
    return renameName(fromFolder, from, toFolder, to, flags);
}

} // extern "C"
