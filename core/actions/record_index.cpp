// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/record_index.h"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <string_view>
#include <tuple>
#include <unordered_set>
#include <utility>

namespace morrow {

namespace {

constexpr std::string_view kFileNote = "file ";

bool isDecision(const Entry &entry) noexcept
{
    return entry.kind == Kind::Alias || entry.kind == Kind::SetAside;
}

template<class T>
bool readNumber(std::string_view text, T &number)
{
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size();
}

/// The parts of \a text between \a separator.
std::vector<std::string_view> split(std::string_view text, char separator)
{
    std::vector<std::string_view> parts;
    for (;;) {
        const std::size_t end = text.find(separator);
        parts.push_back(text.substr(0, end));
        if (end == std::string_view::npos)
            return parts;
        text.remove_prefix(end + 1);
    }
}

// A note is a line about the file and one for each decision in it, the parts of a line between
// tabs: a ref or an id has none, and a body writes one as an escape.

std::string noteOf(const RecordedFile &file)
{
    return file.ref + '\t' + std::to_string(static_cast<int>(file.sort)) + '\t' + (file.isSummary ? "1" : "0") + '\t'
        + std::to_string(file.latest);
}

std::string noteOf(const Entry &entry)
{
    return '\n' + entry.id + '\t' + std::string(name(entry.kind)) + '\t' + std::to_string(entry.day.number()) + '\t'
        + (entry.recorded ? std::to_string(entry.recorded->utcMs) : "") + '\t'
        + (entry.recorded ? std::to_string(entry.recorded->offsetMinutes) : "") + '\t' + entry.replaces.value_or("") + '\t' + entry.body;
}

std::optional<RecordedFile> readFile(std::string_view line)
{
    const auto parts = split(line, '\t');
    int sort = 0;
    RecordedFile file;
    if (parts.size() != 4 || !readNumber(parts[1], sort) || sort < 0 || sort > static_cast<int>(RecordedFile::Sort::Decisions)
        || !readNumber(parts[3], file.latest))
        return std::nullopt;
    file.ref = parts[0];
    file.sort = static_cast<RecordedFile::Sort>(sort);
    file.isSummary = parts[2] == "1";
    return file;
}

std::optional<Entry> readDecision(std::string_view line)
{
    const auto parts = split(line, '\t');
    int number = 0;
    if (parts.size() != 7 || !readNumber(parts[2], number))
        return std::nullopt;
    const auto kind = kindNamed(parts[1]);
    const auto day = CivilDay::fromNumber(number);
    if (!kind || !day)
        return std::nullopt;
    Entry entry{std::string(parts[0]), *kind, *day, std::nullopt, Author::Clinic, std::nullopt, std::string(parts[6])};
    if (!parts[3].empty()) {
        Moment moment{};
        if (!readNumber(parts[3], moment.utcMs) || !readNumber(parts[4], moment.offsetMinutes))
            return std::nullopt;
        entry.recorded = moment;
    }
    if (!parts[5].empty())
        entry.replaces = std::string(parts[5]);
    return entry;
}

/// Refs that are one person, each with the one that stands for all.
class Joined
{
public:
    const std::string &of(const std::string &ref)
    {
        const auto [at, isNew] = m_parents.emplace(ref, ref);
        return isNew || at->second == ref ? at->first : of(at->second);
    }

    void join(const std::string &one, const std::string &other) { m_parents[of(other)] = of(one); }

private:
    std::map<std::string, std::string> m_parents;
};

} // namespace

std::optional<RecordIndex> RecordIndex::fromNotes(const Notes &notes)
{
    RecordIndex index;
    for (const auto &[key, value] : notes) {
        if (!key.starts_with(kFileNote))
            return std::nullopt;
        const std::string name = key.substr(kFileNote.size());
        const auto lines = split(value, '\n');
        auto file = readFile(lines[0]);
        if (!file)
            return std::nullopt;
        for (std::size_t i = 1; i < lines.size(); ++i) {
            auto entry = readDecision(lines[i]);
            if (!entry)
                return std::nullopt;
            index.m_decisions.push_back({name, file->ref, *std::move(entry)});
        }
        index.m_files.emplace(name, *std::move(file));
    }
    index.decide();
    return index;
}

Notes RecordIndex::add(const std::string &name, const FhirDiary &diary)
{
    using Sort = RecordedFile::Sort;
    const bool isOwn = diary.file == FhirFile::Record;
    const bool decidesOnly = isOwn && std::all_of(diary.entries.begin(), diary.entries.end(), isDecision);
    RecordedFile file{diary.person, !isOwn ? Sort::Others : decidesOnly ? Sort::Decisions : Sort::Own, diary.file == FhirFile::Summary};
    std::string note;
    for (const Entry &entry : diary.entries) {
        if (entry.recorded)
            file.latest = std::max(file.latest, entry.recorded->utcMs);
        if (isOwn && isDecision(entry)) {
            note += noteOf(entry);
            m_decisions.push_back({name, diary.person, entry});
        }
    }
    note = noteOf(file) + note;
    // Most files decide nothing, and there may be many of them.
    const bool decides = note.find('\n') != std::string::npos;
    if (m_persons.emplace(file.ref, file.ref).second)
        m_refs[file.ref] = {file.ref};
    m_filesOf[file.ref].insert(name);
    m_files.insert_or_assign(name, std::move(file));
    if (decides)
        decide();
    return {{std::string(kFileNote) + name, std::move(note)}};
}

Notes RecordIndex::remove(const std::string &name)
{
    m_files.erase(name);
    std::erase_if(m_decisions, [&name](const Decision &decision) { return decision.file == name; });
    decide();
    return {{std::string(kFileNote) + name, {}}};
}

void RecordIndex::decide()
{
    std::sort(m_decisions.begin(), m_decisions.end(),
        [](const Decision &a, const Decision &b) { return std::tie(a.entry.id, a.file) < std::tie(b.entry.id, b.file); });
    std::unordered_set<std::string_view> replaced;
    for (const Decision &decision : m_decisions) {
        if (decision.entry.replaces)
            replaced.insert(*decision.entry.replaces);
    }
    m_setAside.clear();
    m_aliases.clear();
    m_persons.clear();
    m_refs.clear();
    m_filesOf.clear();
    Joined joined;
    std::set<std::string> named;
    std::set<std::string> refs;
    for (const auto &[name, file] : m_files) {
        refs.insert(file.ref);
        m_filesOf[file.ref].insert(name);
    }
    BodyReader reader;
    std::unordered_set<std::string_view> met;
    for (const Decision &decision : m_decisions) {
        const auto body = reader.read(decision.entry.body);
        if (!met.insert(decision.entry.id).second || !body || body->has(Field::Withdrawn) || replaced.contains(decision.entry.id))
            continue;
        if (decision.entry.kind == Kind::SetAside) {
            m_setAside[std::string(body->textOr(Field::File))].push_back(decision.entry);
            continue;
        }
        const std::string ref(body->textOr(Field::Ref));
        if (ref == decision.ref)
            continue;
        m_aliases[ref].push_back(decision.entry);
        joined.join(decision.ref, ref);
        named.insert(ref);
        refs.insert(ref);
    }
    // The least ref comes first, so the first that may stand for all of them does.
    std::map<std::string, std::string> chosen;
    for (const std::string &ref : refs) {
        if (!named.contains(ref))
            chosen.emplace(joined.of(ref), ref);
    }
    for (const std::string &ref : refs) {
        const std::string &person = chosen.emplace(joined.of(ref), ref).first->second;
        m_persons.emplace(ref, person);
        m_refs[person].push_back(ref);
    }
}

std::vector<Entry> RecordIndex::settingAside(const std::string &name) const
{
    const auto found = m_setAside.find(name);
    return found == m_setAside.end() ? std::vector<Entry>() : found->second;
}

std::vector<Entry> RecordIndex::aliasing(const std::string &ref) const
{
    const auto found = m_aliases.find(ref);
    return found == m_aliases.end() ? std::vector<Entry>() : found->second;
}

std::optional<std::string> RecordIndex::personOf(const std::string &ref) const
{
    const auto found = m_persons.find(ref);
    return found == m_persons.end() ? std::nullopt : std::optional(found->second);
}

bool RecordIndex::isKnown(const std::string &ref) const
{
    const auto person = personOf(ref);
    if (!person)
        return false;
    const auto names = filesOf(*person);
    return std::any_of(
        names.begin(), names.end(), [this](const std::string &name) { return m_files.at(name).sort != RecordedFile::Sort::Decisions; });
}

std::set<std::string> RecordIndex::persons() const
{
    std::set<std::string> all;
    for (const auto &[person, refs] : m_refs)
        all.insert(person);
    return all;
}

const std::vector<std::string> &RecordIndex::refsOf(const std::string &person) const
{
    static const std::vector<std::string> none;
    const auto found = m_refs.find(person);
    return found == m_refs.end() ? none : found->second;
}

std::vector<std::string> RecordIndex::filesOf(const std::string &person) const
{
    std::vector<std::string> names;
    for (const std::string &ref : refsOf(person)) {
        const auto files = m_filesOf.find(ref);
        if (files == m_filesOf.end())
            continue;
        std::copy_if(files->second.begin(), files->second.end(), std::back_inserter(names),
            [this](const std::string &name) { return !isSetAside(name); });
    }
    const auto isOthers = [this](const std::string &name) { return m_files.at(name).sort == RecordedFile::Sort::Others; };
    std::sort(names.begin(), names.end(), [&isOthers](const std::string &a, const std::string &b) {
        return std::pair(isOthers(a), std::string_view(a)) < std::pair(isOthers(b), std::string_view(b));
    });
    return names;
}

std::string RecordIndex::refForPatient(const std::string &person) const
{
    const RecordedFile *last = nullptr;
    for (const std::string &name : filesOf(person)) {
        const RecordedFile &file = m_files.at(name);
        if (file.isSummary && (!last || file.latest > last->latest))
            last = &file;
    }
    return last ? last->ref : person;
}

} // namespace morrow
