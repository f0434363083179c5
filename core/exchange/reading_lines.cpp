// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/reading_lines.h"

#include "base/file.h"
#include "base/ids.h"
#include "base/sha256.h"
#include "model/rules.h"

#include <QJsonDocument>
#include <QJsonObject>

#include <simdjson.h>

#include <algorithm>
#include <array>
#include <optional>
#include <unordered_set>
#include <utility>

namespace morrow {

namespace {

namespace ondemand = simdjson::ondemand;

constexpr std::array<std::string_view, 4> kFiles{"summary", "plan", "visit", "record"};
/// Lines are handed on in parts of about this size.
constexpr std::size_t kPart = 1 << 16;
/// One plan of many revisions is the longest entry; nothing of ours comes near.
constexpr std::size_t kMaxLine = kMaxFhirBytes;

/// Every rule that an issue can name, in one order for both processes, which are of one build.
const std::vector<const FieldRule *> &allRules()
{
    static const auto rules = [] {
        std::vector<const FieldRule *> all;
        const auto take = [&all](std::span<const FieldRule> some) {
            for (const FieldRule &rule : some)
                all.push_back(&rule);
        };
        for (int kind = 0; kind < kKindCount; ++kind)
            take(ruleOf(static_cast<Kind>(kind)).fields);
        take(itemRules());
        take(stageRules());
        take(planSettingRules());
        for (const std::string_view key : {"day_starts", "body_mass_kg", "time_zone"})
            all.push_back(settingRule(key));
        return all;
    }();
    return rules;
}

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

std::string line(const QJsonObject &object)
{
    return QJsonDocument(object).toJson(QJsonDocument::Compact).toStdString() + '\n';
}

std::string lineOf(const Issue &issue)
{
    const auto &rules = allRules();
    const auto rule = std::find(rules.begin(), rules.end(), issue.rule);
    return line({
        {QStringLiteral("code"), static_cast<int>(issue.code)},
        {QStringLiteral("pointer"), text(issue.pointer)},
        {QStringLiteral("line"), issue.line},
        {QStringLiteral("column"), issue.column},
        {QStringLiteral("columnName"), text(issue.columnName)},
        {QStringLiteral("value"), text(issue.value)},
        {QStringLiteral("other"), text(issue.other)},
        {QStringLiteral("rule"), rule == rules.end() ? -1 : static_cast<int>(rule - rules.begin())},
        {QStringLiteral("fileError"), static_cast<int>(issue.fileError)},
    });
}

/// Nothing in it needs an escape but what the body escapes already.
void appendLine(std::string &out, const Entry &entry)
{
    const auto member = [&out](std::string_view key, std::string_view value, bool isText = true) {
        out += key;
        out += isText ? "\"" : "";
        out += value;
        out += isText ? "\"" : "";
    };
    member("{\"id\":", entry.id);
    member(",\"kind\":", name(entry.kind));
    member(",\"day\":", entry.day.toString());
    if (entry.recorded) {
        member(",\"recorded\":", std::to_string(entry.recorded->utcMs), false);
        member(",\"offset\":", std::to_string(entry.recorded->offsetMinutes), false);
    }
    member(",\"author\":", name(entry.author));
    if (entry.replaces)
        member(",\"replaces\":", *entry.replaces);
    member(",\"body\":", entry.body, false);
    out += "}\n";
}

/// Whether \a moment is one that a file can hold.
bool isMoment(const Moment &moment)
{
    constexpr std::int64_t dayMs = 86'400'000;
    constexpr std::int64_t far = 100'000 * dayMs;
    if (moment.offsetMinutes < -1439 || moment.offsetMinutes > 1439 || moment.utcMs < -far || moment.utcMs > far)
        return false;
    const std::int64_t local = moment.utcMs + std::int64_t{moment.offsetMinutes} * 60'000;
    const std::int64_t day = local >= 0 ? local / dayMs : -((-local + dayMs - 1) / dayMs);
    return CivilDay::fromNumber(static_cast<int>(day)).has_value();
}

} // namespace

FileReading readForeignFile(const std::filesystem::path &path)
{
    const auto bytes = readFile(path, kMaxFhirBytes);
    if (!bytes)
        return {{}, failure(std::vector<Issue>{{.code = IssueCode::Unreadable, .fileError = bytes.error()}})};
    return {toHex(sha256(*bytes)), readFhir(*bytes)};
}

void writeLines(const FileReading &reading, const std::function<void(std::string_view)> &write)
{
    const QString file = text(reading.sha256);
    if (!reading.diary) {
        const auto &issues = reading.diary.error();
        write(line({{QStringLiteral("file"), file}, {QStringLiteral("issues"), static_cast<int>(issues.size())}}));
        for (const Issue &issue : issues)
            write(lineOf(issue));
        write(line({{QStringLiteral("end"), text(toHex(Digest{}))}}));
        return;
    }
    const FhirDiary &diary = *reading.diary;
    write(line({
        {QStringLiteral("file"), file},
        {QStringLiteral("kind"), text(kFiles[static_cast<std::size_t>(diary.file)])},
        {QStringLiteral("person"), text(diary.person)},
        {QStringLiteral("name"), text(diary.name)},
        {QStringLiteral("count"), static_cast<qint64>(diary.entries.size())},
        {QStringLiteral("unknownResources"), diary.unknownResources},
        {QStringLiteral("unknownExtensions"), diary.unknownExtensions},
    }));
    Sha256 hash;
    Sum sum;
    std::string lines;
    for (const Entry &entry : diary.entries) {
        appendLine(lines, entry);
        sum.add(digestOf(entry, hash));
        if (lines.size() >= kPart) {
            write(lines);
            lines.clear();
        }
    }
    write(lines + line({{QStringLiteral("end"), text(toHex(sum.value()))}}));
}

struct ReadingLines::Parser
{
    std::string buffer; ///< what is no whole line yet
    std::size_t searched = 0; ///< of it, without finding a line's end
    ondemand::parser json;
    BodyReader bodies;
    Sha256 hash;
    Sum sum;
    FileReading reading{{}, FhirDiary()};
    std::unordered_set<std::string> ids;
    std::size_t left = 0; ///< entries or issues to come
    bool hasBegun = false;
    State state = State::More;

    /// The object in \a line, which has room behind it.
    std::optional<ondemand::document> document(std::string_view line, std::size_t room)
    {
        ondemand::document document;
        if (json.iterate(line.data(), line.size(), line.size() + room).get(document) != simdjson::SUCCESS)
            return std::nullopt;
        return document;
    }

    template<class T>
    static std::optional<T> get(ondemand::document &document, const char *key)
    {
        T value;
        if (document[key].get(value) != simdjson::SUCCESS)
            return std::nullopt;
        return value;
    }

    static std::optional<int> number(ondemand::document &document, const char *key)
    {
        const auto value = get<std::int64_t>(document, key);
        if (!value || *value < -1 || *value > 1'000'000'000)
            return std::nullopt;
        return static_cast<int>(*value);
    }

    static std::optional<std::string> word(ondemand::document &document, const char *key)
    {
        const auto value = get<std::string_view>(document, key);
        return value ? std::optional(std::string(*value)) : std::nullopt;
    }

    bool takeFirst(ondemand::document &document)
    {
        const auto file = word(document, "file");
        if (!file)
            return false;
        reading.sha256 = *file;
        hasBegun = true;
        if (const auto issues = number(document, "issues")) {
            reading.diary = failure(std::vector<Issue>());
            left = static_cast<std::size_t>(*issues);
            return *issues > 0;
        }
        const auto kind = word(document, "kind");
        const auto person = word(document, "person");
        const auto name = word(document, "name");
        const auto count = number(document, "count");
        const auto resources = number(document, "unknownResources");
        const auto extensions = number(document, "unknownExtensions");
        const auto *const known = std::find(kFiles.begin(), kFiles.end(), kind.value_or(""));
        if (known == kFiles.end() || !person || !name || !count || *count < 0 || !resources || !extensions || !isEntryId(*person))
            return false;
        FhirDiary &diary = *reading.diary;
        diary.file = static_cast<FhirFile>(known - kFiles.begin());
        diary.person = *person;
        diary.name = *name;
        diary.unknownResources = *resources;
        diary.unknownExtensions = *extensions;
        left = static_cast<std::size_t>(*count);
        return true;
    }

    bool takeIssue(ondemand::document &document)
    {
        Issue issue;
        const auto code = number(document, "code");
        const auto pointer = word(document, "pointer");
        const auto line = number(document, "line");
        const auto column = number(document, "column");
        const auto columnName = word(document, "columnName");
        const auto value = word(document, "value");
        const auto other = word(document, "other");
        const auto rule = number(document, "rule");
        const auto fileError = number(document, "fileError");
        if (!code || !pointer || !line || !column || !columnName || !value || !other || !rule || !fileError)
            return false;
        const auto isIn = [](int one, auto last) { return one >= 0 && one <= static_cast<int>(last); };
        if (!isIn(*code, IssueCode::SumDiffers) || !isIn(*fileError, FileError::Io))
            return false;
        const auto &rules = allRules();
        issue.code = static_cast<IssueCode>(*code);
        issue.pointer = *pointer;
        issue.line = *line;
        issue.column = *column;
        issue.columnName = *columnName;
        issue.value = *value;
        issue.other = *other;
        issue.rule = *rule >= 0 && static_cast<std::size_t>(*rule) < rules.size() ? rules[static_cast<std::size_t>(*rule)] : nullptr;
        issue.fileError = static_cast<FileError>(*fileError);
        reading.diary.error().push_back(std::move(issue));
        return true;
    }

    /// I1.
    bool takeEntry(ondemand::document &document)
    {
        const auto id = word(document, "id");
        const auto kind = kindNamed(word(document, "kind").value_or(""));
        const auto day = CivilDay::parse(word(document, "day").value_or(""));
        const auto recorded = get<std::int64_t>(document, "recorded");
        const auto offset = get<std::int64_t>(document, "offset");
        const auto author = authorNamed(word(document, "author").value_or(""));
        const auto replaces = word(document, "replaces");
        ondemand::object object;
        std::string_view raw;
        if (document["body"].get(object) != simdjson::SUCCESS || object.raw_json().get(raw) != simdjson::SUCCESS)
            return false;
        if (!id || !isEntryId(*id) || !kind || !day || !author || recorded.has_value() != offset.has_value()
            || (replaces && !isEntryId(*replaces)) || !ids.insert(*id).second)
            return false;
        Entry entry{*id, *kind, *day, std::nullopt, *author, replaces, std::string(raw)};
        if (recorded) {
            entry.recorded = Moment{*recorded, static_cast<int>(std::clamp<std::int64_t>(*offset, -1440, 1440))};
            if (!isMoment(*entry.recorded))
                return false;
        }
        const KindRule &rule = ruleOf(*kind);
        if (*author == Author::Clinic ? !rule.clinic : !rule.patient)
            return false;
        const auto body = bodies.read(entry.body);
        if (!body || body->toJson() != entry.body || !formProblemsOf(*kind, *body).empty() || !problemsOf(*kind, *body, *day).empty())
            return false;
        sum.add(digestOf(entry, hash));
        reading.diary->entries.push_back(std::move(entry));
        return true;
    }

    State takeLine(std::string_view line, std::size_t room)
    {
        auto read = document(line, room);
        if (!read)
            return State::Garbled;
        if (!hasBegun)
            return takeFirst(*read) ? State::More : State::Garbled;
        if (left == 0)
            return word(*read, "end") == toHex(sum.value()) ? State::Whole : State::Garbled;
        --left;
        return (reading.diary ? takeEntry(*read) : takeIssue(*read)) ? State::More : State::Garbled;
    }
};

ReadingLines::ReadingLines()
    : m_parser(std::make_unique<Parser>())
{
}
ReadingLines::~ReadingLines() = default;

ReadingLines::State ReadingLines::take(std::string_view part)
{
    Parser &parser = *m_parser;
    if (parser.state == State::Garbled || (parser.state == State::Whole && !part.empty()))
        return parser.state = State::Garbled;
    std::string &buffer = parser.buffer;
    buffer += part;
    buffer.reserve(buffer.size() + simdjson::SIMDJSON_PADDING);
    std::size_t begin = 0;
    for (;;) {
        const std::size_t end = buffer.find('\n', std::max(begin, parser.searched));
        if (end == std::string::npos)
            break;
        if (parser.state == State::Whole)
            return parser.state = State::Garbled;
        const std::string_view line(buffer.data() + begin, end - begin);
        parser.state = parser.takeLine(line, buffer.capacity() - end);
        if (parser.state == State::Garbled)
            return parser.state;
        begin = end + 1;
    }
    buffer.erase(0, begin);
    parser.searched = buffer.size();
    if (buffer.size() > kMaxLine || (parser.state == State::Whole && !buffer.empty()))
        parser.state = State::Garbled;
    return parser.state;
}

FileReading ReadingLines::result() &&
{
    return std::move(m_parser->reading);
}

} // namespace morrow
