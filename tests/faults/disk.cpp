// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/disk.h"

#include <algorithm>

namespace morrow::test {

namespace {

constexpr std::size_t kSector = 512;

void put(std::string &file, std::size_t offset, std::string_view bytes)
{
    if (file.size() < offset + bytes.size())
        file.resize(offset + bytes.size());
    std::copy(bytes.begin(), bytes.end(), file.begin() + static_cast<std::ptrdiff_t>(offset));
}

} // namespace

Disk::Disk(const Image &image)
{
    // The numbers that PowerCut gives the same image.
    for (const auto &[name, bytes] : image)
        m_files.emplace(name, std::make_shared<File>(File{++m_last, bytes}));
}

std::shared_ptr<Disk::File> Disk::find(const std::string &name) const
{
    const auto found = m_files.find(name);
    return found == m_files.end() ? nullptr : found->second;
}

std::shared_ptr<Disk::File> Disk::create(const std::string &name)
{
    const auto file = std::make_shared<File>(File{++m_last, {}});
    m_files[name] = file;
    m_log.push_back({.kind = Operation::Kind::Create, .file = file->number, .name = name});
    return file;
}

void Disk::remove(const std::string &name)
{
    if (const auto found = m_files.find(name); found != m_files.end()) {
        m_log.push_back({.kind = Operation::Kind::Remove, .file = found->second->number, .name = name});
        m_files.erase(found);
    }
}

void Disk::write(File &file, std::size_t offset, std::string bytes)
{
    put(file.bytes, offset, bytes);
    m_log.push_back({.kind = Operation::Kind::Write, .file = file.number, .offset = offset, .bytes = std::move(bytes)});
}

void Disk::resize(File &file, std::size_t size)
{
    file.bytes.resize(size);
    m_log.push_back({.kind = Operation::Kind::Resize, .file = file.number, .offset = size});
}

void Disk::sync(const File &file)
{
    m_log.push_back({.kind = Operation::Kind::Sync, .file = file.number});
}

void Disk::forget(const File &file)
{
    m_log.push_back({.kind = Operation::Kind::Forget, .file = file.number});
}

void Disk::syncFolder()
{
    m_log.push_back({.kind = Operation::Kind::SyncFolder, .file = 0});
}

Image Disk::image() const
{
    Image image;
    for (const auto &[name, file] : m_files)
        image.emplace(name, file->bytes);
    return image;
}

PowerCut::PowerCut(const Image &start)
{
    int last = 0;
    std::map<std::string, int> folders{{"", 0}};
    for (const auto &[path, bytes] : start) { // a folder comes before what lies in it
        ++last;
        const bool isFolder = path.ends_with('/');
        const std::string name = isFolder ? path.substr(0, path.size() - 1) : path;
        const std::size_t slash = name.starts_with('/') ? std::string::npos : name.rfind('/');
        const std::string folder = slash == std::string::npos ? "" : name.substr(0, slash + 1);
        m_safeNames.emplace(Name(folders.at(folder), name.substr(folder.size())), last);
        if (isFolder) {
            folders.emplace(path, last);
            m_folders.insert(last);
        } else {
            m_bytes.emplace(last, bytes);
        }
    }
}

void PowerCut::follow(const Operation &operation)
{
    using Kind = Operation::Kind;
    const auto isOfFile = [&](const Operation &write) { return write.file == operation.file; };
    switch (operation.kind) {
    case Kind::MakeFolder:
        m_folders.insert(operation.file);
        [[fallthrough]];
    case Kind::Create:
    case Kind::Rename:
    case Kind::Remove:
        m_names.push_back(operation);
        break;
    case Kind::Write:
    case Kind::Resize:
        m_writes.push_back(operation);
        break;
    case Kind::Sync:
        for (const Operation &write : m_writes) {
            if (isOfFile(write))
                apply(write, m_bytes[write.file], Fate::Kept, nullptr);
        }
        std::erase_if(m_writes, isOfFile);
        break;
    case Kind::Forget:
        std::erase_if(m_writes, isOfFile);
        break;
    case Kind::SyncFolder:
        for (const Operation &name : m_names) {
            if (name.folder == operation.file)
                rename(name, m_safeNames);
        }
        std::erase_if(m_names, [&](const Operation &name) { return name.folder == operation.file; });
        break;
    }
}

void PowerCut::rename(const Operation &operation, std::map<Name, int> &names)
{
    if (operation.kind == Operation::Kind::Create || operation.kind == Operation::Kind::MakeFolder) {
        names[{operation.folder, operation.name}] = operation.file;
        return;
    }
    names.erase({operation.folder, operation.name});
    if (operation.kind == Operation::Kind::Rename)
        names[{operation.folder, operation.to}] = operation.file;
}

void PowerCut::apply(const Operation &operation, std::string &bytes, Fate fate, Random *random)
{
    if (fate == Fate::Dropped)
        return;
    if (operation.kind == Operation::Kind::Resize) {
        bytes.resize(operation.offset);
        return;
    }
    if (fate == Fate::Kept) {
        put(bytes, operation.offset, operation.bytes);
        return;
    }
    const std::string_view all(operation.bytes);
    for (std::size_t at = operation.offset; at < operation.offset + all.size();) {
        const std::size_t end = std::min((at / kSector + 1) * kSector, operation.offset + all.size());
        if ((*random)() % 2 == 0)
            put(bytes, at, all.substr(at - operation.offset, end - at));
        at = end;
    }
}

Image PowerCut::outcome(Random &random) const
{
    // How likely each is that nothing was synced of: from "all but a little" to "hardly anything".
    const std::uint64_t mood = random() % 6;
    const auto fates = [&](std::size_t count) {
        std::vector<Fate> all(count, mood == 0 ? Fate::Kept : Fate::Dropped);
        if (mood < 2 && count > 0)
            all[random() % count] = static_cast<Fate>(random() % 3);
        for (std::size_t i = 0; mood >= 2 && i < count; ++i)
            all[i] = random() % 6 < mood ? static_cast<Fate>(random() % 3) : Fate::Kept;
        return all;
    };
    const auto names = fates(m_names.size());
    return outcome(names, fates(m_writes.size()), &random);
}

Image PowerCut::leastOutcome() const
{
    return outcome(std::vector(m_names.size(), Fate::Dropped), std::vector(m_writes.size(), Fate::Dropped), nullptr);
}

Image PowerCut::mostOutcome() const
{
    return outcome(std::vector(m_names.size(), Fate::Kept), std::vector(m_writes.size(), Fate::Kept), nullptr);
}

Image PowerCut::outcome(const std::vector<Fate> &names, const std::vector<Fate> &writes, Random *random) const
{
    auto left = m_safeNames;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] != Fate::Dropped)
            rename(m_names[i], left);
    }
    Image image;
    // What lies in a folder that is not there itself is lost with it.
    std::vector<std::pair<int, std::string>> folders{{0, {}}};
    while (!folders.empty()) {
        const auto [folder, path] = folders.back();
        folders.pop_back();
        for (auto at = left.lower_bound({folder, {}}); at != left.end() && at->first.first == folder; ++at) {
            const int file = at->second;
            if (m_folders.contains(file)) {
                image[path + at->first.second + '/'];
                folders.emplace_back(file, path + at->first.second + '/');
                continue;
            }
            std::string &bytes = image[path + at->first.second];
            if (const auto safe = m_bytes.find(file); safe != m_bytes.end())
                bytes = safe->second;
            for (std::size_t i = 0; i < writes.size(); ++i) {
                if (m_writes[i].file == file)
                    apply(m_writes[i], bytes, writes[i], random);
            }
        }
    }
    return image;
}

} // namespace morrow::test
