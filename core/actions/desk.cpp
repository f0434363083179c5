// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/desk.h"

#include "store/erase.h"

#include <algorithm>
#include <utility>

namespace morrow {

namespace {

namespace fs = std::filesystem;

fs::path storeFolder(const fs::path &desk)
{
    return desk / "store";
}

/// A store that was made again from less than the whole record.
fs::path oldStore(const fs::path &desk)
{
    return desk / "store.old";
}

fs::path recordPath(const fs::path &desk)
{
    return desk / "record";
}

auto of(DeskError error)
{
    return failure(error);
}

/// Whether \a folder holds other things than a desk, and no record.
bool isSomethingElse(const fs::path &folder)
{
    std::error_code error;
    const bool isDesk = fs::symlink_status(recordPath(folder), error).type() != fs::file_type::not_found;
    return !isDesk && fs::exists(folder, error)
        && (!fs::is_directory(folder, error) || fs::directory_iterator(folder, error) != fs::directory_iterator());
}

/// Opens the store at \a folder with the index that it keeps.
Result<std::pair<DiaryStore, RecordIndex>, DeskError> openStore(const fs::path &folder)
{
    auto store = DiaryStore::open(folder, {});
    if (!store)
        return of(store.error());
    const auto notes = store->notes();
    if (!notes)
        return of(notes.error());
    auto index = RecordIndex::fromNotes(*notes);
    if (!index)
        return of(StoreError::Damaged);
    return std::pair(*std::move(store), *std::move(index));
}

} // namespace

OpenDesk::OpenDesk(fs::path folder, RecordFolder record, DiaryStore store, RecordIndex index) noexcept
    : m_folder(std::move(folder))
    , m_record(std::move(record))
    , m_store(std::move(store))
    , m_index(std::move(index))
{
}

Result<OpenDesk, DeskError> OpenDesk::open(const fs::path &folder)
{
    if (isSomethingElse(folder))
        return of(StoreError::NotADiary);
    auto record = RecordFolder::open(recordPath(folder));
    if (!record)
        return of(record.error());
    auto store = openStore(storeFolder(folder));
    if (!store)
        return of(store.error());
    OpenDesk desk(folder, *std::move(record), std::move(store->first), std::move(store->second));
    auto news = desk.takeInNew();
    if (!news)
        return of(news.error());
    desk.m_news = *std::move(news);
    return desk;
}

std::optional<FhirDiary> OpenDesk::recorded(const std::string &name) const
{
    const auto bytes = m_record.read(name);
    if (!bytes)
        return std::nullopt;
    auto diary = readFhir(*bytes);
    if (!diary)
        return std::nullopt;
    return *std::move(diary);
}

Result<std::vector<Entry>, StoreError> OpenDesk::entriesOf(const std::string &person)
{
    auto reading = m_store.read(person);
    if (!reading)
        return failure(reading.error());
    if (!reading->isWhole())
        return failure(StoreError::Damaged);
    return std::move(reading->entries);
}

Result<std::vector<Entry>, StoreError> OpenDesk::madeAgain(const RecordIndex &index, const std::string &person, TookNew &report)
{
    DiaryUnion all;
    bool isWhole = true;
    for (const std::string &name : index.filesOf(person)) {
        const auto diary = recorded(name);
        if (!diary) {
            isWhole = false;
            if (std::find(report.missing.begin(), report.missing.end(), name) == report.missing.end())
                report.unread.push_back(name);
            continue;
        }
        const Source source = index.files().at(name).sort == RecordedFile::Sort::Others ? Source::Other : Source::Own;
        if (all.clashes(diary->entries, source).empty())
            all.add(diary->entries);
        else
            report.clashing.push_back(name);
    }
    if (isWhole)
        return std::move(all).take();
    // I4
    for (const std::string &ref : index.refsOf(person)) {
        const auto reading = m_store.read(ref);
        if (!reading)
            return failure(reading.error());
        all.add(reading->entries);
    }
    return std::move(all).take();
}

/// Makes again, in one step of the store, whoever is another person by the index \a after, or
/// whose refs are \a touched.
Result<void, DeskError> OpenDesk::change(RecordIndex after, Notes notes, std::set<std::string> touched, TookNew &report)
{
    std::set<std::string> persons;
    const auto touch = [&](const std::string &ref) {
        for (const auto &person : {m_index.personOf(ref), after.personOf(ref)}) {
            if (person)
                persons.insert(*person);
        }
    };
    for (const std::string &ref : touched)
        touch(ref);
    for (const RecordIndex *const index : {&std::as_const(m_index), &std::as_const(after)}) {
        for (const std::string &person : index->persons()) {
            for (const std::string &ref : index->refsOf(person)) {
                if (m_index.personOf(ref) && m_index.personOf(ref) != after.personOf(ref))
                    touch(ref);
            }
        }
        for (const auto &[name, file] : index->files()) {
            if (m_index.isSetAside(name) != after.isSetAside(name))
                touch(file.ref);
        }
    }
    // Who goes comes last: what cannot be read again is looked for in the store (I4).
    std::vector<std::string> refs(persons.begin(), persons.end());
    std::stable_partition(refs.begin(), refs.end(), [&after](const std::string &ref) { return after.personOf(ref) == ref; });
    const auto entriesOf = [&](const std::string &person) { return madeAgain(after, person, report); };
    if (auto replaced = m_store.replace(refs, entriesOf, notes); !replaced)
        return of(replaced.error());
    m_index = std::move(after);
    report.persons += static_cast<int>(refs.size());
    return {};
}

Result<void, DeskError> OpenDesk::obeyErasures(TookNew &report)
{
    std::vector<std::string> erased;
    for (const std::string &person : m_index.persons()) {
        const auto &refs = m_index.refsOf(person);
        if (std::any_of(refs.begin(), refs.end(), [this](const std::string &ref) { return m_record.isErased(ref); }))
            erased.push_back(person);
    }
    if (erased.empty())
        return {};
    RecordIndex after = m_index;
    Notes notes;
    std::set<std::string> touched;
    for (const std::string &person : erased) {
        const auto refs = m_index.refsOf(person);
        touched.insert(refs.begin(), refs.end());
        for (const auto &[name, file] : m_index.files()) {
            if (std::find(refs.begin(), refs.end(), file.ref) == refs.end())
                continue;
            if (auto removed = m_record.remove(name); !removed)
                return of(removed.error());
            notes.merge(after.remove(name));
        }
    }
    if (auto changed = change(std::move(after), std::move(notes), std::move(touched), report); !changed)
        return changed;
    report.erasedPersons = static_cast<int>(erased.size());
    std::error_code error;
    if (fs::remove_all(oldStore(m_folder), error); error)
        return of(StoreError::Io);
    if (auto scrubbed = m_store.scrub(); !scrubbed)
        return of(scrubbed.error());
    return {};
}

Result<TookNew, DeskError> OpenDesk::takeInNew()
{
    const auto names = m_record.names();
    if (!names)
        return of(names.error());
    TookNew report;
    for (const auto &[name, file] : m_index.files()) {
        if (!std::binary_search(names->begin(), names->end(), name))
            report.missing.push_back(name);
    }
    // A drive that is not there shows an empty folder: nothing is to be written into that.
    if (!m_index.files().empty() && report.missing.size() == m_index.files().size() && names->empty()) {
        const bool areErased = std::all_of(
            m_index.files().begin(), m_index.files().end(), [this](const auto &file) { return m_record.isErased(file.second.ref); });
        if (!areErased)
            return of(FileError::Missing);
    }
    RecordIndex after = m_index;
    Notes notes;
    std::set<std::string> touched;
    for (const std::string &name : *names) {
        if (m_index.holds(name))
            continue;
        const auto diary = recorded(name);
        if (!diary) {
            report.unread.push_back(name);
            continue;
        }
        notes.merge(after.add(name, *diary));
        touched.insert(diary->person);
        ++report.files;
    }
    if (report.files > 0) {
        if (auto changed = change(std::move(after), std::move(notes), std::move(touched), report); !changed)
            return of(changed.error());
    }
    if (auto obeyed = obeyErasures(report); !obeyed)
        return of(obeyed.error());
    return report;
}

Result<void, DeskError> OpenDesk::keep(const std::string &bytes, const FhirDiary &diary)
{
    const auto name = m_record.add(bytes);
    if (!name)
        return of(name.error());
    const Notes notes = m_index.add(*name, diary);
    const std::string person = *m_index.personOf(diary.person);
    if (auto added = m_store.add(person, diary.entries, notes); !added) {
        m_index.remove(*name); // it lies in the record, and is new there once more
        return of(added.error());
    }
    return {};
}

Result<void, DeskError> OpenDesk::keepWithDecisions(
    const std::string &person, std::span<const Entry> decisions, const std::string &bytes, const FhirDiary &diary)
{
    const std::string ref = m_index.personOf(person).value_or(person);
    const std::string bundle = writeFhir(decisions, ref, FhirFile::Record).json;
    const FhirDiary decided{FhirFile::Record, ref, {}, std::vector<Entry>(decisions.begin(), decisions.end())};
    RecordIndex after = m_index;
    Notes notes;
    std::set<std::string> touched{ref};
    // The decision first: a file whose person it names would be somebody new at another desk.
    const auto first = m_record.add(bundle);
    if (!first)
        return of(first.error());
    notes.merge(after.add(*first, decided));
    if (!bytes.empty()) {
        const auto second = m_record.add(bytes);
        if (!second)
            return of(second.error());
        if (!after.holds(*second))
            notes.merge(after.add(*second, diary));
        touched.insert(diary.person);
    }
    TookNew report;
    return change(std::move(after), std::move(notes), std::move(touched), report);
}

bool OpenDesk::canBeMadeAgain(const std::string &person) const
{
    const auto names = m_index.filesOf(person);
    return std::all_of(names.begin(), names.end(), [this](const std::string &name) { return recorded(name).has_value(); });
}

Result<void, DeskError> OpenDesk::erasePerson(const std::string &ref)
{
    const auto person = m_index.personOf(ref);
    if (!person)
        return of(StoreError::Missing);
    for (const std::string &one : m_index.refsOf(*person)) {
        if (auto marked = m_record.markErased(one); !marked)
            return of(marked.error());
    }
    TookNew report;
    return obeyErasures(report);
}

Result<Rebuilt, DeskError> OpenDesk::rebuild(const fs::path &folder)
{
    std::error_code error;
    if (!fs::is_directory(recordPath(folder), error))
        return of(FileError::Missing);
    auto record = RecordFolder::open(recordPath(folder));
    if (!record)
        return of(record.error());

    // Held open, where it can be, so that no other program uses it meanwhile.
    std::optional<std::pair<DiaryStore, RecordIndex>> old;
    if (fs::exists(storeFolder(folder), error)) {
        auto opened = openStore(storeFolder(folder));
        if (!opened && opened.error() == DeskError(StoreError::Busy))
            return of(opened.error());
        if (opened)
            old.emplace(*std::move(opened));
    }
    const fs::path made = folder / "store.new";
    const fs::path kept = oldStore(folder);
    fs::remove_all(made, error);
    Rebuilt report;
    {
        auto store = openStore(made);
        if (!store)
            return of(store.error());
        OpenDesk desk(folder, *std::move(record), std::move(store->first), std::move(store->second));
        auto news = desk.takeInNew();
        if (!news)
            return of(news.error());
        report.record = *std::move(news);
        report.persons = static_cast<int>(desk.m_index.persons().size());
        for (const std::string &person : desk.m_index.persons()) {
            const auto entries = desk.entriesOf(person);
            if (!entries)
                return of(entries.error());
            report.entries += static_cast<int>(entries->size());
        }
        if (old) {
            for (const auto &[name, file] : old->second.files()) {
                const bool isUnread
                    = std::find(report.record.unread.begin(), report.record.unread.end(), name) != report.record.unread.end();
                if (!desk.m_index.holds(name) && !isUnread && !desk.m_record.isErased(file.ref))
                    report.record.missing.push_back(name);
            }
        }
        if (auto done = desk.m_store.checkpoint(); !done)
            return of(done.error());
    }
    report.keepsOld = fs::exists(storeFolder(folder), error) && !(report.record.unread.empty() && report.record.missing.empty());
    old.reset();
    if (fs::exists(storeFolder(folder), error)) {
        fs::remove_all(kept, error);
        if (auto renamed = renameDurably(storeFolder(folder), kept); !renamed)
            return of(renamed.error());
    }
    if (auto renamed = renameDurably(made, storeFolder(folder)); !renamed)
        return of(renamed.error());
    if (!report.keepsOld)
        fs::remove_all(kept, error);
    return report;
}

} // namespace morrow
