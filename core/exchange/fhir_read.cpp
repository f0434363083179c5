// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir.h"

#include "base/ids.h"
#include "base/utf8.h"
#include "exchange/entry_set.h"
#include "exchange/fhir_paths.h"
#include "exchange/fhir_resource_reader.h"
#include "exchange/fhir_terms.h"
#include "exchange/json_tree_reader.h"

#include <algorithm>
#include <array>
#include <set>
#include <tuple>
#include <unordered_map>

namespace morrow {

namespace {

using namespace std::string_view_literals;
namespace ondemand = simdjson::ondemand;
using fhir::textAt;

struct FileProfile
{
    FhirFile file;
    std::string_view name;
    std::string_view type;
};
constexpr std::array kFiles{
    FileProfile{FhirFile::Summary, "summary", "document"},
    FileProfile{FhirFile::Plan, "plan-file", "collection"},
    FileProfile{FhirFile::Visit, "visit-file", "collection"},
    FileProfile{FhirFile::Record, "record-file", "collection"},
};

/// That one entry corrects another.
struct Correction
{
    std::string newer; ///< fullUrls
    std::string older;
    std::string pointer;
};

class BundleReader
{
public:
    Result<FhirDiary, std::vector<Issue>> read(std::string_view json)
    {
        if (const auto bad = firstInvalidUtf8(json)) {
            m_issues.push_back({.code = IssueCode::NotUtf8, .value = std::to_string(*bad)});
            return failure(std::move(m_issues));
        }
        readDocument(json);
        if (m_issues.empty())
            finish();
        if (!m_issues.empty())
            return failure(std::move(m_issues));
        return std::move(m_diary);
    }

private:
    /// More than this would be told about the same mistake, made again and again.
    static constexpr std::size_t kMostIssues = 100;

    void refuse(IssueCode code, std::string pointer, std::string_view element = {}, std::string_view value = {})
    {
        m_issues.push_back({.code = code, .columnName = std::string(element), .pointer = std::move(pointer), .value = std::string(value)});
    }

    void readDocument(std::string_view json)
    {
        // Qt and simdjson pass over a byte order mark in some versions; RFC 8259 has none.
        if (json.starts_with("\xef\xbb\xbf"sv)) {
            refuse(IssueCode::NotJson, {});
            return;
        }
        const simdjson::padded_string padded(json);
        ondemand::parser parser;
        ondemand::document document;
        ondemand::object bundle;
        if (parser.iterate(padded).get(document) != simdjson::SUCCESS) {
            refuse(IssueCode::NotJson, {});
            return;
        }
        if (document.get_object().get(bundle) != simdjson::SUCCESS) {
            refuse(IssueCode::NotABundle, {});
            return;
        }
        if (!readMembers(bundle))
            return;
        if (document.current_location().error() != simdjson::OUT_OF_BOUNDS) // something follows the object
            refuse(IssueCode::NotJson, {});
        checkBundle();
    }

    /// False if the document is no JSON from some place on.
    bool readMembers(ondemand::object bundle)
    {
        std::set<std::string, std::less<>> seen;
        for (auto member : bundle) {
            ondemand::field field;
            std::string_view key;
            if (std::move(member).get(field) != simdjson::SUCCESS || field.unescaped_key().get(key) != simdjson::SUCCESS) {
                refuse(IssueCode::NotJson, {});
                return false;
            }
            const std::string pointer = pointerStep(key);
            if (!seen.emplace(key).second) {
                refuse(IssueCode::KeyTwice, pointer, key);
                return false;
            }
            ondemand::array entries;
            if (key == "entry"sv && field.value().get_array().get(entries) == simdjson::SUCCESS) {
                if (!readEntries(entries))
                    return false;
                continue;
            }
            if (!readTree(field.value(), pointer, 1))
                return false;
            readMember(key, m_tree.root(), pointer);
        }
        return true;
    }

    bool readTree(ondemand::value value, const std::string &pointer, int depth)
    {
        const auto fault = JsonTreeReader(m_tree).read(value, depth);
        if (!fault)
            return true;
        static constexpr std::array codes{IssueCode::NotJson, IssueCode::KeyTwice, IssueCode::TooDeep, IssueCode::TooManyValues};
        refuse(codes[static_cast<std::size_t>(fault->error)], pointer + fault->pointer);
        return false;
    }

    void readMember(std::string_view key, JsonValue value, const std::string &pointer)
    {
        if (key == "resourceType"sv) {
            m_isBundle = textAt(value, "") == "Bundle"sv;
        } else if (key == "type"sv) {
            m_type = textAt(value, "").value_or("");
        } else if (key == "meta"sv) {
            const auto profiles = value.find("profile");
            for (auto one = profiles ? profiles->firstChild() : std::nullopt; one; one = one->next()) {
                for (const FileProfile &file : kFiles) {
                    if (textAt(*one, "") == fhir::profile(file.name))
                        m_file = &file;
                }
            }
        } else if (key == "identifier"sv && textAt(value, "system") == fhir::identifierSystem("bundle")) {
            m_identifier = textAt(value, "value").value_or("");
        } else if (key == "implicitRules"sv || key == "modifierExtension"sv) {
            refuse(IssueCode::ModifierRefused, pointer, key);
        } else if (key == "extension"sv) {
            for (auto one = value.firstChild(); one; one = one->next())
                ++m_diary.unknownExtensions;
        } else if (key == "entry"sv) {
            refuse(IssueCode::ElementRefused, pointer, key);
        }
    }

    bool readEntries(ondemand::array entries)
    {
        std::size_t place = 0;
        for (auto element : entries) {
            const std::string pointer = "/entry/" + std::to_string(place++);
            ondemand::value value;
            if (std::move(element).get(value) != simdjson::SUCCESS) {
                refuse(IssueCode::NotJson, pointer);
                return false;
            }
            if (!readTree(value, pointer, 2))
                return false;
            readEntry(m_tree.root(), pointer);
            if (m_issues.size() > kMostIssues)
                return false;
        }
        return true;
    }

    void readEntry(JsonValue entry, const std::string &pointer)
    {
        const auto url = textAt(entry, "fullUrl");
        const auto resource = entry.find("resource");
        if (!url || !resource || !resource->isObject()) {
            refuse(IssueCode::ElementMissing, pointer, url ? "resource" : "fullUrl");
            return;
        }
        m_diary.unknownExtensions += fhir::checkExtensions(entry, pointer, m_issues);
        if (resource->find("implicitRules"))
            refuse(IssueCode::ModifierRefused, pointer + "/resource/implicitRules", "implicitRules");
        const auto type = textAt(*resource, "resourceType");
        const std::string at = pointer + "/resource";
        if (fhir::identifierOf(*resource, "entry"))
            addEntry(*url, *resource, pointer);
        else if (type == "Patient"sv && fhir::identifierOf(*resource, "person"))
            readPatient(*url, *resource, at);
        else if (type == "Provenance"sv && fhir::claimsProfile(*resource, "correction"))
            m_corrections.push_back({std::string(textAt(*resource, "target/reference").value_or("")),
                std::string(textAt(*resource, "entity/what/reference").value_or("")), at});
        else if (type != "Composition"sv)
            ++m_diary.unknownResources;
    }

    void readPatient(std::string_view url, JsonValue patient, const std::string &pointer)
    {
        const std::string_view person = *fhir::identifierOf(patient, "person");
        if (!isEntryId(person))
            refuse(IssueCode::ElementRefused, pointer + "/identifier", "identifier", person);
        else if (!m_diary.person.empty())
            refuse(IssueCode::AnotherPerson, pointer, "Patient");
        else if (url != fhir::fullUrlOf("patient", person))
            refuse(IssueCode::ElementRefused, pointer, "fullUrl", url);
        m_diary.person = person;
        if (patient.find("name")) {
            const auto text = textAt(patient, "name/text");
            static constexpr FieldRule asText{.field = Field::Name};
            if (text && readValue(asText, *text))
                m_diary.name = *text;
            else
                refuse(IssueCode::ElementRefused, pointer + "/name", "name", text.value_or(""));
        }
    }

    void addEntry(std::string_view url, JsonValue resource, const std::string &pointer)
    {
        auto found = fhir::readResource(resource, pointer + "/resource", m_issues);
        if (!found)
            return;
        if (url != fhir::fullUrlOf(found->entry.id))
            refuse(IssueCode::ElementRefused, pointer + "/fullUrl", "fullUrl", url);
        if (!found->replacesUrl.empty())
            m_corrections.push_back({std::string(url), std::move(found->replacesUrl), pointer + "/resource/replaces"});
        m_subjects.insert(std::move(found->subject));
        m_diary.entries.push_back(std::move(found->entry));
        m_bodies.push_back(std::move(found->body));
        m_pointers.push_back(pointer + "/resource");
    }

    void checkBundle()
    {
        if (!m_isBundle || !m_file) {
            refuse(IssueCode::NotABundle, {});
            return;
        }
        m_diary.file = m_file->file;
        if (m_type != m_file->type)
            refuse(IssueCode::ElementRefused, "/type", "type", m_type);
        if (m_identifier.empty())
            refuse(IssueCode::ElementMissing, {}, "identifier");
        if (m_diary.person.empty())
            refuse(IssueCode::ElementMissing, "/entry", "Patient");
    }

    /// What can be told only when all of it was read, and was good.
    void finish()
    {
        const std::string patient = fhir::fullUrlOf("patient", m_diary.person);
        for (const std::string &subject : m_subjects) {
            if (subject != patient)
                refuse(IssueCode::AnotherPerson, "/entry", "subject", subject);
        }
        resolveCorrections();
        checkSet();
        if (!m_issues.empty())
            return;
        std::vector<Entry> &entries = m_diary.entries;
        std::sort(entries.begin(), entries.end(), [](const Entry &a, const Entry &b) {
            return std::tuple(a.day, name(a.kind), std::string_view(a.id)) < std::tuple(b.day, name(b.kind), std::string_view(b.id));
        });
        // The same entry twice, with one content, is one.
        entries.erase(std::unique(entries.begin(), entries.end()), entries.end());
        checkSum();
    }

    void resolveCorrections()
    {
        std::unordered_map<std::string, std::size_t> places;
        places.reserve(m_diary.entries.size());
        for (std::size_t i = 0; i < m_diary.entries.size(); ++i)
            places.emplace(fhir::fullUrlOf(m_diary.entries[i].id), i);
        for (const Correction &correction : m_corrections) {
            const auto newer = places.find(correction.newer);
            const auto older = places.find(correction.older);
            if (newer == places.end() || older == places.end()) {
                refuse(IssueCode::ElementRefused, correction.pointer, "reference",
                    newer == places.end() ? correction.newer : correction.older);
                continue;
            }
            std::optional<std::string> &replaces = m_diary.entries[newer->second].replaces;
            if (replaces)
                refuse(IssueCode::KeyTwice, correction.pointer, "replaces");
            else
                replaces = m_diary.entries[older->second].id;
        }
    }

    void checkSet()
    {
        using Code = SetProblem::Code;
        for (const SetProblem &problem : problemsOf(m_diary.entries, m_bodies)) {
            const IssueCode code = problem.code == Code::TwoContentsForOneId ? IssueCode::TwoContentsForOneId
                : problem.code == Code::ReplacesLoop                         ? IssueCode::ReplacesLoop
                : problem.code == Code::ReplacesAnotherKind                  ? IssueCode::ReplacesAnotherKind
                : problem.code == Code::UnknownComplaint                     ? IssueCode::UnknownComplaint
                : problem.code == Code::UnknownItem                          ? IssueCode::UnknownItem
                                                                             : IssueCode::UnknownStage;
            refuse(code, m_pointers[problem.entry], {}, problem.name);
            m_issues.back().other = problem.other;
        }
    }

    void checkSum()
    {
        Sum sum;
        Sha256 hash;
        for (const Entry &entry : m_diary.entries)
            sum.add(digestOf(entry, hash));
        if (m_identifier != std::to_string(m_diary.entries.size()) + '-' + toHex(sum.value()))
            refuse(IssueCode::SumDiffers, "/identifier", "identifier");
    }

    JsonTree m_tree;
    FhirDiary m_diary;
    std::vector<Issue> m_issues;
    std::vector<Body> m_bodies; ///< one an entry
    std::vector<std::string> m_pointers; ///< the same
    std::vector<Correction> m_corrections;
    std::set<std::string> m_subjects;
    bool m_isBundle = false;
    const FileProfile *m_file = nullptr;
    std::string m_type;
    std::string m_identifier;
};

} // namespace

Result<FhirDiary, std::vector<Issue>> readFhir(std::string_view json)
{
    return BundleReader().read(json);
}

} // namespace morrow
