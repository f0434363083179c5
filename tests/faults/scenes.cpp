// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "faults/scene.h"

#include "core/store/kept_diary.h"
#include "store/backup.h"
#include "store/erase.h"
#include "store/restore.h"

#include <algorithm>
#include <memory>
#include <optional>

namespace morrow::test {

namespace {

namespace fs = std::filesystem;

constexpr std::int64_t kHour = 3'600'000;
const std::string kCanary = "canary-5f0e7c1b93";

/// A store that several acts have open.
using Open = std::shared_ptr<std::optional<DiaryStore>>;

Moment hoursBack(int hours)
{
    return {kNow.utcMs - hours * kHour, kNow.offsetMinutes};
}

/// The image of a folder that \a fill made, as it is while \a fill runs.
Image imageMadeBy(const std::function<Image(const fs::path &)> &fill)
{
    const ScratchFolder folder;
    Image image = fill(folder / "made");
    image.at("ballast").resize(4096); // a megabyte to copy for each state, of which nothing depends
    return image;
}

bool opens(const Open &store, const fs::path &folder, std::span<const SchemaStep> steps = schemaSteps())
{
    auto opened = DiaryStore::open(folder, {.steps = steps});
    if (!opened)
        return false;
    store->emplace(*std::move(opened));
    return true;
}

Act adding(const Open &store, int number)
{
    return [store, number](const fs::path &) { return (*store)->add(kRef, facts(number, 1)).has_value(); };
}

Act closing(const Open &store)
{
    return [store](const fs::path &) {
        store->reset();
        return true;
    };
}

/// What is wrong with the facts that \a store holds: \a must be there, and nothing but \a may.
std::string compare(DiaryStore &store, const std::vector<Entry> &must, const std::vector<Entry> &may = {})
{
    const auto reading = store.read(kRef);
    if (!reading)
        return std::string("cannot be read: ") + nameOf(reading.error());
    if (!reading->isWhole())
        return "is not whole";
    for (const Entry &entry : must) {
        if (std::find(reading->entries.begin(), reading->entries.end(), entry) == reading->entries.end())
            return "lacks " + entry.id;
    }
    for (const Entry &entry : reading->entries) {
        const bool isTold
            = std::find(must.begin(), must.end(), entry) != must.end() || std::find(may.begin(), may.end(), entry) != may.end();
        if (!isTold)
            return "holds " + entry.id;
    }
    return {};
}

std::string compareOpened(const fs::path &folder, const std::vector<Entry> &must, const std::vector<Entry> &may = {},
    std::span<const SchemaStep> steps = schemaSteps())
{
    auto store = DiaryStore::open(folder, {.steps = steps});
    return store ? compare(*store, must, may) : std::string("cannot be opened: ") + nameOf(store.error());
}

std::vector<Entry> joined(std::vector<Entry> all, const std::vector<Entry> &more)
{
    all.insert(all.end(), more.begin(), more.end());
    return all;
}

bool holdsCanary(const fs::path &folder)
{
    const auto files = bytesBelow(folder);
    return std::any_of(files.begin(), files.end(), [](const auto &file) { return file.second.find(kCanary) != std::string::npos; });
}

/// Backups under their name that cannot be read: backup.h I1.
std::string unreadableBackup(const fs::path &folder)
{
    for (const fs::path &backup : backupsIn(folder)) {
        if (!canBeReadWhole(backup))
            return "the backup " + backup.filename().string() + " cannot be read";
    }
    return {};
}

/// A diary of 65 facts and a note that says the canary, of a program that was killed: what lies in the log
/// is not in the file. Everything beside it holds the note, too, the log included.
Image everythingHoldsTheNote(const fs::path &folder)
{
    keep(folder, joined(facts(0, 60), {note(1, kCanary)}));
    DiaryStore store = opened(folder);
    for (const int hours : {30, 2})
        (void)makeBackup(store.database()->connection(), folder, hoursBack(hours));
    fs::create_directory(keptFolder(folder));
    fs::copy_file(storeFile(folder), keptFolder(folder) / "2026-11-01T000000Z.db");
    fs::copy_file(storeFile(folder), unfinishedFile(folder));
    if (!store.add(kRef, facts(60, 5)))
        return {};
    return imageOf(folder);
}

const std::string kCopies
    = "CREATE TABLE copy (person INTEGER, id TEXT, body TEXT) STRICT; INSERT INTO copy SELECT person, id, body FROM entry";

std::span<const SchemaStep> nextSteps()
{
    static const std::vector<SchemaStep> steps = [] {
        std::vector<SchemaStep> all(schemaSteps().begin(), schemaSteps().end());
        all.push_back({all.back().version + 1, kCopies});
        return all;
    }();
    return steps;
}

} // namespace

Scene firstStart()
{
    const auto diary = [](const fs::path &root) { return root / "home" / "share" / "diary"; };
    Scene scene;
    scene.acts = [diary] {
        const auto store = std::make_shared<std::optional<DiaryStore>>();
        return std::vector<Act>{
            [=](const fs::path &root) { return opens(store, diary(root)); }, adding(store, 0), adding(store, 1), closing(store)};
    };
    scene.verdict = [diary](const fs::path &root, std::size_t done) {
        const int acknowledged = std::clamp(static_cast<int>(done) - 1, 0, 2);
        if (auto wrong = compareOpened(diary(root), facts(0, acknowledged), facts(0, 2)); !wrong.empty())
            return wrong;
        keep(diary(root), facts(7, 1));
        return compareOpened(diary(root), joined(facts(0, acknowledged), facts(7, 1)), facts(0, 2));
    };
    return scene;
}

Scene backingUp()
{
    static constexpr int kBefore = 20;
    static constexpr int kDays = 3;
    Scene scene;
    scene.start = imageMadeBy([](const fs::path &folder) {
        keep(folder, facts(0, kBefore));
        DiaryStore store = opened(folder);
        for (int days = 13; days > 0; --days) // as many as are kept, so that each new one displaces one
            (void)makeBackup(store.database()->connection(), folder, hoursBack(days * 24));
        rotateBackups(folder);
        return imageOf(folder);
    });
    scene.acts = [] {
        const auto store = std::make_shared<std::optional<DiaryStore>>();
        std::vector<Act> acts{[=](const fs::path &folder) { return opens(store, folder); }};
        for (int day = 0; day < kDays; ++day) {
            acts.push_back(adding(store, kBefore + day));
            acts.push_back([=](const fs::path &folder) {
                const bool isMade = makeBackup((*store)->database()->connection(), folder, hoursBack(-24 * day)).has_value();
                rotateBackups(folder);
                return isMade;
            });
        }
        acts.push_back(closing(store));
        return acts;
    };
    scene.untilAgain = 2 * kDays + 1; // what was told before is known
    scene.verdict = [](const fs::path &folder, std::size_t done) -> std::string {
        const int acknowledged = std::min(static_cast<int>(done) / 2, kDays);
        if (auto wrong = compareOpened(folder, facts(0, kBefore + acknowledged), facts(0, kBefore + kDays)); !wrong.empty())
            return wrong;
        if (auto wrong = unreadableBackup(folder); !wrong.empty())
            return wrong;
        // The store lost, what was backed up is back.
        const int backedUp = std::min((static_cast<int>(done) - 1) / 2, kDays);
        if (!removeStoreFile(storeFile(folder)))
            return "the store cannot be removed";
        if (const auto restored = restore(folder, kNow); !restored)
            return std::string("cannot be restored: ") + nameOf(restored.error());
        return compareOpened(folder, facts(0, kBefore + std::max(backedUp, 0)), facts(0, kBefore + kDays));
    };
    return scene;
}

Scene restoring()
{
    static constexpr int kFacts = 210;
    Scene scene;
    scene.start = imageMadeBy([](const fs::path &folder) {
        keep(folder, facts(0, 200));
        DiaryStore store = opened(folder);
        (void)makeBackup(store.database()->connection(), folder, hoursBack(1));
        // The last ones lie in the log alone, the store has a page that cannot be read.
        if (!store.add(kRef, facts(200, kFacts - 200)))
            return Image();
        Image image = imageOf(folder);
        std::string &bytes = image.at("diary.db");
        bytes.replace(bytes.size() / 4096 / 2 * 4096, 4096, std::string(4096, '\xa5'));
        return image;
    });
    scene.acts = [] {
        const auto store = std::make_shared<std::optional<DiaryStore>>();
        return std::vector<Act>{[](const fs::path &folder) { return restore(folder, kNow).has_value(); },
            [=](const fs::path &folder) { return opens(store, folder); }, adding(store, 500), closing(store)};
    };
    scene.verdict = [](const fs::path &folder, std::size_t done) -> std::string {
        const auto must = joined(facts(0, kFacts), facts(500, done >= 3 ? 1 : 0));
        if (done > 0)
            return compareOpened(folder, must, facts(500, 1));
        // What a person does who is told that the diary is damaged.
        if (compareOpened(folder, must, facts(500, 1)).empty())
            return {};
        for (int again = 0; again < 2; ++again) {
            const auto restored = restore(folder, kNow);
            if (!restored)
                return std::string("cannot be restored: ") + nameOf(restored.error());
            if (restored->back != kFacts)
                return "only " + std::to_string(restored->back) + " came back";
        }
        if (fs::exists(unfinishedFile(folder)) || fs::exists(restoredFile(folder)))
            return "debris: " + namesIn(folder);
        return compareOpened(folder, must);
    };
    return scene;
}

Scene erasingANote()
{
    Scene scene;
    scene.start = imageMadeBy([](const fs::path &folder) { return everythingHoldsTheNote(folder); });
    scene.acts = [] {
        const auto store = std::make_shared<std::optional<DiaryStore>>();
        return std::vector<Act>{[=](const fs::path &folder) { return opens(store, folder); },
            [=](const fs::path &) { return eraseNote(**store, kRef, note(1, "").id, kNow).has_value(); }, adding(store, 500),
            closing(store)};
    };
    scene.untilAgain = 1;
    scene.verdict = [](const fs::path &folder, std::size_t done) -> std::string {
        if (done >= 2 && holdsCanary(folder))
            return "the erased note is on the disk";
        const auto must = joined(facts(0, 65), facts(500, done >= 3 ? 1 : 0));
        {
            auto store = DiaryStore::open(folder, {});
            if (!store)
                return std::string("cannot be opened: ") + nameOf(store.error());
            auto may = facts(500, 1);
            if (done < 2)
                may.push_back(note(1, kCanary));
            if (auto wrong = compare(*store, must, may); !wrong.empty())
                return wrong;
            if (const auto erased = eraseNote(*store, kRef, note(1, "").id, kNow); !erased)
                return std::string("cannot be erased again: ") + nameOf(erased.error());
        }
        if (holdsCanary(folder))
            return "the note that was erased again is on the disk";
        if (const auto restored = restore(folder, kNow); !restored)
            return std::string("cannot be restored: ") + nameOf(restored.error());
        return compareOpened(folder, must, facts(500, 1));
    };
    return scene;
}

Scene erasingEverything()
{
    Scene scene;
    scene.start = imageMadeBy([](const fs::path &folder) { return everythingHoldsTheNote(folder); });
    scene.start["holiday.jpg"] = "not ours";
    scene.acts = [] { return std::vector<Act>{[](const fs::path &folder) { return eraseStore(folder).has_value(); }}; };
    scene.verdict = [](const fs::path &folder, std::size_t done) -> std::string {
        if (done == 0) {
            // Half erased, it is either all there still or no store that opens.
            if (auto store = DiaryStore::openToRead(folder, {}); store) {
                if (auto wrong = compare(*store, joined(facts(0, 65), {note(1, kCanary)})); !wrong.empty())
                    return "opens half erased: " + wrong;
            }
            if (const auto erased = eraseStore(folder); !erased)
                return std::string("cannot be erased again: ") + nameOf(erased.error());
        }
        return namesIn(folder) == "holiday.jpg" ? "" : "there is still: " + namesIn(folder);
    };
    return scene;
}

Scene steppingUp()
{
    const std::string backup = "before-step-" + std::to_string(nextSteps().back().version) + ".db";
    Scene scene;
    scene.start = imageMadeBy([](const fs::path &folder) {
        keep(folder, facts(0, 40));
        return imageOf(folder);
    });
    scene.acts = [] {
        const auto store = std::make_shared<std::optional<DiaryStore>>();
        return std::vector<Act>{
            [=](const fs::path &folder) { return opens(store, folder, nextSteps()); }, adding(store, 500), closing(store)};
    };
    scene.verdict = [backup](const fs::path &folder, std::size_t done) -> std::string {
        // Before anything is made anew: a step that was done has its backup.
        const bool isDone = done > 0 || !DiaryStore::open(folder, {});
        if (isDone && !fs::exists(backupFolder(folder) / backup))
            return "the step was done without a backup";
        if (auto wrong = unreadableBackup(folder); !wrong.empty())
            return wrong;
        return compareOpened(folder, joined(facts(0, 40), facts(500, done >= 2 ? 1 : 0)), facts(500, 1), nextSteps());
    };
    return scene;
}

} // namespace morrow::test
