// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "store/rows.h"

#include "model/kind.h"

#include <algorithm>
#include <charconv>
#include <climits>
#include <cstring>
#include <limits>
#include <unordered_set>

namespace morrow {

namespace {

/// A person's rows of table entry in the order of their ids, as Reading::take() reads them.
constexpr const char *kColumns
    = "SELECT id, kind, day, recorded, utc_offset, author, replaces, body, digest FROM entry WHERE person = ? ORDER BY id";

std::string_view textIn(const SQLite::Column &column)
{
    return {static_cast<const char *>(column.getBlob()), static_cast<std::size_t>(column.getBytes())};
}

std::string text(const SQLite::Column &column)
{
    return std::string(textIn(column));
}

std::optional<std::int64_t> numberIn(const SQLite::Column &column)
{
    return column.isNull() ? std::nullopt : std::optional(column.getInt64());
}

std::string decimal(const std::optional<std::int64_t> &number)
{
    return number ? std::to_string(*number) : std::string();
}

bool equals(std::string_view blob, const Digest &digest)
{
    return blob.size() == digest.size() && std::memcmp(blob.data(), digest.data(), digest.size()) == 0;
}

Digest digestOfPerson(std::int64_t person, std::string_view ref, Sha256 &hash)
{
    return digestOfColumns({"person 1", std::to_string(person), ref}, hash);
}

Digest digestOfErased(std::int64_t person, const Digest &idDigest, Sha256 &hash)
{
    return digestOfColumns({"erased 1", std::to_string(person), toHex(idDigest)}, hash);
}

/// Takes rows in key order or against it and holds what they say.
class Reading
{
public:
    Reading(PersonReading &result, Sha256 &hash)
        : m_result(result)
        , m_hash(hash)
    {
    }

    /// Takes what \a row stands on, by kColumns.
    void take(SQLite::Statement &row)
    {
        const auto column = [&row](int place) { return textIn(row.getColumn(place)); };
        const std::string_view id = column(0);
        if (!isNew(id))
            return;
        ++m_count;
        const std::int64_t dayNumber = row.getColumn(2).getInt64();
        const auto recorded = numberIn(row.getColumn(3));
        const auto offset = numberIn(row.getColumn(4));
        const Digest digest = digestOfColumns(
            {"entry 1", id, column(1), std::to_string(dayNumber), decimal(recorded), decimal(offset), column(5), column(6), column(7)},
            m_hash);
        const auto day = dayNumber >= INT_MIN && dayNumber <= INT_MAX ? CivilDay::fromNumber(static_cast<int>(dayNumber)) : std::nullopt;
        const auto author = authorNamed(column(5));
        if (!equals(column(8), digest) || !day || !author) {
            m_result.damaged.push_back({std::string(id), day});
            return;
        }
        m_sum.add(digest);
        const auto kind = kindNamed(column(1));
        if (!kind) {
            ++m_result.unknownKinds;
            m_unknown.emplace_back(id);
            return;
        }
        Entry &entry = m_result.entries.emplace_back(Entry{std::string(id), *kind, *day, {}, *author, {}, std::string(column(7))});
        if (recorded)
            entry.recorded = Moment{*recorded, static_cast<int>(offset.value_or(0))};
        if (!row.getColumn(6).isNull())
            entry.replaces = column(6);
    }

    [[nodiscard]] std::int64_t count() const noexcept { return m_count; }
    [[nodiscard]] const Sum &sum() const noexcept { return m_sum; }

private:
    /// As long as each id is greater than the one before it, none can have been there.
    bool isNew(std::string_view id)
    {
        if (m_seen.empty() && (m_count == 0 || id > m_last)) {
            m_last = id;
            return true;
        }
        if (m_seen.empty()) {
            m_seen.insert(m_unknown.begin(), m_unknown.end());
            for (const Entry &entry : m_result.entries)
                m_seen.insert(entry.id);
            for (const DamagedRow &damaged : m_result.damaged)
                m_seen.insert(damaged.id);
        }
        return m_seen.emplace(id).second;
    }

    PersonReading &m_result;
    Sha256 &m_hash;
    std::string m_last;
    std::vector<std::string> m_unknown; ///< ids of rows whose kind nobody knows
    std::unordered_set<std::string> m_seen; ///< empty while rows come in order
    std::int64_t m_count = 0;
    Sum m_sum;
};

/// How many ids of a person were erased, and the sum of their rows' digests. A line of `meta`
/// holds it, since a lost row of `erased` would let restore bring back what it names.
struct ErasedTotal
{
    std::int64_t count = 0;
    Sum sum;

    friend bool operator==(const ErasedTotal &, const ErasedTotal &) = default;
};

const std::string kLostKey = "lost";

std::string erasedKey(std::int64_t person)
{
    return "erased " + std::to_string(person);
}

std::string textOf(const ErasedTotal &total)
{
    return std::to_string(total.count) + ' ' + toHex(total.sum.value());
}

/// A line of `meta`.
struct MetaLine
{
    std::string value;
    bool isDamaged = false;
};

/// The line \a key; nullopt if there is none.
std::optional<MetaLine> metaLine(SQLite::Database &connection, const std::string &key, Sha256 &hash)
{
    SQLite::Statement row(connection, "SELECT value, digest FROM meta WHERE key = ?");
    row.bind(1, key);
    if (!row.executeStep())
        return std::nullopt;
    MetaLine line{.value = text(row.getColumn(0))};
    line.isDamaged = !equals(text(row.getColumn(1)), digestOfColumns({"meta 1", key, line.value}, hash));
    return line;
}

void setMetaLine(SQLite::Database &connection, const std::string &key, const std::string &value, Sha256 &hash)
{
    SQLite::Statement write(connection,
        "INSERT INTO meta(key, value, digest) VALUES (?, ?, ?) ON CONFLICT(key) DO UPDATE SET value = excluded.value, digest = "
        "excluded.digest");
    write.bind(1, key);
    write.bind(2, value);
    bindDigest(write, 3, digestOfColumns({"meta 1", key, value}, hash));
    write.exec();
}

/// The total that `meta` holds, or nullopt if it is damaged.
std::optional<ErasedTotal> storedErasedTotal(SQLite::Database &connection, std::int64_t person, Sha256 &hash)
{
    const auto line = metaLine(connection, erasedKey(person), hash);
    if (!line)
        return ErasedTotal();
    if (line->isDamaged)
        return std::nullopt;
    const std::string &value = line->value;
    ErasedTotal total;
    const char *const end = value.data() + value.size();
    const auto [rest, error] = std::from_chars(value.data(), end, total.count);
    Digest sum{};
    if (error != std::errc() || end - rest != 1 + 2 * static_cast<std::ptrdiff_t>(sum.size()))
        return std::nullopt;
    for (std::size_t i = 0; i < sum.size(); ++i)
        std::from_chars(rest + 1 + 2 * i, rest + 3 + 2 * i, sum[i], 16);
    total.sum.add(sum);
    return total;
}

void readErased(SQLite::Database &connection, std::int64_t person, Sha256 &hash, PersonReading &result)
{
    ErasedTotal total;
    // Everybody's, in the order they lie in: a search would pass by a page that is another's.
    SQLite::Statement erased(connection, "SELECT id_digest, digest, person FROM erased");
    while (erased.executeStep()) {
        Digest idDigest{};
        const std::string blob = text(erased.getColumn(0));
        std::copy_n(blob.begin(), std::min(blob.size(), idDigest.size()), idDigest.begin());
        const std::int64_t owner = erased.getColumn(2).getInt64();
        const Digest digest = digestOfErased(owner, idDigest, hash);
        if (!equals(text(erased.getColumn(1)), digest)) {
            result.erasedDamaged = true;
        } else if (owner == person) {
            ++total.count;
            total.sum.add(digest);
            result.erased.push_back(idDigest);
        }
    }
    if (storedErasedTotal(connection, person, hash) != total)
        result.erasedDamaged = true;
}

/// Feeds every row that can be read to \a reading; false if pages could not.
bool readRows(SQLite::Database &connection, std::int64_t person, Reading &reading)
{
    const auto pass = [&](const std::string &sql) {
        try {
            SQLite::Statement rows(connection, sql);
            rows.bind(1, person);
            while (rows.executeStep())
                reading.take(rows);
            return true;
        } catch (const SQLite::Exception &exception) {
            if (storeError(exception) != StoreError::Damaged && storeError(exception) != StoreError::Io)
                throw;
            return false;
        }
    };
    if (pass(kColumns))
        return true;
    (void)pass(std::string(kColumns) + " DESC");
    return false;
}

} // namespace

std::optional<std::int64_t> personNumbered(SQLite::Database &connection, const std::string &ref)
{
    // Not by the index: it repeats what the table says, and a flipped bit in it would make a
    // diary look empty or somebody else's.
    SQLite::Statement find(connection, "SELECT person FROM person NOT INDEXED WHERE ref = ?");
    find.bind(1, ref);
    if (!find.executeStep())
        return std::nullopt;
    return find.getColumn(0).getInt64();
}

std::int64_t addPerson(SQLite::Database &connection, const std::string &ref, Sha256 &hash)
{
    SQLite::Statement next(connection, "SELECT coalesce(max(person), 0) + 1 FROM person");
    next.executeStep();
    const std::int64_t person = next.getColumn(0).getInt64();
    SQLite::Statement insert(connection, "INSERT INTO person(person, ref, digest) VALUES (?, ?, ?)");
    insert.bind(1, person);
    insert.bind(2, ref);
    bindDigest(insert, 3, digestOfPerson(person, ref, hash));
    insert.exec();
    return person;
}

void insertEntry(SQLite::Statement &insert, std::int64_t person, const Entry &entry, const Digest &digest)
{
    // Not reset(), which would tell again why the insert before this one failed.
    (void)insert.tryReset();
    insert.bind(1, person);
    insert.bindNoCopy(2, entry.id);
    insert.bind(3, std::string(name(entry.kind)));
    insert.bind(4, entry.day.number());
    if (entry.recorded) {
        insert.bind(5, entry.recorded->utcMs);
        insert.bind(6, entry.recorded->offsetMinutes);
    } else {
        insert.bind(5);
        insert.bind(6);
    }
    insert.bind(7, std::string(name(entry.author)));
    if (entry.replaces)
        insert.bindNoCopy(8, *entry.replaces);
    else
        insert.bind(8);
    insert.bindNoCopy(9, entry.body);
    bindDigest(insert, 10, digest);
    insert.exec();
}

PersonReading readPerson(SQLite::Database &connection, std::int64_t person, Sha256 &hash)
{
    PersonReading result;
    SQLite::Statement row(connection, "SELECT ref, digest, entries, sum FROM person WHERE person = ?");
    row.bind(1, person);
    std::string sum;
    result.personDamaged = true;
    if (row.executeStep()) {
        result.ref = text(row.getColumn(0));
        result.personDamaged = !equals(text(row.getColumn(1)), digestOfPerson(person, result.ref, hash));
        result.counted = row.getColumn(2).getInt64();
        sum = text(row.getColumn(3));
    }

    // The number may be damaged: it may not take the machine's memory.
    constexpr std::int64_t kMostAhead = 200'000;
    result.entries.reserve(static_cast<std::size_t>(std::clamp<std::int64_t>(result.counted, 0, kMostAhead)));
    Reading reading(result, hash);
    result.cutShort = !readRows(connection, person, reading);
    const auto isBefore = [](const Entry &a, const Entry &b) { return a.id < b.id; };
    if (!std::is_sorted(result.entries.begin(), result.entries.end(), isBefore))
        std::sort(result.entries.begin(), result.entries.end(), isBefore);
    result.countDiffers = reading.count() != result.counted;
    result.sumDiffers = !equals(sum, reading.sum().value());

    readErased(connection, person, hash, result);
    return result;
}

std::vector<std::pair<std::int64_t, std::string>> persons(SQLite::Database &connection)
{
    std::vector<std::pair<std::int64_t, std::string>> all;
    SQLite::Statement rows(connection, "SELECT person, ref FROM person ORDER BY person");
    while (rows.executeStep())
        all.emplace_back(rows.getColumn(0).getInt64(), text(rows.getColumn(1)));
    return all;
}

std::vector<std::int64_t> personNumbers(SQLite::Database &connection, bool &isWhole)
{
    std::vector<std::int64_t> numbers;
    const auto pass = [&](const std::string &sql) {
        try {
            SQLite::Statement next(connection, sql);
            for (std::int64_t person = std::numeric_limits<std::int64_t>::min();;) {
                next.reset();
                next.bind(1, person);
                if (!next.executeStep())
                    return;
                const std::int64_t found = next.getColumn(0).getInt64();
                if (found <= person) { // keys in disorder, which would lead in a circle
                    isWhole = false;
                    return;
                }
                person = found;
                numbers.push_back(person);
            }
        } catch (const SQLite::Exception &) {
            isWhole = false;
        }
    };
    // From one person's first entry to the next one's: a few steps, not every entry.
    pass("SELECT person FROM person WHERE person > ? ORDER BY person LIMIT 1");
    pass("SELECT person FROM entry WHERE person > ? ORDER BY person LIMIT 1");
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

bool holdsEntriesOfNobody(SQLite::Database &connection)
{
    bool isWhole = true;
    const auto numbers = personNumbers(connection, isWhole);
    return !isWhole || numbers.size() != persons(connection).size();
}

void insertErased(SQLite::Database &connection, std::int64_t person, const Digest &idDigest, Sha256 &hash)
{
    const Digest digest = digestOfErased(person, idDigest, hash);
    SQLite::Statement insert(connection, "INSERT OR IGNORE INTO erased(person, id_digest, digest) VALUES (?, ?, ?)");
    insert.bind(1, person);
    bindDigest(insert, 2, idDigest);
    bindDigest(insert, 3, digest);
    if (insert.exec() == 0)
        return;
    auto total = storedErasedTotal(connection, person, hash);
    if (!total)
        return; // stays noticed
    ++total->count;
    total->sum.add(digest);
    setMetaLine(connection, erasedKey(person), textOf(*total), hash);
}

void setLost(SQLite::Database &connection, std::optional<std::int64_t> lost, Sha256 &hash)
{
    setMetaLine(connection, kLostKey, lost ? std::to_string(*lost) : std::string(), hash);
}

std::optional<std::int64_t> lostIn(SQLite::Database &connection, Sha256 &hash)
{
    const auto line = metaLine(connection, kLostKey, hash);
    if (!line)
        return 0;
    std::int64_t lost = 0;
    const char *const end = line->value.data() + line->value.size();
    const auto [rest, error] = std::from_chars(line->value.data(), end, lost);
    return line->isDamaged || error != std::errc() || rest != end ? std::nullopt : std::optional(lost);
}

void removeErased(SQLite::Database &connection, std::int64_t person)
{
    SQLite::Statement rows(connection, "DELETE FROM erased WHERE person = ?");
    rows.bind(1, person);
    rows.exec();
    SQLite::Statement total(connection, "DELETE FROM meta WHERE key = ?");
    total.bind(1, erasedKey(person));
    total.exec();
}

void bindDigest(SQLite::Statement &statement, int index, const Digest &digest)
{
    statement.bind(index, digest.data(), static_cast<int>(digest.size()));
}

} // namespace morrow
