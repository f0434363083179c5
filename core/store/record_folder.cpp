// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/record_folder.h"

#include "base/sha256.h"

#include <zlib.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace morrow {

namespace {

namespace fs = std::filesystem;

bool isName(std::string_view text) noexcept
{
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

FileError fileError(const std::error_code &error) noexcept
{
    if (error == std::errc::no_space_on_device)
        return FileError::Full;
    if (error == std::errc::read_only_file_system)
        return FileError::ReadOnly;
    if (error == std::errc::permission_denied || error == std::errc::operation_not_permitted)
        return FileError::NoPermission;
    return error == std::errc::no_such_file_or_directory ? FileError::Missing : FileError::Io;
}

/// \a bytes deflated at \a level.
std::string deflated(std::string_view bytes, int level)
{
    uLongf size = compressBound(static_cast<uLong>(bytes.size()));
    std::string out(size, '\0');
    // Fails only for want of memory or room, and there is room for the worst case.
    if (compress2(reinterpret_cast<Bytef *>(out.data()), &size, reinterpret_cast<const Bytef *>(bytes.data()),
            static_cast<uLong>(bytes.size()), level)
        != Z_OK)
        throw std::bad_alloc();
    out.resize(size);
    return out;
}

/// What lies in a file for \a bytes. Fast, since summaries repeat themselves so much that a
/// better level saves little; what would shrink beyond what reading allows is only wrapped.
std::string packed(std::string_view bytes)
{
    std::string out = deflated(bytes, Z_BEST_SPEED);
    return bytes.size() > out.size() * RecordFolder::kMaxTimes ? deflated(bytes, Z_NO_COMPRESSION) : out;
}

/// One inflation, ended whatever happens.
struct Inflation
{
    z_stream stream{};
    bool isOpen = inflateInit(&stream) == Z_OK;

    Inflation() = default;
    Inflation(const Inflation &) = delete;
    Inflation &operator=(const Inflation &) = delete;
    ~Inflation()
    {
        if (isOpen)
            inflateEnd(&stream);
    }
};

Result<std::string, RecordFault> unpacked(std::string &file)
{
    const std::size_t limit = std::min(RecordFolder::kMaxBytes, file.size() * RecordFolder::kMaxTimes);
    Inflation inflation;
    if (!inflation.isOpen)
        throw std::bad_alloc();
    z_stream &stream = inflation.stream;
    stream.next_in = reinterpret_cast<Bytef *>(file.data());
    stream.avail_in = static_cast<uInt>(file.size());
    std::string out;
    // One byte beyond the limit tells what is too large from what just fits.
    for (;;) {
        const std::size_t had = out.size();
        out.resize(std::min(limit + 1, std::max(had * 2, file.size() * 8)));
        stream.next_out = reinterpret_cast<Bytef *>(out.data() + had);
        stream.avail_out = static_cast<uInt>(out.size() - had);
        const int code = inflate(&stream, Z_NO_FLUSH);
        const std::size_t size = out.size() - stream.avail_out;
        if (size > limit)
            return failure(RecordFault::TooLarge);
        if (code == Z_STREAM_END) {
            out.resize(size);
            if (stream.avail_in != 0) // something stands behind it
                return failure(RecordFault::Damaged);
            return out;
        }
        if (code != Z_OK || stream.avail_out != 0)
            return failure(RecordFault::Damaged);
    }
}

} // namespace

RecordFolder::RecordFolder(fs::path path)
    : m_path(std::move(path))
{
}

Result<RecordFolder, FileError> RecordFolder::open(const fs::path &path)
{
    std::error_code error;
    if (!fs::exists(path, error)) {
        // Of a drive that is not there, only the link is left.
        if (fs::is_symlink(fs::symlink_status(path, error)))
            return failure(FileError::Missing);
        fs::create_directories(path, error);
        if (!error)
            fs::permissions(path, fs::perms::owner_all, error);
        if (error)
            return failure(fileError(error));
        if (auto synced = syncFile(path.has_parent_path() ? path.parent_path() : fs::path(".")); !synced)
            return failure(synced.error());
    }
    if (!fs::is_directory(path, error))
        return failure(FileError::NotRegular);
    return RecordFolder(path);
}

std::string RecordFolder::nameOf(std::string_view bytes)
{
    return toHex(sha256(bytes));
}

Result<std::string, FileError> RecordFolder::add(std::string_view bytes)
{
    if (bytes.size() > kMaxBytes)
        return failure(FileError::TooLarge);
    std::string name = nameOf(bytes);
    std::error_code error;
    if (fs::exists(m_path / name, error) && read(name))
        return name;
    if (auto written = writeFile(m_path / name, packed(bytes)); !written)
        return failure(written.error());
    return name;
}

Result<std::string, RecordFault> RecordFolder::read(const std::string &name) const
{
    // What does not shrink grows a little by being wrapped.
    auto file = readFile(m_path / name, compressBound(kMaxBytes));
    if (!file) {
        return failure(file.error() == FileError::Missing ? RecordFault::Missing
                : file.error() == FileError::TooLarge     ? RecordFault::TooLarge
                                                          : RecordFault::Unreadable);
    }
    auto bytes = unpacked(*file);
    if (bytes && nameOf(*bytes) != name)
        return failure(RecordFault::Damaged);
    return bytes;
}

Result<std::vector<std::string>, FileError> RecordFolder::names() const
{
    std::vector<std::string> all;
    std::error_code error;
    for (fs::directory_iterator at(m_path, error); !error && at != fs::directory_iterator(); at.increment(error)) {
        if (std::string name = at->path().filename().string(); isName(name))
            all.push_back(std::move(name));
    }
    if (error)
        return failure(fileError(error));
    std::sort(all.begin(), all.end());
    return all;
}

Result<void, FileError> RecordFolder::markErased(std::string_view ref)
{
    const fs::path folder = m_path / "erased";
    std::error_code error;
    if (fs::create_directories(folder, error); error)
        return failure(fileError(error));
    if (auto synced = syncFile(m_path); !synced)
        return synced;
    return writeFile(folder / toHex(sha256(ref)), {});
}

bool RecordFolder::isErased(std::string_view ref) const
{
    std::error_code error;
    return fs::exists(m_path / "erased" / toHex(sha256(ref)), error);
}

Result<void, FileError> RecordFolder::remove(const std::string &name)
{
    std::error_code error;
    if (fs::remove(m_path / name, error); error)
        return failure(fileError(error));
    return syncFile(m_path);
}

} // namespace morrow
