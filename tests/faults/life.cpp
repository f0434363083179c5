// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/life.h"

namespace morrow::test {

std::vector<Step> lifeOf(int length, int first)
{
    using Kind = Step::Kind;
    std::vector<Step> steps;
    for (int at = 0; at < length; ++at) {
        const int number = first + at * 10;
        switch (at % 16) {
        case 3:
            steps.push_back({Kind::Add, kOtherRef, facts(number, 9)});
            break;
        case 5:
            steps.push_back({Kind::Add, kRef, {correctionOf(fact(first + (at - 1) * 10), number)}});
            break;
        case 6:
            steps.push_back({Kind::Checkpoint});
            break;
        case 8:
            steps.push_back({Kind::Add, kRef, {note(number, std::string(6000, 'l'))}});
            break;
        case 10:
            steps.push_back({Kind::Reopen});
            break;
        case 12: // the corrected one of 4, with its correction
            steps.push_back({Kind::Erase, kRef, {fact(first + (at - 8) * 10)}});
            break;
        case 13:
            steps.push_back({Kind::Add, kRef, {fact(first + (at - 9) * 10), fact(number)}}); // an erased one
            break;
        case 14:
            steps.push_back({Kind::Add, kRef, {fact(first + at * 10 - 20), fact(first + (at - 1) * 10), fact(number)}}); // known ones
            break;
        default:
            steps.push_back({Kind::Add, kRef, {fact(number)}});
        }
    }
    return steps;
}

void Told::take(const Step &step)
{
    if (step.kind == Step::Kind::Add) {
        Person &person = m_persons[step.ref];
        for (const Entry &entry : step.entries) {
            if (!person.erased.contains(sha256(entry.id)))
                person.entries.emplace(entry.id, entry);
        }
    } else if (step.kind == Step::Kind::Erase) {
        Person &person = m_persons[step.ref];
        const std::string id = step.entries[0].id;
        for (auto at = person.entries.begin(); at != person.entries.end();) {
            const bool isOfChain = at->first == id || at->second.replaces == id;
            if (isOfChain)
                person.erased.insert(sha256(at->first));
            at = isOfChain ? person.entries.erase(at) : std::next(at);
        }
    }
}

std::string Told::fingerprint() const
{
    std::string all;
    Sha256 hash;
    for (const auto &[ref, person] : m_persons) {
        Sum sum;
        for (const auto &[id, entry] : person.entries)
            sum.add(digestOf(entry, hash));
        all += ref + ' ' + std::to_string(person.entries.size()) + ' ' + toHex(sum.value());
        for (const Digest &erased : person.erased)
            all += ' ' + toHex(erased);
        all += '\n';
    }
    return all;
}

std::string heldBy(DiaryStore &store)
{
    try {
        SQLite::Statement check(store.database()->connection(), "PRAGMA integrity_check(1)");
        if (!check.executeStep() || check.getColumn(0).getString() != "ok")
            return "broken: integrity";
        SQLite::Statement foreign(store.database()->connection(), "PRAGMA foreign_key_check");
        if (foreign.executeStep())
            return "broken: foreign keys";
    } catch (const SQLite::Exception &exception) {
        return std::string("broken: ") + exception.what();
    }
    const auto refs = store.persons();
    if (!refs)
        return std::string("broken: ") + nameOf(refs.error());
    std::map<std::string, std::string> persons;
    Sha256 hash;
    for (const std::string &ref : *refs) {
        const auto reading = store.read(ref);
        if (!reading)
            return std::string("broken: ") + nameOf(reading.error());
        if (!reading->isWhole())
            return "broken: a person is not whole";
        Sum sum;
        for (const Entry &entry : reading->entries)
            sum.add(digestOf(entry, hash));
        std::string &all = persons[ref];
        all = ref + ' ' + std::to_string(reading->entries.size()) + ' ' + toHex(sum.value());
        for (const Digest &erased : std::set(reading->erased.begin(), reading->erased.end()))
            all += ' ' + toHex(erased);
        all += '\n';
    }
    std::string all;
    for (const auto &[ref, line] : persons)
        all += line;
    return all;
}

Result<DiaryStore, StoreError> openOnDisk(std::span<const SchemaStep> steps, const char *vfs)
{
    return DiaryStore::open("/diary", {.vfs = vfs, .steps = steps, .backsUp = false});
}

std::string heldOn(DiskVfs &vfs, const Image &image, std::span<const SchemaStep> steps, const char *name)
{
    Disk disk(image);
    vfs.mount(&disk);
    auto store = openOnDisk(steps, name);
    return store ? heldBy(*store) : std::string("broken: ") + nameOf(store.error());
}

Result<void, StoreError> perform(const Step &step, std::optional<DiaryStore> &store)
{
    const auto did = [](const auto &result) -> Result<void, StoreError> {
        if (!result)
            return failure(result.error());
        return {};
    };
    if (step.kind == Step::Kind::Reopen || !store) {
        store.reset();
        auto opened = openOnDisk();
        if (!opened)
            return failure(opened.error());
        store.emplace(*std::move(opened));
    }
    switch (step.kind) {
    case Step::Kind::Add:
        return did(store->add(step.ref, step.entries));
    case Step::Kind::Erase:
        return did(store->eraseChain(step.ref, step.entries[0].id));
    case Step::Kind::Checkpoint:
        return store->checkpoint();
    case Step::Kind::Reopen:
        break;
    }
    return {};
}

} // namespace morrow::test
