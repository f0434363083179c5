// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "core/store/kept_diary.h"
#include "store/backup.h"
#include "store/restore.h"

#include <rapidcheck.h>

#include <algorithm>
#include <random>

using namespace morrow;
using namespace morrow::test;
namespace fs = std::filesystem;

namespace {

/// Facts by number, in any order, some more than once.
rc::Gen<std::vector<int>> numbers()
{
    return rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 60));
}

std::vector<Entry> told(const std::vector<int> &numbers)
{
    std::vector<Entry> entries;
    for (const int number : numbers)
        entries.push_back(fact(number));
    return entries;
}

std::vector<int> distinct(std::vector<int> numbers)
{
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

/// Adds \a entries in calls of as many as \a sizes say, the last one as many as are left.
void addInParts(DiaryStore &store, const std::vector<Entry> &entries, const std::vector<int> &sizes)
{
    std::span<const Entry> rest(entries);
    for (const int size : sizes) {
        const auto part = rest.first(std::min(rest.size(), static_cast<std::size_t>(size)));
        RC_ASSERT(store.add(kRef, part).has_value());
        rest = rest.subspan(part.size());
    }
    RC_ASSERT(store.add(kRef, rest).has_value());
}

std::string storedSum(DiaryStore &store)
{
    SQLite::Statement read(store.database()->connection(), "SELECT hex(sum) || ' ' || entries FROM person");
    RC_ASSERT(read.executeStep());
    return read.getColumn(0).getString();
}

#define HOLDS(...) QVERIFY(rc::check(__VA_ARGS__))

} // namespace

/// Two stores that were given the same set of entries, however, are equal.
class tst_union : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void anyOrderDuplicatesAndSplitGiveEqualSums()
    {
        HOLDS("union", [] {
            const auto one = *numbers();
            const auto other = *rc::gen::apply(
                [&one](std::vector<int> more, unsigned seed) {
                    std::vector<int> all = one;
                    for (const int index : more) {
                        if (!one.empty())
                            all.push_back(one[static_cast<std::size_t>(index) % one.size()]);
                    }
                    std::shuffle(all.begin(), all.end(), std::mt19937(seed));
                    return all;
                },
                numbers(), rc::gen::arbitrary<unsigned>());
            const auto sizes = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 20));
            const ScratchFolder folder;
            DiaryStore left = opened(folder / "left");
            DiaryStore right = opened(folder / "right");

            addInParts(left, told(one), {});
            addInParts(right, told(other), sizes);

            const auto expected = told(distinct(one));
            RC_ASSERT(left.read(kRef)->entries == byId(expected));
            RC_ASSERT(right.read(kRef)->entries == byId(expected));
            RC_ASSERT(left.read(kRef)->isWhole() && right.read(kRef)->isWhole());
            RC_ASSERT(storedSum(left) == storedSum(right));
        });
    }

    void whatWasErasedStaysErasedInAnyOrder()
    {
        HOLDS("erase", [] {
            const auto before = *rc::gen::nonEmpty(numbers());
            const auto after = *numbers();
            const int erased = *rc::gen::elementOf(before);
            const ScratchFolder folder;
            DiaryStore store = opened(folder / "diary");

            addInParts(store, told(before), {});
            RC_ASSERT(store.eraseChain(kRef, fact(erased).id).value() == 1);
            addInParts(store, told(after), {});

            std::vector<int> all = before;
            all.insert(all.end(), after.begin(), after.end());
            all = distinct(all);
            std::erase(all, erased);
            RC_ASSERT(store.read(kRef)->entries == byId(told(all)));
            RC_ASSERT(store.read(kRef)->isWhole());
        });
    }

    void restoringIsTheUnionOfEveryCopy()
    {
        HOLDS("restore", [] {
            const auto copies = *rc::gen::container<std::vector<std::vector<int>>>(3, rc::gen::nonEmpty(numbers()));
            const ScratchFolder folder;
            const fs::path diary = folder / "diary";
            keep(diary, told(copies[0]));
            fs::create_directory(backupFolder(diary));
            for (std::size_t copy = 1; copy < copies.size(); ++copy) {
                const fs::path other = folder / std::to_string(copy);
                keep(other, told(copies[copy]));
                fs::rename(storeFile(other), backupFolder(diary) / ("2026-11-0" + std::to_string(copy) + "T120000Z.db"));
            }

            std::vector<int> all;
            for (const auto &copy : copies)
                all.insert(all.end(), copy.begin(), copy.end());
            all = distinct(all);
            RC_ASSERT(restore(diary, kNow)->back == static_cast<int>(all.size()));
            RC_ASSERT(kept(diary).entries == byId(told(all)));
            RC_ASSERT(kept(diary).isWhole());
        });
    }
};

MORROW_SUITE(tst_union)
#include "tst_union.moc"
